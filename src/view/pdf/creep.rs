//! The table of creep: for every folded sheet how far it pushes out, how long its leaves are, and where
//! its pages belong.

use super::document::Document;
use super::notes::{self, bar, file, identity, text, told};
use super::table::Laid;
use super::{File, Wanted};
use crate::view::csv;
use crate::words::say;

/// Paper round what is printed.
const EDGE: f64 = 15.0;
/// Room at the foot for the bar.
const FOOT: f64 = 28.0;
/// Between the notes and the table.
const GAP: f64 = 5.0;

/// Writes the table.
#[must_use]
pub fn creep(wanted: &Wanted) -> File {
    let scene = wanted.scene;
    let results = &scene.plan.results;
    let (wide, high) = notes::paper(scene);
    let title = notes::title(scene, "pdf.creep");
    let sum = say("pdf.creep.sum")
        .band("push_out", results.leaves.last().map(|leaf| leaf.push_out).unwrap_or_default())
        .band("trade", results.trade_creep);
    let sentences = [
        identity(scene),
        text(scene, &sum),
        scene.printer.word("inside.sign").to_owned(),
        scene.printer.word("cautions.dummy").to_owned(),
    ];
    let mut document = Document::new(Vec::new());
    let breadth = wide - 2.0 * EDGE;
    document.page((wide, high), None, None);
    let top = told(&mut document, (&title, &sentences), (EDGE, EDGE), breadth);
    let table = Laid::of(&csv::inside(scene), &scene.printer, breadth);
    let foot = |document: &mut Document| bar(document, scene, (EDGE, high - FOOT + GAP));
    foot(&mut document);
    table.draw(&mut document, (EDGE, top + GAP), high - FOOT, |document| {
        document.page((wide, high), None, None);
        EDGE + GAP
    });
    file(document, &title, wanted.language)
}
