//! On some pages the cut comes into what stands nearest to the face: art, or the page number.

use super::{Finding, Weight};
use crate::book::Clearance;
use crate::job::{ImagesMovedBy, Job};
use crate::units::Measure;

pub const ART: &str = "art_at_risk";
pub const FOLIO: &str = "folio_at_risk";

pub fn look(id: &'static str, job: &Job, clearance: Option<&Clearance>) -> Option<Finding> {
    let clearance = clearance?;
    let from = clearance.at_risk_from?;
    let case = match job.images {
        ImagesMovedBy::Nobody => "not-moved",
        ImagesMovedBy::Shop | ImagesMovedBy::Designer => "moved",
    };
    Some(
        Finding::new(id, case, Weight::Warning)
            .with("art", clearance.distance)
            .with("left", clearance.left)
            .with("from", Measure::count(from)),
    )
}
