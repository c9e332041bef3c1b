//! The cover template: the outermost sheet laid flat in true size, outer side up, to draw on.
//!
//! Boxes as PDF has them: the cut is the TrimBox, the bleed the BleedBox. Each kind of line lies on a
//! layer of its own, so that a program for pages can hide it.

use super::document::{Box4, Document, Ink};
use super::notes::{self, BLACK, GREY, LETTER, RED, bar, file, identity, text};
use super::{File, Wanted};
use crate::drawing::{Anchor, Area, CoverParts, panel_name};
use crate::units::Mm;
use crate::view::html::Scene;
use crate::words::{Say, say};
use pdf_writer::types::StructRole;

/// Paper beside and above the bleed.
const ROUND: f64 = 15.0;
/// Width of the page at least: so much the notes need.
const LEAST: f64 = 160.0;
/// Width of the key to the lines.
const KEY: f64 = 40.0;
/// From the bleed to a mark.
const OFF: f64 = 2.0;
/// How long a mark is.
const MARK: f64 = 8.0;
/// From one kind of line to the next in the key.
const ROW: f64 = 5.0;
/// Half of what words on the spine keep from a stitch to either side, at least.
const KEPT: f64 = 1.5;

/// How thick a stitch is drawn.
const WIRE: f64 = 0.6;

/// The layers, back to front: key of the name, look.
const LAYERS: [(&str, Ink); 7] = [
    ("pdf.layer.bleed", line([0.0, 0.35, 0.6], Some((4.0, 1.0)))),
    ("pdf.layer.trim", line(RED, None)),
    ("pdf.layer.safe", line([0.1, 0.45, 0.2], Some((1.0, 1.0)))),
    ("pdf.layer.spine", line(BLACK, None)),
    ("pdf.layer.creases", line([0.5, 0.25, 0.55], Some((2.0, 0.6)))),
    ("pdf.layer.stitches", line(GREY, None)),
    ("pdf.layer.notes", line(BLACK, None)),
];
const BLEED: usize = 0;
const TRIM: usize = 1;
const SAFE: usize = 2;
const SPINE: usize = 3;
const CREASES: usize = 4;
const STITCHES: usize = 5;
const NOTES: usize = 6;

const fn line(colour: [f32; 3], dash: Option<(f32, f32)>) -> Ink {
    Ink { colour, width: 0.15, dash }
}

/// Writes the template.
#[must_use]
pub fn cover(wanted: &Wanted) -> File {
    let scene = wanted.scene;
    let bleed = scene.job.bleed.unwrap_or(Mm::ZERO);
    let parts = CoverParts::of(scene.plan, bleed, scene.job.safe);
    let title = notes::title(scene, "pdf.cover");
    let names = LAYERS.map(|(key, _)| scene.printer.word(key).to_owned());
    let wide = (parts.bleed.right.get() * 2.0 + ROUND * 2.0).max(LEAST);
    let down = ROUND - parts.bleed.top.get();
    let template = Template { scene, parts, wide, down };
    let told = (&*title, &*template.sentences());
    let (bleed, trim) = (template.on(template.parts.bleed), template.on(template.parts.trim));
    let top = bleed[3] + ROUND;
    let end = notes::end(told, top, template.breadth());
    let mut document = Document::new(names.to_vec());
    document.page((wide, end.max(top + ROW * NOTES as f64) + ROUND), Some(trim), Some(bleed));
    document.figure(&text(scene, &template.shown()), |document| template.draw(document, bleed));
    document.layer(NOTES, |document| {
        template.name_panels(document);
        notes::told(document, told, (ROUND, top), template.breadth());
        bar(document, scene, (ROUND, end - notes::BAR_HIGH));
        template.key(document, top);
    });
    file(document, &title, wanted.language)
}

struct Template<'a> {
    scene: &'a Scene<'a>,
    parts: CoverParts,
    /// Width of the page; the spine stands in its middle.
    wide: f64,
    /// Where the cut at the head is.
    down: f64,
}

