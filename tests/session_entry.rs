//! Entry as a conversation: suggestions, sections in the order of the nest, undo by keys.

use super::{LANGUAGE, Page, text};
use quirefit::draft::{Draft, Kind, MOST_MEMBERS};
use quirefit::job::{self, Note, SCHEMA};
use quirefit::page::{Event, Patch};
use quirefit::shop::{self, Shop};
use std::collections::BTreeSet;

impl Page {
    /// Texts that a field's list offers.
    fn offered(&self, id: &str) -> Vec<String> {
        let list = self.shown(&format!("offers-{id}"));
        let after = list.split("data-value=\"").skip(1);
        after.map(|rest| rest.split('"').next().unwrap().replace("&quot;", "\"")).collect()
    }

    fn attr(&self, id: &str, name: &'static str) -> Option<&str> {
        self.attrs.get(&(id.to_owned(), name)).and_then(Option::as_deref)
    }

    fn key(&mut self, field: &str, key: &str) -> bool {
        self.tell("key", field, key);
        self.last.contains(&Patch::Taken {})
    }

    /// Pages of the sections in the order in which they lie in the book.
    fn nest(&self) -> Vec<u32> {
        let job = job::read(&self.draft(), &shop::demo()).job.unwrap();
        job.sections.iter().map(|section| section.pages.get()).collect()
    }
}

#[test]
fn the_shops_own_papers_come_first_with_weight_and_thickness() {
    let mut page = Page::open(None);
    page.tell("tap", "paper", "");
    assert!(page.offered("paper").is_empty(), "a filled field covers nothing at the first tap");
    page.tell("tap", "paper", "");
    let offered = page.offered("paper");
    let own: BTreeSet<String> =
        shop::demo().stocks.iter().map(|stock| stock.name.clone()).collect();
    assert!(!offered.is_empty() && offered.iter().all(|name| own.contains(name)), "{offered:?}");
    assert!(!offered.contains(&"Pond Silk 130".to_owned()), "what stands there is no suggestion");
    assert!(page.words("offers-paper").contains("170 g/m², one leaf 0.142 mm"));
    // For the cover, card comes first.
    page.tell("leave", "paper", "");
    page.input("cover", "");
    page.tell("leave", "cover", "");
    page.tell("tap", "cover", "");
    assert_eq!(page.offered("cover")[0], "Pond Silk Cover 250");
    // Typing narrows: own papers, then usual ones of that weight and kind.
    page.tell("leave", "cover", "");
    page.type_into("paper", "");
    page.input("paper", "130 s");
    let offered = page.offered("paper");
    assert_eq!(offered[..2], ["Pond Silk 130", "130 gsm silk"], "{offered:?}");
    page.input("paper", "100 lb te");
    let offered = page.offered("paper");
    assert_eq!(offered[..2], ["Lantern Gloss 100 lb text", "100 lb text silk"], "{offered:?}");
}

#[test]
fn sizes_come_with_their_sides_in_the_persons_units() {
    let mut page = Page::open(None);
    page.input("size", "half");
    assert_eq!(page.offered("size"), ["Half Letter", "Half Letter landscape"]);
    assert!(page.words("offers-size").contains("139.7 mm × 215.9 mm"));
    page.input("size", "a5");
    assert_eq!(page.offered("size"), ["A5", "A5 landscape"]);
    page.act("choose:size", "A5 landscape");
    assert_eq!(page.draft().get("size"), "A5 landscape");
    let mut page = Page::open_in(None, "en-US");
    page.input("size", "");
    assert_eq!(page.offered("size")[..2], ["Half Letter", "Letter"]);
    page.input("size", "8.5");
    assert!(page.words("offers-size").contains("8.5 in × 11 in"), "{}", page.words("offers-size"));
}

/// The answer is painted first; what is offered comes with the rest, and puts nothing off.
#[test]
fn the_answer_comes_before_the_suggestions() {
    let mut page = Page::open(None);
    let touches = |patches: &[Patch]| {
        patches
            .iter()
            .any(|patch| matches!(patch, Patch::Html { id, .. } if id.starts_with("offer")))
    };
    for typed in ["9", "90", "90 ", "90 o"] {
        let patches = page.session.handle(&Event::new("input", "paper", typed));
        assert!(!touches(&patches), "{typed}: suggestions in the way of the answer");
        patches.iter().for_each(|patch| page.apply(patch));
        page.values.insert("paper".to_owned(), typed.to_owned());
    }
    let rest = page.session.handle(&Event::new("rest", "", ""));
    assert!(touches(&rest));
    // A key that comes before the rest finds the list of what stands there, not the one before.
    page.session.handle(&Event::new("input", "paper", "130 gl"));
    page.values.insert("paper".to_owned(), "130 gl".to_owned());
    assert!(page.key("paper", "ArrowDown"));
    assert_eq!(page.offered("paper")[0], "130 gsm gloss");
}

