//! The five sentences for a client: what they say, and what they never say.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::draft::Draft;
use quirefit::job;
use quirefit::plan::{Plan, Verdict, plan};
use quirefit::shop::{self, PriceRule, Shop};
use quirefit::units::Money;
use quirefit::view::letter::letter;
use quirefit::view::{Numbers, Printer};
use quirefit::words::{EN, EN_GB, Words};
use std::collections::BTreeSet;
use support::{files, planned_file, shops};

fn written(job: &job::Job, shop: &Shop, planned: &Plan) -> String {
    let words = Words::load(&[EN, EN_GB]);
    letter(job, shop, planned, &Printer { words: &words, numbers: Numbers::METRIC })
}

fn of(fields: &[(&str, &str)], shop: &Shop) -> (String, Plan) {
    let job = job::read(&Draft::of(fields), shop).job.unwrap();
    let planned = plan(&job, shop);
    (written(&job, shop, &planned).replace('\u{a0}', " "), planned)
}

const GUIDE: &[(&str, &str)] = &[
    ("title", "A Field Guide to Teapots"),
    ("pages", "40 + 4"),
    ("size", "A5"),
    ("paper", "130 gsm silk 0.105 mm"),
    ("cover", "250 gsm silk 0.240 mm"),
    ("copies", "1,200"),
];

/// The same with one field more, or another text in one.
fn with(field: &'static str, text: &'static str) -> Vec<(&'static str, &'static str)> {
    GUIDE.iter().copied().filter(|(id, _)| *id != field).chain([(field, text)]).collect()
}

#[test]
fn a_client_reads_what_it_is_and_what_to_send() {
    let mut shop = shop::demo();
    shop.rates.price = None;
    let (text, _) = of(GUIDE, &shop);
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines.len(), 5, "{text}");
    assert_eq!(lines[0], "“A Field Guide to Teapots”: yes, we can make it so.");
    assert!(lines[1].starts_with("44 pages, 148 mm × 210 mm, saddle stitched"), "{text}");
    assert!(lines[1].ends_with(", 1,200 copies."), "{text}");
    assert!(lines[1].contains("130 gsm silk") && lines[1].contains("250 gsm silk"), "{text}");
    // Ten sheets of 0.105 mm and a cover of 0.240, each lying there twice: 2.58 mm.
    assert!(lines[2].contains("about 2.58 mm thick"), "{text}");
    assert!(
        lines[3].contains("single pages of 148 mm × 210 mm") && lines[3].contains("3 mm of bleed")
    );
    assert!(lines[3].ends_with("so leave the pages where they are."), "{text}");
    assert_eq!(lines[4], "The price follows.");
}

#[test]
fn every_case_has_its_sentence() {
    let shop = shop::demo();
    let line = |fields: &[(&str, &str)], at: usize| -> String {
        of(fields, &shop).0.lines().nth(at).unwrap().to_owned()
    };
    assert!(line(&with("title", ""), 0).starts_with("This book: yes"));
    let (thick, planned) = of(&with("pages", "400 + 4"), &shop);
    assert_eq!(planned.verdict, Verdict::DoesNotFit);
    assert!(thick.lines().next().unwrap().ends_with("let us look at what would change it."));
    assert!(line(&with("bleeds", "no"), 3).contains("in reading order, with nothing that matters"));
    assert!(line(&with("images", "designer"), 3).ends_with("by the list we send with this."));
    assert!(line(&with("images", "nobody"), 3).ends_with("well away from the face."));
    let card = with("cover", "12 pt board");
    assert!(line(&card, 2).ends_with("thick at the spine."), "{}", line(&card, 2));
}

#[test]
fn a_price_comes_only_by_the_shops_rule() {
    let mut shop = shop::demo();
    let valid = "30 days".to_owned();
    let rule = PriceRule { markup: 0.3, least: Money(7777.0), round: None, valid };
    shop.rates.price = Some(rule);
    let price = |text: &str| text.lines().last().unwrap().to_owned();
    let (text, _) = of(GUIDE, &shop);
    assert!(price(&text).contains("7,777.00, valid for 30 days"), "{text}");
    // Not of a book that cannot be made, and not of a cost that is only a part.
    assert_eq!(price(&of(&with("pages", "400 + 4"), &shop).0), "The price follows.");
    shop.rates.paper_kilo = None;
    shop.press_sheets.iter_mut().for_each(|sheet| sheet.thousand = None);
    let (text, planned) = of(GUIDE, &shop);
    assert!(planned.results.cost.incomplete);
    assert_eq!(price(&text), "The price follows.");
}

/// Numbers of a text, as they are printed.
fn numbers(text: &str) -> BTreeSet<String> {
    let within = |letter: char| letter.is_ascii_digit() || ".,".contains(letter);
    let found = text.split(|letter| !within(letter)).map(|word| word.trim_matches(['.', ',']));
    found.filter(|word| !word.is_empty()).map(str::to_owned).collect()
}

/// Every number of the letter comes from the job or is thickness, mass or bleed: changing every limit,
/// rate and cost of the shop changes no word of it.
#[test]
fn no_limit_rate_or_cost_is_in_it() {
    let mut seen = 0;
    for path in files("examples/jobs") {
        let (_, job, shop) = planned_file(&path);
        let planned = plan(&job, &shop);
        let text = written(&job, &shop, &planned);
        let line = &shop.lines[job.line];
        assert!(!text.contains(&*line.name), "{path}: {text}");
        let own = Shop { rates: shop::Rates { price: None, ..shop.rates.clone() }, ..shop.clone() };
        let quiet = written(&job, &own, &plan(&job, &own));
        for amount in planned.results.cost.items().flat_map(|item| [item.rate, item.total]) {
            let printed = format!("{:.2}", amount.get());
            assert!(!numbers(&quiet).contains(&printed), "{path}: {printed}: {quiet}");
            seen += 1;
        }
        // Another machine that takes the book as well: the same letter.
        let mut other = own.clone();
        for line in &mut other.lines {
            let name = line.name.clone();
            *line = quirefit::data::Line { name, ..quirefit::data::Line::UNLIMITED };
        }
        let unlimited = plan(&job, &other);
        if unlimited.verdict == planned.verdict {
            assert_eq!(written(&job, &other, &unlimited), quiet, "{path}");
        }
    }
    assert!(seen > 20 && shops().len() > 2);
}
