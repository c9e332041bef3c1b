//! The page's own state and, on wasm32 only, its exports.
//!
//! An event comes in, patches go out: the session decides everything, the script beside it only
//! moves text and bytes. The session is plain Rust and is tested natively.

mod advising;
mod designing;
#[cfg(all(target_arch = "wasm32", feature = "embed"))]
mod embed;
mod event;
mod explaining;
#[cfg(all(target_arch = "wasm32", feature = "session"))]
mod exports;
mod files;
mod handover;
mod helper;
mod history;
mod keeping;
mod language;
mod leaving;
mod list_desk;
mod listing;
#[cfg(all(target_arch = "wasm32", feature = "session"))]
mod objects;
mod offering;
mod one_line;
mod printing;
#[cfg(all(target_arch = "wasm32", feature = "intake"))]
mod reader;
mod reading;
mod saved;
mod sections;
mod session;
mod show;
mod suggest;
mod ticking;
mod true_size;
mod units_choice;
mod versions;

#[cfg(all(target_arch = "wasm32", feature = "embed"))]
pub use embed::{advise_file, answer_file, plan_file, read_job};
pub use event::{Event, Patch};
#[cfg(all(target_arch = "wasm32", feature = "session"))]
pub use exports::PageSession;
pub use helper::search;
pub use list_desk::ListDesk;
#[cfg(all(target_arch = "wasm32", feature = "intake"))]
pub use reader::Reader;
pub use saved::Json;
pub use session::{EXAMPLE, Session};
