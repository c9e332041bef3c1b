//! On the sheet: the chosen press sheet, drawn; what is cut before and after; all others, ranked.

use super::Scene;
use crate::explain::why;
use crate::job::Job;
use crate::plan::{Layout, Plan, Route, Step, Way, steps};
use crate::shop::Shop;
use crate::units::{Copies, Measure, Unit};
use crate::view::Reading;
use crate::words::{Say, say};
use maud::{Markup, html};

/// One line: copies on which sheet, how much of it is used.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    scene.tell(&result(scene.job, scene.shop, scene.plan))
}

/// The result in a sentence.
pub(in crate::view) fn result(job: &Job, shop: &Shop, plan: &Plan) -> Say {
    match plan.results.layout.chosen() {
        Some(way) if way.refusal.is_none() => say("sheet.summary")
            .count("copies", Copies(way.flats().saturating_mul(job.copies_up)))
            .text("sheet", named(shop, way))
            .say("route", say(way.route.key()))
            .put("used", Measure::share(way.used)),
        Some(way) => say("sheet.refused").text("sheet", named(shop, way)).say("why", why(way)),
        None if shop.press_sheets.is_empty() => say("sheet.no-sheets"),
        None => say("sheet.none"),
    }
}

/// The result, what is needed of it, and the guillotine's steps with their caution, line by line.
#[must_use]
pub fn told(job: &Job, shop: &Shop, plan: &Plan) -> Vec<Say> {
    let results = &plan.results;
    let mut lines = vec![result(job, shop, plan)];
    if let Some(needed) = results.layout.needed {
        lines.push(say("sheet.needs").put("sheets", Measure::new(needed.sheets, Unit::Count)));
    }
    if let Some(way) = results.layout.chosen().filter(|way| way.refusal.is_none()) {
        let before = lines.len();
        lines.extend(steps(job, way, results.trim.travel_height).map(step_said));
        if lines.len() > before {
            lines.push(say("sheet.caution"));
        }
    }
    lines
}

fn name<'a>(scene: &Scene<'a>, way: &Way) -> &'a str {
    named(scene.shop, way)
}

fn named<'a>(shop: &'a Shop, way: &Way) -> &'a str {
    shop.press_sheets.get(way.sheet).map_or("", |sheet| sheet.name.as_str())
}

/// Drawing, figures, steps, and the table.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let results = &scene.plan.results;
    html! {
        @match results.layout.chosen() {
            Some(way) if way.refusal.is_none() => (chosen(scene, way)),
            _ => p { (summary(scene)) },
        }
        (table(scene))
    }
}

fn chosen(scene: &Scene, way: &Way) -> Markup {
    let results = &scene.plan.results;
    html! {
        (scene.drawn("press-sheet", Some("drawing.press_sheet.note")))
        dl class="list" {
            @for id in ["sheet_used", "press_across", "press_along"] { (scene.row(id)) }
            @if way.route == Route::Straight { (scene.row("straight_cut")) }
            @for id in ["sheets_needed", "sides"] { (scene.row(id)) }
        }
        p { (scene.tell(&say(grain(way)))) }
        h3 { (scene.word("sheet.steps")) }
        ol class="steps" {
            @for step in steps(scene.job, way, results.trim.travel_height) {
                li { (scene.tell(&asked(scene, step))) }
            }
            @if steps(scene.job, way, results.trim.travel_height).next().is_none() {
                li { (scene.word("sheet.step.none")) }
            }
        }
        p class="caution" { (scene.word("sheet.caution")) }
    }
}

fn grain(way: &Way) -> &'static str {
    use crate::plan::Grain;
    match way.grain {
        Grain::Unknown => "sheet.grain.unknown",
        Grain::AlongSpine => "sheet.grain.along",
        Grain::AcrossSpine => "sheet.grain.across",
    }
}

