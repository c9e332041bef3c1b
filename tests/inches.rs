//! Lengths and masses keep together: pounds and ounces beside inches, grams and kilograms beside
//! millimetres; and money with the currency of the shop's file, or as plain numbers that say so.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::page::{Patch, Session};
use quirefit::view::REGIONS;
use quirefit::words::Files;
use std::collections::BTreeMap;
use support::{JSON, answered, files, text_of};

/// All that a page says of a job, everything open.
fn page(job: &str, shop: Option<&str>, units: &str) -> BTreeMap<String, String> {
    let mut session = Session::new(Files::new(), &["en-GB".to_owned()], None, JSON);
    let mut said = BTreeMap::new();
    let mut tell = |kind: &str, id: &str, value: &str| {
        for patch in answered(&mut session, kind, id, value) {
            match patch {
                Patch::Html { id, html } => drop(said.insert(id, html)),
                Patch::Download { text, .. } => drop(said.insert("tables".to_owned(), text)),
                _ => {}
            }
        }
    };
    // What would make it fit is not looked for.
    tell("helper", "", "ready");
    tell("start", "", "");
    if let Some(shop) = shop {
        tell("file", "shop", shop);
    }
    tell("file", "job", job);
    tell("change", "units", units);
    for region in &REGIONS {
        tell("toggle", &format!("open-{}", region.id), "open");
    }
    tell("act", "print-figures", "");
    tell("act", "save-tables", "");
    said
}

/// Whether a number stands with this sign behind it.
fn counts_in(html: &str, sign: &str) -> bool {
    let mut text = String::new();
    for piece in html.replace("&nbsp;", " ").split('<') {
        let (tag, words) = piece.split_once('>').unwrap_or(("", piece));
        // Figures stand in buttons and spans; any other element is a place of its own.
        let within = ["button", "span"].iter().any(|name| tag.trim_matches('/').starts_with(name));
        text.push_str(if within { "" } else { " " });
        text.push_str(words);
    }
    let words: Vec<&str> = text.split_whitespace().collect();
    words.windows(2).any(|pair| {
        let number = pair[0].ends_with(|c: char| c.is_ascii_digit());
        number && pair[1].split(|c: char| !c.is_alphanumeric() && c != '/').next() == Some(sign)
    })
}

#[test]
fn masses_go_with_lengths() {
    let mut seen = [0; 4];
    for path in files("examples/jobs") {
        for (units, own, others) in
            [("in", ["lb", "oz"], ["kg", "g"]), ("mm", ["kg", "g"], ["lb", "oz"])]
        {
            let said = page(&text_of(&path), None, units);
            let places = ["body-pack", "body-stitches", "body-run", "body-cost"];
            let told = |sign: &str| {
                let counted = places.iter().filter(|place| counts_in(&said[**place], sign));
                counted.copied().collect::<Vec<_>>()
            };
            for sign in others {
                assert_eq!(told(sign), [""; 0], "{path} in {units} counts in {sign}");
            }
            for (place, sign) in own.iter().enumerate() {
                seen[place + if units == "in" { 0 } else { 2 }] += told(sign).len();
            }
        }
    }
    assert!(seen.iter().all(|count| *count > 0), "{seen:?}");
}

/// A kilogram's rate is told for a pound beside pounds, so that the product is the same amount. 1.60 for a
/// kilogram are 0.7257 for a pound of 0.45359237 kg (NIST Handbook 44, 2023, appendix C).
#[test]
fn paper_by_the_pound_costs_what_it_costs_by_the_kilogram() {
    let job = text_of("examples/jobs/teapot-guide.json");
    let row = |units: &str| -> Vec<String> {
        let tables = page(&job, None, units).remove("tables").unwrap();
        let row = tables
            .lines()
            .find(|line| line.starts_with("Paper,") && line.matches(',').count() == 4);
        row.unwrap_or_else(|| panic!("{tables}")).split(',').map(str::to_owned).collect()
    };
    let (kilos, pounds) = (row("mm"), row("in"));
    let number = |text: &str| -> f64 { text.parse().unwrap() };
    assert_eq!((kilos[2].as_str(), pounds[2].as_str()), ("kg", "lb"));
    assert_eq!((kilos[3].as_str(), pounds[3].as_str()), ("1.6", "0.7257"));
    assert_eq!(kilos[4], pounds[4], "the amount is the same");
    assert!((number(&pounds[1]) * 0.453_592_37 - number(&kilos[1])).abs() < 1e-3, "{pounds:?}");
    assert!((number(&kilos[1]) * 1.6 - number(&kilos[4])).abs() < 0.01, "{kilos:?}");
}

#[test]
fn money_has_the_currency_of_the_shop_or_says_that_there_is_none() {
    const NONE: &str = "The shop file names no currency";
    let job = text_of("examples/jobs/teapot-guide.json");
    let bare = page(&job, None, "mm");
    assert!(bare["body-cost"].contains(NONE), "{}", bare["body-cost"]);
    assert!(bare["summary-cost"].starts_with("The run costs "), "{}", bare["summary-cost"]);
    let amount = bare["summary-cost"]["The run costs ".len()..].chars().next().unwrap();
    assert!(amount.is_ascii_digit(), "{}", bare["summary-cost"]);
    for html in bare.values() {
        assert!(!html.contains('¤'), "{html}");
    }
    let shop = text_of("examples/shops/prairie-loft-bindery.json");
    let priced = page(&text_of("examples/rules/wire_work.fires.json"), Some(&shop), "mm");
    assert!(priced["summary-cost"].starts_with("The run costs $ "), "{}", priced["summary-cost"]);
    assert!(!priced["body-cost"].contains(NONE) && priced["body-cost"].contains("Amounts in $"));
}
