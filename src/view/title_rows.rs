//! A list of titles answered: one row a book.

use super::csv::{Cell, Column, Writer};
use crate::advise::Room;
use crate::draft::FieldError;
use crate::plan::Weight;
use crate::shop::Shop;
use crate::titles::{List, Planned, Title, plan_list};
use crate::units::{Measure, Unit};
use crate::view::{Numbers, Printer};
use crate::words::{Mark, say};

/// How many of a list's rows came to what.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tally {
    /// Rows in all.
    pub rows: u32,
    /// Of these, rows that cannot be read.
    pub unread: u32,
}

/// Plans a list and writes one row for each of its rows, in order.
#[must_use]
pub fn answered(list: &List, shop: &Shop, units: &str, printer: &Printer) -> (String, Tally) {
    let mut answers = Answers::new(shop, printer);
    plan_list(list, shop, units, |title| {
        answers.add(title, printer);
        true
    });
    (answers.out.text(), answers.tally)
}

/// The answers to a list as they are written, one row after the other.
#[derive(Debug)]
pub struct Answers {
    columns: Vec<Column>,
    out: Writer,
    tally: Tally,
}

impl Answers {
    /// The heads, in this printer's words.
    #[must_use]
    pub fn new(shop: &Shop, printer: &Printer) -> Self {
        let printer = &with_points(printer);
        let (columns, mut out) = (columns(shop, printer), Writer::new());
        out.heads(&columns, printer);
        Self { columns, out, tally: Tally::default() }
    }
    /// Writes the next row. Gives back its cells.
    pub fn add(&mut self, title: &Title, printer: &Printer) -> Vec<Cell> {
        let printer = &with_points(printer);
        let cells = row(title, printer);
        self.out.row(&self.columns, &cells, printer);
        self.tally.rows += 1;
        self.tally.unread += u32::from(title.answer.is_err());
        cells
    }
    /// How many rows there are so far.
    #[must_use]
    pub const fn tally(&self) -> Tally {
        self.tally
    }
    /// What is written so far.
    #[must_use]
    pub fn so_far(&self) -> &str {
        self.out.so_far()
    }
}

/// A list to begin with: heads, and one invented book. With the mark of UTF-8, so that spreadsheets know.
#[must_use]
pub fn template(printer: &Printer) -> String {
    let lines = [printer.word("titles.list.heads"), printer.word("titles.list.row")];
    lines.iter().fold('\u{feff}'.to_string(), |text, line| [&text, *line, "\r\n"].concat())
}

/// Numbers with a point, whatever the language: what other programs read.
fn with_points<'a>(printer: &Printer<'a>) -> Printer<'a> {
    let numbers = Numbers { mark: Mark::Point, ..printer.numbers };
    Printer { numbers, ..*printer }
}

/// The columns of the answer.
#[must_use]
pub fn columns(shop: &Shop, printer: &Printer) -> Vec<Column> {
    let text = |key| Column::text(printer.word(key));
    let value = |key, unit| Column::value(printer.word(key), unit);
    let cost = match shop.rates.currency.as_str() {
        "" => value("titles.cost", Unit::Money),
        sign => Column::value(&format!("{} ({sign})", printer.word("titles.cost")), Unit::Money),
    };
    vec![
        text("titles.line"),
        text("field.title.label"),
        text("decides.answer"),
        text("csv.room-pages"),
        Column::band(printer.word("titles.thickness"), Unit::Length),
        value("titles.open-width", Unit::Length),
        value("titles.open-height", Unit::Length),
        value("titles.mass", Unit::Mass),
        text("titles.sheets"),
        text("titles.press-sheets"),
        value("titles.time", Unit::Time),
        cost,
        text("titles.why"),
    ]
}

/// A row's cells, as many as there are columns.
#[must_use]
pub fn row(title: &Title, printer: &Printer) -> Vec<Cell> {
    let line = Cell::Value(Measure::new(title.place.line as f64, Unit::Count));
    let name = Cell::Text(title.draft.get("title").to_owned());
    let rest = match &title.answer {
        Ok(planned) => planned_cells(planned, printer),
        Err(errors) => {
            let mut cells = vec![Cell::Empty; 11];
            let told: Vec<String> = errors.iter().map(|error| fault(error, printer)).collect();
            cells.splice(..1, [Cell::Text(printer.word("titles.unread").to_owned())]);
            cells.splice(10.., [Cell::Text(told.join(" "))]);
            cells
        }
    };
    [line, name].into_iter().chain(rest).collect()
}

fn planned_cells(planned: &Planned, printer: &Printer) -> Vec<Cell> {
    let results = &planned.plan.results;
    let verdict = planned.plan.verdict;
    let open = results.cover.open;
    let room = match planned.room {
        Room::Pages(pages) => Cell::value(pages),
        Room::Unlimited => Cell::Empty,
    };
    // Findings stand gravest first. Below "only just" nothing needs a reason.
    let why = planned.plan.findings.first().filter(|finding| finding.weight >= Weight::Marginal);
    vec![
        Cell::Text(printer.word(&format!("limit.answer.{}", verdict.name())).to_owned()),
        room,
        Cell::band(results.stack.closed.map(|closed| closed.0)),
        Cell::value(open.width),
        Cell::value(open.height),
        Cell::maybe(results.mass.map(|mass| mass.book.nominal)),
        Cell::value(planned.job.sheets()),
        results
            .layout
            .needed
            .map_or(Cell::Empty, |needed| Cell::Value(Measure::new(needed.sheets, Unit::Count))),
        Cell::maybe(planned.job.copies.map(|_| results.run.times.best)),
        Cell::maybe(results.cost.items().next().map(|_| results.cost.total)),
        why.map_or(Cell::Empty, |finding| Cell::Text(printer.text(&finding.say()))),
    ]
}

/// What is wrong with a field of a row, what was given, and what to put instead.
#[must_use]
pub fn fault(error: &FieldError, printer: &Printer) -> String {
    let (wrong, repair) = (printer.text(&error.wrong), printer.text(&error.repair));
    let told = format!("{wrong} {repair}");
    let field = match error.path.split('.').next() {
        None | Some("") => return told,
        Some(path) => printer.word(&format!("field.{path}.label")),
    };
    // Most faults repeat what was given themselves.
    let said = error.given.is_empty() || told.contains(&error.given);
    let key = if said { "titles.fault" } else { "titles.fault.given" };
    let told = say(key).text("field", field).text("given", error.given.as_str()).text("told", told);
    printer.text(&told)
}
