//! Quantities that cannot be mixed, counts, and bands of doubt.
//!
//! Inside the planner lengths are millimetres, masses grams, times seconds. Reading what people
//! type is [`crate::entry`]'s work, printing is the view's: this module only converts.

mod band;
mod counts;
mod decimal;
mod measure;
mod order;

pub use band::Band;
pub use counts::{
    Copies, LEAVES_PER_SHEET, Leaves, PAGES_PER_LEAF, PAGES_PER_SHEET, Pages, Sheets,
};
pub use decimal::{digits, fixed, trimmed};
pub use measure::{Measure, Unit};
pub use order::{in_order, places, put_once};

use core::ops::{Add, Div, Mul, Neg, Sub};

/// Millimetres in an inch, exact by definition.
pub const MM_PER_INCH: f64 = MM_PER_TEN_INCHES / TEN;
/// Whole, so that typed decimals of an inch become the millimetres nearest to them.
const MM_PER_TEN_INCHES: f64 = 254.0;
const TEN: f64 = 10.0;
/// Steps of a unit that are told apart after converting, far below anything measurable.
const FINEST: f64 = 1_000_000_000.0;
/// The same of large amounts: no more digits altogether than are read back.
const FINE: f64 = 1_000_000.0;
/// From here on an amount is large.
const LARGE: f64 = 100_000.0;
/// Points in an inch: the unit of a page of PDF that names no other (ISO 32000-1, 8.3.2.3).
pub const POINTS_PER_INCH: f64 = 72.0;
/// The same in a millimetre.
pub const POINTS_PER_MM: f64 = POINTS_PER_INCH / MM_PER_INCH;
/// Micrometres in a millimetre.
pub const MICRON_PER_MM: f64 = 1000.0;
/// Thousandths of an inch (mils, caliper points) in an inch.
pub const MILS_PER_INCH: f64 = 1000.0;
/// Square millimetres in a square metre.
pub const MM2_PER_M2: f64 = 1_000_000.0;
/// Grams in a pound avoirdupois, exact by definition.
pub const GRAM_PER_POUND: f64 = 453.592_37;
/// Sheets in the ream that basis weights are quoted for.
pub const SHEETS_PER_REAM: f64 = 500.0;
/// Seconds in a minute.
pub const SECONDS_PER_MINUTE: u32 = 60;
/// Minutes in an hour.
pub const MINUTES_PER_HOUR: u32 = 60;
/// Hours in a day.
pub const HOURS_PER_DAY: u32 = 24;
/// Seconds in an hour.
pub const SECONDS_PER_HOUR: f64 = 3600.0;
/// Parts of a whole written as per cent.
pub const PER_CENT: f64 = 100.0;

/// The larger of two numbers. Compared, since the module has no instruction for `f64::max`.
#[must_use]
pub const fn larger(one: f64, other: f64) -> f64 {
    if one > other || other.is_nan() { one } else { other }
}
/// The smaller of two numbers, in the same way.
#[must_use]
pub const fn smaller(one: f64, other: f64) -> f64 {
    if one < other || other.is_nan() { one } else { other }
}

/// Defines one quantity: a number with its unit in its name, addable to its own kind only.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(pub f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);
            /// The bare number, in the unit of the type's name.
            #[must_use]
            pub const fn get(self) -> f64 {
                self.0
            }
            /// The double nearest to what a converted decimal comes to: 1.1 in is 27.94 mm, not
            /// 27.940000000000005, and can be written and read again.
            #[must_use]
            pub const fn tidy(self) -> Self {
                let steps = if self.0.abs() < LARGE { FINEST } else { FINE };
                Self((self.0 * steps).round() / steps)
            }
            /// The larger of two.
            #[must_use]
            pub const fn max(self, other: Self) -> Self {
                Self(larger(self.0, other.0))
            }
            /// The smaller of two.
            #[must_use]
            pub const fn min(self, other: Self) -> Self {
                Self(smaller(self.0, other.0))
            }
        }
        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }
        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }
        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }
        impl core::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
                items.fold(Self::ZERO, |total, item| total + item)
            }
        }
    };
}

quantity!(
    /// A length in millimetres.
    Mm
);
quantity!(
    /// Grammage: grams of paper in a square metre.
    Gsm
);
quantity!(
    /// A mass in grams.
    Gram
);
quantity!(
    /// A time in seconds.
    Second
);
quantity!(
    /// An amount of money in the shop's own currency.
    Money
);
quantity!(
    /// Specific volume of paper in cubic centimetres per gram: thickness for weight.
    Bulk
);

impl Mm {
    /// From inches.
    #[must_use]
    pub const fn from_inches(inches: f64) -> Self {
        Self(inches * MM_PER_TEN_INCHES / TEN).tidy()
    }
    /// In inches.
    #[must_use]
    pub const fn inches(self) -> f64 {
        self.0 * TEN / MM_PER_TEN_INCHES
    }
    /// From micrometres.
    #[must_use]
    pub const fn from_microns(microns: f64) -> Self {
        Self(microns / MICRON_PER_MM)
    }
    /// In micrometres.
    #[must_use]
    pub const fn microns(self) -> f64 {
        self.0 * MICRON_PER_MM
    }
    /// From thousandths of an inch, which the trade calls mils or caliper points.
    #[must_use]
    pub const fn from_mils(mils: f64) -> Self {
        Self(mils * MM_PER_TEN_INCHES / (TEN * MILS_PER_INCH)).tidy()
    }
}

impl Gsm {
    /// Mass of a piece of paper `along` × `across`, one layer.
    #[must_use]
    pub fn mass_of(self, along: Mm, across: Mm) -> Gram {
        Gram(self.0 * along.0 * across.0 / MM2_PER_M2)
    }
}

/// H: the sheets of a book lying flat on each other, unfolded. What the wire pierces.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct FlatStack(pub Mm);

/// S: the thickness of the closed book at its spine, twice the flat stack.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct ClosedThickness(pub Mm);

impl FlatStack {
    /// Folded shut, every sheet lies there twice: S = 2 H.
    ///
    /// ```
    /// use quirefit_input::units::{ClosedThickness, FlatStack, Mm};
    /// assert_eq!(FlatStack(Mm(0.77)).closed(), ClosedThickness(Mm(1.54)));
    /// ```
    #[must_use]
    pub fn closed(self) -> ClosedThickness {
        ClosedThickness(self.0 * f64::from(LEAVES_PER_SHEET))
    }
}

impl ClosedThickness {
    /// The stack that folds to this thickness: H = S / 2.
    #[must_use]
    pub fn flat(self) -> FlatStack {
        FlatStack(self.0 / f64::from(LEAVES_PER_SHEET))
    }
}

/// Width (spine to face) and height (along the spine) of a rectangle.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Size {
    /// Spine to face, or across the sheet.
    pub width: Mm,
    /// Along the spine, or along the sheet.
    pub height: Mm,
}

impl Size {
    /// A size from two lengths.
    #[must_use]
    pub const fn new(width: Mm, height: Mm) -> Self {
        Self { width, height }
    }
    /// The same rectangle turned by a quarter.
    #[must_use]
    pub const fn turned(self) -> Self {
        Self::new(self.height, self.width)
    }
}
