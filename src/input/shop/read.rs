//! The shop's draft to a [`Shop`] and back.

use super::dispatch;
use super::fields::{SCHEMA, each_figure, limits};
use super::figure::{OVERS_PERCENT, digits, percent, stages, wires};
use super::{Calibration, Shop, press};
use crate::data::{Line, Overs, Pace, Range, SHOP_DEFAULTS, StageOvers};
use crate::draft::{Draft, FieldError, Kind, Value, read_text};
use crate::entry::{self, LengthUnit, Reading};
use crate::paper::{Stock, caliper};
use crate::source::Source;
use crate::units::{Mm, PER_CENT};
use crate::words::say;

/// Sets an hour of a line that says nothing of its pace. Invented.
const PLAIN_RATE: f64 = 1000.0;

/// Reads a shop.
///
/// # Errors
/// Every field that cannot be right, and a shop without a finishing line.
pub fn read(draft: &Draft) -> Result<Shop, Vec<FieldError>> {
    let mut reader = Reader::new(draft);
    let lines: Vec<Line> = (0..draft.members("lines")).map(|index| reader.line(index)).collect();
    if lines.is_empty() {
        let fault = say("shop.no-line");
        reader.fail("lines", fault, "shop.no-line.repair");
    }
    let stocks = (0..draft.members("stocks")).filter_map(|index| reader.stock(index)).collect();
    let press_sheets = (0..draft.members("press_sheets"))
        .filter_map(|index| press::sheet(&mut reader, index))
        .collect();
    let mut defaults = SHOP_DEFAULTS;
    for (id, place) in [
        ("bleed", &mut defaults.bleed),
        ("safe", &mut defaults.safe),
        ("tolerance", &mut defaults.tolerance),
        ("head_trim", &mut defaults.head_trim),
        ("foot_trim", &mut defaults.foot_trim),
        ("gutter", &mut defaults.gutter),
    ] {
        if let Some(number) = reader.number(id) {
            *place = Mm(number);
            defaults.source = Source::Shop;
        }
    }
    let shop = Shop {
        name: reader.text("name"),
        note: reader.text("note"),
        lines,
        stocks,
        press_sheets,
        defaults,
        overs: reader.overs(),
        carton: dispatch::carton(&mut reader),
        post: dispatch::post(&mut reader, draft.members("postal_steps")),
        rates: dispatch::rates(&mut reader),
        round_fold: reader.calibration("round_factor"),
        square_fold: reader.calibration("square_factor"),
    };
    if reader.errors.is_empty() { Ok(shop) } else { Err(reader.errors) }
}

/// Reads field after field and keeps every error.
pub(super) struct Reader<'a> {
    draft: &'a Draft,
    unit: LengthUnit,
    errors: Vec<FieldError>,
}

impl<'a> Reader<'a> {
    pub(super) fn new(draft: &'a Draft) -> Self {
        let unit = LengthUnit::of(draft.get("units"));
        Self { draft, unit, errors: Vec::new() }
    }

    pub(super) fn fail(&mut self, path: &str, wrong: crate::words::Say, repair: &str) {
        let given = self.draft.get(path).to_owned();
        self.errors.push(FieldError::new(path, &given, wrong, say(repair)));
    }

    /// The value of a field, its default where nothing stands; errors are kept.
    fn value(&mut self, path: &str) -> Option<Value> {
        let field = SCHEMA.field(path)?;
        let text = match self.draft.get(path) {
            "" => field.default,
            typed => typed,
        };
        if text.is_empty() {
            return None;
        }
        match read_text(field.kind, text, self.unit) {
            Reading::Understood(value, _) => return Some(value),
            Reading::Wrong(fault) => {
                self.errors.push(FieldError::new(path, text, fault.wrong, fault.repair));
            }
            Reading::Incomplete | Reading::Ask(_) => {
                self.fail(path, say("file.unclear"), "file.unclear.repair");
            }
        }
        None
    }

    pub(super) fn number(&mut self, path: &str) -> Option<f64> {
        match self.value(path)? {
            Value::Number(number) => Some(number),
            _ => None,
        }
    }

    pub(super) fn text(&mut self, path: &str) -> String {
        match self.value(path) {
            Some(Value::Text(text)) => text,
            _ => String::new(),
        }
    }

