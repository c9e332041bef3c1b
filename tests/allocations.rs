//! Planning over an earlier plan, and the whole search, allocate nothing once their lists have grown.
//! A test program of its own: the counting allocator sees everything that runs beside it.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]
#![allow(unsafe_code, reason = "an allocator cannot be written without")]

use quirefit::advise::Search;
use quirefit::draft::Draft;
use quirefit::plan::{Plan, plan_into};
use quirefit::{job, shop};
use std::alloc::{GlobalAlloc, Layout, System};
use std::cell::Cell;

/// Counts what this thread asks for and passes everything on to the system.
struct Counting;

thread_local! {
    static COUNT: Cell<u64> = const { Cell::new(0) };
}

unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        COUNT.with(|count| count.set(count.get() + 1));
        unsafe { System.alloc(layout) }
    }
    unsafe fn dealloc(&self, pointer: *mut u8, layout: Layout) {
        unsafe { System.dealloc(pointer, layout) }
    }
    unsafe fn realloc(&self, pointer: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        COUNT.with(|count| count.set(count.get() + 1));
        unsafe { System.realloc(pointer, layout, size) }
    }
}

#[global_allocator]
static ALLOCATOR: Counting = Counting;

/// Allocations of this thread while something runs.
fn counted(work: impl FnOnce()) -> u64 {
    let before = COUNT.with(Cell::get);
    work();
    COUNT.with(Cell::get) - before
}

fn book() -> Draft {
    Draft::of(&[
        ("pages", "144 + 4"),
        ("size", "A4"),
        ("paper", "90 gsm uncoated 0.115 mm"),
        ("cover", "250 gsm silk cover 0.290 mm"),
        ("copies", "600"),
        ("line", "Line H"),
    ])
}

#[test]
fn the_counter_counts() {
    assert!(counted(|| drop(std::hint::black_box(vec![1, 2, 3]))) >= 1);
}

#[test]
fn planning_again_allocates_nothing() {
    let shop = shop::demo();
    let job = job::read(&book(), &shop).job.unwrap();
    let mut plan = Plan::default();
    plan_into(&mut plan, &job, &shop);
    let again = counted(|| plan_into(&mut plan, &job, &shop));
    assert_eq!(again, 0, "a stage allocates: hand it the list of last time (see results.rs)");
}

#[test]
fn the_whole_search_allocates_nothing_after_its_first_books() {
    let shop = shop::demo();
    let draft = book();
    let job = job::read(&draft, &shop).job.unwrap();
    let mut search = Search::new(&draft, &job, &shop);
    // Once to let lists grow to the thickest book and the most findings of any.
    search.run(usize::MAX);
    let first = search.tried();
    assert!(first >= 2000, "only {first} books were planned");
    let again = counted(|| search.run(usize::MAX));
    assert_eq!(search.tried(), 2 * first - 1, "the second search plans the same books");
    assert_eq!(again, 0);
}
