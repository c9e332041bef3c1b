//! Which figure each number of a finding is.

use super::row::Case;
use crate::plan::{Finding, Supply};
use crate::words::{Ask, Say, Slot};

/// Rule, slot, figure. Slots that are not listed echo what was typed or what the shop says.
const FOUND: &[(&str, &str, &str)] = &[
    ("art_at_risk", "left", "art_left"),
    ("blanks", "blanks", "blanks"),
    ("blanks", "down", "pages_down"),
    ("blanks", "up", "pages_up"),
    ("bleed", "needed", "face_bleed"),
    ("calibration", "least", "factor_least"),
    ("calibration", "most", "factor_most"),
    ("carton_heavy", "copy", "copy_most"),
    ("carton_heavy", "most", "carton_limit"),
    ("chips_full", "every", "every"),
    ("chips_full", "first", "first_stop"),
    ("chips_full", "times", "stop_times"),
    ("crease", "across", "channel_across"),
    ("crease", "along", "channel_along"),
    ("fold_gap", "gap", "fold_gap"),
    ("head_foot", "printed", "flat_height"),
    ("head_foot", "travel", "travel"),
    ("nick", "spine", "spine"),
    ("paper_unsaid", "spine", "spine"),
    ("post_step", "mass", "posted_mass"),
    ("press_sheet", "by", "press_short"),
    ("press_sheet", "height", "flat_height"),
    ("press_sheet", "width", "flat_width"),
    ("sheets_short", "missing", "sheets_missing"),
    ("sheets_short", "needed", "sheets_needed"),
    ("short_component", "good", "good"),
    ("short_component", "needed", "sets_needed"),
    ("spine_text", "least", "text_least"),
    ("spine_text", "spine", "spine"),
    ("spine_wire", "from", "free_from"),
    ("spine_wire", "to", "free_to"),
    ("stacker_full", "every", "every"),
    ("stacker_full", "first", "first_stop"),
    ("stacker_full", "times", "stop_times"),
    ("stitch_clinch", "clinch", "clinch_high"),
    ("stitch_clinch", "most", "clinch_most"),
    ("stitch_overhang", "most", "overhang_most"),
    ("stitch_overhang", "overhang", "overhang"),
    ("stitch_passes", "heads", "line_heads"),
    ("stitch_passes", "passes", "passes"),
    ("stitch_passes", "stitches", "stitch_total"),
    ("stitch_pitch", "overhang", "overhang"),
    ("stitch_pitch", "passes", "passes"),
    ("stitch_pitch", "pitch", "stitch_pitch"),
    ("stitch_pitch", "wished", "stitch_wished"),
    ("stitch_room", "edge", "stitch_edge"),
    ("stitch_room", "stitches", "stitch_count"),
    ("straight_cut", "chip", "press_chip"),
    ("straight_cut", "cut", "straight_cut"),
    ("thin_square", "least", "square_least"),
    ("thin_square", "spine", "spine"),
    ("wire_proud", "spine", "spine"),
    ("wire_proud", "wire", "wire"),
    ("wire_work", "flat", "flat_stack"),
    ("wire_work", "wire", "wire"),
];

/// A sentence of a finding, its numbers to be asked about where they are figures of the plan.
#[must_use]
pub fn finding(case: &Case, found: &Finding, mut sentence: Say) -> Say {
    let limits = &case.plan.results.limits;
    let limit = limits.iter().position(|limit| limit.id.name() == found.rule);
    for (name, slot) in &mut sentence.slots {
        let ask = match (limit, *name) {
            (Some(at), "value") => Some(Ask { figure: "limit_value", at: at + 1 }),
            (Some(at), "limit") => Some(Ask { figure: "line_takes", at: at + 1 }),
            _ => FOUND
                .iter()
                .find(|(rule, of, _)| *rule == found.rule && of == name)
                .map(|(rule, _, figure)| Ask { figure, at: row(case, rule) }),
        };
        if let Some(ask) = ask {
            let value = core::mem::replace(slot, Slot::Text(String::new()));
            *slot = Slot::Asked(ask, Box::new(value));
        }
    }
    sentence
}

/// The row of the table that a rule's figures stand in.
fn row(case: &Case, rule: &str) -> usize {
    let supply = |supply| Supply::ALL.iter().position(|one| *one == supply).map_or(0, |at| at + 1);
    match rule {
        "art_at_risk" => case.plan.results.margins.art.worst as usize,
        "stacker_full" => supply(Supply::Stacker),
        "chips_full" => supply(Supply::Chips),
        _ => 0,
    }
}
