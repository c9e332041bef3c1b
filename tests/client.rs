//! A client at the table reads no limit, no rate and no cost: not in the page, whatever is opened or
//! asked, nor in what is printed, saved or kept. Unmistakable figures are planted in a shop, makers
//! must find them and clients must not.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use base64ct::{Base64, Encoding as _};
use quirefit::advise::{Advice, MOST_TRIED};
use quirefit::draft::{Draft, from_tree, to_tree};
use quirefit::job;
use quirefit::page::{EXAMPLE, Event, Patch, Session};
use quirefit::plan::{Verdict, plan, price};
use quirefit::shop::{self, Shop, draft_of};
use quirefit::units::{Gram, Gsm, Measure, Mm, Money, Unit};
use quirefit::view::html::HANDED;
use quirefit::view::json::{book_out, plan_out};
use quirefit::view::{Numbers, Printer, REGIONS};
use quirefit::words::{EN, Files, Words};
use std::collections::{BTreeMap, BTreeSet};
use support::{JSON, answered};

/// What a planted figure counts.
#[derive(Clone, Copy)]
enum Kind {
    Length,
    Weight,
    Mass,
    Money,
}

/// Planted figures: the field of the shop's file and its value. Counts, such as folded sheets in a
/// set, have too few digits to be told from others; page counts are looked for by themselves.
const PLANTED: [(&str, Kind, f64); 26] = [
    ("lines.0.open_width_most", Kind::Length, 613.7),
    ("lines.0.travel_height_most", Kind::Length, 487.3),
    ("lines.0.travel_height_least", Kind::Length, 71.9),
    ("lines.0.finished_width_most", Kind::Length, 339.7),
    ("lines.0.finished_width_least", Kind::Length, 67.3),
    ("lines.0.spine_length_most", Kind::Length, 431.7),
    ("lines.0.flat_stack_most", Kind::Length, 4.127),
    ("lines.0.former_most", Kind::Length, 8.291),
    ("lines.0.knife_most", Kind::Length, 8.737),
    ("lines.0.text_weight_least", Kind::Weight, 43.0),
    ("lines.0.text_weight_most", Kind::Weight, 317.0),
    ("lines.0.cover_weight_most", Kind::Weight, 419.0),
    ("lines.0.face_cut_most", Kind::Length, 17.93),
    ("lines.0.leg_most", Kind::Length, 13.37),
    ("lines.0.draw_most", Kind::Length, 43.91),
    ("carton_mass_most", Kind::Mass, 11_583.0),
    ("rate_line_hour", Kind::Money, 1234.5678),
    ("rate_paper_kilo", Kind::Money, 7.1357),
    ("rate_click", Kind::Money, 0.4321),
    ("rate_wire_kilo", Kind::Money, 43.2187),
    ("rate_carton", Kind::Money, 9.8761),
    ("rate_job", Kind::Money, 777.7123),
    ("press_sheets.0.thousand", Kind::Money, 2468.1357),
    ("press_sheets.0.click", Kind::Money, 0.6543),
    ("postal_steps.0.price", Kind::Money, 6.6541),
    ("postal_steps.1.price", Kind::Money, 8.7653),
];

/// The least that the line cuts clean. The cut itself follows from it and is told to everybody.
const LEAST_CUT: &str = "2.173 mm";

/// How a figure may be printed, in either unit.
fn prints(kind: Kind, value: f64) -> Vec<String> {
    let measures: &[Measure] = match kind {
        Kind::Length => &[Mm(value).into(), Measure::caliper(Mm(value))],
        Kind::Weight => &[Gsm(value).into()],
        Kind::Mass => &[Gram(value).into()],
        Kind::Money => {
            &[Money(value).into(), Measure::rate(Money(value)), Measure::new(value, Unit::Number)]
        }
    };
    let inches = Numbers { unit: quirefit::entry::LengthUnit::Inch, ..Numbers::METRIC };
    let numbers = [Numbers::METRIC, inches];
    let split = numbers.iter().flat_map(|numbers| measures.iter().map(|of| numbers.split(*of).0));
    split.chain([value.to_string()]).collect()
}

