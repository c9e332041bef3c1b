//! The finished size: a name, or width × height.

use super::length::{LENGTH_WORDS, inside, millimetres, unit_of};
use super::number::{Number, Style};
use super::size_unit::{Bare, bare};
use super::text::{Line, Token, begins_one, quoted, same_letters, small};
use super::{LengthUnit, Reading};
use crate::data::FINISHED_SIZES;
use crate::units::{Mm, Size};
use crate::words::{Say, say};

/// The least a side may measure.
pub(super) const LEAST: Mm = Mm(40.0);
/// The most a side may measure.
pub(super) const MOST: Mm = Mm(700.0);

/// Words for wider than high.
const WIDE: [&str; 6] = ["landscape", "quer", "querformat", "oblong", "wide", "horizontal"];
/// Words for higher than wide.
const HIGH: [&str; 6] = ["portrait", "upright", "hoch", "hochformat", "tall", "vertical"];
/// Words for as wide as high.
const SQUARE: [&str; 4] = ["square", "sq", "quadrat", "quadratisch"];
/// Words that add nothing.
const FILLERS: [&str; 7] = ["us", "size", "format", "din", "iso", "finished", "endformat"];

/// Which side is the longer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Turn {
    AsTyped,
    Wide,
    High,
}

/// A size as written, whatever the numbers may be.
pub(super) enum Written {
    /// A size called by name.
    Named(&'static str, Size),
    /// Two sides, each with the millimetres of its unit if one was typed.
    Pair(Side, Side),
    /// The beginning of either.
    Begun,
}

/// One side as written: number and millimetres of its unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Side(pub(super) Number, pub(super) Option<f64>);

/// What the pieces of a text say.
fn written(tokens: &[Token]) -> Option<(Written, Turn)> {
    // "A5 (148 x 210)": the name says it all.
    let name = tokens.iter().take_while(|token| token.word().is_some()).count();
    let tokens = match tokens.split_at_checked(name) {
        Some((words, [Token::Sign('('), ..])) if name > 0 => words,
        _ => tokens,
    };
    let one_of =
        |token: &Token, words: &[&str]| token.word().is_some_and(|word| words.contains(&word));
    let mut turn = Turn::AsTyped;
    let mut square = false;
    let mut rest = Vec::new();
    for token in tokens {
        if one_of(token, &WIDE) {
            turn = Turn::Wide;
        } else if one_of(token, &HIGH) {
            turn = Turn::High;
        } else if one_of(token, &SQUARE) {
            square = true;
        } else if !one_of(token, &FILLERS) {
            rest.push(token);
        }
    }
    let sized = if rest.iter().all(|token| token.word().is_some()) {
        let words: Vec<&str> = rest.iter().filter_map(|token| token.word()).collect();
        named(&words.join(" "))
    } else {
        sides(&rest, square)
    };
    sized.map(|sized| (sized, turn))
}

/// Whether a text is a size, complete or not, whatever the numbers may be.
pub(super) fn is_size(tokens: &[Token]) -> bool {
    matches!(written(tokens), Some((Written::Named(..) | Written::Pair(..), _)))
}

fn named(name: &str) -> Option<Written> {
    let exact = FINISHED_SIZES.iter().find(|row| same_letters(row.name, name));
    if let Some(row) = exact {
        return Some(Written::Named(row.name, row.size));
    }
    let words: [&[&str]; 4] = [&WIDE, &HIGH, &SQUARE, &FILLERS];
    let begun = name.is_empty()
        || FINISHED_SIZES.iter().any(|row| {
            let mut letters = small(row.name);
            small(name).all(|letter| letters.next() == Some(letter))
        })
        || name
            .split(' ')
            .next_back()
            .is_some_and(|last| words.iter().any(|words| begins_one(last, words)));
    begun.then_some(Written::Begun)
}

fn sides(tokens: &[&Token], square: bool) -> Option<Written> {
    // "A 5" is how some keyboards like to write it.
    if let [Token::Word(letter), Token::Number(number)] = tokens {
        let whole = (number.value.fract() == 0.0).then_some(number.value as u32)?;
        return named(&format!("{letter}{whole}"));
    }
    let (first, tokens) = side(tokens)?;
    let tokens = match tokens {
        [] if square => return Some(Written::Pair(first, first)),
        [] | [Token::Sign('×' | '.' | ',' | '-' | '/')] => return Some(Written::Begun),
        [Token::Word(unit)] => return begun(unit),
        [Token::Sign('×'), rest @ ..] => rest,
        _ => return None,
    };
    let (second, tokens) = side(tokens)?;
    match tokens {
        [] => Some(Written::Pair(Side(first.0, first.1.or(second.1)), second)),
        [Token::Sign('.' | ',' | '-' | '/' | '\'')] => Some(Written::Begun),
        [Token::Word(unit)] => begun(unit),
        _ => None,
    }
}

fn begun(word: &str) -> Option<Written> {
    let words: [&[&str]; 4] = [&LENGTH_WORDS, &WIDE, &HIGH, &SQUARE];
    words.iter().any(|words| begins_one(word, words)).then_some(Written::Begun)
}

fn side<'a, 'b>(tokens: &'a [&'b Token]) -> Option<(Side, &'a [&'b Token])> {
    let (first, rest) = tokens.split_first()?;
    let Token::Number(number) = first else { return None };
    let unit = rest.first().and_then(|token| unit_of(token));
    let rest = rest.get(usize::from(unit.is_some())..)?;
    Some((Side(*number, unit), rest))
}

