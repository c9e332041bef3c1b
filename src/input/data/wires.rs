//! Stitching wire by diameter. Gauge numbers alone mislead: three systems share them.

use crate::source::Source;
use crate::units::Mm;

/// One round wire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wire {
    /// The number the stitching trade gives it (Washburn & Moen, the US steel wire gauge).
    pub gauge: &'static str,
    /// Its diameter.
    pub diameter: Mm,
    /// Thickness of work a maker suggests, thinnest: ranks wires, never refuses one.
    pub work_least: Mm,
    /// Thickness of work a maker suggests, thickest.
    pub work_most: Mm,
    /// Where the diameter comes from.
    pub source: Source,
}

const GAUGES: Source =
    Source::Published { title: "How Many? dictionary of units, wire gauges", year: 0 };

/// Wires the trade stitches booklets with, finest first. The work of the finest is from memory.
pub static WIRES: [Wire; 3] = [
    Wire {
        gauge: "26",
        diameter: Mm(0.460),
        work_least: Mm(0.4),
        work_most: Mm(3.2),
        source: GAUGES,
    },
    Wire {
        gauge: "25",
        diameter: Mm(0.518),
        work_least: Mm(1.6),
        work_most: Mm(5.6),
        source: GAUGES,
    },
    Wire {
        gauge: "24",
        diameter: Mm(0.584),
        work_least: Mm(1.6),
        work_most: Mm(6.4),
        source: GAUGES,
    },
];
