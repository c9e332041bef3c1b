//! The flat sheet on press sheets: invented jobs with figures worked out by hand, every copy kept clear
//! of the next and of blank edges, and the order of pages checked by folding.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod laws;
#[path = "../support/mod.rs"]
mod support;

use proptest::prelude::*;
use quirefit::draft::Draft;
use quirefit::job::{self, Job};
use quirefit::plan::{
    Folio, Grain, Layout, Panel, Plan, Refusal, Route, Side, Step, Way, copies, panels, plan, steps,
};
use quirefit::shop::{self, SheetGrain, Shop};
use quirefit::units::{Mm, Money};

/// A demo shop whose line is "Line H": face cut 2–12 mm, open sheet to 330 × 470 mm.
const LINE: &str = "Line H";

#[track_caller]
fn read(shop: &Shop, fields: &[(&str, &str)]) -> Job {
    let mut all = vec![("line", LINE)];
    all.extend_from_slice(fields);
    let reading = job::read(&Draft::of(&all), shop);
    reading.job.clone().unwrap_or_else(|| panic!("{:?}", reading.notes))
}

#[track_caller]
fn planned(fields: &[(&str, &str)]) -> (Shop, Job, Plan) {
    let shop = shop::demo();
    let job = read(&shop, fields);
    let planned = plan(&job, &shop);
    (shop, job, planned)
}

#[track_caller]
fn way(shop: &Shop, layout: &Layout, name: &str, route: Route) -> Way {
    let sheet = shop.press_sheets.iter().position(|sheet| sheet.name == name).unwrap();
    *layout.ranked().find(|way| way.sheet == sheet && way.route == route).unwrap()
}

#[track_caller]
fn near(found: Mm, expected: f64) {
    // Expected figures are given to a hundredth.
    assert!((found.get() - expected).abs() <= 0.0051, "found {found:?}, expected {expected}");
}

fn fired(plan: &Plan, rule: &str, case: &str) -> bool {
    plan.findings.iter().any(|finding| finding.rule == rule && finding.case == case)
}

const GUIDE: [(&str, &str); 5] = [
    ("pages", "20 + 4"),
    ("size", "A5"),
    ("paper", "130 gsm silk 0.106 mm"),
    ("cover", "250 gsm silk cover 0.240 mm"),
    ("copies", "2,500"),
];
const YEARBOOK: [(&str, &str); 5] = [
    ("pages", "15 self cover"),
    ("size", "8.5 x 11 in"),
    ("paper", "80 lb gloss text 0.0038 in"),
    ("copies", "420"),
    ("units", "in"),
];
/// One volume of two.
const MANUAL: [(&str, &str); 5] = [
    ("pages", "72 + 4"),
    ("size", "A4"),
    ("paper", "90 gsm uncoated 0.115 mm"),
    ("cover", "250 gsm uncoated 0.290 mm"),
    ("copies", "600"),
];
const PROGRAMME: [(&str, &str); 5] = [
    ("pages", "32 self cover"),
    ("size", "A6"),
    ("paper", "115 gsm silk 0.090 mm"),
    ("copies", "5,000"),
    ("copies_up", "2"),
];

fn with<'a>(fields: &[(&'a str, &'a str)], more: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    fields.iter().chain(more).copied().collect()
}

/// Half of SRA3 is 160 mm; w + wrap = 148 + 0.571 × 0.77: 11.56 mm is left, and the innermost leaf
/// stands out 0.94 mm: over 12 mm before any tolerance.
#[test]
fn a_guide_on_half_sra3_leaves_too_deep_a_chip() {
    let (shop, _, planned) = planned(&GUIDE);
    let straight = way(&shop, &planned.results.layout, "SRA4", Route::Straight);
    near(straight.face_cut, 11.56);
    near(straight.innermost_chip.nominal, 12.50);
    assert!(matches!(straight.refusal, Some(Refusal::ChipDeep(_))), "{:?}", straight.refusal);
    let cut = way(&shop, &planned.results.layout, "SRA4", Route::CutFirst);
    assert_eq!((cut.refusal, cut.grid), (None, (1, 1)));
}

