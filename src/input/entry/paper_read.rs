//! A paper: weight, grade, kind, thickness and grain, in any order, with names in between.

use super::number::Style;
use super::paper_echo::{ask_grade, ask_unit, echo};
use super::paper_scan::{BULK_RANGE, Described, describe};
use super::paper_words::usual;
use super::text::{Line, Token, quoted};
use super::{LengthUnit, Reading};
use crate::data::UNSAID;
use crate::paper::{Stock, Thickness, Weight, grammage};
use crate::units::{Bulk, Gsm, MICRON_PER_MM, Measure, Mm, Unit};
use crate::words::{Say, say};

/// Weights that are planned.
pub(super) const WEIGHT_RANGE: (Gsm, Gsm) = (Gsm(20.0), Gsm(600.0));
/// Thicknesses of one leaf that are planned.
const LEAF_RANGE: (Mm, Mm) = (Mm(0.02), Mm(1.5));
/// The most leaves in a measured pack.
const PACK_MOST: f64 = 2000.0;
/// A number beside a kind is grams from here on; below, it may be pounds.
const GRAMS_FROM: f64 = 35.0;

/// An answer before a paper is read to its end.
type Answer = Box<Reading<Stock>>;

/// Reads a paper: "100# text", "130 silk 0.106 mm", "90 gsm vol 15", "10 pt board",
/// "90 gsm, 20 leaves = 2.1 mm". Weights come out between 20 and 600 g/m², one leaf between 0.02
/// and 1.5 mm, bulk between 0.5 and 3 cm³/g. A thickness without a unit is counted in millimetres,
/// very small ones in inches. Words without a meaning stay part of the name.
///
/// # Errors
/// [`Reading::Ask`] for pounds without a grade and numbers that may be either; [`Reading::Wrong`]
/// for texts without any weight or thickness, board without thickness, and for all ranges.
///
/// ```
/// use quirefit_input::{entry::{self, LengthUnit}, paper};
/// let stock = entry::paper("100# text", LengthUnit::Millimetre).value().unwrap();
/// assert!((paper::grammage(&stock).unwrap().nominal.get() - 148.01).abs() < 0.01);
/// ```
#[must_use]
pub fn paper(text: &str, default_unit: LengthUnit) -> Reading<Stock> {
    let line = match Line::of(text, Style::Measured) {
        Ok(line) => line,
        Err(reading) => return reading.into(),
    };
    let described = describe(&line, default_unit);
    if described.broken {
        return unread(text);
    }
    if described.grammages.len() > 1 || described.pounds.len() > 1 {
        return Reading::wrong(
            say("entry.paper.twice").text("given", quoted(text)),
            say("entry.paper.example"),
        );
    }
    if described.ends_bare && (described.bare.len() > 1 || described.has_weight()) {
        return Reading::Incomplete;
    }
    let weight = match weight(&described, &line) {
        Ok(weight) => weight,
        Err(answer) => return *answer,
    };
    let thickness = match thickness(&described) {
        Ok(thickness) => thickness,
        Err(answer) => return *answer,
    };
    let stock = Stock {
        name: text.trim().to_owned(),
        typed: text.trim().to_owned(),
        weight,
        kind: described.kind.unwrap_or(&UNSAID),
        thickness,
        grain: described.grain,
    };
    complete(stock, &described, text)
}

/// Whether every piece of a text is understood as part of a paper.
pub(super) fn is_paper(line: &Line, default_unit: LengthUnit) -> bool {
    let described = describe(line, default_unit);
    let weights = described.grammages.len() + described.pounds.len() + described.bare.len();
    let bare_alone = !described.bare.is_empty()
        && described.grade.is_none()
        && described.kind.is_none()
        && !described.metric;
    let leaves = described.pack.is_none() || !described.thick.is_empty();
    let given = weights > 0 || !described.thick.is_empty();
    let (least, most) = WEIGHT_RANGE;
    let bare_fits = described.bare.iter().all(|(n, _)| (least.get()..=most.get()).contains(n));
    let times = line.tokens().contains(&Token::Sign('×'));
    let sound = described.unknown.is_empty() && !described.broken && !times && bare_fits;
    sound && given && weights <= 1 && !bare_alone && leaves
}

