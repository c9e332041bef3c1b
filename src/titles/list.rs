//! A list as it comes: bytes to text, and the separator between its columns.

use super::heads::Heads;
use crate::draft::FieldError;
use crate::words::say;
use csv::{ReaderBuilder, StringRecord};

/// What separates columns, in the order in which they are tried.
const SEPARATORS: [u8; 3] = *b",;\t";

/// A list whose heads have been understood.
#[derive(Debug, Clone)]
pub struct List {
    text: String,
    separator: u8,
    pub(super) heads: Heads,
}

impl List {
    /// Reads the heads of a list.
    ///
    /// # Errors
    /// It is no text, has no rows, or its heads lack what every book needs.
    pub fn read(bytes: &[u8]) -> Result<Self, Vec<FieldError>> {
        let text = decoded(bytes);
        if text.trim().is_empty() {
            return Err(vec![FieldError::repaired("", "", say("titles.empty"))]);
        }
        if text.contains('\0') {
            return Err(vec![FieldError::repaired("", "", say("titles.no-text"))]);
        }
        let known = |separator: u8| {
            let mut first = StringRecord::new();
            let mut reader = ReaderBuilder::new();
            reader.delimiter(separator).has_headers(false).flexible(true);
            // Reading text in memory does not fail.
            let _ = reader.from_reader(text.as_bytes()).read_record(&mut first);
            (separator, Heads::of(first.iter()))
        };
        let mut best: Option<(u8, Heads)> = None;
        for (separator, heads) in SEPARATORS.map(known) {
            let better = |other: &Heads| {
                (heads.columns.len(), heads.count) > (other.columns.len(), other.count)
            };
            if best.as_ref().is_none_or(|(_, other)| better(other)) {
                best = Some((separator, heads));
            }
        }
        let (separator, heads) = best.unwrap_or_default();
        match heads.fault() {
            Some(fault) => Err(vec![fault]),
            None => Ok(Self { text, separator, heads }),
        }
    }

    /// Heads that no field has, as they stand: their columns are not read.
    #[must_use]
    pub fn ignored(&self) -> &[String] {
        &self.heads.ignored
    }

    /// How many bytes of text there are.
    #[must_use]
    pub fn length(&self) -> usize {
        self.text.len()
    }

    /// Hands over row after row behind a place, or below the heads, each with where it begins, as long as
    /// `each` says to go on.
    pub(super) fn rows(
        &self,
        behind: Option<Place>,
        mut each: impl FnMut(Place, &StringRecord) -> bool,
    ) {
        let from = behind.unwrap_or_default();
        let text = self.text.as_bytes().get(from.byte..).unwrap_or_default();
        let mut builder = ReaderBuilder::new();
        // What stands first has been read: the heads, or the row at the place.
        builder.delimiter(self.separator).flexible(true).has_headers(true);
        let mut reader = builder.from_reader(text);
        let mut row = StringRecord::new();
        let mut lines = Lines { text, at: 0, line: from.line };
        while let Ok(true) = reader.read_record(&mut row) {
            let begins = row.position().map_or(0, csv::Position::byte);
            let begins = usize::try_from(begins).unwrap_or(usize::MAX);
            let line = lines.at(begins);
            // Where its first letter stands, not the rest of the line before.
            let place = Place { byte: from.byte.saturating_add(lines.at), line };
            if !each(place, &row) {
                return;
            }
        }
    }

    /// The row that begins at a place.
    pub(super) fn row(&self, at: Place) -> StringRecord {
        let text = self.text.as_bytes().get(at.byte..).unwrap_or_default();
        let mut builder = ReaderBuilder::new();
        builder.delimiter(self.separator).flexible(true).has_headers(false);
        let mut row = StringRecord::new();
        // Reading text in memory does not fail.
        let _ = builder.from_reader(text).read_record(&mut row);
        row
    }
}

/// Where a row begins.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Place {
    /// The byte of the text.
    pub byte: usize,
    /// The line, as editors count.
    pub line: u64,
}

impl Default for Place {
    /// The top of the list.
    fn default() -> Self {
        Self { byte: 0, line: 1 }
    }
}

/// Counts lines as editors show them; the reader's own count is one short after CR LF.
struct Lines<'a> {
    text: &'a [u8],
    at: usize,
    line: u64,
}

impl Lines<'_> {
    /// The line of the first letter from here on. Asked in rising order.
    fn at(&mut self, byte: usize) -> u64 {
        while let Some(letter) = self.text.get(self.at) {
            if self.at >= byte && !matches!(letter, b'\r' | b'\n') {
                break;
            }
            let pair = *letter == b'\r' && self.text.get(self.at + 1) == Some(&b'\n');
            if !pair && matches!(letter, b'\r' | b'\n') {
                self.line += 1;
            }
            self.at += 1;
        }
        self.line
    }
}

/// Text from bytes as spreadsheets save them: UTF-8 with or without its mark, UTF-16 with its mark,
/// else Latin-1, in which every byte is a letter.
fn decoded(bytes: &[u8]) -> String {
    let wide = |bytes: &[u8], order: fn([u8; 2]) -> u16| {
        let (pairs, _) = bytes.as_chunks::<2>();
        String::from_utf16_lossy(&pairs.iter().map(|pair| order(*pair)).collect::<Vec<_>>())
    };
    match bytes {
        [0xff, 0xfe, rest @ ..] => wide(rest, u16::from_le_bytes),
        [0xfe, 0xff, rest @ ..] => wide(rest, u16::from_be_bytes),
        _ => match core::str::from_utf8(bytes) {
            Ok(text) => text.trim_start_matches('\u{feff}').to_owned(),
            Err(_) => bytes.iter().copied().map(char::from).collect(),
        },
    }
}
