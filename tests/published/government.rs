//! Government Paper Specification Standards, vol. 11, 1 February 1999 (the grades' JCP sheets), and
//! one grade of vol. 12: P14, P15.
//!
//! The bands of the stock kinds were drawn from the rows of [`DRAWN_FROM`], so that those lie inside
//! proves only that nobody has since narrowed a band. The test of the bands is [`OTHERS`]: rows that
//! had no part in making them.

use crate::near;
use quirefit::data::{BASIS_SIZES, stock_kind};
use quirefit::paper::{self, Stock, Thickness, Weight};
use quirefit::units::{Gsm, Mm};

/// One column of a standard's sheet.
#[derive(Debug, Clone, Copy)]
struct Row {
    /// The sheet.
    grade: &'static str,
    /// The stock kind that a person would choose for it.
    kind: &'static str,
    /// The basic size that its pounds are quoted for.
    basis: &'static str,
    /// Basis weight as listed.
    pounds: f64,
    /// Grammage as listed.
    grammage: f64,
    /// Thickness as listed, mm.
    leaf: f64,
    /// The sheet's own tolerance of thickness, mm either way.
    tolerance: f64,
}

const fn row(
    grade: &'static str,
    kind: &'static str,
    basis: &'static str,
    (pounds, grammage, leaf): (f64, f64, f64),
    tolerance: f64,
) -> Row {
    Row { grade, kind, basis, pounds, grammage, leaf, tolerance }
}

/// P14. Heat-set web offset book (A55), 100 % recycled offset book (A70), plain copier and laser
/// (O-63), index (K10), newsprint (A10).
const DRAWN_FROM: [Row; 20] = [
    row("A55", "uncoated", "text", (40.0, 60.0, 0.075), 0.013),
    row("A55", "uncoated", "text", (50.0, 75.0, 0.100), 0.013),
    row("A55", "uncoated", "text", (60.0, 90.0, 0.120), 0.013),
    row("A55", "uncoated", "text", (70.0, 105.0, 0.140), 0.013),
    row("A55", "uncoated", "text", (80.0, 120.0, 0.160), 0.013),
    row("A70", "recycled", "text", (40.0, 60.0, 0.075), 0.013),
    row("A70", "recycled", "text", (45.0, 67.0, 0.090), 0.013),
    row("A70", "recycled", "text", (50.0, 75.0, 0.105), 0.013),
    row("A70", "recycled", "text", (60.0, 90.0, 0.130), 0.013),
    row("O-63", "copier", "bond", (20.0, 75.0, 0.095), 0.008),
    row("O-63", "copier", "bond", (24.0, 90.0, 0.105), 0.008),
    row("O-63", "copier", "bond", (28.0, 105.0, 0.120), 0.008),
    row("K10", "card", "index", (90.0, 165.0, 0.190), 0.013),
    row("K10", "card", "index", (110.0, 200.0, 0.230), 0.013),
    row("K10", "card", "index", (140.0, 255.0, 0.290), 0.013),
    row("K10", "card", "index", (170.0, 305.0, 0.350), 0.020),
    row("A10", "newsprint", "newsprint", (28.0, 45.0, 0.075), 0.013),
    row("A10", "newsprint", "newsprint", (30.0, 50.0, 0.080), 0.013),
    // Two more of the same sheet, beyond P14: 40 → 0.070 is the upper end of the band.
    row("A10", "newsprint", "newsprint", (25.0, 40.0, 0.070), 0.013),
    row("A10", "newsprint", "newsprint", (32.0, 52.0, 0.090), 0.013),
];

