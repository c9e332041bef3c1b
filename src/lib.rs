//! Plans stitched books: folded sheets nested in each other, wired through the fold, folded shut,
//! the spine left as it folds or pressed square, the open edges cut.
//!
//! # The flow
//! What a person types is a [`draft`]. [`shop::read`] and [`job::read`] turn drafts into a [`Shop`]
//! and a [`Job`], or tell every fault at once. [`plan::plan`] works the job out: thickness, fold,
//! push-out, trim, cover, limits of the line, and what the rules find. [`explain`] says why a figure
//! is what it is, [`drawing`] draws the book, [`view`] prints, and [`page`] is the page's own state.
//! The modules of what a plan starts from, and those of the arithmetic, are packages of their own in
//! `src/input` and `src/planning`; here all stand side by side. A module names only modules to its left:
//!
//! `units → source → words → data → paper → entry → draft → shop → job → book → layout → finishing →
//! results → check → plan → advise → titles → intake → explain → drawing → view → page`
//!
//! # Example
//! ```
//! use quirefit::{draft::Draft, job, plan, shop};
//!
//! let shop = shop::demo();
//! let draft = Draft::of(&[
//!     ("pages", "64"),
//!     ("size", "A5"),
//!     ("paper", "100 lb gloss text"),
//!     ("copies", "750"),
//! ]);
//! let job = job::read(&draft, &shop).job.expect("the draft is complete");
//! let planned = plan::plan(&job, &shop);
//!
//! assert_eq!(job.sheets().get(), 16);
//! assert_eq!(planned.verdict, plan::Verdict::Fits);
//! // 16 sheets of 148 g/m² gloss at 0.82 cm³/g, each lying there twice.
//! let spine = planned.results.stack.closed.nominal.0;
//! assert!((spine.get() - 3.88).abs() < 0.01);
//! ```
//!
//! [`Shop`]: shop::Shop
//! [`Job`]: job::Job

#[doc(inline)]
pub use quirefit_input::{data, draft, entry, job, paper, shop, source, units, words};
#[doc(inline)]
pub use quirefit_planning::{book, check, cost, finishing, layout, pack, plan, results, run};

pub mod advise;
pub mod drawing;
pub mod explain;
pub mod intake;
pub mod page;
pub mod titles;
pub mod view;

/// Keeps the README's example compiling.
#[cfg(doctest)]
#[doc = include_str!("../README.md")]
struct Readme;
