//! The panel that explains one figure.

use super::Scene;
use crate::explain::{explain, explain_to_client};
use crate::view::Reading;
use crate::words::Say;
use maud::{Markup, html};

/// What a figure is, its formula with the numbers put in, its doubt and its source.
#[must_use]
pub fn explanation(scene: &Scene, figure: &str) -> Markup {
    let told = match scene.reading {
        Reading::Client => explain_to_client(scene.job, scene.plan, figure),
        Reading::Design | Reading::Floor => explain(scene.job, scene.plan, figure),
    };
    let Some(told) = told else { return html! {} };
    html! {
        h2 id="explanation-title" tabindex="-1" { (scene.tell(&told.what)) }
        ol class="steps" { @for line in &told.lines { li { (scene.tell(line)) } } }
        @if let Some(doubt) = &told.doubt { p class="doubt" { (scene.tell(doubt)) } }
        p class="source" { (scene.word("explain.source")) " " (scene.tell(&Say::source(told.source))) }
        button type="button" id="explanation-close" data-act="explain" data-value="" {
            (scene.word("explain.close"))
        }
    }
}
