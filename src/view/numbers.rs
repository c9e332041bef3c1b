//! Numbers as a person reads them: rounding, decimal sign, unit. The only place that decides these.

use crate::entry::LengthUnit;
use crate::units::{Band, GRAM_PER_POUND, Measure, Mm, PER_CENT, Unit, fixed};
use crate::words::Mark;

/// How numbers are printed for one person.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Numbers {
    /// Millimetres or inches.
    pub unit: LengthUnit,
    /// The decimal sign.
    pub mark: Mark,
}

/// Grams in an ounce.
const GRAM_PER_OUNCE: f64 = GRAM_PER_POUND / 16.0;
/// Grams in a kilogram.
const GRAM_PER_KILO: f64 = 1000.0;
/// Kilograms in a pound.
pub(super) const KILO_PER_POUND: f64 = GRAM_PER_POUND / GRAM_PER_KILO;
/// From this many grams on, kilograms (or pounds) are printed.
const HEAVY: f64 = 1000.0;
/// Lengths from here on are no book's, but wire's: metres (or feet) are printed.
const LONG: f64 = 10_000.0;
/// Millimetres in a metre.
const MM_PER_METRE: f64 = 1000.0;
/// Inches in a foot.
const INCHES_PER_FOOT: f64 = 12.0;
/// Seconds in a minute, minutes in an hour.
const SIXTY: f64 = 60.0;
/// Minutes in a day.
const MINUTES_PER_DAY: f64 = 24.0 * SIXTY;

impl Numbers {
    /// Millimetres with a decimal point.
    pub const METRIC: Self = Self { unit: LengthUnit::Millimetre, mark: Mark::Point };

    /// A measure with its unit.
    ///
    /// ```
    /// use quirefit::{units::{Measure, Mm}, view::Numbers};
    /// assert_eq!(Numbers::METRIC.print(Mm(1.536).into()), "1.54\u{a0}mm");
    /// ```
    #[must_use]
    pub fn print(&self, measure: Measure) -> String {
        let (number, unit) = self.split(measure);
        if unit.is_empty() { number } else { format!("{number}\u{a0}{unit}") }
    }

    /// A band as "nominal (low–high)", or just the nominal where print cannot tell them apart.
    #[must_use]
    pub fn band(&self, band: Band<f64>, unit: Unit) -> String {
        let nominal = self.print(Measure::new(band.nominal, unit));
        match self.range(band, unit) {
            Some(range) => format!("{nominal} ({range})"),
            None => nominal,
        }
    }

    /// "low–high" without the unit, which stands with the nominal; with units where they differ, as
    /// between grams and kilograms. Nothing where print cannot tell them apart.
    #[must_use]
    pub fn range(&self, band: Band<f64>, unit: Unit) -> Option<String> {
        let [low, nominal, high] =
            [band.low, band.nominal, band.high].map(|value| Measure::new(value, unit));
        let (least, sign) = self.split(low);
        let (most, other) = self.split(high);
        if sign != other || sign != self.split(nominal).1 {
            return Some(format!("{}–{}", self.print(low), self.print(high)));
        }
        (least != most).then(|| format!("{least}–{most}"))
    }

    /// The number and its unit's sign, apart, so that the view can set the sign smaller.
    #[must_use]
    pub fn split(&self, measure: Measure) -> (String, &'static str) {
        let (value, inches) = (measure.value, self.unit == LengthUnit::Inch);
        let (value, places, sign) = match measure.unit {
            Unit::Length if value >= LONG && inches => {
                (Mm(value).inches() / INCHES_PER_FOOT, 1, "ft")
            }
            Unit::Length if value >= LONG => (value / MM_PER_METRE, 1, "m"),
            Unit::Length if inches => (Mm(value).inches(), 3, "in"),
            Unit::Length => (value, decimals(value), "mm"),
            Unit::Caliper if inches => (Mm(value).inches(), 4, "in"),
            Unit::Caliper => (value, 3, "mm"),
            Unit::Grammage => (value, 0, "g/m²"),
            Unit::Mass if value >= HEAVY && inches => (value / GRAM_PER_POUND, 1, "lb"),
            Unit::Mass if value >= HEAVY => (value / GRAM_PER_KILO, 1, "kg"),
            Unit::Mass if inches => (value / GRAM_PER_OUNCE, 2, "oz"),
            Unit::Mass => (value, 1, "g"),
            Unit::Kilos if inches => (value / KILO_PER_POUND, fine(value / KILO_PER_POUND), "lb"),
            Unit::Kilos => (value, fine(value), "kg"),
            Unit::Time => return self.time(value),
            Unit::Clock => return (clock(value), ""),
            Unit::Money => return (self.padded(value, 2), ""),
            Unit::PerKilo if inches => return self.rate(value * KILO_PER_POUND),
            Unit::Rate | Unit::PerKilo => return self.rate(value),
            Unit::Quantity => (value, fine(value), ""),
            Unit::Pages | Unit::Sheets | Unit::Copies | Unit::Count => (value, 0, ""),
            Unit::Number => (value, 2, ""),
            Unit::Share => (value * PER_CENT, 1, "%"),
        };
        (self.fixed(value, places), sign)
    }

