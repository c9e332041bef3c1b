//! Stitches and wire.

use super::Scene;
use crate::drawing;
use crate::plan::{Stitch, Wire};
use crate::units::{Band, Measure, Mm, Unit};
use crate::words::{Say, say};
use maud::{Markup, html};

/// One line: how many, where from the head, which wire.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    let stitches = &scene.plan.results.stitches;
    let first = stitches.placement.stitches.iter().filter(|stitch| stitch.copy == 0);
    let numbers = &scene.printer.numbers;
    let places: Vec<String> = first.map(|stitch| numbers.print(stitch.from_head.into())).collect();
    scene.tell(
        &say("stitches.summary")
            .count("stitches", Measure::count(stitches.placement.per_copy))
            .text("places", places.join(" · "))
            .put("wire", Measure::caliper(stitches.wire.diameter))
            .put("leg", stitches.wire.leg),
    )
}

/// The spine drawn, figures, and a row for every stitch.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let results = &scene.plan.results;
    let (placement, wire) = (&results.stitches.placement, &results.stitches.wire);
    let (spine, room) = (scene.job.size.height, scene.screen.room);
    let drawing = drawing::stitches(scene.plan, spine, scene.outer_kind(), room);
    let count = |number| Band::exact(Measure::count(number));
    html! {
        (scene.drawn(&drawing, None))
        dl class="list" {
            (scene.row("stitches.per-copy", None, count(placement.per_copy)))
            @if placement.per_copy > 1 {
                (scene.row("stitches.pitch", Some("stitch_pitch"), Band::exact(placement.pitch)))
            }
            (scene.row("stitches.overhang", None, Band::exact(placement.overhang)))
            @if let Some(between) = placement.between_copies() {
                (scene.row("stitches.between", None, Band::exact(between)))
            }
            (scene.row("stitches.passes", None, count(placement.passes)))
            (scene.row("stitches.wire", None, Band::exact(Measure::caliper(wire.diameter))))
            (scene.row("stitches.leg", Some("leg"), Band::exact(wire.leg)))
            (scene.row("stitches.clinch", None, wire.clinch))
            (scene.row("stitches.draw", Some("draw"), Band::exact(wire.draw)))
            (scene.row("stitches.run-mass", Some("wire_run"), Band::exact(results.run.consumed.wire)))
            @if let Some(spools) = results.run.consumed.spools {
                (scene.row("stitches.spools", None, Band::exact(Measure::new(spools, Unit::Number))))
            }
        }
        p { (scene.tell(&which(wire))) }
        @if scene.job.spine_text { p { (scene.tell(&free(scene))) } }
        (table(scene, &placement.stitches))
    }
}

/// The wire by diameter; its number only with the gauge it belongs to.
fn which(wire: &Wire) -> Say {
    match (wire.gauge, wire.suggested) {
        (Some(gauge), Some((least, most))) => {
            say("stitches.gauge").text("gauge", gauge).put("least", least).put("most", most)
        }
        _ => say("stitches.own-wire"),
    }
}

fn free(scene: &Scene) -> Say {
    let crown = scene.plan.results.stitches.wire.crown;
    let placement = &scene.plan.results.stitches.placement;
    let (from, to) = placement.free_of_wire(scene.job.size.height, crown);
    say("stitches.free").put("from", from).put("to", to)
}

fn table(scene: &Scene, stitches: &[Stitch]) -> Markup {
    let place = |length: Mm| scene.printer.numbers.print(length.into());
    let copies = scene.job.copies_up > 1;
    html! {
        div class="scroll" tabindex="0" role="region" aria-label=(scene.printer.word("stitches.table")) {
            table {
                caption { (scene.word("stitches.table")) }
                thead { tr {
                    @if copies { th scope="col" { (scene.word("stitches.copy")) } }
                    th scope="col" { (scene.word("stitches.from-head")) }
                    th scope="col" { (scene.word("stitches.from-foot")) }
                    th scope="col" { (scene.word("stitches.from-stop")) }
                    th scope="col" { (scene.word("stitches.pass")) }
                    th scope="col" { (scene.word("stitches.head")) }
                } }
                tbody {
                    @for stitch in stitches {
                        tr {
                            @if copies { td { (stitch.copy + 1) } }
                            td { (place(stitch.from_head)) }
                            td { (place(stitch.from_foot)) }
                            td { (place(stitch.from_lay)) }
                            td { (stitch.pass) }
                            td { (stitch.head) }
                        }
                    }
                }
            }
        }
    }
}
