//! The run: what to feed, how fast, what stops it.

use super::folding::role_of;
use super::row::{Case, Figure, Value, copies, count, figure, length, mass, number, or_endless};
use super::row::{said, share, term, time, whole};
use super::stitching::as_shop;
use crate::data::{Pace, Supplies};
use crate::plan::{Pacing, Quantities, STATIONS, Station, Supply, Times};
use crate::units::{Gram, Measure, Mm, SECONDS_PER_HOUR, Second, Unit};
use crate::words::{Say, say};

pub(super) static ROWS: &[Figure] = &[
    // Sets.
    figure("sets_fed", "run.sets", |c| count(quantities(c)?.fed))
        .told(|c, lines| {
            let Some(sets) = quantities(c) else { return };
            lines.push(say("explain.sets_fed.net"));
            if sets.off_line > sets.net {
                lines.push(say("explain.sets_fed.cut"));
            }
            lines.push(say("explain.sets_fed"));
            if sets.short.is_some() {
                lines.push(say("explain.sets_fed.short"));
            }
        })
        .shop(),
    figure("sets_needed", "run.fed", |c| count(quantities(c)?.needed))
        .told(|_, lines| lines.push(say("explain.sets_fed")))
        .shop()
        .of(role_of),
    term("net", |c| count(quantities(c)?.net)),
    term("off_line", |c| count(quantities(c)?.off_line)),
    term("spoilt", |c| share(quantities(c)?.overs.share)),
    term("ready", |c| whole(quantities(c)?.overs.fixed)),
    figure("good", "run.good", |c| copies(quantities(c)?.good)).told(good).shop(),
    // Time.
    figure("interval", "run.interval", |c| number(pacing(c).interval.get()))
        .told(|c, lines| {
            for (station, taken) in STATIONS.iter().zip(pacing(c).stations) {
                let Some(taken) = taken else { continue };
                lines.push(
                    say("explain.interval.station")
                        .say("station", station_name(*station))
                        .put("time", Measure::new(taken.get(), Unit::Number)),
                );
            }
            let sum = pacing(c).in_sequence;
            lines.push(say(if sum { "explain.interval.sum" } else { "explain.interval" }));
        })
        .shop(),
    figure("station", "run.stations", |c| {
        let taken = (*pacing(c).stations.get(c.index())?)?;
        said(say("run.seconds").put("time", Measure::new(taken.get(), Unit::Number)))
    })
    .told(station_told)
    .shop()
    .rows(|c| station_name(STATIONS.get(c.index()).copied().unwrap_or_default())),
    term("feeder_rate", |c| whole(pace(c)?.feeder_sheets_hour?)),
    term("press_rate", |c| whole(pace(c)?.press_sheets_hour?)),
    term("line_rate", |c| whole(c.line()?.sets_per_hour)),
    term("hour", |_| whole(SECONDS_PER_HOUR)),
    term("stroke", |c| number(pace(c)?.stroke?)),
    term("index", |c| number(pace(c)?.index.unwrap_or_default())),
    term("form", |c| number(pace(c)?.form?)),
    term("form_mm", |c| number(pace(c)?.form_mm.unwrap_or_default())),
    figure("makeready", "run.makeready", |c| time(c.plan.results.run.times.makeready))
        .told(as_shop)
        .shop(),
    figure("running", "run.running", |c| time(times(c)?.running)).told(|c, lines| {
        let good = pacing(c).counts_good;
        lines.push(say(if good { "explain.running.good" } else { "explain.running" }));
    }),
    term("sets_timed", |c| count(times(c)?.sets)),
    figure("standing", "run.standing", |c| some_time(times(c)?.standing))
        .told(|c, lines| stops(c, false, lines))
        .shop(),
    figure("beside", "run.beside", |c| some_time(times(c)?.beside))
        .told(|c, lines| stops(c, true, lines))
        .shop(),
    term("stood", |c| time(times(c)?.standing)),
    figure("run_time", "run.best", |c| time(times(c)?.best)).doubt("explain.run_time.doubt"),
    figure("run_worst", "run.worst", |c| {
        let times = times(c)?;
        if times.worst > times.best { time(times.worst) } else { None }
    })
    .doubt("explain.run_time.doubt"),
    term("start", |c| clock(times(c)?.clock?.0)),
    figure("over_best", "explain.name.over", |c| clock(times(c)?.clock?.1)),
    figure("over_worst", "explain.name.over", |c| clock(times(c)?.clock?.2)),
    term("worst", |c| time(times(c)?.worst)),
    figure("chips_run", "run.chips", |c| mass(c.run()?.consumed.chips?)),
    term("chips_set", |c| mass(c.plan.results.run.consumed.chips_set?)),
    // What runs full or empty.
    figure("every", "explain.name.every", |c| count(c.stop()?.every))
        .told(|c, lines| {
            let name = Supply::ALL.get(c.index()).map_or("", |supply| supply.name());
            lines.push(say(format!("explain.every.{name}")));
        })
        .shop()
        .rows(supply),
    figure("first_stop", "explain.name.first_stop", |c| time(c.stop()?.first)).rows(supply),
    figure("stop_times", "explain.name.stop_times", |c| count(c.run().and(c.stop())?.times))
        .rows(supply),
    figure("stop_each", "explain.name.stop_each", |c| time(c.stop()?.each))
        .told(as_shop)
        .shop()
        .rows(supply),
    term("stacker_books", |c| or_endless(supplies(c)?.stacker_books.and_then(whole))),
    term("stacker_height", |c| {
        or_endless(supplies(c)?.stacker_height.and_then(|height| length(Mm(height))))
    }),
    term("chip_mass", |c| or_endless(supplies(c)?.chip_mass.and_then(|most| mass(Gram(most))))),
    term("chip_litres", |c| or_endless(supplies(c)?.chip_litres.and_then(whole))),
    term("chip_density", |c| number(supplies(c)?.chip_density)),
    term("load_height", |c| length(Mm(supplies(c)?.load_height?))),
    figure("pile", "explain.name.pile", |c| count(c.plan.results.run.set_up.pile?)),
    figure("pile_height", "explain.name.pile_height", |c| {
        length(c.plan.results.run.set_up.pile_height?)
    }),
    term("stacker_sets", |c| count(Case { at: 1, ..*c }.stop()?.every)),
    figure("fold_at", "explain.name.fold_at", |c| length(c.plan.results.run.set_up.fold_at)),
    // Sections on their way.
    figure("part_sheets", "run.per-set", |c| count(c.component()?.sheets)).rows(role_of),
    term("part_pages", |c| whole(c.section()?.pages.as_f64())),
    figure("printed", "run.printed", |c| count(c.run().and(c.component())?.printed))
        .told(|c, lines| {
            if c.component().is_some_and(|part| part.creased != part.fed) {
                lines.push(say("explain.printed.creased"));
            }
            lines.push(say("explain.printed"));
        })
        .shop()
        .rows(role_of),
    term("creased", |c| count(c.run().and(c.component())?.creased)),
    term("print_share", |c| share(c.shop.overs.print.share)),
    term("print_ready", |c| whole(c.shop.overs.print.fixed)),
    figure("makes", "run.makes", |c| copies(c.component()?.makes?)).shop().rows(role_of),
    term("supplied", |c| count(c.component()?.supplied?)),
];

