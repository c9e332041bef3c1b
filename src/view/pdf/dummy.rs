//! A blank dummy on the chosen press sheet: page numbers where their pages belong, creep worked in,
//! folds, cuts and stitches. Each press sheet is two pages, its front and its back, as printer's
//! spreads: printed on both sides, cut, folded and nested they make the book.

use super::document::{Box4, Document, Ink, Type};
use super::notes::{self, BLACK, GREY, LETTER, RED, bar, file, hair, plain, text};
use super::{File, Wanted};
use crate::drawing::{Anchor, crowns, cuts, panel_number};
use crate::plan::{Leaf, Panel, Side, Way, panels};
use crate::units::{Measure, Mm};
use crate::view::html::Scene;
use crate::words::{Say, say};
use pdf_writer::types::StructRole;

/// Share of a page's smaller side that its number is high.
const NUMBER: f64 = 0.3;
/// How far below its middle a number stands, in its size: half the height of a figure.
const SINK: f64 = 0.36;
/// From a corner of the trimmed page to its mark, and how long that is.
const OFF: f64 = 0.5;
/// See [`OFF`].
const MARK: f64 = 2.5;
/// How far a guillotine's mark reaches into the press sheet.
const EDGE: f64 = 8.0;
/// How far a fold's line reaches beyond the page.
const OVER: f64 = 3.0;
/// A page narrower than this holds no bar; it lies across the fold then.
const ROOM: f64 = 56.0;
/// Kept free beside words.
const SIDE: f64 = 5.0;
/// A stitch.
const WIRE: Ink = Ink { colour: BLACK, width: 0.7, dash: None };
/// A fold.
const FOLD: Ink = Ink { colour: GREY, width: 0.15, dash: Some((3.0, 1.5)) };

/// The layers, back to front.
const LAYERS: [&str; 4] =
    ["pdf.layer.pages", "pdf.layer.folds", "pdf.layer.cuts", "pdf.layer.stitches"];
const PAGES: usize = 0;
const FOLDS: usize = 1;
const CUTS: usize = 2;
const STITCHES: usize = 3;

/// Writes the dummy; nothing where no press sheet can be used.
#[must_use]
pub fn dummy(wanted: &Wanted) -> Option<File> {
    let scene = wanted.scene;
    let way = scene.plan.results.layout.chosen().filter(|way| way.refusal.is_none())?;
    let title = notes::title(scene, "pdf.dummy");
    let mut document = Document::new(LAYERS.map(|key| scene.printer.word(key).to_owned()).to_vec());
    let leaves = &scene.plan.results.leaves;
    for leaf in leaves {
        for side in [Side::Front, Side::Back] {
            let ends = [
                leaves.first().map(|one| (one.place, Side::Front)),
                leaves.last().map(|one| (one.place, Side::Back)),
            ];
            let stitched = ends.contains(&Some((leaf.place, side)));
            Face { scene, way, leaf, side }.draw(&mut document, stitched);
        }
    }
    Some(file(document, &title, wanted.language))
}

/// One side of one press sheet.
struct Face<'a> {
    scene: &'a Scene<'a>,
    way: &'a Way,
    leaf: &'a Leaf,
    side: Side,
}

