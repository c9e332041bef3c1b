//! Too few sets of a section have come in: the shortest decides how many copies can be made.

use super::{Finding, Weight};
use crate::job::{Job, Role};
use crate::results::Results;
use crate::shop::Shop;
use crate::units::Measure;

pub const ID: &str = "short_component";

pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let quantities = &results.run.quantities;
    let short = quantities.short?;
    let case = match job.sections.get(short)?.role {
        Role::Cover => "cover",
        Role::Inside => "inside",
        Role::Insert => "insert",
    };
    Some(
        Finding::new(ID, case, Weight::Warning)
            .with("supplied", Measure::count(quantities.fed))
            .with("needed", Measure::count(quantities.needed))
            .with("good", quantities.good)
            .with("copies", job.copies?),
    )
}
