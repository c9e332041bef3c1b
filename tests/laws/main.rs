//! Laws that hold for every valid job, whatever it is.
//!
//! Jobs come from typed texts, as a form or file gives them, in several shops; where a law is about
//! the geometry alone, papers and sheets are then changed beyond what anyone would type.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod book;
mod files;
mod head_room;
mod jobs;
#[path = "../support/mod.rs"]
mod support;
mod units;
mod written;

/// Rounding of double-precision sums, far below anything measurable.
const EXACT: f64 = 1e-9;
/// Where cases are kept that have failed once.
const FAILURES: Option<&str> = Some("tests/laws/regressions");
