//! Any bytes as a design: read, and where they can be read, every page written anew, and a book planned
//! and laid of them.
//!
//! A parser that stops at damaged input takes only its own worker with it, and the page says so: a panic
//! inside of it counts as an answer here. One of ours does not, nor does work that never ends.
#![no_main]

use libfuzzer_sys::fuzz_target;
use quirefit::draft::Draft;
use quirefit::intake::{
    Binding, Delivery, Desk, Facts, Frame, Matrix, Offered, Order, OrderPage, Part, Placed,
    Sources, compare, pass, slots, taken,
};
use quirefit::job::{self, Job};
use quirefit::plan::{Plan, plan};
use quirefit::shop;
use std::panic::{self, AssertUnwindSafe};
use std::sync::{LazyLock, Once};

/// Pages written at most: a few bytes may say that there are millions.
const MOST: usize = 50;

/// A book that bytes may be the design of, bound at either edge.
static BOOKS: LazyLock<Vec<(Job, Plan, Binding)>> = LazyLock::new(|| {
    let edges = [("left", Binding::Left), ("top", Binding::Top)];
    let book = |(edge, binding)| {
        let draft = Draft::of(&[
            ("pages", "8 + 4"),
            ("size", "A5"),
            ("paper", "100 gsm silk"),
            ("cover", "250 gsm silk"),
            ("copies", "500"),
            ("bound_edge", edge),
        ]);
        let shop = shop::demo();
        let job = job::read(&draft, &shop).job.expect("a sound job");
        let plan = plan(&job, &shop);
        (job, plan, binding)
    };
    edges.into_iter().map(book).collect()
});

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
    write(&mut desk, (0..pages).map(page).collect());
    for book in BOOKS.iter() {
        write(&mut desk, laid(&facts, book));
    }
}

/// The book of these pages, inside and cover of one file.
fn laid(facts: &Facts, (job, plan, binding): &(Job, Plan, Binding)) -> Vec<OrderPage> {
    let delivery = Delivery { inside: facts, cover: Some(facts) };
    let _ = Offered::of(&delivery);
    let _ = compare(&delivery, job, plan, *binding);
    let sources = Sources::of(&delivery, job, plan, *binding);
    let page = |slot: &quirefit::intake::Slot| {
        let bleed = job.bleed.unwrap_or_default();
        let window = |laid| slot.window(laid, bleed, (bleed, bleed));
        OrderPage {
            size: (slot.size.width.get(), slot.size.height.get()),
            turned: 0,
            placed: slot.placed(&sources, *binding, window).into_iter().collect(),
            marks: Vec::new(),
        }
    };
    slots(job, plan).iter().map(page).collect()
}

fn write(desk: &mut Desk, pages: Vec<OrderPage>) {
    let [title, language, layer] = [String::new(), String::new(), String::new()];
    let order = Order { title, language, layer, pages };
    assert_eq!(taken(&pass(&order)), Some(order.clone()));
    desk.begin(order);
    while let (made, all) = desk.go_on()
        && made < all
    {}
    assert!(desk.written().starts_with(b"%PDF-"));
}
