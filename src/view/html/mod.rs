//! The page's HTML, region by region. It makes sense unstyled; every control has a stable id.

pub mod answer;
pub mod bindings;
mod brought;
mod card;
pub mod compare;
pub mod cost;
pub mod cover;
pub mod decides;
pub mod design;
mod explanation;
mod fields;
mod first_off;
pub mod fixes;
mod frame;
pub mod inside;
mod offers;
pub mod pack;
pub mod run;
mod scene;
mod sections;
pub mod set_up;
pub mod sheet;
pub mod stitches;
mod teach;
pub mod titles;
pub mod trim;
mod true_size;

pub use answer::{answer, answer_alone, picture};
pub use card::card;
pub use explanation::{appendix, explanation};
pub use fields::{field_name, file_faults, form_faults, note};
pub use first_off::first_off;
pub use frame::{
    HANDED, Page, READINGS, body, code, frame, region_body, region_summary, restore_question,
    shop_line, unread,
};
pub use offers::{Offer, is_offered, offers, option_id};
pub use scene::Scene;
pub use sections::{place_id, sections};
pub use teach::{LINES as SPOKEN_LINES, first_visit, teach};
pub use true_size::{CARD_PIXELS, calibration, card_outline, true_size};
