//! Documents for print: the cover in true size, a blank dummy, the table of creep.
//!
//! They show a finished plan and calculate nothing. The same plan in the same language gives the same
//! bytes on every machine: no clock, no chance, letters of a font that every reader has.

mod cover;
mod creep;
mod document;
mod dummy;
mod file;
mod letters;
mod notes;
mod table;
mod tags;

pub use cover::cover;
pub use creep::creep;
pub use dummy::dummy;
pub use letters::Letters;

use crate::view::html::Scene;

/// A kind of document.
#[derive(Debug, Clone, Copy)]
pub struct Kind {
    /// The act that saves it.
    pub act: &'static str,
    /// How its file's name ends.
    pub extension: &'static str,
    /// Writes it in the language of a tag; nothing where the plan has nothing to show.
    pub write: fn(&Scene, &str) -> Option<File>,
}

/// Every kind of document.
pub static DOCUMENTS: [Kind; 3] = [
    Kind { act: "save-cover", extension: "flat.pdf", write: |scene, tag| Some(cover(scene, tag)) },
    Kind { act: "save-dummy", extension: "dummy.pdf", write: dummy },
    Kind { act: "save-creep", extension: "creep.pdf", write: |scene, tag| Some(creep(scene, tag)) },
];

/// A file, ready to be saved.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct File {
    /// What it holds.
    pub bytes: Vec<u8>,
    /// Some letter of the job is not in the font: a question mark stands for it.
    pub replaced: bool,
}