#[test]
fn the_list_is_walked_by_keys_and_never_takes_a_text_away() {
    let mut page = Page::open(None);
    assert_eq!(page.attr("input-paper", "aria-expanded"), None, "as the page was drawn");
    page.input("paper", "130 s");
    assert_eq!(page.attr("input-paper", "aria-expanded"), Some("true"));
    assert_eq!(page.attr("offers-paper", "hidden"), None);
    assert!(page.words("offered").starts_with(&page.offered("paper").len().to_string()));
    // Enter takes nothing that nobody walked to.
    assert!(!page.key("paper", "Enter"));
    assert_eq!(page.draft().get("paper"), "130 s");
    assert!(page.offered("paper").is_empty(), "and it closes the list");
    // Down, down, up: the first; up once more: the last; down: the first again.
    page.input("paper", "130 si");
    let offered = page.offered("paper");
    for key in ["ArrowDown", "ArrowDown", "ArrowUp"] {
        assert!(page.key("paper", key));
    }
    assert_eq!(page.attr("input-paper", "aria-activedescendant"), Some("offer-paper-0"));
    assert_eq!(page.attr("offer-paper-0", "aria-selected"), Some("true"));
    assert_eq!(page.attr("offer-paper-1", "aria-selected"), Some("false"));
    page.key("paper", "ArrowUp");
    let last = format!("offer-paper-{}", offered.len() - 1);
    assert_eq!(page.attr("input-paper", "aria-activedescendant"), Some(&*last));
    page.key("paper", "ArrowDown");
    assert_eq!(page.draft().get("paper"), "130 si", "walking changes no text");
    // Home and End belong to the caret.
    assert!(!page.key("paper", "Home"));
    assert_eq!(page.attr("input-paper", "aria-activedescendant"), None);
    // Escape closes and keeps what was typed; a second one is the browser's.
    assert!(page.key("paper", "Escape"));
    assert_eq!((page.draft().get("paper"), page.offered("paper").len()), ("130 si", 0));
    assert!(!page.key("paper", "Escape"));
    // An arrow opens it again, with everything; Enter takes what is pointed at.
    assert!(page.key("paper", "ArrowDown"));
    let first = page.offered("paper")[0].clone();
    assert!(page.key("paper", "Enter"));
    assert_eq!(page.draft().get("paper"), first);
    assert_eq!(page.focus, "input-paper");
    assert_eq!(page.attr("input-paper", "aria-expanded"), Some("false"));
    assert_eq!(page.words("offered"), "");
    // One step takes the choice back, to what was typed.
    page.act("undo", "");
    assert_eq!(page.draft().get("paper"), "130 si");
    // Leaving the field closes the list; other fields have none.
    page.input("paper", "130 sil");
    page.tell("leave", "paper", "130 sil");
    assert!(page.offered("paper").is_empty());
    assert!(!page.key("pages", "ArrowDown"));
}

/// Whatever is typed and wherever: at most eight, none of them what stands there, each understood.
#[test]
fn every_suggestion_is_understood() {
    let typed = [
        "", "1", "13", "130", "130 s", "s", "gloss", "80 lb", "100 p", "100# te", "cover", "cov 8",
        "24", "bond", "index", "tag 1", "newsp", "vol", "recy 9", "128 g", "25", "9999", "a", "a5",
        "let", "8.5", "210 x", "land", "dl", "b", "sra", "ra2", "13 ×", "🦆", "Pond", "lantern",
    ];
    let shops: Vec<Shop> = std::iter::once(shop::demo())
        .chain(super::files("examples/shops").iter().map(|path| super::support::shop_of(path)))
        .collect();
    for language in [LANGUAGE, "en-US", "de"] {
        let several = if language == LANGUAGE { shops.len() } else { 1 };
        for (place, shop) in shops.iter().enumerate().take(several) {
            let mut page = Page::open_in(None, language);
            page.tell("helper", "", "ready");
            if let Some(index) = place.checked_sub(1) {
                let path = &super::files("examples/shops")[index];
                page.tell("file", path, &super::text_of(path));
            }
            let mut some = 0;
            for field in ["size", "paper", "cover", "press_sheet"] {
                for text in typed {
                    page.input(field, text);
                    let offered = page.offered(field);
                    assert!(offered.len() <= 8, "{field} {text}: {offered:?}");
                    some += offered.len();
                    for offer in offered {
                        assert_ne!(offer, text);
                        let mut draft = page.draft();
                        draft.set(field, &offer);
                        let reading = job::read(&draft, shop);
                        let note = reading.notes.get(field);
                        assert!(
                            matches!(note, Some(Note::Echo(_))),
                            "{field} {text}: {offer}: {note:?}"
                        );
                    }
                }
            }
            assert!(some > 200, "only {some} suggestions seen");
        }
    }
}

