//! Numbers as people write them: thousands, decimal marks of both kinds, fractions.
//!
//! Decimals are read exactly: an integer over a power of ten, both exact in a double, so their
//! quotient is the double nearest to what was typed.

use super::Reading;
use super::text::{Line, Token, quoted};
use crate::units::{Measure, Unit};
use crate::words::say;

/// More digits than this are nobody's paper; up to here an integer is exact in a double.
const MOST_DIGITS: usize = 15;
/// Digits between two thousands marks.
const GROUP: usize = 3;
/// The base of written numbers.
const TEN: u64 = 10;
/// The finest fraction of an inch that rulers carry.
const FINEST: u64 = 128;

/// Fractions that are one character.
const VULGAR: [(char, u64, u64); 15] = [
    ('½', 1, 2),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
];

/// What is asked for decides what "2.500" means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Style {
    /// Things that are counted: one mark before exactly three digits groups thousands.
    Counted,
    /// Things that are measured: one mark is the decimal mark.
    Measured,
}

/// A number found in a text.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Number {
    /// Its value, never negative.
    pub(super) value: f64,
    /// It was written with a fraction such as ½ or 1/8, as only inches are.
    pub(super) fraction: bool,
}

/// A character that starts a number by itself.
pub(super) fn is_vulgar(letter: char) -> bool {
    vulgar(letter).is_some()
}

fn vulgar(letter: char) -> Option<(u64, u64)> {
    VULGAR.iter().find(|(sign, _, _)| *sign == letter).map(|(_, over, under)| (*over, *under))
}

/// The number at the beginning of a tidied text and what follows it; nothing where none begins, or
/// where it has too many digits or its marks make no sense.
pub(super) fn scan(text: &str, style: Style) -> Option<(Number, &str)> {
    if let Some((over, under, rest)) = part(text) {
        return Some((Number { value: over as f64 / under as f64, fraction: true }, rest));
    }
    let (segments, rest) = segments(text, style);
    let (mantissa, places) = decimal(&segments, style)?;
    let mixed = rest.trim_start_matches(['-', ' ']);
    let parted = (places == 0 && rest.len() <= mixed.len() + 1).then(|| part(mixed)).flatten();
    if let Some((over, under, rest)) = parted {
        let over = mantissa.checked_mul(under)?.checked_add(over)?;
        return Some((Number { value: over as f64 / under as f64, fraction: true }, rest));
    }
    let power = TEN.checked_pow(places)?;
    Some((Number { value: mantissa as f64 / power as f64, fraction: false }, rest))
}

/// A proper fraction at the beginning of a text: over, under, rest.
fn part(text: &str) -> Option<(u64, u64, &str)> {
    let mut letters = text.chars();
    if let Some((over, under)) = letters.next().and_then(vulgar) {
        return Some((over, under, letters.as_str()));
    }
    let (over, rest) = digits(text);
    let (under, rest) = digits(rest.strip_prefix('/')?);
    let (over, under) = (whole(over)?, whole(under)?);
    (over < under && under <= FINEST).then_some((over, under, rest))
}

/// Cuts a text after its leading digits.
fn digits(text: &str) -> (&str, &str) {
    let end = text.bytes().take_while(u8::is_ascii_digit).count();
    text.split_at_checked(end).unwrap_or((text, ""))
}

/// An integer of at most [`MOST_DIGITS`] digits.
fn whole(digits: &str) -> Option<u64> {
    let significant = digits.trim_start_matches('0');
    if digits.is_empty() || significant.len() > MOST_DIGITS {
        return None;
    }
    Some(significant.bytes().fold(0, |number, digit| number * TEN + u64::from(digit - b'0')))
}

/// Runs of digits with the mark before each, and what follows.
fn segments(text: &str, style: Style) -> (Vec<(char, &str)>, &str) {
    let (first, mut rest) = digits(text);
    let mut found = vec![('\0', first)];
    loop {
        let mut letters = rest.chars();
        let mark = letters.next().unwrap_or_default();
        let (run, after) = digits(letters.as_str());
        let grouped = run.len() == GROUP && first.len() <= GROUP && !first.is_empty();
        let plain = found.iter().skip(1).all(|(before, _)| *before == mark);
        let joins = match mark {
            '.' | ',' => !run.is_empty(),
            '\'' => grouped,
            ' ' => grouped && plain && style == Style::Counted && !after.starts_with('/'),
            _ => false,
        };
        if !joins {
            return (found, rest);
        }
        found.push((mark, run));
        rest = after;
    }
}

/// The integer and the number of its decimal places that the runs of digits make.
fn decimal(segments: &[(char, &str)], style: Style) -> Option<(u64, u32)> {
    let ((_, first), marked) = segments.split_first()?;
    let grouped = |runs: &[(char, &str)]| {
        let mark = runs.first().map(|(mark, _)| mark);
        let sound = runs.iter().all(|(each, run)| Some(each) == mark && run.len() == GROUP);
        runs.is_empty() || (sound && (1..=GROUP).contains(&first.len()))
    };
    let thousands = style == Style::Counted && grouped(marked) && !first.starts_with('0');
    let (groups, places) = match marked {
        [] => (marked, ""),
        [('.' | ',', run)] if !thousands => ([].as_slice(), *run),
        _ if grouped(marked) => (marked, ""),
        [groups @ .., (point @ ('.' | ','), run)]
            if grouped(groups) && groups.iter().all(|(mark, _)| mark != point) =>
        {
            (groups, *run)
        }
        _ => return None,
    };
    let mut written = String::from(*first);
    groups.iter().for_each(|(_, run)| written.push_str(run));
    written.push_str(places);
    let places = u32::try_from(places.len()).ok()?;
    Some((whole(&written)?, places))
}

/// Reads a plain measured number, not negative: "1.571", "0,2", "½". A single mark is the decimal
/// mark.
///
/// # Errors
/// [`Reading::Wrong`] for signs, units, words and more than 15 digits.
///
/// ```
/// use quirefit_input::entry;
/// assert_eq!(entry::number("0,125").value(), Some(0.125));
/// ```
#[must_use]
pub fn number(text: &str) -> Reading<f64> {
    plain(text, Style::Measured, Unit::Number)
}

/// Reads a plain counted number, not negative: "1,250", "2.500", "12 000", "12.5". A single mark
/// before exactly three digits groups thousands.
///
/// # Errors
/// [`Reading::Wrong`] for signs, units, words and more than 15 digits.
///
/// ```
/// use quirefit_input::entry;
/// assert_eq!(entry::count("2,000").value(), Some(2000.0));
/// ```
#[must_use]
pub fn count(text: &str) -> Reading<f64> {
    plain(text, Style::Counted, Unit::Count)
}

fn plain(text: &str, style: Style, unit: Unit) -> Reading<f64> {
    let line = match Line::of(text, style) {
        Ok(line) => line,
        Err(reading) => return reading.into(),
    };
    match line.tokens() {
        [Token::Number(number)] => {
            let value = Measure::new(number.value, unit);
            Reading::Understood(number.value, say("entry.number.echo").put("value", value))
        }
        [Token::Number(_), Token::Sign('.' | ',')] => Reading::Incomplete,
        _ => Reading::wrong(
            say("entry.number.wrong").text("given", quoted(text)),
            say("entry.number.example"),
        ),
    }
}
