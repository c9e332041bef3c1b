//! A number beside its unit, for places that carry any quantity: limits, findings, sentences.

use super::{Copies, Gram, Gsm, Mm, Money, Pages, Second, Sheets};

/// What a [`Measure`] is counted in. The view decides how each is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// Lengths of books and sheets, millimetres.
    Length,
    /// Thickness of one leaf, millimetres, printed finer.
    Caliper,
    /// Grams in a square metre.
    Grammage,
    /// Grams.
    Mass,
    /// Seconds.
    Time,
    /// A time of day, seconds since the midnight before the first day.
    Clock,
    /// The shop's currency.
    Money,
    /// Pages.
    Pages,
    /// Folded sheets, four pages each.
    Sheets,
    /// Finished copies.
    Copies,
    /// A plain whole number of anything else.
    Count,
    /// What one of something costs: finer than an amount of money.
    Rate,
    /// How much there is of something that has a rate.
    Quantity,
    /// Kilograms of something that has a rate by mass.
    Kilos,
    /// What a kilogram of it costs.
    PerKilo,
    /// A plain number, such as a factor.
    Number,
    /// A share of one, printed as per cent.
    Share,
}

/// A value and what it is counted in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measure {
    /// The number, in the unit's inside form (mm, g, s, 1).
    pub value: f64,
    /// What it counts.
    pub unit: Unit,
}

impl Measure {
    /// A value with its unit.
    #[must_use]
    pub const fn new(value: f64, unit: Unit) -> Self {
        Self { value, unit }
    }
    /// The thickness of a leaf, printed with the fineness that calipers need.
    #[must_use]
    pub const fn caliper(value: Mm) -> Self {
        Self::new(value.0, Unit::Caliper)
    }
    /// A share of one.
    #[must_use]
    pub const fn share(value: f64) -> Self {
        Self::new(value, Unit::Share)
    }
    /// What one of something costs.
    #[must_use]
    pub const fn rate(value: Money) -> Self {
        Self::new(value.0, Unit::Rate)
    }
    /// A plain count.
    #[must_use]
    pub const fn count(value: u32) -> Self {
        Self::new(value as f64, Unit::Count)
    }
}

/// Lets each quantity be written as a measure without naming the unit twice.
macro_rules! measured {
    ($($kind:ident => $unit:ident, $value:ident => $number:expr);* $(;)?) => {$(
        impl From<$kind> for Measure {
            fn from($value: $kind) -> Self {
                Self::new($number, Unit::$unit)
            }
        }
    )*};
}

measured! {
    Mm => Length, value => value.get();
    Gsm => Grammage, value => value.get();
    Gram => Mass, value => value.get();
    Second => Time, value => value.get();
    Money => Money, value => value.get();
    Pages => Pages, value => value.as_f64();
    Sheets => Sheets, value => value.as_f64();
    Copies => Copies, value => value.as_f64();
}
