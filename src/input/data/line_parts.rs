//! Stations, supplies and stitching of the built-in lines: invented, like their limits.

use super::{Pace, Stitching, Supplies};

/// Bins side by side, stations that overlap.
pub(super) const MIDDLE_PACE: Pace = Pace {
    bins: Some(40.0),
    gather: Some(1.2),
    stroke: Some(0.6),
    index: Some(0.5),
    fold: Some(1.1),
    form: Some(1.6),
    form_mm: Some(0.15),
    cut: Some(1.4),
    stack: Some(0.9),
    overs_share: 0.02,
    overs_sets: 25.0,
    ..Pace::PLAIN
};

/// Stacker, bin and spools of the middle line.
pub(super) const MIDDLE_SUPPLIES: Supplies = Supplies {
    stacker_books: Some(500.0),
    stacker_height: Some(600.0),
    stacker_minutes: 1.0,
    stacker_running: true,
    chip_mass: Some(40_000.0),
    chip_litres: Some(300.0),
    chip_minutes: 3.0,
    chip_running: true,
    spool_mass: Some(2_500.0),
    spool_minutes: 6.0,
    load_height: Some(150.0),
    load_minutes: 2.0,
    load_running: true,
    ..Supplies::ENDLESS
};

/// One feeder that lays sheet after sheet; each station waits for the one before.
pub(super) const LIGHT_PACE: Pace = Pace {
    overlap: false,
    feeder_sheets_hour: Some(9_000.0),
    stroke: Some(0.5),
    index: Some(0.4),
    fold: Some(0.8),
    form: Some(2.0),
    cut: Some(0.9),
    stack: Some(0.3),
    overs_share: 0.01,
    overs_sets: 10.0,
    ..Pace::PLAIN
};

/// Narrow crowns, short legs.
pub(super) const LIGHT_STITCHING: Stitching =
    Stitching { crown: 12.0, clinch: 2.8, ..Stitching::USUAL };

/// A small stacker, a small bin, paper loaded with the line standing.
pub(super) const LIGHT_SUPPLIES: Supplies = Supplies {
    stacker_height: Some(250.0),
    stacker_minutes: 0.5,
    chip_litres: Some(30.0),
    chip_minutes: 1.5,
    spool_mass: Some(500.0),
    spool_minutes: 4.0,
    load_height: Some(200.0),
    load_minutes: 1.0,
    ..Supplies::ENDLESS
};

/// Many bins, quick heads.
pub(super) const HEAVY_PACE: Pace = Pace {
    bins: Some(60.0),
    gather: Some(0.65),
    stroke: Some(0.35),
    index: Some(0.3),
    fold: Some(0.6),
    form: Some(0.7),
    form_mm: Some(0.05),
    cut: Some(0.7),
    stack: Some(0.5),
    overs_share: 0.03,
    overs_sets: 60.0,
    ..Pace::PLAIN
};

/// Everything large, and emptied while the line runs; only wire stops it.
pub(super) const HEAVY_SUPPLIES: Supplies = Supplies {
    stacker_books: Some(1_200.0),
    stacker_height: Some(900.0),
    stacker_minutes: 1.0,
    stacker_running: true,
    chip_mass: Some(250_000.0),
    chip_litres: Some(1_100.0),
    chip_minutes: 4.0,
    chip_running: true,
    spool_mass: Some(10_000.0),
    spool_minutes: 8.0,
    load_height: Some(300.0),
    load_minutes: 2.0,
    load_running: true,
    ..Supplies::ENDLESS
};

/// So many good sets an hour whatever the book; 25 sets and 2 % spoilt.
pub(super) const GOOD_COPIES: Pace =
    Pace { counts_good: true, overs_share: 0.02, overs_sets: 25.0, ..Pace::PLAIN };
