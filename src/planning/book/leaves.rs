//! Every sheet of the nest: how far it pushes out, how long its leaf is, where its pages belong.

use super::stack::sum_by_lot;
use super::{Fold, Folios, Stack, folios};
use crate::job::{Job, Role, Section};
use crate::units::{Band, Mm};
use core::cmp::Ordering;

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
    /// The trade's creep up to here: one thickness for every sheet inside the cover.
    pub trade: Mm,
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
    out.reserve(sheets.get() as usize);
    let half = 1.0 / 2.0;
    let (mut place, mut trade) = (0, Mm::ZERO);
    for (section, part) in job.sections.iter().enumerate() {
        let caliper = stack.calipers.get(section).copied().unwrap_or_default();
        // What lies outside this section, from the middle of the outermost leaf on; the section's own
        // lot apart, because doubts of one lot add.
        let outside = |index: usize, other: &Section| match index.cmp(&section) {
            Ordering::Less if index == 0 => other.sheets.as_f64() - half,
            Ordering::Less => other.sheets.as_f64(),
            Ordering::Equal if index == 0 => -half,
            Ordering::Equal | Ordering::Greater => 0.0,
        };
        let others = sum_by_lot(job, &stack.calipers, |index, other| {
            if other.lot == part.lot { 0.0 } else { outside(index, other) }
        });
        let same: f64 = job
            .sections
            .iter()
            .enumerate()
            .filter(|(_, other)| other.lot == part.lot)
            .map(|(index, other)| outside(index, other))
            .sum();
        for nth in 1..=part.sheets.get() {
            place += 1;
            if part.role != Role::Cover {
                trade = trade + caliper.nominal;
            }
            let own = caliper.times(same + f64::from(nth) - half);
            let step = Band::<Mm>::sum_independent([others, own].into_iter());
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
                trade,
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

#[cfg(test)]
mod tests {
    use crate::draft::Draft;
    use crate::{job, plan, shop};

    /// Steps counted leaf by leaf: halves of the outermost and of this one, whole leaves between,
    /// each lot's doubts added, lots combined as the root of the sum of squares.
    #[test]
    fn steps_agree_with_counting_leaf_by_leaf() {
        let shop = shop::demo();
        let draft = Draft::of(&[
            ("pages", "20 + 4"),
            ("size", "A5"),
            ("paper", "90 gsm uncoated"),
            ("cover", "200 gsm silk"),
            ("sections.0.pages", "8"),
            ("sections.0.paper", "115 gsm gloss"),
            ("sections.0.place", "around"),
            ("sections.1.pages", "12"),
            ("sections.1.paper", "200 gsm silk"),
        ]);
        let job = job::read(&draft, &shop).job.unwrap();
        let leaves = plan::plan(&job, &shop).results.leaves;
        assert_eq!(leaves.len(), 11);
        let section_of: Vec<usize> = leaves.iter().map(|leaf| leaf.section).collect();
        for (index, leaf) in leaves.iter().enumerate() {
            let mut counted = vec![0.0; job.sections.len()];
            for (place, section) in section_of.iter().enumerate().take(index + 1) {
                let ends = f64::from(u8::from(place == 0) + u8::from(place == index));
                counted[job.sections[*section].lot] += 1.0 - ends / 2.0;
            }
            let parts = || job.sections.iter().map(|part| part.caliper.value).zip(&counted);
            let nominal: f64 = parts().map(|(caliper, n)| caliper.nominal.get() * n).sum();
            let above: f64 =
                parts().map(|(caliper, n)| (caliper.above().get() * n).powi(2)).sum::<f64>().sqrt();
            assert!((leaf.step.nominal.get() - nominal).abs() < 1e-12, "sheet {}", leaf.place);
            assert!((leaf.step.above().get() - above).abs() < 1e-12, "sheet {}", leaf.place);
        }
    }
}
