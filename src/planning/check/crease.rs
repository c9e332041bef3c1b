//! The outermost stock cracks at the fold unless it is creased first.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;
use crate::units::Measure;

pub const ID: &str = "crease";

pub fn look(job: &Job, shop: &Shop, results: &Results) -> Option<Finding> {
    if !results.cover.wants_crease {
        return None;
    }
    let on_line = shop.lines.get(job.line).is_some_and(|line| line.creases);
    let (case, weight) =
        if on_line { ("on-line", Weight::Note) } else { ("before", Weight::Warning) };
    let grammage = job.sections.first()?.grammage?.nominal;
    Some(
        Finding::new(ID, case, weight)
            .with("grammage", grammage)
            .with("along", results.cover.channel.0)
            .with("across", results.cover.channel.1)
            .with("creases", Measure::count(results.cover.creases)),
    )
}
