//! Documents for print, read by general tools: qpdf says that they are sound, poppler what their boxes
//! are and where words stand, and draws the raster that is measured.
//!
//! Boxes, bars and marks are 72 points an inch of 25.4 mm (ISO 32000-1, 8.3.2.3). Poppler knows the
//! widths of the core fonts by itself: where a number has its middle on its page, ours are the same.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod cover;
mod dummy;
mod reading;
#[path = "../support/mod.rs"]
mod support;

use base64ct::{Base64, Encoding};
use quirefit::draft::Draft;
use quirefit::explain::Case;
use quirefit::job::{Job, read_link};
use quirefit::page::{Event, Patch, Session};
use quirefit::plan::{Folio, Leaf, Plan, Side, copies, plan};
use quirefit::shop;
use quirefit::view::pdf::Letters;
use quirefit::view::set_up::{first_book, settings};
use quirefit::view::{Numbers, Printer};
use quirefit::words::{Files, built_in};
use reading::{PIXEL, POINT, Raster, boxed, near, on_disk, said, words};
use std::collections::BTreeSet;
use support::{JSON, files, ran};

/// The acts that save a document, and how its name ends.
const ACTS: [(&str, &str); 4] = [
    ("save-card", ".card.pdf"),
    ("save-cover", ".cover.pdf"),
    ("save-dummy", ".dummy.pdf"),
    ("save-creep", ".creep.pdf"),
];
/// Square, with bleed and creases.
const SQUARE: &[(&str, &str)] = &[
    ("title", "Weirs & Sluices"),
    ("pages", "120 + 4"),
    ("size", "A5"),
    ("paper", "115 gsm offset"),
    ("cover", "Pond Silk Cover 250"),
    ("copies", "400"),
    ("spine", "square"),
];
/// Round, without a cover of its own, small.
const ROUND: &[(&str, &str)] = &[
    ("title", "Low Tide"),
    ("pages", "32"),
    ("size", "A6"),
    ("paper", "90 gsm offset"),
    ("copies", "900"),
    ("spine", "round"),
];

fn started(language: &str) -> Session {
    let mut session = Session::new(Files::new(), &[language.to_owned()], None, JSON);
    session.handle(&Event::new("start", "", ""));
    session
}

/// A page with a book in it and no other.
fn session(language: &str, fields: &[(&str, &str)]) -> Session {
    let mut session = started(language);
    session.handle(&Event::new("act", "new", ""));
    for (field, text) in fields {
        session.handle(&Event::new("input", field, text));
    }
    session
}

/// The same book's plan, in the same shop.
fn planned(fields: &[(&str, &str)]) -> (Job, Plan) {
    let shop = shop::demo();
    let job = support::job(&Draft::of(fields), &shop);
    let plan = plan(&job, &shop);
    (job, plan)
}

/// A document as the page saves it: its name and its bytes.
fn offered(session: &mut Session, act: &str) -> Option<(String, Vec<u8>)> {
    let patches = session.handle(&Event::new("act", act, ""));
    patches.into_iter().find_map(|patch| match patch {
        Patch::Save { name, base64 } => Some((name, Base64::decode_vec(&base64).unwrap())),
        _ => None,
    })
}

#[track_caller]
fn saved(session: &mut Session, act: &str) -> Vec<u8> {
    offered(session, act).unwrap_or_else(|| panic!("{act} saves nothing")).1
}

#[test]
fn every_document_of_every_example_is_sound() {
    let mut checked = 0;
    for (at, path) in files("examples/jobs").iter().enumerate() {
        for language in ["en-GB", "de"] {
            let mut session = started(language);
            session.handle(&Event::new("file", "", &support::text_of(path)));
            for (act, end) in ACTS {
                let Some((name, bytes)) = offered(&mut session, act) else { continue };
                assert!(name.ends_with(end), "{name}");
                let file = on_disk(&format!("sound-{at}-{language}{end}"), &bytes);
                let told = said("qpdf", &["--check", &file]);
                assert!(told.contains("No syntax or stream encoding errors"), "{path}: {told}");
                checked += 1;
            }
        }
    }
    assert!(checked > 60, "only {checked} documents");
}

#[test]
fn the_same_job_gives_the_same_bytes() {
    for language in ["en-GB", "de"] {
        for (act, end) in ACTS {
            let bytes = saved(&mut session(language, SQUARE), act);
            assert_eq!(bytes, saved(&mut session(language, SQUARE), act), "{language} {end}");
            assert_ne!(bytes, saved(&mut session(language, ROUND), act), "{language} {end}");
        }
    }
    for (act, _) in ACTS {
        let [one, other] = ["en-GB", "de"].map(|tag| saved(&mut session(tag, SQUARE), act));
        assert_ne!(one, other, "{act} is in one language alone");
    }
}

