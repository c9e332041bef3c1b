//! Small results worked out by hand that no published table covers: one plain book whose every length
//! can be told without a calculator, on a line and press sheets made for the case.
//!
//! The book: 10 sheets of 0.100 ± 0.013 mm (a government tolerance for text paper), 100 × 150 mm,
//! square back. H = 1.00 mm (0.87–1.13), S = 2.00 mm; the fold takes H = 1 mm beyond the width; the
//! innermost leaf stands out 2 × 9 × 0.1 = 1.8 mm. With a cut of 3 mm the flat sheet is
//! 2 × (100 + 1 + 3) = 208 by 3 + 150 + 3 = 156 mm.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::data::{Line, Range};
use quirefit::draft::Draft;
use quirefit::plan::{LimitCheck, LimitId, Placed, Plan, Refusal, Route, Shape, Way, plan};
use quirefit::shop::{self, PressSheet, SheetGrain, Shop};
use quirefit::units::{Band, Mm, Money, Size};
use std::f64::consts::FRAC_PI_2;

/// The book.
const BOOK: [(&str, &str); 10] = [
    ("pages", "40 self cover"),
    ("size", "100 x 150 mm"),
    ("paper", "100 gsm silk 0.100 mm"),
    ("spine", "square"),
    ("bleeds", "yes"),
    ("bleed", "3 mm"),
    ("safe", "5 mm"),
    ("tolerance", "1 mm"),
    ("head_trim", "3 mm"),
    ("foot_trim", "3 mm"),
];

/// Rounding of double-precision sums.
const EXACT: f64 = 1e-9;

#[track_caller]
fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() <= EXACT, "found {found}, by hand {expected}");
}

/// A line that cuts all three sides and takes anything, but for what the case says.
fn line() -> Line {
    Line { cuts_head_foot: true, face_cut: Range::between(2.0, 12.0), ..Line::UNLIMITED }
}

/// A shop with one line and some press sheets.
fn shop(line: Line, press_sheets: Vec<PressSheet>) -> Shop {
    Shop { lines: vec![line], press_sheets, ..shop::demo() }
}

/// A press sheet that can be printed right to its edges.
fn sheet(width: f64, height: f64) -> PressSheet {
    PressSheet {
        name: format!("{width} × {height}"),
        size: Size::new(Mm(width), Mm(height)),
        gripper: Mm::ZERO,
        margin: Mm::ZERO,
        click: None,
        ..shop::demo().press_sheets[0].clone()
    }
}

/// A press sheet that leaves so much blank at its gripper, along a long side, and at the other edges.
fn gripped((width, height): (f64, f64), (gripper, margin): (f64, f64)) -> PressSheet {
    PressSheet {
        gripper: Mm(gripper),
        margin: Mm(margin),
        long_side_leads: true,
        ..sheet(width, height)
    }
}

/// The book with a few fields said otherwise.
#[track_caller]
fn planned(shop: &Shop, more: &[(&str, &str)]) -> Plan {
    let fields: Vec<(&str, &str)> = BOOK.iter().chain(more).copied().collect();
    plan(&support::job(&Draft::of(&fields), shop), shop)
}

#[track_caller]
fn limit(plan: &Plan, id: LimitId) -> LimitCheck {
    *plan.results.limits.iter().find(|limit| limit.id == id).unwrap()
}

/// How the only press sheet is used on a route.
#[track_caller]
fn way(plan: &Plan, route: Route) -> Way {
    *plan.results.layout.ranked().find(|way| way.route == route).unwrap()
}

/// 50 sheets, at least 50 × 0.087 = 4.35 mm flat and 8.7 mm shut: 3.2 mm at either side leave 2.3.
/// Of 2 mm nothing is left, not less.
#[test]
fn words_on_the_spine_keep_clear_of_both_its_edges() {
    let shop = shop(line(), Vec::new());
    let thick = planned(&shop, &[("pages", "200 self cover")]);
    near(thick.results.cover.text_room.get(), 2.3);
    assert_eq!(planned(&shop, &[]).results.cover.text_room, Mm::ZERO);
}

