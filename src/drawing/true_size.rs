//! The book as it is, one unit a millimetre: for a screen that has been measured with a bank card.

use super::shapes::{Sketch, at};
use super::{Anchor, Drawing, Pen, Room, Shape};
use crate::data::CARD;
use crate::plan::Plan;
use crate::units::Mm;
use crate::words::say;

/// Width of the drawing: a phone is no wider.
const WIDTH: f64 = 56.0;
/// Space round it.
const EDGE: f64 = 3.0;
/// The bar to lay a ruler on.
const BAR: f64 = 50.0;
/// Cover shown beside the spine, and of the spine at the head.
const SHOWN: f64 = 12.0;
/// Between two things.
const GAP: f64 = 6.0;
/// Space round the card's outline.
const ROUND: f64 = 1.0;

/// Draws the closed book from its end, its spine from outside with the corner at the head and the
/// first stitch, and a bar of 50 mm.
#[must_use]
pub fn true_size(plan: &Plan, round: bool, kind: &'static str) -> Drawing {
    let results = &plan.results;
    let spine = results.stack.closed.nominal.0.get();
    let wire = &results.stitches.wire;
    let head = results.stitches.placement.stitches.first().map_or(Mm::ZERO, |s| s.from_head);
    let paper = Pen::Paper(kind);
    let end = WIDTH - EDGE;
    let mut sketch = Sketch::default();
    // From the end: two leaves' breadth of it, broken off to the right.
    let (top, bottom) = (EDGE, EDGE + spine);
    // Each half is a strip as thick as the stack, round the spine in one.
    let around = |from: f64, to: f64| {
        let out = (from - top).abs();
        vec![at(end, from), at(EDGE + out, from), at(EDGE + out, to), at(end, to)]
    };
    let (half, radius) = (spine / 2.0, if round { spine / 4.0 } else { 0.0 });
    let middles = around(top + half / 2.0, bottom - half / 2.0);
    sketch.path(middles, radius, half, paper, false);
    sketch.path(around(top, bottom), radius * 2.0, 0.2, Pen::Print, false);
    sketch.shapes.push(Shape::Break { x: end, top: top - 1.0, bottom: bottom + 1.0 });
    // From outside: the head's corner, and beyond a break the first stitch.
    let (top, bottom) = (bottom + GAP, bottom + GAP + spine + SHOWN);
    let face = f64::midpoint(top, bottom);
    let near = head.get() <= BAR - wire.crown.get();
    let corner = EDGE + SHOWN;
    let pieces = if near { vec![(EDGE, end)] } else { vec![(EDGE, corner), (corner + 2.0, end)] };
    for (from, to) in pieces {
        sketch.strip(at(from, face), at(to, face), bottom - top, paper, false);
        sketch.line(at(from, top + spine), at(to, top + spine), Pen::Print);
    }
    if !near {
        for x in [corner, corner + 2.0] {
            sketch.shapes.push(Shape::Break { x, top: top - 1.0, bottom: bottom + 1.0 });
        }
    }
    let stitch = if near { EDGE + head.get() } else { f64::midpoint(corner + 2.0, end) };
    let (half, y) = (wire.crown.get() / 2.0, top + spine / 2.0);
    let thick = wire.diameter.get();
    sketch.strip(at(stitch - half, y), at(stitch + half, y), thick, Pen::Wire, false);
    let y = bottom + GAP;
    let label = say("drawing.length").put("length", Mm(BAR));
    let ends = (at(EDGE, y), at(EDGE + BAR, y));
    sketch.dimension(ends, at(WIDTH / 2.0, y + 4.4), Anchor::Middle, label);
    Drawing {
        id: "true-size-drawn",
        room: Room::Narrow,
        title: say("drawing.true-size"),
        description: say("drawing.true-size.spoken")
            .put("spine", results.stack.closed.nominal.0)
            .put("crown", wire.crown)
            .put("head", head),
        width: WIDTH,
        height: y + GAP,
        shapes: sketch.shapes,
    }
}

/// Draws the outline of a bank card, standing where there is no room for it to lie.
#[must_use]
pub fn card(room: Room) -> Drawing {
    let (long, short, radius) = (CARD.long.get(), CARD.short.get(), CARD.corner.get());
    let (wide, high) = match room {
        Room::Wide => (long, short),
        Room::Narrow => (short, long),
    };
    let (right, bottom) = (ROUND + wide, ROUND + high);
    let middle = ROUND + wide / 2.0;
    let mut sketch = Sketch::default();
    let corners = [(right, ROUND), (right, bottom), (ROUND, bottom), (ROUND, ROUND)];
    let start = core::iter::once(at(middle, ROUND));
    let path = start.clone().chain(corners.into_iter().map(|(x, y)| at(x, y))).chain(start);
    sketch.path(path.collect(), radius, 0.3, Pen::Ink, false);
    let label = say("drawing.length").put("length", CARD.long);
    match room {
        Room::Wide => {
            let y = ROUND + high / 2.0;
            sketch.level((ROUND, right), y, (wide, 0.0), label);
        }
        Room::Narrow => sketch.upright(middle, (ROUND, bottom), Anchor::Start, label),
    }
    Drawing {
        id: "card-drawn",
        room: Room::Narrow,
        title: say("drawing.card"),
        description: say("drawing.card.spoken").put("long", CARD.long).put("short", CARD.short),
        width: wide + 2.0 * ROUND,
        height: high + 2.0 * ROUND,
        shapes: sketch.shapes,
    }
}
