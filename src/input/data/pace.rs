//! How fast a line works, what it spoils, and what makes it stop. Times in seconds unless named.

use crate::source::{Source, Sourced};

/// What a stage spoils: a share of what is fed to it, and a number to make ready with.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Overs {
    /// Share of what is fed, 0 … 1.
    pub share: f64,
    /// Sets (or sheets) spoilt before the first good one.
    pub fixed: f64,
}

impl Overs {
    /// From per cent and a number.
    #[must_use]
    pub const fn new(share: f64, fixed: f64) -> Self {
        Self { share, fixed }
    }
}

/// The stations of a line. Without any time given, the line's sets an hour count alone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pace {
    /// Stations work on different sets at the same time; otherwise one waits for the other.
    pub overlap: bool,
    /// The line's sets an hour count good sets rather than sets fed.
    pub counts_good: bool,
    /// One feeder that lays sheet after sheet: sheets an hour.
    pub feeder_sheets_hour: Option<f64>,
    /// Bins side by side that each give a sheet in every cycle.
    pub bins: Option<f64>,
    /// One cycle of the bins.
    pub gather: Option<f64>,
    /// One stroke of the heads.
    pub stroke: Option<f64>,
    /// Moving the set on to the next pass of the heads.
    pub index: Option<f64>,
    /// Folding a set.
    pub fold: Option<f64>,
    /// Pressing a spine square.
    pub form: Option<f64>,
    /// What each millimetre of closed thickness adds to it.
    pub form_mm: Option<f64>,
    /// Cutting.
    pub cut: Option<f64>,
    /// Delivering.
    pub stack: Option<f64>,
    /// A press in line: sheets an hour.
    pub press_sheets_hour: Option<f64>,
    /// What the line spoils.
    pub overs_share: f64,
    /// Sets it spoils before the first good one.
    pub overs_sets: f64,
}

impl Pace {
    /// Nothing known but the line's sets an hour; nothing spoilt.
    pub const PLAIN: Self = Self {
        overlap: true,
        counts_good: false,
        feeder_sheets_hour: None,
        bins: None,
        gather: None,
        stroke: None,
        index: None,
        fold: None,
        form: None,
        form_mm: None,
        cut: None,
        stack: None,
        press_sheets_hour: None,
        overs_share: 0.0,
        overs_sets: 0.0,
    };
    /// What the line spoils.
    #[must_use]
    pub const fn overs(&self) -> Overs {
        Overs::new(self.overs_share, self.overs_sets)
    }
}

/// What runs full or empty while the line works, and how long somebody is busy with it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Supplies {
    /// Copies the stacker holds.
    pub stacker_books: Option<f64>,
    /// Height of pile it holds, millimetres.
    pub stacker_height: Option<f64>,
    /// Minutes to empty it.
    pub stacker_minutes: f64,
    /// It can be emptied while the line runs.
    pub stacker_running: bool,
    /// Grams of chips the bin holds.
    pub chip_mass: Option<f64>,
    /// Litres of loose chips the bin holds.
    pub chip_litres: Option<f64>,
    /// Grams in a litre of loose chips.
    pub chip_density: f64,
    /// Minutes to empty it.
    pub chip_minutes: f64,
    /// It can be emptied while the line runs.
    pub chip_running: bool,
    /// Grams of wire on a full spool.
    pub spool_mass: Option<f64>,
    /// Minutes to change the spools of all heads, the line standing.
    pub spool_minutes: f64,
    /// Height of paper a bin or feeder takes, millimetres.
    pub load_height: Option<f64>,
    /// Minutes to load paper.
    pub load_minutes: f64,
    /// Paper can be loaded while the line runs.
    pub load_running: bool,
}

/// Grams in a litre of loose chips where a shop has not weighed its own. Invented: weigh a bin.
pub static LOOSE_CHIPS: Sourced<f64> = Sourced::new(120.0, Source::Invented);

impl Supplies {
    /// Nothing ever runs full or empty.
    pub const ENDLESS: Self = Self {
        stacker_books: None,
        stacker_height: None,
        stacker_minutes: 0.0,
        stacker_running: false,
        chip_mass: None,
        chip_litres: None,
        chip_density: LOOSE_CHIPS.value,
        chip_minutes: 0.0,
        chip_running: false,
        spool_mass: None,
        spool_minutes: 0.0,
        load_height: None,
        load_minutes: 0.0,
        load_running: false,
    };
}

/// What the stages before and after the line spoil.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct StageOvers {
    /// Printing, sheets of each component.
    pub print: Overs,
    /// Creasing a cover before the line.
    pub crease: Overs,
    /// Cutting after the line.
    pub cut: Overs,
}
