//! Laws that hold for every valid job, whatever it is.
//!
//! Jobs come from typed texts, as a form or file gives them, in several shops; where a law is about
//! the geometry alone, papers and sheets are then changed beyond what anyone would type.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use proptest::prelude::*;
use quirefit::data::LINES;
use quirefit::draft::{Draft, Field, Group, Kind, from_tree, read_text, to_tree};
use quirefit::entry::LengthUnit;
use quirefit::job::{self, Job, Numbering, Role};
use quirefit::page::{Event, Session};
use quirefit::plan::{Folio, LimitCheck, LimitId, Plan, Trust, plan, plan_into};
use quirefit::shop::{self, Calibration, Shop, draft_of};
use quirefit::units::{Band, Mm, Pages, Sheets};
use quirefit::view::json::plan_out;
use quirefit::view::{Numbers, Printer};
use quirefit::words::{EN, Files, Words};
use std::sync::LazyLock;
use support::JSON;

/// Rounding of double-precision sums, far below anything measurable.
const EXACT: f64 = 1e-9;
/// Where cases are kept that have failed once.
const FAILURES: Option<&str> = Some("tests/laws.regressions");

/// The demo shop, the shops of the examples, and shops that have measured how their books fold.
static SHOPS: LazyLock<Vec<Shop>> = LazyLock::new(|| {
    let mut shops = support::shops();
    let fold = |factor| Some(Calibration { factor, error: 0.1, note: String::new() });
    for (round, square) in [(1.2, 1.5), (1.6, 2.1)] {
        let (round_fold, square_fold) = (fold(round), fold(square));
        shops.push(Shop { round_fold, square_fold, ..shop::demo() });
    }
    shops.push(Shop { post: Vec::new(), press_sheets: Vec::new(), ..shop::demo() });
    shops
});

/// One of the shops; a failing case prints its number, not all of it.
#[derive(Clone, Copy)]
struct At(usize);

impl core::fmt::Debug for At {
    fn fmt(&self, out: &mut core::fmt::Formatter) -> core::fmt::Result {
        write!(out, "shop {}", self.0)
    }
}

impl core::ops::Deref for At {
    type Target = Shop;
    fn deref(&self) -> &Shop {
        &SHOPS[self.0]
    }
}

/// A number with so many decimals, as typed.
fn decimal(range: core::ops::Range<f64>, places: usize) -> impl Strategy<Value = String> {
    range.prop_map(move |number| format!("{number:.places$}"))
}

fn word(words: &'static [&'static str]) -> impl Strategy<Value = String> {
    proptest::sample::select(words).prop_map(str::to_owned)
}

/// A text or nothing, mostly nothing.
fn seldom(text: impl Strategy<Value = String> + 'static) -> BoxedStrategy<String> {
    prop_oneof![3 => Just(String::new()), 1 => text].boxed()
}

/// A length in millimetres, in whichever way it is typed.
fn length(range: core::ops::Range<f64>) -> BoxedStrategy<String> {
    prop_oneof![
        decimal(range.clone(), 1),
        decimal(range.clone(), 2).prop_map(|text| format!("{text} mm")),
        decimal(range.start / 25.4..range.end / 25.4, 3).prop_map(|text| format!("{text} in")),
    ]
    .boxed()
}

fn pages() -> BoxedStrategy<String> {
    prop_oneof![
        (1u32..240).prop_map(|pages| pages.to_string()),
        (1u32..50).prop_map(|sheets| (sheets * 4).to_string()),
        (1u32..200).prop_map(|pages| format!("{pages} + 4")),
        (2u32..40).prop_map(|sheets| format!("{} self cover", sheets * 4)),
        (2u32..80).prop_map(|leaves| format!("{leaves} leaves")),
    ]
    .boxed()
}

fn size() -> BoxedStrategy<String> {
    prop_oneof![
        word(&["A4", "A5", "A6", "A5 landscape", "170 x 240", "210 x 210 mm", "5.5 x 8.5 in"]),
        (60u32..330, 80u32..420).prop_map(|(width, height)| format!("{width} x {height} mm")),
    ]
    .boxed()
}

