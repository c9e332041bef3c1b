//! The set-up list for whoever stands at the machine: values in the order of the line, and what to look
//! at on the first book.

use super::Scene;
use super::run::role;
use crate::explain::Case;
use crate::job::Job;
use crate::plan::Plan;
use crate::shop::Shop;
use crate::units::Measure;
use crate::words::{Say, say};
use maud::{Markup, html};

/// One line: the sheet, the stitches, the knife.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    let results = &scene.plan.results;
    scene.tell(
        &say("setup.summary")
            .put("width", results.trim.flat.width)
            .put("height", results.trim.travel_height)
            .put("knife", results.run.set_up.knife_from_spine)
            .count("stitches", Measure::count(results.stitches.placement.per_copy)),
    )
}

/// Cautions first, then the list with boxes to tick.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    html! {
        p class="caution" { strong { (scene.word("cautions.machine")) } }
        p class="caution" { (scene.word("cautions.wire")) }
        ol class="set-up" {
            @for (index, told) in settings(scene.job, scene.shop, scene.plan).iter().enumerate() {
                (tick(scene, &format!("set-{index}"), told))
            }
        }
        h3 { (scene.word("setup.first")) }
        ol class="set-up" {
            @for (index, told) in first_book(scene).iter().enumerate() {
                (tick(scene, &format!("first-{index}"), told))
            }
        }
        p { (scene.word("setup.again")) }
        p class="caution" { (scene.word("cautions.dummy")) }
    }
}

/// One line with its box. The box has no name: ticking it changes nothing but itself. Figures in the
/// line are asked about by tapping them, so the line is no label; the box is as large as a glove.
fn tick(scene: &Scene, id: &str, told: &Say) -> Markup {
    html! {
        li {
            label class="tick" { input type="checkbox" id={ "tick-" (id) } aria-labelledby={ "line-" (id) }; }
            span id={ "line-" (id) } { (scene.tell(told)) }
        }
    }
}

/// The operator's values, in the order of the line.
#[must_use]
pub fn settings(job: &Job, shop: &Shop, plan: &Plan) -> Vec<Say> {
    let case = Case::new(job, shop, plan);
    let results = &plan.results;
    let placement = &results.stitches.placement;
    let at_foot = shop.lines.get(job.line).is_some_and(|line| line.stitching.lay_at_foot);
    let edge = if at_foot { "setup.foot" } else { "setup.head" };
    let mut list = vec![
        case.fill(
            say("setup.sheet").say("edge", say(edge)),
            &[("width", "flat_width", 0), ("height", "travel", 0)],
        ),
        counted(&case, "setup.sheets", job.sheets().as_f64(), "set_sheets", 0),
    ];
    for (index, component) in results.run.quantities.components.iter().enumerate() {
        let at = index + 1;
        let sheets = f64::from(component.sheets);
        let told = counted(&case, "setup.component", sheets, "part_sheets", at)
            .say("role", say(role(job, component.section)));
        list.push(case.fill(told, &[("leaf", "leaf_one", at), ("two", "leaf_two", at)]));
    }
    if job.sections.len() > 1 {
        list.push(say("setup.order"));
    }
    let value = |key: &str, id| case.fill(say(key), &[("value", id, 0)]);
    list.push(value("setup.head-gap", "flat_stack"));
    for (index, stitch) in placement.stitches.iter().enumerate().filter(|(_, one)| one.pass == 1) {
        let at = index + 1;
        let slots = [
            ("stop", "from_stop", at),
            ("from_head", "from_head", at),
            ("from_foot", "from_foot", at),
        ];
        list.push(case.fill(say("setup.stitch").put("head", Measure::count(stitch.head)), &slots));
    }
    list.extend(placement.moves().enumerate().map(|(index, to)| {
        let told = say("setup.pass").put("pass", Measure::count(to.pass));
        case.fill(told, &[("step", "pass_step", index + 1), ("shift", "pass_shift", index + 1)])
    }));
    list.push(
        case.fill(
            say("setup.wire"),
            &[("wire", "wire", 0), ("leg", "leg", 0), ("draw", "draw", 0)],
        ),
    );
    list.push(
        case.fill(say("setup.fold").put("tolerance", job.tolerance), &[("fold", "fold_at", 0)]),
    );
    list.push(value("setup.nip", "spine"));
    list.push(match results.run.set_up.former {
        Some(_) => value("setup.former", "spine"),
        None => say("setup.no-former"),
    });
    list.push(case.fill(
        say("setup.knife"),
        &[
            ("spine", "knife_spine", 0),
            ("face", "knife_face", 0),
            ("cut", "face_cut", 0),
            ("innermost", "innermost_chip", 0),
        ],
    ));
    list.push(value("setup.clamp", "spine"));
    if results.run.set_up.pile.is_some() {
        list.push(
            case.fill(say("setup.pile"), &[("copies", "pile", 0), ("height", "pile_height", 0)]),
        );
    }
    list
}

/// A sentence whose wording depends on the number of a figure.
fn counted(case: &Case, key: &str, number: f64, id: &'static str, at: usize) -> Say {
    let mut told = say(key);
    told.number = Some(number);
    case.fill(told, &[("sheets", id, at)])
}

/// What to look at on the first book and after the first stop.
fn first_book(scene: &Scene) -> Vec<Say> {
    let (job, case) = (scene.job, scene.case());
    vec![
        say("setup.first.order"),
        case.fill(say("setup.first.spine"), &[("spine", "spine", 0)]),
        say("setup.first.width").put("width", job.size.width).put("tolerance", job.tolerance),
        say("setup.first.height").put("height", job.size.height).put("tolerance", job.tolerance),
        say("setup.first.square").put("tolerance", job.tolerance),
        say("setup.first.stitch").put("tolerance", job.tolerance),
        say("setup.first.legs"),
        case.fill(say("setup.first.push-out"), &[("push_out", "push_out", 0)]),
    ]
}
