//! Many titles at once: how to begin, how far it is, and the table of answers in parts.

use super::brought::Brought;
use crate::units::Measure;
use crate::view::Printer;
use crate::view::csv::{Cell, Column};
use crate::view::title_desk::{ANSWER, Desk, Order};
use crate::view::title_rows::Tally;
use crate::words::{Say, say};
use maud::{Markup, html};

/// Rows shown at once.
pub const ROWS: usize = 100;

/// What stands there before any list: what a list is, and where to get one.
#[must_use]
pub fn titles(printer: &Printer) -> Markup {
    let region = Brought {
        id: "titles",
        words: ["titles.heading", "titles.summary", "titles.what", "titles.private", "titles.open"],
        file: ("list-file", ".csv,.tsv,.txt,text/csv"),
    };
    let empty = html! {
        button type="button" id="act-list-empty" data-act="list-empty" { (printer.word("titles.save-empty")) }
    };
    let body = html! { div id="titles-state" {} div id="titles-table" {} };
    region.region(&empty, &body, printer)
}

/// How far a list is.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Progress {
    /// The part that has been planned, in hundredths.
    pub share: u32,
    /// How many rows there were so far.
    pub tally: Tally,
    /// Still at work.
    pub running: bool,
    /// Somebody has stopped it.
    pub stopped: bool,
}

/// A bar and a button to stop, afterwards a button to save. It stands still while the list is worked at:
/// whoever presses a button must find it there.
#[must_use]
pub fn state(running: bool, printer: &Printer) -> Markup {
    html! {
        @if running {
            progress id="titles-progress" max="100" aria-label=(printer.word("titles.progress")) {}
        }
        p id="titles-told" role=[(!running).then_some("status")] {}
        p class="files" {
            @if running {
                button type="button" id="act-list-stop" data-act="list-stop" { (printer.word("titles.stop")) }
            } @else {
                button type="button" id="act-list-save" data-act="list-save" { (printer.word("titles.save")) }
            }
        }
    }
}

/// How far it is, in words.
#[must_use]
pub fn told(progress: &Progress, printer: &Printer) -> Markup {
    let count = |number: u32| Measure::count(number);
    let Tally { rows, unread } = progress.tally;
    html! {
        (printer.html(&say("titles.planned").count("rows", count(rows))))
        @if unread > 0 { " " (printer.html(&say("titles.not-read").count("rows", count(unread)))) }
        @if progress.stopped { " " (printer.word("titles.stopped")) }
    }
}

/// Some rows of a list, with heads that sort it and buttons to turn the page.
#[must_use]
pub fn table(desk: &Desk, order: Order, from: usize, printer: &Printer) -> Markup {
    let columns = desk.columns(printer);
    let all = desk.tally().rows as usize;
    html! {
        @if !desk.ignored().is_empty() {
            p class="hint" { (printer.text(&say("titles.ignored").text("heads", desk.ignored().join(" · ")))) }
        }
        div class="scroll" id="titles-scroll" tabindex="0" role="region" aria-label=(printer.word("titles.table")) {
            table class="titles" {
                caption { (printer.word("titles.table")) }
                thead { tr {
                    @for (at, column) in columns.iter().enumerate().take(columns.len() - 1) {
                        (head(column, at, order))
                    }
                } }
                tbody {
                    @for (number, cells) in desk.part(order, from, ROWS, printer) {
                        tr {
                            @for (at, (column, cell)) in columns.iter().zip(&cells).enumerate() {
                                @match at {
                                    TITLE => th scope="row" { (take(number, &cells, printer)) },
                                    ANSWER => td { (answer(&cells)) },
                                    at if at + 1 == columns.len() => {},
                                    _ => td { (printed(column, cell, printer)) },
                                }
                            }
                        }
                    }
                }
            }
        }
        @if all > ROWS { (turn(from, all, printer)) }
    }
}

/// The place of the column that holds the title.
const TITLE: usize = 1;

fn head(column: &Column, at: usize, order: Order) -> Markup {
    let sorted =
        (order.column == Some(at)).then_some(if order.down { "descending" } else { "ascending" });
    html! {
        th scope="col" aria-sort=[sorted] {
            button type="button" id={ "list-sort-" (at) } data-act="list-sort" data-value=(at) {
                (column.label())
            }
        }
    }
}

/// The title as a button that puts the row into the form.
fn take(number: usize, cells: &[Cell], printer: &Printer) -> Markup {
    let title = match cells.get(TITLE) {
        Some(Cell::Text(title)) if !title.is_empty() => title.as_str(),
        _ => printer.word("titles.no-title"),
    };
    html! {
        button type="button" id={ "list-take-" (number) } data-act="list-take" data-value=(number) { (title) }
    }
}

/// The answer, and below it why: on a screen the last column would be out of sight.
fn answer(cells: &[Cell]) -> Markup {
    let text = |cell: Option<&Cell>| match cell {
        Some(Cell::Text(text)) => text.clone(),
        _ => String::new(),
    };
    let why = text(cells.last());
    html! {
        (text(cells.get(ANSWER)))
        @if !why.is_empty() { span class="mind" { (why) } }
    }
}

fn printed(column: &Column, cell: &Cell, printer: &Printer) -> String {
    match (cell, column.band_unit()) {
        (Cell::Text(text), _) => text.clone(),
        (Cell::Value(measure), _) => printer.numbers.print(*measure),
        (Cell::Band(band), Some(unit)) => printer.numbers.band(*band, unit),
        (Cell::Band(_) | Cell::Empty, _) => String::new(),
    }
}

fn turn(from: usize, all: usize, printer: &Printer) -> Markup {
    let count = |number: usize| Measure::count(number as u32);
    let told: Say = say("titles.part")
        .put("from", count(from + 1))
        .put("to", count((from + ROWS).min(all)))
        .put("all", count(all));
    html! {
        p class="files" {
            button type="button" id="list-back" data-act="list-turn" data-value=(from.saturating_sub(ROWS))
                aria-disabled=[(from == 0).then_some("true")] { (printer.word("titles.back")) }
            span { (printer.text(&told)) }
            button type="button" id="list-on" data-act="list-turn" data-value=(if from + ROWS < all { from + ROWS } else { from })
                aria-disabled=[(from + ROWS >= all).then_some("true")] { (printer.word("titles.on")) }
        }
    }
}
