//! The book itself: pages, stack, fold, leaves, trim, cover, margins, mass.
//!
//! Sheets are counted k = 1 … n from the outside; the outermost is sheet 1. A sheet is folded once
//! and has two leaves, four pages.

mod calibrate;
mod cover;
mod first_off;
mod fold;
mod leaves;
mod margins;
mod mass;
mod pages;
mod stack;
mod trim;

pub use calibrate::{Calibrated, Trust, fold_of, measure_factor};
pub use cover::{CoverPlan, cover, crease_channel};
pub use first_off::{FirstOff, first_off};
pub use fold::{Fold, Shape};
pub use leaves::{Leaf, leaves, trade_creep};
pub use margins::{Clearance, Margins, cut_on_page, distance_left, margins, pages_at_risk};
pub use mass::{BookMass, mass};
pub use pages::{Blanks, Folio, Folios, Spread, blanks, folios, spreads};
pub use stack::{Stack, stack, stack_into};
pub use trim::{Trim, trim};
