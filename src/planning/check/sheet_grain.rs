//! On the chosen press sheet the fibres run across the fold.

use super::{Finding, Weight};
use crate::job::Job;
use crate::paper::Grain;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "sheet_grain";

pub fn look(_: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let way = results.layout.chosen().filter(|way| way.refusal.is_none())?;
    (way.grain == Grain::AcrossSpine).then(|| Finding::new(ID, "across", Weight::Warning))
}