    pub(super) fn choice(&mut self, path: &str) -> &'static str {
        match self.value(path) {
            Some(Value::Choice(word)) => word,
            _ => "",
        }
    }

    /// Nothing was typed at a path.
    pub(super) fn absent(&self, path: &str) -> bool {
        self.draft.get(path).is_empty()
    }

    fn yes(&mut self, path: &str) -> bool {
        self.value(path) == Some(Value::Choice("yes"))
    }

    fn line(&mut self, index: usize) -> Line {
        let at = |field: &str| format!("lines.{index}.{field}");
        let name = self.text(&at("name"));
        if name.is_empty() {
            self.fail(&at("name"), say("shop.no-name"), "shop.no-name.repair");
        }
        let mut line = Line {
            name: name.into(),
            note: self.text(&at("note")).into(),
            creases: self.yes(&at("creases")),
            cuts_head_foot: self.yes(&at("cuts_head_foot")),
            heads: self.number(&at("heads")).unwrap_or_default() as u32,
            makeready_minutes: self.number(&at("makeready_minutes")).unwrap_or_default(),
            ..Line::UNLIMITED
        };
        for (limit, range) in limits(&mut line) {
            let least = at(&format!("{limit}_least"));
            let most = at(&format!("{limit}_most"));
            *range = Range { least: self.number(&least), most: self.number(&most) };
            if let (Some(low), Some(high)) = (range.least, range.most)
                && low > high
            {
                self.fail(&least, say("shop.range"), "shop.range.repair");
            }
        }
        each_figure(&mut line, |id, place| place.take(self.value(&at(id))));
        for (id, place) in wires(&mut line) {
            *place = self.number(&at(id));
        }
        if let Some(spoilt) = self.number(&at(OVERS_PERCENT)) {
            line.pace.overs_share = spoilt / PER_CENT;
        }
        // Stations that are known set the pace; without any, a line needs a rate.
        let slowest = if line.pace == Pace::PLAIN { PLAIN_RATE } else { f64::INFINITY };
        line.sets_per_hour = self.number(&at("sets_per_hour")).unwrap_or(slowest);
        line
    }

    fn overs(&mut self) -> StageOvers {
        let mut overs = StageOvers::default();
        for (share, fixed, place) in stages(&mut overs) {
            place.share = self.number(share).unwrap_or_default() / PER_CENT;
            place.fixed = self.number(fixed).unwrap_or_default();
        }
        overs
    }

    fn stock(&mut self, index: usize) -> Option<Stock> {
        let name = self.text(&format!("stocks.{index}.name"));
        let path = format!("stocks.{index}.paper");
        let Some(Value::Paper(stock)) = self.value(&path) else {
            if self.draft.get(&path).is_empty() {
                self.fail(&path, say("shop.no-paper"), "shop.no-paper.repair");
            }
            return None;
        };
        if caliper(&stock).is_none() {
            self.fail(&path, say("shop.no-caliper"), "shop.no-caliper.repair");
            return None;
        }
        // The text outlives the file's unit: a bare length takes it along.
        let mut stock = stock;
        if self.unit == LengthUnit::Inch
            && entry::paper(&stock.typed, LengthUnit::Millimetre).value().as_ref() != Some(&stock)
        {
            stock.typed.push_str(" in");
        }
        Some(Stock { name: if name.is_empty() { stock.name.clone() } else { name }, ..stock })
    }

    fn calibration(&mut self, id: &str) -> Option<Calibration> {
        let error = self.number(&format!("{id}_error"))?;
        let note = self.text(&format!("{id}_note"));
        Some(Calibration { factor: self.number(id)?, error, note })
    }
}

/// Writes a shop as the texts that would make it: what a saved shop file holds. Figures that no decimal
/// ends, such as a price of 1/3, are written as `digits` does.
#[must_use]
pub fn draft_of(shop: &Shop) -> Draft {
    let mut draft = Draft::of(&[("name", &shop.name), ("note", &shop.note)]);
    let defaults = &shop.defaults;
    for (id, length) in [
        ("bleed", defaults.bleed),
        ("safe", defaults.safe),
        ("tolerance", defaults.tolerance),
        ("head_trim", defaults.head_trim),
        ("foot_trim", defaults.foot_trim),
        ("gutter", defaults.gutter),
    ] {
        // The trade's habits stay the trade's: written down they would pass for the shop's own.
        if *defaults != SHOP_DEFAULTS {
            draft.set(id, &digits(length.get()));
        }
    }
    for (id, fold) in [("round_factor", &shop.round_fold), ("square_factor", &shop.square_fold)] {
        if let Some(fold) = fold {
            draft.set(id, &digits(fold.factor));
            draft.set(&format!("{id}_error"), &digits(fold.error));
            draft.set(&format!("{id}_note"), &fold.note);
        }
    }
    for (index, line) in shop.lines.iter().enumerate() {
        let mut set = |field: &str, text: &str| draft.set(&format!("lines.{index}.{field}"), text);
        let yes_no = |yes| if yes { "yes" } else { "no" };
        set("name", &line.name);
        set("note", &line.note);
        set("creases", yes_no(line.creases));
        set("cuts_head_foot", yes_no(line.cuts_head_foot));
        set("heads", &line.heads.to_string());
        if line.sets_per_hour.is_finite() {
            set("sets_per_hour", &digits(line.sets_per_hour));
        }
        set("makeready_minutes", &digits(line.makeready_minutes));
        let mut line = line.clone();
        each_figure(&mut line, |id, place| {
            let Some(text) = place.text() else { return };
            let mass = matches!(
                SCHEMA.field(&format!("lines.0.{id}")).map(|field| field.kind),
                Some(Kind::Mass(..))
            );
            set(id, &if mass { format!("{text} g") } else { text });
        });
        for (id, wire) in wires(&mut line) {
            if let Some(diameter) = wire {
                set(id, &digits(*diameter));
            }
        }
        set(OVERS_PERCENT, &percent(line.pace.overs_share));
        for (limit, range) in limits(&mut line) {
            for (end, number) in [("least", range.least), ("most", range.most)] {
                if let Some(number) = number {
                    set(&format!("{limit}_{end}"), &digits(number));
                }
            }
        }
    }
    for (index, stock) in shop.stocks.iter().enumerate() {
        draft.set(&format!("stocks.{index}.name"), &stock.name);
        draft.set(&format!("stocks.{index}.paper"), &stock.typed);
    }
    press::write(shop, &mut draft);
    let mut overs = shop.overs;
    for (share, fixed, place) in stages(&mut overs) {
        if *place != Overs::default() {
            draft.set(share, &percent(place.share));
            draft.set(fixed, &digits(place.fixed));
        }
    }
    dispatch::write(shop, &mut draft);
    draft
}