const TEXT: &[&str] = &["gloss", "silk", "uncoated", "recycled", "newsprint", "copier", ""];

fn paper() -> BoxedStrategy<String> {
    prop_oneof![
        (50u32..300, word(TEXT)).prop_map(|(weight, kind)| format!("{weight} gsm {kind}")),
        // Given thickness, at a bulk that papers have.
        (50u32..300, 0.85..1.4f64, word(TEXT)).prop_map(|(weight, bulk, kind)| {
            format!("{weight} gsm {kind} {:.3} mm", f64::from(weight) * bulk / 1000.0)
        }),
        (40u32..120, word(&["gloss text", "uncoated text", "silk text"]))
            .prop_map(|(pounds, kind)| format!("{pounds} lb {kind}")),
        (60u32..110, word(&["gloss cover", "silk cover"]))
            .prop_map(|(pounds, kind)| format!("{pounds} lb {kind}")),
        decimal(1.2..4.0, 2).prop_map(|pack| format!("pack of 20 leaves {pack} mm")),
        word(&["12 pt board", "Pond Silk 130", "Marmalade Offset 90"]),
    ]
    .boxed()
}

/// The texts of one field, all of them possible.
fn texts(field: &Field) -> BoxedStrategy<String> {
    match (field.id, field.kind) {
        ("pages", Kind::Pages) => pages(),
        ("size", _) => size(),
        ("paper", _) => paper(),
        ("cover", _) => prop_oneof![Just(String::new()), paper()].boxed(),
        ("copies", _) => (1u32..20_000).prop_map(|copies| copies.to_string()).boxed(),
        ("line", _) => (0..LINES.len() + 1).prop_map(|line| line.to_string()).boxed(),
        ("dummy_thickness", _) => seldom(length(0.5..9.0)),
        ("dummy_push_out", _) => seldom(length(0.1..9.0)),
        (_, Kind::Length(least, most)) => {
            seldom(length(least.max(0.1)..most.min(12.0).max(least + 1.0)))
        }
        (_, Kind::Mass(..)) => seldom(decimal(0.0..60.0, 1).prop_map(|mass| format!("{mass} g"))),
        (_, Kind::Clock) => {
            seldom((0u32..24, 0u32..60).prop_map(|(hour, minute)| format!("{hour}:{minute:02}")))
        }
        (_, Kind::Number(least, most, _)) => {
            let (least, most) = (least as u32, most.min(20_000.0) as u32);
            seldom((least..=most).prop_map(|number| number.to_string()))
        }
        (_, Kind::Choice(words)) => seldom(word(words)),
        (_, Kind::Text(most)) => {
            let any = proptest::collection::vec(any::<char>(), 0..most.min(30));
            seldom(any.prop_map(|letters| letters.into_iter().collect()))
        }
        (_, kind) => unreachable!("{kind:?}"),
    }
}

/// Up to two further sections.
fn sections() -> impl Strategy<Value = Vec<(u32, String, String)>> {
    let section = (1u32..6, paper(), word(job::INSERT_PLACES));
    prop_oneof![3 => Just(Vec::new()), 2 => proptest::collection::vec(section, 1..3)]
}

/// What somebody might type, field by field.
fn drafts() -> impl Strategy<Value = Draft> {
    let fields: Vec<&'static Field> = job::SCHEMA.fields.iter().collect();
    let texts: Vec<BoxedStrategy<String>> = fields.iter().map(|field| texts(field)).collect();
    (texts, sections()).prop_map(move |(texts, sections)| {
        let mut draft = Draft::default();
        for (field, text) in fields.iter().zip(&texts) {
            if field.group != Group::Setting {
                draft.set(field.id, text);
            }
        }
        for (index, (sheets, paper, place)) in sections.iter().enumerate() {
            draft.set(&format!("sections.{index}.pages"), &(sheets * 4).to_string());
            draft.set(&format!("sections.{index}.paper"), paper);
            draft.set(&format!("sections.{index}.place"), place);
        }
        draft
    })
}

