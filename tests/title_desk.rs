//! A list worked at in parts: the same as all at once, sorted as the printed figures are, and told to
//! the page without ever moving what somebody is about to press.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use proptest::prelude::*;
use quirefit::page::{Event, ListDesk, Patch, Session};
use quirefit::shop;
use quirefit::titles::List;
use quirefit::view::csv::Cell;
use quirefit::view::title_desk::{ANSWER, Desk, Order};
use quirefit::view::title_rows::{answered, template};
use quirefit::view::{Numbers, Printer};
use quirefit::words::{Files, LANGUAGES, Language, Words, built_in};
use std::collections::BTreeMap;
use support::{JSON, files, text_of, tried};

fn words() -> Words {
    Language::first().words(&built_in())
}

/// A list of so many rows, some of which cannot be read; line ends as asked.
fn list(rows: usize, end: &str) -> String {
    let mut text = format!("title,pages,size,paper,cover,copies{end}");
    let papers = ["130 gsm silk", "90 gsm offset", "100# text"];
    for row in 0..rows {
        let pages = match row % 7 {
            3 => "many".to_owned(),
            5 => "400".to_owned(),
            _ => (16 + 4 * (row * 13 % 20)).to_string(),
        };
        let (paper, copies) = (papers[row % 3], 100 + row * 37 % 900);
        text += &format!(
            "\"Title {row}, told{end}twice\",{pages},A5,{paper},250 gsm silk cover,{copies}{end}"
        );
    }
    text
}

/// Cells as text, for comparison.
fn told(cells: &[Cell]) -> String {
    format!("{cells:?}")
}

#[test]
fn in_parts_it_is_the_same_as_at_once() {
    let words = words();
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let own = files("examples/titles").into_iter().map(text_of);
    for text in own.chain([list(60, "\n"), list(60, "\r\n")]) {
        let whole = answered(&List::read(text.as_bytes()).unwrap(), &shop::demo(), "mm", &printer);
        for slice in [1, 7, 1000] {
            let mut desk = Desk::begin(text.as_bytes(), shop::demo(), "mm", &printer).unwrap();
            let mut share = 0.0;
            while !desk.done() {
                desk.go_on(slice, &printer);
                assert!(desk.share() >= share, "it went back");
                share = desk.share();
            }
            assert_eq!(
                (desk.csv(), desk.tally()),
                (whole.0.as_str(), whole.1),
                "{slice} at a time"
            );
            // Lines as they are counted in the whole list, though each row is read anew.
            let part = desk.part(Order::default(), 0, 1000, &printer);
            let numbers: Vec<usize> = part.iter().map(|(number, _)| *number).collect();
            assert_eq!(numbers, (0..whole.1.rows as usize).collect::<Vec<_>>());
        }
    }
}

#[test]
fn stopped_it_keeps_what_there_is() {
    let words = words();
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let mut desk = Desk::begin(list(40, "\n").as_bytes(), shop::demo(), "mm", &printer).unwrap();
    desk.go_on(10, &printer);
    assert!(!desk.done());
    assert_eq!(desk.tally().rows, 10);
    assert!(desk.share() > 0.1 && desk.share() < 0.5, "{}", desk.share());
    assert_eq!(desk.part(Order::default(), 0, 100, &printer).len(), 10);
    assert_eq!(desk.job(3).unwrap().get("pages"), "many");
    assert!(desk.job(10).is_none());
}

/// The figure a row is sorted by, from what is printed; nothing where nothing is.
fn figure(cell: &Cell) -> Option<f64> {
    match cell {
        Cell::Value(measure) => Some(measure.value),
        Cell::Band(band) => Some(band.nominal),
        Cell::Text(_) | Cell::Empty => None,
    }
}

proptest! {
    #![proptest_config(tried(40, None))]
    /// Every figure stands no lower than the one before it; what has none stands last, either way.
    #[test]
    fn sorted_it_rises_or_falls(column in 0_usize..13, down: bool, rows in 1_usize..50) {
        let words = words();
        let printer = Printer { words: &words, numbers: Numbers::METRIC };
        let mut desk = Desk::begin(list(rows, "\n").as_bytes(), shop::demo(), "mm", &printer).unwrap();
        desk.go_on(1000, &printer);
        let order = Order { column: Some(column), down };
        let part = desk.part(order, 0, 1000, &printer);
        prop_assert_eq!(part.len(), rows);
        let numeric = ![1, ANSWER, 13].contains(&column);
        let found: Vec<Option<f64>> = part.iter().map(|(_, cells)| figure(&cells[column])).collect();
        for pair in found.windows(2).filter(|_| numeric) {
            match (pair[0], pair[1]) {
                (Some(one), Some(other)) if down => prop_assert!(one >= other),
                (Some(one), Some(other)) => prop_assert!(one <= other),
                (None, Some(_)) => prop_assert!(false, "a row without a figure stands before one with"),
                _ => {}
            }
        }
        // Every row once.
        let mut numbers: Vec<usize> = part.iter().map(|(number, _)| *number).collect();
        numbers.sort_unstable();
        prop_assert_eq!(numbers, (0..rows).collect::<Vec<_>>());
    }
}

