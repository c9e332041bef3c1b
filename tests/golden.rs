//! Invented jobs on an invented line, from the files in `tests/golden`, with the figures that were
//! expected of them before the planner was written. "About" in those expectations has been given a
//! tolerance here: half of the last digit given, unless a comment says otherwise.
//!
//! Line "H" takes a flat stack of 2.60 mm, an open sheet of 330 × 470 mm, a width of 75–230 mm, a
//! spine of 120–320 mm, text of 64–300 g/m², covers up to 350, a face cut of 2–12 mm. It is not said to
//! crease, nor to cut head and foot. The calipers are given by the mill, so each is in doubt by 5 % or
//! 0.013 mm, whichever is more (0.025 mm where the stock is called a cover): what fits must fit over
//! that band. All the expected answers survive it, one barely: see the two volumes.
//!
//! Press sheets, stitching heads, overs, hours and post belong to other tests.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

use core::f64::consts::FRAC_PI_2;
use quirefit::draft::{Draft, Schema, Tree, from_tree};
use quirefit::job::{self, Job};
use quirefit::plan::{Answer, LimitCheck, LimitId, Plan, Verdict, plan};
use quirefit::shop::{self, Shop};
use quirefit::view::json::plan_out;
use quirefit::view::text::text;
use quirefit::view::{Numbers, Printer};
use quirefit::words::{EN, EN_GB, Words};

const JOBS: [&str; 12] = [
    "01-gallery-guide",
    "02-yearbook-insert",
    "04-seed-catalogue",
    "05-manual-one-volume",
    "05-manual-two-volumes",
    "06-programme-two-up",
    "07-catalogue-a4-landscape",
    "07-catalogue-a5-landscape",
    "09-appeal-150",
    "09-appeal-170",
    "12-stickers-one-up",
    "12-stickers-two-up",
];

fn draft(name: &str, schema: &Schema) -> Draft {
    let path = format!("{}/tests/golden/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let file = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"));
    let tree: Tree = serde_json::from_str(&file).unwrap();
    from_tree(&tree, schema).unwrap_or_else(|errors| panic!("{path}: {errors:?}"))
}

fn line_h() -> Shop {
    shop::read(&draft("shop-h", &shop::SCHEMA)).unwrap()
}

#[track_caller]
fn job_of(draft: &Draft, shop: &Shop) -> Job {
    let reading = job::read(draft, shop);
    assert_eq!(reading.errors(draft), []);
    reading.job.unwrap()
}

/// A job file planned on line "H", with some of its fields typed anew.
#[track_caller]
fn planned_with(name: &str, changes: &[(&str, &str)]) -> (Job, Plan) {
    let shop = line_h();
    let mut draft = draft(name, &job::SCHEMA);
    for (path, typed) in changes {
        draft.set(path, typed);
    }
    let job = job_of(&draft, &shop);
    let plan = plan(&job, &shop);
    (job, plan)
}

#[track_caller]
fn planned(name: &str) -> (Job, Plan) {
    planned_with(name, &[])
}

#[track_caller]
fn near(found: f64, expected: f64, tolerance: f64, what: &str) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{what}: found {found}, expected {expected}, tolerance {tolerance}"
    );
}

#[track_caller]
fn limit(plan: &Plan, id: LimitId) -> &LimitCheck {
    plan.results.limits.iter().find(|limit| limit.id == id).unwrap_or_else(|| panic!("{id:?}"))
}

/// The limits that the book breaks over its whole band.
fn broken(plan: &Plan) -> Vec<LimitId> {
    let breaks = |limit: &&LimitCheck| limit.answer == Answer::DoesNotFit;
    plan.results.limits.iter().filter(breaks).map(|limit| limit.id).collect()
}

fn has(plan: &Plan, rule: &str, case: &str) -> bool {
    plan.findings.iter().any(|finding| finding.rule == rule && finding.case == case)
}

/// What was expected of a job: sheets, H, S, grams of the nominal page and the tolerance of those.
#[track_caller]
fn expect(
    name: &str,
    sheets: u32,
    flat: f64,
    closed: f64,
    (grams, about): (f64, f64),
) -> (Job, Plan) {
    let (job, plan) = planned(name);
    assert_eq!(job.sheets().get(), sheets, "{name}");
    near(plan.results.stack.flat.nominal.0.get(), flat, 0.005, "H");
    near(plan.results.stack.closed.nominal.0.get(), closed, 0.005, "S");
    near(plan.results.mass.unwrap().nominal_page.get(), grams, about, "mass");
    (job, plan)
}

