//! Sections in the order in which they lie in the book.

use crate::{Page, text};
use quirefit::draft::MOST_MEMBERS;
use quirefit::job;
use quirefit::shop;

impl Page {
    /// Pages of the sections in the order in which they lie in the book.
    fn nest(&self) -> Vec<u32> {
        let job = job::read(&self.draft(), &shop::demo()).job.unwrap();
        job.sections.iter().map(|section| section.pages.get()).collect()
    }
}

#[test]
fn sections_are_added_filled_taken_out_and_brought_back() {
    let mut page = Page::open(None);
    page.act("section-add", "");
    assert_eq!(page.focus, "input-sections-0-pages");
    page.input("sections.0.pages", "8");
    page.type_into("sections.0.paper", "90 gsm uncoated");
    page.tell("change", "sections.0.place", "around");
    page.act("section-add", "");
    page.type_into("sections.1.paper", "200 gsm silk");
    let both = page.draft();
    let sheets = page.words("answer");
    page.act("section-remove", "0");
    assert_eq!(page.draft().get("sections.0.paper"), "200 gsm silk");
    assert_eq!(page.draft().members("sections"), 1);
    page.act("undo", "");
    assert_eq!(page.draft(), both);
    assert_eq!(page.words("answer"), sheets);
    // Step by step back to nothing: the form follows, `is_sound` sees to it.
    for _ in 0..8 {
        page.act("undo", "");
    }
    assert_eq!(page.draft(), Page::open(None).draft());
    for _ in 0..8 {
        page.act("redo", "");
    }
    assert_eq!(page.draft().members("sections"), 1);
    // A section that is not there cannot be taken out, and that is no step.
    let before = page.draft();
    page.act("section-remove", "7");
    page.act("section-remove", "x");
    assert_eq!(page.draft(), before);
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

/// A separate cover does not fill the sheets inside: 7 pages are 8 with a blank, whatever lies around.
#[test]
fn blanks_are_named_beside_a_cover_too() {
    let mut page = Page::open(None);
    page.input("pages", "8");
    assert!(page.words("echo-pages").contains("8 pages inside + 4 cover = 12 pages"));
    page.input("pages", "7");
    let told = page.words("echo-pages");
    assert!(told.contains("8 pages, 1 blank") && told.contains("a 4-page cover"), "{told}");
}
