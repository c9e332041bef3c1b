//! Stitches and wire.

use super::Scene;
use crate::plan::{Stitch, Wire};
use crate::units::Measure;
use crate::words::{Say, say};
use maud::{Markup, html};

/// Its figures.
const ROWS: [&str; 11] = [
    "stitch_count",
    "stitch_pitch",
    "overhang",
    "between",
    "passes",
    "wire",
    "leg",
    "clinch",
    "draw",
    "wire_run",
    "spools",
];

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
            .band("leg", stitches.wire.leg),
    )
}

/// The spine drawn, figures, and a row for every stitch.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let results = &scene.plan.results;
    let (placement, wire) = (&results.stitches.placement, &results.stitches.wire);
    html! {
        (scene.drawn("stitches-drawn", None))
        dl class="list" {
            @for id in ROWS { (scene.row(id)) }
        }
        p { (scene.tell(&which(wire))) }
        @if scene.job.spine_text {
            p { (scene.fill(say("stitches.free"), &[("from", "free_from", 0), ("to", "free_to", 0)])) }
        }
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

fn table(scene: &Scene, stitches: &[Stitch]) -> Markup {
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
                    @for (at, stitch) in stitches.iter().enumerate() {
                        tr {
                            @if copies { td { (stitch.copy + 1) } }
                            @for id in ["from_head", "from_foot", "from_stop"] {
                                td { (scene.figure(id, at + 1)) }
                            }
                            td { (stitch.pass) }
                            td { (stitch.head) }
                        }
                    }
                }
            }
        }
    }
}
