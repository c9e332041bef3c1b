//! What people type, read: numbers, lengths, page counts, sizes, papers, copies, one line for all.
//!
//! Every reader takes the text as typed and answers with a [`Reading`]: understood (with an echo of
//! how), incomplete, a question, or wrong with a repair. Nothing here looks at other fields.

mod choice;
mod clock;
mod copies;
mod described;
mod length;
mod mass;
mod matching;
mod number;
mod pages;
mod paper_echo;
mod paper_read;
mod paper_scan;
mod paper_words;
mod phrase;
mod phrase_parts;
mod phrase_whole;
mod reading;
mod size;
mod size_unit;
mod text;

#[cfg(test)]
mod number_tests;
#[cfg(test)]
mod pages_tests;
#[cfg(test)]
mod paper_tests;
#[cfg(test)]
mod phrase_tests;
#[cfg(test)]
mod size_tests;
#[cfg(test)]
mod text_tests;

pub use choice::{choice, yes_no};
pub use clock::clock;
pub use copies::copies;
pub use described::{UsualPaper, described, usual_papers};
pub use length::{LengthUnit, length};
pub use mass::mass;
pub use matching::Sought;
pub use number::{count, number};
pub use pages::{Cover, PageCount, pages, pages_echo};
pub use paper_echo::kind_choices;
pub use paper_read::paper;
pub use paper_words::no_paper;
pub use phrase::{Phrase, phrase};
pub use reading::{Choice, Fault, Question, Reading};
pub use size::size;
pub use text::same_letters;
