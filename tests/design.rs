//! The design's own file on the page: what is asked of its reader, what the page says of the answers, and
//! what is ordered from it.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::intake::{Order, Part, Unreadable, taken};
use quirefit::page::{Event, Patch, Session};
use quirefit::words::Files;
use support::JSON;
use support::designs::{self, a5, file, told, whole};

/// A page, and what stands on it.
struct Shown {
    session: Session,
    html: std::collections::BTreeMap<String, String>,
}

impl Shown {
    fn new() -> Self {
        let session = Session::new(Files::new(), &["en-GB".to_owned()], None, JSON);
        let mut shown = Self { session, html: Default::default() };
        shown.tell("start", "", "");
        shown.tell("act", "reading", "design");
        shown
    }
    /// What the session wants done, HTML aside.
    fn tell(&mut self, kind: &str, id: &str, value: &str) -> Vec<Patch> {
        let mut done = Vec::new();
        for patch in self.session.handle(&Event::new(kind, id, value)) {
            match patch {
                // A number and its unit do not part at the end of a line.
                Patch::Html { id, html } => drop(self.html.insert(id, html.replace('\u{a0}', " "))),
                other => done.push(other),
            }
        }
        done
    }
    fn asked(&mut self, kind: &str, id: &str, value: &str) -> Vec<(&'static str, String, String)> {
        let asked = |patch| match patch {
            Patch::Design { ask, name, text } => Some((ask, name, text)),
            _ => None,
        };
        self.tell(kind, id, value).into_iter().filter_map(asked).collect()
    }
    /// Opens a file and has it read.
    fn open(&mut self, name: &str, facts: &quirefit::intake::Facts) -> String {
        let asked = self.asked("file", name, "%PDF-1.7 …");
        assert_eq!(asked, [("arrive", String::new(), String::new())]);
        let placed = self.asked("design", "facts", &told(facts));
        let [("place", _, part)] = &placed[..] else { panic!("{placed:?}") };
        part.clone()
    }
    fn typed(&mut self, fields: &[(&str, &str)]) {
        for (field, text) in fields {
            self.tell("input", field, text);
        }
        self.tell("rest", "", "");
    }
    fn found(&self) -> &str {
        &self.html["design-found"]
    }
    fn state(&self) -> &str {
        &self.html["design-state"]
    }
}

const BOOK: [(&str, &str); 4] =
    [("pages", "40 + 4"), ("size", "A5"), ("paper", "100 gsm offset"), ("copies", "500")];

#[test]
fn a_design_is_told_by_its_name_or_its_beginning() {
    let mut page = Shown::new();
    for (name, text) in
        [("A.PDF", "anything"), ("a", "%PDF-1.4"), ("a.csv", "\u{fffd}junk %PDF-2.0")]
    {
        assert_eq!(page.asked("file", name, text).len(), 1, "{name}");
        assert!(page.state().contains("Reading"), "{}", page.state());
    }
    let late = format!("{}%PDF-1.4", "é".repeat(1100));
    assert!(
        page.asked("file", "a.txt", &late).is_empty(),
        "a PDF begins within its first kilobyte"
    );
}

#[test]
fn files_find_their_place_by_their_pages() {
    let mut page = Shown::new();
    page.typed(&BOOK);
    assert_eq!(page.open("four.pdf", &a5(4)), "cover");
    assert!(page.found().contains("The inside has not come yet"), "{}", page.found());
    assert_eq!(page.open("forty.pdf", &a5(40)), "");
    assert!(page.found().contains("agree with the book"), "{}", page.found());
    // A better inside takes the place of the first.
    assert_eq!(page.open("better.pdf", &a5(36)), "");
    let told = "The file has 36 pages for the inside; the book has 40";
    assert!(page.found().contains(told), "{}", page.found());
    assert!(!page.found().contains("forty.pdf"));
    let asked = page.asked("act", "design-swap", "");
    assert_eq!(asked, [("swap", String::new(), String::new())]);
    assert!(page.found().contains("Inside: four.pdf"), "{}", page.found());
    assert_eq!(page.asked("act", "design-close", "")[0].0, "end");
    assert_eq!(page.found(), "");
}

