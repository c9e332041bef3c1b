//! Which way is better: what can be done at all, fibres, cost where prices are known, waste, cuts.

use super::{Refusal, Route, Way};
use crate::job::Job;
use crate::paper::Grain;
use crate::shop::{PressSheet, Shop};
use crate::units::{MM2_PER_M2, Money};

/// Grams in a kilogram.
const GRAM_PER_KILO: f64 = 1000.0;
/// Sheets that a price is for.
const THOUSAND: f64 = 1000.0;
/// Printed sides of a sheet.
pub(super) const SIDES: f64 = 2.0;

/// Prices of one set of sheets.
pub(super) struct Prices {
    /// Paper of one set, every folded sheet with its own grammage, for a square millimetre of sheet.
    area: Option<f64>,
    /// Folded sheets.
    sheets: f64,
    /// One printed side.
    click: Option<f64>,
    /// Every press sheet has a price of its paper.
    paper_known: bool,
    /// Every press sheet has a price of a printed side.
    clicks_known: bool,
    /// Some have one and some have not.
    clicks_mixed: bool,
}

impl Prices {
    pub(super) fn of(job: &Job, shop: &Shop) -> Self {
        let kilo = shop.rates.paper_kilo.map(Money::get);
        let grams: Option<f64> = job
            .sections
            .iter()
            .map(|section| Some(section.grammage?.nominal.get() * section.sheets.as_f64()))
            .sum();
        let area = kilo.zip(grams).map(|(kilo, grams)| grams * kilo / (GRAM_PER_KILO * MM2_PER_M2));
        let click = shop.rates.click.map(Money::get);
        let own = shop.press_sheets.iter().filter(|sheet| sheet.click.is_some()).count();
        let all = shop.press_sheets.len();
        Self {
            area,
            sheets: job.sheets().as_f64(),
            click,
            paper_known: area.is_some()
                || shop.press_sheets.iter().all(|sheet| sheet.thousand.is_some()),
            clicks_known: click.is_some() || own == all,
            clicks_mixed: click.is_none() && own > 0 && own < all,
        }
    }

    /// Whether every press sheet can be priced alike, so that prices may rank them.
    pub(super) fn known(&self) -> bool {
        self.paper_known && !self.clicks_mixed
    }

    /// Paper and printed sides of one set, from press sheets that hold so many flats each.
    pub(super) fn set(&self, sheet: &PressSheet, flats: u32) -> Option<Money> {
        let area = sheet.size.width.get() * sheet.size.height.get();
        let paper = match sheet.thousand {
            Some(thousand) => thousand.get() / THOUSAND * self.sheets,
            None => self.area? * area,
        };
        let click = sheet.click.map(Money::get).or(self.click).filter(|_| self.clicks_known);
        let sides = click.unwrap_or_default() * SIDES * self.sheets;
        (flats > 0 && self.known()).then(|| Money((paper + sides) / f64::from(flats)))
    }
}

/// How far a refused way is from being one, nearest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Gravity {
    Usable,
    Chip,
    Feed,
    Edges,
    Small,
}

const fn gravity(way: &Way) -> Gravity {
    match way.refusal {
        None => Gravity::Usable,
        Some(Refusal::ChipThin(_) | Refusal::ChipDeep(_)) => Gravity::Chip,
        Some(Refusal::OpenWidth(_) | Refusal::TravelHeight(_)) => Gravity::Feed,
        Some(Refusal::Edges(_)) => Gravity::Edges,
        Some(Refusal::Small(_)) => Gravity::Small,
    }
}

/// Where a way stands among others: less is better, and what is named first weighs most. Two ways
/// with fibres across the fold come after all others: such books crack and gape whatever they cost. At
/// the same cost and waste the planned cut comes before one that falls out, then fewer cuts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Rank {
    gravity: Gravity,
    across: bool,
    price: Key,
    waste: Key,
    route: Route,
    cuts: u32,
    /// The way's place in the shop's order.
    pub(super) place: usize,
}

impl Rank {
    pub(super) fn of(way: &Way, by_cost: bool) -> Self {
        let price = way.cost.filter(|_| by_cost).map_or(f64::INFINITY, Money::get);
        // Of one sheet that is refused both ways the nearer miss; waste says nothing then.
        let waste = if way.flats() > 0 { -way.used } else { missing(way) };
        Self {
            gravity: gravity(way),
            across: way.grain == Grain::AcrossSpine,
            price: Key::of(price),
            waste: Key::of(waste),
            route: way.route,
            cuts: way.cuts,
            place: way.place(),
        }
    }
}

fn missing(way: &Way) -> f64 {
    match way.refusal {
        Some(Refusal::Small(by) | Refusal::Edges(by)) => by.get(),
        _ => 0.0,
    }
}

/// A number as a whole one in the same order: that of `f64::total_cmp`, worked out once.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Key(i64);

impl Key {
    const fn of(number: f64) -> Self {
        // Negative numbers grow with their bits turned round, all but the sign.
        let bits = number.to_bits().cast_signed();
        Self(bits ^ (bits >> (i64::BITS - 1)).cast_unsigned().wrapping_shr(1).cast_signed())
    }
}

#[cfg(test)]
mod tests {
    use super::Key;

    #[test]
    fn keys_are_in_the_order_of_their_numbers() {
        let numbers = [f64::NEG_INFINITY, -7.5, -1e-300, -0.0, 0.0, 0.25, 3e8, f64::INFINITY];
        for one in numbers {
            for other in numbers {
                assert_eq!(
                    Key::of(one).cmp(&Key::of(other)),
                    one.total_cmp(&other),
                    "{one} {other}"
                );
            }
        }
    }
}
