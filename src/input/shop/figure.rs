//! Places in a line that figures of the shop file fill, and how they are written back.

use crate::data::{Line, MOST_WIRES, Overs, StageOvers};
use crate::draft::Value;
use crate::units::{self, Mm, PER_CENT};

/// A place in a line that a figure of the file fills.
pub(super) trait Figure {
    /// Takes what was read; keeps what stands where nothing was.
    fn take(&mut self, value: Option<Value>);
    /// The text that would make it; nothing where nothing is known.
    fn text(&self) -> Option<String>;
}

impl Figure for f64 {
    fn take(&mut self, value: Option<Value>) {
        if let Some(Value::Number(number)) = value {
            *self = number;
        }
    }
    fn text(&self) -> Option<String> {
        Some(digits(*self))
    }
}

impl Figure for u32 {
    fn take(&mut self, value: Option<Value>) {
        if let Some(Value::Number(number)) = value {
            *self = number as u32;
        }
    }
    fn text(&self) -> Option<String> {
        Some(self.to_string())
    }
}

impl Figure for Option<f64> {
    fn take(&mut self, value: Option<Value>) {
        if let Some(Value::Number(number)) = value {
            *self = Some(number);
        }
    }
    fn text(&self) -> Option<String> {
        self.map(digits)
    }
}

impl Figure for bool {
    fn take(&mut self, value: Option<Value>) {
        if let Some(Value::Choice(word)) = value {
            *self = word == "yes";
        }
    }
    fn text(&self) -> Option<String> {
        Some(if *self { "yes" } else { "no" }.to_owned())
    }
}

/// Diameters of the wires on hand.
pub(super) const WIRES: [&str; MOST_WIRES] = ["wire_1", "wire_2", "wire_3"];
/// What the line spoils, per cent.
pub(super) const OVERS_PERCENT: &str = "overs_percent";

/// Every wire of a line beside its field.
pub(super) fn wires(line: &mut Line) -> impl Iterator<Item = (&'static str, &mut Option<f64>)> {
    WIRES.into_iter().zip(&mut line.stitching.wires)
}

/// Each stage beside its two fields.
pub(super) fn stages(overs: &mut StageOvers) -> [(&'static str, &'static str, &mut Overs); 3] {
    [
        ("print_overs_percent", "print_overs_sheets", &mut overs.print),
        ("crease_overs_percent", "crease_overs_sheets", &mut overs.crease),
        ("cut_overs_percent", "cut_overs_sets", &mut overs.cut),
    ]
}

/// A number with no more digits than are read back, even where it was worked out and never typed.
pub(super) fn digits(number: f64) -> String {
    units::digits(Mm(number).tidy().get())
}

/// A share as the file says it.
pub(super) fn percent(share: f64) -> String {
    // Two steps below a thousandth of a per cent: 0.02 comes back as 2, not as 2.0000000000000004.
    const STEPS: f64 = 100_000.0;
    units::digits((share * PER_CENT * STEPS).round() / STEPS)
}
