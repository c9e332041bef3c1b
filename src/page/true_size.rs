//! The screen: how wide it is, and how large a millimetre is on it, told by a bank card.

use super::event::Patch;
use super::session::Session;
use crate::drawing::Room;
use crate::view::html::{self, CARD_PIXELS};

/// Up to this width, in pixels of a style sheet, drawings are laid out for a phone.
const NARROW: u32 = 640;

/// Reads the pixels that a card's long edge takes; nothing where no screen is like that.
pub(super) fn card_pixels(text: &str) -> Option<u32> {
    let (least, most) = CARD_PIXELS;
    text.parse().ok().filter(|pixels| (least..=most).contains(pixels))
}

impl Session {
    /// The page has become so many pixels wide.
    pub(super) fn width(&mut self, pixels: &str, out: &mut Vec<Patch>) {
        let Ok(pixels) = pixels.parse::<u32>() else { return };
        let room = if pixels < NARROW { Room::Narrow } else { Room::Wide };
        if self.screen.room != room {
            self.screen.room = room;
            self.paint_drawings(out);
            out.push(Patch::Later {});
        }
    }

    /// The card's long edge was dragged to so many pixels.
    pub(super) fn card(&mut self, pixels: &str, out: &mut Vec<Patch>) {
        if let Some(pixels) = card_pixels(pixels) {
            self.measured(Some(pixels), out);
        }
    }

    /// A button under the card: a pixel less or more, or the measure forgotten.
    pub(super) fn card_by(&mut self, step: &str, out: &mut Vec<Patch>) {
        let (least, most) = CARD_PIXELS;
        let now = self.screen.card_pixels().round() as u32;
        let card = match step {
            "-1" => Some((now - 1).max(least)),
            "1" => Some((now + 1).min(most)),
            _ => None,
        };
        self.measured(card, out);
        out.push(self.card_value());
    }

    /// Where the slider under the card stands.
    pub(super) fn card_value(&self) -> Patch {
        let text = (self.screen.card_pixels().round() as u32).to_string();
        Patch::Value { id: "card".to_owned(), text }
    }

    fn measured(&mut self, card: Option<u32>, out: &mut Vec<Patch>) {
        self.screen.card = card;
        self.paint_true_size(out);
        out.push(Patch::Later {});
    }

    /// The drawings that always stand in the page.
    pub(super) fn paint_drawings(&mut self, out: &mut Vec<Patch>) {
        if let Some(scene) = self.scene() {
            let picture = html::picture(&scene).into_string();
            self.set_html("picture", picture, out);
        }
        self.paint_true_size(out);
    }

    fn paint_true_size(&mut self, out: &mut Vec<Patch>) {
        if let Some(scene) = self.scene() {
            let book = html::true_size(&scene).into_string();
            self.set_html("true-size", book, out);
        }
        let card = html::card_outline(&self.printer(), &self.screen).into_string();
        self.set_html("card", card, out);
    }
}
