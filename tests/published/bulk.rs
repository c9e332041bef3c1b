//! Thickness for weight, volume numbers, pages to the inch: P8–P13.

use crate::{EXACT, leaf, near, planned, stock};
use quirefit::paper::{self, thickness};
use quirefit::units::{Bulk, Gsm};

/// P8: ISO 534 defines specific volume: µm = g/m² × cm³/g. Exact.
#[test]
fn p8_specific_volume() {
    for (grammage, bulk, microns) in [(80.0, 1.3, 104.0), (60.0, 1.5, 90.0), (60.0, 2.0, 120.0)] {
        near(thickness(Gsm(grammage), Bulk(bulk)).microns(), microns, EXACT, "ISO 534");
        // And back: typed as a thickness it is the same leaf as typed as a bulk.
        let by_bulk = leaf(&format!("{grammage} gsm bulk {bulk}"));
        let by_thickness = leaf(&format!("{grammage} gsm {microns} µm"));
        near(by_bulk.microns(), by_thickness.microns(), EXACT, "the same leaf");
    }
}

/// P9: "Book paper", encyclopaedia article: volume number 15 at 80 g/m² is 120 µm, 11 is 88. Exact:
/// the volume number is ten times the specific volume by definition.
#[test]
fn p9_volume_number() {
    near(leaf("80 gsm vol 15").microns(), 120.0, EXACT, "volume 15");
    near(leaf("80 gsm vol 11").microns(), 88.0, EXACT, "volume 11");
}

/// P10: "Main (papeterie)", encyclopaedia article: 250 sheets of 200 g/m² measure 75 mm, bulk 1.5;
/// 5 sheets of 180 g/m² measure 1.8 mm, bulk 2.0. Exact.
#[test]
fn p10_bulk_of_a_measured_pack() {
    for (typed, bulk) in [("200 gsm, 250 sheets = 75 mm", 1.5), ("180 gsm, 5 sheets = 1.8 mm", 2.0)]
    {
        let pack = stock(typed);
        let grammage = paper::grammage(&pack).unwrap().nominal.get();
        let leaf = paper::caliper(&pack).unwrap().value.nominal;
        near(leaf.microns() / grammage, bulk, EXACT, typed);
    }
}

/// P11: Wheelwright, "From Paper-Mill to Pressroom" (1920): where four sheets measure 0.016 in there
/// are 500 pages to the inch, and 320 pages make 0.64 in. Exact.
#[test]
fn p11_pages_to_the_inch() {
    near(leaf("80 gsm 500 ppi").inches() * 4.0, 0.016, EXACT, "four sheets");
    let plan = planned(&[("pages", "320"), ("size", "A5"), ("paper", "80 gsm 500 ppi")]);
    near(plan.results.stack.closed.nominal.0.inches(), 0.64, EXACT, "320 pages");
}

/// P12: Wheelwright (1920), bulking table: thickness of four sheets in thousandths of an inch, pages
/// to the inch. Tolerance 0.6 pages to the inch: printed whole, half a page, and the book rounds 363.6
/// and 296.3 its own way.
/// P13: a US book-paper weight page (straubpublishing): 0.0038 in is 526, 0.0048 in 417. Tolerance
/// 0.5: printed whole.
#[test]
fn p12_p13_bulking_table() {
    const FOUR_SHEETS: [(f64, f64); 17] = [
        (8.0, 1000.0),
        (9.0, 889.0),
        (10.0, 800.0),
        (11.0, 727.0),
        (12.0, 667.0),
        (13.0, 615.0),
        (14.0, 571.0),
        (15.0, 533.0),
        (16.0, 500.0),
        (17.0, 471.0),
        (18.0, 444.0),
        (20.0, 400.0),
        (22.0, 364.0),
        (24.0, 333.0),
        (25.0, 320.0),
        (27.0, 296.0),
        (30.0, 267.0),
    ];
    for (mils, pages) in FOUR_SHEETS {
        // The planner turns the printed pages into a leaf; a slip of so many pages to the inch moves
        // the leaf by the same share.
        let four = leaf(&format!("{pages} ppi")).inches() * 4.0 * 1000.0;
        near(four, mils, mils * 0.6 / pages, &format!("{pages} pages to the inch"));
    }
    for (inches, pages) in [(0.0038, 526.0), (0.0048, 417.0)] {
        let found = leaf(&format!("{pages} ppi")).inches();
        near(found, inches, inches * 0.5 / pages, &format!("{pages} pages to the inch"));
    }
}
