//! How long a set takes at every station, and which one holds the line up.

use crate::data::Line;
use crate::job::{Job, Spine};
use crate::units::{ClosedThickness, SECONDS_PER_HOUR, Second, larger};

/// A station of a line, in the order of the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Station {
    /// A press in line.
    Press,
    /// Sheets laid on each other.
    Gather,
    /// Stitched.
    Stitch,
    /// Folded shut.
    Fold,
    /// Spine pressed square.
    Form,
    /// Cut.
    Cut,
    /// Delivered.
    Stack,
    /// The line's own rate, whatever its stations could do.
    #[default]
    Rate,
}

/// Every station.
pub const STATIONS: [Station; 8] = [
    Station::Press,
    Station::Gather,
    Station::Stitch,
    Station::Fold,
    Station::Form,
    Station::Cut,
    Station::Stack,
    Station::Rate,
];

impl Station {
    /// Its name in language keys and files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Press => "press",
            Self::Gather => "gather",
            Self::Stitch => "stitch",
            Self::Fold => "fold",
            Self::Form => "form",
            Self::Cut => "cut",
            Self::Stack => "stack",
            Self::Rate => "rate",
        }
    }
}

/// How the line keeps time.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Pacing {
    /// What a set takes at each station, in the order of [`STATIONS`]; nothing where that is not known
    /// or the station has nothing to do.
    pub stations: [Option<Second>; STATIONS.len()],
    /// From one set to the next.
    pub interval: Second,
    /// The station that holds the others up.
    pub bottleneck: Station,
    /// Stations wait for each other, so their times add.
    pub in_sequence: bool,
    /// The rate counts good sets, not sets fed.
    pub counts_good: bool,
}

/// Gathering: one feeder lays sheet after sheet (sheets / rate); bins side by side take one cycle,
/// however many sheets.
fn gather(line: &Line, sheets: f64) -> Option<f64> {
    let feeder = line.pace.feeder_sheets_hour.map(|rate| sheets * SECONDS_PER_HOUR / rate);
    feeder.or(line.pace.gather)
}

/// Stitching: passes × stroke + (passes − 1) × index. Heads strike together.
fn stitch(line: &Line, passes: f64) -> Option<f64> {
    let stroke = line.pace.stroke?;
    Some(passes * stroke + larger(passes - 1.0, 0.0) * line.pace.index.unwrap_or_default())
}

/// What each station takes for a set, and the slowest.
///
/// Overlapping, the slowest station is the interval; in sequence it is their sum. A press in line and
/// the line's own rate hold it up in either case.
#[must_use]
pub fn pacing(job: &Job, line: &Line, closed: ClosedThickness, passes: u32) -> Pacing {
    let pace = &line.pace;
    let sheets = job.sheets().as_f64();
    let form = (job.spine == Spine::Square)
        .then(|| pace.form.map(|base| base + pace.form_mm.unwrap_or_default() * closed.0.get()))
        .flatten();
    let seconds = [
        pace.press_sheets_hour.map(|rate| sheets * SECONDS_PER_HOUR / rate),
        gather(line, sheets),
        stitch(line, f64::from(passes)),
        pace.fold,
        form,
        pace.cut,
        pace.stack,
        line.sets_per_hour.is_finite().then(|| SECONDS_PER_HOUR / line.sets_per_hour),
    ];
    let own = |station: Station| !matches!(station, Station::Press | Station::Rate);
    let (mut slowest, mut bottleneck) = (0.0, Station::Rate);
    let (mut longest, mut longest_own, mut sum) = (0.0, Station::Rate, 0.0);
    for (station, time) in STATIONS.into_iter().zip(seconds) {
        let Some(time) = time else { continue };
        if own(station) {
            sum += time;
            if time > longest {
                (longest, longest_own) = (time, station);
            }
        }
        // The rate comes last and wins a tie: then nobody can point at one station.
        if time >= slowest {
            (slowest, bottleneck) = (time, station);
        }
    }
    let waits = !pace.overlap && sum > slowest;
    Pacing {
        stations: seconds.map(|time| time.map(Second)),
        interval: Second(if waits { sum } else { slowest }),
        bottleneck: if waits { longest_own } else { bottleneck },
        in_sequence: waits,
        counts_good: pace.counts_good && bottleneck == Station::Rate && !waits,
    }
}

#[cfg(test)]
mod tests {
    use super::{Station, gather, stitch};
    use crate::data::{Line, Pace};

    fn line(pace: Pace) -> Line {
        Line { pace, ..Line::UNLIMITED }
    }

    #[test]
    fn heads_strike_together() {
        let line = line(Pace { stroke: Some(0.5), index: Some(0.4), ..Pace::PLAIN });
        assert_eq!(stitch(&line, 1.0), Some(0.5));
        // stroke, move, stroke, move, stroke
        assert_eq!(stitch(&line, 3.0), Some(0.5 + 0.4 + 0.5 + 0.4 + 0.5));
    }

    #[test]
    fn a_feeder_takes_longer_for_more_sheets_and_bins_do_not() {
        let feeder = line(Pace { feeder_sheets_hour: Some(9_000.0), ..Pace::PLAIN });
        assert_eq!(gather(&feeder, 10.0), Some(4.0));
        let bins = line(Pace { bins: Some(40.0), gather: Some(1.2), ..Pace::PLAIN });
        assert_eq!(gather(&bins, 10.0), gather(&bins, 40.0));
        assert_eq!(Station::Gather.name(), "gather");
    }
}
