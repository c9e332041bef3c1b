//! Fibres across the spine: the fold cracks, leaves wave and the book gapes.

use super::{Finding, Weight};
use crate::job::Job;
use crate::paper::Grain;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "grain";

pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    // The label of the chosen press sheet says it where nobody else does.
    let labelled = results.layout.chosen().is_some_and(|way| way.grain != Grain::Unknown);
    let any = |grain| job.sections.iter().any(|section| section.stock.grain == grain);
    if any(Grain::AcrossSpine) {
        Some(Finding::new(ID, "across", Weight::Warning))
    } else if any(Grain::Unknown) && !labelled {
        Some(Finding::new(ID, "unknown", Weight::Note))
    } else {
        None
    }
}
