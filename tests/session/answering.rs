//! When the answer changes, and how much of the page with it.

use crate::Page;
use crate::support::JSON;
use quirefit::advise::{Advice, MOST_TRIED};
use quirefit::draft::Draft;
use quirefit::job;
use quirefit::page::{EXAMPLE, Event, Patch, Session};
use quirefit::plan;
use quirefit::shop;
use quirefit::view::html::{Page as Frame, Scene, frame};
use quirefit::view::{Numbers, Printer, Reading, Screen};
use quirefit::words::{Files, Language, built_in};
use std::collections::BTreeSet;

/// A figure of the frame, as the build inlines it, has the id that it keeps once the page has started:
/// who is led to it before finds it after.
#[test]
fn figures_are_called_the_same_before_and_after_the_start() {
    let (language, shop, draft) = (Language::first(), shop::demo(), Draft::of(EXAMPLE));
    let words = language.words(&built_in());
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let job = job::read(&draft, &shop).job.unwrap();
    let plan = plan::plan(&job, &shop);
    let advice = Advice::searched(&draft, &job, &shop, &plan, MOST_TRIED);
    let scene = Scene {
        job: &job,
        shop: &shop,
        plan: &plan,
        advice: &advice,
        versions: &[],
        ticks: &quirefit::view::Ticks::default(),
        printer,
        reading: Reading::Design,
        screen: Screen::default(),
    };
    let page =
        Frame { draft: &draft, shop: &shop, printer, language, built: "", scene: Some(scene) };
    let asked = |html: &str| -> BTreeSet<String> {
        let ids = html.split(" id=\"ask-").skip(1);
        ids.map(|rest| rest.split('"').next().unwrap().to_owned()).collect()
    };
    let before = asked(&frame(&page).into_string());
    let after: BTreeSet<String> =
        Page::open(None).html.values().flat_map(|html| asked(html)).collect();
    assert!(before.len() > 10, "{before:?}");
    assert_eq!(before, after);
}

/// The commit stands below the page, in every language, as text.
#[test]
fn the_page_says_what_it_was_built_from() {
    for (commit, told) in [
        ("0123abc", "built from 0123abc"),
        ("0123abc+", "built from 0123abc, with changes since"),
        ("", ""),
    ] {
        let session = Session::new(Files::new(), &["en-GB".to_owned()], None, JSON);
        let mut session = session.built_from(commit);
        let patches = session.handle(&Event::new("change", "language", "en-US"));
        let page = patches.iter().find_map(|patch| match patch {
            Patch::Html { id, html } if id == "page" => Some(html.as_str()),
            _ => None,
        });
        let after = page.unwrap().split("id=\"version\">").nth(1).unwrap();
        let line = after.split("</p>").next().unwrap().trim();
        assert!(
            line.ends_with(if told.is_empty() { env!("CARGO_PKG_VERSION") } else { told }),
            "{line}"
        );
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

#[test]
fn only_what_changed_is_patched() {
    let mut page = Page::open(None);
    page.input("title", "One");
    page.input("title", "Two");
    let patched = page.patched();
    assert!(
        patched.iter().all(|id| *id == "answer"),
        "a title changes no more than itself: {patched:?}"
    );
    page.input("title", "Two");
    assert!(page.last.is_empty(), "the same again changes nothing: {:?}", page.last);
    page.input("copies", "900");
    let patched = page.patched();
    assert!(!patched.contains(&"picture"), "copies do not change the picture: {patched:?}");
    assert!(!patched.contains(&"echo-pages") && patched.contains(&"echo-copies"), "{patched:?}");
    page.tell("rest", "", "");
    assert!(page.patched().is_empty(), "nothing has changed since: {:?}", page.patched());
    for (kind, id, value) in [
        ("input", "no such field", "1"),
        ("act", "dance", ""),
        ("wave", "", ""),
        ("toggle", "x", "open"),
    ] {
        page.tell(kind, id, value);
        assert!(page.last.is_empty(), "{kind} {id}: {:?}", page.last);
    }
}

/// While something is incomplete the last answer stays, and says which book it is about.
#[test]
fn a_half_typed_field_leaves_the_last_answer() {
    let mut page = Page::open(None);
    page.input("pages", "60 + 4");
    let spine = page.words("answer");
    page.input("pages", "60 +");
    assert_eq!(page.attrs[&("answer".to_owned(), "class")].as_deref(), Some("stale"));
    assert!(page.words("answer").contains("For 64 pages"), "{}", page.words("answer"));
    assert!(page.shown("echo-pages").is_empty(), "half typed is no fault");
    page.input("pages", "three score");
    assert!(page.words("echo-pages").contains("not a page count"));
    assert_eq!(page.attrs[&("input-pages".to_owned(), "aria-invalid")].as_deref(), Some("true"));
    page.input("pages", "60 + 4");
    assert_eq!(page.words("answer"), spine);
    assert!(page.attrs[&("input-pages".to_owned(), "aria-invalid")].is_none());
    page.input("paper", "");
    assert!(page.words("answer").contains("Still to say: Paper inside"));
}

#[test]
fn a_question_is_answered_with_a_tap() {
    let mut page = Page::open(None);
    page.type_into("paper", "80 lb");
    let echo = page.shown("echo-paper").to_owned();
    assert!(echo.contains("data-act=\"choose:paper\""), "{echo}");
    let answer = echo.split("data-value=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
    page.act("choose:paper", &answer);
    assert_eq!(page.draft().get("paper"), answer);
    assert_eq!(page.focus, "input-paper");
    assert!(!page.shown("echo-paper").contains("class=\"question\""));
    page.act("undo", "");
    assert_eq!(page.draft().get("paper"), "80 lb");
}

#[test]
fn the_verdict_is_announced_once() {
    let mut page = Page::open(None);
    assert_eq!(page.announced, ["Yes."]);
    page.input("copies", "700");
    assert_eq!(page.announced.len(), 1);
    page.input("pages", "400 + 4");
    assert_eq!(page.announced.last().map(String::as_str), Some("No."));
    page.input("pages", "404 + 4");
    assert_eq!(page.announced.len(), 2);
}
