//! The outermost sheet, flat: open width, spine, creases, room for words.

use super::calibrate::has_cover;
use super::{Fold, Stack};
use crate::data::PRACTICE;
use crate::job::{Job, Spine};
use crate::units::{Band, ClosedThickness, Mm, Size};

/// The outermost sheet as a designer draws it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct CoverPlan {
    /// It is a separate cover, not the first sheet of the inside.
    pub separate: bool,
    /// Spine width, S.
    pub spine: Band<ClosedThickness>,
    /// Open and trimmed, along the outer face: 2 (w + wrap); with a square spine 2 w + S.
    pub open: Size,
    /// The same with bleed all round.
    pub with_bleed: Size,
    /// Open width along the middle of the sheet, shorter by 2 E(t₁/2).
    pub open_middle: Mm,
    /// Creases, measured from the middle of the spine to either side: one in the middle (0) for a
    /// round spine, two for a square one.
    pub crease_offset: Mm,
    /// How many creases the form has: one or two.
    pub creases: u32,
    /// The stock wants creasing at its grammage.
    pub wants_crease: bool,
    /// Channel to crease with, fold along the grain and across it.
    pub channel: (Mm, Mm),
    /// Height left for words on the spine at its thinnest, after the clearances.
    pub text_room: Mm,
}

/// Width of a crease channel: factor × caliper + rule (a paperboard mill's die-cutting guide):
/// factor 1.3 with the fold along the grain, 1.5 across.
#[must_use]
pub fn crease_channel(caliper: Mm) -> (Mm, Mm) {
    let rule = PRACTICE.crease_rule.value;
    (
        caliper * PRACTICE.crease_channel_along.value + rule,
        caliper * PRACTICE.crease_channel_across.value + rule,
    )
}

/// The outermost sheet of a book.
#[must_use]
pub fn cover(job: &Job, stack: &Stack, fold: &Fold, wrap: Mm) -> CoverPlan {
    let caliper = stack.calipers.first().map_or(Mm::ZERO, |caliper| caliper.nominal);
    let flat = stack.flat.nominal.0;
    let half = caliper / 2.0;
    let open = Size::new((job.size.width + wrap) * 2.0, job.size.height);
    let bleed = job.bleed.unwrap_or(Mm::ZERO) * 2.0;
    let (creases, crease_offset) = match job.spine {
        Spine::Round => (1, Mm::ZERO),
        Spine::Square => (2, (flat - half).max(Mm::ZERO)),
    };
    let wants_crease = job.sections.first().is_some_and(|section| {
        let kind = section.stock.kind;
        let from = if kind.coated || kind.recycled {
            PRACTICE.crease_coated.value
        } else {
            PRACTICE.crease_any.value
        };
        section.grammage.is_some_and(|grammage| grammage.nominal >= from)
    });
    CoverPlan {
        separate: has_cover(job),
        spine: stack.closed,
        open,
        with_bleed: Size::new(open.width + bleed, open.height + bleed),
        open_middle: open.width - fold.nominal.path_saved(half, flat) * 2.0,
        crease_offset,
        creases,
        wants_crease,
        channel: crease_channel(caliper),
        text_room: (stack.closed.low.0 - PRACTICE.spine_text_clear.value * 2.0).max(Mm::ZERO),
    }
}
