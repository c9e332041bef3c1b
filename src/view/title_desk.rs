//! A list of titles at work: planned some rows at a time, sorted by any column, shown in parts.
//!
//! Of a row nothing is kept but where it begins and what it is sorted by; what is shown is planned once
//! more. 200,000 rows take some tens of megabytes that way, and no part of the page waits for all of them.

use super::Printer;
use super::csv::{Cell, Column};
use super::title_rows::{Answers, Tally, columns, row};
use crate::draft::{Draft, FieldError};
use crate::shop::Shop;
use crate::titles::{List, Place, Title, plan_behind, plan_row};
use crate::units::places;
use core::cmp::Ordering;

/// A list, what has been planned of it, and what is written so far.
#[derive(Debug)]
pub struct Desk {
    list: List,
    shop: Shop,
    units: String,
    answers: Answers,
    rows: Vec<Kept>,
    done: bool,
}

/// What is kept of a row.
#[derive(Debug)]
struct Kept {
    at: Place,
    keys: Box<[Key]>,
}

/// What a cell is sorted by.
#[derive(Debug, PartialEq)]
enum Key {
    Number(f64),
    Text(Box<str>),
    /// Nothing there: behind everything else, whichever way it is sorted.
    Nothing,
}

/// The order in which rows are shown: by a column, up or down; by no column as in the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Order {
    /// The column's place.
    pub column: Option<usize>,
    /// The greatest first.
    pub down: bool,
}

/// The place of the column that holds the answer: sorted by what it means, not by its words.
pub const ANSWER: usize = 2;

impl Desk {
    /// Begins with a list. `units` is what its bare lengths are counted in; what is written has this
    /// printer's words.
    ///
    /// # Errors
    /// It is no list.
    pub fn begin(
        bytes: &[u8],
        shop: Shop,
        units: &str,
        printer: &Printer,
    ) -> Result<Self, Vec<FieldError>> {
        let (list, answers) = (List::read(bytes)?, Answers::new(&shop, printer));
        Ok(Self { list, shop, units: units.to_owned(), answers, rows: Vec::new(), done: false })
    }

    /// Plans so many rows more.
    pub fn go_on(&mut self, rows: usize, printer: &Printer) {
        let behind = self.rows.last().map(|kept| kept.at);
        let (mut left, list) = (rows, &self.list);
        let (answers, kept) = (&mut self.answers, &mut self.rows);
        self.done = true;
        let done = &mut self.done;
        plan_behind(list, behind, &self.shop, &self.units, |title| {
            let cells = answers.add(title, printer);
            kept.push(Kept { at: title.place, keys: keys(title, &cells) });
            left = left.saturating_sub(1);
            *done = left > 0;
            left > 0
        });
    }

    /// Whether every row has been planned.
    #[must_use]
    pub const fn done(&self) -> bool {
        self.done
    }

    /// The part of the list that has been planned, from 0 to 1.
    #[must_use]
    pub fn share(&self) -> f64 {
        let at = self.rows.last().map_or(0, |kept| kept.at.byte);
        if self.done { 1.0 } else { at as f64 / self.list.length().max(1) as f64 }
    }

    /// How many rows there are so far.
    #[must_use]
    pub const fn tally(&self) -> Tally {
        self.answers.tally()
    }

    /// Heads that no field has, as they stand.
    #[must_use]
    pub fn ignored(&self) -> &[String] {
        self.list.ignored()
    }

    /// The columns, in this printer's words.
    #[must_use]
    pub fn columns(&self, printer: &Printer) -> Vec<Column> {
        columns(&self.shop, printer)
    }

    /// Some of the rows in an order, each with its number in the list, from 0.
    #[must_use]
    pub fn part(
        &self,
        order: Order,
        from: usize,
        count: usize,
        printer: &Printer,
    ) -> Vec<(usize, Vec<Cell>)> {
        let wanted = places(self.rows.len(), &|one, other| {
            let Some(column) = order.column else { return Ordering::Equal };
            let key = |row: usize| self.rows.get(row).and_then(|kept| kept.keys.get(column));
            compare(key(one), key(other), order.down)
        });
        let wanted = wanted.into_iter().skip(from).take(count);
        let planned = wanted.filter_map(|number| {
            let at = self.rows.get(number)?.at;
            let look = |title: &Title| row(title, printer);
            Some((number, plan_row(&self.list, at, &self.shop, &self.units, look)?))
        });
        planned.collect()
    }

    /// A row as a job, as it was typed.
    #[must_use]
    pub fn job(&self, number: usize) -> Option<Draft> {
        let at = self.rows.get(number)?.at;
        plan_row(&self.list, at, &self.shop, &self.units, |title| title.draft.clone())
    }

    /// What has been planned so far as CSV, in the order of the list.
    #[must_use]
    pub fn csv(&self) -> &str {
        self.answers.so_far()
    }
}

fn keys(title: &Title, cells: &[Cell]) -> Box<[Key]> {
    let answer = match &title.answer {
        Ok(planned) => f64::from(planned.plan.verdict as u8),
        Err(_) => f64::INFINITY,
    };
    let key = |(column, cell): (usize, &Cell)| match cell {
        _ if column == ANSWER => Key::Number(answer),
        Cell::Value(measure) => Key::Number(measure.value),
        Cell::Band(band) => Key::Number(band.nominal),
        Cell::Text(text) if !text.is_empty() => Key::Text(text.as_str().into()),
        Cell::Text(_) | Cell::Empty => Key::Nothing,
    };
    cells.iter().enumerate().map(key).collect()
}

fn compare(one: Option<&Key>, other: Option<&Key>, down: bool) -> Ordering {
    let turned = |order: Ordering| if down { order.reverse() } else { order };
    match (one, other) {
        (Some(Key::Number(one)), Some(Key::Number(other))) => turned(one.total_cmp(other)),
        (Some(Key::Text(one)), Some(Key::Text(other))) => {
            turned(one.to_lowercase().cmp(&other.to_lowercase()))
        }
        (Some(Key::Number(_)), Some(Key::Text(_))) => Ordering::Less,
        (Some(Key::Text(_)), Some(Key::Number(_))) => Ordering::Greater,
        (Some(Key::Nothing) | None, Some(Key::Nothing) | None) => Ordering::Equal,
        (Some(Key::Nothing) | None, _) => Ordering::Greater,
        (_, Some(Key::Nothing) | None) => Ordering::Less,
    }
}
