//! Any bytes as a shop file, and a book made there.
#![no_main]

use libfuzzer_sys::fuzz_target;
use quirefit::draft::Draft;
use quirefit::shop::{SCHEMA, draft_of, read};
use quirefit_fuzz::{draft, work_out_in};

fuzz_target!(|bytes: &[u8]| {
    let Some(Ok(shop)) = draft(bytes, &SCHEMA).map(|draft| read(&draft)) else { return };
    // What the page saves of it is the same shop, to the digits that are written.
    let saved = draft_of(&shop);
    assert_eq!(read(&saved).map(|again| draft_of(&again)), Ok(saved));
    for pages in ["8", "60 + 4"] {
        let book = [
            ("pages", pages),
            ("size", "A5"),
            ("paper", "100 gsm silk"),
            ("cover", "250 gsm silk"),
            ("copies", "1200"),
        ];
        work_out_in(&Draft::of(&book), &shop);
    }
});