/// A job in a shop, read from what somebody might type.
fn typed_jobs() -> impl Strategy<Value = (Draft, Job, At)> {
    (drafts(), 0..SHOPS.len()).prop_filter_map("a job", |(mut draft, shop)| {
        let shop = At(shop);
        let line: usize = draft.get("line").parse().unwrap_or_default();
        let line = shop.lines.get(line).map_or("", |line| &*line.name).to_owned();
        draft.set("line", &line);
        let job = job::read(&draft, &shop).job?;
        Some((draft, job, shop))
    })
}

/// Papers and sheets beyond what anyone would type.
fn jobs() -> impl Strategy<Value = (Job, At)> {
    let paper = (0.02..0.8f64, 0.0..0.5f64, 0.0..0.5f64, 1u32..40);
    let papers = proptest::collection::vec(paper, 4);
    (typed_jobs(), prop_oneof![Just(None), papers.prop_map(Some)]).prop_map(
        |((_, mut job, shop), papers)| {
            let Some(papers) = papers else { return (job, shop) };
            for (index, (leaf, below, above, sheets)) in papers.into_iter().enumerate() {
                let Some(section) = job.sections.get_mut(index) else { break };
                let band =
                    Band { low: leaf * (1.0 - below), nominal: leaf, high: leaf * (1.0 + above) };
                section.caliper.value = band.map(Mm);
                section.lot = index;
                if section.role != Role::Cover {
                    section.sheets = Sheets(sheets);
                    section.pages = section.sheets.pages();
                }
            }
            (job, shop)
        },
    )
}

/// The numbers of every band in a value that was written out: low, nominal, high.
fn bands(written: &str) -> Vec<[f64; 3]> {
    let mut found = Vec::new();
    for after in written.split("Band { low: ").skip(1) {
        let number = |text: &str| -> f64 {
            let from = text.find(|c: char| c.is_ascii_digit() || c == '-' || c == 'N' || c == 'i');
            let text = &text[from.unwrap()..];
            let end = text.find([',', ')', ' ', '}']).unwrap_or(text.len());
            text[..end].parse().unwrap_or_else(|_| panic!("no number: {}", &text[..end]))
        };
        let (low, after) = after.split_once("nominal: ").unwrap();
        let (nominal, high) = after.split_once("high: ").unwrap();
        found.push([bare(low), bare(nominal), bare(high)].map(number));
    }
    found
}

/// Behind the names of newtypes: `FlatStack(Mm(1.5))` begins at 1.5.
fn bare(text: &str) -> &str {
    let open = text.find(|c: char| c.is_ascii_digit() || c == '-').unwrap_or(0);
    match (text.find("NaN"), text.find("inf")) {
        (Some(at), _) | (_, Some(at)) if at < open.max(1) => &text[at..],
        _ => &text[open..],
    }
}

/// The whole plan, written out.
fn written(plan: &Plan) -> String {
    format!("{plan:?}")
}

fn fields<'a>(text: &'a str, of: &str) -> impl Iterator<Item = &'a str> {
    text.split(move |c: char| !(c.is_alphanumeric() || c == '.' || c == '-' || c == '_'))
        .filter(move |word| !word.is_empty())
        .filter({
            let of = of.to_owned();
            move |word| *word == of
        })
}

#[test]
fn the_walk_over_bands_sees_what_it_should() {
    let odd = Band { low: Mm(3.0), nominal: Mm(2.5e-7), high: Mm(-1.0) };
    assert_eq!(bands(&format!("{:?}", Some((odd, 1)))), [[3.0, 2.5e-7, -1.0]]);
    let endless = Band { low: 0.0, nominal: f64::INFINITY, high: f64::NAN };
    let text = format!("{endless:?}");
    assert_eq!(bands(&text)[0][1], f64::INFINITY);
    assert!(fields(&text, "NaN").count() == 1 && fields(&text, "inf").count() == 1);
    let plan = plan(&SOME.0, &SHOPS[0]);
    assert!(bands(&written(&plan)).len() > 50, "the plan holds more bands than that");
}

