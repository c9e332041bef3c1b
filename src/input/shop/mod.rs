//! The shop: its finishing lines, papers and sheets on hand, habits, and how its books fold.

mod demo;
mod dispatch;
mod fields;
mod figure;
mod press;
mod read;

pub use demo::demo;
pub use dispatch::{Carton, PriceRule, Rates};
pub use fields::SCHEMA;
pub use read::{draft_of, read};

use crate::data::{Defaults, Line, PostStep, StageOvers};
use crate::paper::Stock;
use crate::units::{Mm, Money, Size};

/// A shop as the planner sees it: complete and valid.
#[derive(Debug, Clone, PartialEq)]
pub struct Shop {
    /// Its name.
    pub name: String,
    /// A remark of its own.
    pub note: String,
    /// Finishing lines; at least one. The first is taken when a job names none.
    pub lines: Vec<Line>,
    /// Papers it keeps, by its own names.
    pub stocks: Vec<Stock>,
    /// Press sheets on hand.
    pub press_sheets: Vec<PressSheet>,
    /// Bleed, margins, tolerances and trims unless a job says otherwise.
    pub defaults: Defaults,
    /// What printing, creasing and cutting spoil.
    pub overs: StageOvers,
    /// How it packs.
    pub carton: Carton,
    /// The postal table, cheapest step first.
    pub post: Vec<PostStep>,
    /// What it reckons with.
    pub rates: Rates,
    /// How round books fold here, measured on a dummy.
    pub round_fold: Option<Calibration>,
    /// How square-backed books fold here, measured on a dummy.
    pub square_fold: Option<Calibration>,
}

/// A press sheet on hand.
#[derive(Debug, Clone, PartialEq)]
pub struct PressSheet {
    /// What the shop calls it.
    pub name: String,
    /// Its size.
    pub size: Size,
    /// Left blank where the press grips it.
    pub gripper: Mm,
    /// Left blank at the other three edges.
    pub margin: Mm,
    /// It travels with a long side in front; otherwise with a short one.
    pub long_side_leads: bool,
    /// Which way the fibres run, as its label marks it.
    pub grain: SheetGrain,
    /// A thousand sheets, where the shop buys them by the thousand.
    pub thousand: Option<Money>,
    /// One printed side of it; the shop's rate where nothing is said.
    pub click: Option<Money>,
    /// Thousands on hand, where they are counted.
    pub thousands_on_hand: Option<f64>,
}

/// Fibre direction of a press sheet, as its label marks it. Never inferred from the order in which its
/// sides are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum SheetGrain {
    /// The label does not say.
    #[default]
    Unknown,
    /// Parallel to the long side.
    Long,
    /// Parallel to the short side.
    Short,
}

/// A fold factor measured on a dummy: push-out divided by the stack step it rose over.
#[derive(Debug, Clone, PartialEq)]
pub struct Calibration {
    /// The factor.
    pub factor: f64,
    /// How far it may be off, either way.
    pub error: f64,
    /// On which dummy and when.
    pub note: String,
}

impl Shop {
    /// A line by its name.
    #[must_use]
    pub fn line(&self, name: &str) -> Option<usize> {
        self.lines.iter().position(|line| line.name == name)
    }
}
