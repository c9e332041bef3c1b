//! Papers said back in the words a person would type for them.

use super::{LengthUnit, paper};
use crate::data::{BASIS_SIZES, STOCK_KINDS, StockKind, USUAL_WEIGHTS, UsualWeights};
use crate::paper::{Stock, Weight};
use crate::units::{Gsm, digits};

/// A weight and a kind as a person would type them, `more` behind; with that text read. Nothing where
/// the text would be read as another kind. Some grades name their kind themselves.
///
/// ```
/// use quirefit_input::{data::stock_kind, entry::{LengthUnit, described}, paper::Weight, units::Gsm};
/// let silk = stock_kind("silk").unwrap();
/// let (text, _) =
///     described(Weight::Grammage(Gsm(130.0)), silk, "", LengthUnit::Millimetre).unwrap();
/// assert_eq!(text, "130 gsm silk");
/// ```
#[must_use]
pub fn described(
    weight: Weight,
    kind: &'static StockKind,
    more: &str,
    unit: LengthUnit,
) -> Option<(String, Stock)> {
    let weight = match weight {
        Weight::Grammage(grammage) => format!("{} gsm", digits(grammage.get())),
        Weight::Pounds(pounds, basis) => format!("{} lb {}", digits(pounds), basis.id),
    };
    let named = kind.typed.first().copied().unwrap_or_default();
    ["", named].into_iter().find_map(|word| {
        let gap = if word.is_empty() { "" } else { " " };
        let text = format!("{weight}{gap}{word}{more}");
        let stock = paper(&text, unit).value()?;
        (stock.kind.id == kind.id).then_some((text, stock))
    })
}

/// A paper in a weight in which its kind is usually sold.
#[derive(Debug, Clone, Copy)]
pub struct UsualPaper {
    /// Its weight.
    pub weight: Weight,
    /// Its kind.
    pub kind: &'static StockKind,
    /// The class of papers it belongs to.
    pub class: &'static UsualWeights,
}

impl UsualPaper {
    /// The number of its weight, in grams or pounds as its class counts.
    #[must_use]
    pub fn number(&self) -> f64 {
        match self.weight {
            Weight::Grammage(grammage) => grammage.get(),
            Weight::Pounds(pounds, _) => pounds,
        }
    }
    /// Every word that people have for it: its unit, its grade, its kind.
    pub fn words(&self) -> impl Iterator<Item = &'static str> {
        let (unit, grade): (&[&str], &[&str]) = match self.weight {
            Weight::Grammage(_) => (&["gsm", "g", "grams"], &[]),
            Weight::Pounds(_, basis) => (&["lb", "#", "pounds"], basis.typed),
        };
        unit.iter().chain(grade).chain(self.kind.typed).copied()
    }
}

/// Every paper in every usual weight; and in the weight `asked` for where it lies between those.
pub fn usual_papers(asked: Option<f64>) -> impl Iterator<Item = UsualPaper> {
    USUAL_WEIGHTS.iter().flat_map(move |class| {
        let basis = class.grade.and_then(|id| BASIS_SIZES.iter().find(|basis| basis.id == id));
        let between = |asked: &f64| {
            class.weights.iter().any(|weight| weight < asked)
                && class.weights.iter().all(|weight| weight != asked)
                && class.weights.iter().any(|weight| weight > asked)
        };
        let asked = asked.filter(between);
        asked.into_iter().chain(class.weights.iter().copied()).flat_map(move |number| {
            let weight = match basis {
                Some(basis) => Weight::Pounds(number, basis),
                None => Weight::Grammage(Gsm(number)),
            };
            let kinds = class.kinds.iter();
            let known = kinds.filter_map(|id| STOCK_KINDS.iter().find(|kind| kind.id == *id));
            known.map(move |kind| UsualPaper { weight, kind, class })
        })
    })
}
