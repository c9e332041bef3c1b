//! Which pages the push-out endangers, and how much bleed the face and the fold need.

use super::Leaf;
use crate::job::{ImagesMovedBy, Job};
use crate::units::Mm;

/// Margins over the whole book, worst first.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Margins {
    /// Distance from the face reckoned with: typed, or the safe margin.
    pub art: Mm,
    /// Least that remains of it on any page after push-out and tolerance; negative: cut into.
    pub art_left: Mm,
    /// The same for the page numbers, when their distance was typed.
    pub folio_left: Option<Mm>,
    /// Place of the sheet that decides.
    pub worst_sheet: u32,
    /// Sheets from this place inward have art at risk; nothing when none has.
    pub at_risk_from: Option<u32>,
    /// Bleed that the face needs so that no white shows on any page.
    pub face_bleed: Mm,
    /// Widest gap at a fold between the two pages of a sheet, when pictures are moved.
    pub fold_gap: Mm,
    /// Widest overlap at a fold; the centre spread loses it.
    pub fold_overlap: Mm,
}

/// What remains of a distance from the face on one leaf: moved, only the drift and the tolerance
/// take from it; laid from the fold and not moved, the shift does too (a + s_k − drift − tolerance).
#[must_use]
pub fn distance_left(job: &Job, leaf: &Leaf, distance: Mm) -> Mm {
    let placed = match job.images {
        ImagesMovedBy::Shop | ImagesMovedBy::Designer => Mm::ZERO,
        ImagesMovedBy::Nobody => leaf.image_shift,
    };
    distance + placed - leaf.drift - job.tolerance
}

/// Margins of the book.
#[must_use]
pub fn margins(job: &Job, leaves: &[Leaf]) -> Margins {
    let art = job.art_face.unwrap_or(job.safe);
    let mut result = Margins { art, art_left: art, ..Margins::default() };
    let mut first = true;
    for leaf in leaves {
        let left = distance_left(job, leaf, art);
        if first || left < result.art_left {
            (result.art_left, result.worst_sheet) = (left, leaf.place);
        }
        if left < Mm::ZERO && result.at_risk_from.is_none() {
            result.at_risk_from = Some(leaf.place);
        }
        if let Some(folio) = job.folio_face {
            let left = distance_left(job, leaf, folio);
            result.folio_left = Some(result.folio_left.map_or(left, |least| least.min(left)));
        }
        let beyond = match job.images {
            ImagesMovedBy::Nobody => leaf.image_shift.max(Mm::ZERO),
            ImagesMovedBy::Shop | ImagesMovedBy::Designer => Mm::ZERO,
        };
        result.face_bleed = result.face_bleed.max(beyond + leaf.drift + job.tolerance);
        if job.images != ImagesMovedBy::Nobody {
            result.fold_gap = result.fold_gap.max(leaf.image_shift * 2.0);
            result.fold_overlap = result.fold_overlap.max(leaf.image_shift * -2.0);
        }
        first = false;
    }
    result
}
