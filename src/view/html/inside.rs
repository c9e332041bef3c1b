//! Inside the fold: push-out, leaf length and image position of every sheet and its pages.

use super::Scene;
use crate::plan::{Folios, distance_left};
use crate::units::{Measure, Mm};
use crate::words::say;
use maud::{Markup, html};

/// One line: how far the innermost sheet pushes out.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    let results = &scene.plan.results;
    let innermost = results.leaves.last();
    scene.tell(
        &say("inside.summary")
            .band("push_out", innermost.map(|leaf| leaf.push_out).unwrap_or_default())
            .put("shift", innermost.map_or(Mm::ZERO, |leaf| leaf.image_shift)),
    )
}

/// Both readings of creep, then a row for each sheet.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let results = &scene.plan.results;
    let innermost = results.leaves.last();
    let numbers = &scene.printer.numbers;
    let art = results.margins.art;
    html! {
        dl class="list" {
            (scene.row("inside.push-out", Some("push_out"), innermost.map(|leaf| leaf.push_out).unwrap_or_default()))
            (scene.row("inside.trade", Some("trade_creep"), results.trade_creep))
            (scene.row("inside.shift", Some("image_shift"),
                crate::units::Band::exact(innermost.map_or(Mm::ZERO, |leaf| leaf.image_shift))))
        }
        p { (scene.word("inside.sign")) }
        div class="scroll" tabindex="0" role="region" aria-label=(scene.printer.word("inside.table")) {
            table {
                caption { (scene.word("inside.caption")) }
                thead { tr {
                    th scope="col" { (scene.word("inside.sheet")) }
                    th scope="col" { (scene.word("inside.outer")) }
                    th scope="col" { (scene.word("inside.inner")) }
                    th scope="col" { (scene.word("inside.push-out")) }
                    th scope="col" { (scene.word("inside.length")) }
                    th scope="col" { (scene.word("inside.shift")) }
                    th scope="col" { (scene.tell(&say("inside.left").put("art", art))) }
                } }
                tbody {
                    @for leaf in &results.leaves {
                        @let left = distance_left(scene.job, leaf, art);
                        tr class=[(left < Mm::ZERO).then_some("warning")] {
                            th scope="row" { (leaf.place) }
                            td { (pair(scene, &leaf.folios, true)) }
                            td { (pair(scene, &leaf.folios, false)) }
                            td { (numbers.band(leaf.push_out.map(Mm::get), crate::units::Unit::Length)) }
                            td { (numbers.print(leaf.length.into())) }
                            td { (numbers.print(leaf.image_shift.into())) }
                            td { (numbers.print(Measure::from(left))) }
                        }
                    }
                }
            }
        }
        p { (scene.word("inside.crossover")) }
    }
}

/// The two pages of one side, as they lie flat.
fn pair(scene: &Scene, folios: &Folios, outer: bool) -> String {
    let (left, right) = if outer {
        (folios.front_left, folios.front_right)
    } else {
        (folios.back_left, folios.back_right)
    };
    format!("{} · {}", scene.folio(left), scene.folio(right))
}
