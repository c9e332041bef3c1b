//! What holds for every job on every press sheet.

use super::*;

/// Sizes, routes and press sheets at random.
fn any_job() -> impl Strategy<Value = Vec<(&'static str, String)>> {
    (
        (60_u32..300, 80_u32..400, 1_u32..20, 1_u32..=3),
        (0_u32..6, 0_u32..8, prop::bool::ANY, prop::bool::ANY),
        (0_usize..3, 0_usize..2, 0_usize..4),
    )
        .prop_map(
            |((width, height, sheets, up), (bleed, trim, bleeds, square), (route, pairs, line))| {
                let lines = ["Middle line, three knives", LINE, "Middle line, three knives", LINE];
                vec![
                    ("pages", (sheets * 4).to_string()),
                    ("size", format!("{width} x {height} mm")),
                    ("paper", "115 gsm silk 0.09 mm".to_owned()),
                    ("copies", "100".to_owned()),
                    ("copies_up", up.to_string()),
                    ("bleeds", if bleeds { "yes" } else { "no" }.to_owned()),
                    ("bleed", format!("{bleed} mm")),
                    ("head_trim", format!("{trim} mm")),
                    ("foot_trim", format!("{} mm", trim + 1)),
                    ("spine", if square { "square" } else { "round" }.to_owned()),
                    ("route", ["auto", "cut", "straight"][route].to_owned()),
                    ("pairs", ["head-to-foot", "head-to-head"][pairs].to_owned()),
                    ("line", lines[line].to_owned()),
                ]
            },
        )
}

proptest! {
    #![proptest_config(support::tried(200, None))]

    /// Copies keep clear of each other, and what is printed of them stays out of the blank edges.
    #[test]
    fn copies_keep_clear(fields in any_job()) {
        let shop = shop::demo();
        let fields: Vec<(&str, &str)> = fields.iter().map(|(id, text)| (*id, text.as_str())).collect();
        let job = read(&shop, &fields);
        let planned = plan(&job, &shop);
        let layout = &planned.results.layout;
        let wide = (job.size.width + planned.results.trim.wrap.nominal).get();
        let high = job.size.height.get();
        let beyond = job.bleed.map_or(-job.safe.get(), Mm::get);
        for way in layout.ranked() {
            let sheet = &shop.press_sheets[way.sheet];
            prop_assert!(way.used <= 1.0 + 1e-9, "{}", way.used);
            if way.refusal.is_some_and(|refusal| !refusal.by_line()) {
                prop_assert_eq!(way.flats(), 0);
                continue;
            }
            // Left, right, top, bottom of each copy as it is cut.
            let boxes: Vec<[f64; 4]> = copies(layout.copy, way)
                .map(|copy| {
                    let (fold, top) = (copy.fold.get(), copy.top.get());
                    [fold - wide, fold + wide, top, top + high]
                })
                .collect();
            prop_assert_eq!(boxes.len() as u32, way.flats() * job.copies_up);
            let gripper = sheet.gripper.get();
            let margin = sheet.margin.get();
            let (left, top) = if way.gripper_beside { (gripper, margin) } else { (margin, gripper) };
            for (index, one) in boxes.iter().enumerate() {
                prop_assert!(one[0] - beyond >= left - 1e-6, "{one:?} {way:?}");
                prop_assert!(one[1] + beyond <= way.press.width.get() - margin + 1e-6, "{one:?} {way:?}");
                prop_assert!(one[2] - beyond >= top - 1e-6, "{one:?} {way:?}");
                prop_assert!(one[3] + beyond <= way.press.height.get() - margin + 1e-6, "{one:?} {way:?}");
                for other in &boxes[index + 1..] {
                    let apart = one[1] <= other[0] + 1e-6
                        || other[1] <= one[0] + 1e-6
                        || one[3] <= other[2] + 1e-6
                        || other[3] <= one[2] + 1e-6;
                    prop_assert!(apart, "{one:?} {other:?}");
                }
            }
        }
    }

    /// Best first on the measure that ranks; what cannot be used comes last; what is taken is the best of
    /// what was asked for.
    #[test]
    fn no_worse_sheet_before_a_better(fields in any_job(), priced in prop::bool::ANY) {
        let mut shop = shop::demo();
        if !priced {
            shop.rates.paper_kilo = None;
        }
        let fields: Vec<(&str, &str)> = fields.iter().map(|(id, text)| (*id, text.as_str())).collect();
        let job = read(&shop, &fields);
        let planned = plan(&job, &shop);
        let layout = &planned.results.layout;
        prop_assert_eq!(layout.by_cost, priced);
        let ranked: Vec<&Way> = layout.ranked().collect();
        prop_assert_eq!(ranked.len(), shop.press_sheets.len() * 2);
        // What is found while placing stands where sorting puts it.
        prop_assert_eq!(layout.best(), ranked.first().copied());
        let chosen = layout.chosen();
        let before = ranked.iter().take_while(|way| Some(**way) != chosen);
        for way in before.filter(|way| way.refusal.is_none()) {
            prop_assert!(chosen.is_none_or(|chosen| chosen.route != way.route));
        }
        prop_assert!(ranked.iter().all(|way| layout.way(way.place()) == Some(way)));
        for pair in ranked.windows(2) {
            let (one, other) = (pair[0], pair[1]);
            prop_assert!(one.refusal.is_none() || other.refusal.is_some());
            if one.refusal.is_none() && other.refusal.is_none() {
                // Fibres across the fold come last, whatever they cost; among equals the measure ranks.
                let across = |way: &Way| way.grain == Grain::AcrossSpine;
                prop_assert!(across(one) <= across(other));
                if across(one) != across(other) {
                    continue;
                }
                if priced {
                    prop_assert!(one.cost.unwrap() <= other.cost.unwrap());
                } else {
                    prop_assert!(one.used >= other.used);
                }
            }
        }
        if let Some(chosen) = layout.chosen() {
            let asked = |way: &&&Way| way.refusal.is_none()
                && match job.route {
                    job::RouteWish::Auto => true,
                    job::RouteWish::CutFirst => way.route == Route::CutFirst,
                    job::RouteWish::Straight => way.route == Route::Straight,
                };
            if let Some(best) = ranked.iter().find(asked) {
                prop_assert_eq!(*best, chosen);
            }
        }
    }

    /// A sheet larger both ways holds at least as many, with the same edges.
    #[test]
    fn a_larger_sheet_holds_no_fewer(fields in any_job(), wider in 0.0..200.0_f64, higher in 0.0..200.0_f64) {
        let mut shop = shop::demo();
        shop.press_sheets.retain(|sheet| sheet.name == "SRA2");
        let mut larger = shop.press_sheets[0].clone();
        // The longer side stays the longer one.
        larger.size.height = larger.size.height + Mm(higher.max(wider));
        larger.size.width = larger.size.width + Mm(wider);
        shop.press_sheets.push(larger);
        let fields: Vec<(&str, &str)> = fields.iter().map(|(id, text)| (*id, text.as_str())).collect();
        let planned = plan(&read(&shop, &fields), &shop);
        let flats = |sheet: usize| {
            planned.results.layout.ranked()
                .filter(|way| way.sheet == sheet && way.route == Route::CutFirst)
                .map(Way::flats).max().unwrap()
        };
        // On one press sheet cost and waste both fall as it holds more.
        prop_assert!(flats(1) >= flats(0));
    }
}
