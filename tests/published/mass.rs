//! What paper and books weigh: P7, B13.

use crate::{near, planned};
use quirefit::units::{Gsm, Mm};

/// P7: an A4 leaf of 80 g/m² weighs 4.9896 g. Computed; an art school's paper page (dma.ufg.ac.at
/// 7054) has it too. Tolerance 0.0001 g, as given.
#[test]
fn p7_a_sheet_of_copier_paper() {
    near(Gsm(80.0).mass_of(Mm(210.0), Mm(297.0)).get(), 4.9896, 0.0001, "A4 at 80 g/m²");
}

/// B13: an A4 book of 32 pages of 90 g/m² weighs 89.8 g; an A5 book of 20 pages of 100 and a cover of
/// 170 g/m² 41.6 g. Computed from the nominal page, width × height: that mass is meant, the trade's
/// figure, not the sum of the leaves as they are cut. Tolerance 0.1 g, as given.
#[test]
fn b13_the_mass_of_the_nominal_page() {
    let a4 = planned(&[("pages", "32 self cover"), ("size", "A4"), ("paper", "90 gsm uncoated")]);
    near(a4.results.mass.unwrap().nominal_page.get(), 89.8, 0.1, "A4");
    let a5 = planned(&[
        ("pages", "20 + 4"),
        ("size", "A5"),
        ("paper", "100 gsm uncoated"),
        ("cover", "170 gsm uncoated"),
    ]);
    near(a5.results.mass.unwrap().nominal_page.get(), 41.6, 0.1, "A5");
}

/// The leaves as they are cut differ from the nominal page, a little less in a round book, a little
/// more in a square one; by hand for the A4 book of B13 with 8 sheets of 0.1125 mm (H 0.9):
/// round: wrap 0.5137 less the mean push-out (π/2)·3.5·0.1125 = 0.6185 makes the mean leaf 0.1048 mm
/// short, −0.0448 g; square: 0.9 less 2·3.5·0.1125 = 0.7875 makes it 0.1125 mm long, +0.0481 g.
/// Tolerance 0.0005 g, the rounding of these lines.
#[test]
fn b13_the_mass_of_the_leaves() {
    for (spine, expected) in [("round", -0.0448), ("square", 0.0481)] {
        let plan = planned(&[
            ("pages", "32 self cover"),
            ("size", "A4"),
            ("paper", "90 gsm uncoated bulk 1.25"),
            ("spine", spine),
        ]);
        let mass = plan.results.mass.unwrap();
        near((mass.book.nominal - mass.nominal_page).get(), expected, 0.0005, spine);
    }
}
