//! Mass, packing and post.

use super::Scene;
use crate::plan::{Cartons, Posted};
use crate::units::{Band, Gram, Measure};
use crate::view::Reading;
use crate::words::{Say, say};
use maud::{Markup, html};

/// One line: a copy, the run, the cartons.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    let packing = &scene.plan.results.packing;
    let Some((copy, run)) = packing.copy.zip(packing.run) else {
        return scene.word("pack.unknown");
    };
    let told = say("pack.summary").put("copy", copy.nominal).put("run", run.nominal);
    html! {
        (scene.tell(&told))
        @if let Some(cartons) = packing.cartons { " " (scene.tell(&boxes(cartons))) }
    }
}

fn boxes(cartons: Cartons) -> Say {
    say("pack.cartons")
        .count("cartons", Measure::count(cartons.cartons))
        .put("each", Measure::count(cartons.each))
}

/// Figures, cartons, and the postal table.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let packing = &scene.plan.results.packing;
    let Some((copy, run)) = packing.copy.zip(packing.run) else {
        return html! { p { (scene.word("pack.unknown")) } };
    };
    html! {
        dl class="list" {
            (scene.row("pack.copy", Some("mass"), copy))
            (scene.row("pack.run", None, run))
            @if let Some(cartons) = packing.cartons { (carton_rows(scene, cartons, copy)) }
        }
        @if let Some(posted) = &packing.posted {
            @if scene.reading != Reading::Client { (table(scene, posted)) }
        }
        p { (scene.word("pack.lifting")) }
    }
}

fn carton_rows(scene: &Scene, cartons: Cartons, copy: Band<Gram>) -> Markup {
    let full = copy.times(f64::from(cartons.each)).shifted(scene.shop.carton.tare);
    html! {
        (scene.row("pack.each", None, Band::exact(Measure::count(cartons.each))))
        (scene.row("pack.boxes", None, Band::exact(Measure::count(cartons.cartons))))
        (scene.row("pack.last", None, Band::exact(Measure::count(cartons.last))))
        // A carton is filled as far as it may be: that is the shop's own limit.
        @if scene.reading != Reading::Client { (scene.row("pack.full", None, full)) }
    }
}

fn table(scene: &Scene, posted: &Posted) -> Markup {
    let printer = &scene.printer;
    html! {
        p { (scene.tell(&say("pack.posted").band("mass", posted.mass))) }
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
                    @for (row, step) in scene.shop.post.iter().zip(&posted.steps) {
                        tr {
                            th scope="row" { (scene.printer.typed(&row.name)) }
                            td { (scene.word(&format!("limit.answer.{}", step.answer.name()))) }
                            td { @if let Some(spare) = step.spare { (printer.numbers.print(spare.into())) } }
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
