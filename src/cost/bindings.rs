//! The same book bound otherwise: possible or not, and why.

use crate::book::Stack;
use crate::data::{BINDINGS, Line, PRACTICE, Range};
use crate::finishing::{Answer, LimitCheck, LimitId};
use crate::job::{Job, Spine};
use crate::units::Mm;

/// One way of binding beside the book.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Alternative {
    /// Its name in language keys.
    pub id: &'static str,
    /// Whether it takes the book's thickness.
    pub answer: Answer,
    /// Why it does not, or what to know: the ending of its language key.
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
/// Leaves lie on each other to the same closed thickness, S. Limits of the finishing line decide for
/// the stitched ones; for the others the window of their row. What stood in `out` is replaced.
pub fn alternatives(
    job: &Job,
    line: Option<&Line>,
    stack: &Stack,
    limits: &[LimitCheck],
    out: &mut Vec<Alternative>,
) {
    out.clear();
    let closed = stack.closed.map(|closed| closed.0);
    let thick = closed.map(Mm::get);
    let words = closed.low >= PRACTICE.spine_text_least.value;
    let without_former = limits
        .iter()
        .filter(|limit| limit.id != LimitId::Former)
        .map(|limit| limit.answer)
        .max()
        .unwrap_or_default();
    let pressed = line.map_or(Answer::Fits, |line| Answer::of(thick, line.former));
    let stitched = |id, answer, chosen| Alternative {
        id,
        answer,
        why: if answer == Answer::Fits { "possible" } else { "limits" },
        chosen,
        lies_flat: false,
        spine_text: words && id == "stitched-square",
    };
    out.extend([
        stitched("stitched-round", without_former, job.spine == Spine::Round),
        stitched("stitched-square", without_former.max(pressed), job.spine == Spine::Square),
    ]);
    out.extend(BINDINGS.iter().map(|binding| {
        let answer =
            Answer::of(thick, Range::between(binding.least.value.get(), binding.most.value.get()));
        let why = match answer {
            Answer::Fits => "possible",
            _ if closed.low < binding.least.value => "thin",
            _ => "thick",
        };
        Alternative {
            id: binding.id,
            answer,
            why,
            chosen: false,
            lies_flat: binding.lies_flat,
            spine_text: binding.spine_text && words,
        }
    }));
}
