//! A limit of the line that the book's value breaks, over all or part of its band.

use super::{Finding, Weight};
use crate::finishing::{Answer, LimitId};
use crate::results::Results;
use crate::units::Band;

/// Finds the limit among the results and tells which end was passed.
pub fn look(id: LimitId, results: &Results) -> Option<Finding> {
    let check = results.limits.iter().find(|check| check.id == id)?;
    let weight = match check.answer {
        Answer::Fits => return None,
        Answer::Marginal => Weight::Marginal,
        Answer::Unlikely => Weight::Unlikely,
        Answer::DoesNotFit => Weight::DoesNotFit,
    };
    let above = check.range.most.is_some_and(|most| check.value.high > most);
    let (case, bound) = match (above, weight) {
        (true, Weight::DoesNotFit) => ("above", check.range.most),
        (true, _) => ("perhaps-above", check.range.most),
        (false, Weight::DoesNotFit) => ("below", check.range.least),
        (false, _) => ("perhaps-below", check.range.least),
    };
    Some(
        Finding::new(id.name(), case, weight)
            .with_band("value", check.value, check.unit)
            .with_band("limit", Band::exact(bound?), check.unit)
            .with_band("excess", Band::exact(-check.margin), check.unit),
    )
}
