//! Postal steps of the demo shop: invented, no post office has them. A shop puts its own in.

use std::borrow::Cow;

/// One step of a postal table: what may be sent for its price.
#[derive(Debug, Clone, PartialEq)]
pub struct PostStep {
    /// What people call it.
    pub name: Cow<'static, str>,
    /// Most it may weigh, grams.
    pub mass_most: Option<f64>,
    /// Most it may be thick, millimetres.
    pub thickness_most: Option<f64>,
    /// Most its longer edge may measure, millimetres.
    pub length_most: Option<f64>,
    /// Most its shorter edge may measure, millimetres.
    pub width_most: Option<f64>,
    /// Postage for one.
    pub price: Option<f64>,
}

const fn step(
    name: &'static str,
    mass: f64,
    thickness: f64,
    length: f64,
    width: f64,
    price: f64,
) -> PostStep {
    PostStep {
        name: Cow::Borrowed(name),
        mass_most: Some(mass),
        thickness_most: Some(thickness),
        length_most: Some(length),
        width_most: Some(width),
        price: Some(price),
    }
}

/// The demo shop's table, cheapest first.
pub static POST_STEPS: [PostStep; 4] = [
    step("Small envelope", 50.0, 5.0, 235.0, 165.0, 0.90),
    step("Flat envelope", 100.0, 5.0, 353.0, 250.0, 1.30),
    step("Thick envelope", 500.0, 20.0, 353.0, 250.0, 2.40),
    step("Small parcel", 2000.0, 100.0, 600.0, 300.0, 4.80),
];
