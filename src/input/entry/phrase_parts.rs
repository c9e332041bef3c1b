//! One piece of a line, cut greedily into parts that the fields' readers know.

use super::number::Style;
use super::pages::is_page_word;
use super::paper_read::{is_paper, paper};
use super::paper_words::describes;
use super::phrase_whole::{Piece, whole};
use super::size::is_size;
use super::text::{Line, Token};
use super::{LengthUnit, Reading, copies, pages};
use crate::paper::{Stock, Thickness, grammage};

/// More pieces than this belong to no one part.
const LONGEST: usize = 14;
/// More pieces than this are no order.
const MOST_TOKENS: usize = 60;
/// Words that say cover.
const COVER: [&str; 5] = ["cover", "cov", "cvr", "covers", "umschlag"];
/// Words between parts that say nothing.
const IGNORED: [&str; 27] = [
    "and", "on", "with", "of", "in", "the", "a", "an", "at", "for", "inside", "paper", "please",
    "und", "auf", "mit", "von", "im", "der", "die", "das", "ein", "eine", "für", "innen", "inhalt",
    "bitte",
];

/// Words for what is made: nothing that is planned depends on them.
const PRODUCTS: [&str; 24] = [
    "book",
    "booklet",
    "brochure",
    "magazine",
    "manual",
    "programme",
    "program",
    "catalogue",
    "catalog",
    "newsletter",
    "guide",
    "copy",
    "job",
    "stitched",
    "buch",
    "heft",
    "broschüre",
    "magazin",
    "zeitschrift",
    "handbuch",
    "programm",
    "katalog",
    "auftrag",
    "geheftet",
];

/// A part of a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Part {
    /// A page count with its word.
    Pages(String),
    /// A size.
    Size(String),
    /// Copies with their word.
    Copies(String),
    /// A paper: `cover` if said to be the cover's, `more` if it may belong to the paper before.
    Paper { text: String, cover: bool, more: bool },
    /// A whole number without a word.
    Number(String),
    /// Words not understood; `describes` if they all describe a paper.
    Words { text: String, describes: bool },
}

/// Whether two texts together are one.
pub(super) mod joins {
    use super::{Line, Style, is_pages, is_size};

    /// A page count and more of it, such as "plus cover".
    pub(in super::super) fn pages(before: &str, more: &str) -> bool {
        is_pages(&format!("{before} {more}"))
    }
    /// A size and more of it, such as "landscape".
    pub(in super::super) fn size(before: &str, more: &str) -> bool {
        is_size(Line::cut(format!("{before} {more}"), Style::Measured).tokens())
    }
}

fn counted(text: &str) -> Line {
    Line::cut(text.to_owned(), Style::Counted)
}

fn is_pages(text: &str) -> bool {
    pages::written(counted(text).tokens()).is_some_and(|written| written.is_complete())
}

fn is_copies(text: &str) -> bool {
    copies::written(counted(text).tokens()).is_some_and(|written| written.named)
}

/// Cuts one piece up, longest parts first, from the left.
pub(super) fn cut(line: &Line, unit: LengthUnit) -> Vec<Part> {
    let cutter = Cutter { line, unit };
    let pieces = cutter.pieces();
    let papers = pieces.iter().filter(|piece| matches!(piece.part, Part::Paper { .. })).count();
    let words = pieces.iter().filter(|piece| matches!(piece.part, Part::Words { .. })).count();
    // One paper and names around it: the names are the paper's.
    if papers == 1 && words > 0 && papers + words == pieces.len() {
        let all = line.tokens().len();
        let named = paper(line.span(0, all), unit);
        if matches!(named, Reading::Understood(..) | Reading::Ask(_)) {
            return vec![cutter.paper(0, all, false)];
        }
    }
    whole(line, pieces)
}

struct Cutter<'a> {
    line: &'a Line,
    unit: LengthUnit,
}

