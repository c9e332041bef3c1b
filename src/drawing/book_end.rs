//! The end of the book: every sheet in its place, the fold's true path, push-out and cut.
//!
//! A broken view. Fold and face stand at the same magnification, which the drawing states; the
//! middle of the leaves is left out.

use super::nest::{Nest, magnification};
use super::shapes::{Sketch, at};
use super::{Anchor, Drawing, Pen, Room, Shape};
use crate::plan::{Leaf, Plan};
use crate::units::{Measure, Mm, Sheets, Unit};
use crate::words::say;

/// Height the book may take.
const BOOK_HEIGHT: f64 = 40.0;
/// Room above and below the book for dimensions and words.
const ABOVE: f64 = 12.0;
/// Room to the right of the longest leaf.
const RIGHT: f64 = 4.0;
/// Gap between the two halves of the broken view.
const GAP: f64 = 5.0;
/// From the book to a dimension line, and from there to its words.
const OFF: f64 = 5.0;
/// See [`OFF`].
const CLEAR: f64 = 1.7;
/// Half of what the longest words may take, to keep them on the drawing.
const WORDS: f64 = 17.5;
/// Largest magnification: more would make a single sheet look like a plank.
const MOST: f64 = 25.0;
/// From so many sheets on only every fifth is edged in ink.
const THICK: usize = 30;
/// Which.
const EVERY: u32 = 5;

/// Draws the end of the book.
#[must_use]
pub fn book_end(plan: &Plan, kinds: &[&'static str], room: Room) -> Drawing {
    let results = &plan.results;
    let width = room.pick(132.0, 90.0);
    // Room to the left for the spine's dimension, and paper shown at least inside fold and cut.
    let (left, least) = (room.pick(27.0, 22.0), room.pick(13.0, 7.0));
    let flat = results.stack.flat.nominal.0.get();
    let chip = results.trim.face_cut.get();
    let push_out = results.leaves.last().map_or(0.0, |leaf| leaf.push_out.nominal.get());
    let free = width - left - RIGHT - GAP - 2.0 * least;
    let wide = flat + chip + push_out;
    let scale = magnification((BOOK_HEIGHT / (2.0 * flat)).min(free / wide), MOST);
    let half = flat * scale;
    // What the magnification leaves over goes to the leaves, so that the book fills the drawing.
    let shown = least + (free - wide * scale) / 2.0;
    let fold_end = left + half + shown;
    let frame = Frame {
        nest: Nest::of(plan, scale, left, ABOVE + half),
        width,
        fold_end,
        cut: fold_end + GAP + shown,
        chip,
    };
    let mut sketch = Sketch::default();
    for leaf in &results.leaves {
        let pen = Pen::Paper(kinds.get(leaf.section).copied().unwrap_or_default());
        let inked = results.leaves.len() < THICK || leaf.place % EVERY == 1;
        frame.sheet(leaf, pen, inked, &mut sketch.shapes);
    }
    frame.marks(&mut sketch);
    frame.spine(results.stack.closed.nominal.0, &mut sketch);
    frame.face(push_out, &mut sketch);
    Drawing {
        id: "book-end",
        room,
        title: say("drawing.book_end").put("scale", Measure::new(scale, Unit::Number)),
        description: say("drawing.book_end.spoken")
            .count("sheets", Sheets(results.leaves.len() as u32))
            .put("spine", results.stack.closed.nominal.0)
            .put("push_out", Mm(push_out))
            .put("cut", results.trim.face_cut),
        width,
        height: 2.0 * (ABOVE + half),
        shapes: sketch.shapes,
    }
}

/// Where things stand on the drawing.
struct Frame {
    nest: Nest,
    width: f64,
    /// Right end of the fold's part.
    fold_end: f64,
    /// The cut.
    cut: f64,
    /// What it takes from the outermost leaf, millimetres of book.
    chip: f64,
}

impl Frame {
    /// One sheet: round the fold, and its two leaves again at the face, before and beyond the cut.
    fn sheet(&self, leaf: &Leaf, pen: Pen, inked: bool, shapes: &mut Vec<Shape>) {
        let thickness = leaf.caliper.nominal.get() * self.nest.scale;
        shapes.push(self.nest.sheet(leaf, self.fold_end, pen, inked));
        let face = self.cut + (self.chip + leaf.push_out.nominal.get()) * self.nest.scale;
        let (above, below) = self.nest.levels(leaf);
        for y in [above, below] {
            for (from, to, gone) in [(self.fold_end + GAP, self.cut, false), (self.cut, face, true)]
            {
                let path = vec![at(from, y), at(to, y)];
                shapes.push(Shape::Sheet { path, radius: 0.0, thickness, pen, inked, gone });
            }
        }
    }

    /// Breaks, wire and cut.
    fn marks(&self, sketch: &mut Sketch) {
        let (top, bottom) = self.nest.faces();
        for x in [self.fold_end, self.fold_end + GAP] {
            sketch.shapes.push(Shape::Break { x, top: top - 2.0, bottom: bottom + 2.0 });
        }
        // The wire pierces the fold in the plane between the halves, crown outside, clinched within.
        let (spine, middle) = (self.nest.spine, self.nest.middle);
        sketch.line(at(spine - 0.6, middle), at(self.nest.inmost() + 1.2, middle), Pen::Wire);
        let beyond = OFF + CLEAR;
        sketch.line(at(self.cut, top - OFF), at(self.cut, bottom + beyond), Pen::Cut);
        let words = at(self.cut - CLEAR, top - 2.2);
        sketch.text(Pen::Cut, words, Anchor::End, say("drawing.cut"));
    }

    /// Thickness, to the left of the fold.
    fn spine(&self, spine: Mm, sketch: &mut Sketch) {
        let (top, bottom) = self.nest.faces();
        let x = self.nest.spine - OFF;
        for y in [top, bottom] {
            let corner = self.nest.spine + self.nest.corner * self.nest.scale;
            sketch.line(at(x - CLEAR, y), at(corner - 1.0, y), Pen::Hair);
        }
        let words = at(x - CLEAR, self.nest.middle);
        sketch.text(Pen::Ink, at(words.x, words.y - 0.8), Anchor::End, say("drawing.spine"));
        let label = say("drawing.length").put("length", spine);
        let ends = (at(x, top), at(x, bottom));
        sketch.dimension(ends, at(words.x, words.y + 0.8), Anchor::End, label);
    }

    /// What is cut off, below the face, and the push-out, above it.
    fn face(&self, push_out: f64, sketch: &mut Sketch) {
        let (top, bottom) = self.nest.faces();
        let outermost = self.cut + self.chip * self.nest.scale;
        let innermost = outermost + push_out * self.nest.scale;
        let kept = (self.width, WORDS);
        let mut hair = |x: f64, from: f64, to: f64| sketch.line(at(x, from), at(x, to), Pen::Hair);
        hair(outermost, bottom + 0.8, bottom + OFF + CLEAR);
        if push_out > 0.0 {
            hair(outermost, top - 0.8, top - OFF - 0.9);
            hair(innermost, self.nest.middle - 1.5, top - OFF - 0.9);
            let label = say("drawing.push_out").put("push_out", Mm(push_out));
            sketch.level((outermost, innermost), top - OFF, kept, label);
        }
        let middle = f64::midpoint(self.cut, outermost).min(self.width - WORDS);
        let y = bottom + OFF;
        let label = say("drawing.chip").put("cut", Mm(self.chip));
        let words = at(middle, y + CLEAR + 3.6);
        sketch.dimension((at(self.cut, y), at(outermost, y)), words, Anchor::Middle, label);
    }
}