#[test]
fn sorted_by_the_answer_the_books_that_fit_come_first() {
    let words = words();
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let mut desk = Desk::begin(list(30, "\n").as_bytes(), shop::demo(), "mm", &printer).unwrap();
    desk.go_on(1000, &printer);
    let order = Order { column: Some(ANSWER), down: false };
    let answers: Vec<String> = desk
        .part(order, 0, 100, &printer)
        .iter()
        .map(|(_, cells)| told(&cells[ANSWER..=ANSWER]))
        .collect();
    let mut kinds = answers.clone();
    kinds.dedup();
    assert!(kinds.len() >= 3, "{kinds:?}");
    assert!(
        kinds[0].contains("fits") && kinds.last().unwrap().contains("cannot be read"),
        "{kinds:?}"
    );
    let apart = kinds.iter().collect::<std::collections::BTreeSet<_>>().len();
    assert_eq!(apart, kinds.len(), "rows of one answer do not stand together");
}

#[test]
fn the_list_to_begin_with_is_a_list_in_every_language() {
    for language in &LANGUAGES {
        let words = language.words(&built_in());
        let printer = Printer { words: &words, numbers: Numbers::METRIC };
        let list = List::read(template(&printer).as_bytes()).unwrap();
        assert!(list.ignored().is_empty(), "{}: {:?}", language.tag, list.ignored());
        let mut desk =
            Desk::begin(template(&printer).as_bytes(), shop::demo(), "mm", &printer).unwrap();
        desk.go_on(10, &printer);
        assert_eq!((desk.tally().rows, desk.tally().unread), (1, 0), "{}", desk.csv());
        let job = desk.job(0).unwrap();
        for field in ["title", "pages", "size", "paper", "cover", "copies"] {
            assert!(!job.get(field).is_empty(), "{}: no {field}", language.tag);
        }
    }
}

/// A page with its desk, as the script puts them together.
struct Page {
    session: Session,
    desk: Option<ListDesk>,
    opened: String,
    html: BTreeMap<String, String>,
    saved: Vec<(String, String)>,
    asked: Vec<&'static str>,
    patched: Vec<String>,
}

impl Page {
    fn open() -> Self {
        let session = Session::new(Files::new(), &["en-GB".to_owned()], None, JSON);
        let (html, saved, asked, patched) = (BTreeMap::new(), vec![], vec![], vec![]);
        let mut page =
            Self { session, desk: None, opened: String::new(), html, saved, asked, patched };
        page.tell("start", "", "");
        page
    }

    fn tell(&mut self, kind: &str, id: &str, value: &str) {
        for event in [Event::new(kind, id, value), Event::new("rest", "", "")] {
            for patch in self.session.handle(&event) {
                match patch {
                    Patch::Html { id, html } => {
                        self.patched.push(id.clone());
                        self.html.insert(id, html);
                    }
                    Patch::Download { name, text } => self.saved.push((name, text)),
                    Patch::List { ask, language, units, shop, text } => {
                        self.asked.push(ask);
                        self.answer(ask, (language, units), shop.as_deref(), &text);
                    }
                    _ => {}
                }
            }
        }
    }

    /// What the desk answers at once; going on is the test's own.
    fn answer(&mut self, ask: &str, spoken: (&str, &str), shop: Option<&str>, text: &str) {
        let (what, told) = match ask {
            "begin" => {
                let bytes = self.opened.clone();
                let files = (built_in(), JSON);
                match ListDesk::begin(files, spoken, shop.unwrap(), bytes.as_bytes()) {
                    Ok(desk) => {
                        self.desk = Some(desk);
                        return;
                    }
                    Err(fault) => ("fault", fault),
                }
            }
            "show" => ("table", self.desk.as_ref().unwrap().table(spoken, text)),
            "save" => ("csv", self.desk.as_ref().unwrap().csv()),
            "take" => ("job", self.desk.as_ref().unwrap().job(text)),
            _ => return,
        };
        self.tell("list", what, &told);
    }

    fn drop_in(&mut self, name: &str, text: &str) {
        text.clone_into(&mut self.opened);
        self.tell("file", name, text);
    }

