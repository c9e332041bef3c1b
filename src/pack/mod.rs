//! Mass of the run, cartons, post.

mod carton;
mod post;

pub use carton::{Cartons, cartons};
pub use post::{Posted, StepAnswer, post};

use crate::book::BookMass;
use crate::job::Job;
use crate::units::{Band, Gram};

/// Mass of the whole run: copies × the mass of one, wire included.
///
/// The papers' doubt is one lot's, so it adds over all copies.
#[must_use]
pub fn run_mass(job: &Job, book: Band<Gram>) -> Band<Gram> {
    book.times(job.copies.as_f64())
}

/// One copy with its wire; nothing when a paper's weight is not known.
#[must_use]
pub fn copy_mass(mass: Option<BookMass>, wire: Gram) -> Option<Band<Gram>> {
    mass.map(|mass| mass.book.shifted(wire))
}
