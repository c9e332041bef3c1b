//! The plan for another program: plain numbers with the unit in the field's name.

mod finished;
mod making;
mod money;
mod sheet;

pub use finished::{BookOut, SheetOut, book_out};
pub use making::{ComponentOut, RunOut, StationOut, StitchOut, StitchesOut, StopOut};
pub use money::{AtCopiesOut, CostLineOut, CostOut, CostStepOut, CostStepsOut};
pub use sheet::{LayoutOut, PanelOut, SidesOut, WayOut};

use crate::advise::{Advice, Room};
use crate::draft::FieldError;
use crate::job::Job;
use crate::plan::{LimitCheck, Plan};
use crate::units::Band;
use crate::view::Printer;
use serde::Serialize;

/// A value with its doubt.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct BandOut {
    /// The least it may be.
    pub low: f64,
    /// What to expect.
    pub nominal: f64,
    /// The most it may be.
    pub high: f64,
}

/// A value beside a limit of the line.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct LimitOut {
    /// Which limit.
    pub id: String,
    /// The book's value, mm, g/m² or a count.
    pub value: BandOut,
    /// Least the line takes.
    pub least: Option<f64>,
    /// Most the line takes.
    pub most: Option<f64>,
    /// "fits", "marginal", "unlikely" or "no".
    pub answer: String,
    /// Room for so many more sheets; negative: so many too many.
    pub room_sheets: Option<i64>,
}

/// Something a rule found.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct FindingOut {
    /// Which rule.
    pub rule: String,
    /// Which of its cases.
    pub case: String,
    /// What it says.
    pub text: String,
    /// What to do.
    pub cure: String,
}

/// A planned book, and how it is made: for makers.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct PlanOut {
    /// The book.
    #[serde(flatten)]
    pub book: BookOut,
    /// The flat sheet on press sheets.
    pub layout: LayoutOut,
    /// Stitches and wire.
    pub stitches: StitchesOut,
    /// The run; nothing where the job says no number of copies.
    pub run: Option<RunOut>,
    /// What it costs.
    pub cost: Option<CostOut>,
    /// Every limit of the line that concerns the book.
    pub limits: Vec<LimitOut>,
    /// Findings, gravest first.
    pub findings: Vec<FindingOut>,
}

/// One field that cannot be right.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct ErrorOut {
    /// The field's path.
    pub path: String,
    /// What was given.
    pub given: String,
    /// What is wrong.
    pub wrong: String,
    /// What to put instead.
    pub repair: String,
}

fn band<T: Copy>(band: Band<T>, number: impl Fn(T) -> f64) -> BandOut {
    let band = band.map(number);
    BandOut { low: band.low, nominal: band.nominal, high: band.high }
}

/// The plan as plain numbers.
#[must_use]
pub fn plan_out(job: &Job, plan: &Plan, printer: &Printer) -> PlanOut {
    PlanOut {
        book: book_out(job, plan),
        layout: sheet::layout_out(plan),
        stitches: making::stitches_out(job, plan),
        run: job.copies.map(|_| making::run_out(plan)),
        cost: job.copies.map(|_| money::cost_out(&plan.results.cost)),
        limits: plan.results.limits.iter().map(limit_out).collect(),
        findings: plan
            .findings
            .iter()
            .map(|finding| FindingOut {
                rule: finding.rule.to_owned(),
                case: finding.case.to_owned(),
                text: printer.text(&finding.say()),
                cure: printer.text(&finding.cure()),
            })
            .collect(),
    }
}

fn limit_out(limit: &LimitCheck) -> LimitOut {
    LimitOut {
        id: limit.id.name().to_owned(),
        value: band(limit.value, |value| value),
        least: limit.range.least,
        most: limit.range.most,
        answer: limit.answer.name().to_owned(),
        room_sheets: limit.room.sheets,
    }
}

/// Faults as plain text.
#[must_use]
pub fn errors_out(errors: &[FieldError], printer: &Printer) -> Vec<ErrorOut> {
    errors
        .iter()
        .map(|error| ErrorOut {
            path: error.path.clone(),
            given: error.given.clone(),
            wrong: printer.text(&error.wrong),
            repair: printer.text(&error.repair),
        })
        .collect()
}

/// A way that passes.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct OfferOut {
    /// What changes, in words.
    pub text: String,
    /// What to type: field path and text.
    pub edits: Vec<(String, String)>,
    /// "fits" or "marginal".
    pub verdict: String,
    /// S of the book it makes; of two volumes, the thicker.
    pub spine_mm: BandOut,
    /// Further pages it has room for; nothing when there is no end to them.
    pub room_pages: Option<u32>,
}

/// What would make a book fit, or what else would work.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct AdviceOut {
    /// Further pages the book has room for; nothing when there is no end to them.
    pub room_pages: Option<u32>,
    /// Most pages of the main section on its paper.
    pub most_pages: Option<u32>,
    /// Heaviest usual weight of its paper at this page count, as typed.
    pub heaviest: Option<String>,
    /// Ways that pass, least change first.
    pub offers: Vec<OfferOut>,
    /// Books planned for it.
    pub tried: u32,
    /// What a little more costs; nothing where the shop has no rates, or was not reckoned.
    pub cost: Option<CostStepsOut>,
}

/// Advice as plain values.
#[must_use]
pub fn advice_out(advice: &Advice, printer: &Printer) -> AdviceOut {
    let pages = |room: Room| match room {
        Room::Pages(pages) => Some(pages.get()),
        Room::Unlimited => None,
    };
    let inverse = advice.inverse.as_ref();
    AdviceOut {
        room_pages: pages(advice.room),
        most_pages: inverse.and_then(|inverse| inverse.most_pages).map(|pages| pages.get()),
        heaviest: inverse
            .and_then(|inverse| inverse.heaviest.as_ref())
            .map(|(paper, _)| paper.clone()),
        offers: advice
            .offers
            .iter()
            .map(|offer| OfferOut {
                text: printer.text(&super::text::way(offer)),
                edits: offer.edits.clone(),
                verdict: offer.verdict.name().to_owned(),
                spine_mm: band(offer.spine, |spine| spine.0.get()),
                room_pages: pages(offer.room),
            })
            .collect(),
        tried: u32::try_from(advice.tried).unwrap_or(u32::MAX),
        cost: advice.cost.as_ref().map(money::steps_out),
    }
}
