//! What must hold for every book on every line: stitches, overs, stops, times.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use proptest::prelude::*;
use quirefit::data::{Line, Overs, Range, StageOvers, Supplies};
use quirefit::draft::Draft;
use quirefit::job::{self, HeadFoot, Job};
use quirefit::plan::{Placed, Plan, plan};
use quirefit::run::{good, gross};
use quirefit::shop::{self, Shop};
use quirefit::units::{Copies, Mm};

/// A book of one paper with what the laws vary.
#[derive(Debug, Clone)]
struct Case {
    sheets: u32,
    height: f64,
    leaf: f64,
    copies: u32,
    up: u32,
    stitches: Option<u32>,
    loops: bool,
    heads: u32,
    pitch: (f64, f64),
    least_trim: HeadFoot,
    lay_at_foot: bool,
    line: usize,
}

prop_compose! {
    fn cases()(
        sheets in 2_u32..60,
        height in 40.0_f64..500.0,
        leaf in 0.055_f64..0.25,
        copies in 1_u32..50_000,
        up in 1_u32..=3,
        stitches in prop::option::of(1_u32..=12),
        loops in any::<bool>(),
        heads in 1_u32..=6,
        pitch in (20.0_f64..120.0, 0.0_f64..150.0),
        least_trim in prop::sample::select(vec![HeadFoot::OnLine, HeadFoot::Before, HeadFoot::After]),
        lay_at_foot in any::<bool>(),
        line in 0_usize..4,
    ) -> Case {
        Case { sheets, height, leaf, copies, up, stitches, loops, heads, pitch, least_trim, lay_at_foot, line }
    }
}

impl Case {
    fn shop(&self) -> Shop {
        let mut shop = shop::demo();
        let line: &mut Line = &mut shop.lines[self.line];
        line.heads = self.heads;
        line.pitch = Range::between(self.pitch.0, self.pitch.0 + self.pitch.1);
        line.stitching.lay_at_foot = self.lay_at_foot;
        shop
    }
    fn job(&self, shop: &Shop) -> Job {
        let pages = (self.sheets * 4).to_string();
        let size = format!("150 x {:.1} mm", self.height);
        let paper = format!("100 gsm uncoated {:.3} mm", self.leaf);
        let draft = Draft::of(&[("pages", &pages), ("size", &size), ("paper", &paper)]);
        let reading = job::read(&draft, shop);
        let mut job = reading.job.clone().unwrap_or_else(|| panic!("{:?}", reading.notes));
        job.copies = Some(Copies(self.copies));
        job.copies_up = self.up;
        job.stitches = self.stitches;
        job.loops = self.loops;
        job.head_foot = self.least_trim;
        job.line = self.line;
        job
    }
    fn plan(&self) -> (Job, Plan) {
        let shop = self.shop();
        let job = self.job(&shop);
        let planned = plan(&job, &shop);
        (job, planned)
    }
}