/// A job that anyone would recognise.
static SOME: LazyLock<(Job, Draft)> = LazyLock::new(|| {
    let draft = Draft::of(&[
        ("pages", "60 + 4"),
        ("size", "A5"),
        ("paper", "115 gsm silk 0.095 mm"),
        ("cover", "250 gsm silk cover 0.238 mm"),
        ("copies", "750"),
    ]);
    (support::job(&draft, &SHOPS[0]), draft)
});

proptest! {
    #![proptest_config(support::tried(256, FAILURES))]

    #[test]
    fn push_out_starts_at_nothing_and_grows_inward((job, shop) in jobs()) {
        let plan = plan(&job, &shop);
        let leaves = &plan.results.leaves;
        let ends: [fn(Band<Mm>) -> Mm; 3] = [|band| band.low, |band| band.nominal, |band| band.high];
        for end in ends {
            prop_assert_eq!(end(leaves[0].push_out), Mm(0.0));
            for pair in leaves.windows(2) {
                let (outer, inner) = (end(pair[0].push_out).get(), end(pair[1].push_out).get());
                prop_assert!(inner >= outer - EXACT, "{} then {}", outer, inner);
            }
        }
        for pair in leaves.windows(2) {
            prop_assert!(pair[1].push_out.nominal > pair[0].push_out.nominal);
            prop_assert!(pair[1].length < pair[0].length);
            prop_assert!(pair[1].image_shift < pair[0].image_shift);
        }
    }

    #[test]
    fn more_pages_or_thicker_paper_never_make_it_thinner(
        (mut job, shop) in jobs(),
        more in 1u32..12,
        thicker in 1.0..1.5f64,
        at in 0usize..4,
    ) {
        // A thickness measured on a dummy is that of one book and of no other.
        job.dummy.closed = None;
        let before = plan(&job, &shop).results.stack.closed;
        let index = at.min(job.sections.len() - 1);
        let mut longer = job.clone();
        longer.sections[index].sheets = longer.sections[index].sheets + Sheets(more);
        let mut heavier = job;
        let leaf = heavier.sections[index].caliper.value;
        heavier.sections[index].caliper.value = leaf.times(thicker);
        for changed in [longer, heavier] {
            let after = plan(&changed, &shop).results.stack.closed;
            prop_assert!(after.nominal.0.get() >= before.nominal.0.get() - EXACT);
            prop_assert!(after.high.0.get() >= before.high.0.get() - EXACT);
            prop_assert!(after.low.0.get() >= before.low.0.get() - EXACT);
        }
    }

    #[test]
    fn every_page_stands_once_and_sides_add_up((job, shop) in jobs()) {
        let plan = plan(&job, &shop);
        let leaves = &plan.results.leaves;
        prop_assert_eq!(leaves.len() as u32, job.sheets().get());
        let (mut pages, mut covers) = (Vec::new(), Vec::new());
        for leaf in leaves {
            for folio in leaf.folios.all() {
                match folio {
                    Folio::Page(page) => pages.push(page),
                    Folio::Cover(side) => covers.push(side),
                }
            }
        }
        pages.sort_unstable();
        covers.sort_unstable();
        let last = pages.len() as u32;
        prop_assert_eq!(&pages, &(1..=last).collect::<Vec<_>>());
        let apart = job.numbering == Numbering::SeparateCover;
        prop_assert_eq!(&covers, &if apart { vec![1, 2, 3, 4] } else { vec![] });
        let number = |folio| match folio {
            Folio::Page(page) => (page, last),
            Folio::Cover(side) => (side, 4),
        };
        for leaf in leaves {
            let [front_left, front_right, back_left, back_right] = leaf.folios.all().map(number);
            prop_assert_eq!(front_left.0 + front_right.0, front_left.1 + 1);
            prop_assert_eq!(back_left.0 + back_right.0, back_left.1 + 1);
            // Odd pages lie on the right of what faces out, as in every book that opens to the left.
            prop_assert_eq!(front_right.0 % 2, 1);
        }
    }

    #[test]
    fn every_band_is_in_order_and_every_number_is_one((job, shop) in jobs()) {
        let plan = plan(&job, &shop);
        let text = written(&plan);
        for [low, nominal, high] in bands(&text) {
            prop_assert!(low <= nominal + EXACT && nominal <= high + EXACT, "{} {} {}", low, nominal, high);
        }
        for odd in ["NaN", "inf", "-inf"] {
            let at = text.find(odd).unwrap_or_default();
            prop_assert!(
                fields(&text, odd).count() == 0,
                "{} in …{}…", odd, &text[at.saturating_sub(160)..(at + 40).min(text.len())]
            );
        }
    }

    /// What is cut off and what stays weigh what was there: W × height × grammage of every sheet.
    #[test]
    fn nothing_is_lost_on_the_cut((job, shop) in jobs()) {
        let plan = plan(&job, &shop);
        let results = &plan.results;
        let Some(mass) = results.mass else {
            prop_assert!(job.sections.iter().any(|section| section.grammage.is_none()));
            return Ok(());
        };
        let sheet = results.trim.flat.width.get() * results.trim.flat.height.get() / 1e6;
        let untrimmed: f64 = job
            .sections
            .iter()
            .map(|section| {
                let grammage = section.grammage.unwrap().nominal.get();
                f64::from(section.sheets.get()) * sheet * grammage / f64::from(job.copies_up)
            })
            .sum();
        let after = mass.book.nominal.get() + mass.chips.get();
        prop_assert!((after - untrimmed).abs() <= EXACT * untrimmed.max(1.0), "{} of {}", after, untrimmed);
        prop_assert!(mass.chips.get() > 0.0 && mass.book.low.get() >= 0.0);
    }

    #[test]
    fn the_same_job_gives_the_same_bytes((job, shop) in jobs(), (other, elsewhere) in jobs()) {
        let first = plan(&job, &shop);
        let words = Words::load(&[EN]);
        let printer = Printer { words: &words, numbers: Numbers::METRIC };
        let bytes = |plan: &Plan| serde_json::to_string(&plan_out(&job, plan, &printer)).unwrap();
        // Planned anew, and over the plan of another job in another shop.
        let again = plan(&job, &shop);
        let mut over = plan(&other, &elsewhere);
        plan_into(&mut over, &job, &shop);
        prop_assert_eq!(bytes(&again), bytes(&first));
        prop_assert_eq!(bytes(&over), bytes(&first));
        prop_assert!(written(&over) == written(&first), "a plan remembers the one before");
    }
}

