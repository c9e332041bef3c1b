//! Whatever is done, at random.

use crate::support::{self, text_of};
use crate::{Page, SAID};
use proptest::prelude::*;

/// What a person may do, at random.
fn deeds() -> impl Strategy<Value = Vec<(&'static str, String, String)>> {
    let field = proptest::sample::select(vec![
        "pages",
        "size",
        "paper",
        "cover",
        "copies",
        "bleed",
        "face_cut",
        "title",
        "dummy_push_out",
        "start",
        "sections.0.pages",
        "sections.0.paper",
        "sections.1.paper",
    ]);
    let typed = proptest::sample::select(vec![
        "",
        "64",
        "60 + 4",
        "A5",
        "8.5 x 11",
        "115 silk",
        "80 lb",
        "0.2",
        "3",
        "-1",
        "1e308",
        "Line H",
        "🦆",
        "pack of 20 leaves 2.1",
        "5 mm",
        "12:30",
        "A long title",
    ]);
    let phrase =
        proptest::sample::select(vec![SAID, "48pp A4", "120 silk", "750", "well then", ""]);
    let act = proptest::sample::select(vec![
        ("undo", ""),
        ("redo", ""),
        ("new", ""),
        ("section-add", ""),
        ("section-add", ""),
        ("section-remove", "0"),
        ("section-out", "1"),
        ("section-in", "0"),
        ("apply", "0"),
        ("take-back", ""),
        ("reading", "client"),
        ("reading", "floor"),
        ("explain", "ask-spine-0-answer"),
        ("explain", ""),
        ("restore", "no"),
        ("save-job", ""),
    ]);
    let choice = proptest::sample::select(vec![
        ("units", "mm"),
        ("units", "in"),
        ("spine", "square"),
        ("spine", "round"),
        ("bleeds", "no"),
        ("line", "Line H"),
        ("line", "Light desk-side line"),
        ("sections.0.place", "around"),
    ]);
    let file = proptest::sample::select(vec![
        "examples/jobs/moth-album.json",
        "examples/jobs/puppet-programme.json",
        "examples/failing/two-faults.json",
        "examples/failing/truncated.txt",
        "examples/shops/prairie-loft-bindery.json",
    ]);
    let dropped = proptest::sample::select(vec![
        ("section-0", "section-main"),
        ("section-1", "section-0"),
        ("section-0", "section-2"),
        ("section-main", "section-0"),
    ]);
    let key = proptest::sample::select(vec![
        ("paper", "ArrowDown"),
        ("paper", "Enter"),
        ("size", "ArrowUp"),
        ("size", "Enter"),
        ("pages", "Ctrl+z"),
        ("", "Ctrl+Shift+z"),
        ("sections.0.paper", "Escape"),
    ]);
    let deed = prop_oneof![
        6 => (field, typed).prop_map(|(field, text)| ("input", field.to_owned(), text.to_owned())),
        2 => phrase.prop_map(|text| ("input", "phrase".to_owned(), text.to_owned())),
        4 => act.prop_map(|(act, value)| ("act", act.to_owned(), value.to_owned())),
        2 => choice.prop_map(|(field, word)| ("change", field.to_owned(), word.to_owned())),
        1 => file.prop_map(|file| ("file", file.to_owned(), text_of(file))),
        1 => Just(("leave", "pages".to_owned(), String::new())),
        1 => dropped.prop_map(|(what, onto)| ("drop", what.to_owned(), onto.to_owned())),
        2 => key.prop_map(|(field, key)| ("key", field.to_owned(), key.to_owned())),
    ];
    proptest::collection::vec(deed, 1..25)
}

proptest! {
    #![proptest_config(support::tried(48, None))]

    /// Whatever is done: every patch meets an element, the form shows the draft (`is_sound`), undo
    /// goes back through every draft there was, redo forward through all of them again.
    #[test]
    fn every_change_can_be_taken_back_exactly(deeds in deeds()) {
        let mut page = Page::open(None);
        // The search is the helper's, who never answers here.
        page.tell("helper", "", "ready");
        for (kind, id, value) in &deeds {
            let typed = id.starts_with("sections.");
            let index = id.split('.').nth(1).and_then(|index| index.parse().ok());
            // Only what stands on the page can be typed into.
            if typed && index.is_none_or(|index: usize| index >= page.draft().members("sections")) {
                continue;
            }
            page.tell(kind, id, value);
        }
        page.tell("leave", "", "");
        let end = page.form();
        let mut seen = vec![end.clone()];
        loop {
            let can = page.can("undo");
            let before = page.form();
            page.act("undo", "");
            if !can {
                prop_assert_eq!(&page.form(), &before);
                break;
            }
            seen.push(page.form());
        }
        prop_assert_eq!(&page.form().0, &Page::open(None).draft(), "all the way back");
        for form in seen.iter().rev().skip(1) {
            prop_assert!(page.can("redo"));
            page.act("redo", "");
            prop_assert_eq!(&page.form(), form);
        }
        prop_assert_eq!(page.form(), end);
    }

    /// What is kept brings everything back, whatever was typed.
    #[test]
    fn what_is_kept_brings_everything_back(deeds in deeds()) {
        let mut page = Page::open(None);
        page.tell("helper", "", "ready");
        page.input("title", "A Beginning");
        for (kind, id, value) in &deeds {
            let index = id.split('.').nth(1).and_then(|index| index.parse().ok());
            let typed = id.starts_with("sections.");
            if typed && index.is_none_or(|index: usize| index >= page.draft().members("sections")) {
                continue;
            }
            page.tell(kind, id, value);
        }
        page.tell("rest", "", "");
        let kept = page.draft();
        let mut next = page.again();
        prop_assert!(next.shown("file-note").is_empty(), "{}", next.words("file-note"));
        if kept.all().any(|(path, _)| path != "units") {
            next.act("restore", "yes");
            prop_assert_eq!(next.draft(), kept);
        } else {
            prop_assert!(next.shown("restore").is_empty());
        }
        prop_assert_eq!(next.words("shop"), page.words("shop"));
    }
}