fn same(_: Kind, value: f64) -> f64 {
    value
}

/// Another shop that takes a little more and charges a third more: what a client reads there as well
/// is no figure of the first.
fn other(kind: Kind, value: f64) -> f64 {
    match kind {
        Kind::Length | Kind::Mass => (value * 1004.0).round() / 1000.0,
        Kind::Weight => value + 1.0,
        Kind::Money => (value * 13_000.0).round() / 10_000.0,
    }
}

/// The demo shop with everything planted, as a file's draft.
fn planted(figure: impl Fn(Kind, f64) -> f64) -> Draft {
    let mut draft = draft_of(&shop::demo());
    draft.set("lines.0.face_cut_least", LEAST_CUT);
    for (path, kind, value) in PLANTED {
        let value = figure(kind, value);
        let unit = match kind {
            Kind::Length => " mm",
            Kind::Mass => " g",
            Kind::Weight | Kind::Money => "",
        };
        draft.set(path, &format!("{value}{unit}"));
    }
    draft
}

/// What is on the page and what has gone through it.
struct Page {
    session: Session,
    html: BTreeMap<String, String>,
    /// All that anybody could find since this was last emptied.
    told: String,
    files: Vec<String>,
    stored: Option<String>,
}

impl Page {
    fn open(saved: Option<&str>) -> Self {
        let session = Session::new(Files::new(), &["en-GB".to_owned()], saved, JSON);
        let (html, told) = (BTreeMap::new(), String::new());
        let stored = saved.map(str::to_owned);
        let mut page = Self { session, html, told, files: Vec::new(), stored };
        page.tell("start", "", "");
        page
    }

    /// One event, and the rest that it asks for.
    fn tell(&mut self, kind: &str, id: &str, value: &str) {
        let patches = answered(&mut self.session, kind, id, value);
        patches.iter().for_each(|patch| self.take(patch));
    }

    fn take(&mut self, patch: &Patch) {
        let told = match patch {
            Patch::Html { id, html } => {
                self.html.insert(id.clone(), html.clone());
                html.clone()
            }
            Patch::Download { name, text } => {
                self.files.push(text.clone());
                format!("{name} {text}")
            }
            Patch::Save { name, base64 } => {
                let bytes = Base64::decode_vec(base64).unwrap();
                format!("{name} {}", String::from_utf8_lossy(&bytes))
            }
            Patch::Store { text } => {
                self.stored = Some(text.clone());
                without_shop(text)
            }
            // Goes to the helper inside the page, which searches in the shop.
            Patch::Search { .. } => String::new(),
            other => format!("{other:?}"),
        };
        self.told.push_str(&told);
        self.told.push('\n');
    }

    fn act(&mut self, act: &str, value: &str) {
        self.tell("act", act, value);
    }

    /// Ids of every figure that can be asked about.
    fn figures(&self) -> Vec<String> {
        let ids = self.html.values().flat_map(|html| html.split(" id=\"ask-").skip(1));
        ids.map(|id| format!("ask-{}", id.split('"').next().unwrap())).collect()
    }

    fn open_all(&mut self) {
        for region in &REGIONS {
            self.tell("toggle", &format!("open-{}", region.id), "open");
        }
    }

    /// Whatever a person can do to look: open, ask, print, save, another unit.
    fn look_everywhere(&mut self) {
        for unit in ["in", "mm"] {
            self.tell("change", "units", unit);
            self.open_all();
            for figure in self.figures() {
                self.act("explain", &figure);
            }
            self.act("print-figures", "");
            self.tell("print", "", "");
            self.tell("printed", "", "");
        }
        for act in HANDED.into_iter().flat_map(|(_, acts)| acts).chain(&["save-kept"]) {
            self.act(act, "");
        }
    }
}

/// What is kept of the work. The shop's own file stays on the shop's own device as it was opened.
fn without_shop(text: &str) -> String {
    let mut tree: serde_json::Value = serde_json::from_str(text).unwrap();
    tree.as_object_mut().unwrap().remove("shop");
    tree.to_string()
}

