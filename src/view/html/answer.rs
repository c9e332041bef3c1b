//! The answer in prose, with the figures set large inside it, and the picture beside it.

use super::Scene;
use super::compare::keeper;
use super::cost::priced;
use crate::advise::Room;
use crate::explain::finding as found;
use crate::job::{Role, Section};
use crate::plan::{Verdict, Weight};
use crate::units::{PAGES_PER_SHEET, Pages};
use crate::view::{Reading, pictures, svg};
use crate::words::{Say, say};
use maud::{Markup, html};

/// What stands in the answer.
const FIGURES: &[(&str, &str, usize)] =
    &[("spine", "spine", 0), ("push_out", "push_out", 0), ("cut", "face_cut", 0)];

/// The answer. `stale` while what stands in the form is not complete: it is then the last answer.
#[must_use]
pub fn answer(scene: &Scene, stale: bool) -> Markup {
    let verdict = scene.plan.verdict;
    let name = verdict.name();
    html! {
        // The same again as one line that stays on top of a narrow screen.
        a class={ "pin " (name) } href="#verdict" aria-hidden="true" tabindex="-1" {
            (mark(verdict)) strong { (headline(scene)) }
            span class="told" { (scene.tell(&pinned(scene))) }
        }
        @if !scene.job.identity.title.is_empty() {
            p class="identity" {
                (scene.job.identity.title)
                @for text in [&scene.job.identity.customer, &scene.job.identity.date, &scene.job.identity.by] {
                    @if !text.is_empty() { " · " (text) }
                }
            }
        }
        @if stale { p class="stale" { (scene.tell(&about(scene))) } }
        (answer_alone(scene))
        @if !stale { (keeper(scene)) }
        @if let Some(told) = price(scene) { p class="price" { (scene.tell(&told)) } }
    }
}

/// Verdict, figures and what they are like: what other programs show of the answer.
#[must_use]
pub fn answer_alone(scene: &Scene) -> Markup {
    let verdict = scene.plan.verdict;
    html! {
        p class={ "verdict " (verdict.name()) } id="verdict" {
            (mark(verdict))
            span { strong { (headline(scene)) } " " (scene.tell(&reason(scene))) }
        }
        p class="figures" { (scene.fill(say("answer.figures"), FIGURES)) }
        p class="aside" { (scene.tell(&aside(scene))) }
    }
}

fn headline(scene: &Scene) -> Markup {
    scene.word(&format!("answer.{}", scene.plan.verdict.name()))
}

/// Which book the answer is about.
fn about(scene: &Scene) -> Say {
    let pages: u32 = scene.job.sections.iter().map(|section| section.pages.get()).sum();
    say("answer.about")
        .put("pages", Pages(pages))
        .put("width", scene.job.size.width)
        .put("height", scene.job.size.height)
}

/// Why: head-room when it fits, else what decides. A client never hears of limits, and of head-room
/// only up to the next full step.
pub(in crate::view) fn reason(scene: &Scene) -> Say {
    let worst = scene.plan.findings.iter().find(|finding| finding.weight >= Weight::Marginal);
    match (worst, scene.reading) {
        (None, _) => room(scene),
        (Some(_), Reading::Client) => say(match scene.plan.verdict {
            Verdict::Marginal => "answer.marginal.client",
            Verdict::Unlikely => "answer.unlikely.client",
            _ => "answer.no.client",
        }),
        (Some(finding), _) => found(&scene.case(), finding, finding.say()),
    }
}

fn room(scene: &Scene) -> Say {
    let Room::Pages(pages) = scene.advice.room else { return say("room.unlimited") };
    if pages < Pages(PAGES_PER_SHEET) {
        return say("room.none");
    }
    scene.case().fill(say("room.pages"), &[("pages", "room", 0)])
}

fn pinned(scene: &Scene) -> Say {
    say("answer.pinned").put("spine", scene.plan.results.stack.closed.nominal.0)
}

/// Thickness as a thing, and mass.
fn aside(scene: &Scene) -> Say {
    let case = scene.case();
    let like = case.fill(say("answer.like"), &[("sheets", "copier_sheets", 0)]);
    if scene.plan.results.mass.is_none() {
        return like;
    }
    case.fill(say("answer.aside").say("like", like), &[("mass", "mass", 0)])
}

/// A client reads a price only by the shop's own rule, and only of a cost that is whole; before it is
/// said how many copies, what to say.
fn price(scene: &Scene) -> Option<Say> {
    let cost = &scene.plan.results.cost;
    if scene.reading != Reading::Client {
        return None;
    }
    match scene.job.copies {
        Some(_) if cost.incomplete => None,
        Some(_) => priced(scene.shop, cost, Some(&scene.case())),
        None => scene.shop.rates.price.as_ref().map(|_| say("run.unknown")),
    }
}

/// The verdict as a shape: a tick in a circle, a balance tipped, a bar crossed.
pub(super) fn mark(verdict: Verdict) -> Markup {
    let path = match verdict {
        Verdict::Fits => "M12 2a10 10 0 1 0 0 20a10 10 0 1 0 0-20M7 12.5l3.5 3.5l6.5-8",
        Verdict::Marginal | Verdict::Unlikely => {
            "M4 10l16-5M12 4v17M8 21h8M4 10l-3 6h6zM20 5l-3 6h6z"
        }
        Verdict::DoesNotFit => "M2 8.5h20v7h-20zM17.500 3l-11 18",
    };
    html! {
        svg class="mark" viewBox="0 0 24 24" aria-hidden="true" { path d=(path) {} }
    }
}

/// What a section is made of.
#[must_use]
pub fn paper(section: &Section) -> Say {
    let role = match section.role {
        Role::Cover => "role.cover",
        Role::Inside => "role.inside",
        Role::Insert => "role.insert",
    };
    let stock = &section.stock;
    let name = if stock.name.is_empty() { &stock.typed } else { &stock.name };
    say("drawing.paper").say("role", say(role)).text("paper", name.as_str())
}

/// A paper's tint on the drawing.
fn swatch(kind: &'static str) -> Markup {
    html! {
        svg class="swatch drawing" viewBox="0 0 6 2" aria-hidden="true" {
            path class="edge" d="M0 1h6" stroke-width="2" {}
            path class={ "paper paper-" (kind) } d="M0.2 1h5.6" stroke-width="1.6" {}
        }
    }
}

/// The picture: the end of the book, tinted by its papers.
#[must_use]
pub fn picture(scene: &Scene) -> Markup {
    let Some(drawing) = pictures::drawn(scene, "book-end", scene.screen.room) else {
        return html! {};
    };
    html! {
        figure {
            (svg::svg(&drawing, &scene.printer))
            figcaption {
                ul class="papers" {
                    @for section in &scene.job.sections {
                        li {
                            (swatch(section.stock.kind.id)) " "
                            (scene.tell(&paper(section)))
                        }
                    }
                }
                p {
                    (scene.tell(&drawing.title)) " " (scene.word("drawing.note"))
                    (pictures::saved_by(scene, &drawing))
                }
            }
        }
    }
}
