//! What to trim: the cut, the chips, the untrimmed sheet, the knife.

use super::Scene;
use crate::job::HeadFoot;
use crate::words::say;
use maud::{Markup, html};

/// Its figures.
const ROWS: [&str; 12] = [
    "face_cut",
    "outermost_chip",
    "innermost_chip",
    "knife_spine",
    "knife_face",
    "flat_width",
    "flat_height",
    "travel",
    "face_bleed",
    "fold_gap",
    "fold_overlap",
    "chips",
];

/// One line: the cut and the untrimmed size.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    let trim = &scene.plan.results.trim;
    scene.tell(
        &say("trim.summary")
            .put("cut", trim.face_cut)
            .put("width", trim.flat.width)
            .put("height", trim.flat.height),
    )
}

/// Every figure of the cut that the reader may see.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let head_foot = match scene.job.head_foot {
        HeadFoot::OnLine => "trim.head-foot.on-line",
        HeadFoot::Before => "trim.head-foot.before",
        HeadFoot::After => "trim.head-foot.after",
    };
    html! {
        dl class="list" {
            @for id in ROWS { (scene.row(id)) }
        }
        p { (scene.word(head_foot)) }
    }
}
