//! Drawings as wide as the page, and in true size on a measured screen.

use crate::Page;

/// Width and height of the first drawing in an element, as its attributes say.
fn size_of(page: &Page, id: &str) -> (f64, f64) {
    let number = |name: &str| {
        let after = page.shown(id).split(&format!(" {name}=\"")).nth(1).unwrap();
        after.split('"').next().unwrap().parse().unwrap()
    };
    (number("width"), number("height"))
}

/// A bank card is 85.60 by 53.98 mm; its drawing has a millimetre round it. An inch is 96 pixels where
/// nobody has measured.
#[test]
fn a_bank_card_makes_the_size_true_and_is_remembered() {
    let mut page = Page::open(None);
    assert!(page.words("true-size").contains("About true size"), "{}", page.words("true-size"));
    let millimetre = |page: &Page| size_of(page, "card").0 / 87.6;
    assert!((millimetre(&page) - 96.0 / 25.4).abs() < 0.001);
    assert_eq!(page.values["card"], "324");
    assert!(page.stored.is_none());

    page.tell("input", "card", "428");
    assert!((millimetre(&page) - 5.0).abs() < 0.001);
    let (wide, high) = size_of(&page, "true-size");
    assert!((wide - 56.0 * 5.0).abs() < 0.01, "{wide}");
    assert!(
        page.words("true-size").contains("In true size on this screen"),
        "{}",
        page.words("true-size")
    );
    for (by, pixels) in [("1", "429"), ("-1", "428"), ("-1", "427"), ("1", "428")] {
        page.act("card", by);
        assert_eq!(page.values["card"], pixels);
    }
    // Thicker books are drawn thicker, in the same scale.
    page.input("pages", "80 + 4");
    assert!(size_of(&page, "true-size").1 > high);

    let again = page.again();
    assert!((millimetre(&again) - 5.0).abs() < 0.001);
    assert_eq!(again.values["card"], "428");
    page.tell("input", "card", "20");
    page.tell("input", "card", "NaN");
    assert!((millimetre(&page) - 5.0).abs() < 0.001, "no screen is like that");

    page.act("card", "");
    assert!(page.words("true-size").contains("About true size"));
    assert!(!page.stored.as_ref().unwrap().contains("\"card\""));
    assert_eq!(page.values["card"], "324");
}

/// The measure alone is worth keeping; the example is not.
#[test]
fn a_measured_screen_is_kept_without_a_job() {
    let mut page = Page::open(None);
    page.tell("input", "card", "428");
    let again = page.again();
    assert_eq!(again.values["card"], "428");
    assert!(again.shown("restore").is_empty() && again.shown("file-note").is_empty());
    assert_eq!(again.draft(), Page::open(None).draft());
}

/// A narrow page has narrow drawings, open regions included; so has paper, whose columns are narrow.
#[test]
fn drawings_are_laid_out_for_the_width() {
    let mut page = Page::open(None);
    page.tell("toggle", "open-cover", "open");
    let narrow = |page: &Page| {
        ["picture", "body-cover"].map(|id| page.shown(id).contains("class=\"drawing narrow "))
    };
    page.tell("width", "", "358");
    assert_eq!(narrow(&page), [true; 2]);
    let card = size_of(&page, "card");
    assert!(card.0 < card.1, "the card stands where it cannot lie");
    page.tell("width", "", "700");
    assert_eq!(narrow(&page), [false; 2]);
    page.tell("print", "", "");
    assert_eq!(narrow(&page), [true; 2]);
    assert!(page.words("true-size").contains("printed at 100 %"));
    page.tell("printed", "", "");
    assert_eq!(narrow(&page), [false; 2]);
    page.tell("width", "", "710");
    assert!(page.last.is_empty(), "nothing changes within a layout");
}
