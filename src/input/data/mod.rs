//! Rows of facts with named fields: papers, sizes, wires, finishing lines. No arithmetic here.
//!
//! Every row says where it comes from. Machine profiles are generic classes with invented figures.

mod basis_sizes;
mod bindings;
mod card;
mod changes;
mod demo;
mod line_parts;
mod lines;
mod orders;
mod pace;
mod post;
mod practice;
mod press;
mod rates;
mod sizes;
mod stitching;
mod stock_kinds;
mod usual_weights;
mod wires;

pub use basis_sizes::{BASIS_SIZES, BasisSize};
pub use bindings::{BINDINGS, Binding};
pub use card::{CARD, Card};
pub use changes::{
    BOUND, BY_RULE, CHANGES, COPIES_UP, COVER, ChangeKind, FACE_CUT, HEAD_FOOT, LINE, OTHER_KIND,
    OWN, PAGES, SELF_COVER, SIZE, SPINE, TURNED, VOLUMES, WEIGHT,
};
pub use demo::{DEMO_STOCKS, DemoStock};
pub use lines::{LINES, Line, Range};
pub use orders::{MORE_COPIES, ORDER_SPAN, ORDERED};
pub use pace::{LOOSE_CHIPS, Overs, Pace, StageOvers, Supplies};
pub use post::{POST_STEPS, PostStep};
pub use practice::{CLIENT_STEP, COPIER_SHEET, Defaults, PRACTICE, Practice, SHOP_DEFAULTS};
pub use press::{DEMO_LABELS, DemoLabel, PRESS_PRACTICE, PressPractice};
pub use rates::{DEMO_RATES, DemoText};
pub use sizes::{FINISHED_SIZES, NamedSize, PRESS_SHEETS};
pub use stitching::{MOST_WIRES, STITCH_PRACTICE, StitchPractice, Stitching};
pub use stock_kinds::{Evidence, STOCK_KINDS, StockKind, UNSAID, stock_kind};
pub use usual_weights::{USUAL_WEIGHTS, UsualWeights};
pub use wires::{WIRES, Wire};
