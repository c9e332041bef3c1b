//! Mass, packing and post.

use super::Scene;
use crate::plan::{Cartons, Posted};
use crate::units::Measure;
use crate::view::Reading;
use crate::words::{Say, say};
use maud::{Markup, html};

/// Its figures.
const ROWS: [&str; 6] =
    ["copy_mass", "run_mass", "carton_copies", "cartons", "carton_last", "carton_full"];

/// One line: a copy, the run, the cartons.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    let packing = &scene.plan.results.packing;
    let Some(copy) = packing.copy else { return scene.word("pack.unknown") };
    let told = match packing.run {
        Some(run) => say("pack.summary").put("copy", copy.nominal).put("run", run.nominal),
        None => say("pack.alone").put("copy", copy.nominal),
    };
    html! {
        (scene.tell(&told))
        @if packing.run.is_none() { " " (scene.word("run.unknown")) }
        @if let Some(boxes) = packing.cartons.and_then(boxes) { " " (scene.tell(&boxes)) }
    }
}

fn boxes(cartons: Cartons) -> Option<Say> {
    let count = Measure::count(cartons.cartons?);
    Some(say("pack.cartons").count("cartons", count).put("each", Measure::count(cartons.each)))
}

/// Figures, cartons, and the postal table.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let packing = &scene.plan.results.packing;
    if packing.copy.is_none() {
        return html! { p { (scene.word("pack.unknown")) } };
    }
    html! {
        dl class="list" {
            @for id in ROWS { (scene.row(id)) }
        }
        @if let Some(posted) = &packing.posted {
            @if scene.reading != Reading::Client { (table(scene, posted)) }
        }
        p { (scene.word("pack.lifting")) }
    }
}

fn table(scene: &Scene, posted: &Posted) -> Markup {
    let printer = &scene.printer;
    html! {
        p { (scene.fill(say("pack.posted"), &[("mass", "posted_mass", 0)])) }
        div class="scroll" tabindex="0" role="region" aria-label=(printer.word("pack.table")) {
            table {
                caption { (scene.word("pack.table")) }
                thead { tr {
                    th scope="col" { (scene.word("pack.step")) }
                    th scope="col" { (scene.word("decides.answer")) }
                    th scope="col" { (scene.word("pack.spare")) }
                    th scope="col" { (scene.word("pack.postage")) }
                } }
                tbody {
                    @for (at, (row, step)) in scene.shop.post.iter().zip(&posted.steps).enumerate() {
                        tr {
                            th scope="row" { (scene.printer.typed(&row.name)) }
                            td { (scene.word(&format!("limit.answer.{}", step.answer.name()))) }
                            td { (scene.figure("post_spare", at + 1)) }
                            td {
                                @if let Some(price) = row.price {
                                    (scene.shop.rates.currency) " "
                                    (printer.numbers.print(crate::units::Money(price).into()))
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}
