//! What a run costs, what a little more costs, and the curve: against independently read and planned
//! drafts, and by hand.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use proptest::prelude::*;
use quirefit::advise::CostSteps;
use quirefit::draft::Draft;
use quirefit::job::Job;
use quirefit::plan::{Plan, plan};
use quirefit::shop::{self, Shop};
use quirefit::units::{Copies, Money};
use support::{files, planned_file};

const BOOK: [(&str, &str); 6] = [
    ("pages", "40 + 4"),
    ("size", "A5"),
    ("paper", "130 gsm silk 0.106 mm"),
    ("cover", "250 gsm silk cover 0.240 mm"),
    ("copies", "1,200"),
    ("press_sheet", "SRA3"),
];

fn read(shop: &Shop, changes: &[(&str, &str)]) -> Job {
    let mut draft = Draft::of(&BOOK);
    for (path, text) in changes {
        draft.set(path, text);
    }
    support::job(&draft, shop)
}

fn cost(shop: &Shop, changes: &[(&str, &str)]) -> (f64, f64) {
    let cost = plan(&read(shop, changes), shop).results.cost;
    (cost.total.get(), cost.each.get())
}

fn steps(shop: &Shop, changes: &[(&str, &str)]) -> CostSteps {
    let job = read(shop, changes);
    CostSteps::of(&job, shop, &plan(&job, shop)).unwrap()
}

/// The demo shop, buying SRA3 by the thousand.
fn by_the_thousand(price: f64) -> Shop {
    let mut shop = shop::demo();
    let sheet = shop.press_sheets.iter_mut().find(|sheet| sheet.name == "SRA3").unwrap();
    sheet.thousand = Some(Money(price));
    shop
}

#[track_caller]
fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-9, "found {found}, expected {expected}");
}

/// What is said of a step is the difference of two books that somebody typed.
#[test]
fn a_step_is_the_difference_of_two_drafts() {
    for shop in [shop::demo(), by_the_thousand(71.0)] {
        for (now, larger) in [("40 + 4", "44 + 4"), ("62", "66"), ("8 + 4", "12 + 4")] {
            let (total, each) = cost(&shop, &[("pages", now)]);
            let found = steps(&shop, &[("pages", now)]);
            let (more_total, more_each) = cost(&shop, &[("pages", larger)]);
            let sheet = found.sheet.unwrap();
            near(sheet.total.get(), more_total - total);
            near(sheet.each.get(), more_each - each);
            assert!(sheet.total > Money::ZERO, "a sheet costs something");
            let (more_total, more_each) = cost(&shop, &[("pages", now), ("copies", "1300")]);
            assert_eq!(found.more, Copies(100));
            near(found.copies.total.get(), more_total - total);
            near(found.copies.each.get(), more_each - each);
            assert!(found.copies.each < Money::ZERO, "a copy of many is cheaper");
        }
    }
}

/// Every point of the curve is what a draft with so many copies costs, the job's own among them.
#[test]
fn the_curve_is_what_drafts_of_so_many_copies_cost() {
    for shop in [shop::demo(), by_the_thousand(71.0)] {
        for copies in [1_u32, 30, 1_200, 40_000] {
            let curve = steps(&shop, &[("copies", &copies.to_string())]).curve;
            let own: Vec<_> = curve.iter().filter(|at| at.copies == Copies(copies)).collect();
            assert_eq!(own.len(), 1, "{copies}");
            assert!(own[0].ordered);
            assert!(curve.windows(2).all(|pair| pair[0].copies < pair[1].copies));
            assert!(curve.first().unwrap().copies <= Copies(copies.div_ceil(5)));
            assert!(curve.last().unwrap().copies >= Copies(copies * 5 - 1));
            for at in curve.iter().filter(|at| at.ordered) {
                let typed = at.copies.get().to_string();
                let (total, each) = cost(&shop, &[("copies", &typed)]);
                near(at.total.get(), total);
                near(at.each.get(), each);
            }
        }
    }
}

/// A further carton makes a copy dearer: the curve shows both sides of it.
#[test]
fn a_further_carton_is_a_step_of_the_curve() {
    let mut shop = shop::demo();
    shop.rates.carton = Some(Money(400.0));
    let job = read(&shop, &[("copies", "150")]);
    let planned = plan(&job, &shop);
    let full = planned.results.packing.cartons.unwrap().each;
    let curve = CostSteps::of(&job, &shop, &planned).unwrap().curve;
    let at = |copies: u32| curve.iter().find(|at| at.copies == Copies(copies)).unwrap();
    let jump = at(full + 1).total.get() - at(full).total.get();
    assert!(jump > 400.0 && jump < 410.0, "{jump}");
    assert!(at(full + 1).each > at(full).each);
}

