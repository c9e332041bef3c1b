//! What the run costs, line by line, and the same book bound otherwise.

mod bindings;
mod curve;
mod items;
mod quantities;

pub use bindings::{Alternative, alternatives};
pub use curve::{AtCopies, orders, span};
pub use items::{Cost, Item, Paper, Quantities, cost, price};
pub use quantities::{Pressed, quantities};
