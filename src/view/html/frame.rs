//! The whole body of the page: readings, form, answer, regions, settings and files.

use super::design::design;
use super::fields::{GROUPS, group, lines};
use super::sections::sections;
use super::titles::titles;
use super::{Scene, answer, calibration, picture, true_size};
use crate::draft::{Draft, Group};
use crate::entry::LengthUnit;
use crate::shop::Shop;
use crate::view::qr::{Code, Held};
use crate::view::{Printer, REGIONS, Reading, Region, Screen, placed};
use crate::words::{LANGUAGES, Language, Say, say};
use maud::{Markup, PreEscaped, html};

/// What the frame is drawn from.
#[derive(Debug, Clone, Copy)]
pub struct Page<'a> {
    /// What stands in the form.
    pub draft: &'a Draft,
    /// The shop.
    pub shop: &'a Shop,
    /// Language and numbers.
    pub printer: Printer<'a>,
    /// The language it is printed in.
    pub language: &'static Language,
    /// The commit it was built from, with a plus behind it where more had been changed; or nothing.
    pub built: &'a str,
    /// The plan to show, when there is one.
    pub scene: Option<Scene<'a>>,
}

/// The body of the page. It reads as a finished sample even where nothing can run.
#[must_use]
pub fn frame(page: &Page) -> Markup {
    html! {
        div id="page" class="page" data-reading="design" {
            p id="notice" role="alert" { (page.printer.word("page.notice")) }
            (body(page))
        }
    }
}

/// What the session will draw again into the element of an id: its figures are called the same now as
/// then.
fn held(id: &str, content: Markup) -> Markup {
    PreEscaped(placed(&content.into_string(), id))
}

/// What stands in the frame but the notice that nothing runs; drawn again where the page changes its
/// language.
#[must_use]
pub fn body(page: &Page) -> Markup {
    let printer = &page.printer;
    html! {
        header class="top" {
            p class="name" { (printer.word("page.name")) }
            p class="purpose" { (printer.word("page.purpose")) }
            nav id="readings" aria-label=(printer.word("readings.label")) {
                @for (id, _) in READINGS {
                    button type="button" id={ "reading-" (id) } data-act="reading" data-value=(id)
                        aria-pressed=(if id == "design" { "true" } else { "false" }) {
                        (printer.word(&format!("readings.{id}")))
                    }
                }
            }
        }
        main {
            (form(page))
            div class="result" {
                h1 class="quiet" { (printer.word("answer.heading")) }
                section id="answer" aria-label=(printer.word("answer.heading")) {
                    @if let Some(scene) = &page.scene { (held("answer", answer(scene, false))) }
                }
                p id="status" role="status" class="quiet" {}
                section id="picture" aria-label=(printer.word("picture.heading")) {
                    @if let Some(scene) = &page.scene { (picture(scene)) }
                }
                section id="in-true-size" aria-label=(printer.word("true-size.heading")) {
                    div id="true-size" {
                        @if let Some(scene) = &page.scene { (true_size(scene)) }
                    }
                    (calibration(printer, &Screen::default()))
                }
                div id="explanation" role="note" hidden aria-labelledby="explanation-title" {}
                @for region in &REGIONS { (shell(region, page)) }
                (design(printer))
                (titles(printer))
                section id="cautions" {
                    h2 { (printer.word("cautions.heading")) }
                    p { (printer.word("cautions.dummy")) }
                    p { (printer.word("cautions.machine")) }
                }
                section id="appendix" aria-label=(printer.word("explain.appendix")) {}
            }
        }
        (foot(page))
        p id="drop-here" aria-hidden="true" { (page.printer.word("file.drop")) }
        article id="job-card" {}
    }
}

/// The readings by id.
pub const READINGS: [(&str, Reading); 3] =
    [("client", Reading::Client), ("design", Reading::Design), ("floor", Reading::Floor)];

