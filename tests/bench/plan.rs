//! The plan of one book of 25 sheets, and its geometry alone, over and over: `cargo bench --bench plan`
//! natively, and, built for wasm32, a module whose exports a browser can time. `pkg-scripts/bench` does
//! both.
#![allow(clippy::expect_used)]
#![cfg_attr(target_arch = "wasm32", allow(unsafe_code))] // what wasm-bindgen expands to

mod geometry;

use geometry::{BOOK, geometry};
use quirefit::draft::Draft;
use quirefit::job::Job;
use quirefit::shop::{self, Shop};
use quirefit::{job, plan};
use std::hint::black_box;

fn book() -> (Job, Shop) {
    let shop = shop::demo();
    let job = job::read(&Draft::of(BOOK), &shop).job.expect("the book is complete");
    (job, shop)
}

/// Plans the book so many times.
#[cfg_attr(target_arch = "wasm32", wasm_bindgen::prelude::wasm_bindgen)]
pub fn plans(runs: u32) {
    let (job, shop) = book();
    for _ in 0..runs {
        black_box(plan::plan(black_box(&job), &shop));
    }
}

/// Works out the book's geometry so many times.
#[cfg_attr(target_arch = "wasm32", wasm_bindgen::prelude::wasm_bindgen)]
pub fn books(runs: u32) {
    let (job, shop) = book();
    for _ in 0..runs {
        black_box(geometry(black_box(&job), &shop));
    }
}

/// Prints the median times of one plan and of one geometry in nanoseconds, as JSON.
#[cfg(not(target_arch = "wasm32"))]
fn main() {
    println!("{{ \"plan\": {}, \"books\": {} }}", median(plans), median(books));
}

/// The median time of one of so many, nanoseconds.
#[cfg(not(target_arch = "wasm32"))]
fn median(work: fn(u32)) -> u128 {
    const RUNS: u32 = 2000;
    let mut samples: Vec<u128> = (0..31)
        .map(|_| {
            let began = std::time::Instant::now();
            work(RUNS);
            began.elapsed().as_nanos() / u128::from(RUNS)
        })
        .collect();
    samples.sort_unstable();
    *samples.get(samples.len() / 2).expect("there are samples")
}

#[cfg(target_arch = "wasm32")]
fn main() {}
