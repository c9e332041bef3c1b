//! Printer's pairs: the buyer's pages on the chosen press sheet, front and back of every folded sheet, each
//! page where it belongs on its leaf, with marks in what is cut off.

use super::clean;
use super::document::points;
use super::letters::Letters;
use crate::drawing::{Mark, crowns, cuts};
use crate::intake::{Binding, Order, OrderPage, Slot, Sources, folded};
use crate::plan::{Folio, Leaf, Panel, Side, Way, panels};
use crate::units::{Measure, Mm};
use crate::view::html::Scene;
use crate::words::say;
use pdf_writer::{Content, Name, Str};

/// Length of a mark in what is cut off, and of one at the edge of the press sheet.
const STROKE: f64 = 2.0;
/// See [`STROKE`].
const EDGE: f64 = 4.0;
/// Width of a mark.
const FINE: f64 = 0.1;
/// Size of the letters of the line that says what the sheet is, and how far it stands from the corner.
const LETTER: f64 = 1.8;
/// See [`LETTER`].
const ASIDE: f64 = 8.0;

/// The order for printer's pairs; nothing where no press sheet can be used. A cover that has not come is
/// left out.
#[must_use]
pub fn pairs(scene: &Scene, sources: &Sources, binding: Binding, language: &str) -> Option<Order> {
    let results = &scene.plan.results;
    let way = results.layout.chosen().filter(|way| way.refusal.is_none())?;
    let come = |leaf: &&Leaf| match leaf.folios.front_right {
        Folio::Cover(_) => !sources.lacks_cover(),
        Folio::Page(_) => true,
    };
    let pages = results.leaves.iter().filter(come).flat_map(|leaf| {
        [Side::Front, Side::Back]
            .map(|side| Sheet { scene, way, leaf, side }.page(sources, binding))
    });
    Some(Order {
        title: scene
            .printer
            .text(&say("pdf.pairs.title").text("title", scene.job.identity.title.clone())),
        language: language.to_owned(),
        layer: scene.printer.word("pdf.pairs.layer").to_owned(),
        pages: pages.collect(),
    })
}

/// One side of the press sheet with one folded sheet on it.
struct Sheet<'a> {
    scene: &'a Scene<'a>,
    way: &'a Way,
    leaf: &'a Leaf,
    side: Side,
}

