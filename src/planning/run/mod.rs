//! The run: what to feed, how fast, what stops it, how long it takes.

mod clock;
mod overs;
mod pace;
mod set_up;
mod supplies;

pub use clock::{Times, times};
pub use overs::{Component, Quantities, good, gross, quantities};
pub use pace::{Pacing, STATIONS, Station, pacing};
pub use set_up::{SetUp, set_up};
pub use supplies::{Consumed, SUPPLIES, Stop, Supply, consumed, stops};

use crate::book::{CoverPlan, Leaf, Stack, Trim};
use crate::data::Line;
use crate::finishing::Stitches;
use crate::job::Job;
use crate::shop::Shop;

/// The run of a job.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Run {
    /// How many sets.
    pub quantities: Quantities,
    /// How fast.
    pub pacing: Pacing,
    /// Wire and chips.
    pub consumed: Consumed,
    /// What runs full or empty, first come first.
    stops: [Option<Stop>; SUPPLIES],
    /// How long.
    pub times: Times,
    /// What an operator sets.
    pub set_up: SetUp,
}

impl Run {
    /// What runs full or empty, first come first; those that never do during this run too.
    pub fn stops(&self) -> impl Iterator<Item = &Stop> {
        self.stops.iter().flatten()
    }
}

/// The book as it comes onto the line.
#[derive(Debug, Clone, Copy)]
pub struct Book<'a> {
    /// Thickness.
    pub stack: &'a Stack,
    /// Every sheet.
    pub leaves: &'a [Leaf],
    /// The cut.
    pub trim: &'a Trim,
    /// The outermost sheet.
    pub cover: &'a CoverPlan,
    /// Stitches and wire.
    pub stitches: &'a Stitches,
}

/// Works out the run; what stood in `out` is replaced.
pub fn run(job: &Job, shop: &Shop, line: &Line, book: &Book, out: &mut Run) {
    quantities(job, line, &shop.overs, book.cover, &mut out.quantities);
    let passes = book.stitches.placement.passes;
    out.pacing = pacing(job, line, book.stack.closed.nominal, passes);
    let fed = out.quantities.fed;
    out.consumed = consumed(job, line, (book.leaves, book.trim), book.stitches, fed);
    let met = (&out.quantities, &out.consumed);
    out.stops = stops(job, line, book.stack, book.stitches, met, out.pacing.interval);
    out.times = times(line, &out.quantities, &out.pacing, out.stops.iter().flatten(), job.start);
    let stops = out.stops.iter().flatten();
    out.set_up = set_up(job, book.stack, book.trim, stops);
}
