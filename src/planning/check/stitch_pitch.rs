//! Evenly spread stitches do not suit the heads: moved, or struck one by one.

use super::{Finding, Weight};
use crate::finishing::Placed;
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;
use crate::units::Measure;

pub const ID: &str = "stitch_pitch";

pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let placement = &results.stitches.placement;
    let (case, weight) = match placement.placed {
        _ if !placement.has_room => return None,
        _ if job.loops && placement.per_copy > 1 && placement.pitch != placement.wished_pitch => {
            ("loops", Weight::Warning)
        }
        Placed::Moved => ("moved", Weight::Note),
        Placed::Apart => ("apart", Weight::Warning),
        Placed::Even if placement.passes > placement.passes_least => ("copies", Weight::Note),
        Placed::Even => return None,
    };
    Some(
        Finding::new(ID, case, weight)
            .with("wished", placement.wished_pitch)
            .with("pitch", placement.pitch)
            .with("overhang", placement.overhang)
            .with("passes", Measure::count(placement.passes)),
    )
}
