//! What decides it: every limit of the line beside the book's value, and everything worth knowing.

use super::Scene;
use crate::explain;
use crate::plan::{Answer, LimitCheck, Weight};
use crate::units::Measure;
use crate::words::{Say, say};
use maud::{Markup, html};

/// So many limits are seen at once, those that bite first and all that
/// are broken; the others are folded away.
const AT_ONCE: usize = 4;

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
    let case = scene.case();
    let places = plan.limits_by_bite();
    let bite = plan.results.limits.iter().filter(|limit| limit.answer != Answer::Fits).count();
    let (first, rest) = places.split_at(AT_ONCE.max(bite).min(places.len()));
    let told = |sentence, finding| scene.tell(&explain::finding(&case, finding, sentence));
    html! {
        @if !plan.findings.is_empty() {
            ul class="findings" {
                @for finding in &plan.findings {
                    li class=(weight(finding.weight)) {
                        strong { (scene.word(&format!("weight.{}", weight(finding.weight)))) } " "
                        (told(finding.say(), finding)) " "
                        span class="cure" { (told(finding.cure(), finding)) }
                    }
                }
            }
        }
        @if !plan.results.limits.is_empty() {
            (table(scene, first, scene.printer.word("decides.table")))
            @if !rest.is_empty() {
                @let more = say("decides.rest").count("count", Measure::count(rest.len() as u32));
                @let more = scene.printer.text(&more);
                details class="refused" id="limits-rest" {
                    summary { (more) }
                    (table(scene, rest, &more))
                }
            }
        }
    }
}

/// Limits by their places.
fn table(scene: &Scene, places: &[usize], name: &str) -> Markup {
    let limits = &scene.plan.results.limits;
    html! {
        div class="scroll" tabindex="0" role="region" aria-label=(name) {
            table class="limits" {
                caption { (scene.tell(&say("decides.caption").typed("line", line_name(scene)))) }
                thead { tr {
                    th scope="col" { (scene.word("decides.limit")) }
                    th scope="col" { (scene.word("decides.book")) }
                    th scope="col" { (scene.word("decides.takes")) }
                    th scope="col" { (scene.word("decides.room")) }
                    th scope="col" { (scene.word("decides.answer")) }
                } }
                tbody {
                    @for at in places {
                        @if let Some(limit) = limits.get(*at) { (row(scene, limit, at + 1)) }
                    }
                }
            }
        }
    }
}

fn row(scene: &Scene, limit: &LimitCheck, at: usize) -> Markup {
    // Repeated beside each value where there is no room for columns.
    let name = |column: &str| scene.printer.word(&format!("decides.{column}"));
    let answer = limit.answer.name();
    html! {
        tr class=(answer) {
            th scope="row" { (scene.word(&format!("limit.{}", limit.id.name()))) }
            td data-label=(name("book")) { (scene.figure("limit_value", at)) }
            td data-label=(name("takes")) { (scene.figure("line_takes", at)) }
            td data-label=(name("room")) { (scene.figure("limit_room", at)) }
            td { (scene.word(&format!("limit.answer.{answer}"))) }
        }
    }
}

/// A limit and the book's value in one sentence.
fn beside(limit: &LimitCheck, key: &'static str) -> Say {
    say(key)
        .say("limit", say(format!("limit.{}", limit.id.name())))
        .say("takes", explain::takes(limit))
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
        Weight::Unlikely => "unlikely",
        Weight::DoesNotFit => "no",
    }
}
