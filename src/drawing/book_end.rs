//! The end of the book: every sheet in its place, the fold's true path, push-out and cut.
//!
//! A broken view. Fold and face stand at the same magnification, which the drawing states; the
//! middle of the leaves is left out.

use super::{Anchor, Drawing, Pen, Point, Shape};
use crate::plan::{Leaf, Plan};
use crate::units::{Measure, Mm, Unit};
use crate::words::say;

/// Width of the drawing.
const WIDTH: f64 = 150.0;
/// Height the book may take of it.
const BOOK_HEIGHT: f64 = 40.0;
/// Room above and below for words.
const ABOVE: f64 = 11.0;
/// Room to the left for the spine's dimension.
const LEFT: f64 = 26.0;
/// Room to the right of the longest leaf.
const RIGHT: f64 = 7.0;
/// Paper shown inside the fold and inside the cut, millimetres of drawing.
const SHOWN: f64 = 16.0;
/// Gap between the two halves of the broken view.
const GAP: f64 = 6.0;
/// Magnifications that people can picture.
const MAGNIFICATIONS: [f64; 12] = [1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0];
/// From so many sheets on only every fifth is edged in ink.
const THICK: usize = 30;
/// Which.
const EVERY: u32 = 5;

/// Draws the end of the book.
#[must_use]
pub fn book_end(plan: &Plan, kinds: &[&'static str]) -> Drawing {
    let results = &plan.results;
    let flat = results.stack.flat.nominal.0.get();
    let chip = results.trim.face_cut.get();
    let push_out = results.leaves.last().map_or(0.0, |leaf| leaf.push_out.nominal.get());
    let wanted = |scale: f64| {
        2.0 * flat * scale <= BOOK_HEIGHT
            && (flat + chip + push_out) * scale <= WIDTH - LEFT - RIGHT - GAP - 2.0 * SHOWN
    };
    let scale =
        MAGNIFICATIONS.iter().rev().copied().find(|scale| wanted(*scale)).unwrap_or_else(|| {
            let tall = BOOK_HEIGHT / (2.0 * flat);
            tall.min((WIDTH - LEFT - RIGHT - GAP - 2.0 * SHOWN) / (flat + chip + push_out))
        });
    let half = flat * scale;
    let frame = Frame {
        scale,
        flat,
        middle: ABOVE + half,
        fold_end: LEFT + half + SHOWN,
        cut: LEFT + half + SHOWN + GAP + SHOWN,
        corner: results.fold.fold.nominal.corner * flat,
    };
    let mut shapes = Vec::new();
    for leaf in &results.leaves {
        let pen = Pen::Paper(kinds.get(leaf.section).copied().unwrap_or_default());
        let inked = results.leaves.len() < THICK || leaf.place % EVERY == 1;
        frame.sheet(leaf, chip, pen, inked, &mut shapes);
    }
    frame.marks(plan, chip, push_out, &mut shapes);
    Drawing {
        id: "book-end",
        title: say("drawing.book_end").put("scale", Measure::new(scale, Unit::Number)),
        description: say("drawing.book_end.spoken")
            .count("sheets", crate::units::Sheets(results.leaves.len() as u32))
            .put("spine", results.stack.closed.nominal.0)
            .put("push_out", Mm(push_out))
            .put("cut", results.trim.face_cut),
        width: WIDTH,
        height: 2.0 * (ABOVE + half),
        shapes,
    }
}

/// Where things stand on the drawing.
struct Frame {
    scale: f64,
    /// H in millimetres of book.
    flat: f64,
    /// The plane between the two halves of the book.
    middle: f64,
    /// Right end of the fold's part.
    fold_end: f64,
    /// The cut.
    cut: f64,
    /// Radius of the outer corner, millimetres of book.
    corner: f64,
}

impl Frame {
    /// One sheet: round the fold, and its two leaves again at the face.
    fn sheet(&self, leaf: &Leaf, chip: f64, pen: Pen, inked: bool, shapes: &mut Vec<Shape>) {
        let thickness = leaf.caliper.nominal.get() * self.scale;
        let depth = self.depth(leaf);
        let reach = (self.flat - depth) * self.scale;
        let x = LEFT + depth * self.scale;
        let radius = (self.corner - depth).max(0.0) * self.scale;
        let at = |x: f64, y: f64| Point { x, y: self.middle + y };
        shapes.push(Shape::Sheet {
            path: vec![
                at(self.fold_end, -reach),
                at(x, -reach),
                at(x, reach),
                at(self.fold_end, reach),
            ],
            radius,
            thickness,
            pen,
            inked,
        });
        let face = self.cut + (chip + leaf.push_out.nominal.get()) * self.scale;
        let start = self.fold_end + GAP;
        for y in [-reach, reach] {
            let path = vec![at(start, y), at(face, y)];
            shapes.push(Shape::Sheet { path, radius: 0.0, thickness, pen, inked });
        }
    }

    /// Distance of a leaf's middle from the outer face.
    fn depth(&self, leaf: &Leaf) -> f64 {
        leaf.depth.get().min(self.flat)
    }

    /// Breaks, wire, cut and dimensions.
    fn marks(&self, plan: &Plan, chip: f64, push_out: f64, shapes: &mut Vec<Shape>) {
        let half = self.flat * self.scale;
        let (top, bottom) = (self.middle - half, self.middle + half);
        let at = |x: f64, y: f64| Point { x, y };
        for x in [self.fold_end, self.fold_end + GAP] {
            shapes.push(Shape::Break { x, top: top - 2.0, bottom: bottom + 2.0 });
        }
        // The wire pierces the fold in the plane between the halves, crown outside, clinched within.
        shapes.push(Shape::Line {
            from: at(LEFT - 1.0, self.middle),
            to: at(LEFT + half + 2.0, self.middle),
            pen: Pen::Wire,
        });
        shapes.push(Shape::Line {
            from: at(self.cut, top - 5.0),
            to: at(self.cut, bottom + 5.0),
            pen: Pen::Cut,
        });
        shapes.push(Shape::Text {
            at: at(self.cut, top - 6.5),
            anchor: Anchor::Middle,
            words: say("drawing.cut"),
        });
        shapes.push(Shape::Dimension {
            from: at(LEFT - 5.0, top),
            to: at(LEFT - 5.0, bottom),
            label: say("drawing.spine").put("spine", plan.results.stack.closed.nominal.0),
            at: at(LEFT - 7.0, self.middle + 1.0),
            anchor: Anchor::End,
        });
        let outermost = self.cut + chip * self.scale;
        let innermost = outermost + push_out * self.scale;
        shapes.push(Shape::Dimension {
            from: at(self.cut, bottom + 3.0),
            to: at(outermost, bottom + 3.0),
            label: say("drawing.chip").put("cut", Mm(chip)),
            at: at(outermost, bottom + 7.5),
            anchor: Anchor::End,
        });
        if push_out > 0.0 {
            shapes.push(Shape::Dimension {
                from: at(outermost, top - 3.0),
                to: at(innermost, top - 3.0),
                label: say("drawing.push_out").put("push_out", Mm(push_out)),
                at: at(innermost, top - 6.5),
                anchor: Anchor::End,
            });
        }
    }
}
