//! Other ways of binding: what each takes of a book. Figures from memory unless they say otherwise;
//! they tell what is worth asking about, never what a supplier can do.

use crate::source::{Source, Sourced};
use crate::units::{Mm, Pages};

/// One way of binding.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Binding {
    /// Its name in language keys.
    pub id: &'static str,
    /// Thinnest closed book it takes.
    pub least: Sourced<Mm>,
    /// Thickest closed book it takes.
    pub most: Sourced<Mm>,
    /// The page count must be a multiple of this.
    pub multiple: Pages,
    /// The book lies flat when open.
    pub lies_flat: bool,
    /// The spine can carry words when it is wide enough.
    pub spine_text: bool,
}

const fn memory(value: f64) -> Sourced<Mm> {
    Sourced::new(Mm(value), Source::Memory)
}

const fn practice(value: f64) -> Sourced<Mm> {
    Sourced::new(Mm(value), Source::Practice)
}

/// Bindings of single leaves, beside the stitched book.
pub static BINDINGS: [Binding; 4] = [
    Binding {
        id: "adhesive",
        least: practice(3.0),
        most: memory(60.0),
        multiple: Pages(2),
        lies_flat: false,
        spine_text: true,
    },
    Binding {
        id: "tape",
        least: memory(1.0),
        most: memory(30.0),
        multiple: Pages(2),
        lies_flat: false,
        spine_text: false,
    },
    Binding {
        id: "wire-comb",
        least: memory(1.0),
        most: memory(27.0),
        multiple: Pages(2),
        lies_flat: true,
        spine_text: false,
    },
    Binding {
        id: "coil",
        least: memory(1.0),
        most: memory(45.0),
        multiple: Pages(2),
        lies_flat: true,
        spine_text: false,
    },
];
