//! The set-up list for whoever stands at the machine: values in the order of the line, and what to look
//! at on the first book.

use super::Scene;
use super::run::role;
use crate::job::Job;
use crate::plan::Plan;
use crate::shop::Shop;
use crate::units::{Band, Measure, Mm};
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

/// One line with its box. The box has no name: ticking it changes nothing but itself.
fn tick(scene: &Scene, id: &str, told: &Say) -> Markup {
    html! {
        li {
            label for={ "tick-" (id) } {
                input type="checkbox" id={ "tick-" (id) };
                " " span { (scene.tell(told)) }
            }
        }
    }
}

/// The operator's values, in the order of the line.
#[must_use]
pub fn settings(job: &Job, shop: &Shop, plan: &Plan) -> Vec<Say> {
    let results = &plan.results;
    let (set, trim) = (&results.run.set_up, &results.trim);
    let placement = &results.stitches.placement;
    let at_foot = shop.lines.get(job.line).is_some_and(|line| line.stitching.lay_at_foot);
    let edge = if at_foot { "setup.foot" } else { "setup.head" };
    let mut list = vec![
        say("setup.sheet")
            .put("width", trim.flat.width)
            .put("height", trim.travel_height)
            .say("edge", say(edge)),
        say("setup.sheets").count("sheets", job.sheets()),
    ];
    let outermost = job.sections.len() > 1;
    for component in &results.run.quantities.components {
        list.push(
            say("setup.component")
                .say("role", say(role(job, component.section)))
                .count("sheets", Measure::count(component.sheets))
                .put("leaf", Measure::caliper(component.leaf.0))
                .put("two", Measure::caliper(component.leaf.1)),
        );
    }
    if outermost {
        list.push(say("setup.order"));
    }
    list.push(band_of("setup.head-gap", set.head_gap));
    for stitch in placement.stitches.iter().filter(|stitch| stitch.pass == 1) {
        list.push(
            say("setup.stitch")
                .put("head", Measure::count(stitch.head))
                .put("stop", stitch.from_lay)
                .put("from_head", stitch.from_head)
                .put("from_foot", stitch.from_foot),
        );
    }
    list.extend(placement.moves().map(|to| {
        say("setup.pass")
            .put("pass", Measure::count(to.pass))
            .put("step", to.step)
            .put("shift", to.from_first)
    }));
    list.push(
        say("setup.wire")
            .put("wire", Measure::caliper(results.stitches.wire.diameter))
            .put("leg", set.leg)
            .put("draw", set.draw),
    );
    list.push(say("setup.fold").put("fold", set.fold_at).put("tolerance", job.tolerance));
    list.push(band_of("setup.nip", set.closed));
    list.push(match set.former {
        Some(former) => band_of("setup.former", former),
        None => say("setup.no-former"),
    });
    list.push(
        say("setup.knife")
            .put("spine", set.knife_from_spine)
            .put("face", set.knife_from_face)
            .put("cut", trim.face_cut)
            .put("innermost", trim.innermost_chip.nominal),
    );
    list.push(band_of("setup.clamp", set.closed));
    if let Some((pile, height)) = set.pile.zip(set.pile_height) {
        list.push(say("setup.pile").put("copies", Measure::count(pile)).put("height", height));
    }
    list
}

fn band_of(key: &'static str, band: Band<Mm>) -> Say {
    say(key).band("value", band)
}

/// What to look at on the first book and after the first stop.
fn first_book(scene: &Scene) -> Vec<Say> {
    let (job, results) = (scene.job, &scene.plan.results);
    let push_out = results.leaves.last().map(|leaf| leaf.push_out).unwrap_or_default();
    vec![
        say("setup.first.order"),
        say("setup.first.spine").band("spine", results.stack.closed.map(|closed| closed.0)),
        say("setup.first.width").put("width", job.size.width).put("tolerance", job.tolerance),
        say("setup.first.height").put("height", job.size.height).put("tolerance", job.tolerance),
        say("setup.first.square").put("tolerance", job.tolerance),
        say("setup.first.stitch").put("tolerance", job.tolerance),
        say("setup.first.legs"),
        say("setup.first.push-out").band("push_out", push_out),
    ]
}
