//! The cost for another program, in the shop's own currency.

use crate::advise::{CostStep, CostSteps};
use crate::plan::Cost;
use serde::Serialize;

/// One line of the cost.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct CostLineOut {
    /// "paper" by the kilogram or "sheets" by the thousand, "click" by the printed side, "line" by
    /// the hour, "wire" by the kilogram, "carton", "job".
    pub id: String,
    /// How much, in the rate's unit.
    pub quantity: f64,
    /// The shop's rate for one.
    pub rate: f64,
    /// Quantity × rate.
    pub amount: f64,
}

/// The cost of the run.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct CostOut {
    /// Lines that have both quantity and rate.
    pub lines: Vec<CostLineOut>,
    /// Their sum.
    pub total: f64,
    /// A copy's share.
    pub each: f64,
    /// A quantity or a rate is missing: the sum is not the whole cost.
    pub incomplete: bool,
}

/// What one step costs.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct CostStepOut {
    /// The run costs so much more.
    pub amount: f64,
    /// A copy costs so much more.
    pub each: f64,
    /// What the line then says: "fits", "marginal", "unlikely" or "no".
    pub verdict: String,
}

/// The cost of so many copies.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct AtCopiesOut {
    /// Good copies.
    pub copies: u32,
    /// The run.
    pub total: f64,
    /// A copy.
    pub each: f64,
}

/// What a little more costs.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct CostStepsOut {
    /// Four pages more, one folded sheet in the main section.
    pub four_pages: Option<CostStepOut>,
    /// So many further copies are asked for in `further`.
    pub further_copies: u32,
    /// What they cost.
    pub further: CostStepOut,
    /// A copy at the numbers of copies that people order, fewest first.
    pub curve: Vec<AtCopiesOut>,
}

/// The cost as plain numbers.
pub(super) fn cost_out(cost: &Cost) -> CostOut {
    CostOut {
        lines: cost
            .items()
            .map(|item| CostLineOut {
                id: item.id.to_owned(),
                quantity: item.quantity,
                rate: item.rate.get(),
                amount: item.total.get(),
            })
            .collect(),
        total: cost.total.get(),
        each: cost.each.get(),
        incomplete: cost.incomplete,
    }
}

fn step_out(step: &CostStep) -> CostStepOut {
    CostStepOut {
        amount: step.total.get(),
        each: step.each.get(),
        verdict: step.verdict.name().to_owned(),
    }
}

/// What a little more costs, as plain numbers.
pub(super) fn steps_out(steps: &CostSteps) -> CostStepsOut {
    let curve = steps.curve.iter().filter(|at| at.ordered);
    CostStepsOut {
        four_pages: steps.sheet.as_ref().map(step_out),
        further_copies: steps.more.get(),
        further: step_out(&steps.copies),
        curve: curve
            .map(|at| AtCopiesOut {
                copies: at.copies.get(),
                total: at.total.get(),
                each: at.each.get(),
            })
            .collect(),
    }
}
