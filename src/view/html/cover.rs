//! The outermost sheet, flat: what a designer draws.

use super::Scene;
use crate::units::Mm;
use crate::words::say;
use maud::{Markup, html};

/// Its figures.
const ROWS: [&str; 8] = [
    "spine",
    "cover_open",
    "cover_height",
    "bleed_width",
    "bleed_height",
    "channel_along",
    "channel_across",
    "text_room",
];

/// One line: open size and spine.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    let cover = &scene.plan.results.cover;
    scene.tell(
        &say("cover.summary")
            .put("width", cover.open.width)
            .put("height", cover.open.height)
            .put("spine", cover.spine.nominal.0),
    )
}

/// Open size, bleed, spine, creases, words on the spine.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let cover = &scene.plan.results.cover;
    let creases = match (cover.wants_crease, cover.creases) {
        (false, _) => say("cover.crease.none"),
        (true, 1) => say("cover.crease.one"),
        (true, _) => scene.case().fill(say("cover.crease.two"), &[("offset", "crease_offset", 0)]),
    };
    html! {
        (scene.drawn("flat-cover", Some("drawing.cover.note")))
        dl class="list" {
            @for id in ROWS { (scene.row(id)) }
        }
        p { (scene.tell(&creases)) }
        @if cover.text_room == Mm::ZERO { p { (scene.word("cover.no-text")) } }
    }
}
