//! One line that says the whole job, cut up for the fields: "64pp A5, 100# text, 750".

use super::LengthUnit;
use super::number::Style;
use super::phrase_parts::{Part, cut, joins};
use super::text::{Line, Token, quoted, tidy};

/// Longer lines are no order.
const MOST_CHARACTERS: usize = 400;

/// A line cut up: texts for the fields, which their own readers then read.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Phrase {
    /// Field and text, at most one each of "pages", "size", "paper", "cover", "copies".
    pub fields: Vec<(&'static str, String)>,
    /// What has no place in these fields, as typed.
    pub rest: Vec<String>,
}

impl Phrase {
    /// Somebody has begun to say a book: a field is filled, or a number stands in what is left.
    #[must_use]
    pub fn speaks(&self) -> bool {
        let number = |text: &String| text.contains(|letter: char| letter.is_ascii_digit());
        !self.fields.is_empty() || self.rest.iter().any(number)
    }
}

/// Cuts one line into texts for the fields, with or without commas between them. Decimal commas and
/// thousands stay: a comma separates unless it stands between two digits without a space. A number or
/// size that is understood in part fills no field: "1e308" and "5x5 m" are left.
///
/// ```
/// use quirefit_input::entry::{self, LengthUnit};
/// let phrase = entry::phrase("64pp A5, 100# text, 750", LengthUnit::Millimetre);
/// let fields: Vec<(&str, &str)> =
///     phrase.fields.iter().map(|(field, text)| (*field, text.as_str())).collect();
/// assert_eq!(
///     fields,
///     [("pages", "64pp"), ("size", "A5"), ("paper", "100# text"), ("copies", "750")],
/// );
/// ```
#[must_use]
pub fn phrase(text: &str, default_unit: LengthUnit) -> Phrase {
    if text.chars().count() > MOST_CHARACTERS {
        return Phrase { fields: Vec::new(), rest: vec![quoted(text)] };
    }
    let mut found = Found::default();
    for piece in pieces(text) {
        let line = Line::cut(tidy(&piece), Style::Measured);
        let parts = cut(&line, default_unit);
        parts.into_iter().for_each(|part| found.take(part));
    }
    found.settle()
}

/// Cuts at semicolons, line ends, and commas that are neither decimal nor for thousands.
fn pieces(text: &str) -> Vec<String> {
    let letters: Vec<char> = text.chars().collect();
    let mut pieces = vec![String::new()];
    for (index, letter) in letters.iter().enumerate() {
        let run = letters.iter().take(index).rev().skip_while(|before| before.is_ascii_digit());
        let before = index.checked_sub(1).and_then(|before| letters.get(before));
        let after = letters.get(index + 1).is_some_and(char::is_ascii_digit);
        // "A5,750": the digits before belong to a word.
        let number = before.is_some_and(char::is_ascii_digit)
            && !run.clone().next().is_some_and(|letter| letter.is_alphabetic());
        let cuts = match letter {
            ';' | '\n' | '\r' => true,
            ',' => !((number || before.is_none_or(|before| *before == ' ')) && after),
            _ => false,
        };
        if cuts {
            pieces.push(String::new());
        } else if let Some(last) = pieces.last_mut() {
            last.push(*letter);
        }
    }
    pieces.retain(|piece| !piece.trim().is_empty());
    pieces
}

/// Parts gathered so far.
#[derive(Default)]
struct Found {
    pages: Option<String>,
    size: Option<String>,
    copies: Option<String>,
    papers: Vec<(String, bool)>,
    /// Numbers alone, and whether each came before anything else.
    bare: Vec<(String, bool)>,
    rest: Vec<String>,
    /// The last part was a paper.
    paper_last: bool,
}

impl Found {
    fn take(&mut self, part: Part) {
        let after_paper = core::mem::take(&mut self.paper_last);
        match part {
            Part::Pages(text) => keep(&mut self.pages, text, &mut self.rest),
            Part::Size(text) => keep(&mut self.size, text, &mut self.rest),
            Part::Copies(text) => keep(&mut self.copies, text, &mut self.rest),
            Part::Paper { text, more, .. } if after_paper && more => self.more_paper(&text),
            Part::Paper { text, cover, .. } => {
                self.papers.push((text, cover));
                self.paper_last = true;
            }
            Part::Number(text) => {
                let first = self.pages.is_none() && self.size.is_none() && self.papers.is_empty();
                self.bare.push((text, first && self.bare.is_empty()));
            }
            Part::Words { text, describes } => {
                let pages = self.pages.as_mut().filter(|pages| joins::pages(pages, &text));
                let size = self.size.as_mut().filter(|size| joins::size(size, &text));
                match (pages, size) {
                    (Some(whole), _) | (None, Some(whole)) => append(whole, &text),
                    _ if describes && after_paper => self.more_paper(&text),
                    _ => self.rest.push(text),
                }
            }
        }
    }

    fn more_paper(&mut self, text: &str) {
        if let Some((whole, _)) = self.papers.last_mut() {
            append(whole, text);
        }
        self.paper_last = true;
    }

    fn settle(mut self) -> Phrase {
        self.settle_numbers();
        let mut papers = core::mem::take(&mut self.papers);
        let cover = papers.iter().position(|(_, cover)| *cover).or_else(|| {
            let named = |(text, _): &(String, bool)| says_cover(text);
            (papers.len() > 1).then(|| papers.iter().position(named).unwrap_or(1))
        });
        let cover = cover.map(|index| papers.remove(index).0);
        let mut papers = papers.into_iter().map(|(text, _)| text);
        let paper = papers.next();
        self.rest.extend(papers);
        let fields = [
            ("pages", self.pages),
            ("size", self.size),
            ("paper", paper),
            ("cover", cover),
            ("copies", self.copies),
        ];
        let fields = fields.into_iter().filter_map(|(field, text)| Some((field, text?))).collect();
        Phrase { fields, rest: self.rest }
    }

    /// Numbers alone are pages where none are named and they come first, else copies.
    fn settle_numbers(&mut self) {
        let bare = core::mem::take(&mut self.bare);
        let open = usize::from(self.copies.is_none());
        let many = bare.len() > open;
        for (text, first) in bare {
            if self.pages.is_none() && (first || many) {
                self.pages = Some(text);
            } else {
                keep(&mut self.copies, text, &mut self.rest);
            }
        }
    }
}

fn append(whole: &mut String, more: &str) {
    whole.push(' ');
    whole.push_str(more);
}

/// Keeps the first text for a field; a second one has no place.
fn keep(place: &mut Option<String>, text: String, rest: &mut Vec<String>) {
    match place {
        None => *place = Some(text),
        Some(_) => rest.push(text),
    }
}

fn says_cover(text: &str) -> bool {
    let line = Line::cut(text.to_owned(), Style::Measured);
    line.tokens().iter().filter_map(Token::word).any(|word| {
        matches!(word, "cover" | "cov" | "cvr" | "card" | "board" | "umschlag" | "karton")
    })
}
