//! A table over as many pages as it needs, its heads on each.

use super::document::{Document, Type, broken};
use super::letters::Letters;
use super::notes::{GREY, HAIR, hair, plain};
use crate::drawing::Anchor;
use crate::view::Printer;
use crate::view::csv::{Cell, Column, Table};
use pdf_writer::types::StructRole;

/// Size of letters.
const LETTER: f64 = 2.9;
/// From one row to the next.
const ROW: f64 = 5.2;
/// Between two columns.
const GAP: f64 = 3.0;
/// From one line of a head to the next.
const LINE: f64 = 3.8;

/// What a cell says, in the reader's numbers.
fn said(column: &Column, cell: &Cell, printer: &Printer) -> String {
    match (cell, column.band_unit()) {
        (Cell::Text(text), _) => text.clone(),
        (Cell::Value(measure), _) => printer.numbers.print(*measure),
        (Cell::Band(band), Some(unit)) => printer.numbers.band(*band, unit),
        (Cell::Empty | Cell::Band(_), _) => String::new(),
    }
}

/// A table laid out.
pub(super) struct Laid {
    heads: Vec<Vec<String>>,
    rows: Vec<Vec<String>>,
    widths: Vec<f64>,
}

impl Laid {
    /// Columns as wide as what stands in them; what is left of the width goes to all of them alike.
    pub fn of(table: &Table, printer: &Printer, wide: f64) -> Self {
        let rows: Vec<Vec<String>> = table
            .rows
            .iter()
            .map(|row| {
                let cells = table.columns.iter().zip(row);
                cells.map(|(column, cell)| said(column, cell, printer)).collect()
            })
            .collect();
        let width = |text: &str| Letters::of(text).width(LETTER);
        let needs = |at: usize| {
            let cells = rows.iter().filter_map(|row| row.get(at)).map(|text| width(text));
            let words = table.columns.get(at).into_iter().flat_map(|one| one.label().split(' '));
            cells.chain(words.map(width)).fold(0.0, f64::max) + GAP
        };
        let needed: Vec<f64> = (0..table.columns.len()).map(needs).collect();
        let spare = (wide - needed.iter().sum::<f64>()).max(0.0) / needed.len().max(1) as f64;
        let widths: Vec<f64> = needed.iter().map(|need| need + spare).collect();
        let heads = table.columns.iter().zip(&widths);
        let heads = heads.map(|(one, wide)| broken(one.label(), wide - GAP, LETTER)).collect();
        Self { heads, rows, widths }
    }

    /// Draws from a place down; `turn` begins another page and says where to go on.
    pub fn draw(
        &self,
        document: &mut Document,
        (x, y): (f64, f64),
        low: f64,
        turn: impl Fn(&mut Document) -> f64,
    ) -> f64 {
        let mut y = y;
        let mut rows = self.rows.as_slice();
        let wide: f64 = self.widths.iter().sum();
        while !rows.is_empty() {
            document.part(StructRole::Table, |document| {
                let lines = self.heads.iter().map(Vec::len).max().unwrap_or_default();
                document.part(StructRole::TR, |document| self.head(document, (x, y)));
                y += lines as f64 * LINE;
                document.lines(hair(GREY), &[[x, y - LINE / 2.0, x + wide, y - LINE / 2.0]]);
                y += ROW / 2.0;
                let fits = (((low - y) / ROW).floor().max(1.0) as usize).min(rows.len());
                let (now, later) = rows.split_at(fits);
                for row in now {
                    self.row(document, (x, y), row);
                    y += ROW;
                }
                rows = later;
            });
            if !rows.is_empty() {
                y = turn(document);
            }
        }
        y
    }

    fn head(&self, document: &mut Document, (x, y): (f64, f64)) {
        let mut left = x;
        for (lines, wide) in self.heads.iter().zip(&self.widths) {
            left += wide;
            document.part(StructRole::TH, |document| {
                for (at, line) in lines.iter().enumerate() {
                    let style = Type { anchor: Anchor::End, colour: GREY, ..plain(LETTER) };
                    document.words(style, (left - GAP, y + at as f64 * LINE), line);
                }
            });
        }
    }

    fn row(&self, document: &mut Document, (x, y): (f64, f64), row: &[String]) {
        document.part(StructRole::TR, |document| {
            let mut right = x;
            for (text, wide) in row.iter().zip(&self.widths) {
                right += wide;
                document.part(StructRole::TD, |document| {
                    let style = Type { anchor: Anchor::End, ..plain(LETTER) };
                    document.words(style, (right - GAP, y), text);
                });
            }
        });
        let wide: f64 = self.widths.iter().sum();
        let below = y + ROW * 0.3 + HAIR;
        document.lines(hair([0.85, 0.85, 0.85]), &[[x, below, x + wide, below]]);
    }
}
