//! Why a figure is what it is: formula, the numbers put in, the band, the source.
//!
//! Built when somebody asks, never while planning.

mod figures;
mod making;
mod money;
mod sheet;

pub use figures::{Explain, FIGURES, explain, explain_to_client};

use crate::source::Source;
use crate::words::Say;

/// The explanation of one figure.
#[derive(Debug, Clone, PartialEq)]
pub struct Explanation {
    /// The figure's id.
    pub figure: &'static str,
    /// What it is, in a sentence.
    pub what: Say,
    /// The formula with its numbers, line by line.
    pub lines: Vec<Say>,
    /// Why it is in doubt, where it is.
    pub doubt: Option<Say>,
    /// Where the formula comes from.
    pub source: Source,
}
