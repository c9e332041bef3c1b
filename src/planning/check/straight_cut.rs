//! Straight through, the face cut falls out of the press sheet, and the line does not cut so.

use super::{Finding, Weight};
use crate::job::Job;
use crate::layout::{Refusal, Route};
use crate::results::Results;
use crate::shop::Shop;
use crate::units::Mm;

pub const ID: &str = "straight_cut";

pub fn look(job: &Job, shop: &Shop, results: &Results) -> Option<Finding> {
    let way = results.layout.chosen().filter(|way| way.route == Route::Straight)?;
    let taken = shop.lines.get(job.line)?.face_cut;
    let (case, chip, limit) = match way.refusal? {
        Refusal::ChipThin(chip) => ("thin", chip, taken.least?),
        Refusal::ChipDeep(chip) => ("deep", chip, taken.most?),
        _ => return None,
    };
    Some(
        Finding::new(ID, case, Weight::Warning)
            .with("cut", way.face_cut)
            .with("chip", chip)
            .with("limit", Mm(limit)),
    )
}
