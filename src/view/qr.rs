//! A job as a picture for cameras and scanners: ISO/IEC 18004, drawn by a library.
//!
//! On a page that can be reached from elsewhere the picture holds its address and the job as a link,
//! which a phone opens. A page on a disk has no such address, and a link that is too long would be
//! too fine to read from paper: then the picture holds the code that scanners type into the one line.

use crate::draft::Draft;
use crate::job;
use maud::{Markup, html};
use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

/// The finest picture: what the longest code of a job takes (101 modules to a side).
const MOST: u8 = 21;
/// Blank modules round the picture, by the standard.
const QUIET: i32 = 4;

/// What a picture holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Held {
    /// An address that opens the job.
    Link,
    /// A code that a scanner types.
    Keys,
}

/// A picture of dark and light modules.
pub struct Code {
    /// What kind of text it holds.
    pub held: Held,
    /// The text.
    pub text: String,
    modules: QrCode,
}

impl Code {
    /// The picture of a job on a page at an address; nothing where the job says too much for one.
    #[must_use]
    pub fn of(draft: &Draft, address: &str) -> Option<Self> {
        let hosted = address.starts_with("http").then(|| job::to_link(draft).ok()).flatten();
        hosted
            .and_then(|link| Self::new(Held::Link, format!("{address}{link}")))
            .or_else(|| Self::new(Held::Keys, job::to_code(draft).ok()?))
    }

    /// Up to a seventh of the modules may be lost: paper is folded and handled.
    fn new(held: Held, text: String) -> Option<Self> {
        let segments = QrSegment::make_segments(&text);
        let (least, most) = (Version::MIN, Version::new(MOST));
        let (correction, stronger) = (QrCodeEcc::Medium, true);
        let code =
            QrCode::encode_segments_advanced(&segments, correction, least, most, None, stronger);
        Some(Self { held, text, modules: code.ok()? })
    }

    /// Modules to a side, the blank ones round it counted.
    #[must_use]
    pub fn side(&self) -> i32 {
        self.modules.size() + 2 * QUIET
    }

    /// The dark runs of every row: column and row of the first module, and how many. Columns and
    /// rows count from the corner of the blank edge.
    pub fn runs(&self) -> impl Iterator<Item = (i32, i32, i32)> + '_ {
        let side = self.modules.size();
        (0..side).flat_map(move |row| {
            let dark = move |column| self.modules.get_module(column, row);
            let begins = (0..side).filter(move |column| dark(*column) && !dark(column - 1));
            begins.map(move |column| {
                let length = (column..side).take_while(|at| dark(*at)).count() as i32;
                (column + QUIET, row + QUIET, length)
            })
        })
    }

    /// The picture, black on white on any ground, one unit to a module.
    #[must_use]
    pub fn svg(&self, label: &str) -> Markup {
        let side = self.side();
        let path: String = self
            .runs()
            .map(|(column, row, length)| format!("M{column} {row}h{length}v1h-{length}z"))
            .collect();
        html! {
            svg xmlns="http://www.w3.org/2000/svg" class="code" role="img" aria-label=(label)
                viewBox={ "0 0 " (side) " " (side) } shape-rendering="crispEdges" {
                rect width=(side) height=(side) fill="#ffffff" {}
                path d=(path) fill="#000000" {}
            }
        }
    }
}