proptest! {
    #![proptest_config(support::tried(256, None))]

    /// What is fed is never less than what is wanted, and gives it back: no set more than needed.
    #[test]
    fn overs_give_back_what_was_wanted(net in 1_u32..2_000_000, share in 0.0_f64..0.6, fixed in 0_u32..500) {
        let overs = Overs::new(share, f64::from(fixed));
        let fed = gross(net, overs);
        prop_assert!(fed >= net);
        prop_assert!(good(fed, overs) >= net);
        prop_assert!(good(fed - 1, overs) < net, "one set fewer would do");
    }

    /// No crown stands nearer an edge or a cut than the line allows, unless a rule refuses the book.
    #[test]
    fn stitches_keep_clear_of_edges_and_cuts(case in cases()) {
        let (job, planned) = case.plan();
        let placement = &planned.results.stitches.placement;
        let refused = planned.findings.iter().any(|finding| finding.rule == "stitch_room");
        prop_assert_eq!(refused, !placement.has_room);
        let slack = Mm(1e-6);
        for stitch in &placement.stitches {
            if placement.has_room {
                prop_assert!(stitch.from_head + slack >= placement.edge, "{:?}", stitch);
                prop_assert!(stitch.from_foot + slack >= placement.edge, "{:?}", stitch);
            }
            prop_assert!((stitch.from_head + stitch.from_foot - job.size.height).get().abs() < 1e-6);
            // On the travelling sheet it stands within its own copy.
            let head = if job.head_foot == HeadFoot::Before { Mm::ZERO } else { job.head_trim };
            let start = head + (job.size.height + job.gutter) * f64::from(stitch.copy);
            prop_assert!((stitch.from_head_edge - start - stitch.from_head).get().abs() < 1e-6);
            let other = planned.results.trim.travel_height - stitch.from_lay;
            let lay = if case.lay_at_foot { other } else { stitch.from_lay };
            prop_assert!((lay - stitch.from_head_edge).get().abs() < 1e-6);
        }
    }

    /// Stitches struck together stand as far apart as heads can; every pass repeats the first; no head
    /// strikes twice in a pass; passes are never fewer than ceil(stitches / heads).
    #[test]
    fn passes_are_ones_the_heads_can_strike(case in cases()) {
        let (_, planned) = case.plan();
        let placement = &planned.results.stitches.placement;
        let (least, most) = (case.pitch.0 - 1e-6, case.pitch.0 + case.pitch.1 + 1e-6);
        prop_assert!(placement.passes >= placement.passes_least);
        prop_assert!(placement.passes <= placement.total());
        prop_assert_eq!(placement.passes_least, placement.total().div_ceil(case.heads));
        let opening: Vec<f64> = struck(&planned, 1);
        prop_assert!(opening.len() as u32 <= case.heads);
        let mut counted = 0;
        for pass in 1..=placement.passes {
            let at = struck(&planned, pass);
            counted += at.len();
            for (index, pair) in at.windows(2).enumerate() {
                let gap = pair[1] - pair[0];
                prop_assert!(gap >= least && gap <= most, "gap {gap} in pass {pass}");
                prop_assert!((gap - (opening[index + 1] - opening[index])).abs() < 1e-6);
            }
        }
        prop_assert_eq!(counted as u32, placement.total());
        if placement.placed == Placed::Moved {
            prop_assert!(placement.overhang <= Mm(case.height / 3.0 + 0.1));
        }
    }

    /// Stops are never negative, come no sooner than one set, and never after the last; a longer run
    /// takes no less time, at best and at worst, and the worst is never before the best.
    #[test]
    fn time_grows_with_copies(case in cases(), more in 1_u32..20_000) {
        let (_, planned) = case.plan();
        let (_, longer) = Case { copies: case.copies + more, ..case.clone() }.plan();
        let (run, long) = (&planned.results.run, &longer.results.run);
        prop_assert!(run.times.best <= run.times.worst);
        prop_assert!(run.times.best <= long.times.best);
        prop_assert!(run.times.worst <= long.times.worst);
        prop_assert!(run.quantities.fed >= case.copies.div_ceil(case.up));
        prop_assert!(run.quantities.good >= Copies(case.copies));
        for stop in run.stops() {
            prop_assert!(stop.every >= 1 && stop.first.get() >= 0.0 && stop.each.get() >= 0.0);
            prop_assert!(u64::from(stop.times) * u64::from(stop.every) < u64::from(run.quantities.fed));
        }
        let longer_stops = |supply| long.stops().find(|stop| stop.supply == supply).unwrap().times;
        for stop in run.stops() {
            prop_assert!(stop.times <= longer_stops(stop.supply));
        }
    }

    /// What comes in short makes fewer copies, never more, and the shortest decides.
    #[test]
    fn the_shortest_component_decides(case in cases(), supplied in 0_u32..60_000) {
        let shop = case.shop();
        let mut job = case.job(&shop);
        job.sections[0].supplied = Some(supplied);
        let short = plan(&job, &shop).results.run.quantities;
        prop_assert_eq!(short.short.is_some(), supplied < short.needed);
        prop_assert!(short.fed <= short.needed);
        if short.short.is_some() {
            prop_assert!(short.good <= Copies(case.copies.div_ceil(case.up) * case.up));
            prop_assert_eq!(Some(short.good), short.components[0].makes);
        }
    }

    /// Without supplies that end nothing stops a run.
    #[test]
    fn nothing_ends_nothing_stops(case in cases()) {
        let mut shop = case.shop();
        shop.lines[case.line].supplies = Supplies::ENDLESS;
        let times = plan(&case.job(&shop), &shop).results.run.times;
        prop_assert_eq!(times.best, times.worst);
        prop_assert_eq!(times.standing.get(), 0.0);
    }
}

/// Where the heads of one pass strike.
fn struck(plan: &Plan, pass: u32) -> Vec<f64> {
    let stitches = &plan.results.stitches.placement.stitches;
    let of_pass = stitches.iter().filter(|stitch| stitch.pass == pass);
    of_pass.map(|stitch| stitch.from_head_edge.get()).collect()
}

/// The largest run that is planned, where every stage spoils as much as a shop may say: no count
/// stops at the end of its type.
#[test]
fn the_largest_run_is_counted_to_the_end() {
    let mut shop = shop::demo();
    let most = Overs::new(0.5, 1_000_000.0);
    shop.overs = StageOvers { print: most, crease: most, cut: most };
    for line in &mut shop.lines {
        (line.pace.overs_share, line.pace.overs_sets) = (most.share, most.fixed);
    }
    let draft = Draft::of(&[
        ("pages", "2000 + 4"),
        ("size", "170 x 240"),
        ("paper", "70 gsm gloss 0.058 mm"),
        ("cover", "250 gsm silk cover 0.290 mm"),
        ("copies", "5,000,000"),
        ("head_foot", "after"),
    ]);
    let job = job::read(&draft, &shop).job.unwrap();
    let results = plan(&job, &shop).results;
    let printed = |stages: i32| 5e6 * 2_f64.powi(stages) + 1e6 * (2_f64.powi(stages) - 1.0);
    for part in &results.run.quantities.components {
        let stages = if part.creased > part.fed { 4 } else { 3 };
        assert_eq!(f64::from(part.printed), printed(stages));
    }
    let flats = results.layout.chosen().unwrap().flats();
    let sets = results.run.quantities.components.iter();
    let each = sets.map(|part| u64::from(part.printed.div_ceil(flats)) * u64::from(part.sheets));
    let (sheets, needed) = (each.sum::<u64>(), results.layout.needed.unwrap());
    assert_eq!((needed.sheets, needed.sides), (sheets as f64, 2.0 * sheets as f64));
    assert!(sheets > u64::from(u32::MAX), "{sheets} would fit anyway");
}