/// A limit of a plan.
fn limit(plan: &Plan, id: LimitId) -> Option<LimitCheck> {
    plan.results.limits.iter().find(|check| check.id == id).copied()
}

/// The job with so many sheets more in its main section; nothing when none would be left. A closed
/// thickness measured on a dummy grows by two leaves a sheet.
fn with_sheets(job: &Job, planned: &Plan, more: i64) -> Option<Job> {
    let mut job = job.clone();
    let index = job.sections.iter().position(|section| section.role == Role::Inside)?;
    let main = &mut job.sections[index];
    let sheets =
        u32::try_from(i64::from(main.sheets.get()) + more).ok().filter(|left| *left > 0)?;
    main.sheets = Sheets(sheets);
    main.pages = main.sheets.pages();
    let leaf = planned.results.stack.calipers[index].nominal;
    job.dummy.closed = job.dummy.closed.map(|closed| closed + leaf * (2 * more) as f64);
    Some(job)
}

/// The shop with the fold that this job's dummy shows, where it is believed.
fn with_measured_fold(job: &Job, shop: &Shop) -> Shop {
    let fold = plan(job, shop).results.fold;
    let mut shop = shop.clone();
    if let (Some((factor, error)), Trust::Good | Trust::Weak) = (fold.measured, fold.trust) {
        let kept = Some(Calibration { factor, error, note: String::new() });
        (shop.round_fold, shop.square_fold) = (kept.clone(), kept);
    }
    shop
}

