//! The worst page at its face: what stands how near to the edge, and where the knife really falls.
//!
//! Enlarged, seen as a right-hand page; what lies toward the spine is broken off.

use super::nest::magnification;
use super::shapes::{Sketch, at};
use super::{Anchor, Drawing, Pen, Room, Shape};
use crate::plan::{Clearance, Folio, Plan};
use crate::units::{Measure, Mm, Unit};
use crate::words::{Say, say};

/// Height of the piece of page.
const BODY: f64 = 24.0;
/// Height of a row of dimensions.
const ROW: f64 = 4.8;
/// Page shown inside of what stands farthest in, millimetres of page.
const INSIDE: f64 = 2.0;
/// Paper shown outside of what lies farthest out, millimetres of page.
const OUTSIDE: f64 = 1.0;
/// Largest magnification.
const MOST: f64 = 8.0;

/// What a page has at its face.
#[derive(Debug, Clone, Copy)]
pub struct Page {
    /// The kind of its paper.
    pub kind: &'static str,
    /// Picture beyond the cut, if it bleeds.
    pub bleed: Option<Mm>,
    /// Width kept free.
    pub safe: Mm,
    /// Pictures are moved to make up for push-out.
    pub moved: bool,
}

/// Draws the page on which least remains of the distance to the face.
#[must_use]
pub fn clearance(plan: &Plan, page: &Page, room: Room) -> Option<Drawing> {
    let margins = &plan.results.margins;
    let (art, folio) = (margins.art, margins.folio);
    let leaf = plan.results.leaves.get(art.worst.checked_sub(1)? as usize)?;
    let shift = leaf.image_shift;
    let bleed = page.bleed.unwrap_or(Mm::ZERO);
    let inward = [art.distance, page.safe, -art.cut.low, -shift];
    let inward = folio.map(|folio| folio.distance).into_iter().chain(inward);
    let inward = inward.fold(Mm::ZERO, Mm::max).get() + INSIDE;
    let outward = bleed.max(art.cut.high).max(shift).get() + OUTSIDE;
    // Words stand left of what they name, over the page; right of it only below.
    let (left, right) = (room.pick(46.0, 35.0), room.pick(34.0, 33.0));
    let scale = magnification((room.width() - left - right) / (inward + outward), MOST);
    let rows = 3 + usize::from(folio.is_some());
    let top = rows as f64 * ROW + 2.0;
    let face = room.width() - right - outward * scale;
    let frame = Frame { face, scale, top, left: face - inward * scale, words: left };
    let mut sketch = Sketch::default();
    frame.paper(page.kind, art.cut.nominal, outward, &mut sketch);
    frame.above(page.safe, &art, folio.as_ref(), &mut sketch);
    if let Some(folio) = folio {
        let others = page.safe.max(art.distance).max(-art.cut.low).max(-shift);
        frame.number(leaf.folios.front_right, folio.distance, others, &mut sketch);
    }
    frame.below(page, &art, shift, &mut sketch);
    let at_risk = art.left < Mm::ZERO || folio.is_some_and(|folio| folio.left < Mm::ZERO);
    let spoken =
        if at_risk { "drawing.clearance.spoken.risk" } else { "drawing.clearance.spoken.safe" };
    Some(Drawing {
        id: "clearance",
        room,
        title: say("drawing.clearance").put("scale", Measure::new(scale, Unit::Number)),
        description: say(spoken)
            .put("art", art.distance)
            .put("left", art.left)
            .put("least", art.cut.low)
            .put("most", art.cut.high)
            .put("shift", shift),
        width: room.width(),
        height: top + BODY + 4.0 * ROW + 1.0,
        shapes: sketch.shapes,
    })
}

/// Where things stand on the drawing; lengths count outward from the edge of the page as it is laid.
struct Frame {
    /// That edge.
    face: f64,
    scale: f64,
    /// Top of the piece of page.
    top: f64,
    /// Where the page is broken off.
    left: f64,
    /// Room that words have left of it.
    words: f64,
}

impl Frame {
    fn x(&self, outward: Mm) -> f64 {
        self.face + outward.get() * self.scale
    }

    /// The leaf up to the cut, and faintly what is cut off.
    fn paper(&self, kind: &'static str, cut: Mm, outward: f64, sketch: &mut Sketch) {
        let (y, pen) = (self.top + BODY / 2.0, Pen::Paper(kind));
        let from = (self.left - self.words / 2.0).max(1.0);
        for (from, to, gone) in
            [(from, self.x(cut), false), (self.x(cut), self.face + outward * self.scale, true)]
        {
            let path = vec![at(from, y), at(to, y)];
            let sheet =
                Shape::Sheet { path, radius: 0.0, thickness: BODY, pen, inked: false, gone };
            sketch.shapes.push(sheet);
        }
        let (top, bottom) = (self.top - 1.0, self.top + BODY + 1.0);
        sketch.shapes.push(Shape::Break { x: from, top, bottom });
    }