/// The widest open sheet that the largest face cut of line "H" lets through: 2 (w + wrap + 12 − e_n).
fn widest_open_sheet(job: &Job, plan: &Plan) -> f64 {
    let innermost = plan.results.leaves.last().unwrap().push_out.nominal;
    let most = line_h().lines[0].face_cut.most.unwrap();
    2.0 * ((job.size.width + plan.results.trim.wrap.nominal - innermost).get() + most)
}

/// Job 1: A5, 20 + 4 pages, 130 silk 0.106 mm, cover 250 silk 0.240 mm: 6 sheets, H 0.77, S 1.54, about
/// 56 g; innermost against outermost 0.60 by the trade's factor 1, 0.94 by geometry; fits, crease the
/// cover. Straight from the press its sheet may be at most 319.0 mm wide: narrower than 320 × 450.
#[test]
fn gallery_guide() {
    let (job, plan) = expect("01-gallery-guide", 6, 0.77, 1.54, (56.0, 0.5));
    let innermost = plan.results.leaves.last().unwrap();
    near(innermost.step.nominal.get(), 0.60, 0.005, "push-out at a factor of 1");
    near(innermost.push_out.nominal.get(), 0.94, 0.005, "push-out");
    // n·t, five inner sheets: the other quantity.
    near(plan.results.trade_creep.nominal.get(), 5.0 * 0.106, 1e-9, "creep as the trade counts it");
    assert_eq!(plan.verdict, Verdict::Fits);
    assert!(has(&plan, "crease", "before"));
    assert_eq!(plan.results.blanks.count().get(), 0);
    near(widest_open_sheet(&job, &plan), 319.0, 0.05, "widest open sheet");
    // H high by hand: 0.77 + √((5 · 0.013)² + 0.025²) = 0.8396; (2.6 − 0.8396) / 0.119 = 14.8 sheets.
    near(plan.results.stack.flat.high.0.get(), 0.8396, 0.0001, "H high");
    assert_eq!(plan.room_pages(), Some(56));
}

/// Job 2: 8.5 × 11 in, 15 pages self cover, 80 lb gloss text 0.0038 in: 16 pages on 4 sheets, H 0.39, about
/// 57 g, one blank: the last page. With bleed it needs 12 × 18 in, 11 × 17 is too small; at most 455.3 mm
/// may go straight through, so 12 × 18 (457.2 mm) must be cut first.
#[test]
fn yearbook_insert() {
    let (job, plan) = expect("02-yearbook-insert", 4, 0.386, 0.772, (57.0, 0.5));
    let blanks = plan.results.blanks;
    assert_eq!((blanks.made.get(), blanks.count().get()), (16, 1));
    assert_eq!(blanks.numbers().collect::<Vec<u32>>(), [16]);
    assert!(has(&plan, "blanks", "one"));
    let flat = plan.results.trim.flat;
    let holds =
        |short: f64, long: f64| flat.height.inches() <= short && flat.width.inches() <= long;
    assert!(!holds(11.0, 17.0) && holds(12.0, 18.0), "{flat:?}");
    near(widest_open_sheet(&job, &plan), 455.3, 0.05, "widest open sheet");
    assert_eq!(plan.verdict, Verdict::Fits);
}

/// Job 4: 170 × 240 mm, 96 + 4 pages, 70 coated 0.058 mm, cover 150 0.115 mm, 12,000 copies: 25 sheets,
/// H 1.51, S 3.01, about 149 g, 1.8 t; fits.
#[test]
fn seed_catalogue() {
    let (job, plan) = expect("04-seed-catalogue", 25, 1.507, 3.014, (149.0, 0.5));
    let run = plan.results.mass.unwrap().nominal_page.get() * job.copies.unwrap().as_f64() / 1e6;
    near(run, 1.8, 0.05, "tonnes");
    assert_eq!(plan.verdict, Verdict::Fits);
    // H high by hand: 1.507 + √((24 · 0.013)² + 0.013²) = 1.8193; / 0.071 leaves 10.996 sheets, so 10.
    assert_eq!(plan.room_pages(), Some(40));
}

/// Job 5: A4, 144 + 4 pages, 90 offset 0.115 mm, cover 250 0.290 mm: 37 sheets, H 4.43, S 8.86, impossible,
/// 70 % over; the stack decides.
#[test]
fn manual_in_one_volume() {
    // Nobody expected a mass: by hand 72 A4 leaves of 90 and 2 of 250 g/m².
    let grams = 0.210 * 0.297 * (72.0 * 90.0 + 2.0 * 250.0);
    let (_, plan) = expect("05-manual-one-volume", 37, 4.43, 8.86, (grams, 1e-6));
    assert_eq!(plan.verdict, Verdict::DoesNotFit);
    assert_eq!(broken(&plan), [LimitId::FlatStack]);
    assert_eq!(plan.tightest().unwrap().id, LimitId::FlatStack);
    near(plan.results.stack.flat.nominal.0.get() / 2.6, 1.70, 0.005, "share of the limit");
    // 18 sheets of 0.115 too many: what is left is the half below.
    assert_eq!(plan.room_pages(), Some(-72));
}

