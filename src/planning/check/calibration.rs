//! A push-out was measured on a dummy, but it says little or cannot be true.

use super::{Finding, Weight};
use crate::book::Trust;
use crate::data::PRACTICE;
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;
use crate::units::{Measure, Unit};

pub const ID: &str = "calibration";

pub fn look(_: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let case = match results.fold.trust {
        Trust::NotMeasured | Trust::Good => return None,
        Trust::Weak => "weak",
        Trust::Refused => "refused",
    };
    let (factor, error) = results.fold.measured?;
    let number = |value| Measure::new(value, Unit::Number);
    Some(
        Finding::new(ID, case, Weight::Warning)
            .with("factor", number(factor))
            .with("error", number(error))
            .with("least", number(PRACTICE.fold_factor_least.value))
            .with("most", number(PRACTICE.fold_factor_most.value)),
    )
}
