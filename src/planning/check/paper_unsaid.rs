//! Nobody has said what kind of paper it is, so its thickness is hardly known.

use super::{Finding, Weight};
use crate::data::UNSAID;
use crate::job::{Job, Role};
use crate::paper::Thickness;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "paper_unsaid";

pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let guessed = job.sections.iter().find(|section| {
        section.stock.kind.id == UNSAID.id && section.stock.thickness == Thickness::FromKind
    })?;
    let case = if guessed.role == Role::Cover { "cover" } else { "inside" };
    let spine = results.stack.closed.map(|closed| closed.0.get());
    Some(Finding::new(ID, case, Weight::Warning).with_band(
        "spine",
        spine,
        crate::units::Unit::Length,
    ))
}
