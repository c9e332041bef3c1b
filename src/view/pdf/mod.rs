//! Documents for print: the job card, the cover in true size, a blank dummy, the table of creep.
//!
//! They show a finished plan and calculate nothing. The same plan in the same language gives the same
//! bytes on every machine: no clock, no chance, letters of a font that every reader has.

mod card;
mod cover;
mod creep;
mod document;
mod dummy;
mod file;
mod letters;
mod notes;
mod pairs;
mod proof;
mod table;
mod tags;

pub use card::card;
pub use cover::cover;
pub use creep::creep;
pub use dummy::dummy;
pub use letters::Letters;
pub use pairs::pairs;
pub use proof::proof;

use crate::view::html::Scene;
use crate::view::qr::Code;
use document::clean;

/// A kind of document.
#[derive(Debug, Clone, Copy)]
pub struct Kind {
    /// The act that saves it.
    pub act: &'static str,
    /// What its file's name ends in, before the dot.
    pub name: &'static str,
    /// Writes it; nothing where the plan has nothing to show.
    pub write: fn(&Wanted) -> Option<File>,
}

/// What a document is written from.
#[derive(Clone, Copy)]
pub struct Wanted<'a> {
    /// The plan and who reads.
    pub scene: &'a Scene<'a>,
    /// The tag of the language.
    pub language: &'a str,
    /// The picture that holds the job, where there is one.
    pub code: Option<&'a Code>,
}

/// Every kind of document.
pub static DOCUMENTS: [Kind; 4] = [
    Kind { act: "save-card", name: "card", write: |wanted| Some(card(wanted)) },
    Kind { act: "save-cover", name: "cover", write: |wanted| Some(cover(wanted)) },
    Kind { act: "save-dummy", name: "dummy", write: dummy },
    Kind { act: "save-creep", name: "creep", write: |wanted| Some(creep(wanted)) },
];

/// A file, ready to be saved.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct File {
    /// What it holds.
    pub bytes: Vec<u8>,
    /// Some letter of the job is not in the font: a question mark stands for it.
    pub replaced: bool,
}
