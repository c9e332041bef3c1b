//! Random jobs and what the planner finds of their geometry, as JSON: what tests/bench/floor.mjs, the
//! same arithmetic in JavaScript, is compared with. `cargo bench --bench floor`; the first job is the
//! one that is timed.
#![allow(clippy::expect_used)]

mod geometry;

use geometry::{BOOK, Geometry, geometry};
use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};
use quirefit::book;
use quirefit::data::PRACTICE;
use quirefit::draft::Draft;
use quirefit::job::{self, HeadFoot, ImagesMovedBy, Job, Spine};
use quirefit::shop::{self, Shop};
use quirefit::units::{Band, Measure};
use serde_json::{Value, json};

/// Jobs after the first.
const JOBS: usize = 1000;

/// Numbers that are the same in every run.
struct Dice(TestRng);

impl Dice {
    fn below(&mut self, most: u64) -> u64 {
        u64::from(self.0.next_u32()) % most
    }
    fn of<T: Copy>(&mut self, all: &[T]) -> T {
        let place = usize::try_from(self.below(all.len() as u64)).unwrap_or_default();
        *all.get(place).expect("a list is not empty")
    }
    fn paper(&mut self) -> String {
        let kind = self.of(&["uncoated", "silk", "gloss"]);
        let gsm = 60 + self.below(200);
        match self.below(2) {
            0 => format!("{gsm} gsm {kind}"),
            _ => format!("{gsm} gsm {kind} 0.{:03} mm", 50 + self.below(300)),
        }
    }
}

fn draft(dice: &mut Dice) -> Draft {
    let mut draft = Draft::default();
    let mut set = |path: &str, text: &str| draft.set(path, text);
    set("pages", &format!("{} + 4", 4 * (1 + dice.below(60))));
    set("size", &format!("{} x {}", 90 + dice.below(160), 120 + dice.below(200)));
    set("paper", &dice.paper());
    set("cover", &dice.paper());
    set("copies", &(1 + dice.below(20_000)).to_string());
    for section in 0..dice.below(4) {
        set(&format!("sections.{section}.pages"), &(4 * (1 + dice.below(8))).to_string());
        set(&format!("sections.{section}.paper"), &dice.paper());
        set(&format!("sections.{section}.place"), dice.of(&["centre", "around"]));
    }
    set("spine", dice.of(&["round", "square"]));
    set("images", dice.of(&["shop", "designer", "nobody"]));
    set("copies_up", dice.of(&["1", "1", "2", "3"]));
    set("head_foot", dice.of(&["auto", "before", "after"]));
    set("bleed", dice.of(&["", "3 mm", "5 mm"]));
    set("tolerance", dice.of(&["", "0.5 mm", "1.5 mm"]));
    set("art_face", dice.of(&["", "4 mm", "12 mm"]));
    set("face_cut", dice.of(&["", "", "4.5 mm"]));
    draft
}

fn band<T: Copy + Into<Measure>>(band: Band<T>) -> Value {
    let value = |value: T| value.into().value;
    json!([value(band.low), value(band.nominal), value(band.high)])
}

/// What floor.mjs starts from.
fn parsed(job: &Job, shop: &Shop, fold: &book::Fold) -> Value {
    let sections = job.sections.iter().map(|section| {
        json!({
            "sheets": section.sheets.get(), "lot": section.lot,
            "caliper": band(section.caliper.value), "grammage": section.grammage.map(band),
        })
    });
    let shape = |shape: book::Shape| json!([shape.corner, shape.crush]);
    let line = shop.lines.get(job.line);
    json!({
        "sections": sections.collect::<Vec<_>>(),
        "fold": [shape(fold.low), shape(fold.nominal), shape(fold.high)],
        "width": job.size.width.get(), "height": job.size.height.get(),
        "tolerance": job.tolerance.get(), "bleed": job.bleed.map_or(0.0, |bleed| bleed.get()),
        "faceCut": job.face_cut.map(|cut| cut.get()),
        "leastCut": line.and_then(|line| line.face_cut.least).unwrap_or_default(),
        "up": job.copies_up, "gutter": job.gutter.get(),
        "headTrim": job.head_trim.get(), "footTrim": job.foot_trim.get(),
        "cutBefore": job.head_foot == HeadFoot::Before,
        "moved": job.images != ImagesMovedBy::Nobody,
        "art": job.art_face.unwrap_or(job.safe).get(),
        "square": job.spine == Spine::Square,
        "clear": PRACTICE.spine_text_clear.value.get(),
    })
}

/// One job and its figures, in the order of `row` in floor.mjs.
fn case(draft: &Draft, shop: &Shop) -> Option<Value> {
    let job = job::read(draft, shop).job?;
    let Geometry { fold, stack, leaves, trim, cover, margins, mass } = geometry(&job, shop);
    let mut row: Vec<f64> = Vec::new();
    let three = |row: &mut Vec<f64>, low: f64, mid: f64, high: f64| row.extend([low, mid, high]);
    let closed = stack.closed.map(|closed| closed.0.get());
    three(&mut row, closed.low, closed.nominal, closed.high);
    for leaf in &leaves {
        let out = leaf.push_out.map(|out| out.get());
        row.extend([out.low, out.nominal, out.high]);
        row.extend([leaf.length.get(), leaf.image_shift.get(), leaf.drift.get()]);
    }
    let wrap = trim.wrap.map(|wrap| wrap.get());
    three(&mut row, wrap.low, wrap.nominal, wrap.high);
    row.extend([trim.face_cut.get(), trim.flat.width.get(), trim.flat.height.get()]);
    for chip in [trim.outermost_chip, trim.innermost_chip] {
        row.extend([chip.low.get(), chip.nominal.get(), chip.high.get()]);
    }
    row.push(trim.travel_height.get());
    row.extend([margins.art.left.get(), f64::from(margins.art.worst), margins.face_bleed.get()]);
    row.extend([margins.fold_gap.get(), margins.fold_overlap.get()]);
    row.extend([cover.open.width.get(), cover.open.height.get()]);
    row.extend([cover.with_bleed.width.get(), cover.with_bleed.height.get()]);
    row.extend([cover.open_middle.get(), cover.crease_offset.get(), cover.text_room.get()]);
    if let Some(mass) = mass {
        row.extend([mass.book.low.get(), mass.book.nominal.get(), mass.book.high.get()]);
        row.extend([mass.nominal_page.get(), mass.chips.get()]);
    }
    Some(json!({ "job": parsed(&job, shop, &fold), "row": row }))
}

fn main() {
    let shop = shop::demo();
    let mut dice = Dice(TestRng::deterministic_rng(RngAlgorithm::ChaCha));
    let mut cases = vec![case(&Draft::of(BOOK), &shop).expect("the book is complete")];
    while cases.len() <= JOBS {
        cases.extend(case(&draft(&mut dice), &shop));
    }
    println!("{}", Value::Array(cases));
}