/// What agrees is said as well where something is to be said of the cover.
#[test]
fn what_agrees_is_said_wherever_the_cover_is() {
    let mut page = Shown::new();
    page.typed(&BOOK);
    page.open("forty.pdf", &a5(40));
    let inside = "sizes and bleed of the inside agree with the book";
    assert!(page.found().contains(inside), "{}", page.found());
    assert!(page.found().contains("has a cover apart, and it has not come yet"));
    page.open("four.pdf", &a5(4));
    assert!(page.found().contains("Pages, sizes and bleed agree with the book"));
    assert!(!page.found().contains(inside) && !page.found().contains("has not come yet"));
    page.typed(&[("pages", "44"), ("cover", "")]);
    assert!(page.found().contains("Pages, sizes and bleed agree with the book"));
    assert!(page.found().contains("A cover came, but the book has none apart"));
    page.typed(&[("pages", "48")]);
    assert!(!page.found().contains("agree with the book"), "{}", page.found());
    page.tell("act", "design-close", "");
    page.typed(&[("pages", "40 + 4")]);
    page.open("all.pdf", &a5(44));
    assert!(page.found().contains("Pages, sizes and bleed agree with the book"));
    assert!(page.found().contains("The cover lies in the same file"));
    page.typed(&[("size", "A6")]);
    assert!(!page.found().contains("agree with the book"), "{}", page.found());
}

#[test]
fn the_comparison_follows_the_book() {
    let mut page = Shown::new();
    page.open("forty.pdf", &a5(40));
    assert!(page.found().contains("Take the book from the file"), "the example is nobody's book");
    page.typed(&BOOK);
    page.open("four.pdf", &a5(4));
    assert!(page.found().contains("agree with the book"), "{}", page.found());
    page.typed(&[("size", "A4")]);
    assert!(page.found().contains("148 mm across and 210 mm down"), "{}", page.found());
    page.tell("change", "units", "in");
    page.tell("rest", "", "");
    assert!(page.found().contains("8.268 in"), "{}", page.found());
}

#[test]
fn pages_size_and_bleed_go_into_the_form_and_come_back() {
    let mut page = Shown::new();
    page.open("book.pdf", &file(&vec![whole(139.7, 215.9, 3.2); 28]));
    page.tell("act", "design-adopt", "");
    let draft = page.session.draft().clone();
    assert_eq!(draft.get("pages"), "28");
    assert_eq!(draft.get("size"), "139.7 x 215.9 mm");
    assert_eq!(draft.get("bleed"), "3.2 mm");
    assert_eq!(draft.get("title"), "", "nothing of the example is left");
    page.tell("act", "undo", "");
    assert_eq!(page.session.draft().get("pages"), "40 + 4");
}

#[test]
fn a_password_is_asked_for_and_not_kept() {
    let mut page = Shown::new();
    page.typed(&BOOK);
    page.asked("file", "locked.pdf", "%PDF-1.7");
    page.tell("design", "facts", &designs::refused(Unreadable::Password));
    assert!(page.state().contains("type=\"password\""), "{}", page.state());
    page.tell("input", "design-password", "open sesame");
    let asked = page.asked("act", "design-unlock", "");
    assert_eq!(asked, [("arrive", String::new(), "open sesame".to_owned())]);
    page.tell("design", "facts", &designs::refused(Unreadable::Password));
    assert!(page.state().contains("does not open locked.pdf"), "{}", page.state());
    assert_eq!(page.asked("act", "design-unlock", "")[0].2, "", "used once");
    page.tell("design", "facts", &told(&a5(40)));
    assert!(page.found().contains("locked.pdf"));
    assert!(!format!("{:?}", page.session).contains("sesame"));
}

