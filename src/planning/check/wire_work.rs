//! The stack lies outside the work that the wire's maker suggests. Ranges rank and warn; they never refuse.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "wire_work";

pub fn look(_: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let wire = &results.stitches.wire;
    let (least, most) = wire.suggested.filter(|_| !wire.within)?;
    let flat = results.stack.flat.nominal.0;
    let case = if flat < least { "thin" } else { "thick" };
    Some(
        Finding::new(ID, case, Weight::Warning)
            .with("flat", flat)
            .with("wire", wire.diameter)
            .with("least", least)
            .with("most", most),
    )
}
