//! How times grow: plans with sheets and sections, searches with candidates, lists with titles. Medians
//! of many runs, plain clock, as Markdown. `cargo bench --bench search`.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod geometry;

use geometry::BOOK;
use quirefit::advise::{Advice, Search};
use quirefit::draft::Draft;
use quirefit::titles::List;
use quirefit::view::title_rows::answered;
use quirefit::view::{Numbers, Printer};
use quirefit::words::{EN, EN_GB, Words};
use quirefit::{job, plan, shop};
use std::hint::black_box;
use std::time::Instant;

/// Runs in one sample, and samples of which the median counts.
const RUNS: u32 = 2000;
const SAMPLES: usize = 31;
/// Candidates of one search, more than there are.
const MOST: usize = 100_000;

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
    println!("| sheets | a fresh plan, ns | over an earlier one, ns |");
    println!("|--:|--:|--:|");
    for sheets in [5, 25, 50, 100] {
        let pages = format!("{} + 4", (sheets - 1) * 4);
        let mut draft = Draft::of(BOOK);
        draft.set("pages", &pages);
        let job = job::read(&draft, &shop).job.expect("complete");
        let fresh = median(|| {
            black_box(plan::plan(black_box(&job), &shop));
        });
        let mut earlier = plan::plan(&job, &shop);
        let again = median(|| {
            plan::plan_into(black_box(&mut earlier), black_box(&job), &shop);
        });
        println!("| {sheets} | {fresh:.0} | {again:.0} |");
    }
    sections(&shop);
    search(&shop);
    titles(&shop);
}

/// One sheet more in each section, each of a paper of its own.
fn sections(shop: &shop::Shop) {
    println!("\n| sections beside cover and inside | a fresh plan, ns |");
    println!("|--:|--:|");
    for count in [0, 1, 4, 8] {
        let mut draft = Draft::of(HARD);
        draft.set("pages", &format!("{} + 4", 100 - 4 * count));
        for section in 0..count {
            draft.set(&format!("sections.{section}.pages"), "4");
            draft.set(&format!("sections.{section}.paper"), &format!("{} gsm silk", 90 + section));
        }
        let job = job::read(&draft, shop).job.expect("complete");
        let fresh = median(|| {
            black_box(plan::plan(black_box(&job), shop));
        });
        println!("| {count} | {fresh:.0} |");
    }
}

/// Lists of titles, each row read, planned and written.
fn titles(shop: &shop::Shop) {
    let words = Words::load(&[EN, EN_GB]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    println!("\n| titles | ms | titles a second |");
    println!("|--:|--:|--:|");
    for rows in [10, 100, 1000, 5000] {
        let mut list = "Title,Pages,Size,Paper,Cover,Copies\n".to_owned();
        for row in 0..rows {
            let pages = 16 + 4 * (row % 30);
            list += &format!("Tide {row},{pages} + 4,A5,115 gsm silk,250 gsm silk,{}\n", 500 + row);
        }
        let mut times: Vec<f64> = (0..7)
            .map(|_| {
                let start = Instant::now();
                let list = List::read(list.as_bytes()).expect("a list");
                let (_, tally) = answered(&list, shop, "mm", &printer);
                assert_eq!((tally.rows, tally.unread), (rows, 0));
                start.elapsed().as_secs_f64()
            })
            .collect();
        times.sort_by(f64::total_cmp);
        let seconds = times[times.len() / 2];
        println!("| {rows} | {:.1} | {:.0} |", seconds * 1e3, f64::from(rows) / seconds);
    }
}

/// A book that hardly anything saves, so that every candidate is planned.
const HARD: &[(&str, &str)] = &[
    ("pages", "100 + 4"),
    ("size", "A4"),
    ("paper", "300 gsm uncoated 0.4 mm"),
    ("cover", "350 gsm silk cover 0.4 mm"),
    ("head_trim", "50 mm"),
    ("foot_trim", "50 mm"),
    ("head_foot", "after"),
];

/// The whole search.
fn search(shop: &shop::Shop) {
    let books: [(&str, &[(&str, &str)]); 2] = [
        ("hard to save", HARD),
        (
            "too thick",
            &[
                ("pages", "144 + 4"),
                ("size", "A4"),
                ("paper", "90 gsm uncoated 0.115 mm"),
                ("cover", "250 gsm silk cover 0.290 mm"),
                ("line", "Line H"),
            ],
        ),
    ];
    println!("\n| book | candidates | ms | candidates a second | with offers, ms |");
    println!("|---|--:|--:|--:|--:|");
    for (name, book) in books {
        let draft = Draft::of(book);
        let job = job::read(&draft, shop).job.expect("complete");
        let planned = plan::plan(&job, shop);
        let mut times = Vec::new();
        let mut tried = 0;
        for _ in 0..SAMPLES {
            let mut search = Search::new(&draft, &job, shop);
            let start = Instant::now();
            search.run(MOST);
            times.push(start.elapsed().as_secs_f64());
            tried = search.tried();
        }
        times.sort_by(f64::total_cmp);
        let seconds = times[SAMPLES / 2];
        for most in [tried / 8, tried / 4, tried / 2] {
            let mut times: Vec<f64> = (0..SAMPLES)
                .map(|_| {
                    let mut search = Search::new(&draft, &job, shop);
                    let start = Instant::now();
                    search.run(most);
                    start.elapsed().as_secs_f64()
                })
                .collect();
            times.sort_by(f64::total_cmp);
            let seconds = times[SAMPLES / 2];
            println!("| {name} | {most} | {:.2} | {:.0} | |", seconds * 1e3, most as f64 / seconds);
        }
        let start = Instant::now();
        let advice = black_box(Advice::searched(&draft, &job, shop, &planned, MOST));
        let whole = start.elapsed().as_secs_f64() * 1e3;
        println!(
            "| {name} ({} offers) | {tried} | {:.2} | {:.0} | {whole:.2} |",
            advice.offers.len(),
            seconds * 1e3,
            tried as f64 / seconds,
        );
    }
}
