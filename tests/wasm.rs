//! The module as scripts see it, tried inside a browser: `cargo test --target
//! wasm32-unknown-unknown --test wasm`, which `pkg-scripts/test` sets up.

#![cfg(target_arch = "wasm32")]

#[path = "support/largest.rs"]
mod largest;

use js_sys::{Array, JSON, Object, Reflect};
use largest::largest;
use quirefit::page::{PageSession, answer_file, plan_file, read_job};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// Everything a script may ask of a page; a patch of another kind would stop it.
const OPS: [&str; 12] = [
    "html", "text", "value", "attr", "store", "download", "focus", "title", "print", "later",
    "announce", "language",
];

fn parsed(json: &str) -> JsValue {
    JSON::parse(json).unwrap()
}

fn started(saved: &str) -> PageSession {
    let setup = parsed(r#"{ "words": {}, "languages": ["en-GB"], "saved": null }"#);
    Reflect::set(&setup, &"saved".into(), &saved.into()).unwrap();
    PageSession::new(setup)
}

fn patches(session: &mut PageSession, event: &str) -> Vec<JsValue> {
    let answer = session.handle(parsed(event));
    answer.dyn_into::<Array>().unwrap().iter().collect()
}

fn part(object: &JsValue, name: &str) -> JsValue {
    Reflect::get(object, &name.into()).unwrap()
}

fn text(object: &JsValue, name: &str) -> String {
    part(object, name).as_string().unwrap()
}

#[wasm_bindgen_test]
fn start_answers_with_patches() {
    let mut session = started("");
    let patches = patches(&mut session, r#"{ "kind": "start" }"#);
    assert!(patches.iter().all(|patch| OPS.contains(&text(patch, "op").as_str())));
    let answer = patches.iter().find(|patch| part(patch, "id") == "answer").unwrap();
    assert!(text(answer, "html").contains("mm"));
}

#[wasm_bindgen_test]
fn typing_changes_the_answer() {
    let mut session = started("");
    patches(&mut session, r#"{ "kind": "start" }"#);
    let patches = patches(&mut session, r#"{ "kind": "input", "id": "pages", "value": "80" }"#);
    assert!(patches.iter().any(|patch| part(patch, "id") == "answer"));
}

#[wasm_bindgen_test]
fn whatever_was_kept_the_page_starts() {
    let deep = format!("{}1{}", "[".repeat(500), "]".repeat(500));
    for kept in ["", "null", "{", "[]", "{\"format\":\"quirefit-saved\",\"job\":7}", "\u{0}", &deep]
    {
        let mut session = started(kept);
        assert!(!patches(&mut session, r#"{ "kind": "start" }"#).is_empty(), "{kept}");
    }
}

#[wasm_bindgen_test]
fn a_job_file_is_planned() {
    let job = parsed(include_str!("../examples/jobs/teapot-guide.json"));
    let answer: JsValue =
        plan_file(job.clone().unchecked_into(), JsValue::NULL.unchecked_into(), None)
            .unwrap()
            .into();
    assert!(part(&answer, "plan").is_object());
    let answer: JsValue =
        read_job(job.unchecked_into(), JsValue::NULL.unchecked_into()).unwrap().into();
    assert_eq!(part(&answer, "understood"), true);
}

/// A client's plan is the book alone, by either way of asking; a shop's faults are for makers.
#[wasm_bindgen_test]
fn a_client_gets_the_book_alone() {
    let job = || parsed(include_str!("../examples/jobs/teapot-guide.json")).unchecked_into();
    let none = || JsValue::NULL.unchecked_into();
    let names = |answer: JsValue| -> Vec<String> {
        let plan = part(&answer, "plan").dyn_into::<Object>().unwrap();
        Object::keys(&plan).iter().map(|name| name.as_string().unwrap()).collect()
    };
    let planned =
        |reading: &str| names(plan_file(job(), none(), Some(reading.to_owned())).unwrap().into());
    let answered = |reading| names(answer_file(job(), none(), "en-GB", reading).unwrap().into());
    let makers = ["layout", "stitches", "run", "cost", "limits", "findings"];
    for told in [planned("client"), answered("client")] {
        assert!(told.contains(&"spine_mm".to_owned()), "{told:?}");
        assert!(makers.iter().all(|name| !told.contains(&(*name).to_owned())), "{told:?}");
    }
    for told in [planned("floor"), answered("design")] {
        assert!(makers.iter().all(|name| told.contains(&(*name).to_owned())), "{told:?}");
    }
    let shop = || {
        let text =
            r#"{ "format": "quirefit-shop", "version": 1, "rate_line_hour": "77.31 an hour" }"#;
        parsed(text).unchecked_into()
    };
    for (reading, telling) in [("client", false), ("design", true)] {
        let answer: JsValue = answer_file(job(), shop(), "en-GB", reading).unwrap().into();
        let told = String::from(JSON::stringify(&answer).unwrap());
        assert_eq!(told.contains("77.31"), telling, "{told}");
        assert!(part(&answer, "errors").is_object(), "{told}");
    }
}

/// Every fault at once, a misspelt key among them.
#[wasm_bindgen_test]
fn faults_come_all_at_once() {
    let job = r#"{ "format": "quirefit-job", "version": 1, "copeis": "7", "pages": "none" }"#;
    let answer: JsValue =
        plan_file(parsed(job).unchecked_into(), JsValue::NULL.unchecked_into(), None)
            .unwrap()
            .into();
    let errors: Vec<JsValue> =
        part(&answer, "errors").dyn_into::<Array>().unwrap().iter().collect();
    let about = |path: &str| errors.iter().any(|error| text(error, "path") == path);
    assert!(about("copeis") && about("pages"), "{answer:?}");
}

/// One more of anything is refused with words.
#[wasm_bindgen_test]
fn beyond_the_largest_job_is_a_fault() {
    let job = parsed(&largest()).unchecked_into();
    let answer: JsValue = read_job(job, JsValue::NULL.unchecked_into()).unwrap().into();
    assert_eq!(part(&answer, "understood"), true, "{answer:?}");
    for (this, more) in [
        ("2000 + 4", "2001 + 4"),
        ("5,000,000", "5,000,001"),
        (r#""pages": "400""#, r#""pages": "404""#),
        ("WWW\"", "WWWW\""),
        (r#""sections": ["#, r#""sections": [{ "pages": "4", "paper": "90 gsm silk" }, "#),
    ] {
        let job = parsed(&largest().replacen(this, more, 1));
        let none = JsValue::NULL.unchecked_into();
        let answer: JsValue = plan_file(job.unchecked_into(), none, None).unwrap().into();
        let errors = part(&answer, "errors").dyn_into::<Array>();
        assert!(errors.is_ok_and(|errors| errors.length() >= 1), "{more}");
    }
}
