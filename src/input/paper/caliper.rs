//! The thickness of one leaf, always with its doubt and where it comes from.

use crate::data::PRACTICE;
use crate::paper::{Stock, Thickness, grammage};
use crate::source::{Source, Sourced};
use crate::units::{Band, Bulk, Gsm, Mm};

/// Caliper = grammage × specific volume (ISO 534): g/m² × cm³/g = µm.
///
/// ```
/// use quirefit_input::{paper, units::{Bulk, Gsm}};
/// assert_eq!(paper::thickness(Gsm(80.0), Bulk(1.5)).microns(), 120.0);
/// ```
#[must_use]
pub fn thickness(grammage: Gsm, bulk: Bulk) -> Mm {
    Mm::from_microns(grammage.get() * bulk.get())
}

/// The caliper of a stock: measured before given by the mill before the kind's band.
///
/// - a pack of N leaves measured here: thickness / N, ± 1 % (common practice);
/// - given by the mill: ± 5 % or the tolerance the government standards allow the kind (0.013 mm
///   for text, 0.008 copier, 0.025 card), whichever is more;
/// - otherwise the band of the kind times the nominal grammage.
///
/// Nothing comes back for a stock with neither weight nor thickness, or board without thickness.
#[must_use]
pub fn caliper(stock: &Stock) -> Option<Sourced<Band<Mm>>> {
    let nominal_weight = || grammage(stock).map(|band| band.nominal);
    let given = |nominal: Mm| {
        let doubt = (nominal * PRACTICE.mill_doubt.value).max(stock.kind.caliper_tolerance);
        Sourced::new(Band::<Mm>::around(nominal, doubt.min(nominal)), Source::Mill)
    };
    Some(match stock.thickness {
        Thickness::Pack { leaves, thickness } => {
            let leaf = thickness / f64::from(leaves.max(1));
            let doubt = leaf * PRACTICE.measured_doubt.value;
            Sourced::new(Band::<Mm>::around(leaf, doubt), Source::Measured)
        }
        Thickness::Caliper(leaf) => given(leaf),
        Thickness::Bulk(bulk) => given(thickness(nominal_weight()?, bulk)),
        Thickness::FromKind => {
            let weight = nominal_weight()?;
            Sourced::new(stock.kind.bulk?.map(|bulk| thickness(weight, bulk)), stock.kind.source)
        }
    })
}
