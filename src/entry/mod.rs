//! What people type, read: numbers, lengths, page counts, sizes, papers, copies, one line for all.
//!
//! Every reader takes the text as typed and answers with a [`Reading`]: understood (with an echo of
//! how), incomplete, a question, or wrong with a repair. Nothing here looks at other fields.

mod reading;

pub use reading::{Choice, Fault, Question, Reading};
