//! How thick a book is: P16, P17, B9, B10, B12.

use crate::{EXACT, job, near, planned};
use quirefit::units::{Leaves, Pages};

/// Closed thickness of so many pages of a paper, mm, nominal.
fn closed(pages: &str, paper: &str) -> f64 {
    planned(&[("pages", pages), ("size", "A5"), ("paper", paper)])
        .results
        .stack
        .closed
        .nominal
        .0
        .get()
}

/// P16: a publisher's cover guide of 2012 (yumpu 4711656): 100 leaves of 100 g/m² at 1.0 cm³/g make
/// 10 mm, of 80 g/m² at 1.5 make 12 mm. Exact.
#[test]
fn p16_a_hundred_leaves() {
    assert_eq!(Pages(200).leaves(), Leaves(100));
    near(closed("200", "100 gsm bulk 1.0"), 10.0, EXACT, "100 g/m² at 1.0");
    near(closed("200", "80 gsm bulk 1.5"), 12.0, EXACT, "80 g/m² at 1.5");
    // A trap in circulation: 100 pages of the latter are 6 mm, not 4.
    near(closed("100", "80 gsm bulk 1.5"), 6.0, EXACT, "100 pages");
}

/// P17: a Dutch paper consultancy, "Opdikking": 320 pages of 70 g/m² at 2.2 cm³/g make 24.64 mm.
/// Tolerance 0.01 mm, as printed. Its second figure, 22.67 mm pressed by 8 %, is of a pressed book; the
/// planner has no pressed thickness, because heads, nip and clinch meet the unpressed set.
#[test]
fn p17_bulky_book() {
    near(closed("320", "70 gsm bulk 2.2"), 24.64, 0.01, "320 pages");
}

/// B9: 50 folded sheets of 80 g/m² copier paper are about 10 mm closed, and 200 pages. Common practice;
/// a printer's thickness table agrees (100 leaves 10 mm). Tolerance 5 %: mixed makes of paper.
#[test]
fn b9_a_pack_of_copier_paper() {
    let fifty = job(&[("pages", "200"), ("size", "A4"), ("paper", "80 gsm copier")]);
    assert_eq!(fifty.sheets().get(), 50);
    near(closed("200", "80 gsm copier"), 10.0, 0.5, "50 folded sheets");
}

/// B10: a printer's FAQ: 128 pages of 135 g/m² coated at 1.0 make 8.64 mm, of 120 g/m² at 1.25 make
/// 9.6 mm. Exact.
#[test]
fn b10_a_printers_examples() {
    near(closed("128", "135 gsm silk bulk 1.0"), 8.64, EXACT, "135 g/m² coated");
    near(closed("128", "120 gsm uncoated bulk 1.25"), 9.6, EXACT, "120 g/m² uncoated");
}

/// B12: a square spine is usually left off below about 1.5 mm closed thickness. Common practice, no
/// source. A rule, so no tolerance: it speaks at 1.4 mm (14 leaves of 0.1), is silent at 1.6, and says
/// nothing of round spines.
#[test]
fn b12_thin_square_spines() {
    let warned = |pages, spine| {
        let fields = [
            ("pages", pages),
            ("size", "A5"),
            ("paper", "80 gsm uncoated 0.100 mm"),
            ("spine", spine),
        ];
        planned(&fields).findings.iter().any(|finding| finding.rule == "thin_square")
    };
    assert!(warned("28", "square"));
    assert!(!warned("32", "square"));
    assert!(!warned("28", "round"));
}