    /// Cents at least, and more where a thousand of them count.
    fn rate(&self, value: f64) -> (String, &'static str) {
        let whole = (value - (value * PER_CENT).round() / PER_CENT).abs() < 1e-9;
        (if whole { self.padded(value, 2) } else { self.fixed(value, fine(value)) }, "")
    }

    fn time(&self, seconds: f64) -> (String, &'static str) {
        let minutes = (seconds / SIXTY).round();
        let hours = (minutes / SIXTY).floor();
        if hours >= 1.0 {
            (format!("{}\u{a0}h\u{a0}{:02}", hours as u64, (minutes - hours * SIXTY) as u64), "min")
        } else {
            (self.fixed(seconds / SIXTY, 1), "min")
        }
    }

    /// A number with at most so many decimals, trailing zeros dropped.
    fn fixed(&self, value: f64, places: usize) -> String {
        let text = self.padded(value, places);
        if places == 0 {
            return text;
        }
        let (sign, _) = self.mark.signs();
        text.trim_end_matches('0').trim_end_matches(sign).to_owned()
    }

    /// A number with exactly so many decimals, in groups of three, with a true minus.
    fn padded(&self, value: f64, places: usize) -> String {
        let text = fixed(value.abs(), places);
        let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
        let (decimal, group) = self.mark.signs();
        let zero = text.chars().all(|digit| digit == '0' || digit == '.');
        let mut out = String::new();
        if value < 0.0 && !zero {
            out.push('−');
        }
        for (index, digit) in whole.chars().enumerate() {
            if index > 0 && (whole.len() - index).is_multiple_of(3) {
                out.push(group);
            }
            out.push(digit);
        }
        if !part.is_empty() {
            out.push(decimal);
            out.push_str(part);
        }
        out
    }
}

/// A time of day to the minute; days after the first as "+1".
fn clock(seconds: f64) -> String {
    let minutes = (seconds / SIXTY).round();
    let day = (minutes / MINUTES_PER_DAY).floor();
    let minutes = minutes - day * MINUTES_PER_DAY;
    let hours = (minutes / SIXTY).floor();
    let time = format!("{}:{:02}", hours as u64, (minutes - hours * SIXTY) as u64);
    if day >= 1.0 { format!("{time}\u{a0}(+{})", day as u64) } else { time }
}

/// Decimals that a rate or its quantity wants, so that their product can be checked by hand.
fn fine(value: f64) -> usize {
    if value.abs() < 1.0 { 4 } else { 3 }
}

/// Decimals of a millimetre worth printing: hundredths below 10, tenths below 1000.
fn decimals(value: f64) -> usize {
    if value.abs() < 10.0 { 2 } else { 1 }
}

#[cfg(test)]
mod tests {
    use super::Numbers;
    use crate::entry::LengthUnit;
    use crate::units::{Band, Gram, Measure, Mm, Second, Unit};
    use crate::words::Mark;

    const GERMAN: Numbers = Numbers { unit: LengthUnit::Millimetre, mark: Mark::Comma };
    const SWISS: Numbers = Numbers { unit: LengthUnit::Millimetre, mark: Mark::Apostrophe };
    const US: Numbers = Numbers { unit: LengthUnit::Inch, mark: Mark::Point };

