//! Wire thicker than the book: it stands proud, bundles lean, and it is not for inserting.

use super::{Finding, Weight};
use crate::job::Job;
use crate::results::Results;
use crate::shop::Shop;

pub const ID: &str = "wire_proud";

pub fn look(_: &Job, _: &Shop, results: &Results) -> Option<Finding> {
    let (wire, spine) = (results.stitches.wire.diameter, results.stack.closed.nominal.0);
    (wire > spine)
        .then(|| Finding::new(ID, "found", Weight::Note).with("wire", wire).with("spine", spine))
}