#[test]
fn every_control_that_is_offered_something_is_a_combobox() {
    let page = Page::open(None);
    for field in SCHEMA.fields {
        let tag = page.drawn.split(&format!("id=\"input-{}\"", field.id)).nth(1);
        let tag = tag.map_or("", |after| after.split('>').next().unwrap());
        let offered = matches!(field.kind, Kind::Size | Kind::Paper) || field.id == "press_sheet";
        assert_eq!(tag.contains("role=\"combobox\""), offered, "{}", field.id);
        if offered {
            let list = format!("aria-controls=\"offers-{}\"", field.id);
            assert!(tag.contains(&list), "{}", field.id);
        }
    }
    assert!(!page.drawn.contains("<datalist"));
}

/// A book of cover, 8 pages around, 16 main, 4 and 12 at the centre, told apart by their pages.
fn nested() -> Page {
    let mut page = Page::open(None);
    page.tell("helper", "", "ready");
    page.input("pages", "16 + 4");
    for (index, pages) in ["8", "4", "12"].into_iter().enumerate() {
        page.act("section-add", "");
        assert_eq!(page.focus, format!("input-sections-{index}-pages"));
        page.input(&format!("sections.{index}.pages"), pages);
        page.input(&format!("sections.{index}.paper"), "90 gsm offset");
    }
    page.tell("change", "sections.0.place", "around");
    page.tell("leave", "", "");
    page
}

#[test]
fn sections_move_through_the_whole_nest_by_buttons() {
    let mut page = nested();
    assert_eq!(page.nest(), [4, 8, 16, 4, 12]);
    let place = |page: &Page, index: usize| page.words(&format!("place-section-{index}"));
    assert_eq!(place(&page, 0), "just inside the cover, around the main pages");
    assert_eq!(place(&page, 1), "just inside the main pages");
    assert_eq!(place(&page, 2), "just inside section 2, at the middle of the book");
    let picture = page.shown("picture").to_owned();
    // The twelve pages go outward, past the four, past the main pages, past the eight.
    let mut steps = vec![page.draft()];
    for (index, expected, focus) in [
        (2, [4, 8, 16, 12, 4], "section-out-1"),
        (1, [4, 8, 12, 16, 4], "section-out-1"),
        (1, [4, 12, 8, 16, 4], "section-out-0"),
    ] {
        page.act("section-out", &index.to_string());
        assert_eq!((page.nest(), &*page.focus), (expected.to_vec(), focus));
        assert!(page.announced.last().unwrap().starts_with("Section "), "{:?}", page.announced);
        steps.push(page.draft());
    }
    assert_eq!(place(&page, 0), "just inside the cover");
    assert!(page.shown("sections").contains(
        "id=\"section-out-0\" data-act=\"section-out\" data-value=\"0\" aria-disabled=\"true\""
    ));
    assert_ne!(page.shown("picture"), picture, "the picture shows the order");
    // No further out than the cover, and no step for nothing.
    page.act("section-out", "0");
    assert_eq!(Some(&page.draft()), steps.last());
    // One undo a move.
    for draft in steps.iter().rev().skip(1) {
        page.act("undo", "");
        assert_eq!(&page.draft(), draft);
    }
    // And inward again to the middle.
    for (index, expected) in
        [(0, [4, 16, 8, 4, 12]), (0, [4, 16, 4, 8, 12]), (1, [4, 16, 4, 12, 8])]
    {
        page.act("section-in", &index.to_string());
        assert_eq!(page.nest(), expected);
    }
    page.act("section-in", "2");
    assert_eq!(page.nest(), [4, 16, 4, 12, 8]);
}

