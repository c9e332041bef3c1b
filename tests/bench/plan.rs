//! The plan of one book of 25 sheets, over and over: `cargo bench --bench plan` natively, and, built
//! for wasm32, a module whose one export a browser can time. `pkg-scripts/bench` does both.
#![allow(clippy::expect_used)]
#![cfg_attr(target_arch = "wasm32", allow(unsafe_code))] // what wasm-bindgen expands to

use quirefit::draft::Draft;
use quirefit::job::Job;
use quirefit::shop::{self, Shop};
use quirefit::{job, plan};
use std::hint::black_box;

/// 24 folded sheets and a cover of one.
const BOOK: &[(&str, &str)] = &[
    ("pages", "96 + 4"),
    ("size", "170 x 240"),
    ("paper", "70 gsm gloss 0.058 mm"),
    ("cover", "150 gsm gloss 0.115 mm"),
    ("copies", "12,000"),
];

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

/// Prints the median time of one plan in nanoseconds.
#[cfg(not(target_arch = "wasm32"))]
fn main() {
    const RUNS: u32 = 2000;
    let mut samples: Vec<u128> = (0..31)
        .map(|_| {
            let began = std::time::Instant::now();
            plans(RUNS);
            began.elapsed().as_nanos() / u128::from(RUNS)
        })
        .collect();
    samples.sort_unstable();
    println!("{}", samples.get(samples.len() / 2).expect("there are samples"));
}

#[cfg(target_arch = "wasm32")]
fn main() {}
