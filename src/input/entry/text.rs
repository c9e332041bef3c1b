//! A typed text cut into numbers, words and signs, which all readers work on.

use super::Reading;
use super::number::{Number, Style, is_vulgar, scan};
use crate::units::Measure;
use crate::words::say;

/// Longer texts are not a field's.
const MOST_CHARACTERS: usize = 200;
/// As much of a text as a message repeats.
const QUOTED_CHARACTERS: usize = 40;
/// Words after which an x is the sign between two sides, not a letter: "170mmx240mm".
const BEFORE_TIMES: [&str; 5] = ["mm", "cm", "in", "inch", "inches"];

/// A piece of a text.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Token {
    /// A number.
    Number(Number),
    /// A word in lower case; digits and a slash may stand inside, as in "a5" or "g/m²".
    Word(String),
    /// Any other character; × for all signs of multiplication, " for inches.
    Sign(char),
    /// Digits that make no number.
    Bad,
}

impl Token {
    /// The word, if it is one.
    pub(super) fn word(&self) -> Option<&str> {
        match self {
            Self::Word(word) => Some(word),
            _ => None,
        }
    }
    /// Whether it is this very word.
    pub(super) fn is(&self, word: &str) -> bool {
        self.word() == Some(word)
    }
}

/// Why a text cannot even be cut up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unreadable {
    /// Nothing stands there.
    Empty,
    /// It is far too long.
    Long,
}

impl<T> From<Unreadable> for Reading<T> {
    fn from(unreadable: Unreadable) -> Self {
        match unreadable {
            Unreadable::Empty => Self::Incomplete,
            Unreadable::Long => {
                let most = Measure::count(MOST_CHARACTERS as u32);
                Self::wrong(say("entry.long"), say("entry.long.repair").put("most", most))
            }
        }
    }
}

/// One text with its pieces and where each stands in it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Line {
    text: String,
    tokens: Vec<Token>,
    ends: Vec<(usize, usize)>,
}

impl Line {
    /// Cuts a text up.
    pub(super) fn of(text: &str, style: Style) -> Result<Self, Unreadable> {
        if text.len() > MOST_CHARACTERS && text.chars().count() > MOST_CHARACTERS {
            return Err(Unreadable::Long);
        }
        let line = Self::cut(tidy(text), style);
        if line.tokens.is_empty() { Err(Unreadable::Empty) } else { Ok(line) }
    }

    /// Cuts a tidied text of any length up.
    pub(super) fn cut(text: String, style: Style) -> Self {
        let (mut tokens, mut ends) = (Vec::new(), Vec::new());
        let mut rest = text.as_str();
        while let Some(first) = rest.chars().next() {
            let (token, after) = next(first, rest, style);
            let skip = match &token {
                Token::Sign(' ') => true,
                // A plus before the first number; a hyphen before a word: "+4", "self-cover".
                Token::Sign('+') => tokens.is_empty() && starts_number(after),
                // The point of an abbreviation: "64 pp."
                Token::Sign('.') => matches!(tokens.last(), Some(Token::Word(_))),
                Token::Sign('-') => after.starts_with(char::is_alphabetic) && !tokens.is_empty(),
                _ => false,
            };
            if !skip {
                tokens.push(token);
                ends.push((text.len() - rest.len(), text.len() - after.len()));
            }
            rest = after;
        }
        Self { text, tokens, ends }
    }

    /// The pieces.
    pub(super) fn tokens(&self) -> &[Token] {
        &self.tokens
    }

    /// Whether a piece stands right behind the one before it, without a space.
    pub(super) fn touches(&self, index: usize) -> bool {
        let before = index.checked_sub(1).and_then(|before| self.ends.get(before));
        before.zip(self.ends.get(index)).is_some_and(|((_, end), (start, _))| end == start)
    }

    /// The text of the pieces from one up to, not with, another.
    pub(super) fn span(&self, from: usize, to: usize) -> &str {
        let start = self.ends.get(from).map(|(start, _)| *start);
        let end = to.checked_sub(1).and_then(|last| self.ends.get(last)).map(|(_, end)| *end);
        match (start, end) {
            (Some(start), Some(end)) => self.text.get(start..end).unwrap_or_default(),
            _ => "",
        }
    }

