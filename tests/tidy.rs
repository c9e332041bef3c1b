//! Housekeeping: short files, remarks at the top, no prose and no bare numbers where they do not
//! belong, no way out of the page, a top level that holds what it should, documents that name files
//! which exist.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use std::collections::BTreeSet;
use std::fmt::Write;
use std::process::Command;
use support::rust::{Source, sources, words};
use support::{files, name, root, text_of};

/// From so many lines on a file is worth cutting up.
const LONG: usize = 250;
/// More are refused.
const TOO_LONG: usize = 500;

#[test]
fn files_are_short_and_say_what_they_are() {
    let all = files("src").into_iter().chain(files("tests"));
    let paths: Vec<String> = all.filter(|path| path.ends_with(".rs")).collect();
    assert!(paths.len() > 250, "only {} files found", paths.len());
    for path in paths {
        let text = text_of(&path);
        let lines = text.lines().count();
        assert!(text.starts_with("//! "), "{path} must begin with `//! ` and what it is");
        assert!(lines <= TOO_LONG, "{path} has {lines} lines: cut it up ({TOO_LONG} at most)");
        if lines > LONG {
            println!("note: {path} has {lines} lines; {LONG} are the aim");
        }
    }
}

/// Sentences that may stand outside `src/input/words`, and why. Rows of `src/input/data` hold names and sources.
const PROSE: [(&str, &str, &str); 8] = [
    ("src/input/data/", "", "rows hold names, and titles of sources"),
    ("src/input/shop/demo.rs", "The Lantern Street", "the demo shop's own name"),
    (
        "src/input/shop/demo.rs",
        "Invented throughout",
        "the demo shop's own remark, as in a shop file",
    ),
    ("src/page/session.rs", "A Field Guide", "the title in the example job"),
    ("src/page/session.rs", "Pond Silk", "a paper of the demo shop, in the example job"),
    ("src/page/embed.rs", "export type", "TypeScript declarations with their remarks"),
    ("src/input/entry/", "", "what people type: words to be read, never printed"),
    ("src/input/draft/tree.rs", "any value", "what serde expects, for a programmer"),
];

/// Whether a string holds three words or more of which two follow each other like a sentence's.
fn prose(text: &str) -> bool {
    let mut plain = String::new();
    let mut depth = 0;
    for letter in text.chars() {
        match letter {
            '{' => depth += 1,
            '}' => depth -= 1,
            _ if depth > 0 => {}
            _ => plain.push(letter),
        }
    }
    let is_word = |word: &&str| {
        let bare = word.trim_matches([',', '.', ':', ';', '!', '?', '(', ')', '"', '\'']);
        bare.chars().count() >= 2 && bare.chars().all(|c| c.is_alphabetic() || c == '\'')
    };
    plain.split_whitespace().filter(is_word).count() >= 3
}

#[test]
fn no_sentence_stands_outside_the_words() {
    assert!(
        prose("The spine is {x} thick") && !prose("M12 2a10 10 0 1 0 0") && !prose("{a} {b} mm")
    );
    let mut wrong = String::new();
    let mut used = BTreeSet::new();
    for source in sources().iter().filter(|source| !source.path.starts_with("src/input/words/")) {
        for string in source.strings.iter().filter(|string| prose(&string.text)) {
            let row = PROSE.iter().position(|(path, start, _)| {
                source.path.starts_with(path) && string.text.contains(start)
            });
            // Style classes are words, but no sentence.
            let class = source.text[..string.at].ends_with("class=");
            if row.is_none() && !class {
                let (line, text) = (source.line(string.at), &string.text);
                writeln!(
                    wrong,
                    "{}:{line}: \"{text}\"\n    cure: a key of src/input/words",
                    source.path
                )
                .unwrap();
            }
            used.extend(row);
        }
    }
    assert!(wrong.is_empty(), "{wrong}");
    for (index, (path, start, _)) in PROSE.iter().enumerate() {
        let expected = !start.is_empty() && *start != "any value" && *start != "Pond Silk";
        assert!(!expected || used.contains(&index), "no longer needed: {path} {start}");
    }
}

/// Folders where formulas stand.
const STAGES: [&str; 6] = [
    "src/planning/book/",
    "src/planning/finishing/",
    "src/planning/layout/",
    "src/planning/run/",
    "src/planning/pack/",
    "src/planning/cost/",
];
/// Numbers of geometry.
const GEOMETRY: [&str; 3] = ["0", "1", "2"];

