//! Why a figure is what it is, beside the figure, and all of them at the end of what is printed.

use super::Scene;
use crate::explain::{Case, Explanation, explain, figures};
use crate::words::Say;
use maud::{Markup, html};

/// What a figure is called, its formula with the numbers put in, its doubt and its source.
#[must_use]
pub fn explanation(scene: &Scene, figure: &str, at: usize) -> Markup {
    let Some(told) = explain(&Case { at, ..scene.case() }, figure) else { return html! {} };
    html! {
        p id="explanation-title" tabindex="-1" { (scene.tell(&told.name)) }
        (lines(scene, &told))
        button type="button" id="explanation-close" data-act="explain" {
            (scene.word("explain.close"))
        }
    }
}

fn lines(scene: &Scene, told: &Explanation) -> Markup {
    html! {
        ol class="steps" { @for line in &told.lines { li { (scene.tell(line)) } } }
        @if let Some(doubt) = &told.doubt { p class="doubt" { (scene.tell(doubt)) } }
        p class="source" { (scene.word("explain.source")) " " (scene.tell(&Say::source(told.source))) }
    }
}

/// Every figure of the book with its explanation, for paper.
#[must_use]
pub fn appendix(scene: &Scene) -> Markup {
    let case = scene.case();
    html! {
        h2 { (scene.word("explain.appendix")) }
        @for told in figures().filter_map(|figure| explain(&case, figure.id)) {
            section { h3 { (scene.tell(&told.name)) } (lines(scene, &told)) }
        }
    }
}