/// The weight, where one is said; or why that is not the end of it.
fn weight(described: &Described, line: &Line) -> Result<Option<Weight>, Answer> {
    if let Some(grammage) = described.grammages.first() {
        return Ok(Some(Weight::Grammage(Gsm(*grammage))));
    }
    match (described.pounds.first(), described.grade) {
        (Some((pounds, _)), Some(grade)) => return Ok(Some(Weight::Pounds(*pounds, grade))),
        (Some(_), None) if described.begun => return Err(Box::new(Reading::Incomplete)),
        (Some((pounds, _)), None) => return Err(Box::new(ask_grade(*pounds, described, line))),
        (None, _) => {}
    }
    let Some((number, index)) = described.bare.first().copied() else { return Ok(None) };
    let in_grams = || Ok(Some(Weight::Grammage(Gsm(number))));
    let alone = described.thick.is_empty() && described.bulk.is_none();
    if number < WEIGHT_RANGE.0.get() {
        // "10 board" may become "10 pt board"; beside a thickness it is part of a name.
        return if alone { Err(Box::new(Reading::Incomplete)) } else { Ok(None) };
    }
    match (described.grade, described.kind) {
        _ if described.metric => in_grams(),
        (Some(grade), _) if usual(number, grade) => {
            if described.shared && number >= GRAMS_FROM {
                Err(Box::new(ask_unit(number, index, described, line)))
            } else {
                Ok(Some(Weight::Pounds(number, grade)))
            }
        }
        (Some(grade), _) if number < GRAMS_FROM => Ok(Some(Weight::Pounds(number, grade))),
        (Some(_), _) | (_, Some(_)) if number >= GRAMS_FROM => in_grams(),
        _ if described.begun => Err(Box::new(Reading::Incomplete)),
        _ => Err(Box::new(ask_unit(number, index, described, line))),
    }
}

impl Described {
    /// A weight is said, with its unit.
    fn has_weight(&self) -> bool {
        !(self.grammages.is_empty() && self.pounds.is_empty())
    }
}

/// The thickness, where one is said and can be one.
fn thickness(described: &Described) -> Result<Thickness, Answer> {
    if let Some((leaves, at)) = described.pack {
        let Some(thickness) = described.pack_thickness(at) else {
            return Err(Box::new(Reading::Incomplete));
        };
        if !(1.0..=PACK_MOST).contains(&leaves) || leaves.fract() > 0.0 {
            let most = Measure::new(PACK_MOST, Unit::Count);
            let given = Measure::new(leaves, Unit::Count);
            return Err(Box::new(Reading::wrong(
                say("entry.paper.pack").put("given", given),
                say("entry.paper.pack-range").put("most", most),
            )));
        }
        in_leaf_range(thickness / leaves)?;
        return Ok(Thickness::Pack { leaves: leaves as u32, thickness });
    }
    if let Some((length, _)) = described.thick.first() {
        in_leaf_range(*length)?;
        return Ok(Thickness::Caliper(*length));
    }
    let Some(bulk) = described.bulk else { return Ok(Thickness::FromKind) };
    in_bulk_range(bulk, "entry.paper.bulk")?;
    Ok(Thickness::Bulk(Bulk(bulk)))
}

fn outside(key: &str, given: impl Into<Measure>, range: Say) -> Reading<Stock> {
    Reading::wrong(say(key).put("given", given), range)
}

fn in_leaf_range(leaf: Mm) -> Result<(), Answer> {
    let (least, most) = LEAF_RANGE;
    if leaf >= least && leaf <= most {
        return Ok(());
    }
    let range = say("entry.paper.leaf-range")
        .put("least", Measure::caliper(least))
        .put("most", Measure::caliper(most));
    Err(Box::new(outside("entry.paper.leaf", Measure::caliper(leaf), range)))
}

fn in_bulk_range(bulk: f64, key: &str) -> Result<(), Answer> {
    let (least, most) = BULK_RANGE;
    if bulk >= least && bulk <= most {
        return Ok(());
    }
    let number = |value: f64| Measure::new(value, Unit::Number);
    let range = say("entry.paper.bulk-range").put("least", number(least)).put("most", number(most));
    Err(Box::new(outside(key, number(bulk), range)))
}

/// A stock whose parts are sound: whether they are enough and agree.
fn complete(stock: Stock, described: &Described, text: &str) -> Reading<Stock> {
    let nominal = grammage(&stock).map(|band| band.nominal);
    let bare_board = stock.kind.bulk.is_none() && stock.thickness == Thickness::FromKind;
    match (nominal, stock.thickness) {
        _ if bare_board => {
            return Reading::wrong(say("entry.paper.board"), say("entry.paper.board-repair"));
        }
        (None, Thickness::FromKind) if described.known || described.begun => {
            return Reading::Incomplete;
        }
        (None, Thickness::FromKind) => return unread(text),
        (None, Thickness::Bulk(_)) => return Reading::Incomplete,
        (None, _) => {}
        (Some(weight), _) if weight < WEIGHT_RANGE.0 || weight > WEIGHT_RANGE.1 => {
            let (least, most) = WEIGHT_RANGE;
            let range = say("entry.paper.weight-range").put("least", least).put("most", most);
            return outside("entry.paper.weight", weight, range);
        }
        (Some(weight), Thickness::Caliper(leaf)) => {
            let bulk = leaf.get() * MICRON_PER_MM / weight.get();
            if let Err(answer) = in_bulk_range(bulk, "entry.paper.disagree") {
                return *answer;
            }
        }
        (Some(_), _) => {}
    }
    let echo = echo(&stock);
    Reading::Understood(stock, echo)
}

fn unread(text: &str) -> Reading<Stock> {
    Reading::wrong(say("entry.paper.wrong").text("given", quoted(text)), say("entry.paper.example"))
}