#[test]
fn a_dragged_section_takes_the_place_of_what_it_is_dropped_on() {
    for (what, onto, expected) in [
        ("section-2", "section-main", [4, 8, 12, 16, 4]),
        ("section-2", "section-0", [4, 12, 8, 16, 4]),
        ("section-0", "section-2", [4, 16, 4, 12, 8]),
        ("section-0", "section-main", [4, 16, 8, 4, 12]),
        ("section-1", "section-1", [4, 8, 16, 4, 12]),
        ("section-main", "section-0", [4, 8, 16, 4, 12]),
        ("section-9", "section-0", [4, 8, 16, 4, 12]),
        ("section-0", "elsewhere", [4, 8, 16, 4, 12]),
    ] {
        let mut page = nested();
        let before = page.draft();
        page.tell("drop", what, onto);
        assert_eq!(page.nest(), expected, "{what} on {onto}");
        let moved = page.draft() != before;
        assert_eq!(moved, expected != [4, 8, 16, 4, 12]);
        if moved {
            page.act("undo", "");
        }
        assert_eq!(page.draft(), before, "{what} on {onto}: one step");
    }
}

#[test]
fn without_a_cover_the_outermost_section_says_so() {
    let mut page = Page::open(None);
    page.input("cover", "");
    page.input("pages", "16");
    page.act("section-add", "");
    page.input("sections.0.paper", "90 gsm offset");
    page.act("section-out", "0");
    assert_eq!(page.words("place-section-0"), "outermost, around the main pages");
    assert_eq!(page.nest(), [4, 16]);
}

#[test]
fn as_many_sections_as_a_file_holds_and_no_more() {
    let mut page = Page::open(None);
    page.tell("helper", "", "ready");
    for _ in 0..MOST_MEMBERS + 2 {
        page.act("section-add", "");
    }
    assert_eq!(page.draft().members("sections"), MOST_MEMBERS);
    assert!(!page.shown("sections").contains("id=\"section-add\""));
    assert!(text(page.shown("sections")).contains(&format!("at most {MOST_MEMBERS}")));
    // What was saved opens again.
    page.act("save-job", "");
    let (_, saved) = page.saved_files.last().unwrap().clone();
    let before = page.draft();
    page.act("new", "");
    page.tell("file", "x", &saved);
    assert_eq!(page.draft(), before);
    page.act("section-remove", "39");
    assert!(page.shown("sections").contains("id=\"section-add\""));
    page.act("section-add", "");
    assert_eq!(page.draft().members("sections"), MOST_MEMBERS);
}

/// A section whose pages are deleted to be retyped is still a section.
#[test]
fn an_emptied_section_stays_until_it_is_taken_out() {
    let mut page = nested();
    page.input("sections.2.pages", "");
    page.input("sections.2.paper", "");
    assert_eq!(page.draft().members("sections"), 3);
    assert_eq!(page.attr("answer", "class"), Some("stale"), "the book is not complete");
    page.act("section-remove", "2");
    assert_eq!(page.nest(), [4, 8, 16, 4]);
}

#[test]
fn sections_echo_pages_and_sheets() {
    let mut page = nested();
    assert_eq!(page.words("echo-sections-2-pages"), "12 pages = 6 leaves = 3 folded 4pp sheets");
    page.input("sections.2.pages", "6");
    assert!(page.words("echo-sections-2-pages").contains("2 blanks"));
}

#[test]
fn keys_undo_and_redo_in_every_field() {
    let mut page = Page::open(None);
    let start = page.form();
    assert!(!page.can("undo") && !page.can("redo"));
    page.type_into("phrase", "64 pages, A4, 90 gsm offset");
    page.type_into("pages", "48");
    let end = page.form();
    assert!(page.can("undo") && !page.can("redo"));
    assert!(page.key("pages", "Ctrl+z"));
    assert_eq!(page.draft().get("pages"), "64 pages");
    assert!(page.last.contains(&Patch::Near { id: "field-pages".to_owned() }));
    assert!(page.announced.last().unwrap().contains("Pages"), "{:?}", page.announced);
    assert!(page.key("phrase", "Ctrl+z"));
    assert_eq!(page.form(), start, "the line goes back as well");
    assert!(!page.can("undo") && page.can("redo"));
    // Nothing more to take back: the browser does not try either.
    assert!(page.key("", "Ctrl+z"));
    assert_eq!(page.form(), start);
    assert!(page.key("", "Ctrl+Shift+z") && page.key("", "Ctrl+y"));
    assert_eq!(page.form(), end);
    // A step back and the verdict it changes are said in one breath.
    page.tell("leave", "", "");
    page.input("pages", "1200");
    page.announced.clear();
    page.act("undo", "");
    let told = page.announced.concat();
    assert!(told.starts_with("Taken back: Pages.") && told.ends_with("Yes."), "{told}");
    assert_eq!(page.announced.len(), 1);
}

