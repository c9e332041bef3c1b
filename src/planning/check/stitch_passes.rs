//! A set goes under the heads more than once, or is cut apart first.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;
use crate::units::Measure;

pub const ID: &str = "stitch_passes";

pub fn look(job: &Job, shop: &Shop, results: &Results) -> Option<Finding> {
    let placement = &results.stitches.placement;
    let heads = shop.lines.get(job.line)?.heads;
    if heads < 2 || placement.passes < 2 {
        return None;
    }
    let case = if job.copies_up > 1 { "copies" } else { "one" };
    Some(
        Finding::new(ID, case, Weight::Note)
            .with("stitches", Measure::count(placement.total()))
            .with("heads", Measure::count(heads))
            .with("passes", Measure::count(placement.passes)),
    )
}
