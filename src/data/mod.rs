//! Rows of facts with named fields: papers, sizes, wires, finishing lines. No arithmetic here.
//!
//! Every row says where it comes from. Machine profiles are generic classes with invented figures.

mod basis_sizes;
mod bindings;
mod demo;
mod line_parts;
mod lines;
mod pace;
mod post;
mod practice;
mod rates;
mod sizes;
mod stitching;
mod stock_kinds;
mod wires;

pub use basis_sizes::{BASIS_SIZES, BasisSize};
pub use bindings::{BINDINGS, Binding};
pub use demo::{DEMO_STOCKS, DemoStock};
pub use lines::{LINES, Line, Range};
pub use pace::{LOOSE_CHIPS, Overs, Pace, StageOvers, Supplies};
pub use post::{POST_STEPS, PostStep};
pub use practice::{Defaults, PRACTICE, Practice, SHOP_DEFAULTS};
pub use rates::{DEMO_RATES, DemoText};
pub use sizes::{FINISHED_SIZES, NamedSize, PRESS_SHEETS};
pub use stitching::{MOST_WIRES, STITCH_PRACTICE, StitchPractice, Stitching};
pub use stock_kinds::{Evidence, STOCK_KINDS, StockKind, UNSAID, stock_kind};
pub use wires::{WIRES, Wire};
