//! What the run costs, line by line, and the same book bound otherwise.

mod bindings;
mod items;
mod quantities;

pub use bindings::{Alternative, alternatives};
pub use items::{Cost, Item, Quantities, cost, price};
pub use quantities::{Pressed, quantities};
