//! Cost = Σ quantity × the shop's rate. A rate that is not given makes no line, and says so.

use crate::shop::{PriceRule, Rates};
use crate::units::{Copies, Gram, Measure, Money, Second, Unit};

/// Grams in a kilogram.
const GRAM_PER_KILO: f64 = 1000.0;
/// Seconds in an hour.
const SECOND_PER_HOUR: f64 = 3600.0;
/// Press sheets that a price is for.
const THOUSAND: f64 = 1000.0;

/// Paper for a run, as the shop buys it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Paper {
    /// By its mass; nothing where a paper's weight is not known.
    Kilos(Option<Gram>),
    /// By the press sheet: how many, and what a thousand of them cost.
    Sheets(f64, Money),
}

impl Default for Paper {
    fn default() -> Self {
        Self::Kilos(None)
    }
}

/// What the stages found that a rate can be put beside. Nothing: not known.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Quantities {
    /// Paper for the run with its overs, as it is bought.
    pub paper: Paper,
    /// Printed sides of press sheets.
    pub press_sides: Option<f64>,
    /// What one of them costs, where that is not the shop's rate for all.
    pub click: Option<Money>,
    /// The finishing line, makeready and run.
    pub line_time: Option<Second>,
    /// Wire for the run.
    pub wire: Option<Gram>,
    /// Cartons.
    pub cartons: Option<u32>,
}

/// One line of the cost.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Item {
    /// Its name in language keys.
    pub id: &'static str,
    /// How much: kilograms or thousands of sheets, sides, hours, pieces.
    pub quantity: f64,
    /// The shop's rate for one.
    pub rate: Money,
    /// Quantity × rate.
    pub total: Money,
}

/// The cost of a run.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Cost {
    /// Its lines, in their order; nothing where quantity or rate is missing.
    pub lines: [Option<Item>; Cost::LINES],
    /// Their sum.
    pub total: Money,
    /// The sum over the good copies.
    pub each: Money,
    /// A quantity or a rate is missing, so the sum is not the whole cost.
    pub incomplete: bool,
}

impl Item {
    /// It is paid for by its mass.
    #[must_use]
    pub fn by_mass(&self) -> bool {
        matches!(self.id, "paper" | "wire")
    }
    /// How much, in its own unit.
    #[must_use]
    pub fn amount(&self) -> Measure {
        let unit = if self.by_mass() { Unit::Kilos } else { Unit::Quantity };
        Measure::new(self.quantity, unit)
    }
    /// What one of that unit costs.
    #[must_use]
    pub fn price(&self) -> Measure {
        let unit = if self.by_mass() { Unit::PerKilo } else { Unit::Rate };
        Measure::new(self.rate.get(), unit)
    }
}

impl Cost {
    /// How many lines a cost can have.
    const LINES: usize = 6;
    /// The cost of a run that is not known.
    pub const UNKNOWN: Self = Self {
        lines: [None; Self::LINES],
        total: Money::ZERO,
        each: Money::ZERO,
        incomplete: true,
    };

    /// The lines there are.
    pub fn items(&self) -> impl Iterator<Item = &Item> {
        self.lines.iter().flatten()
    }
    /// The line of this name, if there is one.
    #[must_use]
    pub fn item(&self, id: &str) -> Option<&Item> {
        self.items().find(|item| item.id == id)
    }
}

/// Puts a rate beside each quantity.
#[must_use]
pub fn cost(rates: &Rates, quantities: &Quantities, copies: Copies) -> Cost {
    let kilos = |mass: Option<Gram>| mass.map(|mass| mass.get() / GRAM_PER_KILO);
    let paper = match quantities.paper {
        Paper::Kilos(mass) => ("paper", kilos(mass), rates.paper_kilo),
        Paper::Sheets(count, thousand) => ("sheets", Some(count / THOUSAND), Some(thousand)),
    };
    let rows: [_; Cost::LINES] = [
        paper,
        ("click", quantities.press_sides, quantities.click.or(rates.click)),
        ("line", quantities.line_time.map(|time| time.get() / SECOND_PER_HOUR), rates.line_hour),
        ("wire", kilos(quantities.wire), rates.wire_kilo),
        ("carton", quantities.cartons.map(f64::from), rates.carton),
        ("job", Some(1.0), rates.job),
    ];
    let mut cost = Cost::default();
    for (line, (id, quantity, rate)) in cost.lines.iter_mut().zip(rows) {
        let (Some(quantity), Some(rate)) = (quantity, rate) else {
            cost.incomplete = true;
            continue;
        };
        let total = rate * quantity;
        cost.total = cost.total + total;
        *line = Some(Item { id, quantity, rate, total });
    }
    cost.each = cost.total / copies.as_f64().max(1.0);
    cost
}

/// The price by the shop's own rule: cost × (1 + mark-up), at least the least, rounded up.
#[must_use]
pub fn price(rule: &PriceRule, cost: &Cost) -> Money {
    let marked = (cost.total * (1.0 + rule.markup)).max(rule.least);
    match rule.round {
        Some(step) => step * (marked / step).ceil(),
        None => marked,
    }
}

#[cfg(test)]
mod tests {
    use super::{Cost, Paper, Quantities, cost, price};
    use crate::shop::{PriceRule, Rates};
    use crate::units::{Copies, Gram, Money, Second};

    fn rates() -> Rates {
        Rates {
            line_hour: Some(Money(90.0)),
            paper_kilo: Some(Money(2.0)),
            click: Some(Money(0.05)),
            ..Rates::default()
        }
    }

    #[test]
    fn by_hand() {
        // 250 kg at 2.00 = 500; 4,000 sides at 0.05 = 200; 1 h 30 at 90 an hour = 135.
        let quantities = Quantities {
            paper: Paper::Kilos(Some(Gram(250_000.0))),
            press_sides: Some(4000.0),
            line_time: Some(Second(5400.0)),
            ..Quantities::default()
        };
        let found = cost(&rates(), &quantities, Copies(1000));
        assert_eq!(found.total, Money(835.0));
        assert_eq!(found.each, Money(0.835));
        assert!(found.incomplete, "wire, cartons and the job have no rate");
    }

    /// 1,250 press sheets at 80.00 a thousand are 100.00, whatever a kilogram costs.
    #[test]
    fn paper_by_the_thousand() {
        let paper = Paper::Sheets(1250.0, Money(80.0));
        let found = cost(&rates(), &Quantities { paper, ..Quantities::default() }, Copies(1000));
        let line = found.item("sheets").unwrap();
        assert_eq!((line.quantity, line.rate, line.total), (1.25, Money(80.0), Money(100.0)));
        assert!(found.item("paper").is_none(), "no sheet is paid for twice");
        assert_eq!(found.total, Money(100.0));
    }

    #[test]
    fn a_missing_quantity_is_no_free_item() {
        let found = cost(&rates(), &Quantities::default(), Copies(10));
        assert!(found.items().count() == 0 && found.incomplete);
    }

    #[test]
    fn the_price_follows_the_rule() {
        let rule = PriceRule {
            markup: 0.25,
            least: Money(100.0),
            round: Some(Money(5.0)),
            valid: String::new(),
        };
        let of = |total| price(&rule, &Cost { total: Money(total), ..Cost::default() });
        // 10 is under the least; 101 × 1.25 = 126.25 goes up to 130; 104 × 1.25 is 130 exactly.
        assert_eq!((of(10.0), of(101.0), of(104.0)), (Money(100.0), Money(130.0), Money(130.0)));
    }
}
