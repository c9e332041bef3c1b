//! On some pages the cut comes into what stands nearest to the face.

use super::{Finding, Weight};
use crate::job::{ImagesMovedBy, Job};
use crate::results::Results;
use crate::shop::Shop;
use crate::units::Measure;

pub const ID: &str = "art_at_risk";

pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let from = results.margins.at_risk_from?;
    let case = match job.images {
        ImagesMovedBy::Nobody => "not-moved",
        ImagesMovedBy::Shop | ImagesMovedBy::Designer => "moved",
    };
    Some(
        Finding::new(ID, case, Weight::Warning)
            .with("art", results.margins.art)
            .with("left", results.margins.art_left)
            .with("from", Measure::count(from)),
    )
}
