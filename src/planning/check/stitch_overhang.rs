//! Too much of the spine stands out beyond the outer stitch: the book gapes at head and foot.

use super::{Finding, Weight};
use crate::data::STITCH_PRACTICE;
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "stitch_overhang";

pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let overhang = results.stitches.placement.overhang;
    let most = job.size.height * STITCH_PRACTICE.overhang_most.value;
    (overhang > most).then(|| {
        Finding::new(ID, "found", Weight::Warning).with("overhang", overhang).with("most", most)
    })
}
