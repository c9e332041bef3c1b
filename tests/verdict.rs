//! How sure an answer is: at, just under and just over a limit, and in every place that tells it.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::advise::{Advice, bindings};
use quirefit::data::Range;
use quirefit::draft::{Draft, to_tree};
use quirefit::job;
use quirefit::page::{Event, Patch, Session};
use quirefit::plan::{Plan, Verdict, plan};
use quirefit::shop::{self, Shop, draft_of};
use quirefit::units::Band;
use quirefit::words::Files;
use std::collections::BTreeMap;
use support::{JSON, files, planned_file};

/// 10 sheets inside and one cover of 0.1 mm: the flat stack is to be expected 1.1 mm thick.
const BOOK: [(&str, &str); 4] =
    [("pages", "40 + 4"), ("size", "A5"), ("paper", "115 gsm silk 0.1 mm"), ("copies", "500")];
const EXPECTED: f64 = 1.1;
/// Far less than anybody measures, far more than sums are rounded by.
const LITTLE: f64 = 1e-6;

/// The demo shop, whose first line takes flat stacks in this range only.
fn shop_with(flat_stack: Range) -> Shop {
    let mut shop = shop::demo();
    shop.lines[0].flat_stack = flat_stack;
    shop
}

fn planned(shop: &Shop) -> Plan {
    plan(&support::job(&Draft::of(&BOOK), shop), shop)
}

/// The ends of the band, which the limits below are set around.
fn stack() -> Band<f64> {
    let stack = planned(&shop_with(Range::ANY)).results.stack.flat.map(|flat| flat.0.get());
    assert!((stack.nominal - EXPECTED).abs() < 1e-12, "{stack:?}");
    assert!(stack.low < EXPECTED - 0.01 && stack.high > EXPECTED + 0.01, "{stack:?}");
    stack
}

/// A limit at, just under and just over each end of the band and what is to be expected, with what it
/// must come to.
fn ways() -> [(Range, Verdict); 18] {
    use Verdict::{DoesNotFit, Fits, Marginal, Unlikely};
    let Band { low, high, .. } = stack();
    let up = Range::up_to;
    let from = |least| Range { least: Some(least), most: None };
    [
        (up(high + LITTLE), Fits),
        (up(high), Fits),
        (up(high - LITTLE), Marginal),
        (up(EXPECTED + LITTLE), Marginal),
        (up(EXPECTED), Marginal),
        (up(EXPECTED - LITTLE), Unlikely),
        (up(low + LITTLE), Unlikely),
        (up(low), Unlikely),
        (up(low - LITTLE), DoesNotFit),
        (from(low - LITTLE), Fits),
        (from(low), Fits),
        (from(low + LITTLE), Marginal),
        (from(EXPECTED - LITTLE), Marginal),
        (from(EXPECTED), Marginal),
        (from(EXPECTED + LITTLE), Unlikely),
        (from(high - LITTLE), Unlikely),
        (from(high), Unlikely),
        (from(high + LITTLE), DoesNotFit),
    ]
}

#[test]
fn what_is_to_be_expected_decides_between_only_just_and_probably_not() {
    for (range, verdict) in ways() {
        assert_eq!(planned(&shop_with(range)).verdict, verdict, "{range:?}");
    }
}

/// The page with everything open, in a shop.
fn page(shop: &Shop) -> BTreeMap<String, String> {
    let mut session = Session::new(Files::new(), &["en-GB".to_owned()], None, JSON);
    let mut html = BTreeMap::new();
    let mut tell = |kind: &str, id: &str, value: &str| {
        let mut patches = session.handle(&Event::new(kind, id, value));
        while !patches.is_empty() {
            let later = patches.contains(&Patch::Later {});
            for patch in patches {
                if let Patch::Html { id, html: told } = patch {
                    html.insert(id, told);
                }
            }
            patches = if later { session.handle(&Event::new("rest", "", "")) } else { Vec::new() };
        }
    };
    tell("start", "", "");
    tell("file", "shop", &(JSON.print)(&to_tree(&draft_of(shop), &shop::SCHEMA)));
    tell("act", "new", "");
    for (path, text) in BOOK {
        tell("input", path, text);
    }
    tell("toggle", "open-bindings", "open");
    tell("act", "print-card", "");
    html
}

/// The answer, its region of other bindings and the printed card say one thing.
#[test]
fn every_place_on_the_page_follows_from_one_verdict() {
    for (range, verdict) in ways() {
        let html = page(&shop_with(range));
        let all: String = html.values().map(String::as_str).collect();
        let (head, bound) = match verdict {
            Verdict::Fits => ("Yes.", "is possible."),
            Verdict::Marginal => ("Only just.", "is only just possible: a dummy decides."),
            Verdict::Unlikely => {
                ("Probably not: a dummy decides.", "is probably not possible: a dummy decides.")
            }
            Verdict::DoesNotFit => ("No.", "does not go on this line as the book stands."),
        };
        let answers: Vec<&str> = ["Yes.", "Only just.", "Probably not: a dummy decides.", "No."]
            .into_iter()
            .filter(|answer| all.contains(&format!("<strong>{answer}</strong>")))
            .collect();
        assert_eq!(answers, [head], "{range:?}");
        let card = &html["job-card"];
        assert!(card.contains(&format!("<strong>{head}</strong>")), "{range:?}: {card}");
        let round = format!("<strong>Stitched, spine as it folds</strong> {bound}");
        assert!(all.contains(&round), "{range:?}: {all}");
    }
}

/// The way that the job asks for has the plan's verdict; the other form of the spine is what comes of
/// typing it. What was measured on a dummy of the one says nothing of the other.
#[test]
fn a_book_bound_otherwise_is_planned_like_any_other() {
    let mut apart = 0;
    let paths = files("examples/rules").into_iter().chain(files("examples/jobs"));
    for path in paths {
        let (mut draft, job, shop) = planned_file(&path);
        let planned = plan(&job, &shop);
        let ways = Advice::at_once(&job, &shop, &planned).bindings;
        assert_eq!(ways, bindings(&job, &shop, &planned));
        let square = draft.get("spine") == "square";
        let [round, pressed] = ["stitched-round", "stitched-square"]
            .map(|id| ways.iter().find(|way| way.id == id).unwrap());
        let (chosen, other) = if square { (pressed, round) } else { (round, pressed) };
        assert!(chosen.chosen && !other.chosen, "{path}");
        assert_eq!(chosen.verdict, planned.verdict, "{path}");
        draft.set("spine", if square { "" } else { "square" });
        draft.set("dummy_push_out", "");
        let typed = job::read(&draft, &shop).job.unwrap();
        assert_eq!(other.verdict, plan(&typed, &shop).verdict, "{path}");
        apart += usize::from(other.verdict != chosen.verdict);
    }
    assert!(apart > 0, "no example tells the two forms of the spine apart");
}