impl Sheet<'_> {
    fn page(&self, sources: &Sources, binding: Binding) -> OrderPage {
        let press = self.way.press;
        let shape = self.scene.plan.results.layout.copy;
        let places: Vec<Panel> = panels(shape, self.way, self.leaf, self.side).collect();
        let placed = places.iter().filter_map(|panel| {
            let right = panel.fold_right != panel.head_down;
            let slot = Slot::new(self.scene.job, self.leaf, panel.folio, right);
            let (face, ends) = (self.beyond_face(), self.beyond_ends(panel, &places));
            let mut placed = slot.placed(sources, binding, |laid| slot.window(laid, face, ends))?;
            let there = folded(panel, press.height);
            placed.matrix = placed.matrix.then(there);
            placed.clip = there.frame(placed.clip);
            Some(placed)
        });
        OrderPage {
            size: (press.width.get(), press.height.get()),
            turned: 0,
            placed: placed.collect(),
            marks: self.marks(&places),
        }
    }

    /// How far a page may show beyond the face: its bleed, as far as the flat reaches.
    fn beyond_face(&self) -> Mm {
        let bleed = self.scene.job.bleed.unwrap_or_default();
        bleed.min(self.chip())
    }

    /// The same at its head and at its foot: half way to the next copy, or to the edge of the press sheet.
    fn beyond_ends(&self, panel: &Panel, places: &[Panel]) -> (Mm, Mm) {
        let across = |panel: &Panel| (panel.corner.width, panel.corner.width + panel.size.width);
        let ((left, right), top) = (across(panel), panel.corner.height);
        let bottom = top + panel.size.height;
        let bleed = self.scene.job.bleed.unwrap_or_default();
        let (mut above, mut below) = (bleed.min(top), bleed.min(self.way.press.height - bottom));
        for other in places {
            let (from, to) = across(other);
            let (upper, lower) = (other.corner.height, other.corner.height + other.size.height);
            if from < right && left < to && lower <= top {
                above = above.min((top - lower) / 2.0);
            } else if from < right && left < to && upper >= bottom {
                below = below.min((upper - bottom) / 2.0);
            }
        }
        if panel.head_down { (below, above) } else { (above, below) }
    }

    /// What is cut off at the face of this leaf.
    fn chip(&self) -> Mm {
        (self.way.flat.width / 2.0 - self.leaf.length).max(Mm::ZERO)
    }

    /// The narrowest of what is cut off at head and foot.
    fn strip(&self) -> Mm {
        let job = self.scene.job;
        let ends = self.way.head_trim.min(job.foot_trim);
        let between = if job.copies_up > 1 { job.gutter / 2.0 } else { ends };
        ends.min(between).max(Mm::ZERO)
    }

    fn marks(&self, places: &[Panel]) -> Vec<u8> {
        let mut pen = Pen { content: Content::new(), high: self.way.press.height.get() };
        pen.content.set_stroke_cmyk(0.0, 0.0, 0.0, 1.0).set_line_width(points(FINE));
        // As near as the cut may stray, as long as there is room.
        let off = self.scene.job.tolerance.get();
        let (chip, strip) =
            (self.chip().get().min(off + STROKE), self.strip().get().min(off + STROKE));
        for panel in places {
            let (x, y) = (panel.corner.width.get(), panel.corner.height.get());
            let (wide, tall) = (panel.size.width.get(), panel.size.height.get());
            let (face, out) = if panel.fold_right { (x, -1.0) } else { (x + wide, 1.0) };
            let fold = if panel.fold_right { x + wide } else { x };
            if chip > off {
                for cut in [y, y + tall] {
                    pen.line((face + out * off, cut), (face + out * chip, cut));
                }
            }
            if strip > off {
                for (from, to) in [(y - off, y - strip), (y + tall + off, y + tall + strip)] {
                    pen.line((face, from), (face, to));
                    pen.line((fold, from), (fold, to));
                }
            }
        }
        self.stitches(&mut pen, off, chip);
        self.cuts(&mut pen);
        let lowest = places.iter().map(|panel| panel.corner.height + panel.size.height);
        let lowest = lowest.fold(Mm::ZERO, Mm::max).get();
        let leftmost = places.iter().map(|panel| panel.corner.width.get());
        let leftmost =
            leftmost.fold(self.way.press.width.get(), |left, x| if x < left { x } else { left });
        pen.words((leftmost + ASIDE, lowest + off), &self.told());
        pen.content.finish().into_vec()
    }

    /// The legs of each stitch, at its height beside the face.
    fn stitches(&self, pen: &mut Pen, off: f64, chip: f64) {
        let long = self.leaf.length.get();
        if chip <= off {
            return;
        }
        for (fold, from, to) in crowns(self.scene.plan, self.way, self.side) {
            for y in [from.get(), to.get()] {
                for out in [-1.0, 1.0] {
                    let face = fold.get() + out * long;
                    pen.line((face + out * off, y), (face + out * chip, y));
                }
            }
        }
    }

    /// The guillotine's cuts, at both edges of the press sheet.
    fn cuts(&self, pen: &mut Pen) {
        let (wide, high) = (self.way.press.width.get(), self.way.press.height.get());
        for Mark { upright, place } in cuts(self.way, self.side) {
            let at = place.get();
            if upright {
                pen.line((at, 0.0), (at, EDGE));
                pen.line((at, high - EDGE), (at, high));
            } else {
                pen.line((0.0, at), (EDGE, at));
                pen.line((wide - EDGE, at), (wide, at));
            }
        }
    }

    /// Which book, which sheet of it, which side.
    fn told(&self) -> String {
        let side = match self.side {
            Side::Front => "pdf.pairs.front",
            Side::Back => "pdf.pairs.back",
        };
        let printer = &self.scene.printer;
        let sheets = self.scene.plan.results.leaves.len() as u32;
        let told = say("pdf.pairs.slug")
            .text("title", self.scene.job.identity.title.clone())
            .put("sheet", Measure::count(self.leaf.place))
            .put("sheets", Measure::count(sheets))
            .say("side", say(side));
        printer.text(&told)
    }
}

/// Draws marks; places from the upper left corner.
struct Pen {
    content: Content,
    high: f64,
}

impl Pen {
    fn line(&mut self, from: (f64, f64), to: (f64, f64)) {
        self.content.move_to(points(from.0), points(self.high - from.1));
        self.content.line_to(points(to.0), points(self.high - to.1)).stroke();
    }

    /// A line of words on white, so that it can be read on a picture.
    fn words(&mut self, (x, y): (f64, f64), text: &str) {
        let letters = Letters::of(&clean(text));
        let (wide, low) = (letters.width(LETTER), self.high - y - LETTER);
        self.content.set_fill_cmyk(0.0, 0.0, 0.0, 0.0);
        self.content.rect(points(x), points(low), points(wide), points(LETTER)).fill_nonzero();
        self.content
            .set_fill_cmyk(0.0, 0.0, 0.0, 1.0)
            .begin_text()
            .set_font(Name(b"F"), points(LETTER))
            .set_text_matrix([1.0, 0.0, 0.0, 1.0, points(x), points(low + LETTER / 4.0)])
            .show(Str(&letters.bytes))
            .end_text();
    }
}
