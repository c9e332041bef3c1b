//! What people type: no reader panics, what is printed is read back, and every answer has words.

mod support;

use proptest::prelude::*;
use quirefit::draft::Draft;
use quirefit::entry::{self, Choice, Cover, LengthUnit, Reading};
use quirefit::units::{Copies, Mm, Pages, Size};
use quirefit::words::{EN, EN_GB, EN_US, Part, Say, Slot, Words, parts};
use quirefit::{job, shop};
use std::collections::BTreeSet;

const UNITS: [LengthUnit; 2] = [LengthUnit::Millimetre, LengthUnit::Inch];

/// Every sentence that the readers give for a text.
fn sentences(text: &str) -> Vec<Say> {
    let mut said = Vec::new();
    for unit in UNITS {
        collect(entry::length(text, unit, Mm(40.0), Mm(700.0)), &mut said);
        collect(entry::size(text, unit), &mut said);
        collect(entry::paper(text, unit), &mut said);
        let stock = entry::paper(text, unit).value();
        let choices = stock.iter().flat_map(entry::kind_choices);
        said.extend(choices.map(|choice| choice.label));
        let phrase = entry::phrase(text, unit);
        assert!(phrase.fields.len() <= 5, "{text}");
    }
    collect(entry::number(text), &mut said);
    collect(entry::count(text), &mut said);
    collect(entry::pages(text), &mut said);
    collect(entry::copies(text), &mut said);
    collect(entry::choice(text, &["round", "square"]), &mut said);
    collect(entry::yes_no(text), &mut said);
    said
}

fn collect<T>(reading: Reading<T>, said: &mut Vec<Say>) {
    match reading {
        Reading::Understood(_, echo) => said.push(echo),
        Reading::Incomplete => {}
        Reading::Ask(question) => {
            assert!(!question.choices.is_empty());
            said.push(question.ask);
            said.extend(question.choices.into_iter().map(|choice: Choice| choice.label));
        }
        Reading::Wrong(fault) => said.extend([fault.wrong, fault.repair]),
    }
}

/// The same with the sentences inside sentences.
fn flat(said: Vec<Say>) -> Vec<Say> {
    let mut all = Vec::new();
    let mut open = said;
    while let Some(say) = open.pop() {
        open.extend(say.slots.iter().filter_map(|(_, slot)| match slot {
            Slot::Say(inner) => Some((**inner).clone()),
            _ => None,
        }));
        all.push(say);
    }
    all
}

const TYPED: &[&str] = &[
    "",
    "0",
    "1",
    "3",
    "9",
    "15",
    "64",
    "90",
    "500",
    "3 mm",
    "1/8 in",
    "8½",
    "2,500",
    "1e308",
    "-1",
    "60 + 4",
    "60 + 8",
    "60 + 2",
    "64 self cover",
    "64pp",
    "16 leaves",
    "16 sheets",
    "1 page",
    "5000",
    "4 sheets",
    "2001 pages",
    "2.5 pages",
    "60 mm",
    "60",
    "30",
    "800 mm",
    "A5",
    "A5 landscape",
    "80x80",
    "A9",
    "8.5 x 11",
    "170 x 240",
    "170 x 900 mm",
    "square 80 mm",
    "750 copies",
    "1 copy",
    "0 copies",
    "2.5 copies",
    "9000000",
    "round",
    "oval",
    "yes",
    "maybe",
    "100# text",
    "100 lb bond",
    "20 lb bond",
    "80 lb",
    "80 lb gloss cover",
    "90 offset",
    "130 silk",
    "130 silk 0.106 mm",
    "90 gsm vol 15",
    "90 gsm bulk 9",
    "10 pt board",
    "4.1 mil",
    "500 ppi",
    "20 leaves = 2.1 mm",
    "0 leaves 2 mm",
    "board",
    "marmalade",
    "700 gsm",
    "90 gsm 130 gsm",
    "90 gsm 0.9 mm",
    "90 gsm 2 mm",
    "5000 lb",
    "110 lb index",
    "67 lb bristol",
    "100 lb tag",
    "30 lb newsprint",
    "80 gsm copier",
    "300 gsm silk card",
    "🦆",
    "90 gsm recycled",
    "90 gsm wove",
    "45 gsm news",
    "200 gsm card",
    "115 gloss",
    "80 gsm uncoated",
    "250 gloss cover",
    "64pp A5, 100# text, 750",
];

