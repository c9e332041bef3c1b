//! What a person typed, kept as typed: the form, the files, undo and links all hold a [`Draft`].
//!
//! A draft is text by field path. The rows of [`Field`] say which fields there are; [`Tree`] is the
//! shape of a file; [`file`](from_tree) turns one into the other and reports every fault at once.

mod field;
mod file;
mod texts;
mod tree;

pub use field::{Field, Group, Kind, Schema, Value, read_text};
pub use file::{FieldError, MOST_MEMBERS, from_tree, read_tree, to_tree};
pub use texts::Draft;
pub use tree::Tree;
