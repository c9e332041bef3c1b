//! A book whose number of copies nobody has said: nothing is told of a run, wherever it would stand, and
//! what is told is true of any number.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::advise::Advice;
use quirefit::draft::{Draft, to_tree};
use quirefit::explain::{explain, rows};
use quirefit::job::Job;
use quirefit::page::{Patch, Session};
use quirefit::plan::{Plan, plan};
use quirefit::shop::{self, Shop, draft_of};
use quirefit::view::html::Scene;
use quirefit::view::json::plan_out;
use quirefit::view::{Numbers, Printer, REGIONS, Reading, Screen, Ticks, csv, letter, text, xjdf};
use quirefit::words::{EN, EN_GB, Files, Words};
use std::collections::{BTreeMap, BTreeSet};
use support::{JSON, answered};

const BOOK: [(&str, &str); 4] =
    [("pages", "40 + 4"), ("size", "A5"), ("paper", "115 gsm silk 0.1 mm"), ("start", "8:00")];
const UNKNOWN: &str = "The run is not known yet: type the number of copies, such as 750.";
const UNSAID: &str = "number of copies not said";
/// Rows of any table that are asked for.
const ROWS: usize = 12;

/// The book in so many copies, with everything that is ever worked out of it.
struct Case {
    job: Job,
    plan: Plan,
    advice: Advice,
}

impl Case {
    fn of(copies: &str, shop: &Shop) -> Self {
        let mut draft = Draft::of(&BOOK);
        draft.set("copies", copies);
        let job = support::job(&draft, shop);
        let plan = plan(&job, shop);
        let mut advice = Advice::at_once(&job, shop, &plan);
        advice.reckon(&job, shop, &plan);
        Self { job, plan, advice }
    }

    fn scene<'a>(&'a self, shop: &'a Shop, words: &'a Words, ticks: &'a Ticks) -> Scene<'a> {
        Scene {
            job: &self.job,
            shop,
            plan: &self.plan,
            advice: &self.advice,
            versions: &[],
            ticks,
            printer: Printer { words, numbers: Numbers::METRIC },
            reading: Reading::Floor,
            screen: Screen::default(),
        }
    }

    /// Every figure and term by id and row, and every explanation.
    fn figures(&self, shop: &Shop) -> BTreeMap<(&'static str, usize), String> {
        let (words, ticks) = (Words::load(&[EN, EN_GB]), Ticks::default());
        let scene = self.scene(shop, &words, &ticks);
        let mut found = BTreeMap::new();
        for row in rows() {
            for at in 0..=ROWS {
                let case = quirefit::explain::Case { at, ..scene.case() };
                let Some(value) = (row.value)(&case) else { continue };
                let told = explain(&case, row.id).map(|told| {
                    told.lines.iter().map(|line| scene.printer.text(line)).collect::<Vec<_>>()
                });
                found.insert((row.id, at), format!("{value:?} {told:?}"));
            }
        }
        found
    }
}

/// The shop of the demo, with a rule for its price: every figure that a run would have.
fn shop_file() -> Draft {
    let mut draft = draft_of(&shop::demo());
    draft.set("price_markup", "0.3");
    draft
}

fn shop() -> Shop {
    shop::read(&shop_file()).unwrap()
}

/// What stands there without a run stands there just so for a few copies and for many; what differs
/// between those does not stand there.
#[test]
fn what_is_told_without_a_run_is_true_of_any_run() {
    let shop = shop();
    let [unsaid, few, many] =
        ["", "750", "20,000"].map(|copies| Case::of(copies, &shop).figures(&shop));
    for (key, told) in &unsaid {
        assert_eq!(Some(told), few.get(key), "{key:?}");
        assert_eq!(Some(told), many.get(key), "{key:?}");
    }
    let of_the_run = few.keys().filter(|key| !unsaid.contains_key(*key));
    let kept: BTreeSet<&str> = of_the_run.map(|(id, _)| *id).collect();
    for id in ["sets_fed", "good", "run_time", "over_best", "printed", "stop_times", "wire_run"]
        .into_iter()
        .chain(["sheets_needed", "run_mass", "cartons", "cost_total", "cost_each", "price"])
    {
        assert!(kept.contains(id), "{id} is told without a run");
    }
    for id in ["copy_mass", "carton_copies", "interval", "makeready", "station", "every", "draw"] {
        assert!((0..=ROWS).any(|at| unsaid.contains_key(&(id, at))), "{id} is lost");
    }
}

