//! Basis weight in pounds to grammage, and back.

use crate::data::BasisSize;
use crate::paper::{Stock, Weight};
use crate::units::{Band, GRAM_PER_POUND, Gsm, MM2_PER_M2, SHEETS_PER_REAM};

/// Square metres in a ream of the basic size.
fn ream_area(basis: &BasisSize) -> f64 {
    SHEETS_PER_REAM * basis.sheet.width.get() * basis.sheet.height.get() / MM2_PER_M2
}

/// Grammage of a basis weight: g/m² = lb × 453.59237 / area of the ream in m².
///
/// `pounds` is any positive weight of a ream of 500 sheets of `basis`. Exact by definition.
///
/// ```
/// use quirefit_input::{data::BASIS_SIZES, paper::pounds};
/// let text = BASIS_SIZES.iter().find(|row| row.id == "text").unwrap();
/// assert!((pounds(100.0, text).get() - 148.01).abs() < 0.01);
/// ```
#[must_use]
pub fn pounds(pounds: f64, basis: &BasisSize) -> Gsm {
    Gsm(pounds * GRAM_PER_POUND / ream_area(basis))
}

/// The grammage of a stock with the tolerance of its kind (5 %, card 10 %; government paper
/// standards, 1999); nothing for board sold by thickness alone.
#[must_use]
pub fn grammage(stock: &Stock) -> Option<Band<Gsm>> {
    let nominal = match stock.weight? {
        Weight::Grammage(grammage) => grammage,
        Weight::Pounds(weight, basis) => pounds(weight, basis),
    };
    Some(Band::<Gsm>::around(nominal, nominal * stock.kind.grammage_tolerance))
}
