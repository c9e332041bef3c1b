//! Legs long enough to meet under the crown.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "stitch_clinch";

pub fn look(_: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let wire = &results.stitches.wire;
    (wire.clinch.high > wire.clinch_most).then(|| {
        Finding::new(ID, "found", Weight::Warning)
            .with("clinch", wire.clinch.high)
            .with("most", wire.clinch_most)
    })
}
