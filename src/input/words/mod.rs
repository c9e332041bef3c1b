//! All wording, and the sentences-to-be that the rest of the planner hands over.
//!
//! Nothing outside this folder holds a sentence. Rules, fields and drawings return a [`Say`]: a key
//! and the values to put in. The language files beside this one turn keys into patterns; the view
//! prints the values. A translation is one file.

mod language;
mod say;
mod store;

pub use language::{Files, LANGUAGES, Language, Mark, built_in};
pub use say::{Ask, Say, Slot, say};
pub use store::{Part, Words, parts};

/// The words that both kinds of English share. The page carries them beside the module instead.
#[cfg(any(feature = "embed", not(target_arch = "wasm32")))]
pub const EN: &str = include_str!("en.txt");
/// Where US usage differs.
#[cfg(any(feature = "embed", not(target_arch = "wasm32")))]
pub const EN_US: &str = include_str!("en-US.txt");
/// Where UK usage differs.
#[cfg(any(feature = "embed", not(target_arch = "wasm32")))]
pub const EN_GB: &str = include_str!("en-GB.txt");
/// German.
#[cfg(any(feature = "embed", not(target_arch = "wasm32")))]
pub const DE: &str = include_str!("de.txt");