#[test]
fn a_document_says_what_it_is() {
    for (tag, act, title, language) in [
        ("en-GB", "save-cover", "Cover template: “Weirs & Sluices”", "(en-GB)"),
        ("de", "save-dummy", "Blindmuster: „Weirs & Sluices“", "(de)"),
        ("de", "save-creep", "Tabelle der Verdrängung: „Weirs & Sluices“", "(de)"),
    ] {
        let bytes = saved(&mut session(tag, SQUARE), act);
        let path = on_disk(&format!("said-{tag}-{act}.pdf"), &bytes);
        let told = said("pdfinfo", &[&path]);
        for line in [format!("Title:           {title}"), "Tagged:          yes".to_owned()] {
            assert!(told.contains(&line), "{line}: {told}");
        }
        assert!(!told.contains("Date"), "{told}");
        let text = String::from_utf8_lossy(&bytes);
        assert!(text.contains(&format!("/Lang{language}")), "{act}");
    }
    let bytes = saved(&mut session("en-GB", SQUARE), "save-creep");
    let path = on_disk("said-table.pdf", &bytes);
    let told = said("pdfinfo", &["-struct-text", &path]);
    for part in ["H1", "P", "Table", "TR", "TH", "TD", "Figure"] {
        let stands = told.lines().any(|line| line.trim().split([' ', ':']).next() == Some(part));
        assert!(stands, "no {part}: {told}");
    }
}

#[test]
fn the_table_of_creep_holds_the_plans_figures() {
    let (_, plan) = planned(SQUARE);
    let bytes = saved(&mut session("en-GB", SQUARE), "save-creep");
    let path = on_disk("creep.pdf", &bytes);
    let told = said("pdftotext", &["-layout", &path, "-"]);
    for leaf in &plan.results.leaves {
        let start = format!("{} ", leaf.place);
        let row = told.lines().find(|line| line.trim_start().starts_with(&start)).unwrap();
        // A hundredth of a millimetre is printed, and of long lengths a tenth.
        let numbers: Vec<f64> = row
            .split("mm")
            .filter_map(|part| {
                let number = part.split("  ").last()?.split(' ').find(|word| !word.is_empty())?;
                number.replace('–', "-").parse().ok()
            })
            .collect();
        near(numbers[0], leaf.push_out.nominal.get(), 0.006, row);
        near(numbers[1], leaf.length.get(), 0.06, row);
        near(numbers[2], leaf.image_shift.get(), 0.006, row);
    }
    near(Raster::of(&path, 1).longest_black(), 50.0, PIXEL, "the bar");
}

/// The card says every row that is set or looked at, on one sheet for an everyday book, and its code
/// brings the job back.
#[test]
fn the_job_card_says_what_is_set_and_holds_the_job() {
    let shop = shop::demo();
    let (job, plan) = planned(SQUARE);
    let words = quirefit::words::Language::of("en-GB").unwrap().words(&built_in());
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let case = Case::new(&job, &shop, &plan);
    let mut session = session("en-GB", SQUARE);
    let bytes = saved(&mut session, "save-card");
    let path = on_disk("card.pdf", &bytes);
    let told = said("pdftotext", &["-raw", &path, "-"]);
    let told = told.split_whitespace().collect::<Vec<_>>().join(" ");
    let rows = settings(&case).into_iter().chain(first_book(&case));
    let mut seen = 0;
    for row in rows {
        // The encoding's dash stands for a minus.
        let text = row.text(&printer).replace('−', "–").replace('\u{a0}', " ");
        assert!(told.contains(&text), "{text} is not in {told}");
        seen += 1;
    }
    assert!(seen > 15, "only {seen} rows");
    for part in ["cautions.machine", "cautions.wire", "card.set-up-by", "card.good-copies"] {
        assert!(told.contains(printer.word(part)), "{part}: {told}");
    }
    assert!(said("pdfinfo", &[&path]).contains("Pages:           1\n"));
    near(Raster::of(&path, 1).longest_black(), 50.0, PIXEL, "the bar");
    let raster = path.replace(".pdf", "");
    ran("pdftoppm", &["-r", "200", "-png", "-singlefile", &path, &raster]);
    let raster = format!("{raster}.png");
    let code = said("zbarimg", &["--raw", "--quiet", "-Sdisable", "-Sqrcode.enable", &raster]);
    let read = read_link(code.trim()).unwrap().unwrap();
    assert_eq!(read, *session.draft());
}

