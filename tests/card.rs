//! The job card and the list it shares with the page: what stands on it agrees with itself by plain
//! geometry, nothing of money does, and a tick holds as long as the line it was set at.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::advise::{Advice, MOST_TRIED};
use quirefit::draft::{Draft, to_tree};
use quirefit::explain::Case;
use quirefit::job::Spine;
use quirefit::page::{Event, Patch, Session};
use quirefit::plan::plan;
use quirefit::shop::{self, SCHEMA, draft_of};
use quirefit::view::html::{Scene, card};
use quirefit::view::qr::Code;
use quirefit::view::set_up::{Row, first_book, settings};
use quirefit::view::{Numbers, Printer, Reading, Screen, Ticks};
use quirefit::words::{Files, LANGUAGES, Language, built_in};
use std::collections::BTreeMap;
use support::{JSON, files, planned_file};

/// Every number of a text, as it is printed with a point.
fn numbers(text: &str) -> Vec<f64> {
    let digits = |c: char| !(c.is_ascii_digit() || c == '.');
    let found = text.split(digits).map(|piece| piece.trim_matches('.'));
    found.filter(|piece| !piece.is_empty()).map(|piece| piece.parse().unwrap()).collect()
}

/// The first number of a row's figure, or of its note.
fn first(rows: &[Row], key: &str, note: bool, printer: &Printer) -> f64 {
    let row = rows.iter().find(|row| row.label.key == key).unwrap_or_else(|| panic!("no {key}"));
    let part = if note { &row.note } else { &row.value };
    let told = printer.text(part.as_ref().unwrap()).replace(',', "");
    *numbers(&told).first().unwrap_or_else(|| panic!("{key}: {told}"))
}

/// The figures of one list hang together: whoever measures the sheet with a rule finds the fold in its
/// middle, the stitches as far from both ends as the copy is high, the nip as wide as both halves.
#[test]
fn the_list_agrees_with_a_rule_laid_on_the_sheet() {
    let words = Language::first().words(&built_in());
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let paths = files("examples/jobs");
    assert!(paths.len() >= 8);
    for path in paths {
        let (_, job, shop) = planned_file(&path);
        let plan = plan(&job, &shop);
        let rows = settings(&Case::new(&job, &shop, &plan));
        let figure = |key: &str| first(&rows, key, false, &printer);
        let near = |a: f64, b: f64, within: f64, what: &str| {
            assert!((a - b).abs() <= within, "{path}, {what}: {a} and {b}");
        };
        // Printed to the tenth of a millimetre, and to the hundredth.
        near(figure("setup.fold") * 2.0, figure("setup.sheet"), 0.15, "twice the fold, the sheet");
        near(figure("setup.nip"), 2.0 * figure("setup.head-gap"), 0.015, "nip and gap");
        near(figure("setup.clamp"), figure("setup.nip"), 0.0, "clamp and nip");
        near(figure("setup.knife"), job.size.width.get(), 0.06, "knife and finished width");
        let sheets: f64 =
            job.sections.iter().map(|section| (f64::from(section.pages.get()) / 4.0).ceil()).sum();
        near(figure("setup.sheets"), sheets, 0.0, "sheets and pages");
        for stitch in rows.iter().filter(|row| row.label.key == "setup.stitch") {
            let told = numbers(&printer.text(stitch.note.as_ref().unwrap()));
            near(told[0] + told[1], job.size.height.get(), 0.11, "head and foot of a stitch");
        }
        let pressed = rows.iter().find(|row| row.label.key == "setup.former").unwrap();
        assert_eq!(pressed.value.is_some(), job.spine == Spine::Square, "{path}");
        let looked = first_book(&Case::new(&job, &shop, &plan));
        near(
            first(&looked, "setup.first.spine", false, &printer),
            figure("setup.nip"),
            0.0,
            "book",
        );
    }
}

/// Every row and every caution stands on the card, in every language; nothing of money does.
#[test]
fn the_card_holds_the_whole_list_and_no_money() {
    let rates =
        [("rate_line_hour", "1234.56"), ("rate_paper_kilo", "7.1357"), ("rate_job", "777.71")];
    for language in &LANGUAGES {
        let words = language.words(&built_in());
        let numbers = Numbers { mark: language.mark, ..Numbers::METRIC };
        let printer = Printer { words: &words, numbers };
        for path in files("examples/jobs") {
            let (draft, job, shop) = planned_file(&path);
            let mut planted = draft_of(&shop);
            rates.iter().for_each(|(path, text)| planted.set(path, text));
            let shop = shop::read(&planted).unwrap();
            let plan = plan(&job, &shop);
            let advice = Advice::searched(&draft, &job, &shop, &plan, MOST_TRIED);
            let scene = Scene {
                job: &job,
                shop: &shop,
                plan: &plan,
                advice: &advice,
                versions: &[],
                ticks: &Ticks::default(),
                printer,
                reading: Reading::Floor,
                screen: Screen::default(),
            };
            let text = bare(&card(&scene, Code::of(&draft, "").as_ref()).into_string());
            let case = scene.case();
            for row in settings(&case).iter().chain(&first_book(&case)) {
                for part in [Some(&row.label), row.value.as_ref(), row.note.as_ref()] {
                    let told = part.map(|part| bare(&printer.html(part).into_string()));
                    let told = told.unwrap_or_default();
                    assert!(text.contains(&told), "{} {path}: no {told} in {text}", language.tag);
                }
            }
            for key in ["cautions.machine", "cautions.wire", "cautions.dummy", "card.bar"] {
                assert!(text.contains(printer.word(key)), "{key}");
            }
            for money in ["1,234.56", "1234", "7.1357", "7.136", "777.71", "777,71"] {
                assert!(!text.contains(money), "{path}: {money}");
            }
        }
    }
}