/// Bare numbers in code, constants and statics left out.
fn numbers(source: &Source) -> Vec<(usize, String)> {
    let code = without_constants(&source.code);
    let mut found = Vec::new();
    let mut from = 0;
    for (at, word) in words(&code) {
        if at < from || !word.starts_with(|first: char| first.is_ascii_digit()) {
            continue;
        }
        let tail = &code[at..];
        let part = |c: char| c.is_ascii_alphanumeric() || c == '_';
        let mut end = word.len();
        // A fraction, but neither a range nor a method of a number.
        if tail[end..].starts_with('.')
            && tail[end + 1..].starts_with(|c: char| c.is_ascii_digit())
            && !code[..at].ends_with('.')
        {
            end += 1 + tail[end + 1..].find(|c| !part(c)).unwrap_or(0);
        }
        from = at + end;
        found.push((at, tail[..end].to_owned()));
    }
    found
}

/// Blanks `const … = …;` and `static … = …;`.
fn without_constants(code: &str) -> String {
    let mut out = code.as_bytes().to_vec();
    for (at, word) in words(code) {
        let declares = word == "static"
            || (word == "const" && {
                let next = code[at + word.len()..].trim_start();
                !next.starts_with("fn ")
            });
        if !declares || code[..at].ends_with(['\'', '*']) {
            continue;
        }
        let mut depth = 0i32;
        for byte in &mut out[at..] {
            match *byte {
                b'{' | b'(' | b'[' => depth += 1,
                b'}' | b')' | b']' => depth -= 1,
                b';' if depth == 0 => break,
                _ => {}
            }
            if depth < 0 {
                break;
            }
            if *byte != b'\n' {
                *byte = b' ';
            }
        }
    }
    String::from_utf8_lossy(&out).into_owned()
}

/// Whether a literal is 0, 1 or 2, however written.
fn geometric(number: &str) -> bool {
    let bare = number.trim_end_matches(|c: char| !c.is_ascii_digit());
    let bare = ["_u32", "_f64", "u32", "f64", "i64", "usize"]
        .iter()
        .find_map(|kind| number.strip_suffix(kind))
        .unwrap_or(bare);
    let bare = bare.trim_end_matches('_');
    let whole = bare.split_once('.').map_or(bare, |(whole, part)| {
        if part.chars().all(|digit| digit == '0') { whole } else { bare }
    });
    GEOMETRY.contains(&whole)
}

#[test]
fn formulas_hold_no_numbers_but_those_of_geometry() {
    assert!(geometric("2.0") && geometric("1_u32") && !geometric("2.5") && !geometric("12"));
    let mut wrong = String::new();
    let mut seen = 0;
    for source in sources() {
        if !STAGES.iter().any(|folder| source.path.starts_with(folder)) {
            continue;
        }
        for (at, number) in numbers(&source) {
            seen += 1;
            if !geometric(&number) {
                let (line, text) = (source.line(at), source.line_text(at));
                writeln!(
                    wrong,
                    "{}:{line}: {number} in `{text}`\n    cure: a row of src/input/data with its source, \
                     or a constant with a name",
                    source.path
                )
                .unwrap();
            }
        }
    }
    assert!(seen > 50, "only {seen} numbers found: the search is broken");
    assert!(wrong.is_empty(), "{wrong}");
}

/// Names by which SVG and XJDF are known; no addresses that anything opens.
const NAMES: [&str; 2] = ["http://www.w3.org/2000/svg", "http://www.CIP4.org/JDFSchema_2_0"];

#[test]
fn nothing_leads_out_of_the_page() {
    let page = files("www").into_iter().chain(files("src/view")).chain(files("src/page"));
    let mut seen = 0;
    for path in page {
        let text = NAMES.iter().fold(text_of(&path), |text, name| text.replace(name, ""));
        let tight: String = text.chars().filter(|letter| !letter.is_whitespace()).collect();
        seen += 1;
        for way in [
            "http://",
            "https://",
            "location=",
            "location.href=",
            "location.assign",
            "location.replace",
            "window.open",
            "fetch(",
            "XMLHttpRequest",
            "WebSocket",
            "sendBeacon",
            "EventSource",
            "importScripts",
            "@import",
            "src=\"//",
            "href=\"//",
        ] {
            let own = match way {
                "@import" => path.starts_with("www/css/") && imports_are_own(&text),
                // The hosted copy's helper passes on what the browser itself has asked it for; the package
                // loads what lies beside it.
                "fetch(" => {
                    let only = |own: &str| tight.matches(way).count() == tight.matches(own).count();
                    (path == "www/site/service.js" && only("fetch(event.request)"))
                        || (path.starts_with("www/embed/")
                            && only("fetch(newURL(")
                            && tight.matches("newURL(").count()
                                == tight.matches(",import.meta.url)").count())
                }
                _ => false,
            };
            assert!(
                own || !tight.contains(way),
                "{path} holds {way}: nothing may lead out of the page"
            );
        }
    }
    assert!(seen > 20, "only {seen} files found");
}

