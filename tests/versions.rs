//! Versions kept to compare: against independently planned jobs, and through undo, reload and another
//! shop.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::draft::{Draft, to_tree};
use quirefit::page::{EXAMPLE, Event, Patch, Session};
use quirefit::plan::{Plan, plan};
use quirefit::shop::{self, Shop};
use quirefit::units::Measure;
use quirefit::view::Numbers;
use quirefit::words::Files;
use std::collections::BTreeMap;
use support::{JSON, text_of};

struct Page {
    session: Session,
    html: BTreeMap<String, String>,
    stored: Option<String>,
    focus: String,
    told: String,
}

impl Page {
    fn open(saved: Option<&str>) -> Self {
        let session = Session::new(Files::new(), &["en-GB".to_owned()], saved, JSON);
        let (html, stored) = (BTreeMap::new(), saved.map(str::to_owned));
        let mut page = Self { session, html, stored, focus: String::new(), told: String::new() };
        page.tell("start", "", "");
        page.tell("helper", "", "ready");
        page
    }

    fn tell(&mut self, kind: &str, id: &str, value: &str) {
        let mut patches = self.session.handle(&Event::new(kind, id, value));
        loop {
            for patch in &patches {
                self.told.push_str(&format!("{patch:?}\n"));
                match patch {
                    Patch::Html { id, html } => drop(self.html.insert(id.clone(), html.clone())),
                    Patch::Store { text } => self.stored = Some(text.clone()),
                    Patch::Focus { id } => self.focus.clone_from(id),
                    _ => {}
                }
            }
            if !patches.contains(&Patch::Later {}) {
                return;
            }
            patches = self.session.handle(&Event::new("rest", "", ""));
        }
    }

    fn input(&mut self, field: &str, text: &str) {
        self.tell("input", field, text);
    }

    fn act(&mut self, act: &str, value: &str) {
        self.tell("act", act, value);
    }

