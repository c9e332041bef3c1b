//! The run: what to feed, how fast, what stops it, when it is over.

use super::Scene;
use crate::explain::Case;
use crate::job::{Job, Role};
use crate::plan::{Component, Plan, STATIONS, Stop, Supply};
use crate::units::{Copies, Measure, Unit};
use crate::words::{Say, say};
use maud::{Markup, html};

/// Its figures.
const ROWS: [&str; 10] = [
    "sets_fed",
    "good",
    "interval",
    "makeready",
    "running",
    "standing",
    "beside",
    "run_time",
    "run_worst",
    "chips_run",
];

/// One line: sets to feed, time, and when it is over.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    html! {
        (scene.tell(&fed(&scene.case())))
        @if let Some(over) = over(&scene.case()) { " " (scene.printer.text(&over)) }
    }
}

/// Sets, time, stops, and when it is over, as sentences.
#[must_use]
pub fn told(case: &Case) -> Vec<Say> {
    let first = [fed(case), bottleneck(case.plan)];
    first.into_iter().chain(stops_told(case)).chain(over(case)).collect()
}

/// How many copies, or that nobody has said.
pub(in crate::view) fn copies(said: Option<Copies>) -> Say {
    match said {
        Some(copies) => say("entry.copies.echo").count("n", copies),
        None => say("copies.unsaid"),
    }
}

/// Sets to feed and the time they take, or what is to be said before that is known.
pub(in crate::view) fn fed(case: &Case) -> Say {
    let run = &case.plan.results.run;
    match case.job.copies {
        Some(_) => say("run.summary")
            .put("sets", Measure::count(run.quantities.fed))
            .put("best", run.times.best),
        None => say("run.unknown"),
    }
}

/// When it is over, if it is known when it starts.
pub(in crate::view) fn over(case: &Case) -> Option<Say> {
    let (start, best, worst) = case.plan.results.run.times.clock.filter(|_| known(case))?;
    let key = if best == worst { "run.over" } else { "run.over-between" };
    let told = say(key).put("start", Measure::new(start.get(), Unit::Clock));
    Some(case.fill(told, &[("best", "over_best", 0), ("worst", "over_worst", 0)]))
}

/// The time line, figures, stations, stops, components.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let known = known(&scene.case());
    html! {
        (scene.drawn("timeline", None))
        dl class="list" {
            @for id in ROWS { (scene.row(id)) }
        }
        @if let Some(over) = over(&scene.case()) { p { (scene.tell(&over)) } }
        p { (scene.tell(&bottleneck(scene.plan))) }
        (stations(scene))
        @if known {
            ul class="stops" {
                @for told in stops_told(&scene.case()) { li { (scene.tell(&told)) } }
            }
            (components(scene))
        }
    }
}

fn bottleneck(plan: &Plan) -> Say {
    let pacing = &plan.results.run.pacing;
    let key = if pacing.in_sequence { "run.sequence" } else { "run.bottleneck" };
    say(key).say("station", say(format!("station.{}", pacing.bottleneck.name())))
}

fn stations(scene: &Scene) -> Markup {
    let pacing = &scene.plan.results.run.pacing;
    let known = STATIONS.iter().zip(pacing.stations);
    html! {
        table {
            caption { (scene.word("run.stations")) }
            tbody {
                @for (at, (station, time)) in known.enumerate() {
                    @if time.is_some() {
                        tr class=[(*station == pacing.bottleneck).then_some("bottleneck")] {
                            th scope="row" { (scene.word(&format!("station.{}", station.name()))) }
                            td { (scene.figure("station", at + 1)) }
                        }
                    }
                }
            }
        }
    }
}

/// It is said how many copies.
const fn known(case: &Case) -> bool {
    case.job.copies.is_some()
}

/// How often each supply wants somebody in the run.
pub(in crate::view) fn stops_told(case: &Case) -> impl Iterator<Item = Say> {
    case.plan.results.run.stops().filter(|_| known(case)).map(|stop| stop_told(case, stop))
}

fn stop_told(case: &Case, stop: &Stop) -> Say {
    let key = match (stop.times, stop.running) {
        (0, _) => "run.stop.never",
        (_, true) => "run.stop.running",
        (_, false) => "run.stop.standing",
    };
    let at = Supply::ALL.iter().position(|one| *one == stop.supply).map_or(0, |at| at + 1);
    let mut told = say(key).say("supply", say(format!("supply.{}", stop.supply.name())));
    told.number = Some(f64::from(stop.times));
    let slots = [
        ("every", "every", at),
        ("times", "stop_times", at),
        ("first", "first_stop", at),
        ("each", "stop_each", at),
    ];
    case.fill(told, &slots)
}

fn components(scene: &Scene) -> Markup {
    let components = &scene.plan.results.run.quantities.components;
    let counted = components.iter().any(|component| component.supplied.is_some());
    html! {
        div class="scroll" tabindex="0" role="region" aria-label=(scene.printer.word("run.components")) {
            table {
                caption { (scene.word("run.components")) }
                thead { tr {
                    th scope="col" { (scene.word("run.component")) }
                    th scope="col" { (scene.word("run.per-set")) }
                    th scope="col" { (scene.word("run.printed")) }
                    th scope="col" { (scene.word("run.fed")) }
                    @if counted {
                        th scope="col" { (scene.word("run.supplied")) }
                        th scope="col" { (scene.word("run.makes")) }
                    }
                } }
                tbody { @for component in components { (component_row(scene, component, counted)) } }
            }
        }
    }
}

fn component_row(scene: &Scene, component: &Component, counted: bool) -> Markup {
    let short = scene.plan.results.run.quantities.short == Some(component.section);
    let supplied = component.supplied.map(Measure::count);
    let at = component.section + 1;
    html! {
        tr class=[short.then_some("warning")] {
            th scope="row" { (scene.word(role(scene.job, component.section))) }
            @for id in ["part_sheets", "printed", "sets_needed"] { td { (scene.figure(id, at)) } }
            @if counted {
                td { @if let Some(supplied) = supplied { (scene.printer.numbers.print(supplied)) } }
                td { (scene.figure("makes", at)) }
            }
        }
    }
}

/// The word for a section's part in the book.
#[must_use]
pub fn role(job: &Job, section: usize) -> &'static str {
    match job.sections.get(section).map(|section| section.role) {
        Some(Role::Cover) => "role.cover",
        Some(Role::Insert) => "role.insert",
        Some(Role::Inside) | None => "role.inside",
    }
}