proptest! {
    #![proptest_config(support::tried(256, FAILURES))]

    /// So many more sheets still fit the limit, and one more does not: planned anew each time.
    #[test]
    fn head_room_is_honest((mut job, shop) in jobs()) {
        // What a dummy tells of the fold is kept for the larger book; its push-out is not.
        let shop = with_measured_fold(&job, &shop);
        job.dummy.push_out = None;
        let plan_now = plan(&job, &shop);
        for check in &plan_now.results.limits {
            let (Some(room), Some(most)) = (check.room.sheets, check.range.most) else { continue };
            let high = |more: i64| {
                let plan = plan(&with_sheets(&job, &plan_now, more)?, &shop);
                // Where another press sheet runs uncut for the thicker book, its cut is another too.
                let other = plan.results.trim.straight && check.id == LimitId::InnermostChip;
                limit(&plan, check.id).filter(|_| !other).map(|check| check.value.high)
            };
            if let Some(high) = high(room) {
                prop_assert!(
                    high <= most + EXACT,
                    "{:?}: room for {} is told, but then {} stands against {}", check.id, room, high, most
                );
            }
            if let Some(high) = high(room + 1) {
                prop_assert!(
                    high > most - EXACT,
                    "{:?}: room for {} is told, but one more gives {} against {}", check.id, room, high, most
                );
            }
        }
    }

    /// Draft, tree, text, tree, draft: nothing typed is lost or changed.
    #[test]
    fn a_saved_job_reads_back_equal((draft, job, shop) in typed_jobs()) {
        let text = (JSON.print)(&to_tree(&draft, &job::SCHEMA));
        let back = from_tree(&(JSON.parse)(&text).unwrap(), &job::SCHEMA).unwrap();
        prop_assert_eq!(&back, &draft);
        prop_assert_eq!(job::read(&back, &shop).job, Some(job));
        prop_assert_eq!((JSON.print)(&to_tree(&back, &job::SCHEMA)), text);
    }
}

/// A shop's texts, some of them changed to others that are possible.
fn shop_drafts() -> impl Strategy<Value = Draft> {
    let change = (any::<prop::sample::Index>(), 0.0..1.0f64, any::<bool>());
    (0..SHOPS.len(), proptest::collection::vec(change, 0..20)).prop_map(|(shop, changes)| {
        let mut draft = draft_of(&SHOPS[shop]);
        let paths: Vec<String> = draft.all().map(|(path, _)| path.to_owned()).collect();
        for (index, share, inches) in changes {
            let path = &paths[index.index(paths.len())];
            let text = match shop::SCHEMA.field(path).unwrap().kind {
                Kind::Length(least, most) if inches => {
                    format!("{:.3} in", (least + share * (most - least)) / 25.4)
                }
                Kind::Length(least, most) => format!("{:.2}", least + share * (most - least)),
                Kind::Mass(least, most) if inches => {
                    format!("{:.2} oz", (least + share * (most - least)) / 28.35)
                }
                Kind::Mass(least, most) => format!("{:.1}", least + share * (most - least)),
                _ => continue,
            };
            draft.set(path, &text);
        }
        draft
    })
}

proptest! {
    #![proptest_config(support::tried(128, FAILURES))]

    #[test]
    fn a_written_shop_reads_back_equal(draft in shop_drafts()) {
        // Changed limits may stand the wrong way round: then there is no shop to write.
        let Ok(shop) = shop::read(&draft) else { return Ok(()) };
        let written = draft_of(&shop);
        let text = (JSON.print)(&to_tree(&written, &shop::SCHEMA));
        let back = from_tree(&(JSON.parse)(&text).unwrap(), &shop::SCHEMA).unwrap();
        prop_assert_eq!(&back, &written);
        let read = shop::read(&back);
        prop_assert!(read.is_ok(), "{:?}", read.err());
        support::same(&read.unwrap(), &shop, "the shop");
    }
}

/// Every text field that holds a length, a size or a paper, with a text typed in one of the units.
fn lengths() -> impl Strategy<Value = (&'static str, String)> {
    let measured: Vec<&'static Field> = job::SCHEMA
        .fields
        .iter()
        .filter(|field| matches!(field.kind, Kind::Length(..) | Kind::Size | Kind::Paper))
        .collect();
    proptest::sample::select(measured).prop_flat_map(|field| {
        let typed = match field.kind {
            Kind::Length(..) => prop_oneof![
                length(0.6..30.0),
                word(&["1/8", "3", "0,5", "2.50", " 4 ", "⅛\"", "1 1/4 in", "7.", "-", "6 m"]),
            ]
            .boxed(),
            Kind::Size => prop_oneof![
                size(),
                word(&["8.5 x 11", "170 x 240", "5 1/2 x 8 1/2", "148x210", "letter"]),
            ]
            .boxed(),
            _ => prop_oneof![
                paper(),
                word(&[
                    "130 gsm silk 0.108",
                    "0.0048 100# gloss text",
                    "100 lb text 0.0048",
                    "90 gsm 112 µm",
                    "0.11 mm",
                    "silk 130 gsm 0.108 smooth",
                    "115 silk",
                ]),
            ]
            .boxed(),
        };
        typed.prop_map(move |text| (field.id, text))
    })
}