/// Text without tags, each run of blanks as one.
fn bare(html: &str) -> String {
    let mut text = String::new();
    for piece in html.split('<') {
        text.push_str(piece.split_once('>').map_or(piece, |(_, words)| words));
    }
    let text = text.replace("&amp;", "&").replace("&quot;", "\"").replace("&lt;", "<");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A session and what it has put onto the page.
struct Page {
    session: Session,
    html: BTreeMap<String, String>,
    printed: usize,
    stored: Option<String>,
}

impl Page {
    fn open(saved: Option<&str>) -> Self {
        let session = Session::new(Files::new(), &["en-GB".to_owned()], saved, JSON);
        let mut page = Self { session, html: BTreeMap::new(), printed: 0, stored: None };
        page.tell("start", "", "");
        page
    }

    fn tell(&mut self, kind: &str, id: &str, value: &str) {
        for event in [Event::new(kind, id, value), Event::new("rest", "", "")] {
            for patch in self.session.handle(&event) {
                match patch {
                    Patch::Html { id, html } => drop(self.html.insert(id, html)),
                    Patch::Print {} => self.printed += 1,
                    Patch::Store { text } => self.stored = Some(text),
                    _ => {}
                }
            }
        }
    }

    fn list(&self) -> &str {
        self.html.get("body-set-up").map_or("", String::as_str)
    }

    fn ticked(&self) -> usize {
        self.list().matches(" checked").count()
    }

    fn card(&self) -> &str {
        self.html.get("job-card").map_or("", String::as_str)
    }
}

#[test]
fn a_tick_holds_as_long_as_its_line_does_not_change() {
    let mut page = Page::open(None);
    page.tell("act", "reading", "floor");
    page.tell("input", "copies", "900");
    let boxes = page.list().matches("type=\"checkbox\"").count();
    assert!(boxes > 15, "{}", page.list());
    // The sheet, the number of sheets, the cover; the knife stays where it is when a page is added.
    for name in ["tick-set-0", "tick-set-1", "tick-set-2"] {
        page.tell("change", name, "on");
    }
    assert_eq!(page.ticked(), 3);
    assert!(bare(page.list()).contains(&format!("3 of {boxes} ticked.")));
    page.tell("change", "tick-set-0", "");
    page.tell("change", "tick-of-nothing", "on");
    assert_eq!(page.ticked(), 2);
    // Four pages more: another number of sheets; the cover as before.
    page.tell("input", "pages", "44 + 4");
    assert_eq!(page.ticked(), 1);
    page.tell("act", "undo", "");
    assert_eq!(page.ticked(), 2);
    // A page that is opened again still knows, and another job begins without ticks.
    let mut again = Page::open(page.stored.as_deref());
    again.tell("act", "restore", "yes");
    again.tell("act", "reading", "floor");
    assert_eq!(again.ticked(), 2);
    page.tell("act", "new", "");
    page.tell("act", "undo", "");
    assert_eq!(page.ticked(), 0);
}

#[test]
fn the_card_is_there_while_it_is_printed_and_never_for_a_client() {
    let mut page = Page::open(None);
    page.tell("act", "print-card", "");
    assert_eq!(page.printed, 1);
    assert!(page.card().contains("Job card"), "{}", page.card());
    let (open, card) = (page.html.get("body-run").cloned(), page.card().to_owned());
    page.tell("print", "", "");
    assert_eq!(page.html.get("body-run").cloned(), open, "the regions are opened for a card");
    assert_eq!(page.card(), card);
    page.tell("printed", "", "");
    assert_eq!(page.card(), "");
    // Where nobody tells that it has been printed, another reading takes it away.
    page.tell("act", "print-card", "");
    page.tell("act", "reading", "client");
    assert_eq!(page.card(), "");
    page.tell("act", "print-card", "");
    assert_eq!((page.card(), page.printed), ("", 2));
}

/// Texts of a job stay text on its card.
#[test]
fn what_was_typed_is_escaped() {
    let mut page = Page::open(None);
    for field in ["title", "customer", "date", "by"] {
        page.tell("input", field, "<img src=x onerror=alert(1)>&");
    }
    page.tell("act", "print-card", "");
    assert_eq!(page.card().matches("&lt;img src=x").count(), 4, "{}", page.card());
    assert!(!page.card().contains("<img"));
}

/// A shop is named on the card by what its file says.
#[test]
fn the_shop_is_named() {
    let mut page = Page::open(None);
    let mut draft: Draft = draft_of(&shop::demo());
    draft.set("name", "Nine Elms Practice Bindery");
    page.tell("file", "", &(JSON.print)(&to_tree(&draft, &SCHEMA)));
    page.tell("act", "print-card", "");
    assert!(page.card().contains("Nine Elms Practice Bindery"), "{}", page.card());
}
