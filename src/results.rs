//! Results: what every stage found, and the only place that knows their order.

use crate::book::{self, BookMass, Calibrated, CoverPlan, FirstOff, Leaf, Margins, Stack, Trim};
use crate::finishing::{self, LimitCheck};
use crate::job::Job;
use crate::pack::{self, Packing};
use crate::shop::Shop;
use crate::units::{Band, Gram, Mm};

/// The outcome of every stage for one job in one shop.
#[derive(Debug, Clone, PartialEq)]
pub struct Results {
    /// Thickness.
    pub stack: Stack,
    /// How the book folds.
    pub fold: Calibrated,
    /// Every sheet, outermost first.
    pub leaves: Vec<Leaf>,
    /// Innermost leaf against the nominal page by the trade's rule.
    pub trade_creep: Band<Mm>,
    /// The cut and the untrimmed sheet.
    pub trim: Trim,
    /// The outermost sheet, flat.
    pub cover: CoverPlan,
    /// Pages at risk, bleed and gaps.
    pub margins: Margins,
    /// Blank pages.
    pub blanks: book::Blanks,
    /// Mass of a book; nothing when a paper's weight is not known.
    pub mass: Option<BookMass>,
    /// What leaves the house.
    pub packing: Packing,
    /// The first book off the machine beside the plan.
    pub first_off: FirstOff,
    /// A value beside every limit of the line.
    pub limits: Vec<LimitCheck>,
}

/// Runs every stage.
#[must_use]
pub fn work_out(job: &Job, shop: &Shop) -> Results {
    let stack = book::stack(job);
    let fold = book::fold_of(job, shop, &stack);
    let mut leaves = Vec::with_capacity(job.sheets().get() as usize);
    book::leaves(job, &stack, &fold.fold, &mut leaves);
    let trim = book::trim(job, shop, &stack, &fold.fold, &leaves);
    let mut limits = Vec::with_capacity(finishing::LIMITS.len());
    if let Some(line) = shop.lines.get(job.line) {
        finishing::check_limits(job, line, &stack, &leaves, &trim, &mut limits);
    }
    let mass = book::mass(job, &leaves, &trim);
    Results {
        trade_creep: book::trade_creep(job, &stack),
        cover: book::cover(job, &stack, &fold.fold, trim.wrap.nominal),
        margins: book::margins(job, &leaves),
        blanks: book::blanks(job),
        packing: pack::pack(job, shop, &stack, mass, Gram::ZERO),
        mass,
        first_off: book::first_off(job, &stack),
        stack,
        fold,
        leaves,
        trim,
        limits,
    }
}