impl Face<'_> {
    fn draw(&self, document: &mut Document, stitched: bool) {
        let press = (self.way.press.width.get(), self.way.press.height.get());
        let plan = self.scene.plan;
        let all: Vec<Panel> =
            panels(plan.results.layout.copy, self.way, self.leaf, self.side).collect();
        document.page(press, None, None);
        document.figure(&text(self.scene, &self.shown()), |document| {
            document.layer(FOLDS, |document| document.lines(FOLD, &folds(&all)));
            document.layer(CUTS, |document| {
                document.lines(hair(RED), &self.guillotine());
                document.lines(hair(RED), &corners(&all));
            });
            document.layer(PAGES, |document| {
                for panel in &all {
                    document.outline(hair(GREY), self.page(panel));
                }
            });
            if stitched {
                let wire = crowns(plan, self.way, self.side);
                let wire: Vec<Box4> = wire
                    .iter()
                    .map(|(x, from, to)| [x.get(), from.get(), x.get(), to.get()])
                    .collect();
                document.layer(STITCHES, |document| document.lines(WIRE, &wire));
            }
        });
        document.layer(PAGES, |document| {
            for panel in &all {
                self.number(document, panel);
            }
            if let Some(panel) = all.first().filter(|_| self.opens()) {
                let [left, top, right, bottom] = self.page(panel);
                // Across the fold it keeps clear of what stands at the foot.
                let (middle, low) = match (right - left < ROOM, panel.head_down) {
                    (false, _) => (f64::midpoint(left, right), top + (bottom - top) * 0.68),
                    (true, false) => (right, top + SIDE),
                    (true, true) => (right, bottom - SIDE - notes::BAR_HIGH),
                };
                bar(document, self.scene, (middle - 25.0, low));
            }
        });
    }

    /// The first side of all.
    fn opens(&self) -> bool {
        self.leaf.place == 1 && self.side == Side::Front
    }

    /// Which sheet it is, and where its pages belong.
    fn shown(&self) -> Say {
        let key = match self.side {
            Side::Front => "pdf.dummy.front",
            Side::Back => "pdf.dummy.back",
        };
        say(key)
            .put("sheet", Measure::count(self.leaf.place))
            .put("sheets", Measure::count(self.scene.plan.results.leaves.len() as u32))
            .put("shift", self.leaf.image_shift)
    }

    /// Where a page belongs on its leaf: its face edge on the cut, its spine edge as far from the fold
    /// as push-out asks.
    fn page(&self, panel: &Panel) -> Box4 {
        let (left, right) = (panel.corner.width, panel.corner.width + panel.size.width);
        let shift = self.leaf.image_shift;
        let (left, right) =
            if panel.fold_right { (left, right - shift) } else { (left + shift, right) };
        let (top, bottom) = (panel.corner.height, panel.corner.height + panel.size.height);
        [left, top, right, bottom].map(Mm::get)
    }

    /// The number in the middle of its page; which sheet it is at the foot.
    fn number(&self, document: &mut Document, panel: &Panel) {
        let [left, top, right, bottom] = self.page(panel);
        let (middle, wide) = (f64::midpoint(left, right), right - left);
        let down = if panel.head_down { -1.0 } else { 1.0 };
        let (anchor, turned) = (Anchor::Middle, panel.head_down);
        let style = |size| Type { anchor, turned, ..plain(size) };
        let size = wide.min(bottom - top) * NUMBER;
        let place = (middle, f64::midpoint(top, bottom) + down * size * SINK);
        let number = text(self.scene, &panel_number(panel.folio));
        document.part(StructRole::P, |document| document.words(style(size), place, &number));
        let foot = if panel.head_down { top + SIDE } else { bottom - SIDE };
        let told = text(self.scene, &self.shown());
        let (style, wide) = (Type { colour: GREY, ..style(LETTER * 0.8) }, wide - 2.0 * SIDE);
        document.part(StructRole::P, |document| {
            document.rising(style, (middle, foot), wide, &told);
        });
    }

    /// Where the guillotine cuts, at both edges of the press sheet.
    fn guillotine(&self) -> Vec<Box4> {
        let (wide, high) = (self.way.press.width.get(), self.way.press.height.get());
        let marks = cuts(self.way, self.side);
        let ends = marks.iter().flat_map(|mark| {
            let place = mark.place.get();
            if mark.upright {
                [[place, 0.0, place, EDGE], [place, high - EDGE, place, high]]
            } else {
                [[0.0, place, EDGE, place], [wide - EDGE, place, wide, place]]
            }
        });
        ends.collect()
    }
}

/// The fold beside each left page, a little longer than it.
fn folds(panels: &[Panel]) -> Vec<Box4> {
    let left = panels.iter().filter(|panel| panel.fold_right);
    left.map(|panel| {
        let x = (panel.corner.width + panel.size.width).get();
        let (top, high) = (panel.corner.height.get(), panel.size.height.get());
        [x, top - OVER, x, top + high + OVER]
    })
    .collect()
}

/// Marks at the outer corners of each leaf: head, foot and face cut.
fn corners(panels: &[Panel]) -> Vec<Box4> {
    let each = panels.iter().flat_map(|panel| {
        let (x, y) = (panel.corner.width.get(), panel.corner.height.get());
        let (wide, high) = (panel.size.width.get(), panel.size.height.get());
        let (face, out) = if panel.fold_right { (x, -1.0) } else { (x + wide, 1.0) };
        let (near, far) = (face + out * OFF, face + out * (OFF + MARK));
        [
            [near, y, far, y],
            [near, y + high, far, y + high],
            [face, y - OFF, face, y - OFF - MARK],
            [face, y + high + OFF, face, y + high + OFF + MARK],
        ]
    });
    each.collect()
}
