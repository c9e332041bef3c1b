//! What a little more costs: a sheet, a hundred copies; and a copy at every other number of copies.

use super::variant::Variant;
use crate::cost::{orders, span};
use crate::data::MORE_COPIES;
use crate::job::Job;
use crate::plan::{AtCopies, Cost, Plan, Verdict};
use crate::shop::Shop;
use crate::units::{Copies, Money, Sheets, put_once};

/// So many places between the fewest and the most copies draw a smooth curve.
const PLACES: u32 = 48;
/// Where cartons are fewer than so many, every further one is seen as a step of the curve.
const STEPS_SEEN: u32 = 24;

/// What changes with one step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CostStep {
    /// The run costs so much more.
    pub total: Money,
    /// One copy costs so much more.
    pub each: Money,
    /// What the line then says of the book.
    pub verdict: Verdict,
}

/// Costs beside the job's own.
#[derive(Debug, Clone, PartialEq)]
pub struct CostSteps {
    /// One more folded sheet in the main section, four pages; nothing where there is none.
    pub sheet: Option<CostStep>,
    /// So many further copies are asked for.
    pub more: Copies,
    /// What they cost.
    pub copies: CostStep,
    /// A copy at other numbers of copies, fewest first, the job's own among them.
    pub curve: Vec<AtCopies>,
}

impl CostSteps {
    /// What each further copy costs.
    #[must_use]
    pub fn further(&self) -> Money {
        self.copies.total / self.more.as_f64().max(1.0)
    }
    /// Plans the book anew with a sheet more and at other numbers of copies. Nothing comes back where
    /// the shop has no rates, where nobody has said how many copies, or where what has come in decides
    /// how many can be made.
    #[must_use]
    pub fn of(job: &Job, shop: &Shop, plan: &Plan) -> Option<Self> {
        let (own, results) = (job.copies?, &plan.results);
        let short = results.run.quantities.short.is_some();
        if short || results.cost.items().next().is_none() {
            return None;
        }
        let mut variant = Variant::new(job, shop, plan);
        let step = |plan: &Plan| step(&results.cost, plan);
        let more = Copies(MORE_COPIES.value);
        Some(Self {
            sheet: variant.larger(Sheets(1)).map(step),
            more,
            copies: step(variant.copies(own + more)),
            curve: curve(own, plan, &mut variant),
        })
    }
}

fn step(before: &Cost, plan: &Plan) -> CostStep {
    let after = &plan.results.cost;
    CostStep {
        total: after.total - before.total,
        each: after.each - before.each,
        verdict: plan.verdict,
    }
}

/// The curve through the numbers that people order, close enough to be drawn, and both sides of every
/// further carton where those are few.
fn curve(own: Copies, plan: &Plan, variant: &mut Variant) -> Vec<AtCopies> {
    let ordered = orders(own);
    let (least, most) = span(own);
    let growth = most.as_f64() / least.as_f64();
    let between = (0..=PLACES).map(|place| {
        let part = f64::from(place) / f64::from(PLACES);
        Copies((least.as_f64() * growth.powf(part)).round() as u32)
    });
    let carton = plan.results.packing.cartons.map_or(0, |cartons| cartons.each);
    let cartons = most.get().checked_div(carton).filter(|full| *full <= STEPS_SEEN);
    let edges = (1..=cartons.unwrap_or_default())
        .flat_map(|full| [Copies(full * carton), Copies(full * carton) + Copies(1)])
        .filter(|copies| (least..=most).contains(copies));
    let mut places: Vec<Copies> = ordered.clone();
    between.chain(edges).for_each(|copies| put_once(&mut places, copies));
    let at = |copies: Copies| {
        let planned = variant.copies(copies);
        AtCopies::of(copies, &planned.results.cost, ordered.contains(&copies))
    };
    places.into_iter().map(at).collect()
}
