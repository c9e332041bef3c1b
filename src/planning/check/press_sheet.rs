//! No press sheet on hand holds the flat sheet, or not the one that was asked for.

use super::{Finding, Weight};
use crate::job::Job;
use crate::layout::Refusal;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "press_sheet";

pub fn look(_: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let layout = &results.layout;
    let (way, asked) = match layout.chosen() {
        Some(way) => (way, true),
        None => (layout.best()?, false),
    };
    let (by, case) = match (way.refusal?, asked) {
        (Refusal::Small(by), false) => (by, "small"),
        (Refusal::Small(by), true) => (by, "asked-small"),
        (Refusal::Edges(by), false) => (by, "edges"),
        (Refusal::Edges(by), true) => (by, "asked-edges"),
        _ => return None,
    };
    Some(
        Finding::new(ID, case, Weight::Warning)
            .with("by", by)
            .with("width", results.trim.flat.width)
            .with("height", results.trim.flat.height),
    )
}
