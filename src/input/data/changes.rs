//! How much a change to a book is minded: the order in which changes are offered.

use crate::source::Source;

/// One kind of change. What it weighs is `base + share × how much of the thing changes`, a plain
/// number that only ranks; two changes weigh their sum.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChangeKind {
    /// Its name in language keys.
    pub id: &'static str,
    /// Changes of one axis exclude each other.
    pub axis: &'static str,
    /// What it weighs at all.
    pub base: f64,
    /// What it weighs more when all of the thing changes (pages left out, grams, area).
    pub share: f64,
    /// Most offers of this kind.
    pub most: usize,
    /// Worth offering where the book fits as it stands.
    pub also_when_fits: bool,
    /// May be told to a client: speaks only of pages, papers and size.
    pub client: bool,
    /// Where the weighing comes from.
    pub source: Source,
}

const KIND: ChangeKind = ChangeKind {
    id: "",
    axis: "",
    base: 1.0,
    share: 0.0,
    most: 1,
    also_when_fits: false,
    client: false,
    // What customers mind least is a matter of judgement, not of any book.
    source: Source::Practice,
};

/// What somebody has decided, left to the rule again.
pub const BY_RULE: ChangeKind = ChangeKind { id: "rule", axis: "rule", base: 0.3, most: 3, ..KIND };
/// Another face cut: only the shop sees it.
pub const FACE_CUT: ChangeKind = ChangeKind { id: "face-cut", axis: "cut", base: 0.4, ..KIND };
/// Head and foot cut elsewhere: a further step in the shop.
pub const HEAD_FOOT: ChangeKind = ChangeKind { id: "head-foot", axis: "cut", base: 0.8, ..KIND };
/// Several copies along one fold: cut apart later.
pub const COPIES_UP: ChangeKind = ChangeKind { id: "copies-up", axis: "up", base: 1.0, ..KIND };
/// Another line of the shop.
pub const LINE: ChangeKind =
    ChangeKind { id: "line", axis: "line", base: 0.6, most: 3, also_when_fits: true, ..KIND };
/// A lighter or heavier paper of the same kind inside.
pub const WEIGHT: ChangeKind =
    ChangeKind { id: "weight", axis: "paper", base: 1.0, share: 6.0, client: true, ..KIND };
/// One of the shop's own papers inside.
pub const OWN: ChangeKind = ChangeKind {
    id: "own",
    axis: "paper",
    base: 1.6,
    share: 6.0,
    most: 2,
    also_when_fits: true,
    client: true,
    ..KIND
};
/// Another kind of paper of the same weight inside.
pub const OTHER_KIND: ChangeKind = ChangeKind {
    id: "kind",
    axis: "paper",
    base: 2.6,
    most: 2,
    client: true,
    also_when_fits: true,
    ..KIND
};
/// Another paper for the cover.
pub const COVER: ChangeKind =
    ChangeKind { id: "cover", axis: "cover", base: 0.8, share: 4.0, client: true, ..KIND };
/// No separate cover.
pub const SELF_COVER: ChangeKind = ChangeKind {
    id: "self-cover",
    axis: "cover",
    base: 3.0,
    client: true,
    also_when_fits: true,
    ..KIND
};
/// The other form of the spine.
pub const SPINE: ChangeKind = ChangeKind {
    id: "spine",
    axis: "spine",
    base: 2.0,
    client: true,
    also_when_fits: true,
    ..KIND
};
/// Fewer pages, or more.
pub const PAGES: ChangeKind =
    ChangeKind { id: "pages", axis: "pages", base: 1.4, share: 14.0, client: true, ..KIND };
/// Two volumes.
pub const VOLUMES: ChangeKind =
    ChangeKind { id: "volumes", axis: "pages", base: 6.0, client: true, ..KIND };
/// Bound along another edge.
pub const BOUND: ChangeKind =
    ChangeKind { id: "bound", axis: "size", base: 3.5, client: true, ..KIND };
/// Turned: upright instead of landscape, or the other way round.
pub const TURNED: ChangeKind =
    ChangeKind { id: "turned", axis: "size", base: 4.5, client: true, ..KIND };
/// A smaller size.
pub const SIZE: ChangeKind =
    ChangeKind { id: "size", axis: "size", base: 3.0, share: 5.0, most: 2, client: true, ..KIND };

/// Every kind of change.
pub static CHANGES: [&ChangeKind; 16] = [
    &BY_RULE,
    &FACE_CUT,
    &HEAD_FOOT,
    &COPIES_UP,
    &LINE,
    &WEIGHT,
    &OWN,
    &OTHER_KIND,
    &COVER,
    &SELF_COVER,
    &SPINE,
    &PAGES,
    &VOLUMES,
    &BOUND,
    &TURNED,
    &SIZE,
];