/// One step of the guillotine, its figures to be asked about.
fn asked(scene: &Scene, step: Step) -> Say {
    let slots: &[_] = match step {
        Step::IntoFlats { .. } => &[
            ("flats", "way_flats", 0),
            ("width", "flat_width", 0),
            ("height", "flat_height", 0),
            ("cuts", "way_cuts", 0),
        ],
        Step::ToHeight(_) => &[("height", "travel", 0)],
        Step::Apart { .. } | Step::Square(_) => &[],
    };
    let told = step_said(step);
    let mut asked = say(told.key.clone());
    asked.number = told.number;
    let mut asked = scene.case().fill(asked, slots);
    asked.slots.extend(told.slots);
    asked
}

/// One step of the guillotine in words.
#[must_use]
pub fn step_said(step: Step) -> Say {
    match step {
        Step::IntoFlats { grid: (columns, rows), flat, cuts } => say("sheet.step.flats")
            .count("flats", Measure::count(columns.saturating_mul(rows)))
            .put("width", flat.width)
            .put("height", flat.height)
            .put("cuts", Measure::count(cuts)),
        Step::ToHeight(height) => say("sheet.step.height").put("height", height),
        Step::Apart { copies, gutter } => {
            say("sheet.step.apart").put("copies", Measure::count(copies)).put("gutter", gutter)
        }
        Step::Square(height) => say("sheet.step.square").put("height", height),
    }
}

/// Every press sheet on hand, best first.
fn table(scene: &Scene) -> Markup {
    let layout = &scene.plan.results.layout;
    let columns = [
        ("copies", "copies_on"),
        ("used", "sheet_used"),
        ("offcut", "offcut"),
        ("cut", "straight_cut"),
    ];
    let priced = layout.by_cost && scene.reading != Reading::Client;
    let label = |column: &str| scene.printer.word(&format!("sheet.column.{column}"));
    html! {
        @if layout.best().is_some() {
            div class="scroll" tabindex="0" role="region" aria-label=(scene.printer.word("sheet.table")) {
                table class="sheets" {
                    caption { (scene.word(if layout.by_cost { "sheet.caption.cost" } else { "sheet.caption.waste" })) }
                    thead { tr {
                        th scope="col" { (label("sheet")) }
                        th scope="col" { (label("route")) }
                        th scope="col" { (label("copies")) }
                        th scope="col" { (label("used")) }
                        th scope="col" { (label("offcut")) }
                        th scope="col" { (label("cut")) }
                        @if priced { th scope="col" { (label("cost")) } }
                    } }
                    tbody {
                        @for (at, way) in ranked(layout, true) {
                            tr class=[layout.chosen().is_some_and(|chosen| chosen == way).then_some("chosen")] {
                                th scope="row" { (name(scene, way)) }
                                td data-label=(label("route")) { (scene.word(way.route.key())) }
                                @for (column, id) in columns {
                                    td data-label=(label(column)) { (scene.figure(id, at)) }
                                }
                                @if priced {
                                    td data-label=(label("cost")) { (scene.shop.rates.currency) " " (scene.figure("thousand_sets", at)) }
                                }
                            }
                        }
                    }
                }
            }
            (refusals(scene))
        }
    }
}

/// Ways, best first, each with its row: those that can be used or those that cannot.
fn ranked(layout: &Layout, usable: bool) -> impl Iterator<Item = (usize, &Way)> {
    let all = layout.ranked().map(|way| (way.place() + 1, way));
    all.filter(move |(_, way)| way.refusal.is_none() == usable)
}

/// Those that cannot be used, each with its reason.
fn refusals(scene: &Scene) -> Markup {
    let refused: Vec<(usize, &Way)> = ranked(&scene.plan.results.layout, false).collect();
    html! {
        @if !refused.is_empty() {
            details class="refused" id="sheet-refused" {
                summary { (scene.tell(&say("sheet.refusals").count("count", Measure::count(refused.len() as u32)))) }
                ul {
                    @for (at, way) in refused {
                        li {
                            strong { (name(scene, way)) } ", " (scene.word(way.route.key())) ": "
                            (scene.figure("refusal", at))
                        }
                    }
                }
            }
        }
    }
}
