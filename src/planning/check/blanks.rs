//! The page count does not fill its sheets: some pages stay blank.

use super::{Finding, Weight};
use crate::data::PRACTICE;
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "blanks";

pub fn look(_: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let blanks = results.blanks;
    let weight = match blanks.count() {
        none if none.get() == 0 => return None,
        few if few <= PRACTICE.blanks_unnoticed.value => Weight::Note,
        _ => Weight::Warning,
    };
    let case = if blanks.count().get() == 1 { "one" } else { "many" };
    Some(
        Finding::new(ID, case, weight)
            .with("blanks", blanks.count())
            .with("up", blanks.made)
            .with("down", blanks.down)
            .with("asked", blanks.asked),
    )
}