/// 2 × (8.5 in + wrap + bleed) is 17.25 in: 11 × 17 in is too small by a quarter of an inch.
#[test]
fn a_yearbook_with_bleed_needs_12_by_18() {
    let (shop, job, planned) = planned(&YEARBOOK);
    let layout = &planned.results.layout;
    for route in [Route::CutFirst, Route::Straight] {
        let small = way(&shop, layout, "11 × 17 in", route);
        assert!(matches!(small.refusal, Some(Refusal::Small(_))), "{:?}", small.refusal);
    }
    let cut = way(&shop, layout, "12 × 18 in", Route::CutFirst);
    assert_eq!((cut.refusal, cut.flats()), (None, 1));
    let straight = way(&shop, layout, "12 × 18 in", Route::Straight);
    near(straight.face_cut, 12.48);
    near(straight.innermost_chip.nominal, 12.93);
    assert!(matches!(straight.refusal, Some(Refusal::ChipDeep(_))));
    // Of the sheets in inches, none smaller than 12 × 18 does.
    let (wide, high) = (Mm::from_inches(18.0), Mm::from_inches(12.0));
    assert!(planned.results.trim.flat.width < wide && planned.results.trim.flat.height < high);
    assert_eq!(job.sheets().get(), 4);
}

/// Two programmes along one fold: 2 × (105 + 0.41 + 3) wide, 2 × 148 + 6 + 6 long.
#[test]
fn programmes_two_along_the_fold_fill_half_sra3() {
    let (shop, _, planned) = planned(&PROGRAMME);
    near(planned.results.trim.flat.width, 216.82);
    near(planned.results.trim.flat.height, 308.0);
    for route in [Route::CutFirst, Route::Straight] {
        let way = way(&shop, &planned.results.layout, "SRA4", route);
        assert_eq!((way.refusal, way.grid, way.fold_along_long), (None, (1, 1), true));
    }
    let straight = way(&shop, &planned.results.layout, "SRA4", Route::Straight);
    // 225 / 2 − 105 − 0.411
    near(straight.face_cut, 7.09);
    let sra3 = way(&shop, &planned.results.layout, "SRA3", Route::CutFirst);
    assert_eq!((sra3.grid, sra3.refusal), ((2, 1), None));
    assert!((sra3.used - 2.0 * 216.822 * 308.0 / (320.0 * 450.0)).abs() < 1e-4);
}

/// A volume of a manual: SRA3 leaves 13.65 mm, over 12; RA3 3.65 mm, which the line cuts. RA3 has no
/// room for bleed beside the blank edges, so that holds for a manual whose pages have white margins.
#[test]
fn a_manual_straight_through_wants_ra3() {
    let (shop, _, planned) = planned(&with(&MANUAL, &[("bleeds", "no")]));
    let layout = &planned.results.layout;
    let sra3 = way(&shop, layout, "SRA3", Route::Straight);
    near(sra3.face_cut, 13.65);
    near(sra3.innermost_chip.nominal, 17.04);
    assert!(matches!(sra3.refusal, Some(Refusal::ChipDeep(_))));
    let ra3 = way(&shop, layout, "RA3", Route::Straight);
    near(ra3.face_cut, 3.65);
    near(ra3.innermost_chip.nominal, 7.04);
    assert_eq!(ra3.refusal, None);
    // With bleed 0.65 mm is left at either side of 430 mm, 1 mm at either end of 305 mm, and the press
    // leaves 4 mm blank at each: along the fold 297 + 6 + 8 is 6 mm too long.
    let shop = shop::demo();
    let job = read(&shop, &MANUAL);
    let bleeding = plan(&job, &shop);
    let ra3 = way(&shop, &bleeding.results.layout, "RA3", Route::Straight);
    near(ra3.face_cut, 3.65);
    match ra3.refusal {
        Some(Refusal::Edges(by)) => near(by, 6.0),
        other => panic!("{other:?}"),
    }
}

/// Asked to run straight through, the cut that falls out is the cut of the whole plan.
#[test]
fn straight_through_the_plan_follows_the_press_sheet() {
    let straight =
        [("route", "straight"), ("press_sheet", "sra4"), ("line", "Middle line, three knives")];
    let (_, job, planned) = planned(&with(&GUIDE, &straight));
    let trim = &planned.results.trim;
    assert!(trim.straight);
    near(trim.face_cut, 11.56);
    near(trim.knife_from_face, 12.50);
    assert_eq!((trim.flat.width, trim.flat.height), (Mm(320.0), Mm(225.0)));
    assert_eq!(trim.travel_height, Mm(225.0));
    // In the middle of 225 mm: 7.5 mm at head and foot.
    near(trim.head_trim, 7.5);
    let first = &planned.results.stitches.placement.stitches[0];
    near(first.from_head_edge, 7.5 + first.from_head.get());
    let way = *planned.results.layout.chosen().unwrap();
    assert_eq!(steps(&job, &way, trim.travel_height).count(), 0);
}

