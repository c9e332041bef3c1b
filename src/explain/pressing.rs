//! The press sheet: how it is used, and what the guillotine does.

use super::folding::role;
use super::row::{Case, Figure, count, figure, length, money, said, share, term, whole};
use super::stitching::as_shop;
use crate::plan::{Refusal, Route, Way};
use crate::units::{Measure, Size};
use crate::words::{Say, say};

/// Sets that a cost is told for: of a single one it is too little to tell apart.
const THOUSAND: f64 = 1000.0;

pub(super) static ROWS: &[Figure] = &[
    figure("sheet_used", "sheet.used", |c| share(c.way()?.used))
        .told(|c, lines| {
            let by_cost = c.plan.results.layout.by_cost;
            lines.push(say(if by_cost {
                "explain.sheet_used.cost"
            } else {
                "explain.sheet_used.waste"
            }));
            lines.push(say("explain.sheet_used"));
        })
        .of(way)
        .kept(),
    term("flats", |c| count(c.way()?.flats())),
    term("planned_width", |c| length(planned(c)?.width)),
    term("planned_height", |c| length(planned(c)?.height)),
    figure("press_across", "sheet.press-across", |c| length(c.way()?.press.width))
        .told(as_shop)
        .shop()
        .of(way),
    figure("press_along", "sheet.press-along", |c| length(c.way()?.press.height))
        .told(as_shop)
        .shop()
        .of(way),
    figure("straight_cut", "sheet.column.cut", |c| length(c.way()?.face_cut))
        .told(|c, lines| {
            let straight = c.way().is_some_and(|way| way.route == Route::Straight);
            lines.push(say(if straight { "explain.straight_cut" } else { "explain.planned_cut" }));
        })
        .doubt("explain.straight_cut.doubt")
        .of(way)
        .kept(),
    figure("copies_on", "sheet.column.copies", |c| {
        count(c.way()?.flats().saturating_mul(c.job.copies_up))
    })
    .of(way),
    figure("offcut", "sheet.column.offcut", |c| said(offcut(c.way()?))).of(way),
    figure("thousand_sets", "sheet.column.cost", |c| money(c.way()?.cost? * THOUSAND))
        .shop()
        .of(way),
    figure("refusal", "explain.name.refusal", |c| said(why(c.way()?))).rows(way),
    figure("press_short", "explain.name.refusal", |c| {
        match c.way().or_else(|| c.plan.results.layout.best())?.refusal? {
            Refusal::Small(by) | Refusal::Edges(by) => length(by),
            _ => None,
        }
    }),
    figure("press_chip", "explain.name.press_chip", |c| match c.way()?.refusal? {
        Refusal::ChipThin(chip) | Refusal::ChipDeep(chip) => length(chip),
        _ => None,
    }),
    figure("sheets_needed", "sheet.needed", |c| whole(c.plan.results.layout.needed?.sheets)).told(
        |c, lines| {
            for part in &c.plan.results.run.quantities.components {
                let Some(section) = c.job.sections.get(part.section) else { continue };
                lines.push(
                    say("explain.sheets_needed.part")
                        .say("role", role(section.role))
                        .put("sets", Measure::count(part.printed))
                        .put("sheets", Measure::count(part.sheets)),
                );
            }
            lines.push(say("explain.sheets_needed"));
        },
    ),
    figure("sides", "sheet.sides", |c| whole(c.plan.results.layout.needed?.sides)),
    figure("sheets_missing", "explain.name.sheets_missing", |c| {
        let needed = c.plan.results.layout.needed?.sheets;
        whole(needed - on_hand(c)?)
    }),
    term("on_hand", |c| whole(on_hand(c)?)),
    // Cut into flats.
    figure("way_flats", "explain.name.way_flats", |c| count(c.way()?.flats())),
    term("columns", |c| count(c.way()?.grid.0)),
    term("ranks", |c| count(c.way()?.grid.1)),
    figure("way_cuts", "explain.name.way_cuts", |c| count(c.way()?.cuts)),
];

fn on_hand(case: &Case) -> Option<f64> {
    let sheet = case.shop.press_sheets.get(case.plan.results.layout.chosen()?.sheet)?;
    Some(sheet.thousands_on_hand? * THOUSAND)
}

/// The flat sheet that is needed, whatever the press sheet is: cut first it is the flat itself.
fn planned(case: &Case) -> Option<Size> {
    let mut ranked = case.plan.results.layout.ranked();
    ranked.find(|way| way.route == Route::CutFirst).or_else(|| case.way()).map(|way| way.flat)
}

fn way(case: &Case) -> Say {
    let Some(way) = case.way() else { return say("sheet.none") };
    let name = case.shop.press_sheets.get(way.sheet).map_or("", |sheet| sheet.name.as_str());
    say("explain.row.way").text("sheet", name).say("route", say(way.route.key()))
}

/// The largest piece left over.
#[must_use]
pub fn offcut(way: &Way) -> Say {
    if way.offcut.width.get().min(way.offcut.height.get()) < 1.0 {
        say("sheet.offcut.none")
    } else {
        say("sheet.offcut").put("width", way.offcut.width).put("height", way.offcut.height)
    }
}

/// Why a way cannot be used.
#[must_use]
pub fn why(way: &Way) -> Say {
    match way.refusal {
        None => say("sheet.why.none"),
        Some(Refusal::Small(by)) => say("sheet.why.small").put("by", by),
        Some(Refusal::Edges(by)) => say("sheet.why.edges").put("by", by),
        Some(Refusal::OpenWidth(width)) => say("sheet.why.open-width").put("width", width),
        Some(Refusal::TravelHeight(height)) => say("sheet.why.height").put("height", height),
        Some(Refusal::ChipThin(chip)) => say("sheet.why.thin").put("chip", chip),
        Some(Refusal::ChipDeep(chip)) => say("sheet.why.deep").put("chip", chip),
    }
}
