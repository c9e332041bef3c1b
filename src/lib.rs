//! front page
pub mod data;
pub mod entry;
pub mod paper;
pub mod source;
pub mod units;
pub mod words;
