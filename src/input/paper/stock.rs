//! One paper as somebody described it.

use crate::data::{BasisSize, StockKind, UNSAID};
use crate::paper::Grain;
use crate::units::{Bulk, Gsm, Mm};

/// How the weight was given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Weight {
    /// In grams a square metre.
    Grammage(Gsm),
    /// As a basis weight in pounds, with the grade it is quoted for.
    Pounds(f64, &'static BasisSize),
}

/// How the thickness was given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Thickness {
    /// Not at all: the kind's band decides.
    FromKind,
    /// One leaf, from the mill or merchant.
    Caliper(Mm),
    /// Specific volume, from the mill or merchant.
    Bulk(Bulk),
    /// A pack of so many leaves, measured here.
    Pack {
        /// Leaves in the pack, two of them to a folded sheet.
        leaves: u32,
        /// Thickness of the pack.
        thickness: Mm,
    },
}

/// One paper: weight, kind, thickness, grain.
#[derive(Debug, Clone, PartialEq)]
pub struct Stock {
    /// What it is called: the shop's name for it, or what was typed.
    pub name: String,
    /// The text it was read from.
    pub typed: String,
    /// Its weight; nothing for board sold by thickness alone.
    pub weight: Option<Weight>,
    /// Its kind.
    pub kind: &'static StockKind,
    /// Its thickness.
    pub thickness: Thickness,
    /// Its grain.
    pub grain: Grain,
}

impl Stock {
    /// A paper of which only the weight is known.
    #[must_use]
    pub fn of_weight(grammage: Gsm) -> Self {
        Self {
            name: String::new(),
            typed: String::new(),
            weight: Some(Weight::Grammage(grammage)),
            kind: &UNSAID,
            thickness: Thickness::FromKind,
            grain: Grain::Unknown,
        }
    }
}
