//! The screen that a page stands on: how wide, and how large a millimetre is on it.

use crate::data::CARD;
use crate::drawing::Room;

/// Pixels of a style sheet in an inch, on a screen that nobody has measured.
const PIXELS_PER_INCH: f64 = 96.0;

/// What is known of a screen.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Screen {
    /// Room for drawings.
    pub room: Room,
    /// Pixels along the long edge of a bank card, where somebody has held one to the screen.
    pub card: Option<u32>,
    /// It is no screen but the paper that the page is printed on.
    pub paper: bool,
}

impl Screen {
    /// Pixels along the long edge of a bank card, measured or assumed.
    #[must_use]
    pub fn card_pixels(&self) -> f64 {
        self.card.map_or(CARD.long.inches() * PIXELS_PER_INCH, f64::from)
    }
    /// The sheet of paper that the page is printed on, in two columns; a card that was held to the
    /// screen tells nothing of that.
    #[must_use]
    pub const fn on_paper(self) -> Self {
        Self { room: Room::Narrow, card: None, paper: true }
    }
    /// Pixels that a millimetre takes.
    #[must_use]
    pub fn millimetre(&self) -> f64 {
        self.card_pixels() / CARD.long.get()
    }
}
