//! What the second module offers to the page's script: PDF files read and written, beside the page.

// wasm-bindgen's expansions hold unsafe code of their own.
#![allow(unsafe_code, missing_docs)]

use crate::intake::{Desk, Part, pass, taken};
use wasm_bindgen::prelude::*;

/// Files that came in, kept open.
#[wasm_bindgen]
#[derive(Default)]
pub struct Reader {
    desk: Desk,
}

#[wasm_bindgen]
impl Reader {
    /// Nothing has come yet.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Self {
        Self::default()
    }
    /// Reads a file, as the cover or the inside. Gives back its facts, or why there are none, as text.
    pub fn take(&mut self, cover: bool, bytes: Vec<u8>, password: &str) -> String {
        pass(&self.desk.take(part(cover), bytes, password))
    }
    /// Closes a file.
    pub fn close(&mut self, cover: bool) {
        self.desk.drop(part(cover));
    }
    /// What came as the inside was the cover, and the other way round.
    pub fn swap(&mut self) {
        self.desk.swap();
    }
    /// Begins to write to an order. False where the text is none.
    pub fn begin(&mut self, order: &str) -> bool {
        let order = taken(order);
        let read = order.is_some();
        order.into_iter().for_each(|order| self.desk.begin(order));
        read
    }
    /// Writes the next page. Gives back how much is written, 0 … 1.
    pub fn go_on(&mut self) -> f64 {
        let (made, all) = self.desk.go_on();
        if all == 0 { 1.0 } else { made as f64 / all as f64 }
    }
    /// The file that was written.
    pub fn written(&mut self) -> Vec<u8> {
        self.desk.written()
    }
}

const fn part(cover: bool) -> Part {
    if cover { Part::Cover } else { Part::Inside }
}
