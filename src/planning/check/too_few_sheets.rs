//! One folded sheet alone: nothing is nested, nothing to stitch.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;
use crate::units::Sheets;

pub const ID: &str = "too_few_sheets";
/// The smallest stitched book has two folded sheets, eight pages (common practice).
const LEAST: Sheets = Sheets(2);

pub fn look(job: &Job, _: &Shop, _: &Results) -> Option<Finding> {
    (job.sheets() < LEAST).then(|| {
        Finding::new(ID, "found", Weight::DoesNotFit)
            .with("least", LEAST)
            .with("pages", LEAST.pages())
    })
}
