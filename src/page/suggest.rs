//! What could stand in a field: the shop's own first, then what is usual.

use crate::data::FINISHED_SIZES;
use crate::draft::Kind;
use crate::entry::{self, LengthUnit, Sought, UsualPaper};
use crate::job::SCHEMA;
use crate::paper::{Stock, caliper, grammage};
use crate::shop::Shop;
use crate::units::{Measure, Size, digits};
use crate::view::Printer;
use crate::view::html::Offer;
use crate::words::say;

/// Suggestions shown at once.
const MOST: usize = 8;

/// How far something is from what was typed; of what is equally near, what is foreign or of the other
/// class comes later.
const fn order(distance: u32, foreign: bool, other: bool) -> u32 {
    (((distance << 1) | foreign as u32) << 1) | other as u32
}

/// The nearest first; what is equally near stays in its order. Few of many are ever asked for.
fn nearest<T>(mut found: Vec<(u32, T)>) -> impl Iterator<Item = T> {
    core::iter::from_fn(move || {
        let least = found.iter().map(|(order, _)| *order).min()?;
        let place = found.iter().position(|(order, _)| *order == least)?;
        Some(found.remove(place).1)
    })
}

/// What to offer for a field in which this was typed.
pub(super) fn offers(path: &str, typed: &str, shop: &Shop, printer: &Printer) -> Vec<Offer> {
    let sought = Sought::of(typed);
    let kind = SCHEMA.field(path).map(|field| field.kind);
    let mut offers = match kind {
        Some(Kind::Size) => sizes(&sought, printer),
        Some(Kind::Paper) => papers(&sought, path == "cover", shop, printer),
        _ => press_sheets(&sought, shop, printer),
    };
    // Whoever has typed it already needs no offer of it.
    offers.retain(|offer| offer.typed != typed.trim());
    offers.truncate(MOST);
    offers
}

fn measured(size: Size, printer: &Printer) -> String {
    let size = say("offer.size").put("width", size.width).put("height", size.height);
    printer.text(&size)
}

/// Something with a size, if what was typed is in its name or its sides.
fn sized(
    sought: &Sought,
    name: String,
    size: Size,
    foreign: bool,
    printer: &Printer,
) -> Option<(u32, Offer)> {
    let meaning = measured(size, printer);
    let distance = sought.distance(&format!("{name} {meaning}"))?;
    Some((order(distance, foreign, false), Offer { typed: name, meaning }))
}

/// Named sizes, those of the page's unit first; whatever was typed also finds them turned.
fn sizes(sought: &Sought, printer: &Printer) -> Vec<Offer> {
    let inches = printer.numbers.unit == LengthUnit::Inch;
    let mut found = Vec::new();
    for turned in [false, true] {
        if turned && sought.is_empty() {
            break;
        }
        for row in &FINISHED_SIZES {
            let (name, size) = if turned {
                (format!("{} landscape", row.name), row.size.turned())
            } else {
                (row.name.to_owned(), row.size)
            };
            let name = printer.typed(&name);
            found.extend(sized(sought, name, size, row.inches != inches, printer));
        }
    }
    nearest(found).take(MOST + 1).collect()
}

fn press_sheets(sought: &Sought, shop: &Shop, printer: &Printer) -> Vec<Offer> {
    let sheets = shop.press_sheets.iter();
    let found = sheets.filter_map(|row| sized(sought, row.name.clone(), row.size, false, printer));
    nearest(found.collect()).take(MOST + 1).collect()
}

/// The shop's own papers, then, once something was typed or there are none, usual ones.
fn papers(sought: &Sought, cover: bool, shop: &Shop, printer: &Printer) -> Vec<Offer> {
    let own = shop.stocks.iter().filter_map(|stock| {
        let distance = sought.distance(&format!("{} {}", stock.name, stock.typed))?;
        Some((order(distance, stock.kind.card != cover, false), stock))
    });
    let mut out: Vec<Offer> = nearest(own.collect())
        .map(|stock| Offer { typed: stock.name.clone(), meaning: known(stock, printer) })
        .collect();
    if out.is_empty() || !sought.is_empty() {
        let room = MOST.saturating_sub(out.len());
        out.extend(usual(sought, cover, printer).take(room + 1));
    }
    out
}

/// Weight and thickness of a leaf, as the shop knows them.
fn known(stock: &Stock, printer: &Printer) -> String {
    let Some(leaf) = caliper(stock) else { return String::new() };
    let leaf = Measure::caliper(leaf.value.nominal);
    let meaning = match grammage(stock) {
        Some(weight) => say("offer.own").put("weight", weight.nominal),
        None => say("offer.own.leaf"),
    };
    printer.text(&meaning.put("leaf", leaf))
}

/// Papers in their usual weights, in the page's own unit first.
fn usual(sought: &Sought, cover: bool, printer: &Printer) -> impl Iterator<Item = Offer> {
    let unit = printer.numbers.unit;
    let pounds = unit == LengthUnit::Inch;
    let near = entry::usual_papers(sought.number()).filter_map(move |paper: UsualPaper| {
        let mut words = digits(paper.number());
        for word in paper.words() {
            words.push(' ');
            words.push_str(&printer.typed(word));
            words.push(' ');
            words.push_str(word);
        }
        let distance = sought.distance(&words)?;
        let foreign = paper.class.grade.is_some() != pounds;
        Some((order(distance, foreign, paper.class.card != cover), paper))
    });
    nearest(near.collect()).filter_map(move |paper| {
        let (typed, stock) = entry::described(paper.weight, paper.kind, "", unit)?;
        let meaning = say("offer.usual").put("weight", grammage(&stock)?.nominal);
        let leaf = Measure::caliper(caliper(&stock)?.value.nominal);
        let meaning = printer.text(&meaning.put("leaf", leaf));
        Some(Offer { typed: printer.typed(&typed), meaning })
    })
}
