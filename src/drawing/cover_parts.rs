//! Where everything lies on the outermost sheet laid flat, outer side up, in millimetres of paper.
//!
//! Across counts from the middle of the spine to the right, down from the cut at the head.

use crate::plan::{Folio, Plan};
use crate::units::Mm;

/// A rectangle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Area {
    /// Across to its left edge.
    pub left: Mm,
    /// Down to its upper edge.
    pub top: Mm,
    /// Across to its right edge.
    pub right: Mm,
    /// Down to its lower edge.
    pub bottom: Mm,
}

/// What may hold pictures and words on one half.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Panel {
    /// It, without what is kept free inside every edge.
    pub safe: Area,
    /// What is printed there.
    pub front: Folio,
    /// What is printed on the other side.
    pub behind: Folio,
}

/// A stitch across the fold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crown {
    /// Its ends.
    pub wire: (Mm, Mm),
    /// From where to where words keep from it, within the cut.
    pub kept: (Mm, Mm),
}

/// The flat cover.
#[derive(Debug, Clone, PartialEq)]
pub struct CoverParts {
    /// The cut.
    pub trim: Area,
    /// How far a picture reaches that runs off.
    pub bleed: Area,
    /// Where the width of a page ends and the spine begins, on either side of the middle.
    pub spine: Mm,
    /// One crease in the middle of a round spine, two near the edges of a square one.
    pub creases: Vec<Mm>,
    /// The left half and the right one, where anything is left of them.
    pub panels: Vec<Panel>,
    /// The stitches of one copy.
    pub stitches: Vec<Crown>,
    /// Room for words on the spine, clear of the wire.
    pub words: Option<Area>,
}

impl CoverParts {
    /// The parts of a plan's outermost sheet, with so much bleed and so much kept free.
    #[must_use]
    pub fn of(plan: &Plan, bleed: Mm, safe: Mm) -> Self {
        let results = &plan.results;
        let cover = &results.cover;
        let (half, high) = (cover.open.width / 2.0, cover.open.height);
        let crown = results.stitches.wire.crown;
        let placement = &results.stitches.placement;
        let zone = placement.kept_free(crown);
        let within = |down: Mm| down.max(Mm::ZERO).min(high);
        let around = |middle: Mm, by: Mm| (within(middle - by), within(middle + by));
        let own = placement.stitches.iter().filter(|stitch| stitch.copy == 0);
        let offset = cover.crease_offset;
        Self {
            trim: Area { left: -half, top: Mm::ZERO, right: half, bottom: high },
            bleed: Area {
                left: -half - bleed,
                top: -bleed,
                right: half + bleed,
                bottom: high + bleed,
            },
            spine: results.trim.wrap.nominal,
            creases: [-offset, offset].into_iter().take(cover.creases as usize).collect(),
            panels: panels(plan, safe),
            stitches: own
                .map(|stitch| Crown {
                    wire: around(stitch.from_head, crown / 2.0),
                    kept: around(stitch.from_head, zone),
                })
                .collect(),
            words: (cover.text_room > Mm::ZERO).then(|| {
                let (top, bottom) = placement.free_of_wire(high, crown);
                let half = cover.text_room / 2.0;
                Area { left: -half, top, right: half, bottom }
            }),
        }
    }
}

/// Behind the right half lies, turned over, the left one.
fn panels(plan: &Plan, safe: Mm) -> Vec<Panel> {
    let Some(leaf) = plan.results.leaves.first() else { return Vec::new() };
    let cover = &plan.results.cover;
    let (near, far) = (cover.crease_offset + safe, cover.open.width / 2.0 - safe);
    let (top, bottom) = (safe, cover.open.height - safe);
    if far <= near || bottom <= top {
        return Vec::new();
    }
    let folios = leaf.folios;
    vec![
        Panel {
            safe: Area { left: -far, top, right: -near, bottom },
            front: folios.front_left,
            behind: folios.back_right,
        },
        Panel {
            safe: Area { left: near, top, right: far, bottom },
            front: folios.front_right,
            behind: folios.back_left,
        },
    ]
}
