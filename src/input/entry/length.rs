//! Lengths in millimetres or inches.

use super::Reading;
use super::number::Style;
use super::text::{Line, Token, begins_one, quoted};
use crate::units::{MM_PER_INCH, Mm};
use crate::words::{Say, say};

/// Ten units are whole millimetres in every unit, so that 8.5 in is exactly 215.9 mm.
const TEN: f64 = 10.0;
/// Millimetres in a centimetre.
const MM_PER_CM: f64 = 10.0;

/// What a length without a unit is counted in: the page's one choice of units.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum LengthUnit {
    /// Millimetres.
    #[default]
    Millimetre,
    /// Inches.
    Inch,
}

impl LengthUnit {
    /// The unit of a field's text: "in" is inches, anything else millimetres.
    ///
    /// ```
    /// use quirefit_input::entry::LengthUnit;
    /// assert_eq!(LengthUnit::of("in"), LengthUnit::Inch);
    /// ```
    #[must_use]
    pub fn of(text: &str) -> Self {
        if text.trim().eq_ignore_ascii_case("in") { Self::Inch } else { Self::Millimetre }
    }
    /// What a field's text calls it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Inch => "in",
        }
    }
    /// A number of this unit.
    pub(super) fn length(self, number: f64) -> Mm {
        match self {
            Self::Millimetre => Mm(number),
            Self::Inch => Mm::from_inches(number),
        }
    }
    /// The other of the two, and how it is typed.
    fn other(self) -> (Self, &'static str) {
        match self {
            Self::Millimetre => (Self::Inch, "in"),
            Self::Inch => (Self::Millimetre, "mm"),
        }
    }
}

/// Everything that may be typed for a unit of length of a book or sheet.
pub(super) const LENGTH_WORDS: [&str; 17] = [
    "mm",
    "cm",
    "in",
    "inch",
    "inches",
    "millimetre",
    "millimetres",
    "millimeter",
    "millimeters",
    "centimetre",
    "centimetres",
    "centimeter",
    "centimeters",
    "ins",
    "zoll",
    "zentimeter",
    "millimetern",
];

/// Millimetres in the unit that a piece of text names.
pub(super) fn unit_of(token: &Token) -> Option<f64> {
    match token {
        Token::Sign('"') => Some(MM_PER_INCH),
        Token::Word(word) if LENGTH_WORDS.contains(&word.as_str()) => match word.get(..1) {
            Some("i") => Some(MM_PER_INCH),
            Some("z") if word == "zoll" => Some(MM_PER_INCH),
            Some("c" | "z") => Some(MM_PER_CM),
            _ => Some(1.0),
        },
        _ => None,
    }
}

/// Reads a length between `least` and `most`, both allowed: "3", "3 mm", "0,5 cm", "1/8 in",
/// "⅛″". A number alone is counted in `default_unit`.
///
/// # Errors
/// [`Reading::Wrong`] for anything that is no length, and for lengths outside the range.
///
/// ```
/// use quirefit_input::{entry::{self, LengthUnit}, units::Mm};
/// let read = entry::length("1/8 in", LengthUnit::Millimetre, Mm(0.0), Mm(50.0));
/// assert_eq!(read.value(), Some(Mm(3.175)));
/// ```
#[must_use]
pub fn length(text: &str, default_unit: LengthUnit, least: Mm, most: Mm) -> Reading<Mm> {
    let line = match Line::of(text, Style::Measured) {
        Ok(line) => line,
        Err(reading) => return reading.into(),
    };
    match line.tokens() {
        [Token::Number(number)] => {
            let length = default_unit.length(number.value);
            let (other, unit) = default_unit.other();
            let fits = inside(other.length(number.value), least, most);
            let repair = if fits {
                let typed = format!("{} {unit}", quoted(text));
                range("entry.length.other-unit", least, most).text("typed", typed)
            } else {
                range("entry.length.range", least, most)
            };
            within(length, least, most, repair)
        }
        [Token::Number(number), unit] => match (unit_of(unit), unit) {
            (Some(size), _) => {
                let repair = range("entry.length.range", least, most);
                within(millimetres(number.value, size), least, most, repair)
            }
            (None, Token::Sign('.' | ',' | '-' | '/')) => Reading::Incomplete,
            (None, Token::Word(word)) if begins_one(word, &LENGTH_WORDS) => Reading::Incomplete,
            _ => unknown(text),
        },
        [Token::Sign('.' | ',')] => Reading::Incomplete,
        _ => unknown(text),
    }
}

/// A number of a unit so many millimetres long.
pub(super) fn millimetres(number: f64, unit: f64) -> Mm {
    Mm(number * (unit * TEN) / TEN).tidy()
}

/// Whether a length is at least and at most this.
pub(super) fn inside(length: Mm, least: Mm, most: Mm) -> bool {
    length >= least && length <= most
}

fn range(key: &str, least: Mm, most: Mm) -> Say {
    say(key).put("least", least).put("most", most)
}

fn within(length: Mm, least: Mm, most: Mm, repair: Say) -> Reading<Mm> {
    if inside(length, least, most) {
        Reading::Understood(length, say("entry.length.echo").put("value", length))
    } else {
        Reading::wrong(say("entry.length.outside").put("given", length), repair)
    }
}

fn unknown(text: &str) -> Reading<Mm> {
    Reading::wrong(
        say("entry.length.wrong").text("given", quoted(text)),
        say("entry.length.example"),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str, unit: LengthUnit) -> Reading<Mm> {
        length(text, unit, Mm(0.0), Mm(50.0))
    }

    #[test]
    fn units() {
        for (text, metric, inch) in [
            ("3", 3.0, None),
            ("0,125", 0.125, Some(3.175)),
            ("2.500 mm", 2.5, Some(2.5)),
            ("3mm", 3.0, Some(3.0)),
            ("0.5 CM", 5.0, Some(5.0)),
            ("1/8 in", 3.175, Some(3.175)),
            ("⅛″", 3.175, Some(3.175)),
            ("1/8 Zoll", 3.175, Some(3.175)),
            ("⅛\"", 3.175, Some(3.175)),
            ("1 1/2 inches", 38.1, Some(38.1)),
            ("1", 1.0, Some(25.4)),
        ] {
            assert_eq!(read(text, LengthUnit::Millimetre).value(), Some(Mm(metric)), "{text}");
            if let Some(inch) = inch {
                assert_eq!(read(text, LengthUnit::Inch).value(), Some(Mm(inch)), "{text}");
            }
        }
    }

    #[test]
    fn beginnings_are_not_faults() {
        for text in ["", "3 m", "1 i", "0,", "3 millim", "1-", "1/", "."] {
            assert_eq!(read(text, LengthUnit::Millimetre), Reading::Incomplete, "{text}");
        }
    }

    #[test]
    fn faults() {
        for text in ["-1", "1e308", "NaN", "3 ft", "3 mm 4", "51", "3 in", "🦆", "mm", "3 pt"] {
            let read = read(text, LengthUnit::Millimetre);
            assert!(matches!(read, Reading::Wrong(_)), "{text}: {read:?}");
        }
    }

    #[test]
    fn a_number_that_fits_the_other_unit_says_so() {
        let read = length("60", LengthUnit::Inch, Mm(40.0), Mm(700.0));
        let Reading::Wrong(fault) = read else { panic!("{read:?}") };
        assert_eq!(fault.repair.key, "entry.length.other-unit");
        assert!(fault.repair.slots.contains(&("typed", crate::words::Slot::Text("60 mm".into()))));
    }
}
