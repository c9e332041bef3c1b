//! What the module offers to scripts: the page's session, and `plan` and `read_job` for embedders.

// wasm-bindgen's and tsify's expansions hold unsafe code of their own.
#![allow(unsafe_code, missing_docs)]

use super::{Event, Json, Session};
use crate::advise::{Advice, MOST_TRIED};
use crate::draft::{Draft, FieldError, Tree, from_tree};
use crate::job::{self, Job};
use crate::plan;
use crate::shop::{self, Shop};
use crate::view::json::{advice_out, errors_out, plan_out};
use crate::view::{Numbers, Printer};
use crate::words::{EN, Words, say};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use wasm_bindgen::prelude::*;

/// What the script hands over when it starts a page.
#[derive(Deserialize)]
struct Setup {
    /// Language files by language.
    words: BTreeMap<String, String>,
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
fn out<T: Serialize + ?Sized>(value: &T) -> Result<JsValue, serde_wasm_bindgen::Error> {
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
        let region = setup.languages.first().map_or("", String::as_str);
        let words: Vec<&str> = ["en", region]
            .iter()
            .filter_map(|name| setup.words.get(*name))
            .map(String::as_str)
            .collect();
        let session = Session::new(&words, &setup.languages, setup.saved.as_deref(), JSON);
        Ok(Self { session })
    }
    /// Takes `{ kind, id, value }` and gives back the changes to the page, in order.
    pub fn handle(&mut self, event: JsValue) -> Result<JsValue, JsValue> {
        let event: Event = serde_wasm_bindgen::from_value(event)?;
        Ok(out(&self.session.handle(&event))?)
    }
}

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"
/** A job or shop as its file holds it: `format`, `version`, and texts as a person types them. */
export type QuirefitFile = Record<string, unknown>;
/** A plan, or everything that is wrong with what was given. */
export type Planned = { plan: PlanOut } | { errors: ErrorOut[] };
/** What would make a job fit, or everything that is wrong with what was given. */
export type Advised = { advice: AdviceOut } | { errors: ErrorOut[] };
/** How a job was understood, or everything that is wrong with it. */
export type Read = { understood: true } | { errors: ErrorOut[] };
"#;

#[wasm_bindgen]
extern "C" {
    /// A file's content.
    #[wasm_bindgen(typescript_type = "QuirefitFile | null")]
    pub type FileIn;
    /// A plan or errors.
    #[wasm_bindgen(typescript_type = "Planned")]
    pub type PlannedOut;
    /// Advice or errors.
    #[wasm_bindgen(typescript_type = "Advised")]
    pub type AdvisedOut;
    /// A reading or errors.
    #[wasm_bindgen(typescript_type = "Read")]
    pub type ReadOut;
}

/// Plans a job file in a shop file; without a shop, in the demo shop.
#[wasm_bindgen(js_name = plan)]
pub fn plan_file(job: FileIn, shop: FileIn) -> Result<PlannedOut, JsValue> {
    let words = Words::load(&[EN]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let answer = match read_both(job.into(), shop.into()) {
        Ok((job, shop)) => {
            let planned = plan::plan(&job, &shop);
            wrap("plan", &plan_out(&job, &planned, &printer))?
        }
        Err(errors) => wrap("errors", &errors_out(&errors, &printer))?,
    };
    Ok(answer.unchecked_into())
}

/// Says what would make a job file fit in a shop file, or what else would work: every way is planned
/// like any other book. Without a shop, in the demo shop.
#[wasm_bindgen(js_name = advise)]
pub fn advise_file(job: FileIn, shop: FileIn) -> Result<AdvisedOut, JsValue> {
    let words = Words::load(&[EN]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let job: JsValue = job.into();
    let answer = match read_both(job.clone(), shop.into()) {
        Ok((read, shop)) => {
            let draft = draft(job, &job::SCHEMA).unwrap_or_default();
            let planned = plan::plan(&read, &shop);
            let advice = Advice::searched(&draft, &read, &shop, &planned, MOST_TRIED);
            wrap("advice", &advice_out(&advice, &printer))?
        }
        Err(errors) => wrap("errors", &errors_out(&errors, &printer))?,
    };
    Ok(answer.unchecked_into())
}

/// What the page's helper is asked: texts of a job and a shop, the latter empty for the demo shop.
#[wasm_bindgen]
#[must_use]
pub fn search(job: &str, shop: &str) -> String {
    super::search(job, shop, JSON)
}

/// Reads a job file against a shop file and tells every fault at once.
#[wasm_bindgen(js_name = read_job)]
pub fn read_job(job: FileIn, shop: FileIn) -> Result<ReadOut, JsValue> {
    let words = Words::load(&[EN]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let answer = match read_both(job.into(), shop.into()) {
        Ok(_) => wrap("understood", &true)?,
        Err(errors) => wrap("errors", &errors_out(&errors, &printer))?,
    };
    Ok(answer.unchecked_into())
}

fn wrap<T: Serialize + ?Sized>(name: &str, value: &T) -> Result<JsValue, JsValue> {
    let object = js_sys::Object::new();
    js_sys::Reflect::set(&object, &JsValue::from(name), &out(value)?)?;
    Ok(object.into())
}

fn read_both(job: JsValue, shop: JsValue) -> Result<(Job, Shop), Vec<FieldError>> {
    let shop = if shop.is_null() || shop.is_undefined() {
        shop::demo()
    } else {
        shop::read(&draft(shop, &shop::SCHEMA)?)?
    };
    let draft = draft(job, &job::SCHEMA)?;
    let reading = job::read(&draft, &shop);
    let errors = reading.errors(&draft);
    match reading.job {
        Some(job) if errors.is_empty() => Ok((job, shop)),
        _ => Err(errors),
    }
}

fn draft(file: JsValue, schema: &crate::draft::Schema) -> Result<Draft, Vec<FieldError>> {
    let tree: Tree = serde_wasm_bindgen::from_value(file).map_err(|_| {
        vec![FieldError {
            path: String::new(),
            given: String::new(),
            wrong: say("file.no-json"),
            repair: say("file.no-json.repair"),
        }]
    })?;
    from_tree(&tree, schema)
}