/// Numbers as a person or a program would read them, in words and in attributes.
fn numbers(text: &str) -> BTreeSet<String> {
    let mut shown = String::new();
    // Coordinates of drawings are no figures; what is said of a drawing is.
    for piece in text.split('<') {
        let (tag, words) = piece.split_once('>').unwrap_or(("", piece));
        let drawn =
            ["path", "line", "text", "rect", "svg"].iter().any(|name| tag.starts_with(name));
        shown.push_str(if drawn { "" } else { tag });
        shown.push(' ');
        shown.push_str(words);
        shown.push(' ');
    }
    let part = |c: char| c.is_ascii_digit() || c == '.' || c == ',';
    shown
        .split(|c| !part(c))
        .map(|token| token.trim_matches(['.', ',']).to_owned())
        .filter(|token| !token.is_empty())
        .collect()
}

/// Which planted figures a text gives away, those aside that stand there by chance.
fn given_away(text: &str, chance: &BTreeSet<String>) -> Vec<&'static str> {
    let seen = numbers(text);
    let telling = |print: &String| seen.contains(print) && !chance.contains(print);
    PLANTED
        .iter()
        .filter(|(_, kind, value)| prints(*kind, *value).iter().any(telling))
        .map(|(path, _, _)| *path)
        .collect()
}

/// Where figures that were given away stand.
fn places(text: &str, paths: &[&str]) -> String {
    let lines = |print: &String| {
        let found = text.match_indices(print.as_str()).take(3);
        found.map(|(at, _)| format!("\n    … {:?}", around(text, at))).collect::<String>()
    };
    let planted = PLANTED.iter().filter(|(path, ..)| paths.contains(path));
    planted.flat_map(|(_, kind, value)| prints(*kind, *value)).map(|print| lines(&print)).collect()
}

fn around(text: &str, at: usize) -> String {
    let start = text.char_indices().map(|(at, _)| at).take_while(|start| start + 90 <= at).last();
    text[start.unwrap_or(0)..].chars().take(120).collect()
}

/// Books that fit, only just fit, do not fit for one reason or another.
const BOOKS: [&[(&str, &str)]; 6] = [
    &[("pages", "40 + 4")],
    &[("pages", "108 + 4"), ("paper", "115 gsm silk 0.095 mm")],
    &[("pages", "152 + 4"), ("paper", "115 gsm silk 0.095 mm")],
    &[("pages", "236 + 4"), ("paper", "115 gsm silk 0.095 mm")],
    &[("pages", "40 + 4"), ("size", "330 x 240")],
    &[("pages", "40 + 4"), ("paper", "330 gsm silk 0.3 mm"), ("copies", "90")],
];

fn book(book: &[(&str, &str)]) -> Draft {
    let mut draft = Draft::of(EXAMPLE);
    for (path, text) in book {
        draft.set(path, text);
    }
    draft
}

/// A maker who has looked everywhere, with this shop and this book.
fn maker(shop: &Draft, fields: &[(&str, &str)]) -> Page {
    let mut page = Page::open(None);
    // The search is the helper's, until it is lost.
    page.tell("helper", "", "ready");
    page.tell("file", "shop", &(JSON.print)(&to_tree(shop, &shop::SCHEMA)));
    assert!(page.html["file-note"].contains("is open"), "{}", page.html["file-note"]);
    for (path, text) in fields {
        page.tell("input", path, text);
    }
    page.look_everywhere();
    page
}

/// All that a client is told who takes the page from a maker and looks everywhere.
fn client(shop: &Draft, fields: &[(&str, &str)]) -> (Page, String) {
    let mut page = maker(shop, fields);
    let makers = core::mem::take(&mut page.told);
    page.files.clear();
    // Somebody else reads: what was there is gone at once, without waiting for a paint.
    let patches = page.session.handle(&Event::new("act", "reading", "client"));
    patches.iter().for_each(|patch| page.take(patch));
    let left: Vec<String> = page.html.values().cloned().collect();
    page.told.push_str(&left.join("\n"));
    page.tell("helper", "", "none");
    page.look_everywhere();
    page.act("apply", "0");
    page.look_everywhere();
    page.act("undo", "");
    page.tell("input", "copies", "1,300");
    page.look_everywhere();
    // A page that is opened again is still a client's.
    let mut again = Page::open(page.stored.as_deref());
    again.act("restore", "yes");
    again.look_everywhere();
    page.told.push_str(&again.told);
    (page, makers)
}

