//! What an operator sets, in the order of the line.

use super::{Stop, Supply};
use crate::book::{Stack, Trim};
use crate::job::{Job, Spine};
use crate::units::{Band, Mm};

/// Settings of a line for one book.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SetUp {
    /// The fold, from either face edge of the open sheet: W / 2, on the line of stitches.
    pub fold_at: Mm,
    /// Gap between stitching head and clincher: H.
    pub head_gap: Band<Mm>,
    /// Gap of the folding nip, and opening of the clamp: 2 H.
    pub closed: Band<Mm>,
    /// Closed thickness to set the jaws that press a spine square; nothing when it is left round.
    pub former: Option<Band<Mm>>,
    /// Knife from the spine, where the book is laid against its spine: w.
    pub knife_from_spine: Mm,
    /// Knife from the face, where it is laid against its longest sheet: c + e_n.
    pub knife_from_face: Mm,
    /// Copies to a pile.
    pub pile: Option<u32>,
    /// Height of that pile on its spines, at the high end of S.
    pub pile_height: Option<Mm>,
}

/// The settings.
#[must_use]
pub fn set_up<'a>(
    job: &Job,
    stack: &Stack,
    trim: &Trim,
    mut stops: impl Iterator<Item = &'a Stop>,
) -> SetUp {
    let closed = stack.closed.map(|closed| closed.0);
    let pile = stops
        .find(|stop| stop.supply == Supply::Stacker)
        .map(|stop| stop.every.saturating_mul(job.copies_up.max(1)));
    SetUp {
        fold_at: trim.flat.width / 2.0,
        head_gap: stack.flat.map(|flat| flat.0),
        closed,
        former: (job.spine == Spine::Square).then_some(closed),
        knife_from_spine: job.size.width,
        knife_from_face: trim.knife_from_face,
        pile,
        pile_height: pile.map(|copies| closed.high * f64::from(copies)),
    }
}
