//! Pictures that were moved leave a gap at the fold of the outer sheets, wider than a fold may stand
//! off: a white line, unless the background is carried across.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "fold_gap";

pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let gap = results.margins.fold_gap;
    (job.bleed.is_some() && gap > job.tolerance)
        .then(|| Finding::new(ID, "found", Weight::Warning).with("gap", gap))
}