/// Readings by their ids.
fn names(readings: &[Reading]) -> String {
    let named = READINGS.iter().filter(|(_, reading)| readings.contains(reading));
    named.map(|(id, _)| *id).collect::<Vec<_>>().join(" ")
}

fn form(page: &Page) -> Markup {
    let printer = &page.printer;
    html! {
        form id="form" autocomplete="off" aria-label=(printer.word("form.label")) {
            div id="restore" {}
            div class="field phrase" id="field-phrase" {
                label for="input-phrase" { (printer.word("field.phrase.label")) }
                input type="text" id="input-phrase" name="phrase" autocomplete="off"
                    autocapitalize="off" spellcheck="false" aria-describedby="hint-phrase echo-phrase";
                div class="echo" id="echo-phrase" {}
                p class="hint" id="hint-phrase" { (printer.word("field.phrase.hint")) }
            }
            div id="example" {}
            (group(Group::Main, page.draft, page.shop, printer))
            details class="more" id="more-sections" {
                summary { (printer.word("group.sections")) }
                div id="sections" { (sections(&[None], page.draft, page.shop, printer)) }
            }
            @for (name, readers) in GROUPS {
                details class="more" id={ "more-" (name) } data-for=(names(readers)) {
                    summary { (printer.word(&format!("group.{name}"))) }
                    (group(Group::More(name), page.draft, page.shop, printer))
                    @if name == "first-off" { div id="first-off" {} }
                }
            }
            div id="faults" {}
            p class="history" {
                @for act in ["undo", "redo", "new"] {
                    button type="button" id={ "act-" (act) } data-act=(act)
                        aria-disabled=[(act != "new").then_some("true")] {
                        (printer.word(&format!("act.{act}")))
                    }
                }
            }
            p id="offered" class="quiet" aria-live="polite" {}
        }
    }
}

fn shell(region: &Region, page: &Page) -> Markup {
    let id = region.id;
    let (summary, body) = (format!("summary-{id}"), format!("body-{id}"));
    let reading = page.scene.map_or(Reading::Design, |scene| scene.reading);
    let hidden = !region.readings.contains(&reading);
    let scene = page.scene.as_ref().filter(|_| !hidden);
    html! {
        section class="region" id={ "region-" (id) } hidden[hidden] {
            h2 id={ "heading-" (id) } { (page.printer.word(&format!("region.{id}"))) }
            @if id == "fixes" { div id="taken" {} }
            details id={ "open-" (id) } open[region.open] {
                summary id=(summary) { (held(&summary, region_summary(region, scene))) }
                // What stands closed is drawn when it is opened.
                div id=(body) {
                    @if region.open { (held(&body, region_body(region, scene))) }
                }
            }
        }
    }
}

/// The summary line of a region.
#[must_use]
pub fn region_summary(region: &Region, scene: Option<&Scene>) -> Markup {
    html! { @if let Some(scene) = scene { ((region.summary)(scene)) } }
}

/// What stands in a region.
#[must_use]
pub fn region_body(region: &Region, scene: Option<&Scene>) -> Markup {
    html! { @if let Some(scene) = scene { ((region.body)(scene)) } }
}

/// What the foot of the page opens, saves, prints and copies: kind, acts. What is opened is a file, and
/// no act.
pub const HANDED: [(&str, &[&str]); 5] = [
    ("open", &[]),
    ("save", &["save-job", "save-shop", "save-tables", "save-xjdf"]),
    ("share", &["copy-link", "copy-text"]),
    ("print", &["print", "print-card", "print-figures"]),
    ("pdf", &["save-card", "save-cover", "save-dummy", "save-creep"]),
];

