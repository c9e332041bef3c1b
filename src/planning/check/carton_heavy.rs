//! One copy alone is heavier than a carton may be.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "carton_heavy";

pub fn look(_: &Job, shop: &Shop, results: &Results) -> Option<Finding> {
    let cartons = results.packing.cartons?;
    let most = shop.carton.mass_most?;
    let copy = results.packing.copy?.high;
    (cartons.by_mass == Some(0))
        .then(|| Finding::new(ID, "found", Weight::Warning).with("copy", copy).with("most", most))
}
