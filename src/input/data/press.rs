//! What presses leave blank at the edges of a sheet, and what a printed side costs the demo shop.

use crate::source::{Source, Sourced};
use crate::units::Mm;

/// Edges that a press cannot print, for sheets of one class.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PressPractice {
    /// Sheets whose long side is at most so long belong to the class.
    pub long_side_most: Mm,
    /// Left blank where the press grips the sheet.
    pub gripper: Sourced<Mm>,
    /// Left blank at the other three edges.
    pub margin: Sourced<Mm>,
    /// The sheet travels with a long side in front; otherwise with a short one.
    pub long_side_leads: bool,
    /// One printed side at the demo shop, in its own currency. Invented.
    pub demo_click: f64,
}

const USUAL: Source = Source::Practice;

const fn class(
    long_side: f64,
    gripper: f64,
    margin: f64,
    long_side_leads: bool,
    demo_click: f64,
) -> PressPractice {
    PressPractice {
        long_side_most: Mm(long_side),
        gripper: Sourced::new(Mm(gripper), USUAL),
        margin: Sourced::new(Mm(margin), USUAL),
        long_side_leads,
        demo_click,
    }
}

/// Classes of press sheets, smallest first; the last takes any size. Common practice: small presses
/// take the short side first and leave a few millimetres, large ones grip the long side.
pub static PRESS_PRACTICE: [PressPractice; 4] = [
    class(330.0, 5.0, 4.0, false, 0.018),
    class(488.0, 5.0, 4.0, false, 0.035),
    class(660.0, 10.0, 5.0, true, 0.070),
    class(f64::INFINITY, 12.0, 5.0, true, 0.140),
];

/// A press sheet of the demo shop whose label says more than its size. Invented.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DemoLabel {
    /// Which.
    pub name: &'static str,
    /// The fibres run parallel to the long side; otherwise to the short one.
    pub grain_long: bool,
    /// Thousands on hand.
    pub thousands: f64,
}

/// The one package in the demo shop that somebody has read and counted.
pub static DEMO_LABELS: [DemoLabel; 1] =
    [DemoLabel { name: "13 × 19 in", grain_long: true, thousands: 4.0 }];
