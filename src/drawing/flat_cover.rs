//! The outermost sheet laid flat, its outer side up: what a designer draws.
//!
//! Cut, bleed, safe areas, creases, the stitches with what words keep from them, and the room that
//! is left for words on the spine.

use super::cover_parts::{Area, CoverParts, Crown, Panel};
use super::press_sheet::number;
use super::shapes::{Sketch, at};
use super::{Anchor, Drawing, Pen, Point, Room};
use crate::plan::{Folio, Plan};
use crate::units::{Measure, Mm};
use crate::words::{Say, say};

/// Height that the sheet may take.
const HIGH: f64 = 84.0;
/// Room above for the two widths.
const ABOVE: f64 = 15.0;
/// Room below for the panels, the spine and its words.
const BELOW: f64 = 19.0;
/// Half of what the longest words above may take.
const HALF: f64 = 22.0;
/// Letters by which a panel that is narrower names its pages shortly.
const LETTERS: f64 = 17.0;
/// What the words of a dimension take.
const NUMBER: f64 = 16.0;
/// Half of the least width at which what words keep from a stitch is drawn.
const KEPT: f64 = 1.4;

/// What the job keeps on the sheet.
#[derive(Debug, Clone, Copy)]
pub struct Kept {
    /// The kind of its paper.
    pub kind: &'static str,
    /// Picture beyond the cut, if it bleeds.
    pub bleed: Option<Mm>,
    /// Width kept free inside every edge.
    pub safe: Mm,
}

/// Draws the flat cover.
#[must_use]
pub fn flat_cover(plan: &Plan, kept: &Kept, room: Room) -> Drawing {
    let cover = &plan.results.cover;
    let (left, right) = (room.pick(20.0, 21.0), room.pick(8.0, 3.0));
    let (wide, high) = (cover.with_bleed.width.get(), cover.with_bleed.height.get());
    let scale = ((room.width() - left - right) / wide).min(HIGH / high);
    let middle = left + (room.width() - left - right) / 2.0;
    let bleed = kept.bleed.unwrap_or(Mm::ZERO);
    let parts = CoverParts::of(plan, bleed, kept.safe);
    let frame = Frame { plan, kept, parts, room, scale, middle };
    let mut sketch = Sketch::default();
    frame.sheet(&mut sketch);
    frame.spine(&mut sketch);
    frame.panels(&mut sketch);
    frame.widths(&mut sketch);
    let creases = match (cover.wants_crease, cover.creases) {
        (false, _) => say("cover.crease.none"),
        (true, 1) => say("cover.crease.one"),
        (true, _) => say("cover.crease.two").put("offset", cover.crease_offset),
    };
    Drawing {
        id: "flat-cover",
        room,
        title: say(if cover.separate { "drawing.cover" } else { "drawing.cover.self" }),
        description: say("drawing.cover.spoken")
            .put("width", cover.open.width)
            .put("height", cover.open.height)
            .put("spine", cover.spine.nominal.0)
            .put("safe", kept.safe)
            .count("stitches", Measure::count(plan.results.stitches.placement.per_copy))
            .say("creases", creases)
            .say("words", frame.room_for_words()),
        width: room.width(),
        height: ABOVE + high * scale + BELOW,
        shapes: sketch.shapes,
    }
}

struct Frame<'a> {
    plan: &'a Plan,
    kept: &'a Kept,
    parts: CoverParts,
    room: Room,
    scale: f64,
    /// The middle of the spine.
    middle: f64,
}

