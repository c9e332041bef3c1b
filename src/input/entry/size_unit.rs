//! What two sides without a unit are counted in.

use super::length::{inside, millimetres};
use super::number::Number;
use super::size::{LEAST, MOST};
use super::{Choice, LengthUnit, Question};
use crate::units::{MM_PER_INCH, Size};
use crate::words::say;

/// Millimetres in a centimetre.
const MM_PER_CM: f64 = 10.0;

/// What two bare sides may be.
pub(super) enum Bare {
    /// Counted in a unit of so many millimetres.
    Unit(f64),
    /// It may be inches or centimetres.
    Ask(Question),
    /// Too small in every unit: more digits may follow.
    Begun,
}

/// Finds the unit of two bare sides: the page's own where both fit, else the one that fits.
/// A fraction is always inches. `text` is what was typed, for the answers to the question.
pub(super) fn bare(width: Number, height: Number, default: LengthUnit, text: &str) -> Bare {
    let sides = [width, height];
    let fits =
        |unit: f64| sides.iter().all(|side| inside(millimetres(side.value, unit), LEAST, MOST));
    let fraction = sides.iter().any(|side| side.fraction);
    let (millimetre, inch, centimetre) = (1.0, MM_PER_INCH, MM_PER_CM);
    if fraction || (default == LengthUnit::Inch && fits(inch)) {
        return Bare::Unit(inch);
    }
    if fits(millimetre) {
        return Bare::Unit(millimetre);
    }
    match (fits(inch), fits(centimetre)) {
        (true, true) => Bare::Ask(question(width, height, text)),
        (true, false) => Bare::Unit(inch),
        (false, true) => Bare::Unit(centimetre),
        (false, false) if height.value < LEAST.get() && width.value <= MOST.get() => Bare::Begun,
        (false, false) => Bare::Unit(default.length(1.0).get()),
    }
}

fn question(width: Number, height: Number, text: &str) -> Question {
    let choice = |key: &str, unit: f64, word: &str| {
        let size = Size::new(millimetres(width.value, unit), millimetres(height.value, unit));
        Choice {
            label: say(key).put("width", size.width).put("height", size.height),
            typed: format!("{text} {word}"),
        }
    };
    Question {
        ask: say("entry.size.ask").text("given", text),
        choices: vec![
            choice("entry.size.inches", MM_PER_INCH, "in"),
            choice("entry.size.centimetres", MM_PER_CM, "cm"),
        ],
    }
}