    /// A dimension in a row, its words to the left or to the right of it.
    fn row(&self, row: f64, from: Mm, to: Mm, anchor: Anchor, label: Say, sketch: &mut Sketch) {
        let (from, to) = (self.x(from), self.x(to));
        let words = match anchor {
            Anchor::End => from.min(to) - 1.8,
            Anchor::Start | Anchor::Middle => from.max(to) + 1.8,
        };
        let ends = (at(from, row), at(to, row));
        sketch.dimension(ends, at(words, row + 1.0), anchor, label);
    }

    /// An upright bound over the page, from a row of dimensions.
    fn bound(&self, outward: Mm, row: f64, pen: Pen, sketch: &mut Sketch) {
        let x = self.x(outward);
        let (from, to) =
            if row < self.top { (row - 1.0, self.top + BODY) } else { (self.top, row + 1.0) };
        sketch.line(at(x, from), at(x, to), pen);
    }

    /// Distances from the page's edge: what is kept free, art, page number; and what stays of the art.
    /// The farthest in stands lowest, so that no bound runs through the words of another.
    fn above(&self, safe: Mm, art: &Clearance, folio: Option<&Clearance>, sketch: &mut Sketch) {
        let lost = art.left < Mm::ZERO;
        let stays = if lost { "drawing.clearance.lost" } else { "drawing.clearance.stays" };
        let mut rows = Vec::new();
        let mut keep = |distance: Mm, to, key, length, pen| {
            put(&mut rows, distance, (-distance, to, key, length, pen));
        };
        keep(art.distance, Mm::ZERO, "drawing.clearance.art", art.distance, Pen::Print);
        keep(art.distance, art.cut.low, stays, art.left.max(-art.left), Pen::Print);
        if let Some(Clearance { distance, .. }) = folio {
            keep(*distance, Mm::ZERO, "drawing.clearance.folio", *distance, Pen::Print);
        }
        if safe != art.distance {
            keep(safe, Mm::ZERO, "drawing.clearance.safe", safe, Pen::Dash);
        }
        let mut row = self.top - 3.0;
        for (_, (from, to, key, length, pen)) in rows {
            self.bound(from, row, pen, sketch);
            self.row(row, from, to, Anchor::End, say(key).put("length", length), sketch);
            row -= ROW;
        }
        self.bound(Mm::ZERO, row + ROW, Pen::Print, sketch);
    }

    /// The page number where it stands, unless other bounds would run through it.
    fn number(&self, number: Folio, folio: Mm, others: Mm, sketch: &mut Sketch) {
        if folio > others {
            let words = at(self.x(-folio) - 0.6, self.top + BODY - 3.0);
            sketch.text(Pen::Print, words, Anchor::End, super::press_sheet::number(number));
        }
    }

    /// The knife with its band, the bleed, where the knife would fall otherwise.
    fn below(&self, page: &Page, art: &Clearance, shift: Mm, sketch: &mut Sketch) {
        let foot = self.top + BODY;
        for end in [art.cut.low, art.cut.high] {
            sketch.line(at(self.x(end), self.top), at(self.x(end), foot + 2.0), Pen::Dash);
        }
        let bleed = page.bleed.filter(|bleed| *bleed > Mm::ZERO);
        // Where nobody moves the pictures the knife falls at the shift; moved, at the page's edge.
        let other =
            if page.moved { "drawing.clearance.unmoved" } else { "drawing.clearance.moved" };
        let mut rows = Vec::new();
        // The farther out stands higher: no bound runs through the words of another.
        let mut keep = |from: Mm, to: Mm, key, length, pen| {
            put(&mut rows, from.max(to), (from, to, key, length, pen));
        };
        let (low, high) = (art.cut.low, art.cut.high);
        keep(low, high, "drawing.clearance.knife", art.cut.above(), Pen::Dash);
        keep(Mm::ZERO, shift, other, shift, Pen::Print);
        if let Some(bleed) = bleed {
            keep(Mm::ZERO, bleed, "drawing.clearance.bleed", bleed, Pen::Print);
        }
        let mut row = foot + 3.4;
        for (_, (from, to, key, length, pen)) in rows {
            self.bound(to, row, pen, sketch);
            self.bound(from, row, pen, sketch);
            self.row(row, from, to, Anchor::Start, say(key).put("length", length), sketch);
            row += ROW;
        }
        let cut = self.x(art.cut.nominal);
        sketch.line(at(cut, self.top - 1.0), at(cut, foot + 2.0), Pen::Cut);
    }
}

/// A dimension from one place to another: what it says, how long it is, the pen of its bounds.
type Row = (Mm, Mm, &'static str, Mm, Pen);

/// Puts a row behind those that rank higher or alike.
fn put(rows: &mut Vec<(Mm, Row)>, rank: Mm, row: Row) {
    let place = rows.iter().filter(|(other, _)| *other >= rank).count();
    rows.insert(place, (rank, row));
}
