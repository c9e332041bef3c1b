//! The run: what to feed, how fast, what stops it, when it is over.

use super::Scene;
use crate::drawing;
use crate::job::{Job, Role};
use crate::plan::{Component, Plan, STATIONS, Stop};
use crate::units::{Band, Measure, Second, Unit};
use crate::words::{Say, say};
use maud::{Markup, html};

/// One line: sets to feed, time, and when it is over.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    let run = &scene.plan.results.run;
    let told = say("run.summary")
        .put("sets", Measure::count(run.quantities.fed))
        .put("best", run.times.best);
    html! {
        (scene.tell(&told))
        @if let Some(over) = over(scene.plan) { " " (scene.tell(&over)) }
    }
}

/// Sets, time, stops, and when it is over, as sentences.
#[must_use]
pub fn told(plan: &Plan) -> Vec<Say> {
    let run = &plan.results.run;
    let first = say("run.summary")
        .put("sets", Measure::count(run.quantities.fed))
        .put("best", run.times.best);
    let stops = run.stops().map(stop_told);
    [first, bottleneck(plan)].into_iter().chain(stops).chain(over(plan)).collect()
}

/// When it is over, if it is known when it starts.
fn over(plan: &Plan) -> Option<Say> {
    let (start, best, worst) = plan.results.run.times.clock?;
    let at = |time: Second| Measure::new(time.get(), Unit::Clock);
    let key = if best == worst { "run.over" } else { "run.over-between" };
    Some(say(key).put("start", at(start)).put("best", at(best)).put("worst", at(worst)))
}

/// The time line, figures, stations, stops, components.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let run = &scene.plan.results.run;
    let drawing = drawing::timeline(scene.plan, scene.screen.room);
    let count = |number| Band::exact(Measure::count(number));
    html! {
        (scene.drawn(&drawing, None))
        dl class="list" {
            (scene.row("run.sets", Some("sets_fed"), count(run.quantities.fed)))
            (scene.row("run.good", None, Band::exact(run.quantities.good)))
            (scene.row("run.interval", Some("interval"), seconds(run.pacing.interval)))
            (scene.row("run.makeready", None, Band::exact(run.times.makeready)))
            (scene.row("run.running", None, Band::exact(run.times.running)))
            @if run.times.standing > Second::ZERO {
                (scene.row("run.standing", None, Band::exact(run.times.standing)))
            }
            @if run.times.beside > Second::ZERO {
                (scene.row("run.beside", None, Band::exact(run.times.beside)))
            }
            (scene.row("run.best", Some("run_time"), Band::exact(run.times.best)))
            @if run.times.worst > run.times.best {
                (scene.row("run.worst", None, Band::exact(run.times.worst)))
            }
            @if let Some(chips) = run.consumed.chips {
                (scene.row("run.chips", None, Band::exact(chips)))
            }
        }
        @if let Some(over) = over(scene.plan) { p { (scene.tell(&over)) } }
        p { (scene.tell(&bottleneck(scene.plan))) }
        (stations(scene))
        ul class="stops" {
            @for stop in run.stops() { li { (scene.tell(&stop_told(stop))) } }
        }
        (components(scene))
    }
}

/// A time between sets, in seconds.
fn seconds(time: Second) -> Band<Measure> {
    Band::exact(Measure::new(time.get(), Unit::Number))
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
                @for (station, time) in known {
                    @if let Some(time) = time {
                        tr class=[(*station == pacing.bottleneck).then_some("bottleneck")] {
                            th scope="row" { (scene.word(&format!("station.{}", station.name()))) }
                            td { (scene.tell(&say("run.seconds").put("time", Measure::new(time.get(), Unit::Number)))) }
                        }
                    }
                }
            }
        }
    }
}

/// How often a supply wants somebody.
fn stop_told(stop: &Stop) -> Say {
    let key = match (stop.times, stop.running) {
        (0, _) => "run.stop.never",
        (_, true) => "run.stop.running",
        (_, false) => "run.stop.standing",
    };
    say(key)
        .say("supply", say(format!("supply.{}", stop.supply.name())))
        .put("every", Measure::count(stop.every))
        .count("times", Measure::count(stop.times))
        .put("first", stop.first)
        .put("each", stop.each)
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
    let numbers = &scene.printer.numbers;
    let short = scene.plan.results.run.quantities.short == Some(component.section);
    let count = |number: Option<u32>| number.map(|number| numbers.print(Measure::count(number)));
    html! {
        tr class=[short.then_some("warning")] {
            th scope="row" { (scene.word(role(scene.job, component.section))) }
            td { (component.sheets) }
            td { (count(Some(component.printed)).unwrap_or_default()) }
            td { (count(Some(component.fed)).unwrap_or_default()) }
            @if counted {
                td { (count(component.supplied).unwrap_or_default()) }
                td { (count(component.makes.map(|copies| copies.get())).unwrap_or_default()) }
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
