//! Masses in grams, kilograms, ounces or pounds.

use super::Reading;
use super::number::Style;
use super::reading::Fault;
use super::text::{Line, Token, begins_one, quoted};
use crate::units::{GRAM_PER_POUND, Gram};
use crate::words::say;

/// Grams in a kilogram.
const GRAM_PER_KILO: f64 = 1000.0;
/// Ounces in a pound.
const OUNCES_PER_POUND: f64 = 16.0;
/// Everything that may be typed for a unit of mass, with its grams.
const UNITS: [(&str, f64); 12] = [
    ("g", 1.0),
    ("gr", 1.0),
    ("gram", 1.0),
    ("grams", 1.0),
    ("gramm", 1.0),
    ("unzen", GRAM_PER_POUND / OUNCES_PER_POUND),
    ("kg", GRAM_PER_KILO),
    ("kilo", GRAM_PER_KILO),
    ("oz", GRAM_PER_POUND / OUNCES_PER_POUND),
    ("ounces", GRAM_PER_POUND / OUNCES_PER_POUND),
    ("lb", GRAM_PER_POUND),
    ("lbs", GRAM_PER_POUND),
];
/// The words alone.
const WORDS: [&str; 12] =
    ["g", "gr", "gram", "grams", "gramm", "kg", "kilo", "oz", "ounces", "unzen", "lb", "lbs"];

/// Reads a mass between `least` and `most`, both allowed: "7 g", "15 kg", "3.5 oz". A number alone
/// is counted in grams.
///
/// # Errors
/// [`Reading::Wrong`] for anything that is no mass, and for masses outside the range.
///
/// ```
/// use quirefit_input::{entry, units::Gram};
/// let read = entry::mass("15 kg", Gram(0.0), Gram(50_000.0));
/// assert_eq!(read.value(), Some(Gram(15_000.0)));
/// ```
#[must_use]
pub fn mass(text: &str, least: Gram, most: Gram) -> Reading<Gram> {
    let line = match Line::of(text, Style::Measured) {
        Ok(line) => line,
        Err(reading) => return reading.into(),
    };
    let wrong = |key: &str| {
        Reading::Wrong(Fault {
            wrong: say(key).text("given", quoted(text)),
            repair: say("entry.mass.range").put("least", least).put("most", most),
        })
    };
    let grams = match line.tokens() {
        [Token::Number(number)] => number.value,
        [Token::Number(number), Token::Word(word)] => {
            match UNITS.iter().find(|(name, _)| name == word) {
                Some((_, grams)) => Gram(number.value * grams).tidy().get(),
                None if begins_one(word, &WORDS) => return Reading::Incomplete,
                None => return wrong("entry.mass.unknown"),
            }
        }
        [Token::Number(_), Token::Sign('.' | ',' | '/')] | [Token::Sign('.' | ',')] => {
            return Reading::Incomplete;
        }
        _ => return wrong("entry.mass.unknown"),
    };
    if grams < least.get() || grams > most.get() {
        return wrong("entry.mass.outside");
    }
    Reading::Understood(Gram(grams), say("entry.mass.echo").put("value", Gram(grams)))
}

#[cfg(test)]
mod tests {
    use super::{Gram, Reading, mass};

    fn grams(text: &str) -> Option<f64> {
        mass(text, Gram(0.0), Gram(50_000.0)).value().map(Gram::get)
    }

    #[test]
    fn units_and_marks() {
        assert_eq!(grams("7 g"), Some(7.0));
        assert_eq!(grams("7"), Some(7.0));
        assert_eq!(grams("7,5 Gramm"), Some(7.5));
        assert_eq!(grams("1,5 kg"), Some(1500.0));
        // 16 ounces are a pound, 453.59237 g, by definition.
        assert_eq!(grams("16 oz"), grams("1 lb"));
        assert_eq!(grams("1 lb"), Some(453.592_37));
    }

    #[test]
    fn beyond_and_beside() {
        assert!(matches!(mass("51 kg", Gram(0.0), Gram(50_000.0)), Reading::Wrong(_)));
        assert!(matches!(mass("heavy", Gram(0.0), Gram(50_000.0)), Reading::Wrong(_)));
        assert!(matches!(mass("5 k", Gram(0.0), Gram(50_000.0)), Reading::Incomplete));
    }
}
