//! The pictures do not reach far enough beyond the cut: a white edge may show.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "bleed";

pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let bleed = job.bleed?;
    let needed = results.margins.face_bleed;
    (bleed < needed).then(|| {
        Finding::new(ID, "short", Weight::Warning).with("bleed", bleed).with("needed", needed)
    })
}
