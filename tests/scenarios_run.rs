//! Stitches and run of jobs whose figures were worked out by hand before the planner was.
//!
//! Names and papers are invented. "Line H" is the built-in class of that name: two heads 54–130 mm
//! apart, 2,000 good sets an hour, 12 min makeready, 25 sets and 2 % spoilt.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

use quirefit::data::{Line, Pace, Supplies};
use quirefit::draft::Draft;
use quirefit::job::{self, Job};
use quirefit::plan::{Placed, Plan, Station, Verdict, plan};
use quirefit::shop::{self, Shop};
use quirefit::units::{Copies, Mm, Second};

const MINUTE: f64 = 60.0;

#[track_caller]
fn read(shop: &Shop, fields: &[(&str, &str)]) -> Job {
    let mut all = vec![("line", "Line H")];
    all.extend_from_slice(fields);
    let reading = job::read(&Draft::of(&all), shop);
    reading.job.clone().unwrap_or_else(|| panic!("{:?}", reading.notes))
}

#[track_caller]
fn planned(fields: &[(&str, &str)]) -> Plan {
    let shop = shop::demo();
    plan(&read(&shop, fields), &shop)
}

/// The demo shop with Line H changed.
fn shop_with(change: impl FnOnce(&mut Line)) -> Shop {
    let mut shop = shop::demo();
    let index = shop.line("Line H").unwrap();
    change(&mut shop.lines[index]);
    shop
}

fn near(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "found {found}, expected {expected}");
}

fn fired(plan: &Plan, rule: &str, case: &str) -> bool {
    plan.findings.iter().any(|finding| finding.rule == rule && finding.case == case)
}

fn from_lay(plan: &Plan) -> Vec<f64> {
    plan.results.stitches.placement.stitches.iter().map(|stitch| stitch.from_lay.get()).collect()
}

const SEEDS: [(&str, &str); 5] = [
    ("pages", "96 + 4"),
    ("size", "170 x 240"),
    ("paper", "70 gsm gloss 0.058 mm"),
    ("cover", "150 gsm gloss 0.115 mm"),
    ("copies", "12,000"),
];

/// A gallery guide: ceil(2,500 / 0.98) + 25 = 2,577 sets, not 2,500 · 1.02 + 25 = 2,575.
#[test]
fn gallery_guide_sets_to_feed() {
    let plan = planned(&[
        ("pages", "20 + 4"),
        ("size", "A5"),
        ("paper", "130 gsm silk 0.106 mm"),
        ("cover", "250 gsm silk cover 0.240 mm"),
        ("copies", "2,500"),
    ]);
    let quantities = &plan.results.run.quantities;
    assert_eq!((quantities.net, quantities.fed), (2_500, 2_577));
    assert!(quantities.components.iter().all(|component| component.printed == 2_577));
    // A 210 mm spine: ¼ and ¾ from the head; 105 mm lies within the heads' 54–130.
    let placement = &plan.results.stitches.placement;
    assert_eq!((placement.placed, placement.passes), (Placed::Even, 1));
    near(placement.stitches[0].from_head.get(), 52.5, 1e-9);
    near(placement.stitches[1].from_foot.get(), 52.5, 1e-9);
    // 0.77 mm of stack: the finest wire, and never refused for being thin.
    assert_eq!(plan.results.stitches.wire.gauge, Some("26"));
    assert_eq!(plan.verdict, Verdict::Fits);
}

/// A seed catalogue: "2,000 good copies an hour" makes 6 h 12; were the rate one of sets fed, 12,270
/// sets would take 6 h 20.
#[test]
fn seed_catalogue_time() {
    let good = planned(&SEEDS);
    assert_eq!(good.results.run.quantities.fed, 12_270);
    near(good.results.run.times.best.get(), 6.0 * 3600.0 + 12.0 * MINUTE, 1e-6);
    let shop = shop_with(|line| line.pace.counts_good = false);
    let fed = plan(&read(&shop, &SEEDS), &shop);
    // 12,270 / 2,000 h = 6 h 8.1 min, and 12 min makeready.
    near(fed.results.run.times.best.get(), (6.0 * 60.0 + 20.1) * MINUTE, 0.5);
}

