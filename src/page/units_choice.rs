//! Changing the page's unit changes no number that was typed.

use crate::draft::{Draft, Kind, read_text};
use crate::entry::LengthUnit;
use crate::job::SCHEMA;

/// Marks every bare length in a draft with the unit it was typed in, then changes the unit. A typed
/// unit always wins, so "3" typed in millimetres becomes "3 mm" and stays so.
pub(super) fn change_unit(draft: &mut Draft, unit: &str) {
    let before = LengthUnit::of(draft.get("units"));
    let after = LengthUnit::of(unit);
    if before == after {
        return;
    }
    let sign = match before {
        LengthUnit::Millimetre => " mm",
        LengthUnit::Inch => " in",
    };
    let texts: Vec<(String, String)> =
        draft.all().map(|(path, text)| (path.to_owned(), text.to_owned())).collect();
    for (path, text) in texts {
        let Some(field) = SCHEMA.field(&path) else { continue };
        if !matches!(field.kind, Kind::Length(..) | Kind::Size | Kind::Paper) {
            continue;
        }
        let meant = read_text(field.kind, &text, before).value();
        if meant.is_some() && meant != read_text(field.kind, &text, after).value() {
            draft.set(&path, &format!("{text}{sign}"));
        }
    }
    draft.set("units", unit);
}
