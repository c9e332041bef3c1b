//! What would make it fit: other pages, papers, sizes and lines, each planned like any other book.
//!
//! A change is made in place on a copy of the job, so that thousands of books can be planned between
//! two keys. What passes becomes an [`Offer`]: texts to type. Before it is offered those texts are
//! read and planned as if somebody had typed them, so an offer cannot promise what does not hold.

mod asked;
mod bindings;
mod candidates;
mod change;
mod client;
mod inverse;
mod offer;
mod papers;
mod scratch;
mod search;
mod sizes;
mod steps;
mod typed;
mod variant;

pub use bindings::{Binding, bindings};
pub use inverse::{Inverse, Room, Rooms, room};
pub use offer::{Offer, Told};
pub use search::Search;
pub use steps::{CostStep, CostSteps};

use crate::check::Verdict;
use crate::draft::Draft;
use crate::job::Job;
use crate::plan::Plan;
use crate::shop::Shop;

/// Books planned at most in one search: several times what any book has needed.
pub const MOST_TRIED: usize = 4000;

/// What can be said of a book beyond its plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Advice {
    /// Room for further pages.
    pub room: Room,
    /// The same book bound otherwise.
    pub bindings: Vec<Binding>,
    /// Ways that pass, least change first: ways that fit, or only where there are none, ways that
    /// only just fit. Empty until searched.
    pub offers: Vec<Offer>,
    /// The same as a client may be told them: no count names how far the line goes.
    pub for_client: Vec<Offer>,
    /// The questions turned round; nothing until searched.
    pub inverse: Option<Inverse>,
    /// Books planned for it.
    pub tried: usize,
    /// What a little more costs; nothing until somebody looks.
    pub cost: Option<CostSteps>,
}

impl Advice {
    /// What can be said at once, before the search.
    #[must_use]
    pub fn at_once(job: &Job, shop: &Shop, plan: &Plan) -> Self {
        let room = room(job, shop, plan);
        let bindings = bindings(job, shop, plan);
        let (offers, for_client) = (Vec::new(), Vec::new());
        Self { room, bindings, offers, for_client, inverse: None, tried: 0, cost: None }
    }

    /// The whole of it. `draft` is the text that `job` was read from.
    #[must_use]
    pub fn searched(draft: &Draft, job: &Job, shop: &Shop, plan: &Plan, most: usize) -> Self {
        let mut advice = Self::at_once(job, shop, plan);
        let mut search = Search::new(draft, job, shop);
        search.run(most);
        advice.inverse = Some(search.inverse(advice.room));
        advice.offer(draft, shop, search.offers());
        advice.tried = search.tried();
        advice
    }

    /// Reckons what a little more costs, once.
    pub fn reckon(&mut self, job: &Job, shop: &Shop, plan: &Plan) {
        self.cost = self.cost.take().or_else(|| CostSteps::of(job, shop, plan));
    }

    /// Puts what was found on offer, to makers and to a client.
    pub fn offer(&mut self, draft: &Draft, shop: &Shop, offers: Vec<Offer>) {
        self.for_client = client::for_client(draft, shop, &offers);
        self.offers = offers;
    }
}

/// There are ways, and every one of them only just fits.
#[must_use]
pub fn only_just(offers: &[Offer]) -> bool {
    !offers.is_empty() && offers.iter().all(|offer| offer.verdict != Verdict::Fits)
}

impl Search<'_> {
    /// The ways found so far, each read and planned once more.
    #[must_use]
    pub fn offers(&self) -> Vec<Offer> {
        let of = |verdict| -> Vec<Offer> {
            let tried = self.passing(verdict);
            tried.iter().filter_map(|tried| offer::offer(&self.asked, tried)).collect()
        };
        let fitting = of(Verdict::Fits);
        if fitting.is_empty() && self.base > Verdict::Marginal {
            of(Verdict::Marginal)
        } else {
            fitting
        }
    }
}
