//! Any bytes as a design: read, and where they can be read, every page written anew.
//!
//! A parser that stops at damaged input takes only its own worker with it, and the page says so: a panic
//! inside of it counts as an answer here. One of ours does not, nor does work that never ends.
#![no_main]

use libfuzzer_sys::fuzz_target;
use quirefit::intake::{Desk, Frame, Matrix, Order, OrderPage, Part, Placed, pass, taken};
use std::panic::{self, AssertUnwindSafe};
use std::sync::Once;

/// Pages written at most: a few bytes may say that there are millions.
const MOST: usize = 50;

static WATCH: Once = Once::new();

fuzz_target!(|bytes: &[u8]| {
    WATCH.call_once(|| {
        let stop = panic::take_hook();
        panic::set_hook(Box::new(move |told| {
            let there = told.location().map_or("", |place| place.file());
            if !there.contains("hayro-") {
                stop(told);
            }
        }));
    });
    // Nothing of it is looked at after a panic.
    let _ = panic::catch_unwind(AssertUnwindSafe(|| work(bytes)));
});

fn work(bytes: &[u8]) {
    let mut desk = Desk::default();
    let Ok(facts) = desk.arrive(bytes.to_vec(), "") else { return };
    assert!(!facts.pages.is_empty());
    assert_eq!(taken(&pass(&facts)), Some(facts.clone()));
    desk.place(Part::Inside);
    let clip = Frame { left: 0.0, bottom: 0.0, right: 100.0, top: 100.0 };
    let page = |page: u32| OrderPage {
        size: (100.0, 100.0),
        turned: 0,
        placed: vec![Placed { part: Part::Inside, page, matrix: Matrix::shift(0.0, 0.0), clip }],
        marks: Vec::new(),
    };
    let pages = facts.pages.len().min(MOST) as u32;
    let [title, language, layer] = [String::new(), String::new(), String::new()];
    desk.begin(Order { title, language, layer, pages: (0..pages).map(page).collect() });
    while let (made, all) = desk.go_on()
        && made < all
    {}
    assert!(desk.written().starts_with(b"%PDF-"));
}
