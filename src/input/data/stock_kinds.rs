//! Kinds of paper and how thick each is for its weight: one band per kind.

use crate::source::Source;
use crate::units::{Band, Bulk, Mm};

/// How much stands behind a band.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Evidence {
    /// Many rows of a published table.
    Strong,
    /// Some rows, or several makers' tables that agree.
    Medium,
    /// One row, or less.
    Weak,
}

/// One kind of paper.
#[derive(Debug, Clone, PartialEq)]
pub struct StockKind {
    /// Its name in files and language keys.
    pub id: &'static str,
    /// Specific volume, cm³/g; nothing where thickness must never be taken from weight.
    pub bulk: Option<Band<Bulk>>,
    /// Has a coating, which cracks on the fold more readily.
    pub coated: bool,
    /// Made of recovered fibre, which cracks on the fold more readily.
    pub recycled: bool,
    /// Card for covers rather than text.
    pub card: bool,
    /// The least doubt of a caliper that the mill gives for this kind.
    pub caliper_tolerance: Mm,
    /// The share by which the weight of one lot may differ.
    pub grammage_tolerance: f64,
    /// What people type for it, lower case.
    pub typed: &'static [&'static str],
    /// How much stands behind the band.
    pub evidence: Evidence,
    /// Where the band comes from.
    pub source: Source,
}

const GOVERNMENT: Source =
    Source::Published { title: "Government Paper Specification Standards, vol. 11", year: 1999 };
/// Several printed trade tables that agree; none a standard.
const TRADE: Source = Source::Published { title: "title.trade-tables", year: 0 };

/// Tolerance of book papers in the government standards.
const TEXT_TOLERANCE: Mm = Mm(0.013);
/// Tolerance of copier papers there.
const COPIER_TOLERANCE: Mm = Mm(0.008);
/// Tolerance of heavy card (tag, index) there.
const CARD_TOLERANCE: Mm = Mm(0.025);
/// Share by which a lot's weight may differ, text papers.
const WEIGHT_TOLERANCE: f64 = 0.05;
/// The same for index and tag.
const CARD_WEIGHT_TOLERANCE: f64 = 0.10;

const fn bulk(low: f64, nominal: f64, high: f64) -> Option<Band<Bulk>> {
    Some(Band { low: Bulk(low), nominal: Bulk(nominal), high: Bulk(high) })
}

/// Uncoated, not recycled, a text paper: what a row says only where it differs.
const TEXT: StockKind = StockKind {
    id: "",
    bulk: None,
    coated: false,
    recycled: false,
    card: false,
    caliper_tolerance: TEXT_TOLERANCE,
    grammage_tolerance: WEIGHT_TOLERANCE,
    typed: &[],
    evidence: Evidence::Strong,
    source: GOVERNMENT,
};

/// The kind of a paper of which nobody has said whether it is coated: from the thinnest gloss to
/// the bulkiest offset. Its width is honest; naming the kind narrows it.
pub static UNSAID: StockKind = StockKind {
    id: "unsaid",
    bulk: bulk(0.75, 1.05, 1.40),
    evidence: Evidence::Weak,
    source: Source::Derived,
    ..TEXT
};

/// The kinds, in the order in which they are offered.
pub static STOCK_KINDS: [StockKind; 11] = [
    StockKind {
        id: "uncoated",
        bulk: bulk(1.10, 1.25, 1.40),
        typed: &[
            "uncoated",
            "offset",
            "opaque",
            "smooth",
            "woodfree",
            "vellum",
            "plain",
            "ungestrichen",
            "offsetpapier",
            "naturpapier",
            "holzfrei",
        ],
        ..TEXT
    },
    StockKind {
        id: "copier",
        bulk: bulk(1.13, 1.25, 1.35),
        caliper_tolerance: COPIER_TOLERANCE,
        typed: &["copier", "laser", "copy", "bond", "writing", "kopierpapier", "schreibpapier"],
        ..TEXT
    },
    StockKind {
        id: "gloss",
        bulk: bulk(0.75, 0.82, 0.90),
        coated: true,
        typed: &["gloss", "glossy", "glänzend", "glanz", "hochglanz"],
        evidence: Evidence::Medium,
        source: TRADE,
        ..TEXT
    },
    StockKind {
        id: "silk",
        bulk: bulk(0.78, 0.94, 1.10),
        coated: true,
        typed: &[
            "silk",
            "matt",
            "matte",
            "dull",
            "satin",
            "coated",
            "bilderdruck",
            "kunstdruck",
            "seidenmatt",
            "halbmatt",
            "gestrichen",
        ],
        evidence: Evidence::Weak,
        source: Source::Memory,
        ..TEXT
    },
    StockKind {
        id: "recycled",
        bulk: bulk(1.25, 1.35, 1.45),
        recycled: true,
        typed: &["recycled", "recycling", "recyclingpapier", "altpapier"],
        ..TEXT
    },
    StockKind {
        id: "bulky",
        bulk: bulk(1.40, 1.60, 2.20),
        typed: &[
            "bulky",
            "wove",
            "antique",
            "featherweight",
            "volumenpapier",
            "voluminös",
            "werkdruck",
        ],
        evidence: Evidence::Medium,
        source: TRADE,
        ..TEXT
    },
    StockKind {
        id: "newsprint",
        bulk: bulk(1.60, 1.70, 1.75),
        typed: &["newsprint", "news", "zeitungsdruck", "zeitungspapier"],
        ..TEXT
    },
    StockKind {
        id: "card",
        bulk: bulk(1.05, 1.15, 1.30),
        card: true,
        caliper_tolerance: CARD_TOLERANCE,
        grammage_tolerance: CARD_WEIGHT_TOLERANCE,
        typed: &["card", "index", "bristol", "tag", "karton", "umschlagkarton"],
        evidence: Evidence::Medium,
        ..TEXT
    },
    StockKind {
        id: "gloss-cover",
        bulk: bulk(0.75, 0.80, 0.95),
        coated: true,
        card: true,
        caliper_tolerance: CARD_TOLERANCE,
        typed: &["gloss cover"],
        evidence: Evidence::Weak,
        source: TRADE,
        ..TEXT
    },
    StockKind {
        id: "silk-cover",
        bulk: bulk(0.85, 0.94, 1.05),
        coated: true,
        card: true,
        caliper_tolerance: CARD_TOLERANCE,
        typed: &["silk cover", "matt cover", "matte cover", "dull cover"],
        evidence: Evidence::Weak,
        source: TRADE,
        ..TEXT
    },
    StockKind {
        id: "board",
        card: true,
        caliper_tolerance: CARD_TOLERANCE,
        grammage_tolerance: CARD_WEIGHT_TOLERANCE,
        typed: &["board", "pappe"],
        evidence: Evidence::Weak,
        source: Source::Practice,
        ..TEXT
    },
];

/// Finds a kind by its id.
#[must_use]
pub fn stock_kind(id: &str) -> Option<&'static StockKind> {
    STOCK_KINDS.iter().chain(core::iter::once(&UNSAID)).find(|kind| kind.id == id)
}