/// Open, the cover is 2 × (100 + 1) by 150 mm; with 3 mm of bleed all round 208 by 156.
#[test]
fn bleed_lies_all_round_the_open_cover() {
    let cover = planned(&shop(line(), Vec::new()), &[]).results.cover;
    near(cover.open.width.get(), 202.0);
    near(cover.with_bleed.width.get(), 208.0);
    near(cover.with_bleed.height.get(), 156.0);
}

/// A fold measured on a dummy saves its factor of the whole stack, whether geometry knows it (π/2 to 2) or
/// paper was crushed (less) or left room (more): 1 mm deep, 1.2 saves 1.2 mm, 2.3 saves 2.3 mm.
#[test]
fn a_measured_factor_is_kept_beyond_geometry() {
    for factor in [0.8, 1.2, 1.6, 1.8, 2.0, 2.3] {
        let shape = Shape::of_factor(factor);
        near(shape.path_saved(Mm(1.0), Mm(1.0)).get(), factor);
        near(shape.factor(), factor);
    }
}

/// Nothing was said of where art stands, so the safe distance is asked: 5 mm; a page number 8 mm from the
/// face is asked for its own.
#[test]
fn each_distance_from_the_face_is_asked_for() {
    let planned = planned(&shop(line(), Vec::new()), &[("folio_face", "8 mm")]);
    assert_eq!(planned.results.margins.art.distance, Mm(5.0));
    assert_eq!(planned.results.margins.folio.unwrap().distance, Mm(8.0));
}

/// Three stitches on 150 mm stand in the middle of its thirds: at 1/6, 3/6 and 5/6. Each is 12.7 mm of
/// crown and two legs of 1.00 + 3 mm, 20.7 mm of wire, or 0.26 mm more or less. Wire for the thickest stack
/// is bought: 20.96 mm, 0.46 mm thick: π × 0.23² × 20.96 = 3.48335 mm³ of 7.85 mg, 27.3443 mg; three of
/// them 82.0328.
#[test]
fn three_stitches_and_their_wire() {
    let mut line = line();
    line.stitching.wires = [Some(0.46), None, None];
    let planned = planned(&shop(line, Vec::new()), &[("stitches", "3")]);
    let (placement, wire) = (&planned.results.stitches.placement, &planned.results.stitches.wire);
    let middles: Vec<f64> =
        placement.stitches.iter().map(|stitch| stitch.from_head.get()).collect();
    assert_eq!(middles.len(), 3);
    for (found, expected) in middles.into_iter().zip([25.0, 75.0, 125.0]) {
        near(found, expected);
    }
    for (leg, draw, leg_by_hand, draw_by_hand) in [
        (wire.leg.low, wire.draw.low, 3.87, 20.44),
        (wire.leg.nominal, wire.draw.nominal, 4.0, 20.7),
        (wire.leg.high, wire.draw.high, 4.13, 20.96),
    ] {
        near(leg.get(), leg_by_hand);
        near(draw.get(), draw_by_hand);
    }
    assert!((wire.stitch.get() - 0.027_344_3).abs() < 5e-8, "{:?}", wire.stitch);
    assert!((wire.copy.get() - 0.082_032_8).abs() < 5e-8, "{:?}", wire.copy);
}

/// Two stitches on 150 mm wish to stand 75 mm apart. One head strikes one after the other wherever it
/// likes: how near two heads come concerns it not. Two heads that come no further apart than 70 mm
/// move them, and 40 mm remain beyond either.
#[test]
fn a_single_head_has_no_pitch() {
    for (heads, pitch, placed, overhang) in
        [(1, 75.0, Placed::Even, 37.5), (2, 70.0, Placed::Moved, 40.0)]
    {
        let line = Line { heads, pitch: Range::between(50.0, 70.0), ..line() };
        let planned = planned(&shop(line, Vec::new()), &[("stitches", "2")]);
        let placement = &planned.results.stitches.placement;
        assert_eq!(placement.placed, placed);
        near(placement.pitch.get(), pitch);
        near(placement.overhang.get(), overhang);
    }
}

