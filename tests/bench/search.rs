//! How long one plan takes: median of many runs, plain clock. `cargo bench --bench search`.

use quirefit::draft::Draft;
use quirefit::{job, plan, shop};
use std::hint::black_box;
use std::time::Instant;

/// Runs in one sample, and samples of which the median counts.
const RUNS: u32 = 2000;
const SAMPLES: usize = 31;

/// The median time of one run, nanoseconds.
fn median(mut work: impl FnMut()) -> f64 {
    let mut samples: Vec<f64> = (0..SAMPLES)
        .map(|_| {
            let start = Instant::now();
            (0..RUNS).for_each(|_| work());
            start.elapsed().as_nanos() as f64 / f64::from(RUNS)
        })
        .collect();
    samples.sort_by(f64::total_cmp);
    samples[SAMPLES / 2]
}

fn main() {
    let shop = shop::demo();
    println!("| sheets | a fresh plan, ns |");
    println!("|---|---|");
    for sheets in [5, 25, 50, 100] {
        let pages = format!("{} + 4", (sheets - 1) * 4);
        let draft = Draft::of(&[
            ("pages", &pages),
            ("size", "170 x 240"),
            ("paper", "70 gsm gloss 0.058 mm"),
            ("cover", "150 gsm gloss 0.115 mm"),
            ("copies", "12,000"),
        ]);
        let job = job::read(&draft, &shop).job.expect("complete");
        let fresh = median(|| {
            black_box(plan::plan(black_box(&job), &shop));
        });
        println!("| {sheets} | {fresh:.0} |");
    }
}
