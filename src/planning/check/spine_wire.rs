//! Words on the spine must keep clear of the wires.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;
use crate::units::Mm;

pub const ID: &str = "spine_wire";

pub fn look(job: &Job, shop: &Shop, results: &Results) -> Option<Finding> {
    let crown = Mm(shop.lines.get(job.line)?.stitching.crown);
    let (from, to) = results.stitches.placement.free_of_wire(job.size.height, crown);
    job.spine_text
        .then(|| Finding::new(ID, "found", Weight::Note).with("from", from).with("to", to))
}
