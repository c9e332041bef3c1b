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
    /// Starts a page from `{ words: { [language]: text }, languages: string[], saved: string | null,
    /// built: string | null }`.
    #[wasm_bindgen(constructor)]
    pub fn new(setup: JsValue) -> Self {
        let setup: Setup = setup.unchecked_into();
        let (files, saved) = (objects::files(&setup), setup.saved());
        let session = Session::new(files, &setup.languages(), saved.as_deref(), JSON);
        Self { session: session.built_from(&setup.built().unwrap_or_default()) }
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

/// A list of titles at work, for the script that asks it beside the page.
#[wasm_bindgen]
pub struct Titles {
    desk: super::ListDesk,
}

#[wasm_bindgen]
impl Titles {
    /// Begins with `{ words: { [language]: text } }`, the reader's language and unit, a shop file's text,
    /// and the list's bytes. What is wrong with the list is thrown as HTML.
    #[wasm_bindgen(constructor)]
    pub fn new(
        setup: JsValue,
        language: &str,
        units: &str,
        shop: &str,
        bytes: &[u8],
    ) -> Result<Self, String> {
        let files = objects::files(&setup.unchecked_into::<Setup>());
        let desk = super::ListDesk::begin((files, JSON), (language, units), shop, bytes)?;
        Ok(Self { desk })
    }
    /// Plans so many rows more and says how far it is.
    pub fn go_on(&mut self, rows: u32) -> String {
        self.desk.go_on(rows)
    }
    /// A part of the table as HTML.
    pub fn table(&self, language: &str, units: &str, wanted: &str) -> String {
        self.desk.table((language, units), wanted)
    }
    /// What has been planned, as CSV.
    pub fn csv(&self) -> String {
        self.desk.csv()
    }
    /// A row as a job file's text.
    pub fn job(&self, number: &str) -> String {
        self.desk.job(number)
    }
}
