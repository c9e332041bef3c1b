//! Any bytes as a list of titles.
#![no_main]

use libfuzzer_sys::fuzz_target;
use quirefit::shop;
use quirefit::titles::List;
use quirefit::view::title_rows::answered;
use quirefit::view::{Numbers, Printer};
use quirefit::words::{EN, EN_GB, Words};

fuzz_target!(|bytes: &[u8]| {
    let Ok(list) = List::read(bytes) else { return };
    let words = Words::load(&[EN, EN_GB]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let (text, tally) = answered(&list, &shop::demo(), "mm", &printer);
    assert!(tally.unread <= tally.rows);
    // No cell may begin a formula where a program calculates.
    let mut reader = csv::ReaderBuilder::new();
    let reader = reader.has_headers(false).flexible(true);
    let bytes = text.trim_start_matches('\u{feff}').as_bytes();
    for row in reader.from_reader(bytes).records() {
        let row = row.expect("what is written can be read");
        assert!(!row.iter().any(|cell| cell.starts_with(['=', '@', '\t', '\r'])), "{row:?}");
    }
});
