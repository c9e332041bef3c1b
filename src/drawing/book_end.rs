//! The end of the book: every sheet in its place, the fold's true path, push-out and cut.
//!
//! A broken view. Fold and face stand at the same magnification, which the drawing states; the
//! middle of the leaves is left out.

use super::{Anchor, Drawing, Pen, Point, Shape};
use crate::plan::{Leaf, Plan};
use crate::units::{Measure, Mm, Unit};
use crate::words::say;

/// Width of the drawing.
const WIDTH: f64 = 132.0;
/// Height the book may take of it.
const BOOK_HEIGHT: f64 = 40.0;
/// Room above and below the book for dimensions and words.
const ABOVE: f64 = 12.0;
/// Room to the left for the spine's dimension.
const LEFT: f64 = 27.0;
/// Room to the right of the longest leaf.
const RIGHT: f64 = 4.0;
/// Paper shown at least inside the fold and inside the cut, millimetres of drawing.
const SHOWN: f64 = 13.0;
/// Gap between the two halves of the broken view.
const GAP: f64 = 5.0;
/// From the book to a dimension line, and from there to its words.
const OFF: f64 = 5.0;
/// See [`OFF`].
const CLEAR: f64 = 1.7;
/// Half of what the longest words may take, to keep them on the drawing.
const WORDS: f64 = 21.0;
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
    let room = WIDTH - LEFT - RIGHT - GAP - 2.0 * SHOWN;
    let wide = flat + chip + push_out;
    let wanted = |scale: f64| 2.0 * flat * scale <= BOOK_HEIGHT && wide * scale <= room;
    let scale = MAGNIFICATIONS
        .iter()
        .rev()
        .copied()
        .find(|scale| wanted(*scale))
        .unwrap_or_else(|| (BOOK_HEIGHT / (2.0 * flat)).min(room / wide));
    let half = flat * scale;
    // What the magnification leaves over goes to the leaves, so that the book fills the drawing.
    let shown = SHOWN + (room - wide * scale) / 2.0;
    let frame = Frame {
        scale,
        flat,
        middle: ABOVE + half,
        fold_end: LEFT + half + shown,
        cut: LEFT + half + shown + GAP + shown,
        chip,
        corner: results.fold.fold.nominal.corner * flat,
    };
    let mut shapes = Vec::new();
    for leaf in &results.leaves {
        let pen = Pen::Paper(kinds.get(leaf.section).copied().unwrap_or_default());
        let inked = results.leaves.len() < THICK || leaf.place % EVERY == 1;
        frame.sheet(leaf, pen, inked, &mut shapes);
    }
    frame.marks(&mut shapes);
    frame.spine(results.stack.closed.nominal.0, &mut shapes);
    frame.face(push_out, &mut shapes);
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
    /// What it takes from the outermost leaf, millimetres of book.
    chip: f64,
    /// Radius of the outer corner, millimetres of book.
    corner: f64,
}

const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

impl Frame {
    /// One sheet: round the fold, and its two leaves again at the face, before and beyond the cut.
    fn sheet(&self, leaf: &Leaf, pen: Pen, inked: bool, shapes: &mut Vec<Shape>) {
        let thickness = leaf.caliper.nominal.get() * self.scale;
        // Distance of the leaf's middle from the outer face.
        let depth = leaf.depth.get().min(self.flat);
        let reach = (self.flat - depth) * self.scale;
        let x = LEFT + depth * self.scale;
        let radius = (self.corner - depth).max(0.0) * self.scale;
        let (above, below) = (self.middle - reach, self.middle + reach);
        let mut piece = |path, radius, gone| {
            shapes.push(Shape::Sheet { path, radius, thickness, pen, inked, gone });
        };
        let round =
            vec![at(self.fold_end, above), at(x, above), at(x, below), at(self.fold_end, below)];
        piece(round, radius, false);
        let face = self.cut + (self.chip + leaf.push_out.nominal.get()) * self.scale;
        for y in [above, below] {
            piece(vec![at(self.fold_end + GAP, y), at(self.cut, y)], 0.0, false);
            piece(vec![at(self.cut, y), at(face, y)], 0.0, true);
        }
    }

