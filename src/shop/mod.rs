//! The shop: its finishing lines, papers and sheets on hand, habits, and how its books fold.

mod demo;
mod dispatch;
mod fields;
mod figure;
mod read;

pub use demo::demo;
pub use dispatch::{Carton, PriceRule, Rates};
pub use fields::SCHEMA;
pub use read::{draft_of, read};

use crate::data::{Defaults, Line, PostStep, StageOvers};
use crate::paper::Stock;
use crate::units::Size;

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
