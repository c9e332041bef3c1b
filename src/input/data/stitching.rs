//! How a line stitches: heads' habits, wire on hand. Lengths in millimetres, masses in grams.

use crate::source::{Source, Sourced};

/// Wires a line keeps on hand, at most.
pub const MOST_WIRES: usize = 3;

/// The stitching of a line, apart from its limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stitching {
    /// The set lies against a stop at its foot; otherwise at its head.
    pub lay_at_foot: bool,
    /// Fewest stitches a copy gets.
    pub stitches_least: u32,
    /// Outer width of a stitch's crown.
    pub crown: f64,
    /// What each leg turns in beyond the stack.
    pub clinch: f64,
    /// Kept free between the end of a crown and any edge or cut.
    pub edge: f64,
    /// Wire that a loop takes beyond a flat stitch.
    pub loop_wire: f64,
    /// Diameters on hand; with none, every wire of the table is.
    pub wires: [Option<f64>; MOST_WIRES],
}

impl Stitching {
    /// What a line has that says nothing of its own: common practice; the loop is invented.
    pub const USUAL: Self = Self {
        lay_at_foot: false,
        stitches_least: 1,
        crown: 12.7,
        clinch: 3.0,
        edge: 5.0,
        loop_wire: 14.0,
        wires: [None; MOST_WIRES],
    };
}

/// The trade's numbers for stitches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StitchPractice {
    /// Longest spine that two stitches hold.
    pub two_up_to: Sourced<f64>,
    /// Longest spine that three stitches hold; beyond it four.
    pub three_up_to: Sourced<f64>,
    /// Largest share of the spine that may stand out beyond the outer stitch.
    pub overhang_most: Sourced<f64>,
    /// Pitch of loops, that of a binder's rings.
    pub loop_pitch: Sourced<f64>,
    /// Kept free of words between the end of a crown and spine text.
    pub text_clear: Sourced<f64>,
    /// How far a wire's diameter may be off the table's and still be that wire.
    pub same_wire: Sourced<f64>,
    /// Density of steel wire, grams a cubic centimetre.
    pub steel: Sourced<f64>,
}

/// The trade's numbers.
pub static STITCH_PRACTICE: StitchPractice = StitchPractice {
    two_up_to: Sourced::new(320.0, Source::Practice),
    three_up_to: Sourced::new(420.0, Source::Practice),
    overhang_most: Sourced::new(1.0 / 3.0, Source::Practice),
    loop_pitch: Sourced::new(80.0, Source::Memory),
    text_clear: Sourced::new(3.0, Source::Practice),
    same_wire: Sourced::new(0.005, Source::Practice),
    steel: Sourced::new(7.85, Source::Published { title: "EN 1991-1-1, A.4", year: 0 }),
};
