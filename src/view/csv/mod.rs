//! The plan's tables as CSV, for a spreadsheet or another program.
//!
//! UTF-8 with its mark, commas, lines ended as RFC 4180 (2005) says. Units stand in the heads, numbers
//! have a point and no groups in every language. A text that a spreadsheet would take for a formula
//! gets an apostrophe before it. Several tables stand one under another, each under its name, with an
//! empty line between.

mod tables;

pub use tables::{inside, tables};

use crate::units::{Band, Measure, Unit};
use crate::view::Printer;
use crate::words::say;

/// A column: its name and what stands in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    label: String,
    holds: Holds,
}

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Holds {
    /// Words.
    Text,
    /// One value in this unit.
    Value(Unit),
    /// Three values: the least, the expected, the most.
    Band(Unit),
}

impl Column {
    /// Its name.
    #[must_use]
    pub fn label(&self) -> &str {
        &self.label
    }
    /// The unit of a band's values; they stand without one.
    #[must_use]
    pub const fn band_unit(&self) -> Option<Unit> {
        match self.holds {
            Holds::Band(unit) => Some(unit),
            Holds::Text | Holds::Value(_) => None,
        }
    }
    /// A column of words.
    #[must_use]
    pub fn text(label: &str) -> Self {
        Self { label: label.to_owned(), holds: Holds::Text }
    }
    /// A column of values.
    #[must_use]
    pub fn value(label: &str, unit: Unit) -> Self {
        Self { label: label.to_owned(), holds: Holds::Value(unit) }
    }
    /// Three columns for values with their doubt.
    #[must_use]
    pub fn band(label: &str, unit: Unit) -> Self {
        Self { label: label.to_owned(), holds: Holds::Band(unit) }
    }
}

/// What stands in one place of a row.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// Nothing is known, or nothing applies.
    Empty,
    /// Words, or anything from outside.
    Text(String),
    /// A value.
    Value(Measure),
    /// A value with its doubt.
    Band(Band<f64>),
}

impl Cell {
    /// A value.
    #[must_use]
    pub fn value(value: impl Into<Measure>) -> Self {
        Self::Value(value.into())
    }
    /// A value where there is one.
    #[must_use]
    pub fn maybe<T: Into<Measure>>(value: Option<T>) -> Self {
        value.map_or(Self::Empty, Self::value)
    }
    /// A value with its doubt.
    #[must_use]
    pub fn band<T: Copy + Into<Measure>>(band: Band<T>) -> Self {
        Self::Band(band.map(|value| value.into().value))
    }
}

/// A table by name.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// What it is called.
    pub title: String,
    /// Its columns.
    pub columns: Vec<Column>,
    /// Its rows, as many cells each as there are columns.
    pub rows: Vec<Vec<Cell>>,
}

/// Marks a text as UTF-8: without it spreadsheets guess.
const UTF8_MARK: char = '\u{feff}';

/// Tables as one CSV text.
#[must_use]
pub fn write(tables: &[Table], printer: &Printer) -> String {
    let mut out = Writer::new();
    for (index, table) in tables.iter().enumerate() {
        if index > 0 {
            out.line(&[]);
        }
        if tables.len() > 1 {
            out.line(&[safe(&table.title)]);
        }
        out.heads(&table.columns, printer);
        for row in &table.rows {
            out.row(&table.columns, row, printer);
        }
    }
    out.text()
}

/// The names of the columns, with their units.
fn head(columns: &[Column], printer: &Printer) -> Vec<String> {
    let mut names = Vec::new();
    for Column { label, holds } in columns {
        let with_unit = |name: String, unit| match printer.numbers.sign(unit) {
            "" => name,
            sign => format!("{name} ({sign})"),
        };
        match holds {
            Holds::Text => names.push(label.clone()),
            Holds::Value(unit) => names.push(with_unit(label.clone(), *unit)),
            Holds::Band(unit) => {
                for key in ["csv.least", "csv.expected", "csv.most"] {
                    let name = printer.text(&say(key).text("what", label.clone()));
                    names.push(with_unit(name, *unit));
                }
            }
        }
    }
    names.iter().map(|name| safe(name)).collect()
}

fn printed(column: &Column, cell: &Cell, printer: &Printer) -> Vec<String> {
    let plain = |value, unit| printer.numbers.plain(Measure::new(value, unit));
    match (column.holds, cell) {
        (Holds::Band(unit), Cell::Band(Band { low, nominal, high })) => {
            [*low, *nominal, *high].map(|value| plain(value, unit)).to_vec()
        }
        (Holds::Band(_), _) => vec![String::new(); 3],
        (_, Cell::Text(text)) => vec![safe(text)],
        (_, Cell::Value(measure)) => vec![printer.numbers.plain(*measure)],
        (_, Cell::Empty | Cell::Band(_)) => vec![String::new()],
    }
}

/// A text that no spreadsheet takes for a formula; the rule is the OWASP Foundation's (CSV injection).
#[must_use]
pub fn safe(text: &str) -> String {
    let starts = |sign: char| text.trim_start_matches([' ', '\u{a0}']).starts_with(sign);
    match ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'].into_iter().any(starts)
    {
        true => format!("'{text}"),
        false => text.to_owned(),
    }
}

/// Rows to text, one after the other.
#[derive(Debug)]
pub struct Writer {
    rules: csv_core::Writer,
    text: String,
}

impl Default for Writer {
    fn default() -> Self {
        Self::new()
    }
}

impl Writer {
    /// An empty text.
    #[must_use]
    pub fn new() -> Self {
        let mut rules = csv_core::WriterBuilder::new();
        let rules = rules.terminator(csv_core::Terminator::CRLF).build();
        Self { rules, text: UTF8_MARK.to_string() }
    }
    /// The names of columns.
    pub fn heads(&mut self, columns: &[Column], printer: &Printer) {
        self.line(&head(columns, printer));
    }
    /// A row below these columns.
    pub fn row(&mut self, columns: &[Column], row: &[Cell], printer: &Printer) {
        let cells = columns.iter().zip(row);
        let printed: Vec<String> =
            cells.flat_map(|(column, cell)| printed(column, cell, printer)).collect();
        self.line(&printed);
    }
    /// Cells as they are: numbers may begin with a minus. The library's core says which need quotes; its
    /// own writer would add 28 kB to the module.
    fn line(&mut self, cells: &[String]) {
        for (index, cell) in cells.iter().enumerate() {
            if index > 0 {
                self.text.push(',');
            }
            if self.rules.should_quote(cell.as_bytes()) {
                self.text.push('"');
                self.text.push_str(&cell.replace('"', "\"\""));
                self.text.push('"');
            } else {
                self.text.push_str(cell);
            }
        }
        self.text.push_str("\r\n");
    }
    /// All of it.
    #[must_use]
    pub fn text(self) -> String {
        self.text
    }
    /// What has been written so far.
    #[must_use]
    pub fn so_far(&self) -> &str {
        &self.text
    }
}
