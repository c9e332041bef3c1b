//! Where folds, stitches and cuts lie on a press sheet, seen from either side, in millimetres of paper
//! from its upper left corner.

use crate::plan::{Plan, Route, Side, Way, copies};
use crate::units::Mm;

/// A line along one edge of the press sheet or the other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mark {
    /// It stands upright, so it counts from the left; else from the top.
    pub upright: bool,
    /// How far.
    pub place: Mm,
}

/// Neighbours nearer than this share a cut.
const SHARED: f64 = 0.1;

/// The guillotine's cuts, right through the press sheet; none where it runs straight through.
#[must_use]
pub fn cuts(way: &Way, side: Side) -> Vec<Mark> {
    let mut found = Vec::new();
    if way.route == Route::Straight {
        return found;
    }
    for (upright, count, start, pitch, piece, length) in [
        (true, way.grid.0, way.origin.width, way.pitch.width, way.flat.width, way.press.width),
        (false, way.grid.1, way.origin.height, way.pitch.height, way.flat.height, way.press.height),
    ] {
        let mut last = Mm(f64::NEG_INFINITY);
        for index in 0..count {
            let begin = start + pitch * f64::from(index);
            for place in [begin, begin + piece] {
                let shared = (place - last).get().abs() < SHARED;
                last = place;
                // At the very edge there is none.
                if shared || place <= Mm::ZERO || place >= length {
                    continue;
                }
                let turned = side == Side::Back && upright != way.gripper_beside;
                found.push(Mark { upright, place: if turned { length - place } else { place } });
            }
        }
    }
    found
}

/// Crowns of the stitches: how far right, from where down to where. They lie outside, on the front;
/// from the back they are where the legs come through.
#[must_use]
pub fn crowns(plan: &Plan, way: &Way, side: Side) -> Vec<(Mm, Mm, Mm)> {
    let results = &plan.results;
    let half = results.stitches.wire.crown / 2.0;
    let height = results.layout.copy.height;
    let mut found = Vec::new();
    for copy in copies(results.layout.copy, way) {
        let stitches = &results.stitches.placement.stitches;
        for stitch in stitches.iter().filter(|stitch| stitch.copy == copy.nth) {
            let from_top =
                if copy.head_down { height - stitch.from_head } else { stitch.from_head };
            let (x, y) = (copy.fold, copy.top + from_top);
            let (x, y) = match (side, way.gripper_beside) {
                (Side::Front, _) => (x, y),
                (Side::Back, true) => (x, way.press.height - y),
                (Side::Back, false) => (way.press.width - x, y),
            };
            found.push((x, y - half, y + half));
        }
    }
    found
}
