//! Creasing: P20, and from which weight on.

use crate::{near, planned};
use quirefit::book::crease_channel;
use quirefit::units::Mm;

/// P20: a paperboard mill's die-cutting guide: board 0.010 in, rule 0.028 in, channel 0.041 in with
/// the fold along the grain and 0.043 across; board 0.016 in, 0.049 and 0.052. Tolerance 0.0005 in: the
/// guide prints thousandths.
#[test]
fn p20_crease_channel() {
    for (board, along, across) in [(0.010, 0.041, 0.043), (0.016, 0.049, 0.052)] {
        let channel = crease_channel(Mm::from_inches(board));
        near(channel.0.inches(), along, 0.0005, "along the grain");
        near(channel.1.inches(), across, 0.0005, "across the grain");
    }
}

/// A crease is wanted from 150 g/m² on where the stock is coated or recycled, from 170 on where it is
/// neither; one crease for a round spine, two for a square one. Common practice, no source. A rule, so
/// no tolerance.
#[test]
fn creasing_thresholds() {
    let cover = |cover, spine| {
        planned(&[
            ("pages", "32 + 4"),
            ("size", "A5"),
            ("paper", "100 gsm uncoated"),
            ("cover", cover),
            ("spine", spine),
        ])
        .results
        .cover
    };
    for (paper, wanted) in [
        ("149 gsm silk", false),
        ("150 gsm silk", true),
        ("149 gsm recycled", false),
        ("150 gsm recycled", true),
        ("169 gsm uncoated", false),
        ("170 gsm uncoated", true),
    ] {
        assert_eq!(cover(paper, "round").wants_crease, wanted, "{paper}");
    }
    assert_eq!(cover("250 gsm silk", "round").creases, 1);
    assert_eq!(cover("250 gsm silk", "square").creases, 2);
}