/// Job 5, in two volumes of 72 + 4: H 2.36, fits. Barely: the mill's 0.013 mm on 18 leaves and 0.0145 mm on
/// the cover make the stack 2.594 mm at most, 6 µm below the limit, so there is no room for another
/// sheet, though by nominal figures there were two. Where the pages belong, in a round fold: outermost 1.35 mm
/// outward from the fold line, innermost 2.04 mm over it.
#[test]
fn manual_in_two_volumes() {
    let grams = 0.210 * 0.297 * (36.0 * 90.0 + 2.0 * 250.0);
    let (_, plan) = expect("05-manual-two-volumes", 19, 2.36, 4.72, (grams, 1e-6));
    assert_eq!(plan.verdict, Verdict::Fits);
    let stack = limit(&plan, LimitId::FlatStack);
    near(stack.value.high, 2.594, 0.0005, "H high");
    near(stack.margin, 0.006, 0.0005, "margin");
    assert_eq!(stack.room.sheets, Some(0));
    assert_eq!(plan.room_pages(), Some(0));
    assert_eq!(plan.tightest().unwrap().id, LimitId::FlatStack);

    let (first, last) = (plan.results.leaves[0], plan.results.leaves[18]);
    near(first.image_shift.get(), 1.35, 0.005, "outermost");
    near(last.image_shift.get(), -2.04, 0.005, "innermost");
    near(plan.results.margins.fold_gap.get(), 2.69, 0.01, "gap of the cover's pages");
    near(plan.results.margins.fold_overlap.get(), 4.08, 0.01, "overlap at the centre");
    assert!(has(&plan, "fold_gap", "found"));
    // One sheet more needs a dummy: at most 2.722 mm, at least 2.228.
    let (_, more) = planned_with("05-manual-two-volumes", &[("pages", "76 + 4")]);
    assert_eq!(more.verdict, Verdict::Marginal);
}

/// Job 6: A6, 32 pages self cover, 115 silk 0.090 mm, two along the fold: 8 sheets, H 0.72, S 1.44, about
/// 29 g, open sheet about 216 × 308 mm (tolerance 1 mm: the wrap makes it 216.8).
#[test]
fn programme_two_up() {
    let (_, plan) = expect("06-programme-two-up", 8, 0.72, 1.44, (29.0, 0.5));
    near(plan.results.trim.flat.width.get(), 216.0, 1.0, "open width");
    near(plan.results.trim.flat.height.get(), 308.0, 1e-9, "open height");
    // Two copies of 105 × 148 mm are not one of 105 × 302.
    assert!(plan.results.mass.unwrap().chips.get() < 3.0);
}

/// Job 7: A4 landscape, 28 + 4 pages, 150 0,125 mm, cover 300 0,300 mm: 8 sheets, H 1.18, S 2.35, about
/// 168 g; impossible, open about 600 (tolerance 2 mm) × 216 > 470, width 297 > 230. A5 landscape fits.
#[test]
fn catalogue_landscape() {
    let (_, a4) = expect("07-catalogue-a4-landscape", 8, 1.175, 2.35, (168.0, 0.5));
    assert_eq!(a4.verdict, Verdict::DoesNotFit);
    assert_eq!(broken(&a4), [LimitId::OpenWidth, LimitId::FinishedWidth]);
    near(a4.results.trim.flat.width.get(), 600.0, 2.0, "open width");
    near(a4.results.trim.flat.height.get(), 216.0, 1e-9, "open height");

    let (_, a5) = planned("07-catalogue-a5-landscape");
    assert_eq!(a5.verdict, Verdict::Fits);
    near(a5.results.stack.flat.nominal.0.get(), 1.175, 1e-9, "H");
}

