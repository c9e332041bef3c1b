//! The one line after the form has moved on: it says so, keeps its text, and counts again by Enter.

use super::{Page, SAID};
use quirefit::draft::Draft;

const LINE: &str = "64 pages, A5, 130 silk, 750 copies";

/// A page on which the line was typed, then fields by hand.
fn moved(fields: &[(&str, &str)]) -> Page {
    let mut page = Page::open(None);
    page.type_into("phrase", LINE);
    assert_eq!(page.words("echo-phrase"), "");
    for (field, text) in fields {
        page.type_into(field, text);
    }
    page
}

fn told(page: &Page) -> String {
    page.words("echo-phrase")
}

#[test]
fn a_line_from_which_the_form_has_moved_on_says_where() {
    for (fields, labels) in [
        (&[("pages", "48")][..], "Pages"),
        (&[("size", "A4")], "Finished size"),
        (&[("copies", "800"), ("paper", "115 silk")], "Paper inside, Copies"),
        (&[("pages", "64 pag")], "Pages"),
        // The same in other words, and what the line does not speak of, contradict nothing.
        (&[("pages", "32 leaves"), ("cover", "250 silk"), ("title", "Low Tide")], ""),
        (&[("pages", "48"), ("pages", "64")], ""),
    ] {
        let page = moved(fields);
        let moved = "The form has moved on from this line: ";
        let expected = match labels {
            "" => String::new(),
            labels => format!("{moved}{labels}. Enter takes the line again."),
        };
        assert_eq!(told(&page), expected, "{fields:?}");
        assert_eq!(page.form().1, LINE, "the line keeps its text");
    }
    // By other ways than typing too.
    let mut page = moved(&[]);
    page.act("choose:size", "A4");
    page.tell("leave", "size", "A4");
    assert!(told(&page).contains("this line: Finished size."), "{}", told(&page));
    let mut page = Page::open(None);
    page.tell("helper", "", "none");
    page.type_into("phrase", "144 + 4, A5, 115 silk, 400");
    let before = page.draft();
    let spoken = ["pages", "size", "paper", "copies"];
    let mut moved = 0;
    for place in 0..6 {
        page.act("apply", &place.to_string());
        if page.draft() == before {
            break;
        }
        let same = spoken.iter().all(|field| page.draft().get(field) == before.get(field));
        assert_eq!(told(&page).is_empty(), same, "{place}: {}", told(&page));
        moved += usize::from(!same);
        page.act("undo", "");
    }
    assert!(moved > 0, "no way to make it fit changes what the line says");
}

/// The example's cover under somebody's own pages is another book than the same line gives elsewhere.
#[test]
fn a_line_owns_up_to_what_the_form_keeps_beside_it() {
    let over = |fields: &[(&str, &str)], line: &str| {
        let mut page = Page::open(None);
        for (field, text) in fields {
            page.type_into(field, text);
        }
        page.type_into("phrase", line);
        page
    };
    // Over the untouched example nothing is kept, so nothing is said.
    assert_eq!(told(&over(&[], LINE)), "");
    let mut page = over(&[("copies", "800")], LINE);
    assert_eq!(page.draft().get("cover"), "Pond Silk Cover 250");
    assert_eq!(told(&page), "Also in the form: Paper of the cover, Title");
    page.tell("leave", "phrase", LINE);
    assert_eq!(told(&page), "Also in the form: Paper of the cover, Title");
    page.type_into("title", "Low Tide");
    assert_eq!(told(&page), "Also in the form: Paper of the cover");
    page.input("cover", "");
    page.tell("leave", "cover", "");
    assert_eq!(told(&page), "");
    let spoken =
        over(&[("title", "Low Tide")], "64 pages, A5, 130 silk, cover 250 silk, 750 copies");
    assert_eq!(told(&spoken), "Also in the form: Title");
}

/// What stands above a field stays while somebody types in it, else the field would move.
#[test]
fn nothing_is_said_above_before_the_field_is_left() {
    let mut page = moved(&[]);
    page.input("pages", "48");
    assert_eq!(told(&page), "");
    page.tell("leave", "pages", "48");
    assert!(told(&page).contains("moved on"));
    page.input("pages", "64");
    assert!(told(&page).contains("moved on"));
    page.tell("leave", "pages", "64");
    assert_eq!(told(&page), "");
}

#[test]
fn enter_takes_the_line_again_in_one_step() {
    let mut page = moved(&[("pages", "48"), ("cover", "250 silk"), ("size", "A4")]);
    let by_hand = page.form();
    page.tell("key", "phrase", "Enter");
    let draft = page.draft();
    assert_eq!([draft.get("pages"), draft.get("size")], ["64 pages", "A5"]);
    assert_eq!(draft.get("cover"), "250 silk", "the line does not speak of it");
    let beside = "Also in the form: Paper of the cover";
    assert_eq!((&*told(&page), &*page.form().1), (beside, LINE));
    page.act("undo", "");
    assert_eq!(page.form(), by_hand, "nothing typed is lost");
    assert!(told(&page).contains("Pages, Finished size."), "{}", told(&page));
    page.act("redo", "");
    assert_eq!((page.draft(), &*told(&page)), (draft, beside));
    // An agreeing line and an empty one change nothing, and make no step.
    let end = page.form();
    page.tell("key", "phrase", "Enter");
    assert_eq!(page.form(), end);
    page.act("undo", "");
    assert_eq!(page.form(), by_hand);
    let mut page = Page::open(None);
    page.tell("key", "phrase", "Enter");
    assert!(!page.can("undo"));
    assert_eq!(page.draft(), Page::open(None).draft());
}

