//! Jobs as somebody might type them, in several shops, and jobs beyond what anyone would type.

use crate::support;
use proptest::prelude::*;
use quirefit::data::LINES;
use quirefit::draft::{Draft, Field, Group, Kind};
use quirefit::job::{self, Job, Role};
use quirefit::plan::plan;
use quirefit::shop::{self, Calibration, Shop};
use quirefit::units::{Band, Mm, Pages, Sheets};
use std::sync::LazyLock;

/// The demo shop, the shops of the examples, and shops that have measured how their books fold.
pub static SHOPS: LazyLock<Vec<Shop>> = LazyLock::new(|| {
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
pub struct At(usize);

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

/// A job that anyone would recognise.
pub static SOME: LazyLock<(Job, Draft)> = LazyLock::new(|| {
    let draft = Draft::of(&[
        ("pages", "60 + 4"),
        ("size", "A5"),
        ("paper", "115 gsm silk 0.095 mm"),
        ("cover", "250 gsm silk cover 0.238 mm"),
        ("copies", "750"),
    ]);
    (support::job(&draft, &SHOPS[0]), draft)
});

/// A number with so many decimals, as typed.
fn decimal(range: core::ops::Range<f64>, places: usize) -> impl Strategy<Value = String> {
    range.prop_map(move |number| format!("{number:.places$}"))
}

pub fn word(words: &'static [&'static str]) -> impl Strategy<Value = String> {
    proptest::sample::select(words).prop_map(str::to_owned)
}

/// A text or nothing, mostly nothing.
fn seldom(text: impl Strategy<Value = String> + 'static) -> BoxedStrategy<String> {
    prop_oneof![3 => Just(String::new()), 1 => text].boxed()
}

/// A length in millimetres, in whichever way it is typed.
pub fn length(range: core::ops::Range<f64>) -> BoxedStrategy<String> {
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

pub fn size() -> BoxedStrategy<String> {
    prop_oneof![
        word(&["A4", "A5", "A6", "A5 landscape", "170 x 240", "210 x 210 mm", "5.5 x 8.5 in"]),
        (60u32..330, 80u32..420).prop_map(|(width, height)| format!("{width} x {height} mm")),
    ]
    .boxed()
}

const TEXT: &[&str] = &["gloss", "silk", "uncoated", "recycled", "newsprint", "copier", ""];

pub fn paper() -> BoxedStrategy<String> {
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
pub fn typed_jobs() -> impl Strategy<Value = (Draft, Job, At)> {
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
pub fn jobs() -> impl Strategy<Value = (Job, At)> {
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