impl Template<'_> {
    fn x(&self, across: Mm) -> f64 {
        self.wide / 2.0 + across.get()
    }

    fn y(&self, down: Mm) -> f64 {
        self.down + down.get()
    }

    fn on(&self, area: Area) -> Box4 {
        [self.x(area.left), self.y(area.top), self.x(area.right), self.y(area.bottom)]
    }

    /// What the lines show.
    fn shown(&self) -> Say {
        let cover = &self.scene.plan.results.cover;
        say("cover.summary")
            .put("width", cover.open.width)
            .put("height", cover.open.height)
            .band("spine", cover.spine.map(|spine| spine.0))
    }

    fn draw(&self, document: &mut Document, bleed: Box4) {
        let [left, top, right, bottom] = bleed;
        let trim = self.on(self.parts.trim);
        // Marks stand outside the bleed, above and below.
        let upright = |x: f64| {
            [[x, top - OFF - MARK, x, top - OFF], [x, bottom + OFF, x, bottom + OFF + MARK]]
        };
        let level = |y: f64| {
            [[left - OFF - MARK, y, left - OFF, y], [right + OFF, y, right + OFF + MARK, y]]
        };
        let through = |x: f64| [[x, trim[1], x, trim[3]]];
        let ink = |layer: usize| LAYERS.get(layer).map_or(line(BLACK, None), |(_, ink)| *ink);
        if self.scene.job.bleed.is_some() {
            document.layer(BLEED, |document| document.outline(ink(BLEED), bleed));
        }
        document.layer(TRIM, |document| {
            document.outline(ink(TRIM), trim);
            let [left, top, right, bottom] = trim;
            let marks = [upright(left), upright(right), level(top), level(bottom)];
            document.lines(Ink { dash: None, ..ink(TRIM) }, marks.as_flattened());
        });
        document.layer(SAFE, |document| {
            for panel in &self.parts.panels {
                document.outline(ink(SAFE), self.on(panel.safe));
            }
        });
        document.layer(SPINE, |document| {
            for x in [-self.parts.spine, self.parts.spine].map(|across| self.x(across)) {
                document.lines(ink(SPINE), &through(x));
                document.lines(ink(SPINE), &upright(x));
            }
            if let Some(words) = self.parts.words {
                document.outline(Ink { dash: Some((0.5, 0.5)), ..ink(SPINE) }, self.on(words));
            }
        });
        document.layer(CREASES, |document| {
            for x in self.parts.creases.iter().map(|across| self.x(*across)) {
                document.lines(ink(CREASES), &through(x));
                document.lines(Ink { dash: None, ..ink(CREASES) }, &upright(x));
            }
        });
        document.layer(STITCHES, |document| {
            let (x, side) = (self.x(Mm::ZERO), self.parts.spine.get().max(KEPT));
            for crown in &self.parts.stitches {
                let wire = [x, self.y(crown.wire.0), x, self.y(crown.wire.1)];
                document.lines(Ink { width: WIRE, ..ink(STITCHES) }, &[wire]);
                let kept = [x - side, self.y(crown.kept.0), x + side, self.y(crown.kept.1)];
                document.outline(Ink { dash: Some((0.5, 0.5)), ..ink(STITCHES) }, kept);
            }
        });
    }

    /// Which page or side of the cover is where.
    fn name_panels(&self, document: &mut Document) {
        let anchor = Anchor::Middle;
        for panel in &self.parts.panels {
            let [left, top, right, bottom] = self.on(panel.safe);
            let place = (f64::midpoint(left, right), f64::midpoint(top, bottom));
            let style = super::document::Type { anchor, colour: GREY, ..notes::plain(LETTER) };
            let name = text(self.scene, &panel_name(panel.front));
            document.part(StructRole::P, |document| document.words(style, place, &name));
        }
    }

    /// Width of the sentences below the sheet.
    fn breadth(&self) -> f64 {
        self.wide - 3.0 * ROUND - KEY
    }

    /// What is said below the sheet.
    fn sentences(&self) -> Vec<String> {
        let scene = self.scene;
        let cover = &scene.plan.results.cover;
        let creases = match (cover.wants_crease, cover.creases) {
            (false, _) => say("cover.crease.none"),
            (true, 1) => say("cover.crease.one"),
            (true, _) => say("cover.crease.two").put("offset", cover.crease_offset),
        };
        let words = if self.parts.words.is_some() { "pdf.words" } else { "cover.no-text" };
        let bleed = scene
            .job
            .bleed
            .map(|bleed| say("pdf.bleed").put("bleed", bleed).put("safe", scene.job.safe));
        let told = [Some(self.shown()), bleed, Some(creases)];
        let words = [words, "cautions.dummy"].map(|key| scene.printer.word(key).to_owned());
        let told = told.into_iter().flatten().map(|sentence| text(scene, &sentence));
        [identity(scene)].into_iter().chain(told).chain(words).collect()
    }

    /// What each kind of line means, at the right.
    fn key(&self, document: &mut Document, top: f64) {
        let x = self.wide - ROUND - KEY;
        let bleeds = self.scene.job.bleed.is_some();
        let shown = LAYERS.iter().enumerate().take(NOTES).filter(|(at, _)| *at != BLEED || bleeds);
        for (row, (at, (name, ink))) in shown.enumerate() {
            let y = top + LETTER + ROW * row as f64;
            let width = if at == STITCHES { WIRE } else { ink.width };
            document.lines(Ink { width, ..*ink }, &[[x, y - 1.0, x + 8.0, y - 1.0]]);
            let name = self.scene.printer.word(name);
            document.part(StructRole::P, |document| {
                document.words(notes::plain(LETTER), (x + 10.0, y), name);
            });
        }
    }
}
