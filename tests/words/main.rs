//! Every key has words, every word has a key, and every slot is filled.
//!
//! Keys are collected from the code: literals as they stand, and families built from rows. What is
//! really printed is seen with a marked language, in which every pattern says its own key and slots.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod families;
mod files;
mod printed;
mod shown;
#[path = "../support/mod.rs"]
mod support;
mod texts;

use families::{families, repairs};
use quirefit::words::{EN, Part, Words, parts};
use std::collections::{BTreeMap, BTreeSet};
use support::rust::sources;

/// Where a number decides between two patterns.
const FORMS: [&str; 2] = [".one", ".other"];

fn keys_of(words: &Words) -> BTreeSet<String> {
    words.all().map(|(key, _)| key.to_owned()).collect()
}

fn slots(pattern: &str) -> BTreeSet<&str> {
    let slot = |part| match part {
        Part::Slot(slot) => Some(slot),
        Part::Text(_) => None,
    };
    parts(pattern).filter_map(slot).collect()
}

/// A key without its form.
fn stem(key: &str) -> &str {
    FORMS.iter().find_map(|form| key.strip_suffix(form)).unwrap_or(key)
}

/// First pieces of keys: what a text must begin with to be one.
fn beginnings() -> BTreeSet<String> {
    let words = Words::load(&[EN]);
    words.all().map(|(key, _)| key.split('.').next().unwrap().to_owned()).collect()
}

/// Whether a text has the shape of a key; `{…}` may stand in it.
fn looks_like_a_key(text: &str, beginnings: &BTreeSet<String>) -> bool {
    let (first, rest) = text.split_once('.').unwrap_or((text, ""));
    let letters = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || "._-{}".contains(c);
    !rest.is_empty()
        && beginnings.contains(first)
        && rest.chars().all(letters)
        && !rest.ends_with('.')
}

/// Keys and key patterns in the code, with a place where each stands.
fn in_code() -> BTreeMap<String, String> {
    let beginnings = beginnings();
    let mut found = BTreeMap::new();
    let mut programs = sources();
    programs.retain(|source| !source.path.starts_with("src/input/words/store"));
    for example in ["examples/plan.rs", "examples/frame.rs"] {
        programs.push(support::rust::source(example));
    }
    for source in programs {
        for string in &source.strings {
            if looks_like_a_key(&string.text, &beginnings) {
                let place = format!("{}:{}", source.path, source.line(string.at));
                found.insert(without_names(&string.text), place);
            }
        }
    }
    assert!(found.len() > 300, "only {} keys found: the search is broken", found.len());
    found
}

/// `kind.{}` and `kind.{id}` are one pattern: `kind.*`.
fn without_names(text: &str) -> String {
    let mut out = String::new();
    for (index, piece) in text.split('{').enumerate() {
        match piece.split_once('}') {
            Some((_, after)) if index > 0 => {
                out.push('*');
                out.push_str(after);
            }
            _ => out.push_str(piece),
        }
    }
    out
}

#[test]
fn every_key_in_the_code_has_words() {
    let english = keys_of(&Words::load(&[EN]));
    let stems: BTreeSet<&str> = english.iter().map(|key| stem(key)).collect();
    let code = in_code();
    let families = families();
    let mut wrong = Vec::new();
    for (key, place) in &code {
        if !key.contains('*') {
            if !stems.contains(key.as_str()) && !english.contains(key) {
                wrong.push(format!("{place}: {key} has no words"));
            }
        } else if !families.iter().any(|(pattern, _)| begins_as(key, pattern)) {
            wrong.push(format!("{place}: keys {key} are made here: add their rows to `families`"));
        }
    }
    for key in families.iter().flat_map(|(_, keys)| keys).chain(&repairs(&code)) {
        if !stems.contains(key.as_str()) && !english.contains(key) {
            wrong.push(format!("{key} has no words"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// `field.*.*` and `field.*.label` are made by the family `field.*`.
fn begins_as(key: &str, pattern: &str) -> bool {
    key == pattern
        || (pattern == "field.*" && key.starts_with("field.*"))
        || (pattern == "field.*" && key == "field.units.*")
}

#[test]
fn every_word_has_a_key_in_the_code() {
    let code = in_code();
    let mut used: BTreeSet<String> = code.keys().cloned().collect();
    used.extend(families().into_iter().flat_map(|(_, keys)| keys));
    used.extend(repairs(&code));
    let english = Words::load(&[EN]);
    let orphans: Vec<&str> = english
        .all()
        .map(|(key, _)| key)
        .filter(|key| !used.contains(stem(key)) && !used.contains(*key))
        .collect();
    assert!(orphans.is_empty(), "nothing prints {orphans:#?}");
}

#[test]
fn every_pattern_of_a_family_is_found_in_the_code() {
    let code = in_code();
    let made = |pattern: &str| code.keys().any(|key| begins_as(key, pattern));
    let gone: Vec<&str> =
        families().iter().map(|(pattern, _)| *pattern).filter(|pattern| !made(pattern)).collect();
    assert!(gone.is_empty(), "the code makes no keys {gone:?} any more");
}