    /// Height of the upper and of the lower face of the book.
    fn faces(&self) -> (f64, f64) {
        let half = self.flat * self.scale;
        (self.middle - half, self.middle + half)
    }

    /// Breaks, wire and cut.
    fn marks(&self, shapes: &mut Vec<Shape>) {
        let (top, bottom) = self.faces();
        for x in [self.fold_end, self.fold_end + GAP] {
            shapes.push(Shape::Break { x, top: top - 2.0, bottom: bottom + 2.0 });
        }
        // The wire pierces the fold in the plane between the halves, crown outside, clinched within.
        let innermost = LEFT + self.flat * self.scale;
        shapes.push(Shape::Line {
            from: at(LEFT - 0.6, self.middle),
            to: at(innermost + 1.2, self.middle),
            pen: Pen::Wire,
        });
        shapes.push(Shape::Line {
            from: at(self.cut, top - OFF - CLEAR),
            to: at(self.cut, bottom + OFF + CLEAR),
            pen: Pen::Cut,
        });
        shapes.push(Shape::Text {
            pen: Pen::Cut,
            at: at(self.cut - CLEAR, top - OFF),
            anchor: Anchor::End,
            words: say("drawing.cut"),
        });
    }

    /// Thickness, to the left of the fold.
    fn spine(&self, spine: Mm, shapes: &mut Vec<Shape>) {
        let (top, bottom) = self.faces();
        let x = LEFT - OFF;
        for y in [top, bottom] {
            let (from, to) = (at(x - CLEAR, y), at(LEFT + self.corner * self.scale - 1.0, y));
            shapes.push(Shape::Line { from, to, pen: Pen::Hair });
        }
        let words = at(x - CLEAR, self.middle);
        shapes.push(Shape::Text {
            pen: Pen::Ink,
            at: at(words.x, words.y - 0.8),
            anchor: Anchor::End,
            words: say("drawing.spine"),
        });
        shapes.push(Shape::Dimension {
            from: at(x, top),
            to: at(x, bottom),
            label: say("drawing.spine.value").put("spine", spine),
            at: at(words.x, words.y + 0.8),
            anchor: Anchor::End,
        });
    }

    /// What is cut off, below the face, and the push-out, above it.
    fn face(&self, push_out: f64, shapes: &mut Vec<Shape>) {
        let (top, bottom) = self.faces();
        let outermost = self.cut + self.chip * self.scale;
        let innermost = outermost + push_out * self.scale;
        let middle = |from: f64, to: f64| f64::midpoint(from, to).min(WIDTH - WORDS);
        let mut hair = |x: f64, from: f64, to: f64| {
            shapes.push(Shape::Line { from: at(x, from), to: at(x, to), pen: Pen::Hair });
        };
        hair(outermost, bottom + 0.8, bottom + OFF + CLEAR);
        if push_out > 0.0 {
            hair(outermost, top - 0.8, top - OFF - CLEAR);
            hair(innermost, self.middle - 1.5, top - OFF - CLEAR);
            shapes.push(Shape::Dimension {
                from: at(outermost, top - OFF),
                to: at(innermost, top - OFF),
                label: say("drawing.push_out").put("push_out", Mm(push_out)),
                at: at(middle(outermost, innermost), top - OFF - CLEAR - 0.6),
                anchor: Anchor::Middle,
            });
        }
        shapes.push(Shape::Dimension {
            from: at(self.cut, bottom + OFF),
            to: at(outermost, bottom + OFF),
            label: say("drawing.chip").put("cut", Mm(self.chip)),
            at: at(middle(self.cut, outermost), bottom + OFF + CLEAR + 3.6),
            anchor: Anchor::Middle,
        });
    }
}
