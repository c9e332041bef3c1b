//! What the module offers to embedders: `plan`, `advise`, `answer` and `read_job` on files, with types.

// wasm-bindgen's and tsify's expansions hold unsafe code of their own.
#![allow(unsafe_code, missing_docs)]

use super::objects::tree;
use super::reading::{may_read, reading_of};
use crate::advise::{Advice, MOST_TRIED};
use crate::draft::{Draft, FieldError, Schema, from_tree, read_tree};
use crate::entry::LengthUnit;
use crate::job::{self, Job};
use crate::plan::{self, Plan};
use crate::shop::{self, Shop};
use crate::view::html::{Scene, answer_alone, file_faults};
use crate::view::json::{advice_out, book_out, errors_out, plan_out};
use crate::view::{Numbers, Printer, Reading, Screen, Ticks};
use crate::words::{EN, Language, Words, built_in};
use serde::Serialize;
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"
/** A job or shop as its file holds it: `format`, `version`, and texts as a person types them. */
export type QuirefitFile = Record<string, unknown>;
/** A plan: the book, and for makers how it is made; or everything that is wrong with what was given. */
export type Planned = { plan: BookOut & Partial<PlanOut> } | { errors: ErrorOut[] };
/** What would make a job fit, or everything that is wrong with what was given. */
export type Advised = { advice: AdviceOut } | { errors: ErrorOut[] };
/** The answer as the planner's own page words it, and what it says in numbers. */
export type Answered = { html: string } & Planned;
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
    /// An answer to be shown.
    #[wasm_bindgen(typescript_type = "Answered")]
    pub type AnsweredOut;
    /// A reading or errors.
    #[wasm_bindgen(typescript_type = "Read")]
    pub type ReadOut;
}

/// Plans a job file in a shop file; without a shop, in the demo shop. For the reader "client" the plan holds
/// no limit, no rate and no cost.
#[wasm_bindgen(js_name = plan)]
pub fn plan_file(
    job: FileIn,
    shop: FileIn,
    reading: Option<String>,
) -> Result<PlannedOut, JsValue> {
    let words = Words::load(&[EN]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let reading = reading_of(&reading.unwrap_or_default()).unwrap_or(Reading::Design);
    let answer = match read_both(job.into(), shop.into()) {
        Ok((job, shop)) => {
            let planned = plan::plan(&job, &shop);
            wrap_plan(&job, &planned, &printer, reading)?
        }
        Err(errors) => wrap_errors(&errors, &printer, reading)?,
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
            let draft = draft(&job, &job::SCHEMA).unwrap_or_default();
            let planned = plan::plan(&read, &shop);
            let mut advice = Advice::searched(&draft, &read, &shop, &planned, MOST_TRIED);
            advice.reckon(&read, &shop, &planned);
            wrap("advice", &advice_out(&advice, &printer))?
        }
        Err(errors) => wrap("errors", &errors_out(&errors, &printer))?,
    };
    Ok(answer.unchecked_into())
}

/// Plans a job file in a shop file, or in the demo shop, and words the answer as the planner's page does
/// for a reader ("client", "design" or "floor"; "design" where it is another text), in the language of a
/// tag such as "de". What is wrong is worded the same.
#[wasm_bindgen(js_name = answer)]
pub fn answer_file(
    job: FileIn,
    shop: FileIn,
    language: &str,
    reading: &str,
) -> Result<AnsweredOut, JsValue> {
    let reading = reading_of(reading).unwrap_or(Reading::Design);
    let language = Language::of(language).unwrap_or_else(Language::first);
    let words = language.words(&built_in());
    let job: JsValue = job.into();
    let mut draft = draft(&job, &job::SCHEMA).unwrap_or_default();
    if draft.get("units").is_empty() && language.inches {
        draft.set("units", "in");
    }
    let unit = LengthUnit::of(draft.get("units"));
    let printer = Printer { words: &words, numbers: Numbers { unit, mark: language.mark } };
    let (answer, shown) = match read_both(job, shop.into()) {
        Ok((job, shop)) => {
            let plan = plan::plan(&job, &shop);
            let scene = Scene {
                job: &job,
                shop: &shop,
                plan: &plan,
                advice: &Advice::at_once(&job, &shop, &plan),
                versions: &[],
                ticks: &Ticks::default(),
                printer,
                reading,
                screen: Screen::default(),
            };
            (wrap_plan(&job, &plan, &printer, reading)?, answer_alone(&scene))
        }
        Err(errors) => {
            let list = if may_read(reading, &errors) {
                file_faults(&errors, &printer)
            } else {
                maud::html! { p { (printer.word("file.for-makers")) } }
            };
            (wrap_errors(&errors, &printer, reading)?, list)
        }
    };
    js_sys::Reflect::set(&answer, &JsValue::from("html"), &JsValue::from(shown.into_string()))?;
    Ok(answer.unchecked_into())
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

/// Plain objects, no maps, so that `JSON.stringify` sees everything.
fn out<T: Serialize + ?Sized>(value: &T) -> Result<JsValue, serde_wasm_bindgen::Error> {
    value.serialize(&serde_wasm_bindgen::Serializer::json_compatible())
}

fn wrap<T: Serialize + ?Sized>(name: &str, value: &T) -> Result<JsValue, JsValue> {
    let object = js_sys::Object::new();
    js_sys::Reflect::set(&object, &JsValue::from(name), &out(value)?)?;
    Ok(object.into())
}

/// What this reader may know of a plan.
fn wrap_plan(
    job: &Job,
    plan: &Plan,
    printer: &Printer,
    reading: Reading,
) -> Result<JsValue, JsValue> {
    match reading {
        Reading::Client => wrap("plan", &book_out(job, plan)),
        Reading::Design | Reading::Floor => wrap("plan", &plan_out(job, plan, printer)),
    }
}

/// What this reader may know of faults.
fn wrap_errors(
    errors: &[FieldError],
    printer: &Printer,
    reading: Reading,
) -> Result<JsValue, JsValue> {
    let told = if may_read(reading, errors) { errors } else { &[] };
    wrap("errors", &errors_out(told, printer))
}

fn read_both(job: JsValue, shop: JsValue) -> Result<(Job, Shop), Vec<FieldError>> {
    let shop = if shop.is_null() || shop.is_undefined() {
        shop::demo()
    } else {
        shop::read(&draft(&shop, &shop::SCHEMA)?)?
    };
    let (draft, mut errors) = read_tree(&tree(&job), &job::SCHEMA)?;
    let reading = job::read(&draft, &shop);
    errors.extend(reading.errors(&draft));
    match reading.job {
        Some(job) if errors.is_empty() => Ok((job, shop)),
        _ => Err(errors),
    }
}

fn draft(file: &JsValue, schema: &Schema) -> Result<Draft, Vec<FieldError>> {
    from_tree(&tree(file), schema)
}