/// Three heads strike four stitches in two passes, as two heads do: all three are used, and one alone of
/// them once more.
#[test]
fn of_openings_with_as_few_passes_the_one_with_most_heads_is_taken() {
    let line = Line { heads: 3, ..line() };
    let planned = planned(&shop(line, Vec::new()), &[("stitches", "4")]);
    let placement = &planned.results.stitches.placement;
    let struck: Vec<(u32, u32)> =
        placement.stitches.iter().map(|stitch| (stitch.pass, stitch.head)).collect();
    assert_eq!(struck, [(1, 1), (1, 2), (1, 3), (2, 1)]);
    assert_eq!((placement.passes, placement.heads_used), (2, 3));
}

/// Every sheet is 0.113 mm at its thickest. A line that takes just so many has room for no more and for
/// no fewer; whatever the last digit of a sum in doubles is.
#[test]
fn a_limit_met_exactly_has_room_for_no_sheet() {
    for sheets in 1_u32..=60 {
        for (more, takes) in [(0, sheets), (1, sheets + 1), (-1, sheets - 1)] {
            let most = f64::from(takes * 113) / 1000.0;
            let line = Line { flat_stack: Range::up_to(most), ..line() };
            let pages = format!("{} self cover", sheets * 4);
            let planned = planned(&shop(line, Vec::new()), &[("pages", &pages)]);
            let room = limit(&planned, LimitId::FlatStack).room;
            assert_eq!(
                (room.sheets, room.pages()),
                (Some(more), Some(more * 4)),
                "{sheets} sheets"
            );
        }
    }
}

/// 15 sheets of 0.113 mm where 10 lie: 5 more, or every one of the 10 half as heavy again as 100 g/m².
#[test]
fn room_in_grams() {
    let line = Line { flat_stack: Range::up_to(1.695), ..line() };
    let room = limit(&planned(&shop(line, Vec::new()), &[]), LimitId::FlatStack).room;
    assert_eq!(room.sheets, Some(5));
    near(room.grammage.unwrap(), 50.0);
}

/// A cover of another lot, 0.25 ± 0.195 mm, round the 10 sheets: at its thickest 1.25 mm and √(0.195² + 0.13²).
/// With 10 sheets more their doubt is 0.26, and √(0.195² + 0.26²) = 0.325: 2.575 mm have room for just those,
/// though the first of them adds less than the last; or for paper twice as heavy.
#[test]
fn room_where_doubts_of_two_lots_add_in_squares() {
    let shop = shop(Line { flat_stack: Range::up_to(2.575), ..line() }, Vec::new());
    let book = BOOK.into_iter().chain([("pages", "40 + 4"), ("cover", "250 gsm silk 0.25 mm")]);
    let mut job = support::job(&Draft::of(&book.collect::<Vec<_>>()), &shop);
    job.sections[0].caliper.value = Band { low: 0.055, nominal: 0.25, high: 0.445 }.map(Mm);
    let room = limit(&plan(&job, &shop), LimitId::FlatStack).room;
    assert_eq!(room.sheets, Some(10));
    // Found by a few steps along a curve.
    assert!((room.grammage.unwrap() - 100.0).abs() < 1e-6, "{room:?}");
}

/// Cut to size before, the innermost leaf loses 3 mm, 2 × 9 × 0.113 = 2.034 mm and a tolerance of 1 mm:
/// 6.034 of 12 mm. Every further sheet takes 0.226 mm: 26 of them, 5.876 mm. Straight through from
/// 210 mm the cut is 105 − 101 = 4 mm, and another one for a thicker book: no count of sheets follows.
#[test]
fn straight_through_the_innermost_chip_has_no_room_in_sheets() {
    let shop = shop(line(), vec![sheet(210.0, 156.0)]);
    let chip = |route| limit(&planned(&shop, &[("route", route)]), LimitId::InnermostChip);
    let cut = chip("cut");
    near(cut.value.high, 6.034);
    assert_eq!(cut.room.sheets, Some(26));
    let straight = chip("straight");
    near(straight.value.nominal, 5.8);
    assert_eq!((straight.room.sheets, straight.room.grammage), (None, None));
}

