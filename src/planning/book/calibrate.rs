//! The fold factor from a dummy: measured here, kept by the shop, or taken from the form.

use super::{Fold, Stack};
use crate::data::PRACTICE;
use crate::job::{Job, Role, Spine};
use crate::shop::Shop;
use crate::source::Source;
use crate::units::{Mm, Sheets};

/// A fold with where it comes from and what became of a measurement.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Calibrated {
    /// The shapes to reckon with.
    pub fold: Fold,
    /// Where they come from.
    pub source: Source,
    /// Factor and error measured on this job's dummy, whether used or not.
    pub measured: Option<(f64, f64)>,
    /// What became of that measurement.
    pub trust: Trust,
}

impl Default for Calibrated {
    /// An unmeasured round fold.
    fn default() -> Self {
        let (fold, source) = (Fold::ROUND, Source::Derived);
        Self { fold, source, measured: None, trust: Trust::NotMeasured }
    }
}

/// How far a measured factor can be believed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Trust {
    /// Nothing was measured on this job.
    #[default]
    NotMeasured,
    /// Believed with its error.
    Good,
    /// The book is too thin to measure on: believed, but its error is large.
    Weak,
    /// No paper folds so: refused.
    Refused,
}

/// f = E / (u₁ − uₙ): push-out of a dummy over the stack step between the middles of its outermost
/// and innermost leaf; the error is that of the reading over the same step (0.3 mm, common practice).
///
/// The dummy must be untrimmed, of equal widths, closed and clamped. Nothing comes back for a book of
/// one sheet.
#[must_use]
pub fn measure_factor(push_out: Mm, step: Mm) -> Option<(f64, f64)> {
    (step > Mm::ZERO).then(|| (push_out / step, PRACTICE.reading_error.value / step))
}

/// The stack step between the middles of the outermost and the innermost sheet, nominal.
pub(super) fn whole_step(job: &Job, stack: &Stack) -> Mm {
    let half = |caliper: Option<&crate::units::Band<Mm>>| {
        caliper.map_or(Mm::ZERO, |caliper| caliper.nominal / 2.0)
    };
    if job.sheets() <= Sheets(1) {
        return Mm::ZERO;
    }
    stack.flat.nominal.0 - half(stack.calipers.first()) - half(stack.calipers.last())
}

/// The fold of this book: from its own dummy, else from the shop's, else from its form.
#[must_use]
pub fn fold_of(job: &Job, shop: &Shop, stack: &Stack) -> Calibrated {
    let step = whole_step(job, stack);
    let kept = match job.spine {
        Spine::Round => &shop.round_fold,
        Spine::Square => &shop.square_fold,
    };
    let by_form = match (kept, job.spine) {
        (Some(kept), _) => (Fold::measured(kept.factor, kept.error), Source::Shop),
        (None, Spine::Round) => (Fold::ROUND, Source::Derived),
        (None, Spine::Square) => (Fold::SQUARE, Source::Derived),
    };
    let measured = job.dummy.push_out.and_then(|push_out| measure_factor(push_out, step));
    let trust = match measured {
        None => Trust::NotMeasured,
        Some((factor, _))
            if factor < PRACTICE.fold_factor_least.value
                || factor > PRACTICE.fold_factor_most.value =>
        {
            Trust::Refused
        }
        Some(_) if step < PRACTICE.calibration_step_least.value => Trust::Weak,
        Some(_) => Trust::Good,
    };
    let (fold, source) = match (measured, trust) {
        (Some((factor, error)), Trust::Good | Trust::Weak) => {
            (Fold::measured(factor, error), Source::Measured)
        }
        _ => by_form,
    };
    Calibrated { fold, source, measured, trust }
}

/// Whether the outermost sheet is a separate cover.
pub(super) fn has_cover(job: &Job) -> bool {
    job.sections.first().is_some_and(|section| section.role == Role::Cover)
}
