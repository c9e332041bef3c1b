//! A bin or stacker fills up during the run, and the line stands while it is emptied.

use super::{Finding, Weight};
use crate::results::Results;
use crate::run::Supply;
use crate::units::Measure;

/// Chips.
pub const CHIPS: &str = "chips_full";
/// Finished copies.
pub const STACKER: &str = "stacker_full";

/// Finds nothing where the run never fills it, or where it is emptied while the line runs.
pub fn look(id: &'static str, supply: Supply, results: &Results) -> Option<Finding> {
    let stop = results.run.stops().find(|stop| stop.supply == supply)?;
    (stop.times > 0 && !stop.running).then(|| {
        Finding::new(id, "standing", Weight::Note)
            .with("every", Measure::count(stop.every))
            .with("times", Measure::count(stop.times))
            .with("first", stop.first)
    })
}
