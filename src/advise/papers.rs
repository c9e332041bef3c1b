//! Other papers for a section: lighter and heavier of the same kind, other kinds, the shop's own.

use crate::data::{self, ChangeKind, STOCK_KINDS, StockKind, USUAL_WEIGHTS};
use crate::entry::{self, LengthUnit};
use crate::paper::{Grain, Stock, Thickness, Weight, caliper, grammage};
use crate::shop::Shop;
use crate::source::Sourced;
use crate::units::{Band, Gsm, MICRON_PER_MM, Mm, fixed};

/// A paper that could be taken instead.
#[derive(Debug, Clone)]
pub(super) struct PaperChoice {
    /// What would be typed for it.
    pub(super) text: String,
    /// That text, read.
    pub(super) stock: Stock,
    pub(super) caliper: Sourced<Band<Mm>>,
    pub(super) grammage: Option<Band<Gsm>>,
    pub(super) kind: &'static ChangeKind,
    /// The share by which its weight differs.
    pub(super) differs: f64,
}

/// What papers are looked for.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wanted<'a> {
    /// The paper now.
    pub(super) stock: &'a Stock,
    /// For the cover rather than the inside.
    pub(super) cover: bool,
    /// The grain that a field of its own says, whatever the paper.
    pub(super) grain: Option<Grain>,
    pub(super) unit: LengthUnit,
}

/// Every paper worth trying in place of one.
pub(super) fn choices(wanted: &Wanted, shop: &Shop) -> Vec<PaperChoice> {
    let mut out = Vec::new();
    let stock = wanted.stock;
    let (same, other) = if wanted.cover {
        (&data::COVER, &data::COVER)
    } else {
        (&data::WEIGHT, &data::OTHER_KIND)
    };
    let bulk = bulk_text(stock);
    for weight in usual(stock) {
        out.extend(described(wanted, weight, stock.kind, &bulk, same));
    }
    if let Some(weight) = stock.weight {
        let others = STOCK_KINDS.iter().filter(|kind| {
            kind.id != stock.kind.id && kind.card == stock.kind.card && kind.bulk.is_some()
        });
        for kind in others {
            out.extend(described(wanted, weight, kind, "", other));
        }
    }
    let own = if wanted.cover { &data::COVER } else { &data::OWN };
    for paper in &shop.stocks {
        if paper.name != stock.name && (wanted.cover || !paper.kind.card) {
            out.extend(finish(wanted, paper.name.clone(), paper.clone(), own));
        }
    }
    out
}

/// The usual weights in which this stock could be had, in the unit it was given in.
fn usual(stock: &Stock) -> impl Iterator<Item = Weight> {
    let (grade, now) = match stock.weight {
        Some(Weight::Pounds(pounds, basis)) => (Some(basis), pounds),
        Some(Weight::Grammage(grammage)) => (None, grammage.get()),
        None => (None, f64::NAN),
    };
    let card = stock.kind.card;
    USUAL_WEIGHTS
        .iter()
        .filter(move |row| row.grade == grade.map(|basis| basis.id))
        .filter(move |row| !now.is_nan() && (row.grade.is_some() || row.card == card))
        .flat_map(|row| row.weights)
        .filter(move |weight| **weight != now)
        .map(move |weight| match grade {
            Some(basis) => Weight::Pounds(*weight, basis),
            None => Weight::Grammage(Gsm(*weight)),
        })
}

/// The specific volume of a stock whose thickness is known, as a person would type it; a stock known
/// by its kind alone keeps the kind's band.
fn bulk_text(stock: &Stock) -> String {
    if stock.thickness == Thickness::FromKind {
        return String::new();
    }
    let leaf = caliper(stock).map(|caliper| caliper.value.nominal);
    let weight = grammage(stock).map(|band| band.nominal);
    match (leaf, weight) {
        (Some(leaf), Some(weight)) => {
            format!(" {} cm3/g", fixed(leaf.get() * MICRON_PER_MM / weight.get(), 3))
        }
        _ => String::new(),
    }
}

/// A paper as a person would type it.
fn described(
    wanted: &Wanted,
    weight: Weight,
    kind: &'static StockKind,
    bulk: &str,
    change: &'static ChangeKind,
) -> Option<PaperChoice> {
    let (text, stock) = entry::described(weight, kind, bulk, wanted.unit)?;
    finish(wanted, text, stock, change)
}

fn finish(
    wanted: &Wanted,
    text: String,
    stock: Stock,
    kind: &'static ChangeKind,
) -> Option<PaperChoice> {
    let grain = wanted.grain.unwrap_or(stock.grain);
    let stock = Stock { grain, ..stock };
    let weight = grammage(&stock);
    let nominal = |band: Option<Band<Gsm>>| band.map(|band| band.nominal.get());
    let differs = match (nominal(weight), nominal(grammage(wanted.stock))) {
        (Some(other), Some(now)) => (other / now - 1.0).abs(),
        _ => 1.0,
    };
    Some(PaperChoice { caliper: caliper(&stock)?, grammage: weight, text, stock, kind, differs })
}
