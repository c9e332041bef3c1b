//! The chip bin fills up during the run, and the line stands while it is emptied.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::run::Supply;
use crate::shop::Shop;
use crate::units::Measure;

pub const ID: &str = "chips_full";

pub fn look(_: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let stop = results.run.stops().find(|stop| stop.supply == Supply::Chips)?;
    if stop.times == 0 || stop.running {
        return None;
    }
    Some(
        Finding::new(ID, "standing", Weight::Note)
            .with("every", Measure::count(stop.every))
            .with("times", Measure::count(stop.times))
            .with("first", stop.first),
    )
}
