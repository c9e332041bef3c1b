//! One change to a book: what it sets, and how much it is minded.

use crate::data::{self, ChangeKind};
use crate::job::{HeadFoot, Spine};
use crate::units::{Mm, Pages};

/// What a change sets. Papers and sizes stand in the lists of [`super::asked::Asked`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Change {
    /// Another finishing line, by its place in the shop.
    Line(usize),
    /// Another paper inside, by its place in the list.
    Paper(usize),
    /// Another paper for the cover, by its place in the list.
    Cover(usize),
    /// No separate cover: its four pages become pages of the inside.
    SelfCover,
    /// The other form of the spine.
    Spine(Spine),
    /// So many pages in the main section.
    Pages(Pages),
    /// Two volumes with so many pages in their main sections, the thicker first.
    Volumes(Pages, Pages),
    /// Another size or way to bind, by its place in the list.
    Size(usize),
    /// Another chip on the outermost leaf; nothing leaves it to the rule.
    FaceCut(Option<Mm>),
    /// Head and foot cut elsewhere.
    HeadFoot(HeadFoot),
    /// So many copies along one fold.
    CopiesUp(u32),
    /// What somebody has decided is left to the rule.
    ByRule(ByRule),
}

/// Fields that may be left empty, so that a rule decides.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum ByRule {
    /// How many stitches.
    Stitches,
    /// Which press sheet.
    PressSheet,
    /// Whether sheets are cut to size before the line.
    Route,
}

impl ByRule {
    /// The field's name.
    pub(super) const fn name(self) -> &'static str {
        match self {
            Self::Stitches => "stitches",
            Self::PressSheet => "press_sheet",
            Self::Route => "route",
        }
    }
}

impl Change {
    /// Measurements on a dummy no longer speak of this book's thickness.
    pub(super) const fn is_other_thickness(self) -> bool {
        matches!(
            self,
            Self::Paper(_) | Self::Cover(_) | Self::SelfCover | Self::Pages(_) | Self::Volumes(..)
        )
    }
}

/// A change with its kind and how much it is minded.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Weighed {
    pub(super) change: Change,
    pub(super) kind: &'static ChangeKind,
    /// A plain number that only ranks.
    pub(super) weight: f64,
}

impl Weighed {
    /// Weighs a change of which this share of the thing changes: base + share × how much.
    pub(super) fn new(change: Change, kind: &'static ChangeKind, how_much: f64) -> Self {
        Self { change, kind, weight: kind.base + kind.share * how_much }
    }

    /// A change without a how much.
    pub(super) fn plain(change: Change) -> Self {
        let kind = match change {
            Change::Line(_) => &data::LINE,
            Change::SelfCover => &data::SELF_COVER,
            Change::Spine(_) => &data::SPINE,
            Change::Volumes(..) => &data::VOLUMES,
            Change::FaceCut(_) => &data::FACE_CUT,
            Change::HeadFoot(_) => &data::HEAD_FOOT,
            Change::CopiesUp(_) => &data::COPIES_UP,
            Change::ByRule(_) => &data::BY_RULE,
            Change::Paper(_) => &data::WEIGHT,
            Change::Cover(_) => &data::COVER,
            Change::Pages(_) => &data::PAGES,
            Change::Size(_) => &data::SIZE,
        };
        Self::new(change, kind, 0.0)
    }
}
