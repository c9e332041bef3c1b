//! The book on the line: stitches and wire, and a value beside every limit.

mod limits;
mod room;
mod stitch;
mod wire;

pub use limits::{Answer, LIMITS, LimitCheck, LimitId, check_limits};
pub use room::Room;
pub use stitch::{Move, Placed, Placement, Stitch, place, usual_count};
pub use wire::{Wire, draw, leg, wire, wire_mass};

use crate::book::{Stack, Trim};
use crate::data::Line;
use crate::job::Job;

/// Stitches and wire of a job.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Stitches {
    /// Where they go.
    pub placement: Placement,
    /// What they are made of.
    pub wire: Wire,
}

/// Works out stitches and wire of a job on a line; what stood in `out` is replaced.
pub fn stitches(job: &Job, line: &Line, stack: &Stack, trim: &Trim, out: &mut Stitches) {
    place(job, line, trim, &mut out.placement);
    out.wire = wire(job, line, stack.flat, out.placement.per_copy);
}