proptest! {
    #![proptest_config(support::tried(128, FAILURES))]

    /// Millimetres, inches and back: each field means the same length, and keeps its digits.
    #[test]
    fn a_change_of_unit_changes_no_meaning(
        typed in proptest::collection::vec(lengths(), 1..6),
        start_in_inches in any::<bool>(),
    ) {
        let languages = ["en-GB".to_owned()];
        let mut session = Session::new(Files::new(), &languages, None, JSON);
        session.handle(&Event::new("act", "new", ""));
        let (one, other) = if start_in_inches { ("in", "mm") } else { ("mm", "in") };
        session.handle(&Event::new("change", "units", one));
        for (field, text) in &typed {
            session.handle(&Event::new("input", field, text));
        }
        let before = session.draft().clone();
        session.handle(&Event::new("change", "units", other));
        let between = session.draft().clone();
        session.handle(&Event::new("change", "units", one));
        let after = session.draft().clone();
        for (field, _) in &typed {
            let kind = job::SCHEMA.field(field).unwrap().kind;
            let meant = |draft: &Draft, unit| read_text(kind, draft.get(field), LengthUnit::of(unit)).value();
            let meaning = |draft: &Draft, unit| format!("{:?}", without_text(meant(draft, unit)));
            if meant(&before, one).is_some() {
                prop_assert_eq!(meaning(&before, one), meaning(&between, other), "{}", between.get(field));
                prop_assert_eq!(meaning(&before, one), meaning(&after, one), "{}", after.get(field));
            }
            prop_assert!(between.get(field).starts_with(before.get(field)));
            prop_assert!(after.get(field).starts_with(before.get(field)));
        }
    }
}

/// A value without the text it was read from, which may have got its unit meanwhile.
fn without_text(value: Option<quirefit::draft::Value>) -> Option<quirefit::draft::Value> {
    use quirefit::draft::Value;
    value.map(|value| match value {
        Value::Paper(stock) => Value::Paper(quirefit::paper::Stock {
            name: String::new(),
            typed: String::new(),
            ..stock
        }),
        other => other,
    })
}

/// The generators reach what the laws are about.
#[test]
fn the_jobs_are_of_every_sort() {
    use proptest::strategy::ValueTree;
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let (mut covers, mut inserts, mut measured, mut square, mut unknown, mut limits) =
        (0, 0, 0, 0, 0, 0);
    let cases = 200;
    for _ in 0..cases {
        let (_, job, shop) = typed_jobs().new_tree(&mut runner).unwrap().current();
        covers += u32::from(job.cover().is_some());
        inserts += u32::from(job.sections.iter().any(|section| section.role == Role::Insert));
        measured += u32::from(job.dummy.push_out.is_some() || job.dummy.closed.is_some());
        square += u32::from(job.spine == job::Spine::Square);
        let plan = plan(&job, &shop);
        unknown += u32::from(plan.results.mass.is_none());
        limits += plan.results.limits.iter().filter(|check| check.room.sheets.is_some()).count();
        assert!(
            job.sheets() > Sheets(0) && job.sections.iter().all(|section| section.pages > Pages(0))
        );
    }
    for (what, seen) in [
        ("covers", covers),
        ("inserts", inserts),
        ("dummies", measured),
        ("square", square),
        ("no weight", unknown),
    ] {
        assert!(seen >= 10 && seen < cases, "{what}: {seen} of {cases}");
    }
    assert!(limits > 400, "{limits}");
}
