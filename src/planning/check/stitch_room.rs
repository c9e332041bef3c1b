//! The spine is too short for so many stitches: crowns would touch, or a cut comes too near.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;
use crate::units::Measure;

pub const ID: &str = "stitch_room";

pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let placement = &results.stitches.placement;
    (!placement.has_room).then(|| {
        Finding::new(ID, "found", Weight::DoesNotFit)
            .with("stitches", Measure::count(placement.per_copy))
            .with("spine", job.size.height)
            .with("edge", placement.edge)
    })
}
