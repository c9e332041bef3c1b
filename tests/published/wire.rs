//! Wire, legs, stitches: W1–W6, W8, W9.
//!
//! W7 (7.5 s for a set of ten sheets) is not here: it needs station times that only an invented line
//! holds, so it would test itself. X2 is not here: it collects signatures of eight pages, and this
//! planner knows sheets folded once.

use crate::{EXACT, near, planned};
use quirefit::data::WIRES;
use quirefit::finishing::{draw, leg, usual_count, wire_mass};
use quirefit::units::{FlatStack, GRAM_PER_POUND, Gram, MM_PER_INCH, Mm};

/// Inches of a wire in so many grams.
fn inches(diameter: f64, mass: Gram) -> f64 {
    mass / wire_mass(Mm::from_inches(diameter), Mm(MM_PER_INCH))
}

/// W1: Rowlett, "How Many?", wire gauges: Washburn & Moen 24 is 0.584 mm, 25 is 0.518, 26 is 0.460.
/// Tolerance 0.001 mm: three places are printed. The same numbers of two other systems are other
/// wires: SWG 24 0.559 and 26 0.457 mm (same source); AWG by its definition, 0.127 mm · 92^((36−n)/39).
#[test]
fn w1_numbers_of_the_stitching_trade() {
    let of = |gauge: &str| WIRES.iter().find(|row| row.gauge == gauge).unwrap().diameter.get();
    for (gauge, diameter) in [("24", 0.584), ("25", 0.518), ("26", 0.460)] {
        near(of(gauge), diameter, 0.001, gauge);
        let awg = 0.127 * 92_f64.powf((36.0 - gauge.parse::<f64>().unwrap()) / 39.0);
        assert!((of(gauge) - awg).abs() > 0.02, "{gauge} is not AWG, which is {awg}");
    }
    near(0.127 * 92_f64.powf(12.0 / 39.0), 0.511, 0.001, "AWG 24");
    assert!((of("24") - 0.559).abs() > 0.01 && (of("26") - 0.457).abs() > 0.002, "nor SWG");
}

/// W2: computed from 7.85 g/cm³ (EN 1991-1-1, table A.4): 0.50 mm is 1.541 g/m, 0.60 mm 2.220.
/// Tolerance 0.1 %: three places are printed.
#[test]
fn w2_mass_of_a_metre() {
    for (diameter, grams) in [(0.50, 1.541), (0.60, 2.220)] {
        near(wire_mass(Mm(diameter), Mm(1000.0)).get(), grams, grams * 0.001, "g/m");
    }
}

/// W3: a wire maker's data page: 0.0230 in is about 8,496 in/lb, 0.0204 in 10,800. Tolerance 0.2 %: its
/// density is rounded otherwise than the standard's.
#[test]
fn w3_length_of_a_pound() {
    for (diameter, length) in [(0.0230, 8_496.0), (0.0204, 10_800.0)] {
        near(inches(diameter, Gram(GRAM_PER_POUND)), length, length * 0.002, "in/lb");
    }
}

/// W4: office-staple dimensions: crown 12 and legs 5 mm are bent from 22 mm. Exact.
#[test]
fn w4_wire_of_a_stitch() {
    near(draw(Mm(12.0), Mm(5.0)).get(), 22.0, EXACT, "crown 12, legs 5");
}

/// W5: "Heftklammer", encyclopaedia article: legs of 6, 8, 10, 13 mm take at most 30, 50, 70, 100 sheets
/// (of 0.1 mm, so the least clinch is 3 mm). Tolerance 5 %: whole sheets, rounded to tens.
#[test]
fn w5_legs_and_sheets() {
    for (sheets, length) in [(30.0, 6.0), (50.0, 8.0), (70.0, 10.0), (100.0, 13.0)] {
        near(leg(FlatStack(Mm(sheets * 0.1)), Mm(3.0)).get(), length, length * 0.05, "leg");
    }
}

/// W6: common practice: two copies along the fold take four stitches, three take six. Exact, for copies
/// short enough to take two each.
#[test]
fn w6_copies_along_the_fold() {
    for (up, stitches) in [("1", 2), ("2", 4), ("3", 6)] {
        let plan = planned(&[
            ("pages", "32"),
            ("size", "A6"),
            ("paper", "115 gsm silk 0.090 mm"),
            ("copies_up", up),
        ]);
        assert_eq!(plan.results.stitches.placement.total(), stitches, "{up} along the fold");
    }
    assert_eq!(
        [210.0, 320.0, 321.0, 420.0, 421.0].map(|spine| usual_count(Mm(spine))),
        [2, 2, 3, 3, 4]
    );
}

/// W8: computed: 300,000 stitches of 25 mm in 0.518 mm wire weigh about 12.4 kg. Tolerance 1 %: "about".
#[test]
fn w8_a_spool() {
    let grams = wire_mass(Mm(0.518), Mm(25.0)).get() * 300_000.0;
    near(grams, 12_400.0, 124.0, "300,000 stitches");
}

/// W9: the wire maker's data page: ten pounds of 0.0204 in wire are 108,000 in. Tolerance 0.5 %: given in
/// round thousands. The same page as W3, in its own words for a spool.
#[test]
fn w9_ten_pounds() {
    near(inches(0.0204, Gram(10.0 * GRAM_PER_POUND)), 108_000.0, 540.0, "ten pounds");
}
