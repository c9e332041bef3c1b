//! Between the script's objects and what the session takes and gives.

// wasm-bindgen's expansions hold unsafe code of their own.
#![allow(unsafe_code)]

use super::{Event, Patch};
use crate::draft::Tree;
use crate::words::{Files, built_in};
use js_sys::{Array, JSON, Object, Reflect};
use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    /// `{ kind, id, value }`; the last two may be missing.
    pub(super) type EventIn;
    #[wasm_bindgen(method, getter)]
    fn kind(this: &EventIn) -> String;
    #[wasm_bindgen(method, getter)]
    fn id(this: &EventIn) -> Option<String>;
    #[wasm_bindgen(method, getter)]
    fn value(this: &EventIn) -> Option<String>;

    /// What the script hands over when it starts a page.
    pub(super) type Setup;
    #[wasm_bindgen(method, getter)]
    fn words(this: &Setup) -> Object;
    #[wasm_bindgen(method, getter)]
    pub(super) fn languages(this: &Setup) -> Vec<String>;
    #[wasm_bindgen(method, getter)]
    pub(super) fn built(this: &Setup) -> Option<String>;
    #[wasm_bindgen(method, getter)]
    pub(super) fn saved(this: &Setup) -> Option<String>;
}

/// The language files of a page: those that it brings, else those in the module.
pub(super) fn files(setup: &Setup) -> Files {
    let mut files = Files::new();
    for (tag, text) in named(&setup.words()) {
        files.insert(tag, text.as_string().unwrap_or_default());
    }
    if files.is_empty() { built_in() } else { files }
}

/// Something happened.
pub(super) fn event(event: &EventIn) -> Event {
    let (id, value) = (event.id().unwrap_or_default(), event.value().unwrap_or_default());
    Event { kind: event.kind(), id, value }
}

/// Patches as the script applies them: what to do as `op`, and the parts by name.
pub(super) fn patches(patches: &[Patch]) -> JsValue {
    let list = Array::new();
    for patch in patches {
        let object = Object::new();
        patch.each_part(&mut |name, text| {
            put(&object, name, &text.map_or(JsValue::NULL, JsValue::from));
        });
        list.push(&object);
    }
    list.into()
}

/// A text of JSON, read by the browser.
pub(super) fn parse(text: &str) -> Option<Tree> {
    JSON::parse(text).ok().map(|value| tree(&value))
}

/// A tree as JSON, written by the browser.
pub(super) fn print(tree: &Tree) -> String {
    JSON::stringify_with_replacer_and_space(&object(tree), &JsValue::NULL, &JsValue::from(2))
        .map(String::from)
        .unwrap_or_default()
}

/// What the script holds, as a tree.
pub(super) fn tree(value: &JsValue) -> Tree {
    if let Some(text) = value.as_string() {
        Tree::Text(text)
    } else if let Some(number) = value.as_f64() {
        Tree::Number(number)
    } else if let Some(yes) = value.as_bool() {
        Tree::Bool(yes)
    } else if let Some(list) = value.dyn_ref::<Array>() {
        Tree::List(list.iter().map(|member| tree(&member)).collect())
    } else if let Some(object) = value.dyn_ref::<Object>() {
        Tree::Map(named(object).map(|(name, value)| (name, tree(&value))).collect())
    } else {
        Tree::Null
    }
}

fn object(tree: &Tree) -> JsValue {
    match tree {
        Tree::Null => JsValue::NULL,
        Tree::Bool(yes) => JsValue::from(*yes),
        Tree::Number(number) => JsValue::from(*number),
        Tree::Text(text) => JsValue::from(text),
        Tree::List(members) => {
            let list = Array::new();
            for member in members {
                list.push(&object(member));
            }
            list.into()
        }
        Tree::Map(entries) => {
            let map = Object::new();
            for (name, value) in entries {
                put(&map, name, &object(value));
            }
            map.into()
        }
    }
}

/// Everything an object holds, by name.
fn named(object: &Object) -> impl Iterator<Item = (String, JsValue)> {
    Object::entries(object).into_iter().map(|entry| {
        let pair = entry.unchecked_into::<Array>();
        (pair.get(0).as_string().unwrap_or_default(), pair.get(1))
    })
}

fn put(object: &Object, name: &str, value: &JsValue) {
    // Fails on frozen objects alone; these are fresh.
    drop(Reflect::set(object, &JsValue::from(name), value));
}