/// Rows that the bands were not drawn from: smooth-finish book (A91), coloured offset book (A63),
/// writing (D10), ledger (J10), cotton index (K30), gloss coated book (A175).
const OTHERS: [Row; 14] = [
    row("A91", "uncoated", "text", (70.0, 105.0, 0.140), 0.008),
    row("A91", "uncoated", "text", (80.0, 120.0, 0.160), 0.008),
    row("A91", "uncoated", "text", (100.0, 150.0, 0.200), 0.013),
    row("A63", "uncoated", "text", (50.0, 75.0, 0.100), 0.013),
    row("A63", "uncoated", "text", (60.0, 90.0, 0.120), 0.013),
    row("A63", "uncoated", "text", (70.0, 105.0, 0.140), 0.013),
    row("D10", "copier", "bond", (16.0, 60.0, 0.075), 0.011),
    row("D10", "copier", "bond", (20.0, 75.0, 0.095), 0.011),
    row("J10", "copier", "bond", (24.0, 90.0, 0.105), 0.013),
    row("J10", "copier", "bond", (28.0, 105.0, 0.120), 0.013),
    row("J10", "copier", "bond", (32.0, 120.0, 0.135), 0.013),
    row("J10", "copier", "bond", (44.0, 165.0, 0.185), 0.013),
    row("K30", "card", "index", (125.0, 225.0, 0.255), 0.013),
    row("A175", "gloss", "text", (38.0, 55.0, 0.055), 0.013),
];

/// The thickness that the planner would give a row's paper from its kind alone.
fn from_kind(row: &Row) -> quirefit::units::Band<Mm> {
    let kind = stock_kind(row.kind).unwrap();
    let stock = Stock { kind, ..Stock::of_weight(Gsm(row.grammage)) };
    paper::caliper(&stock).unwrap().value
}

/// How far a row's thickness lies outside the band of its kind, µm: below negative, above positive.
fn outside(row: &Row) -> f64 {
    let band = from_kind(row);
    let leaf = Mm(row.leaf);
    // A nanometre: 50 → 0.080 lies exactly on the end of its band.
    let noise = Mm(1e-6);
    if leaf < band.low - noise {
        (leaf - band.low).microns()
    } else if leaf > band.high + noise {
        (leaf - band.high).microns()
    } else {
        0.0
    }
}

/// P14: no band has been narrowed below the rows that it was drawn from. Exact.
#[test]
fn p14_bands_hold_the_rows_they_were_drawn_from() {
    for row in &DRAWN_FROM {
        assert!(outside(row) == 0.0, "{row:?}: {} µm outside", outside(row));
    }
}

/// P14: the bands hold the rows that they were not drawn from, all but three. The three, and by how much:
/// ledger 120 and 165 g/m² lie 0.6 and 1.5 µm below the copier band, and the light gloss book 55 g/m²
/// 5.5 µm above the gloss band. The standard allows each 13 µm, so the bands are not refuted, but they
/// are narrower than what the government buys: coated paper below 60 g/m² is bulkier than the band
/// says. Tolerance 0.1 µm, the rounding of the figures in this sentence.
#[test]
fn p14_bands_hold_other_rows() {
    let known: [(&str, f64, f64); 3] =
        [("J10", 120.0, -0.6), ("J10", 165.0, -1.45), ("A175", 55.0, 5.5)];
    for row in &OTHERS {
        let expected = known
            .iter()
            .find(|(grade, grammage, _)| row.grade == *grade && row.grammage == *grammage)
            .map_or(0.0, |(_, _, microns)| *microns);
        near(outside(row), expected, 0.1, &format!("{row:?}"));
        assert!(outside(row).abs() <= row.tolerance * 1000.0, "{row:?}: refuted");
    }
}

/// Ledger is also uncoated paper; whoever calls it that finds all four rows inside.
#[test]
fn p14_ledger_is_uncoated_paper() {
    for row in OTHERS.iter().filter(|row| row.grade == "J10") {
        let row = Row { kind: "uncoated", ..*row };
        assert!(outside(&row) == 0.0, "{row:?}: {} µm outside", outside(&row));
    }
}

/// The plain copier sheet of vol. 12 (1 September 2007) lists pounds and mils, no metric column: 21/22
/// lb 3.8, 24 lb 4.1, 28 lb 4.7 mil. No tolerance: inside the copier band at the exact grammage.
#[test]
fn p14_copier_band_holds_the_later_volume() {
    let kind = stock_kind("copier").unwrap();
    let bond = BASIS_SIZES.iter().find(|row| row.id == "bond").unwrap();
    for (pounds, mils) in [(21.0, 3.8), (22.0, 3.8), (24.0, 4.1), (28.0, 4.7)] {
        let stock = Stock {
            weight: Some(Weight::Pounds(pounds, bond)),
            kind,
            ..Stock::of_weight(Gsm(1.0))
        };
        let band = paper::caliper(&stock).unwrap().value;
        let leaf = Mm::from_mils(mils);
        assert!(band.low <= leaf && leaf <= band.high, "{pounds} lb: {leaf:?} in {band:?}");
    }
}

