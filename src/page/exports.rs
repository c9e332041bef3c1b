//! What the module offers to the page's own script: the session, and the search for its helper.

// wasm-bindgen's expansions hold unsafe code of their own.
#![allow(unsafe_code, missing_docs)]

use super::objects::{self, EventIn, Setup, parse, print};
use super::{Json, Session};
use wasm_bindgen::prelude::*;

/// The browser's own JSON.
const JSON: Json = Json { parse, print };

/// Says in the console what broke, before the module traps.
#[wasm_bindgen(start)]
fn start() {
    std::panic::set_hook(Box::new(|panic| {
        web_sys::console::error_1(&JsValue::from(panic.to_string()));
    }));
}

/// One page. An event in, patches out.
#[wasm_bindgen(js_name = Session)]
pub struct PageSession {
    session: Session,
}

#[wasm_bindgen(js_class = Session)]
impl PageSession {
    /// Starts a page from `{ words: { [language]: text }, languages: string[], saved: string | null }`.
    #[wasm_bindgen(constructor)]
    pub fn new(setup: JsValue) -> Self {
        let setup: Setup = setup.unchecked_into();
        let (files, saved) = (objects::files(&setup), setup.saved());
        Self { session: Session::new(files, &setup.languages(), saved.as_deref(), JSON) }
    }
    /// Takes `{ kind, id, value }` and gives back the changes to the page, in order.
    pub fn handle(&mut self, event: JsValue) -> JsValue {
        let event: EventIn = event.unchecked_into();
        objects::patches(&self.session.handle(&objects::event(&event)))
    }
}

/// What the page's helper is asked: texts of a job and a shop, the latter empty for the demo shop.
#[wasm_bindgen]
#[must_use]
pub fn search(job: &str, shop: &str) -> String {
    super::search(job, shop, JSON)
}