/// Job 9: A5, 40 pages self cover: 170 g/m² 0.135 mm weighs 105.7 g, S 2.70; 150 g/m² 0.120 mm 93.2 g,
/// S 2.40. A limit of 100 g refuses the first; the second has no room for an envelope of 7 g.
#[test]
fn appeal_by_post() {
    let (_, heavy) = expect("09-appeal-170", 10, 1.35, 2.70, (105.7, 0.05));
    let (_, light) = expect("09-appeal-150", 10, 1.20, 2.40, (93.2, 0.05));
    assert_eq!((heavy.verdict, light.verdict), (Verdict::Fits, Verdict::Fits));
    // Even the lightest lot of the first is too heavy, even as its leaves are cut.
    assert!(heavy.results.mass.unwrap().book.low.get() > 100.0);
    assert!(light.results.mass.unwrap().book.nominal.get() < 100.0);
    assert!(light.results.mass.unwrap().book.nominal.get() + 7.0 > 100.0);
}

/// Job 12: 80 × 80 mm, 64 pages self cover, 120 g/m² 0.135 mm: 16 sheets, H 2.16, S 4.32, about 25 g;
/// impossible one along the fold, its spine is shorter than 120 mm. Two along the fold are long enough;
/// whether two heads can stitch them is not asked here.
#[test]
fn stickers() {
    let (_, one) = expect("12-stickers-one-up", 16, 2.16, 4.32, (25.0, 0.5));
    assert_eq!(one.verdict, Verdict::DoesNotFit);
    assert_eq!(broken(&one), [LimitId::SpineLength]);
    assert_eq!(one.tightest().unwrap().id, LimitId::SpineLength);
    near(limit(&one, LimitId::SpineLength).margin, -40.0, 1e-9, "margin");

    let (_, two) = expect("12-stickers-two-up", 16, 2.16, 4.32, (25.0, 0.5));
    let spine = limit(&two, LimitId::SpineLength);
    assert_eq!(spine.answer, Answer::Fits);
    // 80 + gutter 6 + 80; the sheets are cut to height before, so head and foot do not travel.
    near(spine.value.nominal, 166.0, 1e-9, "spine as it travels");
    assert!(broken(&two).is_empty(), "{:?}", broken(&two));
}

/// f = π/2 in a round fold that nobody has measured: every push-out of every job is that many times the
/// stack step it rose over, and the trade's factor 1 leaves the step itself.
#[test]
fn round_folds_by_geometry() {
    for name in JOBS {
        let (_, plan) = planned(name);
        for leaf in &plan.results.leaves {
            let expected = leaf.step.nominal.get() * FRAC_PI_2;
            near(leaf.push_out.nominal.get(), expected, 1e-9, name);
        }
    }
}

/// The room that a limit promises, planned: with so many sheets more, or without so many too many, it
/// fits. One more does not fit over the whole band where one paper makes the whole book; beside a cover of
/// its own the promise may be a sheet too modest, because the doubts of two papers do not add up.
#[test]
fn promised_room_is_there() {
    let mut promises = 0;
    for name in JOBS {
        let (job, plan) = planned(name);
        let inside = i64::from(job.main_section().unwrap().sheets.get());
        let tail = if job.cover().is_some() { "+ 4" } else { "self cover" };
        for (id, room) in
            plan.results.limits.iter().filter_map(|limit| Some((limit.id, limit.room.sheets?)))
        {
            let with = |more: i64| {
                let pages = format!("{} {tail}", 4 * (inside + room + more));
                let (_, plan) = planned_with(name, &[("pages", &pages)]);
                limit(&plan, id).answer
            };
            assert_eq!(with(0), Answer::Fits, "{name}, {id:?}: {room} sheets more");
            if job.cover().is_none() {
                assert_eq!(with(1), Answer::Marginal, "{name}, {id:?}: {room} + 1 sheets more");
            }
            promises += 1;
        }
    }
    // The stack and the chip of the innermost leaf, of every job.
    assert_eq!(promises, 2 * JOBS.len());
}

/// The same job twice, from the file to the last digit: the same bytes, for programs and for people.
#[test]
fn the_same_job_makes_the_same_bytes() {
    let words = Words::load(&[EN, EN_GB]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let mut different = Vec::new();
    for name in JOBS {
        let told = || {
            let shop = line_h();
            let job = job_of(&draft(name, &job::SCHEMA), &shop);
            let plan = plan(&job, &shop);
            let json = serde_json::to_string_pretty(&plan_out(&job, &plan, &printer)).unwrap();
            (json, text(&job, &shop, &plan, &printer))
        };
        let (first, again) = (told(), told());
        assert_eq!(first.0.as_bytes(), again.0.as_bytes(), "{name}: JSON");
        assert_eq!(first.1.as_bytes(), again.1.as_bytes(), "{name}: text");
        // Something is told, and not the same of every job.
        assert!(first.0.contains("\"nest\"") && first.1.lines().count() > 20, "{name}");
        different.push(first);
    }
    different.dedup();
    assert_eq!(different.len(), JOBS.len());
}
