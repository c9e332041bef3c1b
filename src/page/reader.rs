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
    /// Opens a file. Gives back its facts, or why there are none, as text.
    pub fn arrive(&mut self, bytes: Vec<u8>, password: &str) -> String {
        pass(&self.desk.arrive(bytes, password))
    }
    /// Gives the file that has arrived its place; closes what was there.
    pub fn place(&mut self, cover: bool) {
        self.desk.place(if cover { Part::Cover } else { Part::Inside });
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
    /// Nothing more is written.
    pub fn stop(&mut self) {
        self.desk.stop();
    }
    /// The file that was written.
    pub fn written(&mut self) -> Vec<u8> {
        self.desk.written()
    }
}
