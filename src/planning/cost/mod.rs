//! What the run costs, line by line.

mod curve;
mod items;
mod quantities;

pub use curve::{AtCopies, orders, span};
pub use items::{Cost, Item, Paper, Quantities, cost, price};
pub use quantities::{Pressed, quantities};
