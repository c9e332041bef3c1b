//! The plan: every stage's result, what the rules found, and the verdict.

use crate::check::{self, check};
use crate::job::Job;
use crate::results::work_out_into;
use crate::shop::Shop;

pub use crate::book::{
    Blanks, BookMass, Calibrated, Clearance, CoverPlan, FirstOff, Folio, Folios, Leaf, Margins,
    Shape, Spread, Stack, Trim, Trust, distance_left, pages_at_risk, spreads,
};
pub use crate::check::{Finding, Verdict, Weight};
pub use crate::cost::{AtCopies, Cost, Item, price};
pub use crate::finishing::{
    Answer, LimitCheck, LimitId, Placed, Placement, Room, Stitch, Stitches, Wire,
};
pub use crate::layout::{
    CopyPlace, CopyShape, Layout, Needed, Panel, Refusal, Route, Side, Step, Way, copies, panels,
    steps,
};
pub use crate::pack::{Cartons, Packing, Posted, StepAnswer};
pub use crate::paper::Grain;
pub use crate::results::Results;
pub use crate::run::{
    Component, Consumed, Pacing, Quantities, Run, STATIONS, SetUp, Station, Stop, Supply, Times,
};

/// A planned book.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Plan {
    /// What every stage found.
    pub results: Results,
    /// What the rules found, gravest first.
    pub findings: Vec<Finding>,
    /// Whether it can be made on the line.
    pub verdict: Verdict,
}

/// Plans a job in a shop. Never fails: a [`Job`] is valid, and "does not fit" is a finding.
#[must_use]
pub fn plan(job: &Job, shop: &Shop) -> Plan {
    let mut out = Plan::default();
    plan_into(&mut out, job, shop);
    out
}

/// The same over an earlier plan, whose lists are used again: nothing is allocated.
pub fn plan_into(out: &mut Plan, job: &Job, shop: &Shop) {
    work_out_into(&mut out.results, job, shop);
    check(job, shop, &out.results, &mut out.findings);
    out.verdict = check::verdict(&out.findings);
}

impl Plan {
    /// Further pages of the main section that the line has room for, by the closed form of each
    /// limit at the unfavourable end of its band; the least of them. Negative: so many too many.
    /// Nothing when no limit grows with the pages.
    #[must_use]
    pub fn room_pages(&self) -> Option<i64> {
        self.results.limits.iter().filter_map(|limit| limit.room.pages()).min()
    }
    /// The limit with the least margin for its size: the one that bites first.
    #[must_use]
    pub fn tightest(&self) -> Option<&LimitCheck> {
        let limits = self.results.limits.iter().filter(|limit| !self.set_here(limit));
        limits.min_by(|a, b| part_left(a).total_cmp(&part_left(b)))
    }
    /// Places of the limits, the one that bites first in front; those that bite nobody behind.
    #[must_use]
    pub fn limits_by_bite(&self) -> Vec<usize> {
        let bite = |at: usize| {
            let limit = self.results.limits.get(at);
            limit.map_or((true, 0.0), |limit| (self.set_here(limit), part_left(limit)))
        };
        let mut places: Vec<usize> = Vec::new();
        for at in 0..self.results.limits.len() {
            let place = places.partition_point(|known| bite(*known) <= bite(at));
            places.insert(place, at);
        }
        places
    }
    /// A face cut that nobody has decided is set to what the line needs, so it bites nobody; nor do
    /// passes that are enough.
    fn set_here(&self, limit: &LimitCheck) -> bool {
        let chosen = limit.id == LimitId::OutermostChip && !self.results.trim.face_cut_given;
        limit.answer == Answer::Fits && (chosen || limit.id == LimitId::Passes)
    }
}

/// What is left to a limit as a part of it. Each end for itself: 11 sheets are far from a least of 2,
/// whatever the most may be.
fn part_left(limit: &LimitCheck) -> f64 {
    let part = |margin: f64, end: f64| if end > 0.0 { margin / end } else { margin };
    let below = limit.range.least.map(|least| part(limit.value.low - least, least));
    let above = limit.range.most.map(|most| part(most - limit.value.high, most));
    below.into_iter().chain(above).fold(f64::INFINITY, f64::min)
}