/// 12,100 of one section arrive: floor((12,100 − 25) · 0.98) = floor(11,833.5) good copies.
#[test]
fn seed_catalogue_comes_in_short() {
    let mut fields = SEEDS.to_vec();
    fields.push(("supplied_inside", "12,100"));
    fields.push(("supplied_cover", "12,400"));
    let plan = planned(&fields);
    let quantities = &plan.results.run.quantities;
    assert_eq!(quantities.good, Copies(11_833));
    assert_eq!(quantities.fed, 12_100);
    assert_eq!(quantities.components[0].makes, Some(Copies(12_127)), "floor(12,375 · 0.98)");
    assert!(fired(&plan, "short_component", "inside"));
}

/// A programme two-up: 40, 114, 194, 268 mm from the lay edge, two heads, two passes 154 mm apart.
#[test]
fn programme_two_up() {
    let fields = [
        ("pages", "32 self cover"),
        ("size", "A6"),
        ("paper", "115 gsm silk 0.090 mm"),
        ("copies", "5,000"),
        ("copies_up", "2"),
    ];
    let mut after = fields.to_vec();
    after.push(("head_foot", "after"));
    let plan = planned(&after);
    let lay: Vec<f64> = from_lay(&plan);
    for (found, expected) in lay.iter().zip([40.0, 114.0, 194.0, 268.0]) {
        near(*found, expected, 1e-9);
    }
    let placement = &plan.results.stitches.placement;
    assert_eq!((placement.passes, placement.heads_used), (2, 2));
    assert_eq!(placement.moves().map(|to| to.from_first).collect::<Vec<_>>(), [Mm(154.0)]);
    near(placement.between_copies().unwrap().get(), 80.0, 1e-9);
    assert!(fired(&plan, "stitch_passes", "copies"));
    assert_eq!(plan.results.run.quantities.net, 2_500, "5,000 copies are 2,500 sets");
    // Cut flat to height before, the head trim is gone and everything stands 3 mm nearer the edge.
    for (found, expected) in from_lay(&planned(&fields)).iter().zip([37.0, 111.0, 191.0, 265.0]) {
        near(*found, expected, 1e-9);
    }
    // From the foot, the last stitch comes first.
    let shop = shop_with(|line| line.stitching.lay_at_foot = true);
    let turned = plan_of(&shop, &after);
    near(from_lay(&turned)[0], 308.0 - 40.0, 1e-9);
}

fn plan_of(shop: &Shop, fields: &[(&str, &str)]) -> Plan {
    plan(&read(shop, fields), shop)
}

/// Stickers of 80 × 80 mm two-up: ¼ and ¾ are 40 mm apart, the heads 54 at least. Stitches move to 13
/// and 67 of each copy, and two heads take two passes; four heads at 54 mm would need 162 mm of the
/// 143.3 that the edges leave.
#[test]
fn stickers_two_up() {
    let fields = [
        ("pages", "64"),
        ("size", "80 x 80 mm"),
        ("paper", "120 gsm uncoated 0.135 mm"),
        ("copies", "1,000"),
        ("copies_up", "2"),
    ];
    let plan = planned(&fields);
    let placement = &plan.results.stitches.placement;
    assert_eq!(placement.placed, Placed::Moved);
    let heads: Vec<f64> = placement.stitches.iter().map(|stitch| stitch.from_head.get()).collect();
    assert_eq!(heads, [13.0, 67.0, 13.0, 67.0]);
    assert_eq!(placement.passes, 2);
    near(placement.edge.get(), 11.35, 1e-9);
    // Four heads do not help: 32 mm lie between the copies.
    let four = shop_with(|line| line.heads = 4);
    let placement = plan_of(&four, &fields).results.stitches.placement;
    assert_eq!((placement.passes, placement.passes_least), (2, 1));
    // A line that allows one pass refuses.
    let once = shop_with(|line| line.passes.most = Some(1.0));
    assert_eq!(plan_of(&once, &fields).verdict, Verdict::DoesNotFit);
}

