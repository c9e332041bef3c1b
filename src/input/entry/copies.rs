//! How many copies.

use super::Reading;
use super::number::Style;
use super::text::{Line, Token, begins_one, quoted};
use crate::units::{Copies, Measure, Unit};
use crate::words::say;

/// The most copies that are planned at once.
const MOST: u32 = 5_000_000;
/// What k stands for.
const THOUSAND: f64 = 1000.0;
/// Words for a thousand.
const THOUSANDS: [&str; 4] = ["k", "thousand", "tsd", "tausend"];
/// Words that may stand before the number.
const BEFORE: [&str; 4] = ["qty", "quantity", "run", "auflage"];
/// Words that may follow the number.
pub(super) const COPY_WORDS: [&str; 22] = [
    "copies",
    "copy",
    "off",
    "books",
    "booklets",
    "pcs",
    "pc",
    "pieces",
    "sets",
    "ex",
    "exemplare",
    "exemplar",
    "expl",
    "hefte",
    "auflage",
    "stück",
    "stk",
    "quantity",
    "qty",
    "run",
    "wanted",
    "needed",
];

/// Copies as written: their number, and whether a word says that it is copies.
pub(super) struct Written {
    number: f64,
    /// "copies", "off", "k" or another such word stands there.
    pub(super) named: bool,
}

/// What the pieces of a text say, whatever the number may be.
pub(super) fn written(tokens: &[Token]) -> Option<Written> {
    let is = |token: &Token, words: &[&str]| token.word().is_some_and(|word| words.contains(&word));
    let tokens = match tokens {
        [first, rest @ ..] if is(first, &BEFORE) && !rest.is_empty() => {
            let colon = matches!(rest, [Token::Sign(':'), ..]);
            return written(rest.get(usize::from(colon)..)?)
                .map(|copies| Written { named: true, ..copies });
        }
        tokens => tokens,
    };
    let (first, rest) = tokens.split_first()?;
    let Token::Number(number) = first else { return None };
    let (factor, rest) = match rest {
        [next, rest @ ..] if is(next, &THOUSANDS) => (THOUSAND, rest),
        rest => (1.0, rest),
    };
    let named = match rest {
        [] => factor > 1.0,
        [word] if is(word, &COPY_WORDS) => true,
        _ => return None,
    };
    Some(Written { number: number.value * factor, named })
}

/// Reads a number of copies, 1 to 5,000,000: "750", "2.500 copies", "12 000", "1000 off", "10k".
/// One mark before exactly three digits groups thousands.
///
/// # Errors
/// [`Reading::Wrong`] for anything else, for parts of a copy and for numbers outside the range.
///
/// ```
/// use quirefit_input::{entry, units::Copies};
/// assert_eq!(entry::copies("2.500 copies").value(), Some(Copies(2500)));
/// ```
#[must_use]
pub fn copies(text: &str) -> Reading<Copies> {
    let line = match Line::of(text, Style::Counted) {
        Ok(line) => line,
        Err(reading) => return reading.into(),
    };
    if let Some(Written { number, .. }) = written(line.tokens()) {
        return ranged(number, text);
    }
    match line.tokens() {
        [Token::Number(_), Token::Sign('.' | ',' | '\'')] => Reading::Incomplete,
        [Token::Number(_), .., Token::Word(last)] if begins_one(last, &COPY_WORDS) => {
            Reading::Incomplete
        }
        _ => Reading::wrong(
            say("entry.copies.wrong").text("given", quoted(text)),
            say("entry.copies.example"),
        ),
    }
}

fn ranged(number: f64, text: &str) -> Reading<Copies> {
    let most = Copies(MOST);
    if number < 1.0 || number > most.as_f64() {
        let given = Measure::new(number, Unit::Copies);
        return Reading::wrong(
            say("entry.copies.outside").put("given", given),
            say("entry.copies.range").put("least", Copies(1)).put("most", most),
        );
    }
    if number.fract() > 0.0 {
        return Reading::wrong(
            say("entry.copies.part").text("given", quoted(text)),
            say("entry.copies.example"),
        );
    }
    let copies = Copies(number as u32);
    Reading::Understood(copies, say("entry.copies.echo").count("n", copies))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_with_and_without_words() {
        for (text, value) in [
            ("750", 750),
            ("2.500 copies", 2500),
            ("2,500", 2500),
            ("12 000", 12_000),
            ("12\u{a0}000 Copies", 12_000),
            ("1000 off", 1000),
            ("10k", 10_000),
            ("2.5k copies", 2500),
            ("qty: 300", 300),
            ("1.200 Exemplare", 1200),
            ("750 Stück", 750),
            ("Auflage: 300", 300),
            ("2 Tsd. Hefte", 2000),
            ("1", 1),
            ("5,000,000", 5_000_000),
        ] {
            assert_eq!(copies(text).value(), Some(Copies(value)), "{text}");
        }
    }

    #[test]
    fn near_misses() {
        for text in [
            "0",
            "5,000,001",
            "1e308",
            "-1",
            "NaN",
            "3 dozen",
            "2.5",
            "½",
            "10k k",
            "copies",
            "🦆",
            "1000000000000000",
        ] {
            assert!(matches!(copies(text), Reading::Wrong(_)), "{text}");
        }
        for text in ["", "7 cop", "2."] {
            assert_eq!(copies(text), Reading::Incomplete, "{text}");
        }
    }
}
