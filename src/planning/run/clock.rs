//! How long the run takes, at best and at worst, and when it is over.

use super::{Pacing, Quantities, Stop};
use crate::data::Line;
use crate::units::{SECONDS_PER_MINUTE, Second};

/// Times of a run.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Times {
    /// Sets that the interval counts: fed, or good ones where the line's rate counts those.
    pub sets: u32,
    /// Making ready.
    pub makeready: Second,
    /// Running, nothing in the way.
    pub running: Second,
    /// Standing for what cannot be done while running.
    pub standing: Second,
    /// Somebody is busy, at best while the line runs.
    pub beside: Second,
    /// All of it, when everything that can be is done while running.
    pub best: Second,
    /// All of it, when the line stands for everything.
    pub worst: Second,
    /// Time of day it starts, and is over at best and at worst; days count on.
    pub clock: Option<(Second, Second, Second)>,
}

/// Makeready + sets × interval + stops. The interval counts sets fed, unless the line's rate is one of
/// good sets.
#[must_use]
pub fn times<'a>(
    line: &Line,
    quantities: &Quantities,
    pacing: &Pacing,
    stops: impl Iterator<Item = &'a Stop>,
    start: Option<Second>,
) -> Times {
    let minute = f64::from(SECONDS_PER_MINUTE);
    let makeready = Second(line.makeready_minutes * minute);
    let sets = match (pacing.counts_good, quantities.short) {
        (false, _) => quantities.fed,
        (true, None) => quantities.off_line,
        (true, Some(_)) => super::good(quantities.fed, line.pace.overs()),
    };
    let running = pacing.interval * f64::from(sets);
    let (mut standing, mut beside) = (Second::ZERO, Second::ZERO);
    for stop in stops {
        let busy = stop.each * f64::from(stop.times);
        if stop.running {
            beside = beside + busy;
        } else {
            standing = standing + busy;
        }
    }
    let best = makeready + running + standing;
    let worst = best + beside;
    Times {
        sets,
        makeready,
        running,
        standing,
        beside,
        best,
        worst,
        clock: start.map(|start| (start, start + best, start + worst)),
    }
}