/// A4 on Line H: ¼ and ¾ are 148.5 mm apart, the heads 130 at most: moved, 83.5 mm of overhang.
#[test]
fn a4_moves_to_the_heads() {
    let plan = planned(&[("pages", "32"), ("size", "A4"), ("paper", "90 gsm uncoated 0.11 mm")]);
    let placement = &plan.results.stitches.placement;
    assert_eq!(placement.placed, Placed::Moved);
    near(placement.pitch.get(), 130.0, 1e-9);
    near(placement.overhang.get(), 83.5, 1e-9);
    // Heads 90 mm apart at most would leave 103.5 mm, more than a third: struck one by one instead.
    let narrow = shop_with(|line| line.pitch.most = Some(90.0));
    let plan = plan_of(&narrow, &[("pages", "32"), ("size", "A4"), ("paper", "90 gsm uncoated")]);
    let placement = &plan.results.stitches.placement;
    assert_eq!((placement.placed, placement.passes), (Placed::Apart, 2));
    near(placement.overhang.get(), 74.25, 1e-9);
}

/// An appeal of 20,000, A5, 40 pages: 20,434 sets, 10 h 12; its wire by hand.
#[test]
fn appeal_run() {
    let plan = planned(&[
        ("pages", "40"),
        ("size", "A5"),
        ("paper", "150 gsm silk 0.120 mm"),
        ("copies", "20,000"),
        ("start", "8:30"),
    ]);
    let run = &plan.results.run;
    assert_eq!(run.quantities.fed, 20_434, "ceil(20,000 / 0.98) = 20,409, and 25");
    near(run.times.best.get(), (10.0 * 60.0 + 12.0) * MINUTE, 1e-6);
    let (start, best, worst) = run.times.clock.unwrap();
    assert_eq!(start, Second(8.5 * 3600.0));
    near(best.get(), 18.7 * 3600.0, 1e-6);
    assert_eq!(best, worst, "nothing of this line runs full");
    // H = 1.2 mm, high 1.33 (the tolerance of text, 0.013 a leaf): legs 4.33, 12.7 + 8.66 = 21.36 mm.
    near(plan.results.stitches.wire.draw.high.get(), 21.36, 1e-9);
    // 40,868 stitches of 21.36 mm are 872.9 m; 0.460 mm wire weighs π/4 · 0.46² · 7.85 = 1.3046 g/m.
    near(run.consumed.wire_length.get() / 1000.0, 872.94, 0.01);
    near(run.consumed.wire.get(), 1_138.8, 0.5);
}

/// Stations by hand: a feeder of 9,000 sheets an hour, ten sheets, two passes.
#[test]
fn stations_in_sequence_and_overlapping() {
    let pace = Pace {
        overlap: false,
        feeder_sheets_hour: Some(9_000.0),
        stroke: Some(0.5),
        index: Some(0.5),
        fold: Some(1.0),
        form: Some(9.0),
        cut: Some(1.0),
        ..Pace::PLAIN
    };
    let fields = [
        ("pages", "40"),
        ("size", "A6"),
        ("paper", "90 gsm uncoated 0.11 mm"),
        ("copies", "1,000"),
        ("copies_up", "2"),
    ];
    let line = |overlap: bool| {
        shop_with(move |line| {
            line.pace = Pace { overlap, ..pace };
            line.sets_per_hour = f64::INFINITY;
        })
    };
    // 10 sheets at 9,000 an hour 4 s; 0.5 + 0.5 + 0.5 s of stitching; 1 s fold; 1 s cut; round: no form.
    let run = plan_of(&line(false), &fields).results.run;
    near(run.pacing.interval.get(), 4.0 + 1.5 + 1.0 + 1.0, 1e-9);
    assert_eq!((run.pacing.bottleneck, run.pacing.in_sequence), (Station::Gather, true));
    let run = plan_of(&line(true), &fields).results.run;
    near(run.pacing.interval.get(), 4.0, 1e-9);
    // A press in line of 3,600 sheets an hour: ten sheets take it 10 s.
    let shop = shop_with(|line| {
        line.pace = Pace { press_sheets_hour: Some(3_600.0), ..pace };
        line.sets_per_hour = f64::INFINITY;
    });
    let run = plan_of(&shop, &fields).results.run;
    assert_eq!(run.pacing.bottleneck, Station::Press);
    near(run.pacing.interval.get(), 10.0, 1e-9);
}

