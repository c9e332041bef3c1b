//! Stitches, wire and the run explained.

use super::Explanation;
use super::figures::build;
use crate::job::Job;
use crate::plan::{Placed, Plan, STATIONS};
use crate::source::Source;
use crate::units::{Measure, Unit};
use crate::words::{Say, say};

/// Milligrams in a gram.
const MG_PER_GRAM: f64 = 1000.0;

fn number(value: f64) -> Measure {
    Measure::new(value, Unit::Number)
}

pub(super) fn stitch_pitch(job: &Job, plan: &Plan) -> Explanation {
    let placement = &plan.results.stitches.placement;
    let wished = if job.loops { "explain.stitch_pitch.loops" } else { "explain.stitch_pitch.even" };
    let mut lines = vec![
        say(wished)
            .put("spine", job.size.height)
            .put("stitches", Measure::count(placement.per_copy))
            .put("wished", placement.wished_pitch),
    ];
    match placement.placed {
        Placed::Even => {}
        Placed::Moved => {
            lines.push(say("explain.stitch_pitch.moved").put("pitch", placement.pitch));
        }
        Placed::Apart => lines.push(say("explain.stitch_pitch.apart")),
    }
    lines.push(say("explain.stitch_pitch.edge").put("edge", placement.edge));
    lines.push(
        say("explain.stitch_pitch.passes")
            .put("stitches", Measure::count(placement.total()))
            .put("heads", Measure::count(placement.heads_used))
            .count("passes", Measure::count(placement.passes)),
    );
    let source = if job.loops { Source::Memory } else { Source::Practice };
    build("stitch_pitch", lines, None, source)
}

pub(super) fn leg(_: &Job, plan: &Plan) -> Explanation {
    let (stack, wire) = (&plan.results.stack, &plan.results.stitches.wire);
    let lines = vec![
        say("explain.leg.sum")
            .put("flat", stack.flat.high.0)
            .put("clinch", wire.clinch.low)
            .put("leg", wire.leg),
        say("explain.leg.meet").put("most", wire.clinch_most),
    ];
    let doubt = say("explain.leg.doubt").put("clinch", wire.clinch.high);
    build("leg", lines, Some(doubt), Source::Practice)
}

pub(super) fn draw(_: &Job, plan: &Plan) -> Explanation {
    let wire = &plan.results.stitches.wire;
    let key = if wire.loop_wire.get() > 0.0 { "explain.draw.loop" } else { "explain.draw.flat" };
    let line = say(key)
        .put("crown", wire.crown)
        .put("leg", wire.leg)
        .put("loop", wire.loop_wire)
        .put("draw", wire.draw);
    build("draw", vec![line], None, Source::Derived)
}

pub(super) fn wire_run(_: &Job, plan: &Plan) -> Explanation {
    let (stitches, run) = (&plan.results.stitches, &plan.results.run);
    let mut lines = vec![
        say("explain.wire_run.length")
            .put("sets", Measure::count(run.quantities.fed))
            .put("stitches", Measure::count(stitches.placement.total()))
            .put("draw", stitches.wire.draw)
            .put("length", run.consumed.wire_length),
        say("explain.wire_run.mass")
            .put("wire", Measure::caliper(stitches.wire.diameter))
            .put("stitch", number(stitches.wire.stitch.get() * MG_PER_GRAM))
            .put("mass", run.consumed.wire),
    ];
    if let Some(spools) = run.consumed.spools {
        lines.push(say("explain.wire_run.spools").put("spools", number(spools)));
    }
    let source = crate::data::STITCH_PRACTICE.steel.source;
    build("wire_run", lines, None, source)
}

pub(super) fn sets_fed(job: &Job, plan: &Plan) -> Explanation {
    let quantities = &plan.results.run.quantities;
    let mut lines = vec![
        say("explain.sets_fed.net")
            .put("copies", job.copies)
            .put("up", Measure::count(job.copies_up))
            .put("net", Measure::count(quantities.net)),
    ];
    if quantities.off_line > quantities.net {
        lines
            .push(say("explain.sets_fed.cut").put("off_line", Measure::count(quantities.off_line)));
    }
    lines.push(
        say("explain.sets_fed.line")
            .put("off_line", Measure::count(quantities.off_line))
            .put("share", Measure::share(quantities.overs.share))
            .put("fixed", number(quantities.overs.fixed))
            .put("needed", Measure::count(quantities.needed)),
    );
    if quantities.short.is_some() {
        lines.push(
            say("explain.sets_fed.short")
                .put("fed", Measure::count(quantities.fed))
                .put("fixed", number(quantities.overs.fixed))
                .put("share", Measure::share(quantities.overs.share))
                .put("good", quantities.good),
        );
    }
    build("sets_fed", lines, None, Source::Shop)
}

pub(super) fn interval(_: &Job, plan: &Plan) -> Explanation {
    let pacing = &plan.results.run.pacing;
    let mut lines: Vec<Say> = STATIONS
        .iter()
        .zip(pacing.stations)
        .filter_map(|(station, time)| {
            let name = say(format!("station.{}", station.name()));
            Some(
                say("explain.interval.station")
                    .say("station", name)
                    .put("time", number(time?.get())),
            )
        })
        .collect();
    let key = if pacing.in_sequence { "explain.interval.sum" } else { "explain.interval.slowest" };
    lines.push(say(key).put("interval", number(pacing.interval.get())));
    build("interval", lines, None, Source::Shop)
}

pub(super) fn run_time(_: &Job, plan: &Plan) -> Explanation {
    let (run, times) = (&plan.results.run, &plan.results.run.times);
    let key = if run.pacing.counts_good { "explain.run_time.good" } else { "explain.run_time.fed" };
    let mut lines = vec![
        say(key)
            .put("sets", Measure::count(times.sets))
            .put("interval", number(run.pacing.interval.get()))
            .put("running", times.running),
        say("explain.run_time.sum")
            .put("makeready", times.makeready)
            .put("running", times.running)
            .put("standing", times.standing)
            .put("best", times.best),
    ];
    if times.worst > times.best {
        lines.push(
            say("explain.run_time.worst").put("beside", times.beside).put("worst", times.worst),
        );
    }
    build("run_time", lines, Some(say("explain.run_time.doubt")), Source::Shop)
}
