//! Every sheet of the nest: how far it pushes out, how long its leaf is, where its pages belong.

use super::stack::LotSum;
use super::{Fold, Folios, Stack, folios};
use crate::job::Job;
use crate::units::{Band, Mm};

/// One folded sheet in its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leaf {
    /// k, counted from the outside, 1 … n.
    pub place: u32,
    /// Index of its section.
    pub section: usize,
    /// Thickness of one leaf.
    pub caliper: Band<Mm>,
    /// From the outer face of the book to the middle of this leaf, nominal.
    pub depth: Mm,
    /// u₁ − u_k: from the middle of the outermost leaf to the middle of this one.
    pub step: Band<Mm>,
    /// e_k: how far its face stands out beyond the outermost, untrimmed and of equal width.
    pub push_out: Band<Mm>,
    /// L_k: flat length from the fold line to the face cut.
    pub length: Mm,
    /// s_k: from the fold line to where the page's spine edge belongs, outward positive. Negative:
    /// the page reaches over the fold by so much.
    pub image_shift: Mm,
    /// How far the shift may be off because the paper's thickness and the fold are in doubt.
    pub drift: Mm,
    /// The page numbers on its four sides.
    pub folios: Folios,
}

/// All leaves from the outside in, written into `out`.
///
/// e_k = E(d₁ + step) − E(d₁), L_k = w + wrap − e_k, s_k = L_k − w = wrap − e_k, with the wrap taken
/// along the outer face. Where the outermost sheet keeps its length in its middle rather than on its
/// outer face, all lengths are shorter by E(t₁/2): see [`super::Trim::line_doubt`].
pub fn leaves(job: &Job, stack: &Stack, fold: &Fold, out: &mut Vec<Leaf>) {
    out.clear();
    let flat = stack.flat.map(|flat| flat.0);
    let wraps = Band {
        low: fold.low.wrap(flat.low),
        nominal: fold.nominal.wrap(flat.nominal),
        high: fold.high.wrap(flat.high),
    };
    let wrap = wraps.nominal;
    let first = stack.calipers.first().copied().unwrap_or_default().times(1.0 / 2.0);
    let sheets = job.sheets();
    let mut sum = LotSum::new(job, &stack.calipers);
    // The half of the leaf counted last that is still to be counted when the next one follows.
    let mut open_half: Option<usize> = None;
    let mut place = 0;
    for (section, part) in job.sections.iter().enumerate() {
        let caliper = stack.calipers.get(section).copied().unwrap_or_default();
        for _ in 0..part.sheets.get() {
            place += 1;
            if let Some(before) = open_half {
                sum.add(before, 1.0 / 2.0);
                sum.add(section, 1.0 / 2.0);
            }
            open_half = Some(section);
            let step = sum.band();
            let rise = |shape: super::Shape, step: Mm, depth: Mm, stack: Mm| {
                shape.path_saved(depth + step, stack) - shape.path_saved(depth, stack)
            };
            let push_out = Band {
                low: rise(fold.low, step.low, first.low, flat.low),
                nominal: rise(fold.nominal, step.nominal, first.nominal, flat.nominal),
                high: rise(fold.high, step.high, first.high, flat.high),
            };
            // Wrap and push-out err together: a fold that takes more path also saves more.
            let image_shift = wrap - push_out.nominal;
            let off = |wrap: Mm, push_out: Mm| {
                let by = wrap - push_out - image_shift;
                by.max(-by)
            };
            out.push(Leaf {
                place,
                section,
                caliper,
                depth: first.nominal + step.nominal,
                step,
                push_out,
                length: job.size.width + wrap - push_out.nominal,
                image_shift,
                drift: off(wraps.low, push_out.low).max(off(wraps.high, push_out.high)),
                folios: folios(job, place, sheets),
            });
        }
    }
}

/// The trade's creep: one thickness for every sheet inside the cover, n·t. It stands for the innermost
/// leaf against the nominal page, not against the outermost leaf (printers' worked examples).
#[must_use]
pub fn trade_creep(job: &Job, stack: &Stack) -> Band<Mm> {
    stack.inside(job)
}