#[test]
fn undo_reaches_every_kind_of_change() {
    let mut page = Page::open(None);
    page.tell("helper", "", "none");
    let mut forms = vec![page.form()];
    let mut did = |page: &mut Page, kind: &str, id: &str, value: &str| {
        page.tell(kind, id, value);
        page.tell("leave", "", "");
        let form = page.form();
        assert_ne!(Some(&form), forms.last(), "{kind} {id} {value} changed nothing");
        forms.push(form);
        forms.clone()
    };
    did(&mut page, "input", "phrase", "144 + 4, A5, 115 silk, 400");
    did(&mut page, "change", "units", "in");
    did(&mut page, "change", "spine", "square");
    did(&mut page, "act", "apply", "0");
    did(&mut page, "act", "section-add", "");
    did(&mut page, "act", "section-out", "0");
    did(&mut page, "drop", "section-0", "section-main");
    did(&mut page, "act", "section-remove", "0");
    did(&mut page, "file", "x", &super::text_of("examples/jobs/moth-album.json"));
    did(&mut page, "act", "choose:paper", "Pond Silk 170");
    let forms = did(&mut page, "act", "new", "");
    // Readings and explanations change nothing that was typed, and are no steps.
    page.act("reading", "client");
    page.act("explain", "spine");
    for form in forms.iter().rev().skip(1) {
        page.act("undo", "");
        assert_eq!(&page.form(), form);
    }
    assert!(!page.can("undo"));
    for form in forms.iter().skip(1) {
        page.act("redo", "");
        assert_eq!(&page.form(), form);
    }
    assert_eq!(page.draft(), Draft::of(&[("units", page.draft().get("units"))]));
}

/// A count or size that the line understands in part fills no field; what stands in the field stays.
#[test]
fn what_the_line_cannot_read_whole_is_named_whole() {
    for (piece, kept) in [("5x5 m", "A4"), ("148 x 210 x 3 mm", "A4"), ("A5", "A5")] {
        let mut page = Page::open(None);
        page.type_into("size", "A4");
        page.type_into("phrase", &format!("64 pages, {piece}, 750 copies"));
        let draft = page.draft();
        assert_eq!([draft.get("pages"), draft.get("copies")], ["64 pages", "750 copies"]);
        assert_eq!(draft.get("size"), kept, "{piece}");
        let told = page.words("echo-phrase");
        assert_eq!(told.contains(&format!("Not understood: {piece}")), piece != kept, "{told}");
    }
    for line in ["1e308", "-1", "3 dozen", "10-12"] {
        let mut page = Page::open(None);
        page.type_into("pages", "48 + 4");
        let before = page.draft();
        page.type_into("phrase", line);
        assert_eq!(page.draft(), before, "{line}");
        assert_eq!(page.words("echo-phrase"), format!("Not understood: {line}"));
        // On the first visit the example goes, and nothing takes its place.
        let mut page = Page::open(None);
        page.type_into("phrase", line);
        assert_eq!(page.draft(), Draft::of(&[("units", "mm")]), "{line}");
        assert_eq!(page.words("echo-phrase"), format!("Not understood: {line}"));
    }
}

#[test]
fn the_first_visit_and_the_empty_form_say_how_to_begin() {
    let mut page = Page::open(None);
    assert!(page.words("example").contains("This is an example"));
    page.input("pages", "40 + 4 ");
    assert_eq!(page.words("example"), "", "somebody has begun");
    page.act("new", "");
    let told = page.words("example");
    assert!(
        told.contains("field by field") && told.contains("Nothing you type leaves it"),
        "{told}"
    );
    // Nothing above a field goes away while somebody types in it, only when something else is done.
    page.input("pages", "6");
    assert!(page.words("example").contains("field by field"));
    page.act("reading", "floor");
    assert_eq!(page.words("example"), "");
    page.act("new", "");
    let lines: Vec<String> = page
        .shown("example")
        .split("data-value=\"")
        .skip(1)
        .map(|rest| rest.split('"').next().unwrap().to_owned())
        .collect();
    assert_eq!(lines.len(), quirefit::view::html::SPOKEN_LINES.len());
    for line in lines {
        // Every line is understood to its end, and answered.
        let mut page = Page::open(None);
        page.tell("helper", "", "ready");
        page.act("new", "");
        page.act("say", &line);
        assert_eq!(page.values["phrase"], line);
        assert_eq!(
            (page.words("echo-phrase"), page.words("example")),
            (String::new(), String::new())
        );
        assert!(page.words("answer").contains("The spine will be"), "{line}");
        assert_eq!(page.focus, "input-phrase");
        page.act("undo", "");
        assert!(page.words("example").contains(&line), "{line}: one step back");
        assert_eq!(page.values["phrase"], "");
    }
}