/// What the line refuses is said twice: by the limit, and by where it comes from.
#[test]
fn a_chip_outside_the_lines_cut_is_told() {
    let deep = [("route", "straight"), ("press_sheet", "SRA4")];
    let (_, _, planned) = planned(&with(&GUIDE, &deep));
    assert!(fired(&planned, "straight_cut", "deep"));
    // The nominal chip is over, part of its band is not.
    assert!(planned.findings.iter().any(|finding| finding.rule == "innermost_chip"));
}

#[test]
fn rules_of_the_press_sheet() {
    let big = [("size", "400 x 600 mm"), ("pages", "8"), ("paper", "130 silk"), ("copies", "10")];
    let shop = Shop { press_sheets: shop::demo().press_sheets[..4].to_vec(), ..shop::demo() };
    let told = |fields: &[(&str, &str)], shop: &Shop| plan(&read(shop, fields), shop);
    assert!(fired(&told(&big, &shop), "press_sheet", "small"));
    assert!(fired(
        &told(&with(&GUIDE, &[("press_sheet", "RA4"), ("size", "A4")]), &shop),
        "press_sheet",
        "asked-small"
    ));
    let fine = told(&GUIDE, &shop);
    assert!(!fine.findings.iter().any(|finding| finding.rule == "press_sheet"));
    // A shop that lists none is not told off.
    let none = Shop { press_sheets: Vec::new(), ..shop::demo() };
    assert!(!fired(&told(&GUIDE, &none), "press_sheet", "small"));
    // Ten sheets on hand are not enough for 2,577 sets of six.
    let mut few = shop.clone();
    for sheet in &mut few.press_sheets {
        sheet.thousands_on_hand = Some(0.01);
    }
    assert!(fired(&told(&GUIDE, &few), "sheets_short", "found"));
}

/// Long grain means along the long side, whichever side was written first.
#[test]
fn grain_is_read_from_the_label_alone() {
    for turned in [false, true] {
        let mut shop = shop::demo();
        shop.press_sheets.retain(|sheet| sheet.name == "SRA3");
        for sheet in &mut shop.press_sheets {
            assert_eq!(sheet.grain, SheetGrain::Unknown);
            sheet.size = if turned { sheet.size.turned() } else { sheet.size };
        }
        let unknown = plan(&read(&shop, &MANUAL), &shop);
        assert_eq!(unknown.results.layout.chosen().unwrap().grain, Grain::Unknown);
        // A4 folded from SRA3: the spine runs along the short side.
        for (label, grain) in
            [(SheetGrain::Long, Grain::AcrossSpine), (SheetGrain::Short, Grain::AlongSpine)]
        {
            shop.press_sheets[0].grain = label;
            let planned = plan(&read(&shop, &MANUAL), &shop);
            assert_eq!(planned.results.layout.chosen().unwrap().grain, grain);
            assert_eq!(fired(&planned, "sheet_grain", "across"), grain == Grain::AcrossSpine);
            assert!(!fired(&planned, "grain", "unknown"));
        }
    }
}

/// The cost of the run counts the same press sheets at the same rate for a printed side.
#[test]
fn the_run_pays_for_the_sides_of_its_press_sheet() {
    let mut shop = shop::demo();
    shop.press_sheets.retain(|sheet| sheet.name == "SRA3");
    shop.press_sheets[0].click = Some(Money(0.25));
    let planned = plan(&read(&shop, &GUIDE), &shop);
    let printing = planned.results.cost.items().find(|item| item.id == "click").unwrap();
    // Two sides of 1,289 press sheets for each of six folded sheets.
    let sides = 2.0 * 6.0 * 1289.0;
    assert_eq!((printing.quantity, printing.total), (sides, Money(sides * 0.25)));
    // They weigh 1,289 × 0.144 m² × 900 g/m²: the paper that is bought.
    let paper = planned.results.cost.items().find(|item| item.id == "paper").unwrap();
    assert!((paper.quantity - 1289.0 * 0.144 * 0.9).abs() < 1e-9, "{}", paper.quantity);
}

/// Worked by hand: 6 folded sheets of a set, five of 130 and one of 250 g/m², 900 g/m² in all. One
/// SRA3 is 0.144 m²: 129.6 g at 2.00 a kilogram, and twelve sides at 0.05, over two flats.
#[test]
fn cost_of_a_set_by_hand() {
    let mut shop = shop::demo();
    shop.press_sheets.retain(|sheet| sheet.name == "SRA3");
    shop.press_sheets[0].click = None;
    shop.rates.paper_kilo = Some(Money(2.0));
    shop.rates.click = Some(Money(0.05));
    let priced = plan(&read(&shop, &GUIDE), &shop);
    let way = priced.results.layout.chosen().unwrap();
    assert_eq!(way.flats(), 2);
    let cost = (129.6 * 2.0 / 1000.0 + 12.0 * 0.05) / 2.0;
    assert!((way.cost.unwrap().get() - cost).abs() < 1e-12, "{:?} {cost}", way.cost);
    // By the thousand: six sheets at 80 a thousand.
    shop.press_sheets[0].thousand = Some(Money(80.0));
    let priced = plan(&read(&shop, &GUIDE), &shop);
    let cost = (6.0 * 0.08 + 12.0 * 0.05) / 2.0;
    assert!((priced.results.layout.chosen().unwrap().cost.unwrap().get() - cost).abs() < 1e-12);
    // 2,577 sets, two flats of one folded sheet on each: 1,289 press sheets for each of six.
    assert_eq!(priced.results.layout.needed.unwrap().sheets, f64::from(6 * 1289));
}

