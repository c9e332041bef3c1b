//! Stitches and the run for another program.

use super::{BandOut, band};
use crate::job::Job;
use crate::plan::{Consumed, Plan, STATIONS};
use serde::Serialize;

/// One stitch by the middle of its crown.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct StitchOut {
    /// Which copy along the fold, 1 at the head.
    pub copy: u32,
    /// From the head of its finished copy.
    pub from_head_mm: f64,
    /// From the foot of its finished copy.
    pub from_foot_mm: f64,
    /// From the edge of the travelling sheet that lies at the stop.
    pub from_stop_mm: f64,
    /// Which pass under the heads.
    pub pass: u32,
    /// Which head.
    pub head: u32,
}

/// Stitches and wire.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct StitchesOut {
    /// Stitches in a copy.
    pub per_copy: u32,
    /// Passes of a set under the heads.
    pub passes: u32,
    /// Distance of neighbours in a copy.
    pub pitch_mm: f64,
    /// Every stitch of a set.
    pub stitches: Vec<StitchOut>,
    /// Diameter of the wire.
    pub wire_mm: f64,
    /// Each leg.
    pub leg_mm: BandOut,
    /// What the legs turn in.
    pub clinch_mm: BandOut,
    /// Wire drawn for a stitch.
    pub draw_mm: BandOut,
    /// Wire of the run, metres; nothing where the job says no number of copies.
    pub run_wire_m: Option<f64>,
    /// Wire of the run, grams.
    pub run_wire_g: Option<f64>,
    /// Full spools of the run.
    pub spools: Option<f64>,
}

/// What a set takes at one station.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct StationOut {
    /// Which.
    pub station: String,
    /// Seconds a set.
    pub seconds: f64,
}

/// Something that runs full or empty.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct StopOut {
    /// What.
    pub supply: String,
    /// Sets from one time to the next.
    pub every_sets: u32,
    /// How often in this run.
    pub times: u32,
    /// From the first set to the first time.
    pub first_s: f64,
    /// How long somebody is busy.
    pub each_s: f64,
    /// It can be done while the line runs.
    pub while_running: bool,
}

/// One section through the stages.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct ComponentOut {
    /// Index of the section, outermost first.
    pub section: u32,
    /// Sets to print.
    pub printed: u32,
    /// Sets to feed to the line.
    pub fed: u32,
    /// Sets that have come in.
    pub supplied: Option<u32>,
    /// Good copies that those make.
    pub makes: Option<u32>,
}

/// The run.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct RunOut {
    /// Sets the line is fed.
    pub sets: u32,
    /// Good copies to expect.
    pub good_copies: u32,
    /// Seconds from set to set.
    pub interval_s: f64,
    /// The station that holds the line up.
    pub bottleneck: String,
    /// What a set takes at each station.
    pub stations: Vec<StationOut>,
    /// What runs full or empty, first come first.
    pub stops: Vec<StopOut>,
    /// Every section.
    pub components: Vec<ComponentOut>,
    /// Making ready.
    pub makeready_s: f64,
    /// Running, nothing in the way.
    pub running_s: f64,
    /// All of it, at best.
    pub best_s: f64,
    /// All of it, when the line stands for everything.
    pub worst_s: f64,
    /// Over at best, seconds after the midnight before the start; days count on.
    pub over_best_s: Option<f64>,
    /// Over at worst.
    pub over_worst_s: Option<f64>,
}

/// Stitches and wire as plain numbers.
pub(super) fn stitches_out(job: &Job, plan: &Plan) -> StitchesOut {
    let stitches = &plan.results.stitches;
    let used = job.copies.map(|_| &plan.results.run.consumed);
    let (placement, wire) = (&stitches.placement, &stitches.wire);
    StitchesOut {
        per_copy: placement.per_copy,
        passes: placement.passes,
        pitch_mm: placement.pitch.get(),
        stitches: placement
            .stitches
            .iter()
            .map(|stitch| StitchOut {
                copy: stitch.copy + 1,
                from_head_mm: stitch.from_head.get(),
                from_foot_mm: stitch.from_foot.get(),
                from_stop_mm: stitch.from_lay.get(),
                pass: stitch.pass,
                head: stitch.head,
            })
            .collect(),
        wire_mm: wire.diameter.get(),
        leg_mm: band(wire.leg, |mm| mm.get()),
        clinch_mm: band(wire.clinch, |mm| mm.get()),
        draw_mm: band(wire.draw, |mm| mm.get()),
        run_wire_m: used.map(Consumed::wire_metres),
        run_wire_g: used.map(|used| used.wire.get()),
        spools: used.and_then(|used| used.spools),
    }
}

/// The run as plain numbers.
pub(super) fn run_out(plan: &Plan) -> RunOut {
    let run = &plan.results.run;
    let times = &run.times;
    RunOut {
        sets: run.quantities.fed,
        good_copies: run.quantities.good.get(),
        interval_s: run.pacing.interval.get(),
        bottleneck: run.pacing.bottleneck.name().to_owned(),
        stations: STATIONS
            .iter()
            .zip(run.pacing.stations)
            .filter_map(|(station, time)| {
                Some(StationOut { station: station.name().to_owned(), seconds: time?.get() })
            })
            .collect(),
        stops: run
            .stops()
            .map(|stop| StopOut {
                supply: stop.supply.name().to_owned(),
                every_sets: stop.every,
                times: stop.times,
                first_s: stop.first.get(),
                each_s: stop.each.get(),
                while_running: stop.running,
            })
            .collect(),
        components: run
            .quantities
            .components
            .iter()
            .map(|component| ComponentOut {
                section: component.section as u32,
                printed: component.printed,
                fed: component.fed,
                supplied: component.supplied,
                makes: component.makes.map(|copies| copies.get()),
            })
            .collect(),
        makeready_s: times.makeready.get(),
        running_s: times.running.get(),
        best_s: times.best.get(),
        worst_s: times.worst.get(),
        over_best_s: times.clock.map(|(_, best, _)| best.get()),
        over_worst_s: times.clock.map(|(_, _, worst)| worst.get()),
    }
}
