//! The same book bound otherwise: possible or not, and why.

use super::scratch::other_spine;
use crate::check::Verdict;
use crate::data::{BINDINGS, PRACTICE, Range};
use crate::job::{Job, Spine};
use crate::plan::{Plan, plan};
use crate::shop::Shop;
use crate::units::Mm;

/// One way of binding beside the book.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Binding {
    /// Its name in language keys.
    pub id: &'static str,
    /// Whether the book can be bound so.
    pub verdict: Verdict,
    /// Why it cannot, or what to know: the ending of its language key.
    pub why: &'static str,
    /// It is the way the job asks for.
    pub chosen: bool,
    /// The book lies flat when open.
    pub lies_flat: bool,
    /// Words fit on the spine.
    pub spine_text: bool,
}

/// The stitched book both ways, then bindings of single leaves.
///
/// The way the job asks for has the plan's own verdict, the other form of the spine is planned like any
/// other book. For the others leaves lie on each other to the same closed thickness, S, and the window
/// of their row decides.
#[must_use]
pub fn bindings(job: &Job, shop: &Shop, planned: &Plan) -> Vec<Binding> {
    let closed = planned.results.stack.closed.map(|closed| closed.0);
    let words = closed.low >= PRACTICE.spine_text_least.value;
    let otherwise = plan(&with_other_spine(job), shop).verdict;
    let stitched = [("stitched-round", Spine::Round), ("stitched-square", Spine::Square)];
    let stitched = stitched.map(|(id, spine)| {
        let chosen = spine == job.spine;
        let verdict = if chosen { planned.verdict } else { otherwise };
        let why = why(verdict, "limits");
        let spine_text = words && spine == Spine::Square;
        Binding { id, verdict, why, chosen, lies_flat: false, spine_text }
    });
    let leaves = BINDINGS.iter().map(|row| {
        let window = Range::between(row.least.value.get(), row.most.value.get());
        let verdict = Verdict::of(closed.map(Mm::get), window);
        let thin = closed.nominal < row.least.value;
        let why = why(verdict, if thin { "thin" } else { "thick" });
        let spine_text = row.spine_text && words;
        let lies_flat = row.lies_flat;
        Binding { id: row.id, verdict, why, chosen: false, lies_flat, spine_text }
    });
    stitched.into_iter().chain(leaves).collect()
}

/// A dummy's push-out was measured on the spine as it stands.
fn with_other_spine(job: &Job) -> Job {
    let mut other = job.clone();
    other.spine = other_spine(job.spine);
    other.dummy.push_out = None;
    other
}

fn why(verdict: Verdict, against: &'static str) -> &'static str {
    match verdict {
        Verdict::Fits => "possible",
        Verdict::Marginal => "just",
        Verdict::Unlikely => "unlikely",
        Verdict::DoesNotFit => against,
    }
}
