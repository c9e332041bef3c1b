//! The set-up list for whoever stands at the machine: values in the order of the line, and what to look
//! at on the first book.

use super::Scene;
use crate::units::Measure;
use crate::view::set_up::{Row, boxes};
use crate::words::say;
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
    let boxes = boxes(&scene.case());
    let [settings, first_book] = &boxes;
    let all = || boxes.iter().flatten();
    let done = all().filter(|(_, row)| ticked(scene, row)).count();
    html! {
        p class="caution" { strong { (scene.word("cautions.machine")) } }
        p class="caution" { (scene.word("cautions.wire")) }
        (list(scene, settings))
        h3 { (scene.word("setup.first")) }
        (list(scene, first_book))
        p class="ticked" {
            (scene.tell(&say("setup.ticked").put("done", count(done)).put("all", count(all().count()))))
            " " (scene.word("setup.again"))
        }
        p class="caution" { (scene.word("cautions.dummy")) }
    }
}

fn count(number: usize) -> Measure {
    Measure::count(number as u32)
}

fn ticked(scene: &Scene, row: &Row) -> bool {
    scene.ticks.has(&row.text(&scene.printer))
}

/// Lines with their boxes. Figures in a line are asked about by tapping them, so the line is no label;
/// the box is as large as a glove.
fn list(scene: &Scene, rows: &[(String, Row)]) -> Markup {
    html! {
        ol class="set-up" {
            @for (name, row) in rows {
                li {
                    label class="tick" {
                        input type="checkbox" id=(name) name=(name) checked[ticked(scene, row)]
                            aria-labelledby={ "line-" (name) };
                    }
                    div id={ "line-" (name) } { (line(scene, row)) }
                }
            }
        }
    }
}

/// What is set, to what, and what to mind.
#[must_use]
pub fn line(scene: &Scene, row: &Row) -> Markup {
    html! {
        span class="what" { (scene.tell(&row.label)) } " "
        @if let Some(value) = &row.value { strong { (scene.tell(value)) } " " }
        @if let Some(note) = &row.note { span class="mind" { (scene.tell(note)) } }
    }
}
