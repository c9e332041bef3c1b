//! Values that others have published, or that follow from exact definitions, against the planner.
//!
//! One file a family. Beside each check stand its id (P… paper, B… book, W… wire), its source, its tolerance
//! and the reason for it. Where there is no source it says "common practice".
//!
//! Not here: the carton (X…), and the two figures that the planner does not
//! compute: the pressed thickness of P17 (a pack factor never touches the stack that the heads
//! meet) and a trimmed size after cutting (P19; only the default tolerance is tested against it).
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod basis_weight;
mod bulk;
mod creasing;
mod creep;
mod government;
mod imposition;
mod mass;
mod sizes;
mod thickness;
mod wire;

use quirefit::draft::Draft;
use quirefit::entry::{self, LengthUnit};
use quirefit::job::{self, Job};
use quirefit::paper::{self, Stock};
use quirefit::plan::{Plan, plan};
use quirefit::shop::{self, Shop};
use quirefit::units::Mm;

/// Rounding of double-precision sums, far below anything measurable: what "exact" means here.
const EXACT: f64 = 1e-9;

/// Fails unless `found` lies within `tolerance` of `expected`.
#[track_caller]
fn near(found: f64, expected: f64, tolerance: f64, what: &str) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{what}: found {found}, published {expected}, tolerance {tolerance}"
    );
}

/// A paper as a person types it.
#[track_caller]
fn stock(typed: &str) -> Stock {
    entry::paper(typed, LengthUnit::Millimetre).value().unwrap_or_else(|| panic!("paper {typed}"))
}

/// Nominal thickness of one leaf of a typed paper.
#[track_caller]
fn leaf(typed: &str) -> Mm {
    paper::caliper(&stock(typed)).unwrap().value.nominal
}

/// A job as a person types it, in a shop.
#[track_caller]
fn job_in(shop: &Shop, fields: &[(&str, &str)]) -> Job {
    let reading = job::read(&Draft::of(fields), shop);
    reading.job.clone().unwrap_or_else(|| panic!("{fields:?}: {:?}", reading.notes))
}

/// A job in the demo shop, whose limits play no part in these checks.
#[track_caller]
fn job(fields: &[(&str, &str)]) -> Job {
    job_in(&shop::demo(), fields)
}

/// The plan of a job in the demo shop.
#[track_caller]
fn planned(fields: &[(&str, &str)]) -> Plan {
    plan(&job(fields), &shop::demo())
}
