//! The book itself for another program: all that a client may read of a plan.

use super::{BandOut, band};
use crate::job::Job;
use crate::plan::{Folio, Plan};
use serde::Serialize;

/// One folded sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct SheetOut {
    /// Counted from the outside, 1 … n.
    pub place: u32,
    /// Page numbers: outer side left and right, inner side left and right; C1–C4 for a cover.
    pub pages: Vec<String>,
    /// Push-out beyond the outermost leaf.
    pub push_out_mm: BandOut,
    /// Flat length of a leaf from fold line to face cut.
    pub leaf_mm: f64,
    /// From the fold line to where the page's spine edge belongs, outward positive.
    pub image_shift_mm: f64,
}

/// A planned book. No limit of a line, no rate and no cost stands here.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct BookOut {
    /// "fits", "marginal", "unlikely" or "no".
    pub verdict: String,
    /// H, the sheets flat on each other.
    pub flat_stack_mm: BandOut,
    /// S, closed thickness at the spine.
    pub spine_mm: BandOut,
    /// Innermost leaf beyond the outermost, untrimmed.
    pub push_out_mm: BandOut,
    /// The trade's creep, one thickness a sheet.
    pub trade_creep_mm: BandOut,
    /// Chip on the outermost leaf.
    pub face_cut_mm: f64,
    /// Untrimmed flat sheet, across the spine.
    pub untrimmed_width_mm: f64,
    /// Untrimmed flat sheet, along the spine.
    pub untrimmed_height_mm: f64,
    /// Open cover, trimmed, across the spine.
    pub cover_open_width_mm: f64,
    /// Mass of a copy without wire.
    pub mass_g: Option<BandOut>,
    /// Folded sheets in the book.
    pub sheets: u32,
    /// Blank pages.
    pub blanks: u32,
    /// Every sheet from the outside in.
    pub nest: Vec<SheetOut>,
}

/// The book as plain numbers.
#[must_use]
pub fn book_out(job: &Job, plan: &Plan) -> BookOut {
    let results = &plan.results;
    BookOut {
        verdict: plan.verdict.name().to_owned(),
        flat_stack_mm: band(results.stack.flat, |flat| flat.0.get()),
        spine_mm: band(results.stack.closed, |closed| closed.0.get()),
        push_out_mm: band(
            results.leaves.last().map(|leaf| leaf.push_out).unwrap_or_default(),
            |mm| mm.get(),
        ),
        trade_creep_mm: band(results.trade_creep, |mm| mm.get()),
        face_cut_mm: results.trim.face_cut.get(),
        untrimmed_width_mm: results.trim.flat.width.get(),
        untrimmed_height_mm: results.trim.flat.height.get(),
        cover_open_width_mm: results.cover.open.width.get(),
        mass_g: results.mass.map(|mass| band(mass.book, |gram| gram.get())),
        sheets: job.sheets().get(),
        blanks: results.blanks.count().get(),
        nest: results
            .leaves
            .iter()
            .map(|leaf| SheetOut {
                place: leaf.place,
                pages: leaf.folios.all().iter().map(|folio| page_name(*folio)).collect(),
                push_out_mm: band(leaf.push_out, |mm| mm.get()),
                leaf_mm: leaf.length.get(),
                image_shift_mm: leaf.image_shift.get(),
            })
            .collect(),
    }
}

pub(super) fn page_name(folio: Folio) -> String {
    match folio {
        Folio::Page(page) => page.to_string(),
        Folio::Cover(side) => format!("C{side}"),
    }
}