#[test]
fn steps_of_a_line_that_cuts_only_the_face() {
    let (_, job, planned) = planned(&with(&PROGRAMME, &[("press_sheet", "SRA3")]));
    let way = planned.results.layout.chosen().unwrap();
    let all: Vec<Step> = steps(&job, way, planned.results.trim.travel_height).collect();
    // Two flats: four edges and one cut between them; then the copies apart. Line H cuts only the face,
    // so the flats are cut to the height of two copies and their gutter.
    match all.as_slice() {
        [Step::IntoFlats { grid: (2, 1), flat, cuts: 5 }, Step::Apart { copies: 2, gutter }] => {
            near(flat.height, 302.0);
            assert_eq!(*gutter, Mm(6.0));
        }
        other => panic!("{other:?}"),
    }
    assert!(all[0].before() && !all[1].before());
}

/// Fold the sheet: behind a page lies its leaf's other page, 2k behind 2k − 1, at the same place.
fn backs(plan: &Plan, shape_of: usize) {
    let layout = &plan.results.layout;
    let way = layout.chosen().unwrap();
    let leaf = &plan.results.leaves[shape_of];
    let collect = |side| panels(layout.copy, way, leaf, side).collect::<Vec<Panel>>();
    let (front, back) = (collect(Side::Front), collect(Side::Back));
    let centre = |panel: &Panel| {
        (
            (panel.corner.width + panel.size.width / 2.0).get(),
            (panel.corner.height + panel.size.height / 2.0).get(),
        )
    };
    for panel in &front {
        let (x, y) = centre(panel);
        // Turned over with the gripper at its edge: mirrored along the gripper.
        let (x, y) = if way.gripper_beside {
            (x, way.press.height.get() - y)
        } else {
            (way.press.width.get() - x, y)
        };
        let behind = back
            .iter()
            .find(|other| {
                let (other_x, other_y) = centre(other);
                (other_x - x).abs() < 1e-9 && (other_y - y).abs() < 1e-9
            })
            .expect("something lies behind every page");
        let (Folio::Page(one), Folio::Page(other)) = (panel.folio, behind.folio) else {
            panic!("pages of the inside");
        };
        // The two pages of a leaf: 2j − 1 and 2j.
        assert_eq!(one.div_ceil(2), other.div_ceil(2), "{one} and {other}");
        assert_ne!(one, other);
        // Their heads point the same way in space.
        assert_eq!(panel.head_down ^ behind.head_down, way.gripper_beside);
    }
    assert_eq!(front.len(), back.len());
}

#[test]
fn pages_back_up_whichever_way_the_sheet_lies() {
    for sheet in ["SRA4", "SRA3", "SRA2", "RA1", "13 × 19 in"] {
        for pairs in ["head-to-foot", "head-to-head"] {
            let more =
                [("press_sheet", sheet), ("pairs", pairs), ("line", "Middle line, three knives")];
            let (_, _, planned) = planned(&with(&PROGRAMME, &more));
            for leaf in [0, 3, 7] {
                backs(&planned, leaf);
            }
        }
    }
}

/// The outermost sheet of 32 pages: 32 left and 1 right outside, 2 and 31 inside; the copy at the head
/// turned round when heads are to meet.
#[test]
fn come_and_go_turns_the_first_copy_round() {
    let more = [("press_sheet", "SRA4"), ("pairs", "head-to-head")];
    let (_, _, planned) = planned(&with(&PROGRAMME, &more));
    let layout = &planned.results.layout;
    let leaf = &planned.results.leaves[0];
    let front: Vec<(Folio, bool)> =
        panels(layout.copy, layout.chosen().unwrap(), leaf, Side::Front)
            .map(|panel| (panel.folio, panel.head_down))
            .collect();
    let expected = [(1, true), (32, true), (32, false), (1, false)];
    assert_eq!(front, expected.map(|(page, down)| (Folio::Page(page), down)));
}
