//! On the sheet: the chosen press sheet, drawn; what is cut before and after; all others, ranked.

use super::Scene;
use crate::drawing::press_sheet;
use crate::job::Job;
use crate::plan::{Needed, Plan, Refusal, Route, Step, Way, steps};
use crate::shop::Shop;
use crate::units::{Copies, Measure, Money, Unit};
use crate::view::Reading;
use crate::words::{Say, say};
use maud::{Markup, html};

/// One line: copies on which sheet, how much of it is used.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    scene.tell(&result(scene.job, scene.shop, scene.plan))
}

/// The result in a sentence.
fn result(job: &Job, shop: &Shop, plan: &Plan) -> Say {
    match plan.results.layout.chosen() {
        Some(way) if way.refusal.is_none() => say("sheet.summary")
            .count("copies", Copies(way.flats().saturating_mul(job.copies_up)))
            .text("sheet", named(shop, way))
            .say("route", say(route(way.route)))
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
        lines.push(say("sheet.needs").put("sheets", Measure::count(needed.sheets)));
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

/// The word for a route.
#[must_use]
pub const fn route(route: Route) -> &'static str {
    match route {
        Route::CutFirst => "sheet.route.cut",
        Route::Straight => "sheet.route.straight",
    }
}

/// Why a way cannot be used.
#[must_use]
pub fn why(way: &Way) -> Say {
    match way.refusal {
        None => say("sheet.why.none"),
        Some(Refusal::Small(by)) => say("sheet.why.small").put("by", by),
        Some(Refusal::Edges(by)) => say("sheet.why.edges").put("by", by),
        Some(Refusal::OpenWidth(width)) => say("sheet.why.open-width").put("width", width),
        Some(Refusal::TravelHeight(height)) => say("sheet.why.height").put("height", height),
        Some(Refusal::ChipThin(chip)) => say("sheet.why.thin").put("chip", chip),
        Some(Refusal::ChipDeep(chip)) => say("sheet.why.deep").put("chip", chip),
    }
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
    let drawing = press_sheet(scene.plan, scene.screen.room);
    html! {
        @if let Some(drawing) = &drawing {
            (scene.drawn(drawing, Some("drawing.press_sheet.note")))
        }
        dl class="list" {
            div class="row" {
                dt { (scene.word("sheet.used")) }
                dd { (scene.printer.figure("sheet_used", way.used, Unit::Share)) }
            }
            (scene.row("sheet.press-across", None, crate::units::Band::exact(way.press.width)))
            (scene.row("sheet.press-along", None, crate::units::Band::exact(way.press.height)))
            @if way.route == Route::Straight {
                (scene.row("sheet.straight-cut", Some("straight_cut"), crate::units::Band::exact(way.face_cut)))
            }
            @if let Some(needed) = results.layout.needed { (needs(scene, needed)) }
        }
        p { (scene.tell(&say(grain(way)))) }
        h3 { (scene.word("sheet.steps")) }
        ol class="steps" {
            @for step in steps(scene.job, way, results.trim.travel_height) {
                li { (scene.tell(&step_said(step))) }
            }
            @if steps(scene.job, way, results.trim.travel_height).next().is_none() {
                li { (scene.word("sheet.step.none")) }
            }
        }
        p class="caution" { (scene.word("sheet.caution")) }
    }
}

fn needs(scene: &Scene, needed: Needed) -> Markup {
    let count = |number| crate::units::Band::exact(Measure::count(number));
    html! {
        (scene.row("sheet.needed", None, count(needed.sheets)))
        (scene.row("sheet.sides", None, count(needed.sides)))
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
    let numbers = &scene.printer.numbers;
    let priced = layout.by_cost && scene.reading != Reading::Client;
    let label = |column: &str| scene.printer.word(&format!("sheet.column.{column}"));
    html! {
        @if layout.ranked().next().is_some() {
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
                        @for way in layout.ranked().filter(|way| way.refusal.is_none()) {
                            tr class=[layout.chosen().is_some_and(|chosen| chosen == way).then_some("chosen")] {
                                th scope="row" { (name(scene, way)) }
                                td data-label=(label("route")) { (scene.word(route(way.route))) }
                                td data-label=(label("copies")) { (way.flats().saturating_mul(scene.job.copies_up)) }
                                td data-label=(label("used")) { (numbers.print(Measure::share(way.used))) }
                                td data-label=(label("offcut")) { (scene.tell(&offcut(way))) }
                                td data-label=(label("cut")) { (numbers.print(way.face_cut.into())) }
                                @if priced {
                                    td data-label=(label("cost")) { (scene.shop.rates.currency) " " (cost(scene, way.cost)) }
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

fn offcut(way: &Way) -> Say {
    if way.offcut.width.get().min(way.offcut.height.get()) < 1.0 {
        say("sheet.offcut.none")
    } else {
        say("sheet.offcut").put("width", way.offcut.width).put("height", way.offcut.height)
    }
}

fn cost(scene: &Scene, cost: Option<Money>) -> String {
    // A thousand sets: single ones cost too little to tell apart.
    const THOUSAND: f64 = 1000.0;
    cost.map_or(String::new(), |cost| scene.printer.numbers.print((cost * THOUSAND).into()))
}

/// Those that cannot be used, each with its reason.
fn refusals(scene: &Scene) -> Markup {
    let refused: Vec<&Way> =
        scene.plan.results.layout.ranked().filter(|way| way.refusal.is_some()).collect();
    html! {
        @if !refused.is_empty() {
            details class="refused" id="sheet-refused" {
                summary { (scene.tell(&say("sheet.refusals").count("count", Measure::count(refused.len() as u32)))) }
                ul {
                    @for way in refused {
                        li {
                            strong { (name(scene, way)) } ", " (scene.word(route(way.route))) ": "
                            (scene.tell(&why(way)))
                        }
                    }
                }
            }
        }
    }
}