/// Very small, very large, a single sheet, nothing that runs off, a long name: nothing is written beside
/// the paper.
#[test]
fn words_stay_on_the_paper_whatever_the_book() {
    let long = "Tidal Reaches and the Keeping of Sluices ".repeat(2);
    let books: [&[(&str, &str)]; 5] = [
        &[("size", "40 x 50"), ("pages", "8")],
        &[("size", "420 x 594"), ("pages", "40 + 4"), ("cover", "250 gsm silk")],
        &[("size", "A5"), ("pages", "4"), ("bleeds", "no")],
        &[("size", "A4 landscape"), ("pages", "96"), ("spine", "square"), ("title", &long)],
        &[("size", "74 x 105"), ("pages", "240"), ("copies_up", "2"), ("spine", "square")],
    ];
    let mut seen = 0;
    for (at, book) in books.iter().enumerate() {
        let rest = [("paper", "115 gsm silk"), ("copies", "300")];
        for language in ["en-GB", "de"] {
            let mut session = session(language, &[book, &rest[..]].concat());
            for (act, end) in ACTS {
                let Some((_, bytes)) = offered(&mut session, act) else { continue };
                let path = on_disk(&format!("paper-{at}-{language}{end}"), &bytes);
                assert!(said("qpdf", &["--check", &path]).contains("No syntax"), "{path}");
                let [_, _, wide, high] = boxed(&path, "MediaBox");
                for (word, [left, top, right, bottom]) in words(&path, 1) {
                    let within = left >= 0.0 && top >= 0.0 && right <= wide && bottom <= high;
                    assert!(within, "{path}: {word} at {left} {top} {right} {bottom}");
                }
                seen += 1;
            }
        }
    }
    assert!(seen >= 30, "only {seen} documents");
}

/// Ours are the widths that poppler has for the font.
#[test]
fn letters_are_as_wide_as_the_font_says() {
    let all: String =
        ('!'..='~').chain('¡'..='ÿ').chain("€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ".chars()).collect();
    let letters: Vec<char> = all.chars().filter(|letter| *letter != '\u{ad}').collect();
    let groups: Vec<String> = letters.chunks(16).map(|part| part.iter().collect()).collect();
    let mut session = session("en-GB", SQUARE);
    // A title holds 120 letters.
    for some in groups.chunks(6) {
        session.handle(&Event::new("input", "title", &some.join(" ")));
        let path = on_disk("widths.pdf", &saved(&mut session, "save-creep"));
        let words = words(&path, 1);
        for group in some {
            let found = words.iter().find(|(word, _)| word.trim_matches(['“', '”']) == group);
            let (word, [left, _, right, _]) = found.unwrap_or_else(|| panic!("{group}: {words:?}"));
            near(right - left, Letters::of(word).width(5.5), 0.01, group);
        }
    }
}

#[test]
fn letters_of_other_scripts_are_replaced_and_said() {
    let mut session = session("de", SQUARE);
    session.handle(&Event::new("input", "title", "Grüße (\\ aus) Łódź\u{1b}"));
    let patches = session.handle(&Event::new("act", "save-creep", ""));
    let note = patches.iter().find_map(|patch| match patch {
        Patch::Html { id, html } if id == "file-note" => Some(html),
        _ => None,
    });
    assert!(note.unwrap().contains("Fragezeichen"), "{note:?}");
    let bytes = saved(&mut session, "save-creep");
    let path = on_disk("replaced.pdf", &bytes);
    assert!(said("qpdf", &["--check", &path]).contains("No syntax"));
    assert!(said("pdfinfo", &[&path]).contains("Grüße (\\ aus) Łódź"));
    // What is drawn has the mark; what is read aloud or copied has the letters.
    let drawn = [&b"?"[..], &[0xf3], b"d?"].concat();
    assert_eq!(Letters::of("Łódź"), Letters { bytes: drawn, replaced: true });
    // The file holds it in hexadecimal.
    assert!(String::from_utf8_lossy(&bytes).contains("3FF3643F"), "no question marks are drawn");
    assert!(said("pdftotext", &[&path, "-"]).contains("Grüße (\\ aus) Łódź"));
    let quiet = saved_note(&mut started("de"));
    assert!(quiet.contains("Gesichert") && !quiet.contains("Fragezeichen"), "{quiet}");
}

fn saved_note(session: &mut Session) -> String {
    let patches = session.handle(&Event::new("act", "save-creep", ""));
    let note = patches.into_iter().find_map(|patch| match patch {
        Patch::Html { id, html } if id == "file-note" => Some(html),
        _ => None,
    });
    note.unwrap()
}

/// A client gets cover and creep, word for word what the makers get, and nothing that is on the shop's
/// press sheet.
#[test]
fn a_client_gets_nothing_of_the_shop() {
    let mut makers = session("en-GB", SQUARE);
    let mut client = session("en-GB", SQUARE);
    client.handle(&Event::new("act", "reading", "client"));
    for act in ["save-card", "save-dummy"] {
        assert!(offered(&mut client, act).is_none(), "{act}");
    }
    let shop = shop::demo();
    for act in ["save-cover", "save-creep"] {
        let bytes = saved(&mut client, act);
        assert_eq!(bytes, saved(&mut makers, act));
        let told = said("pdftotext", &[&on_disk("client.pdf", &bytes), "-"]);
        for kept in [&*shop.name, &*shop.lines[0].name] {
            assert!(!told.contains(kept), "{told}");
        }
    }
}
