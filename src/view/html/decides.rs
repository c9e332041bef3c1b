//! What decides it: every limit of the line beside the book's value, and everything worth knowing.

use super::Scene;
use crate::plan::{LimitCheck, Weight};
use crate::units::{Measure, Unit};
use crate::words::{Say, say};
use maud::{Markup, html};

/// One line: the tightest limit.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    match scene.plan.tightest() {
        Some(limit) => html! { (scene.tell(&beside(limit, "decides.tightest"))) },
        None => scene.word("decides.none"),
    }
}

/// The findings, then the table of limits.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let plan = scene.plan;
    html! {
        @if !plan.findings.is_empty() {
            ul class="findings" {
                @for finding in &plan.findings {
                    li class=(weight(finding.weight)) {
                        strong { (scene.word(&format!("weight.{}", weight(finding.weight)))) } " "
                        (scene.tell(&finding.say())) " "
                        span class="cure" { (scene.tell(&finding.cure())) }
                    }
                }
            }
        }
        @if !plan.results.limits.is_empty() {
            div class="scroll" tabindex="0" role="region" aria-label=(scene.printer.word("decides.table")) {
                table class="limits" {
                    caption { (scene.tell(&say("decides.caption").typed("line", line_name(scene)))) }
                    thead { tr {
                        th scope="col" { (scene.word("decides.limit")) }
                        th scope="col" { (scene.word("decides.book")) }
                        th scope="col" { (scene.word("decides.takes")) }
                        th scope="col" { (scene.word("decides.room")) }
                        th scope="col" { (scene.word("decides.answer")) }
                    } }
                    tbody { @for limit in &plan.results.limits { (row(scene, limit)) } }
                }
            }
        }
    }
}

fn row(scene: &Scene, limit: &LimitCheck) -> Markup {
    let numbers = &scene.printer.numbers;
    // Repeated beside each value where there is no room for columns.
    let name = |column: &str| scene.printer.word(&format!("decides.{column}"));
    let answer = limit.answer.name();
    html! {
        tr class=(answer) {
            th scope="row" { (scene.word(&format!("limit.{}", limit.id.name()))) }
            td data-label=(name("book")) { (numbers.band(limit.value, limit.unit)) }
            td data-label=(name("takes")) { (scene.tell(&takes(limit))) }
            td data-label=(name("room")) { (scene.tell(&room(limit))) }
            td { (scene.word(&format!("limit.answer.{answer}"))) }
        }
    }
}

/// What the line takes, in words.
fn takes(limit: &LimitCheck) -> Say {
    let measure = |value| Measure::new(value, limit.unit);
    match (limit.range.least, limit.range.most) {
        (Some(least), Some(most)) => {
            say("range.between").put("least", measure(least)).put("most", measure(most))
        }
        (None, Some(most)) => say("range.most").put("most", measure(most)),
        (Some(least), None) => say("range.least").put("least", measure(least)),
        (None, None) => say("range.any"),
    }
}

/// Head-room in sheets, pages and grammage where the limit grows with the book, else the margin.
fn room(limit: &LimitCheck) -> Say {
    let Some((sheets, pages)) = limit.room.sheets.zip(limit.room.pages()) else {
        let (key, value) = if limit.margin < 0.0 {
            ("room.beyond", -limit.margin)
        } else {
            ("room.left", limit.margin)
        };
        return say(key).put("margin", Measure::new(value, limit.unit));
    };
    let count = |value: i64| Measure::new(value.unsigned_abs() as f64, Unit::Count);
    let weight = limit.room.grammage.unwrap_or_default();
    let key = match (sheets < 0, weight >= 1.0) {
        (true, _) => "room.too-many",
        (false, true) => "room.sheets-weight",
        (false, false) => "room.sheets",
    };
    say(key)
        .count("sheets", count(sheets))
        .put("pages", count(pages))
        .put("weight", Measure::new(weight, Unit::Grammage))
}

/// A limit and the book's value in one sentence.
fn beside(limit: &LimitCheck, key: &'static str) -> Say {
    say(key)
        .say("limit", say(format!("limit.{}", limit.id.name())))
        .say("takes", takes(limit))
        .put("value", Measure::new(limit.value.nominal, limit.unit))
}

fn line_name(scene: &Scene) -> String {
    scene.shop.lines.get(scene.job.line).map(|line| line.name.to_string()).unwrap_or_default()
}

const fn weight(weight: Weight) -> &'static str {
    match weight {
        Weight::Note => "note",
        Weight::Warning => "warning",
        Weight::Marginal => "marginal",
        Weight::DoesNotFit => "no",
    }
}
