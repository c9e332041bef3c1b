//! A paper is known by thickness alone, so nothing can be said of mass.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "weight_unknown";

pub fn look(_: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    results.mass.is_none().then(|| Finding::new(ID, "found", Weight::Note))
}
