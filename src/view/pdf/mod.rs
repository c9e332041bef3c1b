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

/// A file, ready to be saved.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct File {
    /// What it holds.
    pub bytes: Vec<u8>,
    /// Some letter of the job is not in the font: a question mark stands for it.
    pub replaced: bool,
}
