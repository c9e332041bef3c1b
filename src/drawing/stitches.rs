//! The spine with its stitches: where they stand from head, foot and the edge that lies at the stop.

use super::{Anchor, Drawing, Pen, Point, Room, Shape};
use crate::plan::{Plan, Stitch};
use crate::units::{Measure, Mm, Unit};
use crate::words::say;

/// Room to the left and right of the sheet.
const SIDE: f64 = 12.0;
/// The spine's place from the top.
const SPINE: f64 = 26.0;
/// How thick the sheet is drawn.
const THICK: f64 = 5.0;
/// Height of the drawing.
const HEIGHT: f64 = 48.0;
/// Words beside each other need so much.
const APART: f64 = 17.0;

/// Draws the sheet along its fold as it travels, head to the left.
#[must_use]
pub fn stitches(plan: &Plan, spine: Mm, kind: &'static str, room: Room) -> Drawing {
    let placement = &plan.results.stitches.placement;
    let travel = plan.results.trim.travel_height.get();
    let scale = (room.width() - 2.0 * SIDE) / travel.max(f64::EPSILON);
    let frame = Frame { scale, spine: spine.get(), crown: plan.results.stitches.wire.crown.get() };
    let mut shapes = vec![Shape::Sheet {
        path: vec![frame.at(0.0, SPINE), frame.at(travel, SPINE)],
        radius: 0.0,
        thickness: THICK,
        pen: Pen::Paper(kind),
        inked: true,
        gone: false,
    }];
    let mut last = f64::NEG_INFINITY;
    let mut copy = None;
    for stitch in &placement.stitches {
        if copy.replace(stitch.copy) != Some(stitch.copy) {
            frame.copy(stitch, travel, &mut shapes);
        }
        frame.stitch(stitch, &mut last, &mut shapes);
    }
    frame.dimensions(&placement.stitches, &mut shapes);
    let lay = placement.stitches.first().map_or(0.0, |stitch| {
        // Where the distance from the stop and from the head edge agree, the head lies at the stop.
        if stitch.from_lay == stitch.from_head_edge { 0.0 } else { travel }
    });
    shapes.push(Shape::Line {
        from: frame.at(lay, SPINE - THICK * 2.0),
        to: frame.at(lay, SPINE + THICK),
        pen: Pen::Ink,
    });
    let anchor = if lay > 0.0 { Anchor::End } else { Anchor::Start };
    shapes.push(Shape::Text {
        pen: Pen::Hair,
        at: frame.at(lay, HEIGHT - 2.0),
        anchor,
        words: say("drawing.stitches.stop"),
    });
    Drawing {
        id: "stitches-drawn",
        room,
        title: say("drawing.stitches").put("travel", plan.results.trim.travel_height),
        description: say("drawing.stitches.spoken")
            .count("stitches", Measure::new(f64::from(placement.total()), Unit::Count))
            .put("travel", plan.results.trim.travel_height)
            .put("overhang", placement.overhang)
            .put("pitch", placement.pitch),
        width: room.width(),
        height: HEIGHT,
        shapes,
    }
}

/// Where things stand on the drawing.
struct Frame {
    scale: f64,
    /// Height of a copy.
    spine: f64,
    /// Width of a crown.
    crown: f64,
}

impl Frame {
    fn at(&self, along: f64, y: f64) -> Point {
        Point { x: SIDE + along * self.scale, y }
    }

    /// The cuts at head and foot of a copy.
    fn copy(&self, stitch: &Stitch, travel: f64, shapes: &mut Vec<Shape>) {
        let head = (stitch.from_head_edge - stitch.from_head).get();
        for cut in [head, head + self.spine] {
            // Where the sheet ends there, it was cut before.
            if cut > 1e-6 && cut < travel - 1e-6 {
                shapes.push(Shape::Line {
                    from: self.at(cut, SPINE - THICK),
                    to: self.at(cut, SPINE + THICK),
                    pen: Pen::Cut,
                });
            }
        }
    }

    /// One stitch, with its distance from the stop where there is room for words.
    fn stitch(&self, stitch: &Stitch, last: &mut f64, shapes: &mut Vec<Shape>) {
        let middle = stitch.from_head_edge.get();
        shapes.push(Shape::Line {
            from: self.at(middle - self.crown / 2.0, SPINE),
            to: self.at(middle + self.crown / 2.0, SPINE),
            pen: Pen::Wire,
        });
        let at = self.at(middle, SPINE + THICK + 5.0);
        if at.x - *last >= APART {
            *last = at.x;
            shapes.push(Shape::Text {
                pen: Pen::Ink,
                at,
                anchor: Anchor::Middle,
                words: say("drawing.length").put("length", stitch.from_lay),
            });
        }
    }

    /// Of the first copy: head to first stitch, stitch to stitch, last stitch to foot.
    fn dimensions(&self, stitches: &[Stitch], shapes: &mut Vec<Shape>) {
        let first: Vec<&Stitch> = stitches.iter().filter(|stitch| stitch.copy == 0).collect();
        let (Some(head), Some(foot)) = (first.first(), first.last()) else { return };
        let start = (head.from_head_edge - head.from_head).get();
        let mut from = start;
        let ends = first.iter().map(|stitch| stitch.from_head_edge.get());
        for to in ends.chain([(foot.from_head_edge + foot.from_foot).get()]) {
            let (left, right) = (self.at(from, SPINE - 10.0), self.at(to, SPINE - 10.0));
            if right.x - left.x >= APART * 0.6 {
                shapes.push(Shape::Dimension {
                    from: left,
                    to: right,
                    label: say("drawing.length").put("length", Mm(to - from)),
                    at: Point { x: (left.x + right.x) / 2.0, y: SPINE - 12.5 },
                    anchor: Anchor::Middle,
                });
            }
            from = to;
        }
        for (place, anchor, key) in [
            (start, Anchor::Start, "drawing.stitches.head"),
            (start + self.spine, Anchor::End, "drawing.stitches.foot"),
        ] {
            shapes.push(Shape::Text {
                pen: Pen::Hair,
                at: self.at(place, 6.0),
                anchor,
                words: say(key),
            });
        }
    }
}
