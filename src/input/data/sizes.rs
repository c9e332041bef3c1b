//! Named sizes of finished books and of press sheets.

use crate::source::Source;
use crate::units::{Mm, Size};

/// A size people call by name.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NamedSize {
    /// Its name.
    pub name: &'static str,
    /// Width × height, upright.
    pub size: Size,
    /// It is defined in inches.
    pub inches: bool,
    /// Where it comes from.
    pub source: Source,
}

const ISO_216: Source = Source::Published { title: "ISO 216", year: 2007 };
const ISO_217: Source = Source::Published { title: "ISO 217", year: 2013 };
const PAPER_LIST: Source =
    Source::Published { title: "libgutenprint papers/standard.xml", year: 0 };

const fn mm(name: &'static str, width: f64, height: f64, source: Source) -> NamedSize {
    NamedSize { name, size: Size::new(Mm(width), Mm(height)), inches: false, source }
}

const fn inch(name: &'static str, width: f64, height: f64, source: Source) -> NamedSize {
    let size = Size::new(Mm::from_inches(width), Mm::from_inches(height));
    NamedSize { name, size, inches: true, source }
}

/// Finished sizes people type by name, in the order in which they are offered.
pub static FINISHED_SIZES: [NamedSize; 16] = [
    mm("A5", 148.0, 210.0, ISO_216),
    mm("A4", 210.0, 297.0, ISO_216),
    inch("Half Letter", 5.5, 8.5, PAPER_LIST),
    inch("Letter", 8.5, 11.0, PAPER_LIST),
    mm("A6", 105.0, 148.0, ISO_216),
    mm("B5", 176.0, 250.0, ISO_216),
    mm("DL", 99.0, 210.0, Source::Practice),
    inch("Digest", 5.5, 8.5, Source::Practice),
    inch("Legal", 8.5, 14.0, PAPER_LIST),
    inch("Tabloid", 11.0, 17.0, PAPER_LIST),
    mm("A3", 297.0, 420.0, ISO_216),
    mm("A7", 74.0, 105.0, ISO_216),
    mm("A8", 52.0, 74.0, ISO_216),
    mm("B4", 250.0, 353.0, ISO_216),
    mm("B6", 125.0, 176.0, ISO_216),
    mm("B7", 88.0, 125.0, ISO_216),
];

/// Press sheets by name.
pub static PRESS_SHEETS: [NamedSize; 14] = [
    mm("SRA3", 320.0, 450.0, ISO_217),
    mm("RA3", 305.0, 430.0, ISO_217),
    mm("SRA4", 225.0, 320.0, ISO_217),
    mm("RA4", 215.0, 305.0, ISO_217),
    mm("SRA2", 450.0, 640.0, ISO_217),
    mm("RA2", 430.0, 610.0, ISO_217),
    mm("SRA1", 640.0, 900.0, ISO_217),
    mm("RA1", 610.0, 860.0, ISO_217),
    mm("A3", 297.0, 420.0, ISO_216),
    mm("A4", 210.0, 297.0, ISO_216),
    inch("Letter", 8.5, 11.0, PAPER_LIST),
    inch("11 × 17 in", 11.0, 17.0, PAPER_LIST),
    inch("12 × 18 in", 12.0, 18.0, PAPER_LIST),
    inch("13 × 19 in", 13.0, 19.0, PAPER_LIST),
];
