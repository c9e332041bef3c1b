//! Fewer press sheets on hand than the run takes.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;
use crate::units::{Measure, Unit};

pub const ID: &str = "sheets_short";

/// Sheets that stocks are counted in.
const THOUSAND: f64 = 1000.0;

pub fn look(_: &Job, shop: &Shop, results: &Results) -> Option<Finding> {
    let needed = results.layout.needed?.sheets;
    let sheet = shop.press_sheets.get(results.layout.chosen()?.sheet)?;
    let on_hand = sheet.thousands_on_hand? * THOUSAND;
    let count = |number| Measure::new(number, Unit::Count);
    (needed > on_hand).then(|| {
        Finding::new(ID, "found", Weight::Warning)
            .with("needed", count(needed))
            .with("on_hand", count(on_hand))
            .with("missing", count(needed - on_hand))
    })
}