#[test]
fn every_answer_has_words_in_every_english() {
    let long = "x".repeat(5000);
    let typed = TYPED.iter().copied().chain([long.as_str()]);
    let said: Vec<Say> = typed.flat_map(|text| flat(sentences(text))).collect();
    for (name, texts) in [("en", [EN, ""]), ("US", [EN, EN_US]), ("GB", [EN, EN_GB])] {
        let words = Words::load(&texts);
        for say in &said {
            let pattern = words
                .pattern(&say.key, say.number)
                .unwrap_or_else(|| panic!("{name}: no words for {}", say.key));
            for part in parts(pattern) {
                if let Part::Slot(slot) = part {
                    assert!(say.slot(slot).is_some(), "{name}: {} has no {slot}", say.key);
                }
            }
            if say.number.is_some() {
                for number in [1.0, 2.0] {
                    assert!(words.pattern(&say.key, Some(number)).is_some(), "{}", say.key);
                }
            }
        }
    }
}

/// The table above must reach every sentence of the readers, or the test before proves little.
#[test]
fn every_sentence_is_reached() {
    let said: BTreeSet<String> = TYPED
        .iter()
        .copied()
        .chain(["x".repeat(5000).as_str()])
        .flat_map(|text| flat(sentences(text)))
        .map(|say| say.key)
        .collect();
    let own =
        EN.split("# entry\n").nth(1).and_then(|rest| rest.split("# end of entry").next()).unwrap();
    let words = Words::load(&[own]);
    let keys: BTreeSet<String> = words
        .all()
        .map(|(key, _)| key.trim_end_matches(".one").trim_end_matches(".other").to_owned())
        .collect();
    let unsaid: Vec<&String> = keys.difference(&said).collect();
    assert!(unsaid.is_empty(), "never said: {unsaid:?}");
}

#[test]
fn absurd_texts_get_an_answer() {
    for text in [
        "9".repeat(5000),
        "🦆".repeat(5000),
        "1/".repeat(2500),
        "1 ".repeat(2500),
        "½".repeat(100),
        "1,".repeat(100),
        " ".repeat(5000),
        "\u{0}\u{feff}\u{202e}".repeat(60),
        "+".repeat(150),
        "gsm ".repeat(40),
        "18446744073709551616".to_owned(),
    ] {
        drop(sentences(&text));
    }
}

/// Whoever has no paper for the cover says so in words, or says nothing: the book is the same.
#[test]
fn a_cover_without_a_paper_is_said_or_left_empty() {
    let shop = shop::demo();
    for pages in ["64", "60 + 4"] {
        let read = |cover| {
            let book =
                [("pages", pages), ("size", "A5"), ("paper", "130 gsm silk"), ("cover", cover)];
            job::read(&Draft::of(&book), &shop)
        };
        let empty = read("");
        assert!(empty.job.is_some() && empty.notes.contains_key("cover"));
        for said in
            ["none", "None", "self cover", "no cover", "same as inside", "ohne", "wie innen"]
        {
            assert_eq!(read(said), empty, "{said}");
        }
        assert_ne!(read("same 250 gsm").job, empty.job, "a weight is a paper");
        assert!(read("nothing").job.is_none(), "a paper is not made out of any word");
    }
}

/// Texts made of the pieces that orders are made of, so that the readers get far into them.
fn orders() -> impl Strategy<Value = String> {
    let piece = prop::sample::select(vec![
        "64",
        "8.5",
        "½",
        "1/8",
        "0,125",
        "2.500",
        "12 000",
        "pp",
        "+",
        "4",
        "x",
        "×",
        "in",
        "mm",
        "\"",
        "A5",
        "letter",
        "landscape",
        "100#",
        "lb",
        "text",
        "cover",
        "gsm",
        "silk",
        "board",
        "pt",
        "vol",
        "bulk",
        "ppi",
        "leaves",
        "=",
        ",",
        ", ",
        ";",
        "(",
        ")",
        "-",
        "copies",
        "self",
        "grain",
        "along",
        "spine",
        "square",
        "µm",
        "µ",
        "#",
        "pack of",
        ".",
        "/",
        "banana",
        "🦆",
        "0",
        "k",
        "by",
        "\n",
    ]);
    prop::collection::vec((piece, prop::sample::select(vec!["", " "])), 0..14)
        .prop_map(|pieces| pieces.into_iter().map(|(piece, gap)| format!("{piece}{gap}")).collect())
}

