//! A buyer's own PDF: what is read of it is what poppler reads, in every form that qpdf writes; whatever
//! is broken is told and never stops; where file and plan differ, each difference is named once; and what
//! is laid anew stands where it should, as poppler draws it.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

#[path = "../support/mod.rs"]
mod support;

mod bleed;
mod drawn;
mod found;
mod hostile;
mod laid;
mod pairs;
mod proof;
mod reading;
mod special;
mod written;
