//! Paper: weight from pounds, thickness of one leaf with its doubt, and grain.

mod caliper;
mod grain;
mod stock;
mod weight;

pub use caliper::{caliper, thickness};
pub use grain::Grain;
pub use stock::{Stock, Thickness, Weight};
pub use weight::{grammage, pounds};
