//! What is kept from one visit to the next, and what happens when the module breaks.

use crate::Page;
use crate::support::text_of;
use quirefit::page::Patch;

#[test]
fn restoring_asks_first_and_shows_nothing_of_the_job() {
    let mut page = Page::open(None);
    page.input("title", "Nine Secret Recipes");
    page.input("customer", "Madame Quagga");
    page.input("paper", "0.077 mm newsprint");
    let typed = page.draft();
    let mut next = page.again();
    let told = format!("{:?}", next.last);
    for secret in ["Recipes", "Quagga", "newsprint"] {
        assert!(!told.contains(secret), "{secret} is shown before anyone was asked");
    }
    assert!(next.words("restore").contains("last time"));
    // Whatever is typed meanwhile does not push it out.
    next.input("pages", "16");
    let mut third = next.again();
    third.act("restore", "yes");
    assert_eq!(third.draft().get("pages"), "16");
    assert!(third.shown("restore").contains("restore-yes"), "the earlier job still waits");
    third.act("restore", "yes");
    assert_eq!(third.draft(), typed);
    assert!(third.shown("restore").is_empty());
    third.act("undo", "");
    assert_eq!(third.draft().get("pages"), "16");
    // Leaving it forgets it.
    let mut fourth = page.again();
    fourth.act("restore", "no");
    assert!(fourth.shown("restore").is_empty());
    fourth.input("pages", "20");
    assert!(!fourth.stored.as_ref().unwrap().contains("Quagga"));
    // Opening a file answers nothing: the question stays.
    let mut fifth = page.again();
    fifth.tell("file", "x", &text_of("examples/jobs/teapot-guide.json"));
    assert!(fifth.shown("restore").contains("restore-yes"));
    assert!(fifth.stored.as_ref().unwrap().contains("Quagga"));
}

#[test]
fn a_kept_state_that_cannot_be_read_is_not_lost() {
    let mut page = Page::open(None);
    page.input("title", "Owls by Lamplight");
    page.input("pages", "52");
    let good = page.stored.clone().unwrap();
    for damaged in [
        good[..good.len() / 2].to_owned(),
        good.replace("\"version\": 1", "\"version\": 2"),
        good.replace("quirefit-saved", "another-saved"),
        good.replace("\"pages\"", "\"pagination\""),
        "{\"format\": \"quirefit-saved\", \"novelty\": 1}".to_owned(),
        "not json at all".to_owned(),
        "[1, 2, 3]".to_owned(),
    ] {
        let mut next = Page::open(Some(&damaged));
        assert!(next.words("answer").contains("The spine will be"), "the page works: {damaged}");
        assert!(next.words("file-note").contains("cannot be read"), "{damaged}");
        // Not even by typing on, nor by closing the page once more.
        next.input("pages", "36");
        let mut third = next.again();
        third.act("restore", "yes");
        assert_eq!(third.draft().get("pages"), "36");
        third.act("save-kept", "");
        assert_eq!(third.saved_files.last().unwrap().1, damaged);
        third.input("pages", "40");
        assert!(!third.stored.as_ref().unwrap().contains("unread"), "once saved it is not kept");
    }
    // What is whole makes no noise.
    assert!(Page::open(Some(&good)).shown("file-note").is_empty());
    assert!(Page::open(Some("")).shown("file-note").is_empty());
}

/// The module broke; a fresh one is given what was kept and says so.
#[test]
fn after_a_trap_the_form_is_as_it_was() {
    let mut page = Page::open(None);
    page.input("pages", "60 +");
    page.input("title", "Half a Title");
    let before = page.draft();
    let mut fresh = page.again();
    fresh.tell("trap", "", "unreachable");
    assert_eq!(fresh.draft(), before);
    assert!(fresh.words("file-note").contains("stumbled"));
    assert!(fresh.shown("restore").is_empty());
}

#[test]
fn where_nothing_can_be_kept_the_page_says_so() {
    let mut page = Page::open(None);
    page.tell("storage", "", "none");
    assert!(page.words("storage").contains("keeps nothing"));
    page.input("pages", "52");
    assert!(!page.last.iter().any(|patch| matches!(patch, Patch::Store { .. })));
}

/// Two pages of the same file keep their state in one place.
#[test]
fn what_another_page_keeps_is_kept_as_well() {
    let (mut here, mut there) = (Page::open(None), Page::open(None));
    there.input("title", "The Quiet Drum");
    there.act("version-keep", "");
    there.input("pages", "52");
    here.input("title", "Owls");
    let mine = here.stored.clone().unwrap();
    here.tell("elsewhere", "", there.stored.as_ref().unwrap());
    assert!(here.words("storage").contains("second window"));
    // There the next key finds what this page has stored, its own earlier state in it.
    there.input("pages", "5");
    there.tell("elsewhere", "", &mine);
    here.input("title", "Owls by Lamplight");
    here.tell("elsewhere", "", there.stored.as_ref().unwrap());
    let mut next = here.again();
    let mut found = Vec::new();
    while next.has("restore") && !next.shown("restore").is_empty() {
        next.act("restore", "yes");
        found.push((next.draft().get("title").to_owned(), next.draft().get("pages").to_owned()));
    }
    let job = |title: &str, pages: &str| (title.to_owned(), pages.to_owned());
    let quiet = |pages| job("The Quiet Drum", pages);
    assert_eq!(found, [job("Owls by Lamplight", "40 + 4"), quiet("5"), quiet("40 + 4")]);
}

/// A newer page of the same name may stand beside this one.
#[test]
fn what_another_page_keeps_and_nobody_here_can_read_is_kept_as_it_is() {
    let mut page = Page::open(None);
    page.input("pages", "52");
    page.tell("elsewhere", "", "{\"format\": \"quirefit-saved\", \"novelty\": 1}");
    assert!(page.words("file-note").contains("cannot be read"));
    let mut next = page.again();
    next.act("save-kept", "");
    assert!(next.saved_files.last().unwrap().1.contains("novelty"));
}