/// Mimeograph (B10, 75 g/m², 0.130 mm) is uncoated paper of 1.73 cm³/g: 25 µm above the uncoated band,
/// more than the 13 µm that its sheet allows. A paper made to drink ink is no offset paper: the bulky
/// band holds it. Kept here so that nobody takes the uncoated band for all that is uncoated.
#[test]
fn p14_the_uncoated_band_is_not_all_uncoated_paper() {
    let mimeograph = row("B10", "uncoated", "bond", (20.0, 75.0, 0.130), 0.013);
    near(outside(&mimeograph), 25.0, 0.1, "mimeograph among the uncoated");
    assert!(outside(&Row { kind: "bulky", ..mimeograph }) == 0.0);
}

/// A thickness that the mill gives is not held to be surer than the standard holds it: the planner's
/// doubt (5 %, or the tolerance of its kind where that is more) reaches the sheet's own tolerance. 5 %
/// alone would not, on 17 of the 18 rows of P14.
///
/// Writing and ledger fall short as copier paper: their sheets allow 11 and 13 µm, but the copier's own
/// (O-63) allows 8. The reader takes the word "writing" for copier paper; of "ledger" it knows only the
/// basic size. Listed with the shortfall in µm. Tolerance 0.01 µm, the rounding
/// of the list.
#[test]
fn p14_the_mills_figure_is_as_doubtful_as_the_standard_says() {
    let known: [(&str, f64, f64); 6] = [
        ("D10", 60.0, 3.0),
        ("D10", 75.0, 3.0),
        ("J10", 90.0, 5.0),
        ("J10", 105.0, 5.0),
        ("J10", 120.0, 5.0),
        // Here 5 % of 0.185 mm is already more than 8 µm.
        ("J10", 165.0, 3.75),
    ];
    for row in DRAWN_FROM.iter().chain(&OTHERS) {
        let stock = Stock {
            kind: stock_kind(row.kind).unwrap(),
            thickness: Thickness::Caliper(Mm(row.leaf)),
            ..Stock::of_weight(Gsm(row.grammage))
        };
        let band = paper::caliper(&stock).unwrap().value;
        near(band.nominal.get(), row.leaf, 0.0, row.grade);
        near(band.above().get(), band.below().get(), 1e-12, row.grade);
        let short = (row.tolerance - band.above().get()).max(0.0) * 1000.0;
        let expected = known
            .iter()
            .find(|(grade, grammage, _)| row.grade == *grade && row.grammage == *grammage)
            .map_or(0.0, |(_, _, microns)| *microns);
        near(short, expected, 0.01, &format!("{row:?}"));
    }
}

/// The sheets allow the weight 5 %, index 10 %. Exact.
#[test]
fn p14_tolerance_of_weight() {
    for row in DRAWN_FROM.iter().chain(&OTHERS) {
        let allowed = if row.basis == "index" { 0.10 } else { 0.05 };
        let kind = stock_kind(row.kind).unwrap();
        let stock = Stock { kind, ..Stock::of_weight(Gsm(row.grammage)) };
        let band = paper::grammage(&stock).unwrap();
        near(band.above().get(), row.grammage * allowed, 1e-9, row.grade);
        near(band.below().get(), row.grammage * allowed, 1e-9, row.grade);
    }
}

/// P15: the sheets' grammage is a rounded nominal beside the pounds, not a conversion: 50 lb text is
/// 74.0 g/m² and listed 75. Tolerance 2.5 %: the worst is newsprint 30 lb, 48.8 listed 50 (2.4 %).
#[test]
fn p15_the_metric_column_is_rounded() {
    let mut worst: f64 = 0.0;
    for row in DRAWN_FROM.iter().chain(&OTHERS) {
        let basis = BASIS_SIZES.iter().find(|basis| basis.id == row.basis).unwrap();
        let exact = paper::pounds(row.pounds, basis).get();
        let share = row.grammage / exact - 1.0;
        near(share, 0.0, 0.025, &format!("{row:?} is {exact}"));
        worst = worst.max(share.abs());
    }
    // Were they conversions, the worst would be the rounding to whole grams, a hundredth at most.
    assert!(worst > 0.02, "{worst}");
}
