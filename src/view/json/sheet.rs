//! The flat sheet on press sheets for another program.

use super::finished::page_name;
use super::{BandOut, band};
use crate::plan::{Grain, Panel, Plan, Refusal, Route, Side, Way, panels};
use serde::Serialize;

/// One page on one side of a press sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct PanelOut {
    /// Page number; C1–C4 for a cover.
    pub page: String,
    /// Its left edge from the left of the press sheet, the fold upright.
    pub left_mm: f64,
    /// Its upper edge from the top of the press sheet.
    pub top_mm: f64,
    /// Its trimmed width.
    pub width_mm: f64,
    /// Its trimmed height.
    pub height_mm: f64,
    /// Its head points down.
    pub head_down: bool,
}

/// Both sides of the press sheet for one folded sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct SidesOut {
    /// Place of the folded sheet in the nest.
    pub place: u32,
    /// Outer sides.
    pub front: Vec<PanelOut>,
    /// Inner sides, the press sheet turned over with the gripper at the same edge.
    pub back: Vec<PanelOut>,
}

/// One way of using one press sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct WayOut {
    /// Index of the press sheet in the shop's list.
    pub press_sheet: u32,
    /// "cut" first or "straight" through.
    pub route: String,
    /// Press sheet across the fold.
    pub across_mm: f64,
    /// Press sheet along the fold.
    pub along_mm: f64,
    /// Flats across the fold.
    pub columns: u32,
    /// Flats along the fold.
    pub rows: u32,
    /// Area of the flats over the area of the press sheet, 0 … 1.
    pub used: f64,
    /// Largest piece left over, across and along the fold.
    pub offcut_mm: [f64; 2],
    /// Chip on the outermost leaf.
    pub face_cut_mm: f64,
    /// The same with the tolerance.
    pub outermost_chip_mm: BandOut,
    /// Chip on the innermost leaf.
    pub innermost_chip_mm: BandOut,
    /// "along" the spine, "across" it or "unknown".
    pub grain: String,
    /// Guillotine cuts of a pile before the line.
    pub cuts: u32,
    /// Why it cannot be used: "small", "edges", "open_width", "travel_height", "chip_thin",
    /// "chip_deep".
    pub refused: Option<String>,
}

/// The flat sheet on every press sheet on hand.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct LayoutOut {
    /// What is taken; it is refused only when it was asked for.
    pub chosen: Option<WayOut>,
    /// Press sheets for the run, with overs.
    pub press_sheets: Option<u64>,
    /// Page order of every folded sheet on the chosen press sheet.
    pub sides: Vec<SidesOut>,
    /// Every way, best first, refused ones last.
    pub ranked: Vec<WayOut>,
}

/// The layout as plain numbers.
pub(super) fn layout_out(plan: &Plan) -> LayoutOut {
    let results = &plan.results;
    let layout = &results.layout;
    let chosen = layout.chosen();
    let usable = chosen.filter(|way| way.refusal.is_none());
    let sides = |way: &Way| {
        let side = |leaf, side| panels(layout.copy, way, leaf, side).map(panel_out).collect();
        results
            .leaves
            .iter()
            .map(|leaf| SidesOut {
                place: leaf.place,
                front: side(leaf, Side::Front),
                back: side(leaf, Side::Back),
            })
            .collect()
    };
    LayoutOut {
        chosen: chosen.map(way_out),
        press_sheets: layout.needed.map(|needed| needed.sheets as u64),
        sides: usable.map_or_else(Vec::new, sides),
        ranked: layout.ranked().map(way_out).collect(),
    }
}

fn panel_out(panel: Panel) -> PanelOut {
    PanelOut {
        page: page_name(panel.folio),
        left_mm: panel.corner.width.get(),
        top_mm: panel.corner.height.get(),
        width_mm: panel.size.width.get(),
        height_mm: panel.size.height.get(),
        head_down: panel.head_down,
    }
}

fn way_out(way: &Way) -> WayOut {
    WayOut {
        press_sheet: way.sheet as u32,
        route: match way.route {
            Route::CutFirst => "cut",
            Route::Straight => "straight",
        }
        .to_owned(),
        across_mm: way.press.width.get(),
        along_mm: way.press.height.get(),
        columns: way.grid.0,
        rows: way.grid.1,
        used: way.used,
        offcut_mm: [way.offcut.width.get(), way.offcut.height.get()],
        face_cut_mm: way.face_cut.get(),
        outermost_chip_mm: band(way.outermost_chip, |chip| chip.get()),
        innermost_chip_mm: band(way.innermost_chip, |chip| chip.get()),
        grain: match way.grain {
            Grain::Unknown => "unknown",
            Grain::AlongSpine => "along",
            Grain::AcrossSpine => "across",
        }
        .to_owned(),
        cuts: way.cuts,
        refused: way.refusal.map(|refusal| {
            match refusal {
                Refusal::Small(_) => "small",
                Refusal::Edges(_) => "edges",
                Refusal::OpenWidth(_) => "open_width",
                Refusal::TravelHeight(_) => "travel_height",
                Refusal::ChipThin(_) => "chip_thin",
                Refusal::ChipDeep(_) => "chip_deep",
            }
            .to_owned()
        }),
    }
}
