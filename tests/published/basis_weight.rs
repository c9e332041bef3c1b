//! Basis weight in pounds to grammage: P1–P6, and the traps about pounds and points.

use crate::{EXACT, leaf, near, stock};
use quirefit::data::{BASIS_SIZES, BasisSize};
use quirefit::entry::{self, LengthUnit, Reading};
use quirefit::paper;
use quirefit::units::{GRAM_PER_POUND, MM_PER_INCH};

fn basis(id: &str) -> &'static BasisSize {
    BASIS_SIZES.iter().find(|row| row.id == id).unwrap()
}

fn grams(pounds: f64, grade: &str) -> f64 {
    paper::pounds(pounds, basis(grade)).get()
}

/// P1–P4: computed from the exact pound and inch. PrintWiki, "Grammage", prints 75.2 for P1 and the
/// factors 1.480 (P2) and 2.704 (P3). Tolerance 0.01 g/m²: the figures are given to two places.
#[test]
fn p1_to_p4_pounds_are_grams() {
    for (pounds, grade, expected) in [
        (20.0, "bond", 75.195),
        (50.0, "text", 74.01),
        (70.0, "text", 103.61),
        (100.0, "text", 148.01),
        (65.0, "cover", 175.77),
        (80.0, "cover", 216.33),
        (90.0, "cover", 243.37),
        (110.0, "index", 198.88),
        (67.0, "bristol", 146.92),
        (100.0, "tag", 162.75),
    ] {
        near(grams(pounds, grade), expected, 0.01, &format!("{pounds} lb {grade}"));
    }
    // The factors as PrintWiki prints them, three places.
    near(grams(1.0, "text"), 1.480, 0.0005, "factor of text");
    near(grams(1.0, "cover"), 2.704, 0.0005, "factor of cover");
    near(grams(20.0, "bond"), 75.2, 0.05, "20 lb bond as the handbook prints it");
}

/// P2, P3 as typed by a person: the same numbers come through the reader.
#[test]
fn p2_p3_typed_pounds_are_the_same() {
    for (typed, expected) in
        [("100# text", 148.01), ("80 lb cover", 216.33), ("20 lb bond", 75.195)]
    {
        let nominal = paper::grammage(&stock(typed)).unwrap().nominal.get();
        near(nominal, expected, 0.01, typed);
    }
}

/// P5: a published basis-weight conversion chart (documentde 985135), whole g/m². No tolerance:
/// rounded to whole grams every row must agree.
#[test]
fn p5_conversion_chart() {
    const CHART: [(f64, &str, f64); 35] = [
        (17.0, "text", 25.0),
        (20.0, "text", 30.0),
        (8.0, "bond", 30.0),
        (9.0, "bond", 34.0),
        (24.0, "text", 36.0),
        (30.0, "text", 44.0),
        (12.0, "bond", 45.0),
        (33.0, "text", 49.0),
        (13.0, "bond", 49.0),
        (35.0, "text", 52.0),
        (40.0, "text", 59.0),
        (16.0, "bond", 60.0),
        (43.0, "text", 64.0),
        (45.0, "text", 67.0),
        (50.0, "text", 74.0),
        (20.0, "bond", 75.0),
        (55.0, "text", 81.0),
        (60.0, "text", 89.0),
        (24.0, "bond", 90.0),
        (70.0, "text", 104.0),
        (28.0, "bond", 105.0),
        (40.0, "cover", 108.0),
        (75.0, "text", 111.0),
        (80.0, "text", 118.0),
        (32.0, "bond", 120.0),
        (57.0, "bristol", 125.0),
        (90.0, "text", 133.0),
        (50.0, "cover", 135.0),
        (36.0, "bond", 135.0),
        (97.0, "text", 144.0),
        (67.0, "bristol", 147.0),
        (100.0, "text", 148.0),
        (55.0, "cover", 149.0),
        (40.0, "bond", 150.0),
        (105.0, "text", 155.0),
    ];
    for (pounds, grade, expected) in CHART {
        let found = grams(pounds, grade).round();
        assert!(found == expected, "{pounds} lb {grade}: {found}, chart {expected}");
    }
}

/// P6: 500 sheets of 17 × 22 in are 120.645 m². Georgia Tech lecture "Structural Characteristics
/// of Paper" prints 120.6. Tolerance 0.001 m²: given to three places. The planner keeps no area of
/// its own; it is the grams of a pound over the grammage that one pound makes.
#[test]
fn p6_area_of_a_ream() {
    near(GRAM_PER_POUND / grams(1.0, "bond"), 120.645, 0.001, "ream of 17 × 22 in");
}

/// Traps in circulation. Bristol is 22.5 × 28.5 in, not 22.5 × 30.5; ten points are ten thousandths of
/// an inch, not a tenth of a millimetre; 80 lb text and 80 lb cover are two papers, so bare pounds are
/// a question. Sources: the definitions of basis weight and caliper point.
#[test]
fn traps_in_circulation() {
    let wrong_bristol = 67.0 * GRAM_PER_POUND / (500.0 * 22.5 * 30.5 * (MM_PER_INCH / 1e3).powi(2));
    assert!((grams(67.0, "bristol") - wrong_bristol).abs() > 9.0);
    near(leaf("10 pt board").get(), 0.254, EXACT, "10 points");
    let bare = entry::paper("80 lb", LengthUnit::Millimetre);
    assert!(matches!(bare, Reading::Ask(_)), "{bare:?}");
}
