//! Inside the fold: push-out, leaf length and image position of every sheet and its pages.

use super::Scene;
use crate::plan::{Clearance, Folios, distance_left, pages_at_risk};
use crate::units::Mm;
use crate::words::{Say, say};
use maud::{Markup, html};

/// One line: how far the innermost sheet pushes out.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    let results = &scene.plan.results;
    let innermost = results.leaves.last();
    let shift = innermost.map_or(Mm::ZERO, |leaf| leaf.image_shift);
    let inwards = shift < Mm::ZERO;
    let key = if inwards { "inside.summary.nearer" } else { "inside.summary.further" };
    scene.tell(
        &say(key)
            .band("push_out", innermost.map(|leaf| leaf.push_out).unwrap_or_default())
            .put("shift", if inwards { -shift } else { shift }),
    )
}

/// Both readings of creep, then a row for each sheet.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let results = &scene.plan.results;
    let art = results.margins.art.distance;
    html! {
        (scene.drawn("fold-paths", Some("drawing.fold.note")))
        dl class="list" {
            @for id in ["push_out", "trade_creep", "image_shift"] { (scene.row(id)) }
        }
        (scene.drawn("push-outs", Some("drawing.push_outs.note")))
        (clear(scene))
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
                            @for id in ["push_out", "leaf_length", "image_shift", "art_left"] {
                                td { (scene.figure(id, leaf.place as usize)) }
                            }
                        }
                    }
                }
            }
        }
        p { (scene.word("inside.crossover")) }
    }
}

/// The worst page at its face, and in words which pages are at risk.
fn clear(scene: &Scene) -> Markup {
    let margins = &scene.plan.results.margins;
    let (job, leaves) = (scene.job, &scene.plan.results.leaves);
    let kept = [("inside.art", Some(&margins.art)), ("inside.folio", margins.folio.as_ref())];
    html! {
        (scene.drawn("clearance", None))
        @for (what, clearance) in kept {
            @if let Some(clearance) = clearance {
                @let (cover, spans) = pages_at_risk(job, leaves, clearance.distance);
                p { (scene.tell(&at_risk(scene, what, clearance, cover, &spans))) }
            }
        }
    }
}

/// Which pages are at risk, or that none is.
fn at_risk(
    scene: &Scene,
    what: &str,
    clearance: &Clearance,
    cover: bool,
    spans: &[(u32, u32)],
) -> Say {
    let name = say(what);
    let left = clearance.left.max(-clearance.left);
    if clearance.left >= Mm::ZERO {
        let safe = say("inside.safe").say("what", name);
        return safe.put("distance", clearance.distance).put("left", left);
    }
    let numbers = spans.iter().map(|(first, last)| match first == last {
        true => first.to_string(),
        false => format!("{first}–{last}"),
    });
    let cover = cover.then(|| scene.printer.word("role.cover").to_owned());
    let pages: Vec<String> = cover.into_iter().chain(numbers).collect();
    let risk = say("inside.risk").say("what", name).text("pages", pages.join(", "));
    risk.put("distance", clearance.distance).put("left", left)
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
