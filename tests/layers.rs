//! The import rule: a module names only modules to its left in the chain.
//!
//! Remarks and strings are stripped first, modules for tests left out. What fails is printed with
//! its line and the cure.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use std::fmt::Write;
use support::rust::{Source, sources, words};

/// Every stage, from the left. Stages in it that do not exist yet are planned.
const CHAIN: [&str; 25] = [
    "units",
    "source",
    "words",
    "data",
    "paper",
    "entry",
    "draft",
    "shop",
    "job",
    "book",
    "layout",
    "finishing",
    "run",
    "pack",
    "cost",
    "results",
    "check",
    "plan",
    "advise",
    "titles",
    "intake",
    "explain",
    "drawing",
    "view",
    "page",
];

/// Who sees less than everything to its left, and why.
const NARROW: [(&str, &[&str], &str); 2] = [
    (
        "drawing",
        &["units", "words", "data", "plan"],
        "a drawing shows a finished plan: have `plan` re-export the type, or hand it over",
    ),
    (
        "view",
        &[
            "units", "source", "words", "data", "entry", "draft", "shop", "job", "plan", "explain",
            "advise", "titles", "intake", "drawing",
        ],
        "a view prints and never calculates: have `plan` re-export what it prints",
    ),
];

/// Crates that belong to the browser: only these files may name them, and why.
const BROWSER: [(&str, &[&str]); 5] = [
    ("wasm_bindgen", &["src/page/"]),
    ("js_sys", &["src/page/"]),
    ("web_sys", &["src/page/"]),
    ("serde_wasm_bindgen", &["src/page/"]),
    // The wire structs carry their TypeScript types.
    ("tsify", &["src/page/", "src/view/json.rs", "src/view/json/"]),
];

/// The core has no clock, chance, file, network or global: these parts of `std` stay out of it.
const OUTSIDE: [&str; 7] = ["fs", "net", "time", "thread", "process", "env", "io"];
/// Names that would make a global.
const GLOBAL: [&str; 6] = ["thread_local", "OnceLock", "LazyLock", "Mutex", "RwLock", "UnsafeCell"];

/// A name of another top-level module in code: which, and where.
fn named(source: &Source) -> Vec<(usize, String)> {
    let code = &source.code;
    let depth = source.modules().len();
    let mut found = Vec::new();
    for (at, word) in words(code) {
        let after = &code[at + word.len()..];
        match word {
            "crate" => heads(after, at, &mut found),
            // The last of a chain of `super`s: `super::super::X`.
            "super" if !after.trim_start_matches([':', ' ']).starts_with("super") => {
                let before = code[..at].trim_end_matches([':', ' ']);
                let mut climbed = 1;
                let mut rest = before;
                while let Some(shorter) = rest.strip_suffix("super") {
                    climbed += 1;
                    rest = shorter.trim_end_matches([':', ' ']);
                }
                // `pub(super)` names nothing.
                if climbed >= depth && after.trim_start().starts_with("::") {
                    heads(after, at, &mut found);
                }
            }
            _ => {}
        }
    }
    found
}

/// The first names behind `crate`: one, or each of a group in curly brackets.
fn heads(after: &str, at: usize, found: &mut Vec<(usize, String)>) {
    let Some(path) = after.trim_start().strip_prefix("::") else { return };
    let first = |text: &str| -> String {
        text.trim_start().chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect()
    };
    let Some(group) = path.trim_start().strip_prefix('{') else {
        found.push((at, first(path)));
        return;
    };
    let mut depth = 0;
    let mut start = 0;
    for (index, letter) in group.char_indices() {
        match letter {
            '{' => depth += 1,
            ',' | '}' if depth == 0 => {
                let name = first(&group[start..index]);
                if !name.is_empty() {
                    found.push((at, name));
                }
                if letter == '}' {
                    return;
                }
                start = index + 1;
            }
            '}' => depth -= 1,
            _ => {}
        }
    }
}

fn place(stage: &str) -> Option<usize> {
    CHAIN.iter().position(|known| *known == stage)
}

/// What is wrong with naming `other` inside `stage`: the cure, or nothing.
fn cure(stage: &str, other: &str) -> Option<String> {
    if stage == other {
        return None;
    }
    if let Some((_, sees, why)) = NARROW.iter().find(|(narrow, ..)| *narrow == stage) {
        return (!sees.contains(&other)).then(|| (*why).to_owned());
    }
    let (here, there) = (place(stage)?, place(other)?);
    (there > here).then(|| {
        format!(
            "`{other}` stands right of `{stage}`: move what is needed to the left, or hand it over \
             as an argument"
        )
    })
}

fn stage(source: &Source) -> &str {
    source.modules()[0]
}

