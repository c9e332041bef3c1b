//! What the module offers to the page's own script: the session, and the search for its helper.

// wasm-bindgen's expansions hold unsafe code of their own.
#![allow(unsafe_code, missing_docs)]

use super::{Event, Json, Session};
use crate::draft::Tree;
use crate::words::Files;
use serde::{Deserialize, Serialize};
use wasm_bindgen::prelude::*;

/// What the script hands over when it starts a page.
#[derive(Deserialize)]
struct Setup {
    words: Files,
    languages: Vec<String>,
    saved: Option<String>,
}

/// The browser's own JSON.
const JSON: Json = Json { parse, print };

fn parse(text: &str) -> Option<Tree> {
    let value = js_sys::JSON::parse(text).ok()?;
    serde_wasm_bindgen::from_value(value).ok()
}

fn print(tree: &Tree) -> String {
    let Ok(value) = out(tree) else { return String::new() };
    js_sys::JSON::stringify_with_replacer_and_space(&value, &JsValue::NULL, &JsValue::from(2))
        .map(String::from)
        .unwrap_or_default()
}

/// Plain objects, no maps, so that `JSON.stringify` sees everything.
pub(super) fn out<T: Serialize + ?Sized>(value: &T) -> Result<JsValue, serde_wasm_bindgen::Error> {
    value.serialize(&serde_wasm_bindgen::Serializer::json_compatible())
}

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
    pub fn new(setup: JsValue) -> Result<Self, JsValue> {
        let setup: Setup = serde_wasm_bindgen::from_value(setup)?;
        let session = Session::new(setup.words, &setup.languages, setup.saved.as_deref(), JSON);
        Ok(Self { session })
    }
    /// Takes `{ kind, id, value }` and gives back the changes to the page, in order.
    pub fn handle(&mut self, event: JsValue) -> Result<JsValue, JsValue> {
        let event: Event = serde_wasm_bindgen::from_value(event)?;
        Ok(out(&self.session.handle(&event))?)
    }
}

/// What the page's helper is asked: texts of a job and a shop, the latter empty for the demo shop.
#[wasm_bindgen]
#[must_use]
pub fn search(job: &str, shop: &str) -> String {
    super::search(job, shop, JSON)
}
