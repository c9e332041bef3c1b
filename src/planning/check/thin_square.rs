//! A square spine on a book so thin that it shows nothing.

use super::{Finding, Weight};
use crate::data::PRACTICE;
use crate::job::{Job, Spine};
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "thin_square";

pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let least = PRACTICE.square_spine_least.value;
    let spine = results.stack.closed.nominal.0;
    (job.spine == Spine::Square && spine < least).then(|| {
        Finding::new(ID, "found", Weight::Warning).with("spine", spine).with("least", least)
    })
}
