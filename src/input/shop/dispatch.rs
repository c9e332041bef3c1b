//! Cartons, post and rates of the shop file.

use super::Shop;
use super::figure::{digits, percent};
use super::read::Reader;
use crate::data::PostStep;
use crate::draft::Draft;
use crate::units::{Gram, Mm, Money, PER_CENT, Size};

/// How the shop packs. Nothing is assumed: what a person may lift is for local rules to say.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Carton {
    /// Most a full carton may weigh.
    pub mass_most: Option<Gram>,
    /// What an empty one weighs.
    pub tare: Gram,
    /// Its floor and its height inside.
    pub inside: Option<(Size, Mm)>,
}

/// What the shop reckons with. A rate that is not given makes no line in the cost.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Rates {
    /// The sign of its currency, as typed.
    pub currency: String,
    /// An hour of the finishing line, makeready and run alike.
    pub line_hour: Option<Money>,
    /// A kilogram of paper.
    pub paper_kilo: Option<Money>,
    /// One printed side of a press sheet.
    pub click: Option<Money>,
    /// A kilogram of wire.
    pub wire_kilo: Option<Money>,
    /// A carton.
    pub carton: Option<Money>,
    /// Every job, whatever its size.
    pub job: Option<Money>,
    /// The rule that makes a price of a cost; nothing when no price is shown.
    pub price: Option<PriceRule>,
}

/// The shop's own rule from cost to price.
#[derive(Debug, Clone, PartialEq)]
pub struct PriceRule {
    /// Share added to the cost.
    pub markup: f64,
    /// Least price of a job.
    pub least: Money,
    /// Rounded up to a multiple of this; nothing for no rounding.
    pub round: Option<Money>,
    /// How long it holds, as typed.
    pub valid: String,
}

/// Reads the carton.
pub(super) fn carton(reader: &mut Reader) -> Carton {
    let width = reader.number("carton_width");
    let length = reader.number("carton_length");
    let height = reader.number("carton_height");
    Carton {
        mass_most: reader.number("carton_mass_most").map(Gram),
        tare: Gram(reader.number("carton_tare").unwrap_or_default()),
        inside: width
            .zip(length)
            .zip(height)
            .map(|((width, length), height)| (Size::new(Mm(width), Mm(length)), Mm(height))),
    }
}

/// Reads the postal steps, in their order.
pub(super) fn post(reader: &mut Reader, count: usize) -> Vec<PostStep> {
    let mut steps = Vec::with_capacity(count);
    for index in 0..count {
        let at = |field: &str| format!("postal_steps.{index}.{field}");
        steps.push(PostStep {
            name: reader.text(&at("name")).into(),
            mass_most: reader.number(&at("mass_most")),
            thickness_most: reader.number(&at("thickness_most")),
            length_most: reader.number(&at("length_most")),
            width_most: reader.number(&at("width_most")),
            price: reader.number(&at("price")),
        });
    }
    steps
}

/// Reads the rates and the price rule.
pub(super) fn rates(reader: &mut Reader) -> Rates {
    let mut money = |id: &str| reader.number(id).map(Money);
    let (line_hour, paper_kilo) = (money("rate_line_hour"), money("rate_paper_kilo"));
    let click = money("rate_click");
    let (wire_kilo, carton, job) =
        (money("rate_wire_kilo"), money("rate_carton"), money("rate_job"));
    let (least, round) = (money("price_least"), money("price_round"));
    let price = reader.number("price_markup").map(|percent| PriceRule {
        markup: percent / PER_CENT,
        least: least.unwrap_or(Money::ZERO),
        round: round.filter(|step| *step > Money::ZERO),
        valid: reader.text("price_valid"),
    });
    let currency = reader.text("currency");
    Rates { currency, line_hour, paper_kilo, click, wire_kilo, carton, job, price }
}

/// Writes all of it back as texts.
pub(super) fn write(shop: &Shop, draft: &mut Draft) {
    let number = |draft: &mut Draft, path: &str, number: Option<f64>| {
        if let Some(number) = number {
            draft.set(path, &digits(number));
        }
    };
    let grams = |draft: &mut Draft, path: &str, grams: Option<f64>| {
        if let Some(grams) = grams {
            draft.set(path, &format!("{} g", digits(grams)));
        }
    };
    let carton = &shop.carton;
    grams(draft, "carton_mass_most", carton.mass_most.map(Gram::get));
    grams(draft, "carton_tare", (carton.tare > Gram::ZERO).then_some(carton.tare.get()));
    number(draft, "carton_width", carton.inside.map(|(floor, _)| floor.width.get()));
    number(draft, "carton_length", carton.inside.map(|(floor, _)| floor.height.get()));
    number(draft, "carton_height", carton.inside.map(|(_, height)| height.get()));
    let rates = &shop.rates;
    draft.set("currency", &rates.currency);
    for (id, rate) in [
        ("rate_line_hour", rates.line_hour),
        ("rate_paper_kilo", rates.paper_kilo),
        ("rate_click", rates.click),
        ("rate_wire_kilo", rates.wire_kilo),
        ("rate_carton", rates.carton),
        ("rate_job", rates.job),
    ] {
        number(draft, id, rate.map(Money::get));
    }
    if let Some(price) = &rates.price {
        draft.set("price_markup", &percent(price.markup));
        number(draft, "price_least", Some(price.least.get()));
        number(draft, "price_round", price.round.map(Money::get));
        draft.set("price_valid", &price.valid);
    }
    for (index, step) in shop.post.iter().enumerate() {
        let at = |field: &str| format!("postal_steps.{index}.{field}");
        draft.set(&at("name"), &step.name);
        grams(draft, &at("mass_most"), step.mass_most);
        number(draft, &at("thickness_most"), step.thickness_most);
        number(draft, &at("length_most"), step.length_most);
        number(draft, &at("width_most"), step.width_most);
        number(draft, &at("price"), step.price);
    }
}