/// Typing on takes what is new; what the line has said all along does not undo the hand.
#[test]
fn a_line_that_is_typed_on_leaves_what_was_typed_by_hand() {
    let mut page = moved(&[("pages", "48")]);
    let before = page.form();
    for end in LINE.len()..=LINE.len() + " cover 250 silk".len() {
        page.input("phrase", &format!("{LINE} cover 250 silk")[..end]);
        assert_eq!(page.draft().get("pages"), "48");
        assert!(told(&page).contains("moved on from this line: Pages."), "{}", told(&page));
    }
    assert_eq!(page.draft().get("cover"), "250 silk");
    page.tell("leave", "phrase", "");
    page.act("undo", "");
    assert_eq!(page.form(), before);
    // Said anew, it counts.
    for line in ["6", "64 pages", "64 pages, A4"] {
        page.input("phrase", line);
    }
    assert_eq!(page.draft().get("pages"), "64 pages");
    assert_eq!(told(&page), "");
}

/// What could not be read stays named beside it, and what was scanned keeps its word.
#[test]
fn the_other_words_under_the_line_stay() {
    let mut page = Page::open(None);
    page.type_into("phrase", "64 pages, A5, 5x5 m");
    page.type_into("pages", "48");
    let both = "Not understood: 5x5 m · The form has moved on from this line: Pages. Enter takes";
    assert!(told(&page).starts_with(both), "{}", told(&page));
    let book = Draft::of(&[("title", "Low Tide"), ("pages", "8"), ("size", "A6")]);
    let code = quirefit::job::to_code(&book).unwrap();
    page.input("phrase", &code);
    page.tell("key", "phrase", "Enter");
    page.type_into("copies", "20");
    assert!(told(&page).contains("Low Tide"), "{}", told(&page));
    assert_eq!(page.form().1, "");
    // Half of a code stays half of a code.
    page.input("phrase", &code[..code.len() - 3]);
    let cut = told(&page);
    assert!(!cut.is_empty() && !cut.contains("Not understood"), "{cut}");
    page.type_into("copies", "30");
    assert_eq!(told(&page), cut);
}

#[test]
fn a_line_typed_key_by_key_ends_in_an_answer() {
    let mut page = Page::open(None);
    page.type_into("phrase", SAID);
    let draft = page.draft();
    assert_eq!(draft.get("pages"), "64 pages");
    assert_eq!(draft.get("size"), "A5");
    assert_eq!(draft.get("paper"), "100 pound text");
    assert_eq!(draft.get("copies"), "750 copies");
    assert_eq!((draft.get("cover"), draft.get("title")), ("", ""), "the example is typed over");
    assert!(page.words("answer").starts_with(['Y', 'O', 'N']), "{}", page.words("answer"));
    assert!(page.words("answer").contains("The spine will be"), "{}", page.words("answer"));
    assert!(page.attrs[&("answer".to_owned(), "class")].is_none(), "the answer is not stale");
    assert!(page.words("echo-paper").contains("148 g/m²"), "{}", page.words("echo-paper"));
}

/// Half typed, a line may mean something else: nothing of that may stay behind.
#[test]
fn a_line_typed_key_by_key_ends_as_the_line_pasted() {
    for line in [
        SAID,
        "64 pages, A5, 100 pound text",
        "60 + 4, 170 x 240, 115 silk, cover 250 silk, 12,000",
        "48pp 8.5 x 11 in, 80# gloss text, 500 off",
        "A5, 32 pages, 90 gsm 112 µm",
        "120 silk A4 24 pages",
    ] {
        let mut typed = Page::open(None);
        typed.type_into("phrase", line);
        let mut pasted = Page::open(None);
        pasted.input("phrase", line);
        assert_eq!(typed.draft(), pasted.draft(), "{line}");
        // Taken back to nothing, key by key: what was there before.
        for end in (0..line.len()).rev().filter(|end| line.is_char_boundary(*end)) {
            pasted.input("phrase", &line[..end]);
        }
        assert_eq!(pasted.draft(), Page::open(None).draft(), "{line}");
        typed.act("undo", "");
        assert_eq!(typed.draft(), Page::open(None).draft(), "{line}: one undo takes it all back");
    }
}

#[test]
fn a_line_that_says_nothing_changes_nothing() {
    let mut page = Page::open(None);
    let before = page.draft();
    page.type_into("phrase", "well then");
    assert_eq!(page.draft(), before);
    assert!(page.words("echo-phrase").contains("well then"));
    // Nothing was changed, so there is nothing to take back.
    page.input("pages", "48");
    page.act("undo", "");
    assert_eq!(page.draft(), before);
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