/// All that a page says, everything open.
fn page(copies: &str, client: bool) -> BTreeMap<String, String> {
    let mut session = Session::new(Files::new(), &["en-GB".to_owned()], None, JSON);
    let mut said = BTreeMap::new();
    let mut tell = |kind: &str, id: &str, value: &str| {
        for patch in answered(&mut session, kind, id, value) {
            match patch {
                Patch::Html { id, html } => drop(said.insert(id, html.replace('\u{a0}', " "))),
                Patch::Copy { text } => drop(said.insert("copied".to_owned(), text)),
                _ => {}
            }
        }
    };
    tell("start", "", "");
    tell("file", "shop", &(JSON.print)(&to_tree(&shop_file(), &shop::SCHEMA)));
    tell("act", "new", "");
    for (path, text) in BOOK.into_iter().chain([("copies", copies)]) {
        tell("input", path, text);
    }
    tell("act", "reading", if client { "client" } else { "floor" });
    for region in &REGIONS {
        tell("toggle", &format!("open-{}", region.id), "open");
    }
    tell("act", "copy-text", "");
    tell("act", "print-card", "");
    tell("print", "", "");
    said
}

#[test]
fn every_place_of_the_run_says_what_to_type() {
    let maker = page("", false);
    for place in ["summary-run", "summary-cost", "job-card"] {
        assert!(maker[place].contains(UNKNOWN), "{place}: {}", maker[place]);
    }
    assert!(maker["job-card"].contains(UNSAID), "{}", maker["job-card"]);
    assert!(maker["copied"].contains(UNSAID), "{}", maker["copied"]);
    assert!(maker["copied"].ends_with("The price follows."), "{}", maker["copied"]);
    let client = page("", true);
    assert!(client["answer"].contains(UNKNOWN), "{}", client["answer"]);
    assert!(client["summary-pack"].contains(UNKNOWN), "{}", client["summary-pack"]);
    for (place, html) in maker.iter().chain(&client) {
        for told in
            ["sets to feed", "The run costs", "Price by the", "One carton", "1 copy", "All copies"]
        {
            assert!(!html.contains(told), "{place} says {told}: {html}");
        }
    }
    // Said, all of it stands there; one copy is a number like any other.
    for copies in ["750", "1"] {
        let (maker, client) = (page(copies, false), page(copies, true));
        for html in maker.values().chain(client.values()) {
            assert!(!html.contains(UNKNOWN) && !html.contains(UNSAID), "{copies}: {html}");
        }
        assert!(maker["summary-run"].contains("sets to feed"), "{}", maker["summary-run"]);
        assert!(maker["summary-cost"].contains("The run costs"), "{}", maker["summary-cost"]);
        assert!(client["answer"].contains("Price by the shop"), "{}", client["answer"]);
    }
}

#[test]
fn no_file_and_no_program_is_told_of_a_run() {
    let (shop, words, ticks) = (shop(), Words::load(&[EN, EN_GB]), Ticks::default());
    let [unsaid, said] = ["", "750"].map(|copies| Case::of(copies, &shop));
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let out =
        |case: &Case| serde_json::to_value(plan_out(&case.job, &case.plan, &printer)).unwrap();
    let (without, with) = (out(&unsaid), out(&said));
    for pointer in
        ["/run", "/cost", "/stitches/run_wire_g", "/stitches/run_wire_m", "/layout/press_sheets"]
    {
        assert!(without.pointer(pointer).unwrap().is_null(), "{pointer}");
        assert!(!with.pointer(pointer).unwrap().is_null(), "{pointer}");
    }
    let ticket = |case: &Case| xjdf::xjdf(&case.job, &case.plan, &printer);
    assert!(!ticket(&unsaid).contains("Amount"), "{}", ticket(&unsaid));
    assert!(ticket(&said).contains("Amount=\"750\""));
    let told = text::text(&unsaid.job, &shop, &unsaid.plan, &printer);
    assert_eq!(told.matches(UNKNOWN).count(), 2, "{told}");
    assert!(letter::letter(&unsaid.job, &shop, &unsaid.plan, &printer).contains(UNSAID));
    // In tables the cells of the run stay empty; none is 0 or reckoned for a single copy.
    let tables = |case: &Case| csv::tables(&case.scene(&shop, &words, &ticks));
    let cells = |case: &Case| -> Vec<String> {
        let rows = tables(case).into_iter().flat_map(|table| table.rows).flatten();
        rows.map(|cell| format!("{cell:?}")).collect()
    };
    let many = cells(&Case::of("20,000", &shop));
    for cell in cells(&unsaid).iter().filter(|cell| *cell != "Empty") {
        assert!(many.contains(cell) && cells(&said).contains(cell), "{cell}");
    }
}
