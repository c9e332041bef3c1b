//! Named sizes: P18, P19.

use crate::{EXACT, near};
use quirefit::data::{FINISHED_SIZES, NamedSize, PRESS_SHEETS, SHOP_DEFAULTS};
use quirefit::units::MM_PER_INCH;

fn find(rows: &[NamedSize], name: &str) -> (f64, f64) {
    let row = rows.iter().find(|row| row.name == name).unwrap_or_else(|| panic!("{name}"));
    (row.size.width.get(), row.size.height.get())
}

/// P18: ISO 216 and ISO 217 in whole millimetres; as Debian's libpaper-utils 1.1.29 prints them,
/// `paperconf -a -n -m -s` (it knows no RA and SRA: those from ISO 217). Inch sizes by definition.
/// Exact.
#[test]
fn p18_sizes_of_the_standards() {
    for (name, width, height) in [
        ("A3", 297.0, 420.0),
        ("A4", 210.0, 297.0),
        ("A5", 148.0, 210.0),
        ("A6", 105.0, 148.0),
        ("A7", 74.0, 105.0),
        ("A8", 52.0, 74.0),
        ("B4", 250.0, 353.0),
        ("B5", 176.0, 250.0),
        ("B6", 125.0, 176.0),
        ("B7", 88.0, 125.0),
        ("Letter", 215.9, 279.4),
        ("Half Letter", 139.7, 215.9),
        ("Legal", 215.9, 355.6),
        ("Tabloid", 279.4, 431.8),
    ] {
        let found = find(&FINISHED_SIZES, name);
        near(found.0, width, EXACT, name);
        near(found.1, height, EXACT, name);
    }
    for (name, width, height) in [
        ("SRA3", 320.0, 450.0),
        ("RA2", 430.0, 610.0),
        ("A4", 210.0, 297.0),
        // archB of the same list.
        ("12 × 18 in", 304.8, 457.2),
        ("11 × 17 in", 279.4, 431.8),
    ] {
        let found = find(&PRESS_SHEETS, name);
        near(found.0, width, EXACT, name);
        near(found.1, height, EXACT, name);
    }
}

/// P18: an independent list in whole points: Debian's libgutenprint-common 5.3.4,
/// papers/standard.xml (its own name behind each row). Tolerance 0.36 mm: one point is 0.353 mm and
/// the list cuts off or rounds to whole points.
#[test]
fn p18_sizes_of_an_outside_library() {
    const POINT: f64 = MM_PER_INCH / 72.0;
    let rows: [(&[NamedSize], &str, f64, f64); 24] = [
        (&FINISHED_SIZES, "A3", 842.0, 1191.0),         // A3
        (&FINISHED_SIZES, "A4", 595.0, 842.0),          // A4
        (&FINISHED_SIZES, "A5", 420.0, 595.0),          // A5
        (&FINISHED_SIZES, "A6", 297.0, 420.0),          // A6
        (&FINISHED_SIZES, "A7", 210.0, 297.0),          // A7
        (&FINISHED_SIZES, "A8", 148.0, 210.0),          // A8
        (&FINISHED_SIZES, "B4", 708.0, 1000.0),         // ISOB4; its B4 is the Japanese one
        (&FINISHED_SIZES, "B5", 498.0, 708.0),          // ISOB5
        (&FINISHED_SIZES, "B6", 354.0, 498.0),          // ISOB6
        (&FINISHED_SIZES, "B7", 249.0, 354.0),          // ISOB7
        (&FINISHED_SIZES, "Letter", 612.0, 792.0),      // Letter
        (&FINISHED_SIZES, "Half Letter", 396.0, 612.0), // Statement
        (&FINISHED_SIZES, "Legal", 612.0, 1008.0),      // Legal
        (&FINISHED_SIZES, "Tabloid", 792.0, 1224.0),    // Tabloid
        (&PRESS_SHEETS, "RA4", 609.0, 864.0),           // w609h864
        (&PRESS_SHEETS, "RA3", 864.0, 1218.0),          // w864h1218
        (&PRESS_SHEETS, "RA2", 1218.0, 1729.0),         // w1218h1729
        (&PRESS_SHEETS, "RA1", 1729.0, 2437.0),         // w1729h2437
        (&PRESS_SHEETS, "SRA4", 637.0, 907.0),          // w637h907
        (&PRESS_SHEETS, "SRA3", 907.0, 1275.0),         // w907h1275
        (&PRESS_SHEETS, "SRA2", 1275.0, 1814.0),        // w1275h1814
        (&PRESS_SHEETS, "SRA1", 1814.0, 2551.0),        // w1814h2551
        (&PRESS_SHEETS, "12 × 18 in", 864.0, 1296.0),   // ARCHB
        (&PRESS_SHEETS, "13 × 19 in", 936.0, 1368.0),   // SuperB
    ];
    for (list, name, width, height) in rows {
        let found = find(list, name);
        near(found.0, width * POINT, 0.36, name);
        near(found.1, height * POINT, 0.36, name);
    }
}

/// P19: ISO 216, as secondary pages quote it, allows a trimmed side ±1.5 mm up to 150 mm, ±2 up to
/// 600, ±3 beyond. The planner cuts nothing; what it has is the tolerance it assumes for every cut
/// unless a shop says otherwise, and that must not be looser than the standard's strictest.
#[test]
fn p19_the_assumed_tolerance_keeps_the_standard() {
    assert!(SHOP_DEFAULTS.tolerance.get() <= 1.5);
    assert!(SHOP_DEFAULTS.tolerance.get() > 0.0);
}
