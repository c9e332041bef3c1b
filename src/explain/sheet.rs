//! Why the press sheet is used so far, and why the face cut falls out as it does.

use super::Explanation;
use super::figures::build;
use crate::job::Job;
use crate::plan::{Plan, Route, Way};
use crate::source::Source;
use crate::units::{Measure, Mm};
use crate::words::{Say, say};

/// Yield: area of the flats over the area of the press sheet.
pub(super) fn sheet_used(_: &Job, plan: &Plan) -> Explanation {
    let layout = &plan.results.layout;
    let lines = layout.chosen().map_or_else(Vec::new, |way| {
        let needed = planned_flat(plan, way);
        let mut lines = vec![
            say("explain.sheet_used.sum")
                .put("flats", Measure::count(way.flats()))
                .put("width", needed.0)
                .put("height", needed.1)
                .put("press_width", way.press.width)
                .put("press_height", way.press.height)
                .put("used", Measure::share(way.used)),
        ];
        let rank =
            if layout.by_cost { "explain.sheet_used.cost" } else { "explain.sheet_used.waste" };
        lines.push(say(rank));
        lines
    });
    build("sheet_used", lines, None, Source::Derived)
}

/// The flat sheet that is needed, whatever the press sheet is.
fn planned_flat(plan: &Plan, way: &Way) -> (Mm, Mm) {
    // Area needed, spread over what is known of it: cut first it is the flat itself.
    let cut_first = plan
        .results
        .layout
        .ranked()
        .find(|other| other.route == Route::CutFirst)
        .map_or(way.flat, |other| other.flat);
    (cut_first.width, cut_first.height)
}

/// Straight through: c = W / 2 − w − wrap.
pub(super) fn straight_cut(job: &Job, plan: &Plan) -> Explanation {
    let results = &plan.results;
    let chosen = results.layout.chosen().map(|way| way.sheet);
    let way = results
        .layout
        .ranked()
        .find(|way| way.route == Route::Straight && Some(way.sheet) == chosen);
    let lines: Vec<Say> = way.map_or_else(Vec::new, |way| {
        vec![
            say("explain.straight_cut.sum")
                .put("press", way.press.width)
                .put("width", job.size.width)
                .put("wrap", results.trim.wrap.nominal)
                .put("cut", way.face_cut),
            say("explain.straight_cut.chips")
                .band("outermost", way.outermost_chip)
                .band("innermost", way.innermost_chip),
        ]
    });
    build("straight_cut", lines, Some(say("explain.straight_cut.doubt")), Source::Derived)
}
