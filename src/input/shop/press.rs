//! Press sheets of the shop file.

use super::figure::digits;
use super::read::Reader;
use super::{PressSheet, SheetGrain, Shop};
use crate::data::{DEMO_LABELS, PRESS_PRACTICE, PressPractice};
use crate::draft::Draft;
use crate::units::{Mm, Money, Size};
use crate::words::say;

/// What is usual for a sheet of this size.
fn practice(size: Size) -> &'static PressPractice {
    let long = size.width.max(size.height);
    let [.., largest] = &PRESS_PRACTICE;
    PRESS_PRACTICE.iter().find(|class| long <= class.long_side_most).unwrap_or(largest)
}

/// A sheet of which only the size is known: edges as is usual.
pub(super) fn plain(name: &str, size: Size) -> PressSheet {
    let usual = practice(size);
    PressSheet {
        name: name.to_owned(),
        size,
        gripper: usual.gripper.value,
        margin: usual.margin.value,
        long_side_leads: usual.long_side_leads,
        grain: SheetGrain::Unknown,
        thousand: None,
        click: None,
        thousands_on_hand: None,
    }
}

/// A sheet of the demo shop: the same, with an invented rate for a printed side, and what its label
/// says.
pub(super) fn usual(name: &str, size: Size) -> PressSheet {
    let click = Some(Money(practice(size).demo_click));
    let label = DEMO_LABELS.iter().find(|label| label.name == name);
    PressSheet {
        click,
        grain: match label {
            None => SheetGrain::Unknown,
            Some(label) if label.grain_long => SheetGrain::Long,
            Some(_) => SheetGrain::Short,
        },
        thousands_on_hand: label.map(|label| label.thousands),
        ..plain(name, size)
    }
}

/// Reads one press sheet.
pub(super) fn sheet(reader: &mut Reader, index: usize) -> Option<PressSheet> {
    let at = |field: &str| format!("press_sheets.{index}.{field}");
    let name = reader.text(&at("name"));
    let width = reader.number(&at("width"));
    let height = reader.number(&at("height"));
    for (field, length) in [("width", width), ("height", height)] {
        if length.is_none() && reader.absent(&at(field)) {
            reader.fail(&at(field), say("shop.no-length"), "shop.no-length.repair");
        }
    }
    let (gripper, margin) = (reader.number(&at("gripper")), reader.number(&at("margin")));
    let (leads, grain) = (reader.choice(&at("leads")), reader.choice(&at("grain")));
    let (thousand, click) = (reader.number(&at("thousand")), reader.number(&at("click")));
    let thousands_on_hand = reader.number(&at("thousands_on_hand"));
    let plain = plain(&name, Size::new(Mm(width?), Mm(height?)));
    Some(PressSheet {
        gripper: gripper.map_or(plain.gripper, Mm),
        margin: margin.map_or(plain.margin, Mm),
        long_side_leads: match leads {
            "long" => true,
            "short" => false,
            _ => plain.long_side_leads,
        },
        grain: match grain {
            "long" => SheetGrain::Long,
            "short" => SheetGrain::Short,
            _ => SheetGrain::Unknown,
        },
        thousand: thousand.map(Money),
        click: click.map(Money),
        thousands_on_hand,
        ..plain
    })
}

/// Writes them back as texts.
pub(super) fn write(shop: &Shop, draft: &mut Draft) {
    for (index, sheet) in shop.press_sheets.iter().enumerate() {
        let mut set = |field: &str, text: &str| {
            draft.set(&format!("press_sheets.{index}.{field}"), text);
        };
        set("name", &sheet.name);
        set("width", &digits(sheet.size.width.get()));
        set("height", &digits(sheet.size.height.get()));
        set("gripper", &digits(sheet.gripper.get()));
        set("margin", &digits(sheet.margin.get()));
        set("leads", if sheet.long_side_leads { "long" } else { "short" });
        set(
            "grain",
            match sheet.grain {
                SheetGrain::Unknown => "unknown",
                SheetGrain::Long => "long",
                SheetGrain::Short => "short",
            },
        );
        for (field, number) in [
            ("thousand", sheet.thousand.map(Money::get)),
            ("click", sheet.click.map(Money::get)),
            ("thousands_on_hand", sheet.thousands_on_hand),
        ] {
            if let Some(number) = number {
                set(field, &digits(number));
            }
        }
    }
}