/// Two flats on an SRA3 (see the press sheets' own tests), eleven folded sheets of a set; the line
/// spoils 2 % and 25 sets: ceil(1,200 / 0.98) + 25 = 1,250 sets, 625 press sheets for each of eleven.
#[test]
fn by_hand_with_sheets_by_the_thousand() {
    let mut shop = by_the_thousand(80.0);
    shop.rates = shop::Rates::default();
    shop.press_sheets.retain(|sheet| sheet.name == "SRA3");
    shop.press_sheets[0].click = Some(Money(0.04));
    let changes = [("line", "Line H"), ("route", "cut")];
    let planned = plan(&read(&shop, &changes), &shop);
    let cost = &planned.results.cost;
    let sheets = cost.item("sheets").unwrap();
    let bought = 11.0 * 625.0;
    near(sheets.quantity, bought / 1000.0);
    near(sheets.total.get(), bought * 0.08);
    near(cost.item("click").unwrap().total.get(), 2.0 * bought * 0.04);
    near(cost.total.get(), bought * (0.08 + 0.08));
    near(cost.each.get(), bought * 0.16 / 1200.0);
    // The same sheet is ranked by the same price.
    let way = planned.results.layout.chosen().unwrap();
    let sets = f64::from(planned.results.run.quantities.components[0].printed);
    let ranked = way.cost.unwrap().get() * sets;
    assert!((ranked - cost.total.get()).abs() < 0.2, "{ranked} {:?}", cost.total);
}

/// No rates, no cost; sets that are missing, no talk of further copies.
#[test]
fn nothing_is_said_where_nothing_is_known() {
    let mut shop = shop::demo();
    let job = read(&shop, &[("supplied_inside", "500")]);
    assert_eq!(CostSteps::of(&job, &shop, &plan(&job, &shop)), None);
    shop.rates = shop::Rates::default();
    shop.press_sheets.clear();
    let job = read(&shop, &[("press_sheet", "")]);
    assert_eq!(CostSteps::of(&job, &shop, &plan(&job, &shop)), None);
}

fn sums(planned: &Plan) -> bool {
    let cost = &planned.results.cost;
    let sum: f64 = cost.items().map(|item| item.total.get()).sum();
    let lines = cost.items().all(|item| {
        (item.quantity * item.rate.get() - item.total.get()).abs() <= 1e-9 * item.total.get().abs()
    });
    let copies = planned.results.run.quantities.good.as_f64().max(1.0);
    lines
        && (sum - cost.total.get()).abs() <= 1e-9 * sum.abs()
        && (cost.each.get() * copies - sum).abs() <= 1e-9 * sum.abs()
}

#[test]
fn lines_of_every_example_sum_to_the_total() {
    for path in files("examples/jobs").iter().chain(&files("examples/rules")) {
        let (_, job, shop) = planned_file(path);
        assert!(sums(&plan(&job, &shop)), "{path}");
    }
}

proptest! {
    #![proptest_config(support::tried(64, None))]

    /// Whatever the shop charges, by mass or by the thousand: lines sum to the total, and dearer
    /// sheets of the one size on hand make a dearer book by just as much.
    #[test]
    fn lines_sum_to_the_total(
        pages in 2_u32..40,
        copies in 1_u32..20_000,
        thousand in prop::option::of(1.0_f64..500.0),
        more in 1.0_f64..100.0,
        kilo in prop::option::of(0.1_f64..9.0),
    ) {
        let mut shop = shop::demo();
        shop.press_sheets.retain(|sheet| sheet.name == "SRA3");
        shop.press_sheets[0].thousand = thousand.map(Money);
        shop.rates.paper_kilo = kilo.map(Money);
        let job = read(&shop, &[("pages", &(pages * 4).to_string()), ("copies", &copies.to_string())]);
        let planned = plan(&job, &shop);
        prop_assert!(sums(&planned));
        let cost = &planned.results.cost;
        prop_assert_eq!(cost.item("sheets").is_some(), thousand.is_some());
        prop_assert_eq!(cost.item("paper").is_some(), thousand.is_none() && kilo.is_some());
        if let Some(thousand) = thousand {
            shop.press_sheets[0].thousand = Some(Money(thousand + more));
            let dearer = plan(&job, &shop).results.cost.total.get() - cost.total.get();
            let sheets = planned.results.layout.needed.unwrap().sheets;
            prop_assert!((dearer - sheets * more / 1000.0).abs() < 1e-6 * dearer.max(1.0));
        }
    }
}
