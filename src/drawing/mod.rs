//! Drawings to scale: shapes in millimetres of paper on the desk, with a spoken description.

mod book_end;
mod clearance;
mod cover_parts;
mod flat_cover;
mod fold_paths;
mod nest;
mod press_marks;
mod press_sheet;
mod push_outs;
mod shapes;
mod stitches;
mod timeline;
mod true_size;
mod unit_cost;

pub use book_end::book_end;
pub use clearance::{Page, clearance};
pub use cover_parts::{Area, CoverParts, Crown, Panel};
pub use flat_cover::{Kept, flat_cover, name as panel_name};
pub use fold_paths::fold_paths;
pub use press_marks::{Mark, crowns, cuts};
pub use press_sheet::{number as panel_number, press_sheet};
pub use push_outs::push_outs;
pub use shapes::{Anchor, Drawing, Pen, Point, Room, Shape};
pub use stitches::stitches;
pub use timeline::timeline;
pub use true_size::{card, true_size};
pub use unit_cost::unit_cost;
