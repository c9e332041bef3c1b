//! Which postal step a copy goes by, with its wrapper.

use crate::data::{PostStep, Range};
use crate::finishing::Answer;
use crate::job::Job;
use crate::units::{Band, ClosedThickness, Gram};

/// A copy as it is posted.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Posted {
    /// Copy and wrapper.
    pub mass: Band<Gram>,
    /// How each step of the shop's table answers, in its order.
    pub steps: Vec<StepAnswer>,
    /// The first step that takes the copy over its whole band.
    pub goes_by: Option<usize>,
    /// The first step that takes it at all; another than `goes_by` when a slightly heavier lot
    /// moves it up.
    pub perhaps_by: Option<usize>,
}

/// How one step answers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StepAnswer {
    /// Whether it takes the copy.
    pub answer: Answer,
    /// Mass left to its limit at the high end; negative beyond. Nothing without a limit.
    pub spare: Option<Gram>,
}

/// The postal steps for one copy; nothing when its mass is not known or the table is empty.
///
/// Mass counts with the wrapper, thickness at its high end; edges are the finished book's. `earlier`
/// is what an earlier plan found: its list is used again.
#[must_use]
pub fn post(
    job: &Job,
    steps: &[PostStep],
    copy: Option<Band<Gram>>,
    closed: Band<ClosedThickness>,
    earlier: Option<Posted>,
) -> Option<Posted> {
    let mass = copy?.shifted(job.wrapper);
    if steps.is_empty() {
        return None;
    }
    let mut answers = earlier.map(|posted| posted.steps).unwrap_or_default();
    answers.clear();
    let up_to = |most| Range { least: None, most };
    let longer = job.size.width.max(job.size.height).get();
    let shorter = job.size.width.min(job.size.height).get();
    let thick = closed.map(|closed| closed.0.get());
    let heavy = mass.map(Gram::get);
    answers.extend(steps.iter().map(|step| {
        StepAnswer {
            answer: [
                Answer::of(heavy, up_to(step.mass_most)),
                Answer::of(thick, up_to(step.thickness_most)),
                Answer::of(Band::exact(longer), up_to(step.length_most)),
                Answer::of(Band::exact(shorter), up_to(step.width_most)),
            ]
            .into_iter()
            .max()
            .unwrap_or_default(),
            spare: step.mass_most.map(|most| Gram(most - heavy.high)),
        }
    }));
    let first = |takes: fn(Answer) -> bool| answers.iter().position(|step| takes(step.answer));
    Some(Posted {
        mass,
        goes_by: first(|answer| answer == Answer::Fits),
        perhaps_by: first(|answer| answer < Answer::DoesNotFit),
        steps: answers,
    })
}
