//! The bank card in everybody's pocket: a measure for the screen.

use crate::source::Source;
use crate::units::Mm;

/// A card's sizes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Card {
    /// Long edge.
    pub long: Mm,
    /// Short edge.
    pub short: Mm,
    /// Radius of its corners.
    pub corner: Mm,
    /// Thickness.
    pub thick: Mm,
    /// Where these come from.
    pub source: Source,
}

/// ID-1, the size of bank cards; the corner from memory of the same standard.
pub static CARD: Card = Card {
    long: Mm(85.60),
    short: Mm(53.98),
    corner: Mm(3.18),
    thick: Mm(0.76),
    source: Source::Published { title: "ISO/IEC 7810, ID-1", year: 2019 },
};
