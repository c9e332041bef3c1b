//! A figure explains itself.

use crate::Page;
use quirefit::page::Patch;

/// Ids of the figures in a piece of HTML.
fn figures_in(html: &str) -> Vec<String> {
    html.split(" id=\"ask-")
        .skip(1)
        .map(|after| format!("ask-{}", after.split('"').next().unwrap()))
        .collect()
}

#[test]
fn a_figure_explains_itself_and_gives_the_focus_back() {
    let mut page = Page::open(None);
    page.tell("toggle", "open-cover", "open");
    let answer = figures_in(page.shown("answer"));
    assert!(answer.len() >= 5, "{answer:?}");
    let cover = figures_in(page.shown("body-cover"));
    // The spine stands in the answer and in the cover's region: two elements, one figure.
    assert!(answer.contains(&"ask-spine-0-answer".to_owned()));
    assert!(cover.contains(&"ask-spine-0-body-cover".to_owned()));
    for figure in answer.iter().chain(&cover) {
        page.act("explain", figure);
        assert_eq!(page.focus, "explanation-title");
        assert_eq!(&page.noted, figure);
        assert!(page.words("explanation").contains("Where it comes from"), "{figure}");
        assert!(page.attrs[&("explanation".to_owned(), "hidden")].is_none());
        // Closed by its button, or by asking again.
        let close = if answer.contains(figure) { "explanation-close" } else { figure };
        page.act("explain", close);
        assert_eq!(&page.focus, figure, "the focus goes back to the very figure");
        assert!(page.shown("explanation").is_empty() && page.noted.is_empty());
        assert!(page.attrs[&("explanation".to_owned(), "hidden")].is_some());
    }
    // It follows what is typed meanwhile, and another figure takes its place.
    page.act("explain", "ask-spine-0-answer");
    let told = page.words("explanation");
    page.input("pages", "56 + 4");
    assert_ne!(page.words("explanation"), told);
    page.act("explain", "ask-spine-0-body-cover");
    assert_eq!(page.noted, "ask-spine-0-body-cover");
    page.act("explain", "");
    // Closing what is not open, and asking what nobody knows, does nothing.
    page.act("explain", "");
    for nothing in ["ask-moon_phase-0-answer", "ask-spine-0-nowhere", "ask-", "moon"] {
        page.act("explain", nothing);
        assert!(page.shown("explanation").is_empty(), "{nothing}");
    }
}

/// A figure that is no longer there takes its explanation with it.
#[test]
fn an_explanation_goes_with_its_figure() {
    let mut page = Page::open(None);
    page.tell("toggle", "open-stitches", "open");
    page.act("explain", "ask-stitch_pitch-0-body-stitches");
    assert!(!page.shown("explanation").is_empty());
    page.input("stitches", "1");
    assert!(page.shown("explanation").is_empty() && page.noted.is_empty());
    page.act("undo", "");
    page.act("explain", "ask-stitch_pitch-0-body-stitches");
    page.act("reading", "client");
    assert!(page.shown("explanation").is_empty(), "a client asked nothing");
}

/// All of them on paper, for whoever makes the book; a client's page holds nothing of it.
#[test]
fn every_figure_can_be_printed_with_its_explanation() {
    let mut page = Page::open(None);
    page.act("print-figures", "");
    assert!(page.last.iter().any(|patch| matches!(patch, Patch::Print {})));
    let told = page.words("appendix");
    for formula in
        ["S = 2 × H", "W = 2 × (width + wrap + cut)", "crown + 2 × leg", "Where it comes"]
    {
        assert!(told.contains(formula), "{formula}");
    }
    page.tell("print", "", "");
    page.tell("printed", "", "");
    assert!(page.shown("appendix").is_empty());
    page.act("reading", "client");
    page.act("print-figures", "");
    assert!(page.shown("appendix").is_empty());
}
