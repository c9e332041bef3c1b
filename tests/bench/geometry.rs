//! The book that is timed, and what is worked out of a book's geometry alone.
#![allow(dead_code, reason = "every bench takes what it needs")]

use quirefit::book::{self, BookMass, CoverPlan, Fold, Leaf, Margins, Stack, Trim};
use quirefit::job::Job;
use quirefit::shop::Shop;

/// 24 folded sheets and a cover of one.
pub const BOOK: &[(&str, &str)] = &[
    ("pages", "96 + 4"),
    ("size", "170 x 240"),
    ("paper", "70 gsm gloss 0.058 mm"),
    ("cover", "150 gsm gloss 0.115 mm"),
    ("copies", "12,000"),
];

/// What tests/bench/floor.mjs works out as well.
pub struct Geometry {
    pub fold: Fold,
    pub stack: Stack,
    pub leaves: Vec<Leaf>,
    pub trim: Trim,
    pub cover: CoverPlan,
    pub margins: Margins,
    pub mass: Option<BookMass>,
}

/// Works it out, by the stages of the plan and in their order.
pub fn geometry(job: &Job, shop: &Shop) -> Geometry {
    let (mut stack, mut leaves) = (Stack::default(), Vec::new());
    book::stack_into(job, &mut stack);
    let fold = book::fold_of(job, shop, &stack).fold;
    book::leaves(job, &stack, &fold, &mut leaves);
    let trim = book::trim(job, shop, &stack, &fold, &leaves);
    let cover = book::cover(job, &stack, &fold, trim.wrap.nominal);
    let margins = book::margins(job, &leaves);
    let mass = book::mass(job, &leaves, &trim);
    Geometry { fold, stack, leaves, trim, cover, margins, mass }
}
