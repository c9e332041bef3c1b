//! Basic sizes: the sheet whose ream of 500 weighs the basis weight.

use crate::source::Source;
use crate::units::{Mm, Size};

/// The basic size of one grade.
#[derive(Debug, Clone, PartialEq)]
pub struct BasisSize {
    /// The grade's word.
    pub id: &'static str,
    /// The sheet a ream of which is weighed.
    pub sheet: Size,
    /// What people type for it, lower case, longest first.
    pub typed: &'static [&'static str],
    /// Where the size comes from.
    pub source: Source,
}

/// The government paper standards name these sizes beside each grade.
const GOVERNMENT: Source =
    Source::Published { title: "Government Paper Specification Standards, vol. 11", year: 1999 };

const fn row(
    id: &'static str,
    width: f64,
    height: f64,
    typed: &'static [&'static str],
    source: Source,
) -> BasisSize {
    BasisSize {
        id,
        sheet: Size::new(Mm::from_inches(width), Mm::from_inches(height)),
        typed,
        source,
    }
}

/// The seven grades in use, with their sheets in inches.
pub static BASIS_SIZES: [BasisSize; 7] = [
    row("text", 25.0, 38.0, &["text", "book", "offset", "txt"], GOVERNMENT),
    row("bond", 17.0, 22.0, &["bond", "writing", "ledger", "copier", "laser"], GOVERNMENT),
    row("cover", 20.0, 26.0, &["cover", "cov", "cvr", "umschlag"], GOVERNMENT),
    row("bristol", 22.5, 28.5, &["bristol"], Source::Memory),
    row("index", 25.5, 30.5, &["index"], GOVERNMENT),
    row("tag", 24.0, 36.0, &["tag"], GOVERNMENT),
    row("newsprint", 24.0, 36.0, &["newsprint", "news", "zeitungsdruck"], GOVERNMENT),
];