/// Reads a finished size, 40 to 700 mm a side: "A5", "A5 landscape", "half letter",
/// "8½ × 11 in", "170 x 240", "square 80 mm". Width comes first and runs from spine to face.
///
/// Sides without a unit are counted in `default_unit` where they can be; where small numbers may
/// be inches or centimetres it asks.
///
/// # Errors
/// [`Reading::Wrong`] for unknown names and for sides outside the range.
///
/// ```
/// use quirefit_input::{entry::{self, LengthUnit}, units::{Mm, Size}};
/// let size = entry::size("a5 landscape", LengthUnit::Millimetre).value();
/// assert_eq!(size, Some(Size::new(Mm(210.0), Mm(148.0))));
/// ```
#[must_use]
pub fn size(text: &str, default_unit: LengthUnit) -> Reading<Size> {
    let line = match Line::of(text, Style::Measured) {
        Ok(line) => line,
        Err(reading) => return reading.into(),
    };
    match written(line.tokens()) {
        None => Reading::wrong(
            say("entry.size.wrong").text("given", quoted(text)),
            say("entry.size.example"),
        ),
        Some((Written::Begun, _)) => Reading::Incomplete,
        Some((Written::Named(name, size), turn)) => {
            let size = turned(size, turn);
            Reading::Understood(size, named_echo(name, size))
        }
        Some((Written::Pair(width, height), turn)) => {
            let finish = |width, height| finished(turned(Size::new(width, height), turn));
            match (width, height) {
                (Side(width, Some(one)), Side(height, Some(other))) => {
                    finish(millimetres(width.value, one), millimetres(height.value, other))
                }
                (Side(width, Some(unit)), Side(height, None))
                | (Side(width, None), Side(height, Some(unit))) => {
                    finish(millimetres(width.value, unit), millimetres(height.value, unit))
                }
                (Side(width, None), Side(height, None)) => {
                    match bare(width, height, default_unit, line.span(0, line.tokens().len())) {
                        Bare::Unit(unit) => {
                            finish(millimetres(width.value, unit), millimetres(height.value, unit))
                        }
                        Bare::Ask(question) => Reading::Ask(question),
                        Bare::Begun => Reading::Incomplete,
                    }
                }
            }
        }
    }
}

fn turned(size: Size, turn: Turn) -> Size {
    let wide = size.width > size.height;
    match turn {
        Turn::Wide if !wide => size.turned(),
        Turn::High if wide => size.turned(),
        _ => size,
    }
}

/// Which way the book stands, as a word.
fn shape(size: Size) -> Say {
    say(match size.width.get().total_cmp(&size.height.get()) {
        core::cmp::Ordering::Less => "entry.size.upright",
        core::cmp::Ordering::Equal => "entry.size.square",
        core::cmp::Ordering::Greater => "entry.size.landscape",
    })
}

fn echo(key: &str, size: Size) -> Say {
    say(key).put("width", size.width).put("height", size.height).say("shape", shape(size))
}

fn named_echo(name: &str, size: Size) -> Say {
    echo("entry.size.named", size).text("name", name)
}

fn finished(size: Size) -> Reading<Size> {
    let outside = [size.width, size.height].into_iter().find(|side| !inside(*side, LEAST, MOST));
    match outside {
        None => Reading::Understood(size, echo("entry.size.echo", size)),
        Some(side) => Reading::wrong(
            say("entry.size.outside").put("given", side),
            say("entry.size.range").put("least", LEAST).put("most", MOST),
        ),
    }
}