proptest! {
    #![proptest_config(support::tried(256, None))]

    #[test]
    fn no_text_panics(text in ".{0,60}") {
        drop(sentences(&text));
    }

    #[test]
    fn no_order_panics(text in orders()) {
        drop(sentences(&text));
    }

    /// A number with letters behind it that may be its unit goes into one field whole, or into none.
    #[test]
    fn a_line_takes_a_number_whole_or_leaves_it_whole(
        number in "[1-9][0-9]{0,3}(\\.[0-9])?",
        gap in "( )?",
        unit in "[bcdfghjkqvwxz]{1,5}",
    ) {
        let piece = format!("{number}{gap}{unit}");
        let said = entry::phrase(&format!("A4, {piece}, 130 silk"), LengthUnit::Millimetre);
        let fields: Vec<&str> = said.fields.iter().map(|(_, text)| text.as_str()).collect();
        prop_assert!(fields.contains(&"A4") && fields.contains(&"130 silk"), "{:?}", said);
        if fields.len() == 2 {
            prop_assert_eq!(said.rest, [piece]);
        } else {
            prop_assert!(fields.contains(&piece.as_str()) && said.rest.is_empty(), "{:?}", said);
        }
    }

    #[test]
    fn printed_numbers_are_read_back(tenths in 0_u32..1_000_000, places in 0_usize..6) {
        let value = f64::from(tenths) / 10_f64.powi(places as i32);
        let printed = format!("{value}");
        prop_assert_eq!(entry::number(&printed).value(), Some(value));
        prop_assert_eq!(entry::number(&printed.replace('.', ",")).value(), Some(value));
    }

    #[test]
    fn printed_counts_are_read_back(copies in 1_u32..=5_000_000, pages in 1_u32..=2000) {
        prop_assert_eq!(entry::copies(&copies.to_string()).value(), Some(Copies(copies)));
        let (thousands, units) = (copies / 1000, copies % 1000);
        if (1..1000).contains(&thousands) {
            for mark in [',', '.', ' ', '\'', '\u{a0}', '\u{2009}'] {
                let printed = format!("{thousands}{mark}{units:03}");
                prop_assert_eq!(entry::copies(&printed).value(), Some(Copies(copies)));
            }
        }
        let read = entry::pages(&format!("{pages} + 4")).value().unwrap();
        prop_assert_eq!((read.inside, read.cover), (Pages(pages), Cover::Plus));
    }

    #[test]
    fn units_change_there_and_back(tenths in 400_u32..=7000) {
        let given = Mm(f64::from(tenths) / 10.0);
        let read = |text: &str, unit| entry::length(text, unit, Mm(30.0), Mm(800.0)).value().unwrap();
        for (text, unit) in [
            (format!("{}", given.get()), LengthUnit::Millimetre),
            (format!("{} mm", given.get()), LengthUnit::Inch),
            (format!("{:.10} in", given.inches()), LengthUnit::Millimetre),
            (format!("{:.10}", given.inches()), LengthUnit::Inch),
            (format!("{:.10} cm", given.get() / 10.0), LengthUnit::Inch),
        ] {
            prop_assert!((read(&text, unit).get() - given.get()).abs() < 1e-6, "{}", text);
        }
    }

    #[test]
    fn sizes_keep_their_order(width in 45_u32..=700, height in 45_u32..=700) {
        let size = Size::new(Mm(f64::from(width)), Mm(f64::from(height)));
        for unit in UNITS {
            let read = entry::size(&format!("{width} x {height} mm"), unit).value();
            prop_assert_eq!(read, Some(size));
        }
        let bare = entry::size(&format!("{width}×{height}"), LengthUnit::Millimetre).value();
        prop_assert_eq!(bare, Some(size));
    }

    #[test]
    fn ruler_fractions_are_exact(whole in 2_u32..=20, over in 1_u32..16) {
        // Sixteenths of 25.4 mm: an integer over an integer, so the nearest double there is.
        let exact = f64::from((whole * 16 + over) * 254) / 160.0;
        for text in [format!("{whole} {over}/16 in"), format!("{whole}-{over}/16\"")] {
            let read = entry::length(&text, LengthUnit::Millimetre, Mm(0.0), Mm(700.0)).value();
            prop_assert_eq!(read, Some(Mm(exact)));
        }
    }
}
