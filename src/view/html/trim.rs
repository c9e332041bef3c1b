//! What to trim: the cut, the chips, the untrimmed sheet, the knife.

use super::Scene;
use crate::job::HeadFoot;
use crate::units::{Band, Mm};
use crate::view::Reading;
use crate::words::say;
use maud::{Markup, html};

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

/// Every figure of the cut. With its tolerance the outermost chip is the least that the line cuts
/// clean, and where the knife stands is the operator's: a client reads neither.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let results = &scene.plan.results;
    let (trim, margins, job) = (&results.trim, &results.margins, scene.job);
    let head_foot = match job.head_foot {
        HeadFoot::OnLine => "trim.head-foot.on-line",
        HeadFoot::Before => "trim.head-foot.before",
        HeadFoot::After => "trim.head-foot.after",
    };
    let makers = scene.reading != Reading::Client;
    html! {
        dl class="list" {
            (scene.row("trim.cut", Some("face_cut"), Band::exact(trim.face_cut)))
            @if makers {
                (scene.row("trim.outermost", None, trim.outermost_chip))
                (scene.row("trim.innermost", None, trim.innermost_chip))
                (scene.row("trim.knife-spine", None, Band::exact(job.size.width)))
                (scene.row("trim.knife-face", None, Band::exact(trim.knife_from_face)))
            }
            (scene.row("trim.flat-width", Some("untrimmed"), Band::exact(trim.flat.width)))
            (scene.row("trim.flat-height", None, Band::exact(trim.flat.height)))
            (scene.row("trim.travel", None, Band::exact(trim.travel_height)))
            (scene.row("trim.bleed", None, Band::exact(margins.face_bleed)))
            @if margins.fold_gap > Mm::ZERO {
                (scene.row("trim.gap", None, Band::exact(margins.fold_gap)))
            }
            @if margins.fold_overlap > Mm::ZERO {
                (scene.row("trim.overlap", None, Band::exact(margins.fold_overlap)))
            }
            @if let Some(mass) = results.mass {
                (scene.row("trim.chips", None, Band::exact(mass.chips)))
            }
        }
        p { (scene.word(head_foot)) }
    }
}
