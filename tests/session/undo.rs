//! One step back, and one forward again.

use crate::Page;
use crate::support::text_of;
use quirefit::draft::Draft;
use quirefit::page::Patch;

#[test]
fn a_new_job_can_be_taken_back_and_is_forgotten_otherwise() {
    let mut page = Page::open(None);
    page.input("title", "The Quiet Drum");
    page.input("pages", "52");
    page.input("bleed", "4 mm");
    let before = page.draft();
    let answer = page.shown("answer").to_owned();
    page.act("new", "");
    assert_eq!(page.draft(), Draft::of(&[("units", "mm")]));
    assert_eq!(page.focus, "input-phrase");
    assert!(!page.everything().contains("Quiet Drum"));
    assert!(!page.stored.as_ref().unwrap().contains("Quiet Drum"));
    // An empty job is nothing to go on with.
    assert!(page.again().shown("restore").is_empty());
    page.act("undo", "");
    assert_eq!(page.draft(), before);
    assert_eq!(page.shown("answer"), answer);
    page.act("redo", "");
    assert_eq!(page.draft(), Draft::of(&[("units", "mm")]));
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
    did(&mut page, "file", "x", &text_of("examples/jobs/moth-album.json"));
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

/// Whoever goes back and types on has left the way forward.
#[test]
fn typing_after_an_undo_ends_what_could_be_redone() {
    let mut page = Page::open(None);
    page.input("pages", "52");
    page.input("copies", "900");
    page.act("undo", "");
    page.input("copies", "70");
    let typed = page.draft();
    page.act("redo", "");
    assert_eq!(page.draft(), typed);
    page.act("undo", "");
    assert_eq!((page.draft().get("pages"), page.draft().get("copies")), ("52", "1200"));
}

/// What would make it fit is taken with one tap, and taken back with one.
#[test]
fn an_offer_is_taken_and_taken_back() {
    let mut page = Page::open(None);
    page.input("line", "Light desk-side line");
    page.input("pages", "96 + 4");
    assert!(page.words("answer").contains("No."), "{}", page.words("answer"));
    let before = page.draft();
    let answer = page.words("answer");
    assert!(
        page.shown("body-fixes").contains("data-act=\"apply\""),
        "{}",
        page.words("body-fixes")
    );
    page.act("apply", "0");
    assert_ne!(page.draft(), before);
    assert!(page.words("answer").contains("Yes."), "{}", page.words("answer"));
    page.act("undo", "");
    assert_eq!(page.draft(), before);
    assert_eq!(page.words("answer"), answer);
    page.act("apply", "999");
    assert_eq!(page.draft(), before, "what was not offered cannot be taken");
}

/// The way back stands where the offer was taken, for as long as a step back is a step back from it.
#[test]
fn an_offer_is_taken_back_where_it_was_taken() {
    let mut page = Page::open(None);
    page.input("line", "Light desk-side line");
    page.input("pages", "96 + 4");
    let before = page.draft();
    page.act("take-back", "");
    assert_eq!(page.draft(), before, "nothing was taken, so nothing is taken back");
    page.act("apply", "0");
    let after = page.draft();
    let told = page.words("taken");
    assert!(told.starts_with("Taken: ") && told.ends_with("Take it back"), "{told}");
    assert_eq!(page.focus, "take-back");
    page.input("title", "Owls by Lamplight");
    assert_eq!(page.shown("taken"), "", "the next step is another");
    page.act("undo", "");
    assert_eq!(page.words("taken"), told);
    page.act("take-back", "");
    assert_eq!(page.draft(), before);
    assert_eq!((page.shown("taken"), page.focus.as_str()), ("", "summary-fixes"));
    page.act("take-back", "");
    assert_eq!(page.draft(), before, "tapped twice, it is taken back once");
    page.act("redo", "");
    assert_eq!((page.draft(), page.words("taken")), (after, told));
}
