//! Words are wanted on a spine too narrow to carry them.

use super::{Finding, Weight};
use crate::data::PRACTICE;
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "spine_text";

pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let least = PRACTICE.spine_text_least.value;
    let spine = results.stack.closed.low.0;
    (job.spine_text && spine < least).then(|| {
        Finding::new(ID, "narrow", Weight::Warning).with("spine", spine).with("least", least)
    })
}