/// Whether every `@import` of a style sheet names a file beside it, which the build takes in.
fn imports_are_own(text: &str) -> bool {
    text.split("@import").skip(1).all(|after| {
        let path = after.split(';').next().unwrap_or_default().trim().trim_matches(['"', '\'']);
        files("www/css").iter().any(|file| name(file) == path.trim_start_matches("./"))
    })
}

/// Exactly these stand on top, beside hidden files.
const TOP: [&str; 10] = [
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "examples",
    "pkg-scripts",
    "src",
    "tests",
    "www",
];

#[test]
fn the_top_level_holds_exactly_what_it_should() {
    let expected: BTreeSet<String> = TOP.iter().map(|name| (*name).to_owned()).collect();
    let found: BTreeSet<String> = std::fs::read_dir(root())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .filter(|name| !name.starts_with('.') && !ignored(name))
        .collect();
    assert_eq!(found, expected);
}

/// Whether git ignores a path: what is built is no part of the house.
fn ignored(path: &str) -> bool {
    let asked = Command::new("git").args(["check-ignore", "-q", path]).current_dir(root()).status();
    match asked {
        Ok(status) => status.success(),
        // An unpacked source without git: the two folders that builds make.
        Err(_) => matches!(path, "target" | "dist"),
    }
}

#[test]
fn every_path_in_the_documents_exists() {
    for document in ["README.md", "DEVELOPERS.md"] {
        let mut seen = 0;
        for path in paths_in(&text_of(document)) {
            let built = path.starts_with("target/") || path.starts_with("dist/");
            seen += 1;
            assert!(built || exists(&path), "{document} names `{path}`, which does not exist");
        }
        assert!(seen >= 4, "{document}: only {seen} paths found");
    }
}

#[test]
fn every_package_from_outside_says_what_it_is_for() {
    let told = text_of("DEVELOPERS.md");
    let mut named = BTreeSet::new();
    for path in ["Cargo.toml", "src/input/Cargo.toml", "src/planning/Cargo.toml"] {
        let text = text_of(path);
        let lists = text
            .split("\n[")
            .filter(|part| part.split(']').next().unwrap().ends_with("dependencies"));
        let rows = lists.flat_map(|list| list.lines().skip(1)).filter(|row| row.contains('='));
        named.extend(rows.map(|row| row.split(['.', ' ']).next().unwrap().to_owned()));
    }
    let tools: serde_json::Value =
        serde_json::from_str(&text_of("pkg-scripts/package.json")).unwrap();
    named.extend(tools["devDependencies"].as_object().unwrap().keys().cloned());
    assert!(named.len() > 25, "{named:?}");
    let own = |package: &str| package.starts_with("quirefit");
    let silent: Vec<&String> = named
        .iter()
        .filter(|package| !own(package) && !told.contains(&format!("`{package}`")))
        .collect();
    assert!(silent.is_empty(), "DEVELOPERS.md does not say what {silent:?} is for");
}

/// Everything in a document's code and links that looks like a path of the house.
fn paths_in(document: &str) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    let coded = document.split('`').skip(1).step_by(2);
    let linked = document.split("](").skip(1).filter_map(|after| after.split(')').next());
    for piece in coded.chain(linked).flat_map(str::split_whitespace) {
        let piece =
            piece.trim_matches(['(', ')', ',', ';', ':', '"', '.']).trim_start_matches("./");
        let first = piece.split('/').next().unwrap_or_default();
        let top = TOP.contains(&first) || matches!(first, "dist" | "target");
        let plain = piece.chars().all(|c| c.is_ascii_alphanumeric() || "/._-".contains(c));
        if plain && (top || piece.starts_with(".ci/") || piece.starts_with(".cargo/")) {
            found.insert(piece.to_owned());
        }
    }
    found
}

/// Whether a path exists; a piece in capitals, such as ID or NAME, stands for any name.
fn exists(path: &str) -> bool {
    let stands_for_any = |piece: &str| {
        piece.split('.').any(|part| part.len() > 1 && part.chars().all(|c| c.is_ascii_uppercase()))
    };
    let last = name(path);
    if TOP.contains(&path) || !stands_for_any(last) {
        return root().join(path).exists();
    }
    let folder = path.strip_suffix(last).unwrap().trim_end_matches('/');
    let kind = last.split_once('.').map_or("", |(_, kind)| kind);
    files(folder).iter().any(|file| file.ends_with(kind))
}
