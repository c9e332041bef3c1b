//! Languages and units: the same book in other words.

use crate::{Page, text};
use quirefit::words::{LANGUAGES, Language};

#[test]
fn a_change_of_unit_keeps_every_text_and_shows_it() {
    let mut page = Page::open(None);
    for (field, text) in
        [("size", "170 x 240"), ("bleed", "4"), ("safe", "1/4 in"), ("paper", "115 silk 0.095 mm")]
    {
        page.input(field, text);
    }
    page.act("section-add", "");
    page.input("sections.0.paper", "pack of 20 leaves 2.1");
    let spine = |page: &Page| page.words("answer").split("thick").next().unwrap().to_owned();
    let before = (page.draft(), spine(&page));
    page.tell("change", "units", "in");
    assert_eq!(page.values["bleed"], "4 mm");
    assert!(page.values["size"].starts_with("170 x 240"));
    assert_eq!(page.values["safe"], "1/4 in");
    assert!(page.values["sections.0.paper"].starts_with("pack of 20 leaves 2.1"));
    assert!(spine(&page).contains(" in"), "{}", spine(&page));
    page.tell("change", "units", "mm");
    assert_eq!(page.values["bleed"], "4 mm");
    assert_eq!(spine(&page), before.1);
    // There and back is one step: nothing else was touched between.
    page.act("undo", "");
    assert_eq!(page.draft(), before.0);
}

#[test]
fn a_page_in_the_states_starts_in_inches() {
    let page = Page::open_in(None, "en-US");
    assert_eq!(page.draft().get("units"), "in");
    assert!(page.words("answer").contains(" in"));
    let page = Page::open_in(None, "fr-FR");
    assert_eq!(page.draft().get("units"), "mm");
    assert!(page.words("answer").contains(','), "a comma for decimals: {}", page.words("answer"));
}

/// A page on which everything has been done that stands only in the session.
fn busy_page(saved: Option<&str>, browser: &str) -> Page {
    let mut page = Page::open_in(saved, browser);
    page.tell("storage", "", "none");
    page.tell("file", "x.json", "no file");
    page.type_into("phrase", "48 + 4 pages, 148 x 205, tied with ribbon");
    page.type_into("bleed", "far");
    page.act("section-add", "");
    page.type_into("sections.0.paper", "90 gsm 0,112 mm");
    page.tell("toggle", "open-run", "open");
    page.act("explain", "ask-spine-0-answer");
    page
}

#[test]
fn a_page_in_another_language_says_the_same_of_the_same_book() {
    for there in &LANGUAGES {
        let back = Language::first();
        if there == back {
            continue;
        }
        let mut page = busy_page(None, back.tag);
        let before = page.draft();
        let everything = page.html.clone();
        page.tell("change", "language", there.tag);
        assert_eq!(page.language, there.tag);
        assert_eq!(page.focus, format!("input-language-{}", there.tag));
        assert_eq!(page.draft(), before, "{}: what was typed changed", there.tag);
        assert_eq!(page.values["phrase"], "48 + 4 pages, 148 x 205, tied with ribbon");
        // What stands there is what a page in that language would have shown from the start.
        let mut own = busy_page(None, back.tag);
        own.tell("change", "language", there.tag);
        own.tell("rest", "", "");
        for (id, html) in &own.html {
            assert_eq!(page.html.get(id), Some(html), "{}: {id}", there.tag);
        }
        for id in ["echo-bleed", "echo-phrase", "file-note", "storage", "explanation", "body-run"] {
            assert!(!page.shown(id).is_empty(), "{}: {id} is empty", there.tag);
        }
        page.tell("change", "language", back.tag);
        assert_eq!(page.draft(), before, "{}: what was typed changed", there.tag);
        for (id, html) in &everything {
            // Values aside: they come apart from the controls.
            assert_eq!(page.words(id), text(html), "{} and back: {id}", there.tag);
        }
        page.act("undo", "");
        assert_ne!(page.draft(), before, "{}: nothing to undo", there.tag);
    }
}

#[test]
fn the_language_that_was_chosen_is_kept_and_follows_the_browser_until_then() {
    for language in &LANGUAGES {
        let mut page = Page::open_in(None, language.tag);
        let wanted = language.tag;
        assert_eq!(page.language, wanted);
        assert!(page.stored.is_none(), "{}", language.tag);
        for other in &LANGUAGES {
            page.tell("change", "language", other.tag);
            page.tell("change", "language", "tlh");
            let again = Page::open_in(page.stored.as_deref(), language.tag);
            let drawn = text(&again.drawn) + &again.words("page");
            assert!(drawn.contains(other.name));
            assert_eq!(again.session.printer().numbers.mark, other.mark);
            assert!(again.shown("restore").is_empty(), "the example is no job to go on with");
        }
    }
}