/// Stops by hand: 1,000 good sets, none spoilt, a second each.
#[test]
fn stops_and_best_and_worst() {
    let shop = shop_with(|line| {
        line.pace = Pace::PLAIN;
        line.sets_per_hour = 3_600.0;
        line.makeready_minutes = 10.0;
        line.supplies = Supplies {
            stacker_books: Some(300.0),
            stacker_minutes: 1.0,
            stacker_running: true,
            spool_mass: Some(20.0),
            spool_minutes: 5.0,
            ..Supplies::ENDLESS
        };
    });
    let fields =
        [("pages", "40"), ("size", "A5"), ("paper", "150 gsm silk 0.120 mm"), ("copies", "1,000")];
    let plan = plan_of(&shop, &fields);
    let stops: Vec<_> = plan.results.run.stops().collect();
    // Each head draws 21.36 mm of 1.3046 g/m, 0.02787 g a set: 20 g last 717 sets.
    assert_eq!(stops[0].every, 300);
    assert_eq!(stops[1].every, 717);
    // 300, 600, 900; one spool. None after the last set.
    assert_eq!((stops[0].times, stops[1].times), (3, 1));
    assert_eq!(stops[0].first, Second(300.0));
    let times = plan.results.run.times;
    near(times.best.get(), 600.0 + 1_000.0 + 300.0, 1e-6);
    near(times.worst.get(), 600.0 + 1_000.0 + 300.0 + 180.0, 1e-6);
}

/// Four stitches typed where the spine holds two: crowns of 12.7 mm and 11.35 mm to either cut.
#[test]
fn a_spine_too_short_for_its_stitches() {
    let fields = |count| {
        [("pages", "16"), ("size", "80 x 60 mm"), ("paper", "90 gsm uncoated"), ("stitches", count)]
    };
    // 60 − 2 · 11.35 = 37.3 mm hold three spaces of 12.7 (38.1)? No. Two (25.4)? Yes.
    assert!(fired(&planned(&fields("4")), "stitch_room", "found"));
    assert!(!fired(&planned(&fields("3")), "stitch_room", "found"));
}

/// Loops stand 80 mm apart (ISO 838, from memory) and take wire of their own.
#[test]
fn loops_for_a_binder() {
    let fields = [("pages", "16"), ("size", "A5"), ("paper", "90 gsm uncoated 0.11 mm")];
    let mut loops = fields.to_vec();
    loops.push(("loops", "yes"));
    let (flat, loops) = (planned(&fields), planned(&loops));
    near(loops.results.stitches.placement.pitch.get(), 80.0, 1e-9);
    near(loops.results.stitches.placement.stitches[0].from_head.get(), 65.0, 1e-9);
    assert!(loops.results.stitches.wire.draw.low > flat.results.stitches.wire.draw.low);
}

/// Words on the spine keep clear of the wires: crown / 2 + 3 mm either side of ¼ and ¾.
#[test]
fn words_dodge_the_wires() {
    let placement = planned(&[("pages", "16"), ("size", "A5"), ("paper", "90 gsm uncoated")])
        .results
        .stitches
        .placement;
    let (from, to) = placement.free_of_wire(Mm(210.0), Mm(12.7));
    near(from.get(), 52.5 + 6.35 + 3.0, 1e-9);
    near(to.get(), 157.5 - 6.35 - 3.0, 1e-9);
}