impl Cutter<'_> {
    fn token(&self, index: usize) -> Option<&Token> {
        self.line.tokens().get(index)
    }

    fn pieces(&self) -> Vec<Piece> {
        let count = self.line.tokens().len();
        let mut pieces: Vec<Piece> = Vec::new();
        let (mut from, mut loose) = (0, 0);
        while from < count.min(MOST_TOKENS) {
            let longest = (from + LONGEST).min(count);
            let before = pieces.last().map(|piece| &piece.part);
            let found = (from + 1..=longest).rev().find_map(|end| self.part(from, end, before));
            match found {
                Some((part, to)) => {
                    self.leave(loose, from, &mut pieces);
                    pieces.push(Piece { from, to, part });
                    from = to;
                    loose = to;
                }
                None => from += 1,
            }
        }
        self.leave(loose, count, &mut pieces);
        pieces
    }

    /// The part that a span is, and where it ends; `before` is the part before it.
    fn part(&self, from: usize, to: usize, before: Option<&Part>) -> Option<(Part, usize)> {
        let text = self.line.span(from, to);
        let line = Line::cut(text.to_owned(), Style::Measured);
        if is_pages(text) {
            return Some((Part::Pages(text.to_owned()), to));
        }
        // More about the page count, wherever it stands.
        if self.token(from).is_some_and(|token| token.is("self")) && self.is_cover(Some(from + 1)) {
            return Some((Part::Words { text: text.to_owned(), describes: false }, from + 1 + 1))
                .filter(|(_, end)| *end == to);
        }
        if is_copies(text) {
            return Some((Part::Copies(text.to_owned()), to));
        }
        // "500 x 24pp" is copies of a page count.
        if is_size(line.tokens()) && !self.token(to).is_some_and(is_page_word) {
            return Some((Part::Size(text.to_owned()), to));
        }
        let edges = [Some(from), to.checked_sub(1)];
        if edges.into_iter().any(|edge| self.is_ignored(edge)) || !is_paper(&line, self.unit) {
            return None;
        }
        let mut to = if self.cover_follows(from, to) { to - 1 } else { to };
        // "with" stands between the two.
        while to > from + 1 && self.is_ignored(to.checked_sub(1)) {
            to -= 1;
        }
        let after_paper = matches!(before, Some(Part::Paper { .. }));
        Some((self.paper(from, to, after_paper), to))
    }

    /// Whether no part begins or ends with this piece.
    fn is_ignored(&self, index: Option<usize>) -> bool {
        match index.and_then(|index| self.token(index)) {
            Some(Token::Word(word)) => IGNORED.contains(&word.as_str()),
            Some(Token::Sign(sign)) => !matches!(sign, '#' | ')' | '"' | '%'),
            _ => false,
        }
    }

    fn is_cover(&self, index: Option<usize>) -> bool {
        let word = index.and_then(|index| self.token(index)).and_then(Token::word);
        word.is_some_and(|word| COVER.contains(&word))
    }

    /// "130 silk cover 250 silk": the word before the second paper belongs to that one, unless the
    /// first is the heavier.
    fn cover_follows(&self, from: usize, to: usize) -> bool {
        if !self.is_cover(to.checked_sub(1)) || to < from + 1 + 1 {
            return false;
        }
        let weigh = |text: &str| {
            let stock = paper(text, self.unit).value()?;
            grammage(&stock).map(|band| band.nominal)
        };
        let count = self.line.tokens().len().min(to + LONGEST);
        let second = (to + 1..=count)
            .rev()
            .map(|end| self.line.span(to, end))
            .find(|text| is_paper(&Line::cut((*text).to_owned(), Style::Measured), self.unit));
        let (first, second) = (weigh(self.line.span(from, to - 1)), second.and_then(weigh));
        first.zip(second).is_some_and(|(first, second)| first <= second)
    }

    /// A paper from one piece up to another; "cover" at its beginning, or before it and not another
    /// paper's, makes it the cover's, and is left off where the rest can be read alone.
    fn paper(&self, from: usize, to: usize, after_paper: bool) -> Part {
        let text = self.line.span(from, to);
        // "self cover" is about the pages: the paper behind it is the inside's.
        let own = |at: &usize| {
            let before = at.checked_sub(1).and_then(|index| self.token(index));
            before.is_some_and(|token| token.is("self"))
        };
        let before = from.checked_sub(1).filter(|at| !after_paper && !own(at));
        let cover = self.is_cover(Some(from)) || self.is_cover(before);
        let skip = |index: usize| {
            let sign = matches!(self.token(index), Some(Token::Sign(':' | '=')));
            self.is_cover(Some(index)) || sign
        };
        let bare =
            (from..to).find(|index| !skip(*index)).map_or("", |start| self.line.span(start, to));
        let alone = matches!(paper(bare, self.unit), Reading::Understood(..));
        let text = if cover && alone { bare } else { text };
        let stock = paper(text, self.unit).value();
        let more = !cover && stock.is_some_and(|stock| only_thickness(&stock, self.line));
        Part::Paper { text: text.to_owned(), cover, more }
    }

    /// Pieces between two parts: numbers by themselves, and words that nobody understood.
    fn leave(&self, from: usize, to: usize, pieces: &mut Vec<Piece>) {
        let mut index = from;
        while index < to {
            let number = |index: &usize| matches!(self.token(*index), Some(Token::Number(_)));
            let run = (index..to).take_while(number).count();
            if run > 0 {
                self.numbers(index, index + run, pieces);
                index += run;
                continue;
            }
            let run = (index..to).take_while(|index| !number(index)).count();
            self.words(index, index + run, pieces);
            index += run.max(1);
        }
    }

    /// "12 000" is one number, "64 750" at the beginning of a line is two.
    fn numbers(&self, from: usize, to: usize, pieces: &mut Vec<Piece>) {
        let number = |from: usize, to: usize| Piece {
            from,
            to,
            part: Part::Number(self.line.span(from, to).to_owned()),
        };
        let split = from == 0 && !self.line.span(from + 1, to).starts_with('0');
        if counted(self.line.span(from, to)).tokens().len() == 1 && !split {
            pieces.push(number(from, to));
        } else {
            pieces.extend((from..to).map(|at| number(at, at + 1)));
        }
    }

    fn words(&self, from: usize, to: usize, pieces: &mut Vec<Piece>) {
        let says = |index: &usize| match self.token(*index) {
            Some(Token::Word(word)) => {
                !IGNORED.contains(&word.as_str()) && !PRODUCTS.contains(&word.as_str())
            }
            Some(Token::Sign(sign)) => {
                !matches!(sign, ':' | '.' | ',' | '/' | '-' | '(' | ')' | '=' | '×')
            }
            _ => true,
        };
        let Some(first) = (from..to).find(says) else { return };
        // "and", "with" add nothing, unless more of the page count follows: "with cover".
        let start = if self.is_cover(Some(first)) { from } else { first };
        let said = self.line.tokens().get(first..to).unwrap_or_default();
        let describes = said.iter().all(|token| token.word().is_some_and(describes));
        let text = self.line.span(start, to).to_owned();
        pieces.push(Piece { from: start, to, part: Part::Words { text, describes } });
    }
}

/// A thickness without weight, kind or points: more about the paper before it.
fn only_thickness(stock: &Stock, line: &Line) -> bool {
    let points = line.tokens().iter().any(|token| token.is("pt") || token.is("point"));
    stock.weight.is_none()
        && stock.kind.id == crate::data::UNSAID.id
        && stock.thickness != Thickness::FromKind
        && !points
}
