//! The job card: one sheet of paper that goes with the job to the machine. Everything that is set and
//! looked at, with boxes to tick and room to write; no rate and no cost.

use super::answer::{mark, paper, reason};
use super::run::stop_told;
use super::set_up::line;
use super::{Scene, sheet};
use crate::explain::{Case, explain, finding as found};
use crate::job::{ImagesMovedBy, Spine};
use crate::plan::{Trust, Weight};
use crate::units::{Measure, Pages};
use crate::view::qr::Picture;
use crate::view::set_up::{Row, first_book, settings};
use crate::words::{Say, say};
use maud::{Markup, html};

/// What the rules found that a card has room for; the rest is counted.
const MOST_FOUND: usize = 5;

/// The card, with the picture that brings the job back onto a page. The page writes into its `time` when it is printed: the core has no clock.
#[must_use]
pub fn card(scene: &Scene, code: Option<&Picture>) -> Markup {
    html! {
        div class="top" {
            div { (head(scene)) (verdict(scene)) }
            @if let Some(code) = code { (code.svg(scene.printer.word("code.label"))) }
        }
        div class="columns" {
            section {
                h2 { (scene.word("card.set")) }
                (table(scene, &settings(&scene.case()), None))
            }
            section {
                h2 { (scene.word("setup.first")) }
                (table(scene, &first_book(&scene.case()), Some("card.measured")))
                p { (scene.word("setup.again")) }
                h2 { (scene.word("region.run")) }
                (run(scene))
                h2 { (scene.word("card.rests-on")) }
                (rests_on(scene))
            }
        }
        p class="caution" {
            strong { (scene.word("cautions.machine")) } " " (scene.word("cautions.wire"))
            " " (scene.word("cautions.dummy"))
        }
        (foot(scene))
    }
}

/// What job it is, and for whom.
fn head(scene: &Scene) -> Markup {
    let job = scene.job;
    let line = scene.shop.lines.get(job.line).map(|line| scene.printer.typed(&line.name));
    let pages: u32 = job.sections.iter().map(|section| section.pages.get()).sum();
    let book = say("card.book")
        .count("copies", job.copies)
        .put("pages", Pages(pages))
        .put("width", job.size.width)
        .put("height", job.size.height)
        .say(
            "spine",
            say(match job.spine {
                Spine::Round => "field.spine.round",
                Spine::Square => "field.spine.square",
            }),
        )
        .say(
            "by",
            say(match job.images {
                ImagesMovedBy::Shop => "field.images.shop",
                ImagesMovedBy::Designer => "field.images.designer",
                ImagesMovedBy::Nobody => "field.images.nobody",
            }),
        );
    html! {
        header {
            p class="name" { (scene.word("card.name")) }
            h1 { (if job.identity.title.is_empty() { scene.printer.text(&book) } else { job.identity.title.clone() }) }
            p class="for" {
                @for (field, text) in [
                    ("customer", &job.identity.customer), ("date", &job.identity.date), ("by", &job.identity.by),
                ] {
                    @if !text.is_empty() {
                        span { (scene.printer.word(&format!("field.{field}.label"))) ": " b { (text) } } " "
                    }
                }
                span { (scene.printer.word("field.line.label")) ": " b { (line.unwrap_or_default()) } }
            }
        }
        p class="book" { (scene.tell(&book)) }
    }
}

/// Whether it fits, and what is worth knowing.
fn verdict(scene: &Scene) -> Markup {
    let plan = scene.plan;
    // The gravest is the reason, where there is one against the book.
    let reason_told = plan.findings.first().is_some_and(|worst| worst.weight >= Weight::Marginal);
    let told = plan.findings.iter().skip(usize::from(reason_told));
    let told: Vec<_> = told.filter(|finding| finding.weight >= Weight::Warning).collect();
    let more = told.len().saturating_sub(MOST_FOUND);
    html! {
        p class="verdict" {
            (mark(plan.verdict))
            span {
                strong { (scene.word(&format!("answer.{}", plan.verdict.name()))) } " "
                (scene.tell(&reason(scene)))
            }
        }
        @if !told.is_empty() {
            ul class="found" {
                @for finding in told.iter().take(MOST_FOUND) {
                    li { (scene.tell(&found(&scene.case(), finding, finding.say()))) }
                }
                @if more > 0 {
                    li { (scene.tell(&say("card.more").count("count", Measure::count(more as u32)))) }
                }
            }
        }
    }
}

/// Rows with a box each, and room to write where something is measured.
fn table(scene: &Scene, rows: &[Row], measured: Option<&str>) -> Markup {
    html! {
        table {
            @if let Some(key) = measured {
                thead { tr { td {} th scope="col" { (scene.word("card.wanted")) } th scope="col" { (scene.word(key)) } } }
            }
            tbody {
                @for row in rows {
                    tr {
                        td class="box" { span {} }
                        th scope="row" { (line(scene, row)) }
                        @if measured.is_some() { td class="write" { @if row.value.is_some() { span {} } } }
                    }
                }
            }
        }
    }
}

/// What is fed, on which sheet, and when somebody has to be there.
fn run(scene: &Scene) -> Markup {
    let case = scene.case();
    html! {
        ul {
            li { (super::run::summary(scene)) }
            li { (sheet::summary(scene)) }
            @for stop in scene.plan.results.run.stops() { li { (scene.tell(&stop_told(&case, stop))) } }
        }
    }
}

/// Each paper with the thickness that was reckoned with and where that comes from; the fold; the line.
fn rests_on(scene: &Scene) -> Markup {
    let case = scene.case();
    let papers = scene.job.sections.iter().enumerate().map(|(index, section)| {
        let at = index + 1;
        let source = explain(&Case { at, ..case }, "leaf_one").map(|told| told.source);
        let told = say("card.paper").say("paper", paper(section));
        let told =
            source.into_iter().fold(told, |told, source| told.say("source", Say::source(source)));
        case.fill(told, &[("leaf", "leaf_one", at)])
    });
    let dummy = say(match scene.plan.results.fold.trust {
        Trust::Good | Trust::Weak => "card.fold.measured",
        Trust::NotMeasured | Trust::Refused => "card.fold.calculated",
    });
    let dummy = dummy.say("source", Say::source(scene.plan.results.fold.source));
    html! {
        ul {
            @for told in papers { li { (scene.tell(&told)) } }
            li { (scene.tell(&dummy)) }
            li { (scene.shop.name) @if !scene.shop.note.is_empty() { ": " (scene.shop.note) } }
        }
    }
}

/// Who has set it up and looked; whether the printer kept its size; when and by what it was made.
fn foot(scene: &Scene) -> Markup {
    html! {
        footer {
            p class="signed" {
                @for key in ["card.set-up-by", "card.checked-by", "card.good-copies"] {
                    span { (scene.word(key)) } b {}
                }
            }
            div class="made" {
                (bar())
                p { (scene.word("card.bar")) }
                p {
                    (scene.word("page.name")) " " (env!("CARGO_PKG_VERSION")) " · "
                    (scene.word("card.printed")) " " time data-now {}
                }
            }
        }
    }
}

/// A bar of 50 mm, a tick each 10 mm.
fn bar() -> Markup {
    html! {
        svg class="bar" width="52mm" height="5mm" viewBox="-1 0 52 5" aria-hidden="true" {
            path d="M0 0.5v4M10 2v1M20 2v1M30 2v1M40 2v1M50 0.5v4M0 2.5h50" {}
        }
    }
}