#[test]
fn proof_and_pairs_are_ordered_and_written() {
    let mut page = Shown::new();
    page.typed(&BOOK);
    page.typed(&[("title", "Night Owls")]);
    page.open("inside.pdf", &a5(40));
    page.open("cover.pdf", &a5(4));
    for (act, name, pages) in
        [("design-proof", "night-owls.proof.pdf", 44), ("design-pairs", "night-owls.pairs.pdf", 22)]
    {
        let asked = page.asked("act", act, "");
        let [("write", told_name, order)] = &asked[..] else { panic!("{asked:?}") };
        assert_eq!(told_name, name);
        let order: Order = taken(order).unwrap();
        assert_eq!(order.pages.len(), pages);
        let first = &order.pages[0].placed[0];
        assert_eq!((first.part, order.pages[5].placed[0].part), (Part::Cover, Part::Inside));
        assert!(page.state().contains("Writing"));
        let moved = page.tell("design", "progress", "50");
        let bar = Patch::Attr {
            id: "design-progress".to_owned(),
            name: "value",
            value: Some("50".to_owned()),
        };
        assert_eq!(moved, [bar], "the button to stop stays as it is");
        page.tell("design", "written", name);
        assert!(page.state().contains("is written"), "{}", page.state());
    }
    // What is shown while a field cannot be read is the book before: no page is laid for that one.
    page.typed(&[("size", "5x5 m")]);
    for act in ["design-proof", "design-pairs"] {
        assert!(page.asked("act", act, "").is_empty(), "{act}");
    }
    assert!(page.html["file-note"].contains("<strong>Finished size</strong>: <q>5x5 m</q>"));
    page.typed(&[("size", "A5")]);
    assert_eq!(page.html["file-note"], "", "once it can be read, nothing is in the way");
    page.asked("act", "design-proof", "");
    assert_eq!(page.asked("act", "design-stop", "")[0].0, "stop");
    assert!(page.found().contains("inside.pdf"), "what was read is still open");
}

#[test]
fn a_client_sees_nothing_of_the_press_sheet() {
    let mut page = Shown::new();
    page.typed(&BOOK);
    page.open("inside.pdf", &a5(40));
    assert!(page.found().contains("act-design-pairs"));
    page.tell("act", "reading", "client");
    assert!(
        !page.found().contains("act-design-pairs") && page.found().contains("act-design-proof")
    );
    assert!(page.asked("act", "design-pairs", "").is_empty());
}

#[test]
fn a_lost_reader_and_a_stopped_one_hold_nothing() {
    for (kind, id, sentence) in
        [("design", "lost", "broke its reader"), ("act", "design-stop", "Stopped")]
    {
        let mut page = Shown::new();
        page.typed(&BOOK);
        page.open("inside.pdf", &a5(40));
        page.asked("file", "huge.pdf", "%PDF-1.7");
        page.tell(kind, id, "");
        assert!(page.state().contains(sentence), "{}", page.state());
        assert_eq!(page.found(), "");
    }
    // An answer that comes after that is nobody's.
    let mut page = Shown::new();
    assert!(page.asked("design", "facts", &told(&a5(40))).is_empty());
    page.tell("design", "facts", "no facts");
    page.tell("design", "written", "a.pdf");
    page.tell("file", "x.pdf", "%PDF-");
    page.tell("design", "facts", "no facts");
    assert!(page.state().contains("broke its reader"));
}

#[test]
fn names_of_files_are_escaped() {
    let mut page = Shown::new();
    page.typed(&BOOK);
    let name = "<img src=x onerror=alert(1)>.pdf";
    page.asked("file", name, "%PDF-1.7");
    assert!(!page.state().contains("<img"), "{}", page.state());
    page.tell("design", "facts", &told(&a5(40)));
    assert!(page.found().contains("&lt;img") && !page.found().contains("<img"));
}

#[test]
fn the_worst_pages_come_first() {
    let mut page = Shown::new();
    page.typed(&[("pages", "40")]);
    page.typed(&BOOK[1..]);
    let mut facts = a5(40);
    facts.pages[30] = whole(148.0, 210.0, 0.0);
    facts.pages[11] = whole(150.5, 210.0, 3.0);
    page.open("inside.pdf", &facts);
    let captions: Vec<&str> = page
        .found()
        .split("<figcaption>")
        .skip(1)
        .map(|after| after.split('<').next().unwrap())
        .collect();
    assert_eq!(captions.len(), 12);
    assert!(captions[0] == "12", "another size first: {captions:?}");
    assert!(captions[1] == "31", "then no bleed: {captions:?}");
    page.tell("act", "design-more", "");
    assert_eq!(page.found().matches("<figcaption>").count(), 40);
}