impl Frame<'_> {
    /// A place, counted from the middle of the spine at the head.
    fn at(&self, across: Mm, down: Mm) -> Point {
        let bleed = self.kept.bleed.unwrap_or(Mm::ZERO);
        at(self.middle + across.get() * self.scale, ABOVE + (down + bleed).get() * self.scale)
    }

    /// Half the trimmed open width, the height, the bleed.
    fn lengths(&self) -> (Mm, Mm, Mm) {
        let open = self.plan.results.cover.open;
        (open.width / 2.0, open.height, self.kept.bleed.unwrap_or(Mm::ZERO))
    }

    /// The corners of an area.
    fn corners(&self, area: Area) -> (Point, Point) {
        (self.at(area.left, area.top), self.at(area.right, area.bottom))
    }

    /// Paper with its bleed, the cut, the creases.
    fn sheet(&self, sketch: &mut Sketch) {
        let (head, foot) = self.corners(self.parts.bleed);
        let middle = f64::midpoint(head.y, foot.y);
        let (from, to) = (at(head.x, middle), at(foot.x, middle));
        sketch.strip(from, to, foot.y - head.y, Pen::Paper(self.kept.kind), false);
        let (from, to) = self.corners(self.parts.trim);
        sketch.rectangle(from, to, Pen::Cut);
        for crease in &self.parts.creases {
            let x = self.at(*crease, Mm::ZERO).x;
            sketch.line(at(x, head.y - 1.5), at(x, foot.y + 1.5), Pen::Print);
        }
    }

    /// Stitches, what words keep from them, and the room that is left.
    fn spine(&self, sketch: &mut Sketch) {
        let side = self.plan.results.cover.crease_offset.get() * self.scale;
        let side = side.max(KEPT);
        let place = |down: Mm| self.at(Mm::ZERO, down);
        for Crown { wire, kept } in &self.parts.stitches {
            let (from, to) = (place(kept.0), place(kept.1));
            sketch.rectangle(at(from.x - side, from.y), at(to.x + side, to.y), Pen::Dash);
            sketch.line(place(wire.0), place(wire.1), Pen::Wire);
        }
        if let Some(words) = self.parts.words {
            let (from, to) = self.corners(words);
            sketch.rectangle(from, to, Pen::Print);
        }
    }

    /// Safe areas and which page is where.
    fn panels(&self, sketch: &mut Sketch) {
        for Panel { safe, front, behind } in &self.parts.panels {
            let (from, to) = self.corners(*safe);
            sketch.rectangle(from, to, Pen::Dash);
            let middle = f64::midpoint(from.x, to.x);
            let (y, letter) = (f64::midpoint(from.y, to.y), self.room.letter());
            let short = to.x - from.x < LETTERS * letter * 0.56;
            if short {
                sketch.text(Pen::Print, at(middle, y), Anchor::Middle, number(*front));
                continue;
            }
            sketch.text(Pen::Print, at(middle, y), Anchor::Middle, name(*front));
            let below = at(middle, y + letter * 1.4);
            if to.y - below.y > 1.0 {
                sketch.text(Pen::Dash, below, Anchor::Middle, name(*behind));
            }
        }
    }

    /// Widths above, panels and spine below, height at the left.
    fn widths(&self, sketch: &mut Sketch) {
        let (half, high, bleed) = self.lengths();
        let cover = &self.plan.results.cover;
        let (head, foot) = (self.at(-half - bleed, -bleed), self.at(half + bleed, high + bleed));
        let kept = (self.room.width(), HALF);
        let x = |across: Mm| self.at(across, Mm::ZERO).x;
        let mut row = head.y - 3.0;
        let label = say("drawing.cover.open").put("length", cover.open.width);
        sketch.level((x(-half), x(half)), row, kept, label);
        if self.kept.bleed.is_some() {
            row -= 6.0;
            let label = say("drawing.cover.bleed")
                .put("length", cover.with_bleed.width)
                .put("bleed", bleed);
            sketch.level((head.x, foot.x), row, kept, label);
        }
        let ends = (self.at(-half, Mm::ZERO).y, self.at(-half, high).y);
        let label = say("drawing.length").put("length", high);
        sketch.upright(head.x - 3.0, ends, Anchor::End, label);
        // Panels from the cut to their crease, and between the creases the spine.
        let inner = cover.crease_offset;
        row = foot.y + 3.4;
        for (from, to) in [(-half, -inner), (inner, half)] {
            let label = say("drawing.length").put("length", to - from);
            let ends = (at(x(from), row), at(x(to), row));
            // Words of narrow panels stand outward of the spine.
            let (words, anchor) = match (x(to) - x(from) < NUMBER, from < -inner) {
                (false, _) => (f64::midpoint(x(from), x(to)), Anchor::Middle),
                (true, true) => (x(to) - 1.0, Anchor::End),
                (true, false) => (x(from) + 1.0, Anchor::Start),
            };
            sketch.dimension(ends, at(words, row + 4.2), anchor, label);
        }
        let spine = if inner > Mm::ZERO {
            sketch.line(at(x(-inner), row), at(x(-inner), row + 5.5), Pen::Hair);
            sketch.line(at(x(inner), row), at(x(inner), row + 5.5), Pen::Hair);
            say("drawing.cover.creases").put("length", inner * 2.0)
        } else {
            say("drawing.cover.fold")
        };
        let words = |nth: f64| at(self.middle, row + 4.6 + nth * 4.6);
        sketch.text(Pen::Hair, words(1.0), Anchor::Middle, spine);
        sketch.text(Pen::Hair, words(2.0), Anchor::Middle, self.room_for_words());
    }

    /// Whether words have room on the spine, and how much.
    fn room_for_words(&self) -> Say {
        let results = &self.plan.results;
        if results.cover.text_room <= Mm::ZERO {
            return say("cover.no-text");
        }
        let (_, high, _) = self.lengths();
        let crown = results.stitches.wire.crown;
        let (from, to) = results.stitches.placement.free_of_wire(high, crown);
        say("drawing.cover.words").put("room", results.cover.text_room).put("length", to - from)
    }
}

/// A page or a side of the cover in words.
#[must_use]
pub fn name(folio: Folio) -> Say {
    match folio {
        Folio::Page(page) => say("drawing.cover.page").put("page", Measure::count(page)),
        Folio::Cover(side) => say(format!("cover.side.{side}")),
    }
}