/// The innermost leaf stands out 1.8 mm, 2 × 9 × 0.113 = 2.034 at most, and π/2 × 9 × 0.087 at least, where the
/// back is not quite square but round: of a cut of 3 mm, right to 1 mm, it loses 2 mm and the least of these to
/// 6.034, and the outermost 2 to 4.
#[test]
fn chips_from_the_outermost_leaf_to_the_innermost() {
    let way = way(&planned(&shop(line(), vec![sheet(208.0, 156.0)]), &[]), Route::CutFirst);
    let least = 2.0 + FRAC_PI_2 * 0.783;
    for (chip, by_hand) in
        [(way.outermost_chip, [2.0, 3.0, 4.0]), (way.innermost_chip, [least, 4.8, 6.034])]
    {
        for (found, expected) in [chip.low, chip.nominal, chip.high].into_iter().zip(by_hand) {
            near(found.get(), expected);
        }
    }
}

/// Without bleed, 206 mm are 2 mm too few for the flat sheet of 208. Straight through they leave a chip
/// of 103 − 101 = 2 mm, as little as 1 mm, and the line cuts no less than 2: it refuses. That is taken
/// only if somebody asks for it. 190 mm do not hold the book at all: 2 × 101 is 12 mm more.
#[test]
fn what_the_line_refuses_is_taken_only_when_asked_for() {
    let chosen = |width: f64, more: &[(&str, &str)]| {
        let shop = shop(line(), vec![sheet(width, 156.0)]);
        let fields: Vec<(&str, &str)> =
            [("bleeds", "no"), ("bleed", "")].iter().chain(more).copied().collect();
        let planned = planned(&shop, &fields);
        planned.results.layout.chosen().map(|way| (way.route, way.refusal.unwrap()))
    };
    let thin = Some((Route::Straight, Refusal::ChipThin(Mm(1.0))));
    let (narrow, none) = ([("press_sheet", "206 × 156")], [("press_sheet", "190 × 156")]);
    assert_eq!(chosen(206.0, &[]), None);
    assert_eq!(chosen(206.0, &[("route", "cut")]), None);
    assert_eq!(chosen(206.0, &[("route", "straight")]), thin);
    assert_eq!(chosen(206.0, &narrow), thin);
    let cut = chosen(206.0, &[narrow[0], ("route", "cut")]);
    assert_eq!(cut, Some((Route::CutFirst, Refusal::Small(Mm(2.0)))));
    assert_eq!(chosen(190.0, &[]), None);
    assert_eq!(chosen(190.0, &[("route", "straight")]), None);
    let small = chosen(190.0, &[none[0], ("route", "straight")]);
    assert_eq!(small, Some((Route::Straight, Refusal::Small(Mm(12.0)))));
}

