//! Drawings to scale: shapes in millimetres of paper on the desk, with a spoken description.

mod book_end;
mod press_sheet;
mod shapes;
mod stitches;
mod timeline;
mod unit_cost;

pub use book_end::book_end;
pub use press_sheet::press_sheet;
pub use shapes::{Anchor, Drawing, Pen, Point, Shape};
pub use stitches::stitches;
pub use timeline::timeline;
pub use unit_cost::unit_cost;