    fn go_on(&mut self, rows: u32) {
        let told = self.desk.as_mut().unwrap().go_on(rows);
        self.tell("list", "progress", &told);
    }

    fn shown(&self, id: &str) -> &str {
        self.html.get(id).map_or("", String::as_str)
    }
}

#[test]
fn a_list_that_is_opened_is_planned_shown_sorted_and_saved() {
    let mut page = Page::open();
    page.drop_in("books.csv", &list(250, "\r\n"));
    page.patched.clear();
    page.go_on(50);
    page.go_on(50);
    assert!(
        page.shown("titles-told").contains("100 titles planned."),
        "{}",
        page.shown("titles-told")
    );
    let still = page.patched.iter().filter(|id| *id == "titles-state").count();
    assert_eq!(still, 0, "the button moves while somebody is about to press it");
    assert_eq!(page.shown("titles-table").matches("<tr>").count(), 51, "heads and the first rows");
    page.go_on(1000);
    assert!(page.shown("titles-state").contains("act-list-save"));
    assert!(page.shown("titles-table").contains("1 to 100 of 250"));
    page.tell("act", "list-turn", "200");
    assert!(page.shown("titles-table").contains("201 to 250 of 250"));
    page.tell("act", "list-sort", "4");
    assert!(page.shown("titles-table").contains("aria-sort=\"ascending\""));
    assert!(page.shown("titles-table").contains("1 to 100 of 250"));
    page.tell("act", "list-sort", "4");
    assert!(page.shown("titles-table").contains("aria-sort=\"descending\""));
    page.tell("act", "list-sort", "4");
    assert!(!page.shown("titles-table").contains("aria-sort"));
    page.tell("act", "list-save", "");
    assert_eq!(page.saved[0].1.lines().filter(|line| line.contains("Title ")).count(), 250);
    page.tell("act", "list-take", "0");
    assert_eq!(page.session.draft().get("pages"), "16");
    page.tell("act", "undo", "");
    assert_eq!(page.session.draft().get("pages"), "40 + 4");
}

#[test]
fn a_client_sees_nothing_of_a_list() {
    let mut page = Page::open();
    page.drop_in("books.csv", &list(20, "\n"));
    page.go_on(1000);
    assert!(page.shown("titles-table").contains("Title 1"));
    page.tell("act", "reading", "client");
    assert_eq!((page.shown("titles-table"), page.shown("titles-state")), ("", ""));
    // What comes late is not shown either, nor what is opened now.
    let late = page.desk.as_ref().unwrap().table(("en-GB", "mm"), "- up 0");
    page.tell("list", "table", &late);
    let csv = page.desk.as_ref().unwrap().csv();
    page.tell("list", "csv", &csv);
    page.drop_in("books.csv", &list(20, "\n"));
    assert_eq!((page.shown("titles-table"), page.saved.len()), ("", 0));
    assert_eq!(page.asked.iter().filter(|ask| **ask == "begin").count(), 1);
    page.tell("act", "reading", "floor");
    assert!(page.shown("titles-table").contains("Title 1"), "a maker sees it again");
}

#[test]
fn in_another_language_and_unit_the_table_follows() {
    let mut page = Page::open();
    page.drop_in("books.csv", &list(20, "\n"));
    page.go_on(1000);
    assert!(page.shown("titles-table").contains("mm"));
    page.tell("change", "units", "in");
    assert!(!page.shown("titles-table").contains("mm"), "{}", page.shown("titles-table"));
    page.tell("change", "language", "de");
    assert!(page.shown("titles-table").contains("Rücken"), "{}", page.shown("titles-table"));
}

#[test]
fn what_is_no_list_says_so_and_what_stands_in_a_list_stays_text() {
    let mut page = Page::open();
    page.drop_in("books.csv", "colour,taste\nblue,sweet\n");
    assert!(
        page.shown("titles-state").contains("Every book needs this"),
        "{}",
        page.shown("titles-state")
    );
    // Without the name of a list it is what it was before: no file of this page.
    page.drop_in("notes.txt", "colour,taste\nblue,sweet\n");
    assert!(!page.shown("file-note").is_empty());
    let evil =
        "title,pages,size,paper\n<img src=x onerror=alert(1)>,<b>,A5,90 gsm\n=1+1,32,A5,90 gsm\n";
    page.drop_in("", evil);
    page.go_on(1000);
    let table = page.shown("titles-table").to_owned();
    assert!(!table.contains("<img") && !table.contains("<b>"), "{table}");
    page.tell("act", "list-save", "");
    assert!(page.saved[0].1.contains("'=1+1"), "{}", page.saved[0].1);
}