fn foot(page: &Page) -> Markup {
    let printer = &page.printer;
    let units = ["mm", "in"].map(|unit| (unit, printer.word(&format!("field.units.{unit}"))));
    let inches = printer.numbers.unit == LengthUnit::Inch;
    let spoken = LANGUAGES.each_ref().map(|language| (language.tag, language.name));
    html! {
        footer {
            (setting("units", if inches { "in" } else { "mm" }, &units, printer))
            (setting("language", page.language.tag, &spoken, printer))
            div class="files" {
                @for (kind, acts) in HANDED {
                    div class="kind" role="group" aria-labelledby={ "handed-" (kind) } {
                        h2 id={ "handed-" (kind) } { (printer.word(&format!("handed.{kind}"))) }
                        @if acts.is_empty() {
                            label class="button file" for="file" {
                                (printer.word("act.open"))
                                input type="file" id="file" name="file"
                                    accept=".json,.txt,.csv,.tsv,.pdf,application/json,text/plain,text/csv,application/pdf";
                            }
                            p id="shop" {}
                        }
                        @for act in acts {
                            button type="button" id={ "act-" (act) } data-act=(act) {
                                (printer.word(&format!("act.{act}")))
                            }
                        }
                    }
                }
                div id="file-note" role="alert" {}
            }
            details class="more" id="open-code" {
                summary { (printer.word("code.heading")) }
                div id="code" {}
            }
            p class="about" { (printer.word("page.private")) " " span id="storage" {} }
            p class="about" id="version" {
                (printer.word("page.version")) " " (env!("CARGO_PKG_VERSION"))
                @if let Some(told) = built_from(page.built) { " · " (printer.text(&told)) }
            }
        }
    }
}

/// The commit in words.
fn built_from(commit: &str) -> Option<Say> {
    let (key, commit) = match commit.strip_suffix('+') {
        Some(commit) => ("page.built.changed", commit),
        None => ("page.built", commit),
    };
    (!commit.is_empty()).then(|| say(key).text("commit", commit))
}

/// A picture of the job for cameras and scanners, and what it holds.
#[must_use]
pub fn code(picture: Option<&Code>, printer: &Printer) -> Markup {
    html! {
        @match picture {
            Some(picture) => {
                (picture.svg(printer.word("code.label")))
                p {
                    (printer.word(match picture.held {
                        Held::Link => "code.link",
                        Held::Keys => "code.keys",
                    })) " "
                    (printer.word("code.alone"))
                }
            }
            None => p { (printer.word("code.long")) },
        }
    }
}

/// A choice for the whole page.
fn setting(name: &str, chosen: &str, options: &[(&str, &str)], printer: &Printer) -> Markup {
    html! {
        fieldset class="choice" id={ "field-" (name) } {
            legend { (printer.word(&format!("field.{name}.label"))) }
            div class="options" {
                @for (value, label) in options {
                    label {
                        input type="radio" name=(name) id={ "input-" (name) "-" (value) } value=(value)
                            checked[*value == chosen];
                        " " span lang=[(name == "language").then_some(value)] { (label) }
                    }
                }
            }
        }
    }
}

/// The question whether to go on with the job of last time; it does not say which job.
#[must_use]
pub fn restore_question(printer: &Printer, ask: bool) -> Markup {
    html! {
        @if ask {
            div class="question" role="group" aria-label=(printer.word("restore.ask")) {
                p { (printer.word("restore.ask")) }
                button type="button" id="restore-yes" data-act="restore" data-value="yes" {
                    (printer.word("restore.yes"))
                }
                button type="button" id="restore-no" data-act="restore" data-value="no" {
                    (printer.word("restore.no"))
                }
            }
        }
    }
}

/// Says that what was kept cannot be read, and offers it as a file.
#[must_use]
pub fn unread(printer: &Printer) -> Markup {
    html! {
        p {
            (printer.word("kept.unread")) " "
            button type="button" id="save-kept" data-act="save-kept" { (printer.word("kept.save")) }
        }
    }
}

/// The shop in force, and the options of the line field.
#[must_use]
pub fn shop_line(shop: &Shop, chosen: &str, printer: &Printer) -> (Markup, Markup) {
    let line = html! { (printer.word("shop.label")) " " strong { (printer.typed(&shop.name)) } };
    (line, lines(shop, chosen, printer))
}
