//! The example files: every job plans, every shop reads back, and each is what it says it is.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::draft::{Draft, to_tree};
use quirefit::plan::plan;
use quirefit::shop::{self, SCHEMA, draft_of};
use quirefit::{draft::from_tree, job};
use std::collections::BTreeSet;
use support::{JSON, draft, files, same, shop_of, text_of};

fn jobs() -> Vec<String> {
    let jobs = files("examples/jobs");
    assert!(jobs.len() >= 10, "only {} jobs", jobs.len());
    jobs
}

fn shops() -> Vec<String> {
    let shops = files("examples/shops");
    assert!(shops.len() >= 2, "only {} shops", shops.len());
    shops
}

#[test]
fn every_job_plans_in_the_demo_shop() {
    let shop = shop::demo();
    for path in jobs() {
        let draft =
            draft(&path, &job::SCHEMA).unwrap_or_else(|errors| panic!("{path}: {errors:?}"));
        assert!(!draft.get("title").is_empty(), "{path} has no title");
        assert!(!draft.get("line").is_empty(), "{path} names no line");
        let job = support::job(&draft, &shop);
        let planned = plan(&job, &shop);
        assert!(planned.results.stack.closed.nominal.0.get() > 0.0, "{path}");
        assert_eq!(planned.results.leaves.len() as u32, job.sheets().get(), "{path}");
    }
}

/// One purpose each: no two jobs lead to the same answer by the same findings.
#[test]
fn no_job_shows_what_another_shows() {
    let shop = shop::demo();
    let mut seen = BTreeSet::new();
    for path in jobs() {
        let draft = draft(&path, &job::SCHEMA).unwrap();
        let job = support::job(&draft, &shop);
        let planned = plan(&job, &shop);
        let shows = (
            format!("{:?}", planned.verdict),
            planned.findings.iter().map(|found| (found.rule, found.case)).collect::<Vec<_>>(),
            draft.all().map(|(path, _)| path.to_owned()).collect::<Vec<_>>(),
        );
        assert!(seen.insert(format!("{shows:?}")), "{path} shows nothing of its own");
    }
}

/// Files stand as the planner would write them: opened and saved they differ in no byte.
#[test]
fn a_job_saved_again_is_the_same_file() {
    for path in jobs() {
        let draft = draft(&path, &job::SCHEMA).unwrap();
        let fields = |text: &str| {
            let tree = (JSON.parse)(text).unwrap();
            from_tree(&tree, &job::SCHEMA).unwrap()
        };
        let saved = (JSON.print)(&to_tree(&draft, &job::SCHEMA));
        assert_eq!(fields(&saved), draft, "{path}");
        assert_eq!(fields(&text_of(&path)), draft, "{path}");
    }
}

#[test]
fn every_shop_reads_back_equal() {
    for path in shops() {
        let shop = shop_of(&path);
        assert!(shop.note.contains("Invented"), "{path}: the note must say that it is invented");
        assert!(shop.lines.iter().all(|line| line.note.contains("Invented")), "{path}");
        assert!(shop.lines.len() >= 2 && shop.stocks.len() >= 3, "{path} is thin");
        assert!(shop.press_sheets.len() >= 2, "{path} is thin");
        let written = draft_of(&shop);
        let tree = to_tree(&written, &SCHEMA);
        let text = (JSON.print)(&tree);
        let read = from_tree(&(JSON.parse)(&text).unwrap(), &SCHEMA).unwrap();
        same(&read, &written, &path);
        same(&shop::read(&read).unwrap(), &shop, &path);
    }
}

/// The demo shop too: what the page saves when asked for the shop.
#[test]
fn the_demo_shop_reads_back_equal() {
    let demo = shop::demo();
    same(&shop::read(&draft_of(&demo)).unwrap(), &demo, "the demo shop");
}

/// One thinks in millimetres, one in inches: the same texts mean other lengths.
#[test]
fn a_shop_in_inches_means_inches() {
    let paths = shops();
    let inches: Vec<&String> =
        paths.iter().filter(|path| draft(path, &SCHEMA).unwrap().get("units") == "in").collect();
    assert!(!inches.is_empty() && inches.len() < paths.len());
    for path in inches {
        let mut texts = draft(path, &SCHEMA).unwrap();
        let shop = shop::read(&texts).unwrap();
        assert!((shop.defaults.bleed.get() - 3.175).abs() < 1e-12, "{path}");
        texts.set("units", "mm");
        let read_wrongly = shop::read(&texts);
        assert!(read_wrongly.is_err() || read_wrongly.unwrap() != shop, "{path}");
    }
}

/// Each line of each shop can make something, and its own papers can be asked for by name.
#[test]
fn every_line_of_every_shop_makes_a_book_of_its_own_paper() {
    for path in shops() {
        let shop = shop_of(&path);
        for line in &shop.lines {
            let papers = || shop.stocks.iter().map(|stock| stock.name.as_str());
            let fits = papers().chain([""]).any(|cover| {
                let ways =
                    papers().flat_map(|paper| ["A5", "5.5 x 8.5 in"].map(|size| (paper, size)));
                let mut ways = ways.flat_map(|way| [8, 16, 24, 32, 40].map(|pages| (way, pages)));
                ways.any(|((paper, size), pages)| {
                    let draft = Draft::of(&[
                        ("pages", &pages.to_string()),
                        ("size", size),
                        ("paper", paper),
                        ("cover", cover),
                        ("copies", "500"),
                        ("line", &line.name),
                    ]);
                    let planned = plan(&support::job(&draft, &shop), &shop);
                    planned.verdict == quirefit::plan::Verdict::Fits
                })
            });
            assert!(fits, "{path}: {} makes nothing", line.name);
        }
    }
}

/// Figures that were worked out, not typed: no digits are written that cannot be read.
#[test]
fn a_shop_with_endless_decimals_is_written_so_that_it_can_be_read() {
    let mut shop = shop::demo();
    let third = |number: f64| Some(number / 3.0);
    shop.round_fold =
        Some(shop::Calibration { factor: 5.0 / 3.0, error: 1.0 / 3.0, note: "x".to_owned() });
    shop.defaults.bleed = quirefit::units::Mm(10.0 / 3.0);
    shop.carton.tare = quirefit::units::Gram(1000.0 / 3.0);
    for line in &mut shop.lines {
        for range in [&mut line.flat_stack, &mut line.knife, &mut line.draw] {
            range.most = range.most.and_then(third);
        }
        line.pace.overs_share = 1.0 / 30.0;
        line.stitching.wires[0] = third(1.7);
        line.supplies.chip_mass = third(50_000.0);
    }
    for sheet in &mut shop.press_sheets {
        sheet.size.width = sheet.size.width / 3.0 * 2.0;
    }
    let read = shop::read(&draft_of(&shop)).unwrap();
    let again = shop::read(&draft_of(&read)).unwrap();
    same(&again, &read, "once written it stays as it is");
    let most = |shop: &shop::Shop| shop.lines[0].knife.most.unwrap();
    assert!((most(&read) - most(&shop)).abs() < 1e-8);
}
