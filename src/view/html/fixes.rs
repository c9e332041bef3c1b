//! What would make it fit, or what else would work: ways that pass, to be taken with one tap.

use super::Scene;
use crate::advise::{Offer, only_just};
use crate::plan::Verdict;
use crate::view::text::{gain, turned_round, way};
use crate::view::{Printer, Reading};
use crate::words::{Say, say};
use maud::{Markup, html};

/// The act that takes an offer back, and its button.
pub const BACK: &str = "take-back";

/// The heading's key: another one where the book fits as it stands.
#[must_use]
pub fn heading(scene: &Scene) -> &'static str {
    match scene.plan.verdict {
        Verdict::Fits => "fixes.else",
        _ => "region.fixes",
    }
}

/// The offers this reader may see: a client's speak only of pages, papers and size.
#[must_use]
pub fn offers<'a>(scene: &Scene<'a>) -> &'a [Offer] {
    match scene.reading {
        Reading::Client => &scene.advice.for_client,
        Reading::Design | Reading::Floor => &scene.advice.offers,
    }
}

/// One line: the least change.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    scene.tell(&told(scene))
}

fn told(scene: &Scene) -> Say {
    let fits = scene.plan.verdict == Verdict::Fits;
    match offers(scene).first() {
        Some(offer) if fits => say("fixes.also").say("way", way(offer)),
        Some(offer) => say("fixes.least").say("way", way(offer)),
        None if scene.advice.inverse.is_none() => say("fixes.looking"),
        None if fits => say("fixes.none.else"),
        None => say("fixes.none"),
    }
}

/// Every way as a button, and the questions turned round.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let dummy = |offer: &Offer| offer.edits.iter().any(|(path, _)| path.starts_with("dummy_"));
    let shown = offers(scene);
    html! {
        @if only_just(shown) { p class="only-just" { (scene.word("fixes.only-just")) } }
        @if shown.is_empty() {
            p { (scene.tell(&told(scene))) }
        } @else {
            p class="hint" { (scene.word("fixes.hint")) }
            ul class="fixes" {
                @for (place, offer) in shown.iter().enumerate() {
                    li {
                        button type="button" class="fix" id={ "fix-" (place) } data-act="apply"
                            data-value=(place) { (scene.tell(&way(offer))) }
                        " " span class="gain" { (scene.tell(&told_gain(scene, place, offer))) }
                    }
                }
            }
            @if shown.iter().any(dummy) {
                p class="hint" { (scene.word("fixes.dummy")) }
            }
        }
        // How far this line goes is not for a client.
        @if scene.reading != Reading::Client {
            @for line in turned_round(&scene.case()) { p { (scene.tell(&line)) } }
        }
    }
}

/// The way that was taken last, and the way back.
#[must_use]
pub fn taken(offer: &Offer, printer: &Printer) -> Markup {
    html! {
        p {
            (printer.html(&say("fixes.taken").say("way", way(offer)))) " "
            button type="button" id=(BACK) data-act=(BACK) { (printer.word("fixes.back")) }
        }
    }
}

fn told_gain(scene: &Scene, place: usize, offer: &Offer) -> Say {
    let plain = match scene.reading {
        Reading::Client => say("fixes.gain"),
        Reading::Design | Reading::Floor => say(gain(offer).key),
    };
    let at = place + 1;
    scene.case().fill(plain, &[("spine", "offer_spine", at), ("pages", "offer_room", at)])
}