    #[test]
    fn rounds_by_size_and_unit() {
        assert_eq!(Numbers::METRIC.print(Mm(210.0).into()), "210\u{a0}mm");
        assert_eq!(Numbers::METRIC.print(Mm(-0.001).into()), "0\u{a0}mm");
        assert_eq!(Numbers::METRIC.print(Mm(-2.0437).into()), "−2.04\u{a0}mm");
        assert_eq!(Numbers::METRIC.print(Gram(1_792_000.0).into()), "1,792\u{a0}kg");
        assert_eq!(Numbers::METRIC.print(Second(22_320.0).into()), "6\u{a0}h\u{a0}12\u{a0}min");
        assert_eq!(GERMAN.print(Mm(1234.56).into()), "1\u{202f}234,6\u{a0}mm");
        assert_eq!(SWISS.print(Gram(1_234_560.0).into()), "1’234.6\u{a0}kg");
        assert_eq!(Numbers::METRIC.print(Mm(33_810.0).into()), "33.8\u{a0}m");
        assert_eq!(US.print(Mm(30_480.0).into()), "100\u{a0}ft");
        assert_eq!(US.print(Mm(215.9).into()), "8.5\u{a0}in");
        assert_eq!(US.print(Measure::caliper(Mm(0.09652))), "0.0038\u{a0}in");
    }

    #[test]
    fn rates_and_quantities_are_finer_than_amounts() {
        let print = |value, unit| Numbers::METRIC.print(Measure::new(value, unit));
        for (value, printed) in [
            (85.0, "85.00"),
            (1.6, "1.60"),
            (0.035, "0.035"),
            (0.66744, "0.6674"),
            (1.00667, "1.007"),
        ] {
            assert_eq!(print(value, Unit::Rate), printed);
        }
        assert_eq!(GERMAN.print(Measure::new(0.035, Unit::Rate)), "0,035");
        for (value, printed) in [(13_750.0, "13,750"), (6.875, "6.875"), (0.07039, "0.0704")] {
            assert_eq!(print(value, Unit::Quantity), printed);
        }
    }

    /// A pound is 0.45359237 kg: 10 kg are 22.0462 lb, and at 1.60 a kilogram one costs 0.725748.
    #[test]
    fn pounds_stand_beside_inches() {
        let print = |numbers: Numbers, value, unit| numbers.print(Measure::new(value, unit));
        assert_eq!(print(Numbers::METRIC, 10.0, Unit::Kilos), "10\u{a0}kg");
        assert_eq!(print(US, 10.0, Unit::Kilos), "22.046\u{a0}lb");
        assert_eq!(print(Numbers::METRIC, 1.6, Unit::PerKilo), "1.60");
        assert_eq!(print(US, 1.6, Unit::PerKilo), "0.7257");
    }

    #[test]
    fn a_time_of_day_counts_days_on() {
        let at = |hours: f64| Measure::new(hours * 3600.0, Unit::Clock);
        assert_eq!(Numbers::METRIC.print(at(8.5)), "8:30");
        assert_eq!(Numbers::METRIC.print(at(24.0)), "0:00\u{a0}(+1)");
        assert_eq!(Numbers::METRIC.print(at(50.75)), "2:45\u{a0}(+2)");
        // Half a minute before midnight rounds into the next day, never to 24:00.
        assert_eq!(Numbers::METRIC.print(Measure::new(86_399.0, Unit::Clock)), "0:00\u{a0}(+1)");
    }

    #[test]
    fn a_band_too_narrow_to_see_is_not_printed() {
        let narrow = Band { low: 1.501, nominal: 1.502, high: 1.503 };
        assert_eq!(Numbers::METRIC.band(narrow, Unit::Length), "1.5\u{a0}mm");
        let wide = Band { low: 1.4, nominal: 1.54, high: 1.72 };
        assert_eq!(Numbers::METRIC.band(wide, Unit::Length), "1.54\u{a0}mm (1.4–1.72)");
    }

    #[test]
    fn a_band_across_two_units_names_both() {
        let mass = Band { low: 956.8, nominal: 1020.0, high: 1090.0 };
        assert_eq!(Numbers::METRIC.band(mass, Unit::Mass), "1\u{a0}kg (956.8\u{a0}g–1.1\u{a0}kg)");
    }
}
