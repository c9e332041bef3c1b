//! The fold enlarged: the true path of every sheet, the wire through them, and what the fold takes.
//!
//! Above and below lie the outermost and the innermost leaf as they are flat, with their cuts under
//! each other: how far they reach beyond the spine, or fall short of it, is where pages belong.

use super::nest::{Nest, magnification};
use super::shapes::{Sketch, at};
use super::{Anchor, Drawing, Pen, Room};
use crate::plan::{Leaf, Plan};
use crate::units::{Measure, Mm, Unit};
use crate::words::{Say, say};

/// From the book to the leaves laid flat, and from those to their dimensions.
const OFF: f64 = 9.0;
/// Room for a dimension and its words.
const WORDS: f64 = 6.5;
/// The wire is drawn no thicker: a thin book is magnified less.
const CROWN: f64 = 14.0;
/// From the fold to its own dimension lines.
const BESIDE: f64 = 4.0;
/// Thinner than this on the drawing, a sheet's middle line would fill it.
const THIN: f64 = 1.2;
/// No leaf laid flat is drawn thinner.
const SEEN: f64 = 0.6;
/// Largest magnification.
const MOST: f64 = 60.0;

/// Draws the fold.
#[must_use]
pub fn fold_paths(plan: &Plan, kinds: &[&'static str], room: Room) -> Option<Drawing> {
    let results = &plan.results;
    let (first, last) = (results.leaves.first()?, results.leaves.last()?);
    let flat = results.stack.flat.nominal.0.get();
    let wire = results.stitches.wire.diameter.get();
    let scale = magnification(room.pick(60.0, 30.0) / (2.0 * flat), MOST.min(CROWN / wire));
    let (left, right) = (room.pick(36.0, 23.0), room.pick(24.0, 20.0));
    let thick = |leaf: &Leaf| (leaf.caliper.nominal.get() * scale).max(SEEN);
    let top = 2.0 * WORDS + OFF + thick(first);
    let nest = Nest::of(plan, scale, left, top + flat * scale);
    let frame = Frame { nest, end: room.width() - right };
    let mut sketch = Sketch::default();
    for leaf in &results.leaves {
        let pen = Pen::Paper(kinds.get(leaf.section).copied().unwrap_or_default());
        sketch.shapes.push(nest.sheet(leaf, frame.end, pen, true));
        if leaf.caliper.nominal.get() * scale >= THIN {
            let (path, radius) = nest.path(leaf, frame.end);
            sketch.path(path, radius, 0.2, Pen::Dash, false);
        }
    }
    frame.sizes(plan, &mut sketch);
    frame.wire(wire, &mut sketch);
    let kind = |leaf: &Leaf| Pen::Paper(kinds.get(leaf.section).copied().unwrap_or_default());
    let (upper, lower) = nest.faces();
    let y = upper - OFF - thick(first) / 2.0;
    frame.flat(y, -1.0, first.image_shift, thick(first), kind(first), &mut sketch);
    let y = lower + OFF + thick(last) / 2.0;
    frame.flat(y, 1.0, last.image_shift, thick(last), kind(last), &mut sketch);
    Some(Drawing {
        id: "fold-paths",
        room,
        title: say("drawing.fold").put("scale", Measure::new(scale, Unit::Number)),
        description: say("drawing.fold.spoken")
            .put("flat", results.stack.flat.nominal.0)
            .put("spine", results.stack.closed.nominal.0)
            .put("wrap", results.trim.wrap.nominal)
            .put("shift", last.image_shift)
            .say("shape", shape(nest.corner, flat)),
        width: room.width(),
        height: lower + OFF + thick(last) + 2.0 * WORDS,
        shapes: sketch.shapes,
    })
}

/// The shape in words.
fn shape(corner: f64, flat: f64) -> Say {
    if corner <= 0.0 {
        say("drawing.fold.square")
    } else if corner >= flat {
        say("drawing.fold.round")
    } else {
        say("drawing.fold.between").put("radius", Mm(corner))
    }
}

/// Where things stand on the drawing.
struct Frame {
    nest: Nest,
    /// Where the leaves are broken off.
    end: f64,
}

impl Frame {
    /// The wire in its true thickness, through the plane between the halves, clinched within.
    fn wire(&self, diameter: f64, sketch: &mut Sketch) {
        let (nest, thick) = (&self.nest, diameter * self.nest.scale);
        sketch.line(at(nest.spine, nest.middle), at(self.end, nest.middle), Pen::Dash);
        let (from, to) = (nest.spine - thick, nest.inmost() + thick);
        sketch.strip(at(from, nest.middle), at(to, nest.middle), thick, Pen::Wire, false);
        let words = at(nest.spine - BESIDE - 1.7, nest.middle + thick / 2.0 + 4.2);
        sketch.text(Pen::Hair, words, Anchor::End, say("drawing.wire"));
    }

    /// The closed thickness left of the fold, the flat stack right of the leaves.
    fn sizes(&self, plan: &Plan, sketch: &mut Sketch) {
        let (nest, stack) = (&self.nest, &plan.results.stack);
        let (top, bottom) = nest.faces();
        let left = nest.spine - BESIDE;
        let corner = nest.spine + nest.corner * nest.scale - 1.0;
        for y in [top, bottom] {
            sketch.line(at(left - 1.0, y), at(corner, y), Pen::Hair);
        }
        let named = |name, value: Mm| say(name).put("length", value);
        // Clear of the wire's crown.
        let crown = plan.results.stitches.wire.diameter.get() * nest.scale;
        let words = at(left - 1.7, nest.middle - crown / 2.0 - 5.0);
        let name = at(words.x, words.y - 1.6);
        sketch.text(Pen::Ink, name, Anchor::End, say("drawing.spine"));
        let label = named("drawing.length", stack.closed.nominal.0);
        sketch.dimension((at(left, top), at(left, bottom)), words, Anchor::End, label);
        let right = self.end + BESIDE;
        for y in [top, nest.middle] {
            sketch.line(at(self.end + 0.6, y), at(right + 1.0, y), Pen::Hair);
        }
        let label = named("drawing.length", stack.flat.nominal.0);
        let words = at(right + 1.7, f64::midpoint(top, nest.middle) + 0.8);
        let name = at(words.x, words.y - 1.6);
        sketch.text(Pen::Ink, name, Anchor::Start, say("drawing.fold.flat"));
        sketch.dimension((at(right, top), at(right, nest.middle)), words, Anchor::Start, label);
        sketch.shapes.push(super::Shape::Break {
            x: self.end,
            top: top - 1.5,
            bottom: bottom + 1.5,
        });
    }

    /// A leaf laid flat above (side −1) or below (+1) the book, and how far it reaches beyond the
    /// spine.
    fn flat(&self, y: f64, side: f64, beyond: Mm, thick: f64, pen: Pen, sketch: &mut Sketch) {
        let spine = self.nest.spine;
        let start = spine - beyond.get() * self.nest.scale;
        sketch.strip(at(start, y), at(self.end, y), thick, pen, false);
        let dimension = y + side * (thick / 2.0 + 3.0);
        let face = self.nest.middle + side * self.nest.flat * self.nest.scale;
        sketch.line(at(spine, face), at(spine, dimension + side * 0.9), Pen::Hair);
        sketch.line(at(start, y), at(start, dimension + side * 0.9), Pen::Hair);
        let (key, name) = if side < 0.0 {
            ("drawing.fold.wrap", "drawing.fold.outermost")
        } else {
            ("drawing.fold.shift", "drawing.fold.innermost")
        };
        let label = say(key).put("length", beyond);
        // Words above the line at the top, below it at the foot.
        let words = dimension + if side < 0.0 { -1.6 } else { 4.2 };
        let ends = (at(start, dimension), at(spine, dimension));
        // Clear of the words beside the spine.
        sketch.dimension(ends, at(spine - BESIDE, words), Anchor::Start, label);
        let name_y = if side < 0.0 { y + thick / 2.0 + 4.0 } else { y - thick / 2.0 - 1.6 };
        sketch.text(Pen::Hair, at(self.end, name_y), Anchor::End, say(name));
    }
}
