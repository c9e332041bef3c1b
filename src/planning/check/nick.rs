//! Cut shut, a thick spine nicks at head and foot.

use super::{Finding, Weight};
use crate::data::PRACTICE;
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "nick";

pub fn look(_: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let spine = results.stack.closed.nominal.0;
    (spine >= PRACTICE.nick_from.value)
        .then(|| Finding::new(ID, "found", Weight::Warning).with("spine", spine))
}
