//! The arithmetic, from a job and a shop to the plan. A part of the `quirefit` crate, which shows all of it
//! under its own name; a package of its own because it alone is built for speed in the page, and all else
//! for size.

pub mod book;
pub mod check;
pub mod cost;
pub mod finishing;
pub mod layout;
pub mod pack;
pub mod plan;
pub mod results;
pub mod run;

use quirefit_input::{data, job, paper, shop, source, units, words};

#[cfg(test)]
use quirefit_input::draft;
