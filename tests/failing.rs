//! Files with faults: each tells the field, what was given, what is wrong and how to mend it, and
//! several faults come at once.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::draft::{FieldError, Schema};
use quirefit::view::{Numbers, Printer};
use quirefit::words::{EN, EN_GB, EN_US, Say, Slot, Words, parts};
use quirefit::{job, shop};
use std::collections::BTreeSet;
use support::{Unread, files, name, text_of};

/// Path, what was given, key of what is wrong.
type Fault = (&'static str, &'static str, &'static str);

/// What each file must tell, in the order in which it is told.
const FAILING: &[(&str, &[Fault])] = &[
    ("a-list", &[("", "", "file.foreign")]),
    ("board-without-caliper", &[("cover", "300 gsm board", "entry.paper.board")]),
    ("choice-unknown", &[("spine", "oval", "entry.choice.wrong")]),
    ("clock-impossible", &[("start", "25:00", "entry.clock.wrong")]),
    ("copies-nan", &[("copies", "NaN", "entry.copies.wrong")]),
    ("copies-none", &[("copies", "0", "entry.copies.outside")]),
    ("cover-of-six", &[("pages", "60 + 6", "entry.pages.cover-large")]),
    ("field-twice", &[("copies", "400", "file.twice")]),
    (
        "five-faults",
        &[
            ("pages", "three score", "entry.pages.wrong"),
            ("size", "as large as a cat", "entry.size.wrong"),
            ("paper", "thick", "file.unclear"),
            ("copies", "-1", "entry.copies.wrong"),
            ("spine", "oval", "entry.choice.wrong"),
        ],
    ),
    ("format-foreign", &[("format", "somebody-elses-book", "file.foreign")]),
    ("format-missing", &[("format", "", "file.foreign")]),
    ("length-outside", &[("bleed", "300 mm", "entry.length.outside")]),
    ("line-unknown", &[("line", "The line in the cellar", "entry.line.unknown")]),
    ("mass-no-mass", &[("wrapper", "light as a feather", "entry.mass.unknown")]),
    ("mass-outside", &[("wrapper", "90 kg", "entry.mass.outside")]),
    (
        "missing-all",
        &[
            ("pages", "", "file.missing"),
            ("size", "", "file.missing"),
            ("paper", "", "file.missing"),
        ],
    ),
    ("missing-pages", &[("pages", "", "file.missing")]),
    ("number-absurd", &[("bleed", "1e308", "entry.length.wrong")]),
    (
        "number-huge",
        &[("bleed", "100000000000000000000000000000000000000000000000000000000000…", "entry.long")],
    ),
    ("number-nan", &[("safe", "NaN", "entry.length.wrong")]),
    ("number-negative", &[("head_trim", "-1", "entry.length.wrong")]),
    ("number-of-copies-broken", &[("copies_up", "1.5", "entry.number.part")]),
    ("number-outside", &[("copies_up", "4", "entry.number.outside")]),
    ("pages-half", &[("pages", "12.5", "entry.pages.part")]),
    ("pages-thousand-million", &[("pages", "1000000000", "entry.pages.outside")]),
    ("pages-unfinished", &[("pages", "60 +", "file.unclear")]),
    ("paper-disagrees", &[("paper", "80 gsm 0.4 mm", "entry.paper.disagree")]),
    ("paper-says-nothing", &[("paper", "the nice one", "file.unclear")]),
    ("paper-without-unit", &[("paper", "100", "entry.paper.ask-unit")]),
    ("pounds-without-grade", &[("paper", "80 lb", "entry.paper.ask-grade")]),
    ("section-no-group", &[("sections.0", "4 pages of newsprint", "file.member")]),
    ("section-without-paper", &[("sections.0.paper", "", "file.missing")]),
    ("sections-no-list", &[("sections", "{…}", "file.list")]),
    ("sections-too-many", &[("sections", "41", "file.many")]),
    ("shop-field-near", &[("lines.0.hedas", "2", "file.unknown-near")]),
    ("shop-line-without-name", &[("lines.0.name", "", "shop.no-name")]),
    (
        "shop-number-wrong",
        &[
            ("lines.0.heads", "0", "entry.number.outside"),
            ("lines.0.knife_most", "thick", "entry.length.wrong"),
            ("print_overs_percent", "ninety", "entry.number.wrong"),
        ],
    ),
    ("shop-range-turned", &[("lines.0.sheets_least", "20", "shop.range")]),
    ("shop-sheet-without-height", &[("press_sheets.0.height", "", "shop.no-length")]),
    ("shop-stock-without-caliper", &[("stocks.0.paper", "300 gsm board", "entry.paper.board")]),
    ("shop-stock-without-paper", &[("stocks.0.paper", "", "shop.no-paper")]),
    ("shop-without-line", &[("lines", "", "shop.no-line")]),
    ("size-outside", &[("size", "3 x 4 mm", "entry.size.outside")]),
    ("size-unclear", &[("size", "8.5 x 11", "entry.size.ask")]),
    ("stitches-half", &[("stitches", "2.5", "entry.number.part")]),
    (
        "text-too-long",
        &[(
            "customer",
            "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx…",
            "file.long",
        )],
    ),
    (
        "title-too-long",
        &[(
            "title",
            "A long title A long title A long title A long title A long t…",
            "entry.text.long",
        )],
    ),
    ("two-faults", &[("size", "[…]", "file.value"), ("copeis", "7", "file.unknown-near")]),
    ("unknown-field-in-section", &[("sections.0.pleats", "3", "file.unknown")]),
    ("unknown-field-near", &[("copeis", "7", "file.unknown-near")]),
    ("unknown-field", &[("weather", "wet", "file.unknown")]),
    ("value-is-list", &[("pages", "[…]", "file.value")]),
    ("value-is-map", &[("size", "{…}", "file.value")]),
    ("value-is-null", &[("paper", "null", "file.value")]),
    ("version-as-text", &[("version", "1", "file.version")]),
    ("version-missing", &[("version", "", "file.version")]),
    ("version-newer", &[("version", "2", "file.newer")]),
    ("version-older", &[("version", "0", "file.version")]),
];

/// Every fault of a file.
fn faults(path: &str) -> Result<Vec<FieldError>, Unread> {
    let of_shop = text_of(path).contains("\"quirefit-shop\"");
    let schema: &Schema = if of_shop { &shop::SCHEMA } else { &job::SCHEMA };
    let draft = match support::draft(path, schema) {
        Ok(draft) => draft,
        Err(Unread::Errors(errors)) => return Ok(errors),
        Err(no_json) => return Err(no_json),
    };
    if of_shop {
        return Ok(shop::read(&draft).err().unwrap_or_default());
    }
    let shop = shop::demo();
    let reading = job::read(&draft, &shop);
    let errors = reading.errors(&draft);
    assert_eq!(reading.job.is_none(), !errors.is_empty(), "{path}: a job or errors, never both");
    Ok(errors)
}

#[test]
fn each_file_tells_its_own_faults() {
    for (file, expected) in FAILING {
        assert!(!expected.is_empty(), "{file} must tell something");
        let found = faults(&format!("examples/failing/{file}.json")).unwrap();
        let found: Vec<(&str, &str, &str)> = found
            .iter()
            .map(|error| (error.path.as_str(), error.given.as_str(), error.wrong.key.as_str()))
            .collect();
        assert_eq!(found, *expected, "{file}");
    }
}

#[test]
fn every_file_is_in_the_list() {
    let listed: BTreeSet<&str> = FAILING.iter().map(|(file, _)| *file).collect();
    assert_eq!(listed.len(), FAILING.len(), "a file is listed twice");
    let files = files("examples/failing");
    let found: BTreeSet<&str> =
        files.iter().filter_map(|path| name(path).strip_suffix(".json")).collect();
    assert_eq!(found, listed);
}

#[test]
fn several_faults_come_at_once() {
    let most = FAILING.iter().map(|(_, faults)| faults.len()).max();
    assert!(most >= Some(5));
    let keys: BTreeSet<&str> =
        FAILING.iter().flat_map(|(_, faults)| faults.iter().map(|fault| fault.2)).collect();
    assert!(keys.len() >= 30, "only {} kinds of fault", keys.len());
}

/// Texts that are no JSON at all have no field to tell: the reader of JSON refuses them.
#[test]
fn what_is_no_json_is_refused_as_a_whole() {
    let texts: Vec<String> =
        files("examples/failing").into_iter().filter(|path| path.ends_with(".txt")).collect();
    assert!(texts.len() >= 4);
    for path in texts {
        assert!(matches!(faults(&path), Err(Unread::NoJson)), "{path}");
    }
}

/// Slots of a pattern that a sentence does not fill.
fn unfilled<'a>(words: &'a Words, sentence: &Say) -> Vec<&'a str> {
    let pattern = words
        .pattern(&sentence.key, sentence.number)
        .unwrap_or_else(|| panic!("no words for {}", sentence.key));
    parts(pattern)
        .filter_map(|part| match part {
            quirefit::words::Part::Slot(slot) => Some(slot),
            quirefit::words::Part::Text(_) => None,
        })
        .filter(|slot| sentence.slot(slot).is_none())
        .collect()
}

#[test]
fn every_fault_is_told_in_full_sentences_and_says_what_to_do() {
    for words in [Words::load(&[EN, EN_US]), Words::load(&[EN, EN_GB])] {
        let printer = Printer { words: &words, numbers: Numbers::METRIC };
        for (file, _) in FAILING {
            for error in faults(&format!("examples/failing/{file}.json")).unwrap() {
                for sentence in [&error.wrong, &error.repair] {
                    let told = printer.text(sentence);
                    assert!(unfilled(&words, sentence).is_empty(), "{file}: {sentence:?}");
                    assert!(told.ends_with(['.', '?']), "{file}: {told}");
                    assert!(told.chars().count() < 200, "{file}: {told}");
                }
                assert_ne!(error.wrong.key, error.repair.key, "{file}");
            }
        }
    }
}

/// A message repeats no more of a text than a line can hold.
#[test]
fn what_was_given_is_repeated_but_not_at_length() {
    for (file, _) in FAILING {
        for error in faults(&format!("examples/failing/{file}.json")).unwrap() {
            for (_, slot) in &error.wrong.slots {
                if let Slot::Text(text) = slot {
                    assert!(text.chars().count() <= 60, "{file}: {text}");
                }
            }
        }
    }
}
