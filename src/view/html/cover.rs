//! The outermost sheet, flat: what a designer draws.

use super::Scene;
use crate::drawing::{Kept, flat_cover};
use crate::units::{Band, Mm};
use crate::words::say;
use maud::{Markup, html};

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
        (true, _) => say("cover.crease.two").put("offset", cover.crease_offset),
    };
    let (bleed, safe) = (scene.job.bleed, scene.job.safe);
    let kept = Kept { kind: scene.outer_kind(), bleed, safe };
    let drawing = flat_cover(scene.plan, &kept, scene.screen.room);
    html! {
        (scene.drawn(&drawing, Some("drawing.cover.note")))
        dl class="list" {
            (scene.row("cover.spine", Some("spine"), cover.spine.map(|spine| spine.0)))
            (scene.row("cover.open", Some("cover_open"), Band::exact(cover.open.width)))
            (scene.row("cover.height", None, Band::exact(cover.open.height)))
            @if scene.job.bleed.is_some() {
                (scene.row("cover.bleed-width", None, Band::exact(cover.with_bleed.width)))
                (scene.row("cover.bleed-height", None, Band::exact(cover.with_bleed.height)))
            }
            @if cover.wants_crease {
                (scene.row("cover.channel-along", None, Band::exact(cover.channel.0)))
                (scene.row("cover.channel-across", None, Band::exact(cover.channel.1)))
            }
            @if cover.text_room > Mm::ZERO {
                (scene.row("cover.text-room", None, Band::exact(cover.text_room)))
            }
        }
        p { (scene.tell(&creases)) }
        @if cover.text_room == Mm::ZERO { p { (scene.word("cover.no-text")) } }
    }
}
