//! How many copies people order.

use crate::source::{Source, Sourced};

/// First digits of the numbers that people order, within one power of ten: 100, 150, 200 …
pub static ORDERED: Sourced<[f64; 9]> =
    Sourced::new([1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 7.5], Source::Practice);

/// An order may turn out so many times smaller or larger while it is talked about.
pub const ORDER_SPAN: Sourced<f64> = Sourced::new(5.0, Source::Practice);

/// What a customer asks the price of further copies for.
pub const MORE_COPIES: Sourced<u32> = Sourced::new(100, Source::Practice);
