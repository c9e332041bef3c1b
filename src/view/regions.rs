//! The page's regions: one row each, in reading order. Adding one is a row and a file.

use super::html;
use super::html::Scene;
use maud::Markup;

/// For whom the page is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reading {
    /// With a client at the table: no limits, no rates, no cost.
    Client,
    /// For whoever designs the book.
    Design,
    /// For whoever stands at the machine.
    Floor,
}

/// One headed region of the page below the answer.
#[derive(Debug, Clone, Copy)]
pub struct Region {
    /// Its id in the page; its heading is `region.ID` of the language files.
    pub id: &'static str,
    /// Who sees it.
    pub readings: &'static [Reading],
    /// Open at first; closed ones show their summary line.
    pub open: bool,
    /// The summary line, which already says the result.
    pub summary: fn(&Scene) -> Markup,
    /// What stands in it.
    pub body: fn(&Scene) -> Markup,
}

pub(super) const ALL: &[Reading] = &[Reading::Client, Reading::Design, Reading::Floor];
pub(super) const MAKERS: &[Reading] = &[Reading::Design, Reading::Floor];
const FLOOR: &[Reading] = &[Reading::Floor];

/// Every region, in reading order.
pub static REGIONS: [Region; 13] = [
    Region {
        id: "set-up",
        readings: FLOOR,
        open: true,
        summary: html::set_up::summary,
        body: html::set_up::body,
    },
    Region {
        id: "decides",
        readings: MAKERS,
        open: true,
        summary: html::decides::summary,
        body: html::decides::body,
    },
    Region {
        id: "fixes",
        readings: ALL,
        open: false,
        summary: html::fixes::summary,
        body: html::fixes::body,
    },
    Region {
        id: "compare",
        readings: ALL,
        open: false,
        summary: html::compare::summary,
        body: html::compare::body,
    },
    Region {
        id: "inside",
        readings: ALL,
        open: false,
        summary: html::inside::summary,
        body: html::inside::body,
    },
    Region {
        id: "trim",
        readings: ALL,
        open: false,
        summary: html::trim::summary,
        body: html::trim::body,
    },
    Region {
        id: "cover",
        readings: ALL,
        open: false,
        summary: html::cover::summary,
        body: html::cover::body,
    },
    Region {
        id: "stitches",
        readings: MAKERS,
        open: false,
        summary: html::stitches::summary,
        body: html::stitches::body,
    },
    Region {
        id: "run",
        readings: MAKERS,
        open: false,
        summary: html::run::summary,
        body: html::run::body,
    },
    Region {
        id: "sheet",
        readings: MAKERS,
        open: false,
        summary: html::sheet::summary,
        body: html::sheet::body,
    },
    Region {
        id: "pack",
        readings: ALL,
        open: false,
        summary: html::pack::summary,
        body: html::pack::body,
    },
    Region {
        id: "cost",
        readings: MAKERS,
        open: false,
        summary: html::cost::summary,
        body: html::cost::body,
    },
    Region {
        id: "bindings",
        readings: ALL,
        open: false,
        summary: html::bindings::summary,
        body: html::bindings::body,
    },
];