fn quantities<'a>(case: &Case<'a>) -> Option<&'a Quantities> {
    Some(&case.run()?.quantities)
}

fn pacing<'a>(case: &Case<'a>) -> &'a Pacing {
    &case.plan.results.run.pacing
}

fn times<'a>(case: &Case<'a>) -> Option<&'a Times> {
    Some(&case.run()?.times)
}

fn pace<'a>(case: &Case<'a>) -> Option<&'a Pace> {
    case.line().map(|line| &line.pace)
}

fn supplies<'a>(case: &Case<'a>) -> Option<&'a Supplies> {
    case.line().map(|line| &line.supplies)
}

fn clock(at: Second) -> Value {
    Some(crate::words::Slot::Value(Measure::new(at.get(), Unit::Clock)))
}

fn some_time(some: Second) -> Value {
    if some > Second::ZERO { time(some) } else { None }
}

fn good(case: &Case, lines: &mut Vec<Say>) {
    let short = quantities(case).is_some_and(|sets| sets.short.is_some());
    lines.push(say(if short { "explain.good" } else { "explain.as_ordered" }));
}

fn station_name(station: Station) -> Say {
    say(format!("station.{}", station.name()))
}

/// The formula of a station, where it has one; else the shop's own figure.
fn station_told(case: &Case, lines: &mut Vec<Say>) {
    let feeder = pace(case).is_some_and(|pace| pace.feeder_sheets_hour.is_some());
    lines.push(say(match STATIONS.get(case.index()) {
        Some(Station::Press) => "explain.station.press",
        Some(Station::Gather) if feeder => "explain.station.feeder",
        Some(Station::Stitch) => "explain.station.stitch",
        Some(Station::Form) => "explain.station.form",
        Some(Station::Rate) => "explain.station.rate",
        _ => "explain.as_shop",
    }));
}

fn supply(case: &Case) -> Say {
    let name = Supply::ALL.get(case.index()).map_or("", |supply| supply.name());
    say(format!("supply.{name}"))
}

/// What somebody is busy with, while the line runs or stands.
fn stops(case: &Case, running: bool, lines: &mut Vec<Say>) {
    let run = &case.plan.results.run;
    for stop in run.stops().filter(|stop| stop.running == running && stop.times > 0) {
        lines.push(
            say("explain.stops.one")
                .say("supply", say(format!("supply.{}", stop.supply.name())))
                .put("times", Measure::count(stop.times))
                .put("each", stop.each),
        );
    }
    lines.push(say("explain.stops"));
}
