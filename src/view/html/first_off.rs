//! What the first book off the machine says, beside the fields it was typed into.

use super::Scene;
use crate::units::{Measure, Mm, Unit};
use crate::words::{Say, say};
use maud::{Markup, html};

/// One sentence for each measurement that was typed.
#[must_use]
pub fn first_off(scene: &Scene) -> Markup {
    let found = &scene.plan.results.first_off;
    let number = |value| Measure::new(value, Unit::Number);
    let thickness = found.thicker.map(|thicker| {
        let key = if found.within { "first.within" } else { "first.outside" };
        say(key).put("thicker", thicker)
    });
    let factor = found.factor.map(|(factor, error)| {
        say("first.factor").put("factor", number(factor)).put("error", number(error))
    });
    let knife = found.knife.map(|knife| {
        let key = if knife < Mm::ZERO { "first.knife.in" } else { "first.knife.out" };
        say(key).put("move", knife.max(-knife))
    });
    let told: Vec<Say> = [thickness, factor, knife].into_iter().flatten().collect();
    html! {
        @if !told.is_empty() {
            ul { @for sentence in &told { li { (scene.tell(sentence)) } } }
        }
    }
}
