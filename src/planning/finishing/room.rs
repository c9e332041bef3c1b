//! Head-room of a limit: how many more sheets of the main section still keep it.
//!
//! Not the spare divided by a leaf: sheets of one paper err together and papers apart, so each
//! further sheet adds its own doubt to that of its lot alone.

use super::limits::{LimitId, Measured, NOISE};
use crate::book::Shape;
use crate::job::{Job, Role, Section};
use crate::units::{Band, Mm, PAGES_PER_SHEET, larger};

/// Head-room in things a person can picture, at the unfavourable end of the band. Negative: so many
/// too many.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Room {
    /// Further sheets of the main section.
    pub sheets: Option<i64>,
    /// Further grams a square metre of the main section, at the same thickness for weight.
    pub grammage: Option<f64>,
}

impl Room {
    /// The same in pages.
    #[must_use]
    pub fn pages(self) -> Option<i64> {
        self.sheets.map(|sheets| sheets * i64::from(PAGES_PER_SHEET))
    }
}

/// Times a slope is followed at most before whole sheets are tried; the sums are nearly straight.
const ROUNDS: u32 = 4;
/// Sheets that no further round would add to.
const STEP: f64 = 1e-9;

/// Thickness of sheets lying on each other, at its high end, while sheets of one lot are added.
struct Sum {
    nominal: f64,
    /// Doubt of that lot.
    together: f64,
    /// Square of the doubt of all others.
    apart: f64,
}

impl Sum {
    fn new(sum: Band<Mm>, together: f64) -> Self {
        let all = sum.above().get();
        let apart = larger(all * all - together * together, 0.0);
        Self { nominal: sum.nominal.get(), together, apart }
    }
    #[inline]
    fn high(&self, leaf: Band<Mm>, more: f64) -> f64 {
        let together = larger(self.together + more * leaf.above().get(), 0.0);
        self.nominal + more * leaf.nominal.get() + (self.apart + together * together).sqrt()
    }
}

/// The book with more sheets in its main section, as far as limits look at it.
pub(super) struct Larger {
    leaf: Band<Mm>,
    flat: Sum,
    /// From the middle of the outermost leaf to the middle of the innermost.
    step: Sum,
    /// From the outer face to the middle of the outermost leaf.
    first: Mm,
    fold: Shape,
    straight: bool,
}

impl Larger {
    pub(super) fn of(book: &Measured) -> Option<Self> {
        let job = book.job;
        let main = job.sections.iter().position(|section| section.role == Role::Inside)?;
        let leaf = *book.stack.calipers.get(main)?;
        let lot = job.sections.get(main)?.lot;
        let sheets = sheets_of(job, lot);
        let doubt = leaf.above().get();
        let (first, last) = (book.leaves.first()?, book.leaves.last()?);
        // Half of the outermost and half of the innermost leaf lie beyond the step.
        let ends = [first, last]
            .iter()
            .filter(|end| job.sections.get(end.section).is_some_and(|section| section.lot == lot))
            .count() as f64;
        Some(Self {
            leaf,
            flat: Sum::new(book.stack.flat.map(|flat| flat.0), sheets * doubt),
            step: Sum::new(last.step, (sheets - ends / 2.0) * doubt),
            first: first.caliper.high / 2.0,
            fold: book.fold.high,
            straight: book.trim.straight,
        })
    }

    fn push_out(&self, more: f64) -> f64 {
        let stack = Mm(self.flat.high(self.leaf, more));
        let saved = |depth| self.fold.path_saved(depth, stack);
        (saved(self.first + Mm(self.step.high(self.leaf, more))) - saved(self.first)).get()
    }

    /// What a limit's value grows with, at its high end; nothing for limits that do not grow.
    fn grown(&self, id: LimitId, more: f64) -> Option<f64> {
        match id {
            LimitId::FlatStack | LimitId::Leg => Some(self.flat.high(self.leaf, more)),
            LimitId::Former | LimitId::Knife | LimitId::Draw => {
                Some(self.flat.high(self.leaf, more) * 2.0)
            }
            LimitId::Sheets | LimitId::Bins => Some(more),
            // A press sheet that runs uncut leaves another cut to a thicker book.
            LimitId::InnermostChip if self.straight => None,
            LimitId::InnermostChip => Some(self.push_out(more)),
            _ => None,
        }
    }
}

fn sheets_of(job: &Job, lot: usize) -> f64 {
    let same = job.sections.iter().filter(|section| section.lot == lot);
    same.map(|section: &Section| section.sheets.as_f64()).sum()
}

/// Head-room of a limit that grows with the sheets; `spare` is what is left at the high end.
pub(super) fn room(id: LimitId, larger: &Larger, job: &Job, spare: f64) -> Room {
    let grown = |more: f64| larger.grown(id, more);
    let (Some(now), Some(one)) = (grown(0.0), grown(1.0)) else { return Room::default() };
    let left = |more: f64| spare - grown(more).map_or(0.0, |grown| grown - now);
    if one <= now {
        return Room::default();
    }
    let mut sheets = spare / (one - now);
    for _ in 1..ROUNDS {
        let here = left(sheets);
        let step = here / (here - left(sheets + 1.0));
        sheets += step;
        if step.abs() < STEP {
            break;
        }
    }
    let exact = sheets;
    sheets = sheets.floor();
    while left(sheets) < -NOISE {
        sheets -= 1.0;
    }
    while left(sheets + 1.0) >= -NOISE {
        sheets += 1.0;
    }
    Room { sheets: Some(sheets as i64), grammage: heavier(job, exact) }
}

/// How much heavier the main paper may become when all its sheets share the spare thickness: with the
/// same thickness for weight, g grows by the share in which the section's thickness may grow.
fn heavier(job: &Job, spare_sheets: f64) -> Option<f64> {
    let main = job.main_section()?;
    let grammage = main.grammage?.nominal.get();
    let sheets = main.sheets.as_f64();
    (sheets > 0.0).then_some(grammage * spare_sheets / sheets)
}