    /// The words of an element, without its tags.
    fn words(&self, id: &str) -> String {
        let html = self.html.get(id).map_or("", String::as_str);
        let words =
            html.split('<').map(|piece| piece.split_once('>').map_or(piece, |(_, text)| text));
        let words = words.collect::<Vec<_>>().join(" ");
        words.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// The cells of a row of the table, in words.
    fn row(&self, name: &str) -> Vec<String> {
        let body = self.html["body-compare"].clone();
        let row = body.split("<tr>").find(|row| row.contains(&format!("scope=\"row\">{name}<")));
        let cells = row.unwrap_or_else(|| panic!("no row {name}: {body}")).split("<td").skip(1);
        let text = |cell: &str| {
            let inner = cell.split_once('>').unwrap().1;
            let words = inner.split('<').enumerate().map(|(index, piece)| match index {
                0 => piece,
                _ => piece.split_once('>').map_or("", |(_, text)| text),
            });
            words.collect::<String>().split_whitespace().collect::<Vec<_>>().join(" ")
        };
        cells.map(text).collect()
    }
}

fn planned(shop: &Shop, fields: &[(&str, &str)]) -> Plan {
    let mut draft = Draft::of(EXAMPLE);
    for (path, text) in fields {
        draft.set(path, text);
    }
    plan(&support::job(&draft, shop), shop)
}

/// Space between number and unit does not break, in words it is any space.
fn print(measure: impl Into<Measure>) -> String {
    Numbers::METRIC.print(measure.into()).replace('\u{a0}', " ")
}

/// One version of 48 pages, one of the same on lighter paper, one of 64 pages in the form.
fn three() -> Page {
    let mut page = Page::open(None);
    page.input("pages", "48 + 4");
    page.act("version-keep", "");
    page.input("paper", "115 gsm silk 0.095 mm");
    page.act("version-keep", "");
    page.input("pages", "64 + 4");
    page
}

const VERSIONS: [&[(&str, &str)]; 3] = [
    &[("pages", "48 + 4")],
    &[("pages", "48 + 4"), ("paper", "115 gsm silk 0.095 mm")],
    &[("pages", "64 + 4"), ("paper", "115 gsm silk 0.095 mm")],
];

/// Every difference that is told is the one between two jobs that somebody planned apart.
#[test]
fn differences_are_those_of_jobs_planned_apart() {
    let page = three();
    let shop = shop::demo();
    let plans = VERSIONS.map(|fields| planned(&shop, fields));
    let spine = |plan: &Plan| plan.results.stack.closed.nominal.0;
    let mass = |plan: &Plan| plan.results.mass.unwrap().book.nominal;
    let cost = |plan: &Plan| plan.results.cost.total;
    let time = |plan: &Plan| plan.results.run.times.best;
    let (spines, masses) = (page.row("Spine"), page.row("A copy weighs"));
    let (costs, times) = (page.row("The run costs"), page.row("Time on the line"));
    for (place, plan) in plans.iter().enumerate() {
        assert!(spines[place].starts_with(&print(spine(plan))), "{spines:?}");
        assert!(masses[place].starts_with(&print(mass(plan))), "{masses:?}");
        assert!(costs[place].contains(&print(cost(plan))), "{costs:?}");
        assert!(times[place].starts_with(&print(time(plan))), "{times:?}");
        let thinner = spine(plan) - spine(&plans[0]);
        let told = if thinner.get() < 0.0 { "thinner" } else { "thicker" };
        let by = if thinner.get() < 0.0 { thinner * -1.0 } else { thinner };
        let ends = format!("{} {told}", print(by));
        assert_eq!(spines[place].ends_with(&ends), place > 0, "{ends}: {spines:?}");
    }
    assert!(spine(&plans[1]) < spine(&plans[0]) && spine(&plans[2]) > spine(&plans[0]));
    let lighter = mass(&plans[0]) - mass(&plans[1]);
    let cheaper = cost(&plans[0]) - cost(&plans[1]);
    let expected = format!(
        "Beside A, B is {} thinner, {} lighter and {} cheaper; both can be made.",
        print(spine(&plans[0]) - spine(&plans[1])),
        print(lighter),
        print(cheaper)
    );
    assert!(page.words("body-compare").replace('\u{a0}', " ").contains(&expected), "{expected}");
    // What is the same is not marked.
    assert!(page.row("Can it be made?").iter().all(|cell| cell == "Yes."));
    assert_eq!(page.row("Folded sheets in a copy"), ["13", "13", "17 4 more"]);
    assert!(page.words("summary-compare").starts_with("Beside A, C is"));
}

/// What cannot be told apart is not marked, and what cannot be made is said.
#[test]
fn what_does_not_fit_is_said_in_the_sentence() {
    let mut page = Page::open(None);
    page.act("version-keep", "");
    page.input("copies", "1,400");
    let told = page.words("summary-compare");
    assert!(told.contains("B is equally thick, equally heavy and"), "{told}");
    page.input("pages", "600 + 4");
    let told = page.words("summary-compare");
    assert!(told.contains("B cannot be made as it stands."), "{told}");
    page.input("pages", "");
    assert!(page.words("summary-compare").contains("B cannot be made"), "the last answer stays");
}

#[test]
fn no_version_is_kept_twice_and_none_is_pushed_out() {
    let mut page = Page::open(None);
    assert!(page.words("answer").contains("Keep this version"));
    page.act("version-keep", "");
    assert!(page.words("answer").contains("This version is kept as A"));
    page.act("version-keep", "");
    let table = |page: &Page| page.html["body-compare"].matches("class=\"letter\"").count();
    assert_eq!(table(&page), 1);
    page.input("pages", "48 + 4");
    assert_eq!(table(&page), 2);
    page.act("version-keep", "");
    page.input("pages", "52 + 4");
    assert_eq!(table(&page), 3);
    assert!(page.words("answer").contains("Two versions are kept"));
    let before = page.html["body-compare"].clone();
    page.act("version-keep", "");
    assert_eq!(page.html["body-compare"], before);
    for nonsense in ["7", "", "-1", "x"] {
        page.act("version-drop", nonsense);
        page.act("version-take", nonsense);
    }
    assert_eq!(page.html["body-compare"], before);
    page.act("version-drop", "0");
    assert_eq!((table(&page), page.focus.as_str()), (2, "summary-compare"));
    page.act("version-drop", "0");
    assert!(page.words("summary-compare").contains("Keep this version"));
}

/// A version that is taken stands in the form; undo brings back what was there and loses no version.
#[test]
fn a_version_is_taken_and_taken_back() {
    let mut page = three();
    let before = page.session.draft().clone();
    page.act("version-take", "0");
    let taken = page.session.draft();
    assert_eq!((taken.get("pages"), taken.get("paper")), ("48 + 4", "Pond Silk 130"));
    assert_eq!(page.focus, "summary-compare");
    assert!(page.words("answer").contains("kept as A"));
    page.act("undo", "");
    assert_eq!(page.session.draft(), &before);
    assert_eq!(page.row("Folded sheets in a copy"), ["13", "13", "17 4 more"]);
    for _ in 0..9 {
        page.act("undo", "");
    }
    assert_eq!(page.html["body-compare"].matches("drop-version-").count(), 2);
}

/// Versions come back with the job of last time, when somebody says so and not before.
#[test]
fn versions_outlive_a_reload() {
    let mut page = three();
    page.input("title", "Madame Quagga");
    let shown = page.html["body-compare"].clone();
    let mut next = Page::open(page.stored.as_deref());
    assert!(!next.told.contains("115 gsm silk"), "shown before anyone was asked");
    assert!(next.words("file-note").is_empty());
    next.act("restore", "yes");
    next.tell("toggle", "open-compare", "open");
    assert_eq!(next.html["body-compare"], shown);
    // Left, they are forgotten; typed on without an answer, they wait on.
    let mut left = Page::open(page.stored.as_deref());
    left.input("copies", "70");
    let mut third = Page::open(left.stored.as_deref());
    third.act("restore", "no");
    third.input("copies", "71");
    assert!(!third.stored.clone().unwrap().contains("versions"));
    // An example that was kept untouched as well.
    let mut page = Page::open(None);
    page.act("version-keep", "");
    let mut next = Page::open(page.stored.as_deref());
    assert!(next.words("restore").contains("last time"));
    next.act("restore", "yes");
    assert!(next.words("answer").contains("kept as A"));
}

/// Another shop plans every version anew.
#[test]
fn another_shop_plans_every_version_anew() {
    let mut page = three();
    let path = "examples/shops/prairie-loft-bindery.json";
    page.tell("file", path, &text_of(path));
    let shop = support::shop_of(path);
    let spines = page.row("Spine");
    let times = page.row("Time on the line");
    for (place, fields) in VERSIONS.iter().enumerate() {
        // The papers of the demo shop are not this shop's: what cannot be read there says so.
        let mut draft = Draft::of(EXAMPLE);
        fields.iter().for_each(|(path, text)| draft.set(path, text));
        match quirefit::job::read(&draft, &shop).job {
            Some(job) => {
                let plan = plan(&job, &shop);
                assert!(spines[place].starts_with(&print(plan.results.stack.closed.nominal.0)));
                assert!(times[place].starts_with(&print(plan.results.run.times.best)));
            }
            None => assert_eq!(spines[place], "not known"),
        }
    }
}

/// A client compares too: without time and cost, with the price only by the shop's rule.
#[test]
fn a_client_compares_without_cost_and_limits() {
    let mut page = three();
    page.act("reading", "client");
    let body = page.words("body-compare");
    assert!(body.contains("B is"), "{body}");
    for hidden in ["The run costs", "Time on the line", "cheaper", "Price"] {
        assert!(!body.contains(hidden), "{hidden}: {body}");
    }
    let mut draft = shop::draft_of(&shop::demo());
    draft.set("price_markup", "50");
    page.tell("file", "shop", &(JSON.print)(&to_tree(&draft, &shop::SCHEMA)));
    let shop = shop::read(&draft).unwrap();
    let prices = page.row("Price by the shop's rule");
    for (place, fields) in VERSIONS.iter().enumerate() {
        let asked = planned(&shop, fields).results.cost.total * 1.5;
        assert!(prices[place].contains(&print(asked)), "{prices:?} {asked:?}");
    }
    assert!(page.words("body-compare").contains("cheaper"));
}
