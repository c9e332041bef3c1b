//! The job card: one sheet of paper that goes with the job to the machine. Everything that is set and
//! looked at, with boxes to tick and room to write; no rate and no cost.

use super::Scene;
use super::answer::{mark, reason};
use super::set_up::line;
use crate::view::job_card::{book, found, identity, rests_on, run, shop};
use crate::view::qr::Code;
use crate::view::set_up::{Row, first_book, settings};
use crate::words::Say;
use maud::{Markup, html};

/// The card, with the picture that brings the job back onto a page. The page writes into its `time` when it
/// is printed: the core has no clock.
#[must_use]
pub fn card(scene: &Scene, code: Option<&Code>) -> Markup {
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
                (list(scene, &run(scene)))
                h2 { (scene.word("card.rests-on")) }
                (list(scene, &rests_on(scene)))
                p { (shop(scene)) }
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
    let (title, book) = (&scene.job.identity.title, book(scene));
    html! {
        header {
            p class="name" { (scene.word("card.name")) }
            // Without a title the book itself is the heading.
            h1 { @if title.is_empty() { (scene.tell(&book)) } @else { (title) } }
            p class="for" {
                @for (label, text) in identity(scene) { span { (label) ": " b { (text) } } " " }
            }
        }
        @if !title.is_empty() { p class="book" { (scene.tell(&book)) } }
    }
}

/// Whether it fits, and what is worth knowing.
fn verdict(scene: &Scene) -> Markup {
    let (told, more) = found(scene);
    html! {
        p class="verdict" {
            (mark(scene.plan.verdict))
            span {
                strong { (scene.word(&format!("answer.{}", scene.plan.verdict.name()))) } " "
                (scene.tell(&reason(scene)))
            }
        }
        @if !told.is_empty() {
            ul class="found" {
                @for told in told { li { (scene.tell(&told)) } }
                @if let Some(more) = more { li { (scene.tell(&more)) } }
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

/// Sentences, one a line.
fn list(scene: &Scene, told: &[Say]) -> Markup {
    html! { ul { @for told in told { li { (scene.tell(told)) } } } }
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
