//! The plan of one book of 25 sheets, and its geometry alone, over and over: `cargo bench --bench plan`
//! natively, and, built for wasm32, a module whose exports a browser can time. `pkg-scripts/bench` does
//! both.
#![allow(clippy::expect_used)]
#![cfg_attr(target_arch = "wasm32", allow(unsafe_code))] // what wasm-bindgen expands to

use quirefit::book::{self, BookMass, CoverPlan, Leaf, Margins, Stack, Trim};
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

type Geometry = (Stack, Vec<Leaf>, Trim, CoverPlan, Margins, Option<BookMass>);

/// What tests/bench/floor.mjs works out as well.
fn geometry(job: &Job, shop: &Shop) -> Geometry {
    let (mut stack, mut leaves) = (Stack::default(), Vec::new());
    book::stack_into(job, &mut stack);
    let fold = book::fold_of(job, shop, &stack).fold;
    book::leaves(job, &stack, &fold, &mut leaves);
    let trim = book::trim(job, shop, &stack, &fold, &leaves);
    let cover = book::cover(job, &stack, &fold, trim.wrap.nominal);
    let margins = book::margins(job, &leaves);
    let mass = book::mass(job, &leaves, &trim);
    (stack, leaves, trim, cover, margins, mass)
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
