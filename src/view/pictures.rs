//! Every drawing of the page by its name, for the page and for a file of its own.

use super::html::Scene;
use super::regions::{ALL, MAKERS};
use super::{Reading, svg};
use crate::drawing::{self, Drawing, Kept, Page, Room};
use crate::job::{ImagesMovedBy, Spine};
use maud::{Markup, html};

/// A drawing: its name, who sees it, and how it is made; not every book has every one.
pub struct Picture {
    /// The drawing's id.
    pub id: &'static str,
    /// Who sees it.
    pub readings: &'static [Reading],
    draw: fn(&Scene, Room) -> Option<Drawing>,
}

/// Every drawing, in the order of the page.
pub static PICTURES: [Picture; 10] = [
    Picture {
        id: "book-end",
        readings: ALL,
        draw: |scene, room| Some(drawing::book_end(scene.plan, &scene.kinds(), room)),
    },
    Picture {
        id: "true-size-drawn",
        readings: ALL,
        draw: |scene, _| {
            let round = scene.job.spine == Spine::Round;
            Some(drawing::true_size(scene.plan, round, scene.outer_kind()))
        },
    },
    Picture {
        id: "fold-paths",
        readings: ALL,
        draw: |scene, room| drawing::fold_paths(scene.plan, &scene.kinds(), room),
    },
    Picture {
        id: "push-outs",
        readings: ALL,
        draw: |scene, room| drawing::push_outs(scene.plan, &scene.kinds(), room),
    },
    Picture { id: "clearance", readings: ALL, draw: worst_page },
    Picture { id: "flat-cover", readings: ALL, draw: cover },
    Picture {
        id: "stitches-drawn",
        readings: MAKERS,
        draw: |scene, room| {
            let spine = scene.job.size.height;
            Some(drawing::stitches(scene.plan, spine, scene.outer_kind(), room))
        },
    },
    Picture {
        id: "timeline",
        readings: MAKERS,
        draw: |scene, room| scene.job.copies.map(|_| drawing::timeline(scene.plan, room)),
    },
    Picture {
        id: "press-sheet",
        readings: MAKERS,
        draw: |scene, room| drawing::press_sheet(scene.plan, room),
    },
    Picture { id: "unit-cost", readings: MAKERS, draw: curve },
];

/// The page with the least room at its face.
fn worst_page(scene: &Scene, room: Room) -> Option<Drawing> {
    let (job, results) = (scene.job, &scene.plan.results);
    let worst = (results.margins.art.worst as usize).saturating_sub(1);
    let section = results.leaves.get(worst).and_then(|leaf| job.sections.get(leaf.section));
    let page = Page {
        kind: section.map_or("", |section| section.stock.kind.id),
        bleed: job.bleed,
        safe: job.safe,
        moved: job.images != ImagesMovedBy::Nobody,
    };
    drawing::clearance(scene.plan, &page, room)
}

fn cover(scene: &Scene, room: Room) -> Option<Drawing> {
    let (bleed, safe) = (scene.job.bleed, scene.job.safe);
    let kept = Kept { kind: scene.outer_kind(), bleed, safe };
    Some(drawing::flat_cover(scene.plan, &kept, room))
}

/// What a copy costs by how many there are, once that has been reckoned.
fn curve(scene: &Scene, room: Room) -> Option<Drawing> {
    let steps = scene.advice.cost.as_ref()?;
    let own = scene.plan.results.run.quantities.good;
    drawing::unit_cost(&steps.curve, own, steps.further(), room)
}

/// A drawing by its name, laid out for a room; nothing where this reader does not see it or the book has
/// none.
#[must_use]
pub fn drawn(scene: &Scene, id: &str, room: Room) -> Option<Drawing> {
    let picture = PICTURES.iter().find(|picture| picture.id == id)?;
    let seen = picture.readings.contains(&scene.reading);
    seen.then(|| (picture.draw)(scene, room)).flatten()
}

/// A drawing as a file that stands alone, in its own millimetres and on white, and its size in them.
#[must_use]
pub fn file(scene: &Scene, id: &str) -> Option<(String, f64, f64)> {
    let drawing = drawn(scene, id, Room::Wide)?;
    let (width, height) = (drawing.width, drawing.height);
    let text = svg::alone(&drawing, &scene.printer).into_string();
    Some((format!("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{text}\n"), width, height))
}

/// Two buttons that save a drawing.
#[must_use]
pub fn saved_by(scene: &Scene, drawing: &Drawing) -> Markup {
    let of =
        |key: &str| scene.printer.text(&crate::words::say(key).say("title", drawing.title.clone()));
    html! {
        span class="kept" {
            @for (kind, key) in [("svg", "picture.svg"), ("png", "picture.png")] {
                button type="button" id={ "save-" (kind) "-" (drawing.id) } data-act={ "picture-" (kind) }
                    data-value=(drawing.id) aria-label=(of(key)) { (kind.to_uppercase()) }
            }
        }
    }
}
