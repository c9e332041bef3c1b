//! The copy stands at the edge of a postal step, or beyond every step of the table.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;
use crate::units::Unit;

pub const ID: &str = "post_step";

/// Only a job that names a wrapper is posted: others go in cartons.
pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let posted = results.packing.posted.as_ref()?;
    if job.wrapper.get() <= 0.0 {
        return None;
    }
    let mass = posted.mass.map(|mass| mass.get());
    let found = |case| Finding::new(ID, case, Weight::Warning).with_band("mass", mass, Unit::Mass);
    match (posted.goes_by, posted.perhaps_by) {
        (None, None) => Some(found("none")),
        (sure, perhaps) if sure != perhaps => Some(found("edge")),
        _ => None,
    }
}