#[test]
fn a_client_finds_no_figure_of_the_shop() {
    let shop = planted(same);
    let read = shop::read(&shop).unwrap();
    let mut verdicts = BTreeSet::new();
    let mut found = BTreeSet::new();
    for fields in BOOKS {
        let planned = plan(&support::job(&book(fields), &read), &read);
        verdicts.insert(planned.verdict.name());
        let (page, makers) = client(&shop, fields);
        let (elsewhere, _) = client(&planted(other), fields);
        let chance = numbers(&elsewhere.told);
        found.extend(given_away(&makers, &chance));
        let told = given_away(&page.told, &chance);
        assert_eq!(told, [""; 0], "{fields:?}: told to a client{}", places(&page.told, &told));
        let cost = &planned.results.cost;
        assert!(cost.items().count() >= 5);
        let seen = numbers(&page.told);
        let amounts = cost.items().map(|item| item.total).chain([cost.total, cost.each]);
        for amount in amounts {
            let mut printed = prints(Kind::Money, amount.get()).into_iter();
            let print = printed.find(|print| seen.contains(print) && !chance.contains(print));
            assert_eq!(print, None, "{fields:?}: {amount:?}");
        }
        // Jobs and the table of the book's sheets, and never the shop or the makers' document.
        let is_table = |file: &&String| file.starts_with("\u{feff}Sheet,");
        let (tables, jobs): (Vec<&String>, Vec<&String>) = page.files.iter().partition(is_table);
        assert_eq!((jobs.len(), tables.len()), (3, 3), "{fields:?}");
        for file in jobs {
            from_tree(&(JSON.parse)(file).unwrap(), &job::SCHEMA).unwrap();
        }
    }
    assert_eq!(verdicts.len(), 3, "books of every verdict: {verdicts:?}");
    // Makers do find them, or this proves nothing.
    let unseen: Vec<&str> =
        PLANTED.iter().map(|(path, ..)| *path).filter(|path| !found.contains(path)).collect();
    assert!(unseen.len() <= 3, "no maker ever finds {unseen:?}");
}

