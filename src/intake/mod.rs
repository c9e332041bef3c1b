//! The buyer's own PDF: what stands in it, where it and the plan differ, and how its pages are laid on
//! sheets and in a proof.
//!
//! Whatever touches a PDF stands behind the feature `intake`, in a module of its own beside the planner's.
//! Facts, findings and orders are numbers and need no PDF; facts go to the planner and orders come from it
//! as text ([`pass`], [`taken`]).

#[cfg(feature = "intake")]
mod copy;
#[cfg(feature = "intake")]
mod desk;
mod facts;
#[cfg(feature = "intake")]
mod file;
mod findings;
#[cfg(feature = "intake")]
mod layers;
mod looked;
mod offered;
mod order;
mod origin;
mod passed;
mod place;
#[cfg(feature = "intake")]
mod signs;
mod trimmed;
#[cfg(feature = "intake")]
mod write;

#[cfg(feature = "intake")]
pub use desk::Desk;
pub use facts::{Damage, Facts, Frame, PageFacts, Unreadable};
#[cfg(feature = "intake")]
pub use file::read;
pub use findings::{Delivery, Found, PageRange, compare};
pub use looked::{Edge, Looked, Part, Sort, looked_at};
pub use offered::Offered;
pub use order::{Matrix, Order, OrderPage, Placed};
pub use origin::{Source, Sources};
pub use passed::{pass, taken};
pub use place::{Slot, folded, slots};
pub use trimmed::{Assumed, Binding, Trimmed, trimmed};
