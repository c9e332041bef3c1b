//! The first book off the machine beside the plan: what to correct before the run.

use super::Stack;
use super::calibrate::{measure_factor, whole_step};
use crate::job::Job;
use crate::units::{ClosedThickness, Mm};

/// What the first book tells.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct FirstOff {
    /// Measured closed thickness less the planned.
    pub thicker: Option<Mm>,
    /// The measured thickness lies within the planned band.
    pub within: bool,
    /// Fold factor that the push-out gives, and its error.
    pub factor: Option<(f64, f64)>,
    /// How far to move the knife outward (positive) or inward for the planned width.
    pub knife: Option<Mm>,
}

/// Compares the first book with the plan. The knife moves by the planned width less the measured.
#[must_use]
pub fn first_off(job: &Job, stack: &Stack) -> FirstOff {
    let measured = &job.first_off;
    let closed = measured.closed.map(ClosedThickness);
    FirstOff {
        thicker: closed.map(|closed| closed.0 - stack.closed.nominal.0),
        within: closed
            .is_some_and(|closed| closed >= stack.closed.low && closed <= stack.closed.high),
        factor: measured
            .push_out
            .and_then(|push_out| measure_factor(push_out, whole_step(job, stack))),
        knife: measured.width.map(|width| job.size.width - width),
    }
}
