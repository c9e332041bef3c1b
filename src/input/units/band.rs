//! A value with its doubt: the least, the most likely and the greatest it may be.

use super::{Bulk, Gram, Gsm, Mm, Second};

/// Low, nominal and high of one quantity, in that order of size.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Band<T> {
    /// The least it may be.
    pub low: T,
    /// What to expect.
    pub nominal: T,
    /// The most it may be.
    pub high: T,
}

impl<T: Copy> Band<T> {
    /// A value without doubt.
    #[must_use]
    pub const fn exact(value: T) -> Self {
        Self { low: value, nominal: value, high: value }
    }
    /// The same operation on all three; it must not turn the order round.
    #[must_use]
    pub fn map<U>(self, f: impl Fn(T) -> U) -> Band<U> {
        Band { low: f(self.low), nominal: f(self.nominal), high: f(self.high) }
    }
}

/// Gives bands of a quantity the arithmetic that keeps low ≤ nominal ≤ high.
macro_rules! band_of {
    ($($name:ident),*) => {$(
        impl Band<$name> {
            /// Nominal with the same doubt to either side.
            #[must_use]
            pub fn around(nominal: $name, spread: $name) -> Self {
                Self { low: nominal - spread, nominal, high: nominal + spread }
            }
            /// Multiplied by a number that is not negative.
            #[must_use]
            pub fn times(self, factor: f64) -> Self {
                self.map(|value| value * factor)
            }
            /// How far the low end lies below nominal.
            #[must_use]
            pub fn below(self) -> $name {
                self.nominal - self.low
            }
            /// How far the high end lies above nominal.
            #[must_use]
            pub fn above(self) -> $name {
                self.high - self.nominal
            }
            /// Moved by an exact amount.
            #[must_use]
            pub fn shifted(self, by: $name) -> Self {
                self.map(|value| value + by)
            }
            /// The sum of independent parts: their doubts add as the root of the sum of squares.
            /// Parts that err together (one lot of paper) must be added before they come here.
            #[must_use]
            pub fn sum_independent(parts: impl Iterator<Item = Self>) -> Self {
                let (mut nominal, mut below, mut above) = (0.0, 0.0, 0.0);
                for part in parts {
                    nominal += part.nominal.get();
                    below += part.below().get().powi(2);
                    above += part.above().get().powi(2);
                }
                Self {
                    low: $name(nominal - below.sqrt()),
                    nominal: $name(nominal),
                    high: $name(nominal + above.sqrt()),
                }
            }
        }
    )*};
}

band_of!(Mm, Gsm, Gram, Second, Bulk);
