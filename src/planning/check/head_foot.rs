//! The line cuts only the face: head and foot are somebody else's step.

use super::{Finding, Weight};
use crate::job::{HeadFoot, Job};
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "head_foot";

pub fn look(job: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let case = match job.head_foot {
        HeadFoot::OnLine => return None,
        HeadFoot::Before => "before",
        HeadFoot::After => "after",
    };
    Some(
        Finding::new(ID, case, Weight::Note)
            .with("printed", results.trim.flat.height)
            .with("travel", results.trim.travel_height)
            .with("height", job.size.height),
    )
}