#[test]
fn a_module_names_only_modules_to_its_left() {
    let mut wrong = String::new();
    let mut seen = 0;
    for source in sources().iter().filter(|source| !source.path.ends_with("/lib.rs")) {
        assert!(place(stage(source)).is_some(), "{}: a stage that the chain lacks", source.path);
        for (at, other) in named(source) {
            seen += 1;
            // Macros and constants of the crate's root would be no module: there are none.
            assert!(place(&other).is_some(), "{}: what is crate::{other}?", source.path);
            if let Some(cure) = cure(stage(source), &other) {
                let (line, text) = (source.line(at), source.line_text(at));
                writeln!(wrong, "{}:{line}: {text}\n    cure: {cure}", source.path).unwrap();
            }
        }
    }
    assert!(seen > 300, "only {seen} names found: the search is broken");
    assert!(wrong.is_empty(), "the import rule is broken:\n{wrong}");
}

#[test]
fn the_browser_stays_in_the_page() {
    let mut wrong = String::new();
    let mut seen = 0;
    for source in sources() {
        for (at, word) in words(&source.code) {
            let Some((_, allowed)) = BROWSER.iter().find(|(name, _)| *name == word) else {
                continue;
            };
            seen += 1;
            if !allowed.iter().any(|start| source.path.starts_with(start)) {
                let (line, text) = (source.line(at), source.line_text(at));
                writeln!(
                    wrong,
                    "{}:{line}: {text}\n    cure: keep {word} in {}",
                    source.path,
                    allowed.join(" or ")
                )
                .unwrap();
            }
        }
    }
    assert!(seen > 0, "nothing names the browser: the search is broken");
    assert!(wrong.is_empty(), "{wrong}");
}

#[test]
fn the_core_has_no_clock_chance_file_network_or_global() {
    let mut wrong = String::new();
    let mut seen = 0;
    for source in sources() {
        for (at, word) in words(&source.code) {
            let after = &source.code[at + word.len()..];
            let mut inner = Vec::new();
            if word == "std" || word == "core" {
                heads(after, at, &mut inner);
            }
            seen += inner.len();
            if inner.iter().any(|(_, name)| OUTSIDE.contains(&name.as_str()))
                || GLOBAL.contains(&word)
                || (word == "static" && after.trim_start().starts_with("mut "))
            {
                let (line, text) = (source.line(at), source.line_text(at));
                let cure = "let it come in as an argument";
                writeln!(
                    wrong,
                    "{}:{line}: {text}
    cure: {cure}",
                    source.path
                )
                .unwrap();
            }
        }
    }
    assert!(seen > 10, "nothing of std is named: the search is broken");
    assert!(wrong.is_empty(), "{wrong}");
}

/// Where inner modules may have a stage's name all the same, and why.
const NAMESAKES: [(&str, &str); 1] =
    [("src/view/html/", "a region's file has the region's name, and a view sees no stage anyway")];

/// A reader of `use super::paper` must not have to ask which paper.
#[test]
fn no_inner_module_has_the_name_of_a_stage() {
    for source in sources() {
        if NAMESAKES.iter().any(|(folder, _)| source.path.starts_with(folder)) {
            continue;
        }
        for inner in &source.modules()[1..] {
            assert!(
                place(inner).is_none(),
                "{}: `{inner}` is a stage's name
    cure: give the file another",
                source.path
            );
        }
    }
}

/// The search itself: what it must find and what it must leave.
#[test]
fn the_search_finds_what_it_should() {
    let file = |path: &str, text: &str| {
        let (code, strings) = support::rust::cut(text);
        Source { path: path.to_owned(), text: text.to_owned(), code, strings }
    };
    let names = |path: &str, text: &str| -> Vec<String> {
        named(&file(path, text)).into_iter().map(|(_, name)| name).collect()
    };
    assert_eq!(names("src/planning/book/fold.rs", "use crate::plan::Plan;"), ["plan"]);
    assert_eq!(names("src/planning/book/fold.rs", "use crate::{a::{b, c}, d};"), ["a", "d"]);
    assert_eq!(names("src/planning/book/fold.rs", "use super::super::plan::Plan;"), ["plan"]);
    assert_eq!(names("src/planning/book/mod.rs", "use super::plan;"), ["plan"]);
    assert_eq!(names("src/planning/plan.rs", "use super::view::x;"), ["view"]);
    let quiet =
        "//! [`crate::plan`]\nuse super::stack; pub(super) fn f() -> &'static str { \"crate::x\" }";
    assert!(names("src/planning/book/fold.rs", quiet).is_empty());
    assert!(cure("book", "plan").is_some() && cure("plan", "book").is_none());
    assert!(cure("view", "book").is_some() && cure("drawing", "job").is_some());
}
