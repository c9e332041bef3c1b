//! Other sizes: smaller ones that have a name, the same size turned, and another edge to bind.

use crate::data::{self, ChangeKind, FINISHED_SIZES};
use crate::entry::{self, LengthUnit};
use crate::units::{Size, digits};

/// A size that could be taken instead.
#[derive(Debug, Clone)]
pub(super) struct SizeChoice {
    /// The field it is typed into.
    pub(super) field: &'static str,
    /// What is typed.
    pub(super) text: String,
    /// Spine to face and along the spine.
    pub(super) size: Size,
    pub(super) kind: &'static ChangeKind,
    /// The share by which the page's area differs.
    pub(super) differs: f64,
}

/// Two lengths closer than this are one: far below what paper is cut to.
const SAME: f64 = 0.05;
/// Printed decimals of an inch.
const INCH_STEPS: f64 = 10_000.0;

/// Every size worth trying for a book of `size`, bound on the top edge or on the left.
pub(super) fn choices(size: Size, top_bound: bool, unit: LengthUnit) -> Vec<SizeChoice> {
    let seen = if top_bound { size.turned() } else { size };
    let bind = |seen: Size| if top_bound { seen.turned() } else { seen };
    let area = |size: Size| size.width.get() * size.height.get();
    let wide = seen.width > seen.height;
    let mut out: Vec<SizeChoice> = FINISHED_SIZES
        .iter()
        .filter_map(|row| {
            let text = if wide { format!("{} landscape", row.name) } else { row.name.to_owned() };
            let other = entry::size(&text, unit).value()?;
            let differs = (area(other) / area(seen) - 1.0).abs();
            (!same(other, seen)).then(|| SizeChoice {
                field: "size",
                text,
                size: bind(other),
                kind: &data::SIZE,
                differs,
            })
        })
        .collect();
    if !same(seen, seen.turned()) {
        let text = typed(seen.turned(), unit);
        if let Some(turned) = entry::size(&text, unit).value() {
            let size = bind(turned);
            out.push(SizeChoice { field: "size", text, size, kind: &data::TURNED, differs: 0.0 });
        }
        out.push(SizeChoice {
            field: "bound_edge",
            text: if top_bound { "left" } else { "top" }.to_owned(),
            size: size.turned(),
            kind: &data::BOUND,
            differs: 0.0,
        });
    }
    out
}

fn same(one: Size, other: Size) -> bool {
    let near = |a: crate::units::Mm, b: crate::units::Mm| (a - b).get().abs() < SAME;
    near(one.width, other.width) && near(one.height, other.height)
}

/// A size as a person would type it: by name if it has one.
fn typed(size: Size, unit: LengthUnit) -> String {
    let named = FINISHED_SIZES.iter().find_map(|row| {
        if same(row.size, size) {
            Some(row.name.to_owned())
        } else {
            same(row.size.turned(), size).then(|| format!("{} landscape", row.name))
        }
    });
    named.unwrap_or_else(|| match unit {
        LengthUnit::Millimetre => {
            format!("{} x {} mm", digits(size.width.get()), digits(size.height.get()))
        }
        LengthUnit::Inch => {
            let inches = |length: crate::units::Mm| {
                digits((length.inches() * INCH_STEPS).round() / INCH_STEPS)
            };
            format!("{} x {} in", inches(size.width), inches(size.height))
        }
    })
}