/// What a program is told for a client holds no figure of the shop, and reads the same in a shop that takes
/// a little more; what it is told for a maker does not.
#[test]
fn a_program_is_told_no_figure_of_the_shop_for_a_client() {
    let words = Words::load(&[EN]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let told = |fields: &[(&str, &str)], figure: fn(Kind, f64) -> f64| {
        let shop = shop::read(&planted(figure)).unwrap();
        let job = support::job(&book(fields), &shop);
        let planned = plan(&job, &shop);
        let makers = serde_json::to_string(&plan_out(&job, &planned, &printer)).unwrap();
        (makers, serde_json::to_value(book_out(&job, &planned)).unwrap())
    };
    let mut found = BTreeSet::new();
    for fields in BOOKS {
        let ((makers, client), (_, elsewhere)) = (told(fields, same), told(fields, other));
        assert_eq!(client, elsewhere, "{fields:?}");
        assert!(client["spine_mm"]["nominal"].as_f64().unwrap() > 0.0, "{client}");
        found.extend(given_away(&makers, &numbers(&client.to_string())));
    }
    assert!(found.len() >= 15, "makers are told of {found:?}");
}

/// The cut is told to everybody; that less the tolerance is what the line takes.
#[test]
fn a_client_finds_no_least_cut() {
    let (page, makers) = client(&planted(same), BOOKS[0]);
    let least = "2.17";
    assert!(numbers(&makers).contains(least));
    assert!(
        !numbers(&page.told).contains(least),
        "{}",
        around(&page.told, page.told.find(least).unwrap())
    );
}

/// A client is told no page count that is as far as the line goes.
#[test]
fn a_clients_page_counts_are_full_steps() {
    let (mut told, mut makers) = (0, 0);
    let shop = shop::read(&planted(same)).unwrap();
    for pages in (100..=260).step_by(12) {
        for paper in ["115 gsm silk 0.095 mm", "100 gsm silk 0.081 mm", "90 gsm uncoated 0.113 mm"]
        {
            let draft = book(&[("pages", &format!("{pages} + 4")), ("paper", paper)]);
            let job = support::job(&draft, &shop);
            let planned = plan(&job, &shop);
            if planned.verdict == Verdict::Fits {
                continue;
            }
            let advice = Advice::searched(&draft, &job, &shop, &planned, MOST_TRIED);
            let counted = |text: &str| -> Option<u32> {
                let inside = text.split(" + ").next()?;
                inside.parse().ok()
            };
            let counts = |offers: &[quirefit::advise::Offer]| -> Vec<u32> {
                let told = offers.iter().flat_map(|offer| &offer.told);
                let pages = told.filter(|told| told.kind.id == "pages");
                pages.filter_map(|told| counted(&told.to)).collect()
            };
            makers += counts(&advice.offers).iter().filter(|count| **count % 8 != 0).count();
            for count in counts(&advice.for_client) {
                assert_eq!(count % 8, 0, "{pages} {paper}");
                assert_ne!(count, pages);
                told += 1;
            }
            for offer in &advice.for_client {
                // What is told is what is typed, and it passes.
                let typed = offer.applied(&draft);
                let verdict = plan(&support::job(&typed, &shop), &shop).verdict;
                assert!(verdict <= offer.verdict && verdict < Verdict::DoesNotFit);
                for told in offer.told.iter().filter(|told| told.kind.id == "pages") {
                    assert_eq!(typed.get("pages"), told.to);
                }
            }
        }
    }
    assert!(told >= 5 && makers >= 5, "{told} told, {makers} of the makers' are no full step");
}

/// A price is shown to a client only by the shop's rule, and only when nothing is missing in it.
#[test]
fn a_client_reads_a_price_only_by_the_rule() {
    let fields = BOOKS[0];
    let shown = |shop: &Draft| {
        let mut page = maker(shop, fields);
        page.act("reading", "client");
        page.told.clear();
        page.look_everywhere();
        (page.html["answer"].clone(), numbers(&page.told))
    };
    let mut shop = planted(same);
    assert!(!shown(&shop).0.contains("Price"), "no rule, no price");
    shop.set("price_markup", "37.19");
    shop.set("price_round", "5");
    let read: Shop = shop::read(&shop).unwrap();
    let planned = plan(&support::job(&book(fields), &read), &read);
    let rule = read.rates.price.as_ref().unwrap();
    let asked = price(rule, &planned.results.cost);
    assert_eq!(asked.get() % 5.0, 0.0);
    let (answer, seen) = shown(&shop);
    let printed = Numbers::METRIC.print(asked.into());
    assert!(answer.contains("Price by the shop") && answer.contains(&printed), "{answer}");
    for hidden in ["37.19", "0.3719", "37.2"] {
        assert!(!seen.contains(hidden), "the rule itself: {hidden}");
    }
    shop.set("rate_click", "");
    for index in 0..read.press_sheets.len() {
        shop.set(&format!("press_sheets.{index}.click"), "");
    }
    assert!(!shown(&shop).0.contains("Price"), "a rate is missing, so the price would be too low");
}

/// Faults of a shop's file name its figures; a client reads only that there are some.
#[test]
fn faults_of_a_shop_are_for_makers() {
    let mut shop = planted(same);
    shop.set("rate_line_hour", "1234.5678 an hour");
    let file = (JSON.print)(&to_tree(&shop, &shop::SCHEMA));
    let mut page = Page::open(None);
    page.tell("file", "shop", &file);
    assert!(page.html["file-note"].contains("1234.5678"));
    page.act("reading", "client");
    assert!(!page.html["file-note"].contains("1234.5678"));
    assert!(page.html["file-note"].contains("was not opened"));
    page.tell("file", "shop", &file);
    assert!(!page.html["file-note"].contains("1234.5678"));
    page.act("reading", "floor");
    assert!(page.html["file-note"].contains("1234.5678"), "nothing is lost");
}
