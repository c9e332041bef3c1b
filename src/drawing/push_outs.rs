//! The push-out of each sheet as a bar beside its page numbers, with its band, and the trade's rule
//! as a stepped line.

use super::shapes::{Sketch, at};
use super::{Anchor, Drawing, Pen, Room, Shape};
use crate::plan::{Folio, Folios, Leaf, Plan};
use crate::units::{Measure, Mm, Sheets};
use crate::words::{Say, say};

/// Room above the bars for the scale.
const ABOVE: f64 = 9.0;
/// Room below.
const BELOW: f64 = 8.0;
/// Height of a row at most; all rows together take no more than the drawing's [`TALL`].
const ROW: f64 = 5.0;
/// See [`ROW`].
const TALL: f64 = 110.0;
/// What a bar takes of its row.
const BAR: f64 = 0.6;
/// Rows with words are at least so far apart.
const LINE: f64 = 4.4;
/// Lower rows carry no ticks at the ends of their band.
const TICKED: f64 = 3.0;
/// Steps of the scale, millimetres.
const STEPS: [f64; 9] = [0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0];

/// Draws a bar for every sheet, the outermost at the top.
#[must_use]
pub fn push_outs(plan: &Plan, kinds: &[&'static str], room: Room) -> Option<Drawing> {
    let leaves = &plan.results.leaves;
    let last = leaves.last()?;
    let (left, right) = (room.pick(34.0, 33.0), room.pick(24.0, 17.0));
    let most = last.push_out.high.max(last.trade).max(Mm(STEPS[0])).get();
    let row = (TALL / leaves.len() as f64).min(ROW);
    let bottom = ABOVE + row * leaves.len() as f64;
    let scale = (room.width() - left - right) / most;
    let frame = Frame { scale, left, row };
    let mut sketch = Sketch::default();
    frame.axis(most, bottom, room.pick(6.0, 2.6), &mut sketch);
    // Every so many rows have words; the innermost always has.
    let spoken = (LINE / row).ceil().max(1.0) as usize;
    let mut steps = Vec::new();
    for (index, leaf) in leaves.iter().enumerate() {
        let top = ABOVE + index as f64 * row;
        let kind = kinds.get(leaf.section).copied().unwrap_or_default();
        frame.bar(leaf, top, kind, &mut sketch);
        let from_end = leaves.len() - 1 - index;
        if from_end == 0 || (index % spoken == 0 && from_end >= spoken) {
            frame.words(leaf, top, &mut sketch);
        }
        let x = left + leaf.trade.get() * scale;
        steps.extend([at(x, top), at(x, top + row)]);
    }
    sketch.path(steps, 0.0, 0.5, Pen::Print, false);
    let trade = left + last.trade.get() * scale;
    let words = say("drawing.push_outs.trade").put("trade", last.trade);
    let anchor = if trade > room.width() / 2.0 { Anchor::End } else { Anchor::Start };
    sketch.text(Pen::Ink, at(trade, bottom + 4.6), anchor, words);
    Some(Drawing {
        id: "push-outs",
        room,
        title: say("drawing.push_outs"),
        description: say("drawing.push_outs.spoken")
            .count("sheets", Sheets(leaves.len() as u32))
            .band("push_out", last.push_out)
            .put("trade", last.trade),
        width: room.width(),
        height: bottom + BELOW,
        shapes: sketch.shapes,
    })
}

struct Frame {
    scale: f64,
    left: f64,
    row: f64,
}

impl Frame {
    fn x(&self, length: Mm) -> f64 {
        self.left + length.get() * self.scale
    }

    /// Millimetres along the top.
    fn axis(&self, most: f64, bottom: f64, marks: f64, sketch: &mut Sketch) {
        let step = STEPS.iter().copied().find(|step| most / step <= marks).unwrap_or(most / marks);
        let mut place = 0.0;
        while place <= most {
            let x = self.left + place * self.scale;
            sketch.line(at(x, ABOVE - 2.2), at(x, ABOVE - 0.8), Pen::Hair);
            let words = say("drawing.length").put("length", Mm(place));
            sketch.text(Pen::Hair, at(x, ABOVE - 3.4), Anchor::Middle, words);
            place += step;
        }
        let end = self.left + most * self.scale;
        sketch.line(at(self.left, ABOVE - 0.8), at(end, ABOVE - 0.8), Pen::Hair);
        sketch.line(at(self.left, ABOVE - 0.8), at(self.left, bottom), Pen::Hair);
    }

    /// A bar as long as the push-out, and its band across the end.
    fn bar(&self, leaf: &Leaf, top: f64, kind: &'static str, sketch: &mut Sketch) {
        let y = top + self.row / 2.0;
        let end = self.x(leaf.push_out.nominal);
        if end > self.left {
            let path = vec![at(self.left, y), at(end, y)];
            let (thickness, pen) = (self.row * BAR, Pen::Paper(kind));
            let inked = self.row >= TICKED;
            let bar = Shape::Sheet { path, radius: 0.0, thickness, pen, inked, gone: false };
            sketch.shapes.push(bar);
        }
        let (low, high) = (self.x(leaf.push_out.low), self.x(leaf.push_out.high));
        if high > low {
            sketch.line(at(low, y), at(high, y), Pen::Print);
            for x in [low, high].into_iter().filter(|_| self.row >= TICKED) {
                sketch.line(at(x, y - 0.9), at(x, y + 0.9), Pen::Print);
            }
        }
    }

    /// Pages to the left, the push-out to the right.
    fn words(&self, leaf: &Leaf, top: f64, sketch: &mut Sketch) {
        let y = top + self.row / 2.0 + 1.0;
        sketch.text(Pen::Ink, at(self.left - 1.5, y), Anchor::End, pages(leaf.folios));
        let x = self.x(leaf.push_out.high.max(leaf.trade)) + 1.5;
        let words = say("drawing.length").put("length", leaf.push_out.nominal);
        sketch.text(Pen::Ink, at(x, y), Anchor::Start, words);
    }
}

/// The four pages of a sheet in the order one reads them.
fn pages(folios: Folios) -> Say {
    let number = |folio| match folio {
        Folio::Page(page) => Some(Measure::count(page)),
        Folio::Cover(_) => None,
    };
    let order = [folios.front_right, folios.back_left, folios.back_right, folios.front_left];
    match order.map(number) {
        [Some(a), Some(b), Some(c), Some(d)] => {
            let pages = say("drawing.push_outs.pages");
            pages.put("a", a).put("b", b).put("c", c).put("d", d)
        }
        _ => say("role.cover"),
    }
}