    /// The whole text with something put in behind one of its pieces.
    pub(super) fn with_after(&self, index: usize, more: &str) -> String {
        let cut = self.ends.get(index).map_or(self.text.len(), |(_, end)| *end);
        let (before, after) = self.text.split_at_checked(cut).unwrap_or((&self.text, ""));
        let gap = if after.is_empty() || after.starts_with(' ') { "" } else { " " };
        format!("{before} {more}{gap}{after}")
    }
}

fn starts_number(text: &str) -> bool {
    text.trim_start().starts_with(|letter: char| letter.is_ascii_digit() || is_vulgar(letter))
}

/// The first piece of a text that is not empty, and the rest.
fn next(first: char, text: &str, style: Style) -> (Token, &str) {
    let after = text.get(first.len_utf8()..).unwrap_or_default();
    let pointed = matches!(first, '.' | ',') && after.starts_with(|c: char| c.is_ascii_digit());
    if first.is_ascii_digit() || is_vulgar(first) || pointed {
        return match scan(text, style) {
            Some((number, rest)) => (Token::Number(number), rest),
            None => (Token::Bad, text.trim_start_matches(digit_or_mark)),
        };
    }
    let times = first == 'x' || first == 'X';
    if times && !after.starts_with(char::is_alphabetic) {
        return (Token::Sign('×'), after);
    }
    if first.is_alphabetic() {
        let (word, rest) = word(text);
        let token = if word == "by" { Token::Sign('×') } else { Token::Word(word) };
        return (token, rest);
    }
    (Token::Sign(first), after)
}

fn digit_or_mark(letter: char) -> bool {
    letter.is_ascii_digit() || matches!(letter, '.' | ',' | '\'') || is_vulgar(letter)
}

/// The word at the beginning of a text, in lower case, and the rest.
fn word(text: &str) -> (String, &str) {
    let mut word = String::new();
    let mut rest = text;
    while let Some(letter) = rest.chars().next() {
        let after = rest.get(letter.len_utf8()..).unwrap_or_default();
        let times = matches!(letter, 'x' | 'X') && BEFORE_TIMES.contains(&word.as_str());
        let inside =
            letter.is_alphabetic() || letter.is_ascii_digit() || matches!(letter, '²' | '³');
        // Units such as g/m² and cm³/g are one word.
        let over = letter == '/' && after.starts_with(['m', 'M', 'q', 'g', 'G']);
        if times || !(inside || over) {
            break;
        }
        word.extend(letter.to_lowercase());
        rest = after;
    }
    (word, rest)
}

/// One plain form for the many that keyboards and other programs make of the same sign.
pub(super) fn tidy(text: &str) -> String {
    let plain = |letter: char| match letter {
        letter if letter.is_whitespace() || letter.is_control() => ' ',
        '\u{feff}' | '\u{200b}' | '\u{2060}' => ' ',
        '×' | '*' | '✕' => '×',
        '″' | '“' | '”' | '„' => '"',
        '’' | '‘' | '′' => '\'',
        '–' | '—' | '‑' | '−' => '-',
        '⁄' | '∕' => '/',
        'μ' => 'µ',
        letter => letter,
    };
    let text: String = text.chars().map(plain).collect();
    text.replace("''", "\"").trim().to_owned()
}

/// A text for repeating in a message, shortened where it is long.
pub(super) fn quoted(text: &str) -> String {
    let text = text.trim();
    if text.chars().count() <= QUOTED_CHARACTERS {
        return text.to_owned();
    }
    text.chars().take(QUOTED_CHARACTERS).chain(core::iter::once('…')).collect()
}

/// Whether what was typed is the beginning, and no more, of one of these words.
pub(super) fn begins_one(typed: &str, words: &[&str]) -> bool {
    !typed.is_empty()
        && words.iter().any(|word| word.len() > typed.len() && word.starts_with(typed))
}

/// Whether two texts are the same but for capitals.
pub fn same_letters(one: &str, other: &str) -> bool {
    small(one).eq(small(other))
}

/// The letters of a text, none of them a capital.
pub(super) fn small(text: &str) -> impl Iterator<Item = char> {
    text.chars().flat_map(char::to_lowercase)
}
