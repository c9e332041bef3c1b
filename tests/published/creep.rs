//! Creep: the trade's count of sheets and the fold's geometry, two quantities: B6–B8.

use crate::{EXACT, job_in, near, planned};
use core::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI};
use quirefit::book::Shape;
use quirefit::plan::plan;
use quirefit::shop::{self, Calibration, Shop};

/// B6: printers' published worked examples: one thickness for every sheet, n·t. 64 pages self cover
/// are 16 sheets in all, of 0.004 in: 0.064 in, exact. 48 pages of 135 g/m² at 1.0 cm³/g are 12 sheets
/// inside a cover that does not count: 1.62 mm, tolerance 0.005 as printed.
///
/// This is the innermost leaf against the nominal page; against the outermost leaf it is B7.
#[test]
fn b6_the_trade_counts_sheets() {
    let creep = |fields: &[(&str, &str)]| planned(fields).results.trade_creep.nominal;
    let self_cover =
        creep(&[("pages", "64 self cover"), ("size", "A5"), ("paper", "80 gsm 0.004 in")]);
    near(self_cover.inches(), 0.064, EXACT, "16 sheets of 0.004 in");
    for cover in ["135 gsm silk bulk 1.0", "300 gsm silk cover 0.3 mm"] {
        let covered = creep(&[
            ("pages", "48 + 4"),
            ("size", "A5"),
            ("paper", "135 gsm silk bulk 1.0"),
            ("cover", cover),
        ]);
        near(covered.get(), 1.62, 0.005, "12 sheets of 135 µm");
    }
}

/// B7: innermost against outermost leaf, 16 sheets of 0.1 mm, at a fold factor of 1, π/2 and 2:
/// 1.500, 2.356, 3.000 mm. Derived: factor × (n − 1)·t; the polylines of `tests/geometry.rs` measure
/// the last two. Tolerance 0.001 mm, as given.
#[test]
fn b7_geometry_counts_steps() {
    for (factor, expected) in [(1.0, 1.500), (FRAC_PI_2, 2.356), (2.0, 3.000)] {
        let note = "a measured dummy".to_owned();
        let round_fold = Some(Calibration { factor, error: 0.0, note });
        let shop = Shop { round_fold, ..shop::demo() };
        let fields = [("pages", "64 self cover"), ("size", "A5"), ("paper", "80 gsm 0.100 mm")];
        let results = plan(&job_in(&shop, &fields), &shop).results;
        let innermost = results.leaves.last().unwrap();
        assert_eq!(innermost.place, 16);
        near(innermost.push_out.nominal.get(), expected, 0.001, &format!("factor {factor}"));
    }
    // Without any dummy: round folds by geometry, square ones at the most they can.
    for (spine, expected) in [("round", 2.356), ("square", 3.000)] {
        let results = planned(&[
            ("pages", "64 self cover"),
            ("size", "A5"),
            ("paper", "80 gsm 0.100 mm"),
            ("spine", spine),
        ])
        .results;
        let push_out = results.leaves.last().unwrap().push_out.nominal.get();
        near(push_out, expected, 0.001, spine);
    }
}

/// B8: the factor of a round fold, lying open at 0°, 90° and 180°: 1.5708, 0.7854, 0. Derived: half
/// the angle that the fold still turns. Tolerance 1e-4, as given.
#[test]
#[expect(clippy::approx_constant, reason = "the figures as given, not the planner's own constants")]
fn b8_lying_open() {
    for (angle, expected) in [(0.0, 1.5708), (FRAC_PI_2, 0.7854), (PI, 0.0)] {
        near(Shape::ROUND.factor_open_at(angle), expected, 1e-4, &format!("open at {angle}"));
    }
    near(Shape::ROUND.factor_open_at(FRAC_PI_2), FRAC_PI_4, EXACT, "at a right angle");
}
