//! The same book bound otherwise.

use super::Scene;
use crate::plan::Verdict;
use crate::view::Reading;
use crate::words::say;
use maud::{Markup, html};

/// One line: what else is possible.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    let possible = scene
        .advice
        .bindings
        .iter()
        .filter(|row| row.verdict == Verdict::Fits && !row.chosen)
        .map(|row| scene.printer.word(&format!("binding.{}", row.id)))
        .collect::<Vec<_>>();
    if possible.is_empty() {
        return scene.word("binding.none");
    }
    scene.tell(&say("binding.summary").text("possible", possible.join(", ")))
}

/// Every way of binding, possible or not, and why. No limit of the line is named.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    html! {
        ul class="findings" {
            @for row in &scene.advice.bindings {
                li {
                    strong { (scene.word(&format!("binding.{}", row.id))) } " "
                    (scene.word(&format!("binding.why.{}", row.why)))
                    @if row.lies_flat { " " (scene.word("binding.flat")) }
                    @if row.spine_text { " " (scene.word("binding.text")) }
                }
            }
        }
        @if scene.reading != Reading::Client { p { (scene.word("binding.source")) } }
    }
}
