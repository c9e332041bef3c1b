//! What a person sees: numbers and sentences printed, the page's regions, drawings, JSON.
//!
//! Views print; they never calculate.

pub mod csv;
pub mod design_pages;
pub mod html;
mod job_card;
pub mod json;
pub mod letter;
mod numbers;
pub mod pdf;
pub mod pictures;
mod plain;
pub mod qr;
mod regions;
mod render;
mod screen;
pub mod set_up;
pub mod svg;
pub mod text;
pub mod title_desk;
pub mod title_rows;
pub mod xjdf;

pub use numbers::Numbers;
pub use regions::{REGIONS, Reading, Region};
pub use render::{Printer, ask_of, placed};
pub use screen::Screen;
pub use set_up::Ticks;
