//! Mass of the run, cartons, post.

mod carton;
mod post;

pub use carton::{Cartons, cartons};
pub use post::{Posted, StepAnswer, post};

use crate::book::{BookMass, Stack};
use crate::job::Job;
use crate::shop::Shop;
use crate::units::{Band, Gram};

/// What leaves the house: mass, cartons, post.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Packing {
    /// One copy with its wire; nothing when a paper's weight is not known.
    pub copy: Option<Band<Gram>>,
    /// All good copies, where it is said how many. The papers' doubt is one lot's, so it adds over all of them.
    pub run: Option<Band<Gram>>,
    /// Cartons, where the shop says how heavy or large one may be.
    pub cartons: Option<Cartons>,
    /// Postal steps, where the shop has a table.
    pub posted: Option<Posted>,
}

/// Packs a run, over what an earlier plan packed. `wire` is the wire in one copy.
pub fn pack(
    job: &Job,
    shop: &Shop,
    stack: &Stack,
    mass: Option<BookMass>,
    wire: Gram,
    out: &mut Packing,
) {
    let copy = mass.map(|mass| mass.book.shifted(wire));
    out.copy = copy;
    out.run = copy.zip(job.copies).map(|(copy, copies)| copy.times(copies.as_f64()));
    out.cartons = cartons(job, &shop.carton, copy, stack.closed);
    out.posted = post(job, &shop.post, copy, stack.closed, out.posted.take());
}
