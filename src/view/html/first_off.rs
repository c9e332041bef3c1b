//! What the first book off the machine says, beside the fields it was typed into.

use super::Scene;
use crate::units::Mm;
use crate::words::{Say, say};
use maud::{Markup, html};

/// One sentence for each measurement that was typed.
#[must_use]
pub fn first_off(scene: &Scene) -> Markup {
    let found = &scene.plan.results.first_off;
    let case = scene.case();
    let thickness = found.thicker.map(|_| {
        let key = if found.within { "first.within" } else { "first.outside" };
        case.fill(say(key), &[("thicker", "first_thicker", 0)])
    });
    let factor = found.factor.map(|_| {
        let slots = [("factor", "first_factor", 0), ("error", "first_error", 0)];
        case.fill(say("first.factor"), &slots)
    });
    let knife = found.knife.map(|knife| {
        let key = if knife < Mm::ZERO { "first.knife.in" } else { "first.knife.out" };
        case.fill(say(key), &[("move", "first_move", 0)])
    });
    let told: Vec<Say> = [thickness, factor, knife].into_iter().flatten().collect();
    html! {
        @if !told.is_empty() {
            ul { @for sentence in &told { li { (scene.tell(sentence)) } } }
        }
    }
}
