//! What stands where on a press sheet: copies along the fold, and the pages of either side.

use super::{Route, Way};
use crate::book::{Folio, Folios, Leaf};
use crate::job::{Job, Pairs};
use crate::units::{Mm, PAGES_PER_LEAF, Size};

/// A side of the press sheet, seen as it lies when that side is up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// The outer sides of the folded sheets.
    Front,
    /// Their inner sides. The press sheet is turned over so that the gripper keeps its edge.
    Back,
}

/// One copy on one flat, the press sheet seen from its front.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CopyPlace {
    /// Column and row of its flat.
    pub flat: (u32, u32),
    /// Which copy along the fold, 0 at the head edge of the flat.
    pub nth: u32,
    /// The fold, from the left edge of the press sheet.
    pub fold: Mm,
    /// Its upper cut, from the upper edge of the press sheet.
    pub top: Mm,
    /// Its head points down.
    pub head_down: bool,
}

/// One page on one side of the press sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Panel {
    /// What is printed there.
    pub folio: Folio,
    /// Its upper left corner as that side is seen: fold or face cut, and head or foot cut.
    pub corner: Size,
    /// Its trimmed size.
    pub size: Size,
    /// Its head points down.
    pub head_down: bool,
    /// The fold lies at its right edge.
    pub fold_right: bool,
}

/// What the order needs to know of the job.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct CopyShape {
    /// Copies along one fold.
    pub up: u32,
    /// Finished height.
    pub height: Mm,
    /// Between two copies.
    pub gutter: Mm,
    /// From the last copy to the foot edge of a planned flat.
    pub foot_trim: Mm,
    /// Picture beyond the cut.
    pub bleed: Option<Mm>,
    /// Every second copy along the fold is turned round.
    pub head_to_head: bool,
}

impl CopyShape {
    pub(super) fn of(job: &Job) -> Self {
        Self {
            up: job.copies_up,
            height: job.size.height,
            gutter: job.gutter,
            foot_trim: job.foot_trim,
            bleed: job.bleed,
            head_to_head: job.pairs == Pairs::HeadToHead,
        }
    }
}

/// Every copy on the press sheet.
///
/// Head to head, every second one along the fold is turned round, the first one of all among them, so
/// that its head meets the next one's.
pub fn copies(shape: CopyShape, way: &Way) -> impl Iterator<Item = CopyPlace> {
    let (columns, rows) = way.grid;
    let CopyShape { up, height, gutter, foot_trim, head_to_head, .. } = shape;
    let step = height + gutter;
    let way = *way;
    (0..rows).flat_map(move |row| {
        (0..columns).flat_map(move |column| {
            (0..up).map(move |nth| {
                let head_down = head_to_head && (row * up + nth) % PAGES_PER_LEAF == 0;
                // A flat of one copy, cut before, is turned round as a whole.
                let whole = head_down && up == 1 && way.route == Route::CutFirst;
                let before = if whole { foot_trim } else { way.head_trim };
                let upper = way.origin.height + way.pitch.height * f64::from(row);
                CopyPlace {
                    flat: (column, row),
                    nth,
                    fold: way.origin.width
                        + way.pitch.width * f64::from(column)
                        + way.flat.width / 2.0,
                    top: upper + before + step * f64::from(nth),
                    head_down,
                }
            })
        })
    })
}

/// Every page of one side, all flats of the press sheet being the same folded sheet.
pub fn panels(shape: CopyShape, way: &Way, leaf: &Leaf, side: Side) -> impl Iterator<Item = Panel> {
    let (length, height) = (leaf.length, shape.height);
    let (press, beside) = (way.press, way.gripper_beside);
    let folios = leaf.folios;
    copies(shape, way).flat_map(move |copy| {
        [true, false].map(|left| {
            let x = if left { copy.fold - length } else { copy.fold };
            let front = Panel {
                folio: on(folios, side, left != copy.head_down),
                corner: Size::new(x, copy.top),
                size: Size::new(length, height),
                head_down: copy.head_down,
                fold_right: left,
            };
            match side {
                Side::Front => front,
                Side::Back => turned_over(front, press, beside),
            }
        })
    })
}

/// The page on the left or right leaf, with its head up and the front seen.
const fn on(folios: Folios, side: Side, left: bool) -> Folio {
    match (side, left) {
        (Side::Front, true) => folios.front_left,
        (Side::Front, false) => folios.front_right,
        // Behind the left leaf's outer side lies what is seen right when the sheet is turned over.
        (Side::Back, true) => folios.back_right,
        (Side::Back, false) => folios.back_left,
    }
}

/// The same place seen from the back. A gripper across the head keeps the head up: left and right
/// change places. A gripper beside the fold keeps left and right: head and foot change places.
fn turned_over(panel: Panel, press: Size, gripper_beside: bool) -> Panel {
    let (x, y) = (panel.corner.width, panel.corner.height);
    if gripper_beside {
        Panel {
            corner: Size::new(x, press.height - y - panel.size.height),
            head_down: !panel.head_down,
            ..panel
        }
    } else {
        Panel {
            corner: Size::new(press.width - x - panel.size.width, y),
            fold_right: !panel.fold_right,
            ..panel
        }
    }
}
