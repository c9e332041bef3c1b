//! The book in its true size, and a bank card to measure the screen with.

use super::Scene;
use crate::drawing::card;
use crate::view::{Printer, Screen, pictures, svg};
use maud::{Markup, html};

/// Pixels that a card's long edge may take: from a large, far screen to a small, fine one.
pub const CARD_PIXELS: (u32, u32) = (120, 900);

/// What stands in the page from the start: places for book and card, and the controls, which are
/// never replaced while somebody drags or holds them.
#[must_use]
pub fn calibration(printer: &Printer, screen: &Screen) -> Markup {
    let (least, most) = CARD_PIXELS;
    let step = |id, key, sign, by| {
        html! {
            button type="button" id=(id) data-act="card" data-value=(by)
                aria-label=(printer.word(key)) { (sign) }
        }
    };
    html! {
        details class="more" id="measure-screen" {
            summary { (printer.word("true-size.measure")) }
            p { (printer.word("true-size.how")) }
            div id="card" { (card_outline(printer, screen)) }
            p class="card-size" {
                label for="input-card" { (printer.word("true-size.edge")) }
                (step("card-less", "true-size.card-less", "−", "-1"))
                input type="range" id="input-card" name="card" min=(least) max=(most) step="1"
                    value=(screen.card_pixels().round() as u32);
                (step("card-more", "true-size.card-more", "+", "1"))
            }
            p { button type="button" id="card-forget" data-act="card" { (printer.word("true-size.forget")) } }
        }
    }
}

/// The outline of a card as large as the screen is thought to show it.
#[must_use]
pub fn card_outline(printer: &Printer, screen: &Screen) -> Markup {
    svg::sized(&card(screen.room), printer, Some(screen.millimetre()))
}

/// The book in its true size.
#[must_use]
pub fn true_size(scene: &Scene) -> Markup {
    let drawing = pictures::drawn(scene, "true-size-drawn", scene.screen.room);
    let Some(drawing) = drawing else { return html! {} };
    let size = match (scene.screen.paper, scene.screen.card) {
        (true, _) => "true-size.paper",
        (false, Some(_)) => "true-size.true",
        (false, None) => "true-size.about",
    };
    html! {
        figure {
            (svg::sized(&drawing, &scene.printer, Some(scene.screen.millimetre())))
            figcaption {
                (scene.word(size)) " "
                (scene.tell(&drawing.title))
                (pictures::saved_by(scene, &drawing))
            }
        }
    }
}
