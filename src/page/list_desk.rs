//! A list of titles in the module: what the script asks of it beside the page, in texts.

use super::Json;
use super::helper::shop_of;
use crate::draft::{FieldError, to_tree};
use crate::entry::LengthUnit;
use crate::job;
use crate::view::html::{file_faults, titles};
use crate::view::title_desk::{Desk, Order};
use crate::view::{Numbers, Printer};
use crate::words::{Files, Language, Words, say};

/// One list at work.
#[derive(Debug)]
pub struct ListDesk {
    desk: Desk,
    files: Files,
    json: Json,
    words: Words,
    numbers: Numbers,
}

impl ListDesk {
    /// Begins with a list as its file holds it, for whoever reads in a language and counts bare lengths in
    /// a unit; in a shop by its file's text, or the demo shop where that is empty.
    ///
    /// # Errors
    /// What is wrong with the list, as HTML.
    pub fn begin(
        (files, json): (Files, Json),
        (language, units): (&str, &str),
        shop: &str,
        bytes: &[u8],
    ) -> Result<Self, String> {
        let (words, numbers) = spoken(&files, language, units);
        let printer = Printer { words: &words, numbers };
        let told = |errors: Vec<FieldError>| file_faults(&errors, &printer).into_string();
        // The page has read it before.
        let unread = || told(vec![FieldError::repaired("", "", say("file.not-read"))]);
        let shop = shop_of(shop, json).ok_or_else(unread)?;
        let desk = Desk::begin(bytes, shop, units, &printer).map_err(told)?;
        Ok(Self { desk, files, json, words, numbers })
    }

    /// Plans so many rows more and says how far it is: hundredths, rows, rows that cannot be read, and
    /// whether that was all of them.
    pub fn go_on(&mut self, rows: u32) -> String {
        let printer = Printer { words: &self.words, numbers: self.numbers };
        self.desk.go_on(rows as usize, &printer);
        let tally = self.desk.tally();
        let share = (self.desk.share() * 100.0).floor();
        let done = if self.desk.done() { "done" } else { "more" };
        format!("{share} {} {} {done}", tally.rows, tally.unread)
    }

    /// A part of the table as HTML: by which column ("-" for the list's own order), "up" or "down", from
    /// which row on.
    #[must_use]
    pub fn table(&self, (language, units): (&str, &str), wanted: &str) -> String {
        let (words, numbers) = spoken(&self.files, language, units);
        let (order, from) = wanted_of(wanted);
        titles::table(&self.desk, order, from, &Printer { words: &words, numbers }).into_string()
    }

    /// What has been planned, as CSV.
    #[must_use]
    pub fn csv(&self) -> String {
        self.desk.csv().to_owned()
    }

    /// A row as a job file's text; empty where there is no such row.
    #[must_use]
    pub fn job(&self, number: &str) -> String {
        let draft = number.parse().ok().and_then(|number| self.desk.job(number));
        draft.map(|draft| (self.json.print)(&to_tree(&draft, &job::SCHEMA))).unwrap_or_default()
    }
}

fn spoken(files: &Files, language: &str, units: &str) -> (Words, Numbers) {
    let language = Language::of(language).unwrap_or_else(Language::first);
    (language.words(files), Numbers { unit: LengthUnit::of(units), mark: language.mark })
}

/// What part of a table is wanted, as a text.
pub(super) fn wanted(order: Order, from: usize) -> String {
    let column = order.column.map_or("-".to_owned(), |column| column.to_string());
    format!("{column} {} {from}", if order.down { "down" } else { "up" })
}

fn wanted_of(text: &str) -> (Order, usize) {
    let mut parts = text.split(' ');
    let column = parts.next().and_then(|part| part.parse().ok());
    let down = parts.next() == Some("down");
    let from = parts.next().and_then(|part| part.parse().ok()).unwrap_or_default();
    (Order { column, down }, from)
}