/// Two flats of 208 are 416 mm. On 430 × 170 mm with 4 mm blank they lie in the middle, 7 mm from every
/// edge, and a gripper of 8 mm at the head pushes them down to there: four edges are cut off and one cut
/// parts them. What is left beside them is 14 × 170 mm, below 430 × 14, the larger. On 480 × 160 it is the
/// strip beside, 64 × 160. Where 8 mm stay blank but for the gripper's edge, 440 × 170 mm leave 12 mm beside them,
/// and their foot ends 8 mm from the edge, so that they begin at 6 and not at 7. A sheet that they fill takes the one cut between them; one that is larger by
/// its gripper alone takes two.
#[test]
fn flats_lie_in_the_middle_and_the_larger_strip_is_left() {
    for (size, blank, origin, offcut, cuts) in [
        ((430.0, 170.0), (4.0, 4.0), (7.0, 7.0), (430.0, 14.0), 5),
        ((430.0, 170.0), (8.0, 4.0), (7.0, 8.0), (430.0, 14.0), 5),
        ((480.0, 160.0), (0.0, 0.0), (32.0, 2.0), (64.0, 160.0), 5),
        ((440.0, 170.0), (0.0, 8.0), (12.0, 6.0), (440.0, 14.0), 5),
        ((416.0, 156.0), (0.0, 0.0), (0.0, 0.0), (0.0, 156.0), 1),
        ((416.0, 164.0), (8.0, 0.0), (0.0, 8.0), (416.0, 8.0), 2),
    ] {
        let way = way(&planned(&shop(line(), vec![gripped(size, blank)]), &[]), Route::CutFirst);
        assert_eq!((way.refusal, way.grid, way.cuts), (None, (2, 1), cuts), "{size:?} {blank:?}");
        near(way.origin.width.get(), origin.0);
        near(way.origin.height.get(), origin.1);
        near(way.offcut.width.get(), offcut.0);
        near(way.offcut.height.get(), offcut.1);
    }
}

/// With 5 mm of bleed and a cut of 3, printing reaches 2 mm beyond every edge of a flat: two of them lie 4 mm
/// apart, 420 mm long, and in the middle of 440 × 164 mm there are 10 mm beside them and 4 below.
#[test]
fn bleed_beyond_the_cut_keeps_flats_apart() {
    let shop = shop(line(), vec![sheet(440.0, 164.0)]);
    let planned = planned(&shop, &[("bleed", "5 mm"), ("face_cut", "3 mm")]);
    let way = way(&planned, Route::CutFirst);
    assert_eq!((way.refusal, way.grid), (None, (2, 1)));
    near(way.pitch.width.get(), 212.0);
    near(way.origin.width.get(), 10.0);
    near(way.origin.height.get(), 4.0);
    near(way.offcut.width.get(), 440.0);
    near(way.offcut.height.get(), 8.0);
}

/// The flat is 156 mm long. Of 160 mm the press leaves 5 and 4 blank, and printing begins right at the
/// edge of the flat: 156 + 9 is 5 mm too long. With 5 mm cut off at head and foot it begins 2 mm inside:
/// 160 + 3 + 2 is too long by as much. Of 155 mm one is missing, blank edges or not.
#[test]
fn how_far_a_sheet_is_too_small() {
    let refused = |height, more: &[(&str, &str)]| {
        let shop = shop(line(), vec![gripped((420.0, height), (5.0, 4.0))]);
        way(&planned(&shop, more), Route::CutFirst).refusal.unwrap()
    };
    let more = [("head_trim", "5 mm"), ("foot_trim", "5 mm")];
    for (refusal, by) in [
        (refused(160.0, &[]), Refusal::Edges(Mm(5.0))),
        (refused(160.0, &more), Refusal::Edges(Mm(5.0))),
        (refused(155.0, &[]), Refusal::Small(Mm(1.0))),
    ] {
        assert_eq!(refusal, by);
    }
}

/// A sheet of 210 × 156 mm runs straight through a line that takes just that, and not through one that
/// takes a tenth less, or only what is a tenth larger.
#[test]
fn straight_through_just_what_the_line_takes() {
    let refused = |open_width, travel_height| {
        let line = Line { open_width, travel_height, ..line() };
        way(&planned(&shop(line, vec![sheet(210.0, 156.0)]), &[]), Route::Straight).refusal
    };
    let any = Range::ANY;
    assert_eq!(refused(Range::between(210.0, 210.0), Range::between(156.0, 156.0)), None);
    let (wide, long) =
        (Some(Refusal::OpenWidth(Mm(210.0))), Some(Refusal::TravelHeight(Mm(156.0))));
    assert_eq!(refused(Range::up_to(209.9), any), wide);
    assert_eq!(refused(Range { least: Some(210.1), most: None }, any), wide);
    assert_eq!(refused(any, Range::up_to(155.9)), long);
    assert_eq!(refused(any, Range { least: Some(156.1), most: None }), long);
}

