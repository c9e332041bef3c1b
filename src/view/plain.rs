//! Numbers as other programs read them: a decimal point, no groups, no unit, an ASCII minus.

use super::Numbers;
use super::numbers::KILO_PER_POUND;
use crate::entry::LengthUnit;
use crate::units::{GRAM_PER_POUND, Measure, Mm, PER_CENT, Unit, fixed, trimmed};

/// Ounces in a pound.
const OUNCES: f64 = 16.0;
/// Seconds in a minute.
const SIXTY: f64 = 60.0;

impl Numbers {
    /// A measure for another program: finer than for people, the same in every language.
    ///
    /// ```
    /// use quirefit::{units::Gram, view::Numbers};
    /// assert_eq!(Numbers::METRIC.plain(Gram(1_792_000.5).into()), "1792000.5");
    /// ```
    #[must_use]
    pub fn plain(&self, measure: Measure) -> String {
        let inches = self.unit == LengthUnit::Inch;
        let value = measure.value;
        let (value, places) = match measure.unit {
            Unit::Length if inches => (Mm(value).inches(), 4),
            Unit::Caliper if inches => (Mm(value).inches(), 5),
            Unit::Length => (value, 3),
            Unit::Caliper => (value, 4),
            Unit::Mass if inches => (value * OUNCES / GRAM_PER_POUND, 3),
            Unit::Mass => (value, 2),
            Unit::Grammage => (value, 1),
            Unit::Time | Unit::Clock => (value / SIXTY, 2),
            Unit::Money => return fixed(value, 2),
            Unit::Pages | Unit::Sheets | Unit::Copies | Unit::Count => (value, 0),
            Unit::Kilos if inches => (value / KILO_PER_POUND, 4),
            Unit::PerKilo if inches => (value * KILO_PER_POUND, 4),
            Unit::Number | Unit::Rate | Unit::Quantity | Unit::Kilos | Unit::PerKilo => (value, 4),
            Unit::Share => (value * PER_CENT, 2),
        };
        let text = trimmed(fixed(value, places));
        if text == "-0" { "0".to_owned() } else { text }
    }

    /// What [`Numbers::plain`] counts in; empty for plain counts and money.
    #[must_use]
    pub fn sign(&self, unit: Unit) -> &'static str {
        let inches = self.unit == LengthUnit::Inch;
        match unit {
            Unit::Length | Unit::Caliper if inches => "in",
            Unit::Length | Unit::Caliper => "mm",
            Unit::Mass if inches => "oz",
            Unit::Mass => "g",
            Unit::Kilos if inches => "lb",
            Unit::Kilos => "kg",
            Unit::Grammage => "g/m²",
            Unit::Time | Unit::Clock => "min",
            Unit::Share => "%",
            Unit::Money
            | Unit::Rate
            | Unit::Quantity
            | Unit::PerKilo
            | Unit::Pages
            | Unit::Sheets
            | Unit::Copies
            | Unit::Count
            | Unit::Number => "",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Numbers;
    use crate::entry::LengthUnit;
    use crate::units::{Gram, Measure, Mm, Money, Second, Unit};
    use crate::words::Mark;

    const US: Numbers = Numbers { unit: LengthUnit::Inch, mark: Mark::Comma };

    #[test]
    fn no_language_shows() {
        assert_eq!(Numbers::METRIC.plain(Mm(1234.5).into()), "1234.5");
        assert_eq!(US.plain(Mm(215.9).into()), "8.5");
        assert_eq!(Numbers::METRIC.plain(Mm(-2.0437).into()), "-2.044");
        assert_eq!(Numbers::METRIC.plain(Mm(-0.0001).into()), "0");
        assert_eq!(Numbers::METRIC.plain(Second(90.0).into()), "1.5");
        assert_eq!(Numbers::METRIC.plain(Money(3.0).into()), "3.00");
        assert_eq!(Numbers::METRIC.plain(Measure::count(1200)), "1200");
        assert_eq!(Numbers::METRIC.plain(Measure::share(0.815)), "81.5");
        // An ounce is 28.349523125 g (NIST Handbook 44, 2023, appendix C).
        assert_eq!(US.plain(Gram(28.349_523_125).into()), "1");
        assert_eq!((US.sign(Unit::Mass), Numbers::METRIC.sign(Unit::Time)), ("oz", "min"));
    }
}
