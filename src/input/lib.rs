//! What a plan starts from: units, the tables of the trade, papers, and what a person states of a job and a
//! shop. A part of the `quirefit` crate, which shows all of it under its own name.

pub mod data;
pub mod draft;
pub mod entry;
pub mod job;
pub mod paper;
pub mod shop;
pub mod source;
pub mod units;
pub mod words;