/// A set of 10 sheets on one press sheet of 208 × 156 mm each: 10 × 0.032448 m² × 100 g/m² = 32.448 g at
/// 2.00 a kilogram. With 0.05 for each of 20 printed sides it is 1.00 more. Prices rank as long as they
/// say the same of every sheet: a side that costs something on one and is unsaid on another says nothing.
#[test]
fn prices_rank_when_they_say_the_same_of_every_sheet() {
    let ranked = |kilo: Option<f64>, clicks: [Option<f64>; 2]| {
        let sheets =
            clicks.map(|click| PressSheet { click: click.map(Money), ..sheet(208.0, 156.0) });
        let mut shop = shop(line(), sheets.to_vec());
        (shop.rates.paper_kilo, shop.rates.click) = (kilo.map(Money), None);
        let layout = planned(&shop, &[("route", "cut")]).results.layout;
        (layout.by_cost, layout.chosen().unwrap().cost)
    };
    for (clicks, cost) in [([None, None], 0.064_896), ([Some(0.05), Some(0.05)], 1.064_896)] {
        let (by_cost, found) = ranked(Some(2.0), clicks);
        assert!(by_cost);
        near(found.unwrap().get(), cost);
    }
    assert_eq!(ranked(Some(2.0), [Some(0.05), None]), (false, None));
    assert_eq!(ranked(None, [Some(0.05), Some(0.05)]), (false, None));
}

/// 101 copies of 10 sheets, none of them spoilt: 1,010 press sheets of one flat, and of two flats of the same
/// folded sheet 51 for each of the ten. Of press sheets that hold no flat, none are counted.
#[test]
fn press_sheets_are_counted_where_a_flat_lies_on_them() {
    let counted = |width| {
        let shop = shop(line(), vec![sheet(width, 156.0)]);
        let more =
            [("copies", "101"), ("route", "cut"), ("press_sheet", &format!("{width} × 156"))];
        let layout = planned(&shop, &more).results.layout;
        (
            layout.chosen().unwrap().flats(),
            layout.needed.map(|needed| (needed.sheets, needed.sides)),
        )
    };
    assert_eq!(counted(208.0), (1, Some((1010.0, 2020.0))));
    assert_eq!(counted(416.0), (2, Some((510.0, 1020.0))));
    assert_eq!(counted(190.0), (0, None));
}

/// On a square press sheet whose grain nobody knows, flats lie as well one way as the other: it stays as it
/// was tried first, along what would be the long side.
#[test]
fn of_two_ways_alike_the_first_stays() {
    let square = PressSheet { grain: SheetGrain::Unknown, ..sheet(420.0, 420.0) };
    let way = way(&planned(&shop(line(), vec![square]), &[]), Route::CutFirst);
    assert_eq!((way.grid, way.fold_along_long), ((2, 2), true));
}

/// The first book off the machine is 2.1 mm thick and 100.4 mm wide: 0.1 mm more than 2.00, inside of 2.26, and
/// the knife goes 0.4 mm inward; of 99.4 mm, 0.6 mm outward. Between the middles of its outermost and innermost
/// sheets lie 0.9 mm of paper: pushed out by 1.62 mm, it folds by a factor of 1.8.
#[test]
fn the_first_book_says_where_the_knife_goes() {
    let shop = shop(line(), Vec::new());
    let told = |thickness, width| {
        let more =
            [("first_thickness", thickness), ("first_width", width), ("first_push_out", "1.62 mm")];
        planned(&shop, &more).results.first_off
    };
    for (thickness, within, width, thicker, knife) in
        [("2.1 mm", true, "100.4 mm", 0.1, -0.4), ("2.3 mm", false, "99.4 mm", 0.3, 0.6)]
    {
        let told = told(thickness, width);
        near(told.thicker.unwrap().get(), thicker);
        assert_eq!(told.within, within);
        near(told.knife.unwrap().get(), knife);
        near(told.factor.unwrap().0, 1.8);
    }
}
