//! What several tests share: the example files, and source text cut into code, remarks and strings.
#![allow(dead_code, reason = "every test takes what it needs")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

pub mod designs;
pub mod made;
pub mod rust;

use proptest::test_runner::{Config, FileFailurePersistence};
use quirefit::draft::{Draft, FieldError, Schema, Tree, from_tree};
use quirefit::job::{self, Job};
use quirefit::page::{Event, Json, Patch, Session};
use quirefit::shop::{self, Shop};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The library's JSON, in place of the browser's own.
pub const JSON: Json = Json { parse, print };

fn parse(text: &str) -> Option<Tree> {
    serde_json::from_str(text).ok()
}

fn print(tree: &Tree) -> String {
    serde_json::to_string_pretty(tree).unwrap()
}

/// What a page answers to one event, and to the rest that it asks for.
pub fn answered(session: &mut Session, kind: &str, id: &str, value: &str) -> Vec<Patch> {
    let mut answered = session.handle(&Event::new(kind, id, value));
    let mut seen = 0;
    while answered[seen..].contains(&Patch::Later {}) {
        seen = answered.len();
        answered.extend(session.handle(&Event::new("rest", "", "")));
    }
    answered
}

/// How a law is tried: on so many cases, or on as many as PROPTEST_CASES says. What has failed once is
/// tried first from then on, where there is a file to keep it in.
pub fn tried(cases: u32, failures: Option<&'static str>) -> Config {
    let asked = std::env::var("PROPTEST_CASES").ok().and_then(|text| text.parse().ok());
    let cases = asked.unwrap_or(cases);
    Config {
        cases,
        // What is drawn is not always a job: such draws are counted against the cases, not a fixed number.
        max_local_rejects: cases.saturating_mul(10).max(100_000),
        failure_persistence: failures
            .map(|path| Box::new(FileFailurePersistence::Direct(path)) as Box<_>),
        ..Config::default()
    }
}

/// The folder that holds everything.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// A file of the house, as text.
#[track_caller]
pub fn text_of(path: impl AsRef<Path>) -> String {
    let path = root().join(path);
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// Every file under a folder, with its path from the top, in order.
#[track_caller]
pub fn files(folder: &str) -> Vec<String> {
    fn walk(folder: &Path, found: &mut Vec<String>) {
        let entries =
            fs::read_dir(folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
        for entry in entries {
            let path: PathBuf = entry.unwrap().path();
            if path.is_dir() {
                walk(&path, found);
            } else {
                found.push(path.strip_prefix(root()).unwrap().to_str().unwrap().to_owned());
            }
        }
    }
    let mut found = Vec::new();
    walk(&root().join(folder), &mut found);
    found.sort();
    found
}

/// A file's name without its folder.
pub fn name(path: &str) -> &str {
    path.rsplit('/').next().unwrap()
}

/// Why a file gives no draft.
#[derive(Debug)]
pub enum Unread {
    /// It is no JSON at all.
    NoJson,
    /// It is JSON, but not a file of this planner.
    Errors(Vec<FieldError>),
}

/// A file's draft.
pub fn draft(path: &str, schema: &Schema) -> Result<Draft, Unread> {
    let tree = parse(&text_of(path)).ok_or(Unread::NoJson)?;
    from_tree(&tree, schema).map_err(Unread::Errors)
}

/// A shop file, read.
#[track_caller]
pub fn shop_of(path: &str) -> Shop {
    let draft = draft(path, &shop::SCHEMA).unwrap_or_else(|errors| panic!("{path}: {errors:#?}"));
    shop::read(&draft).unwrap_or_else(|errors| panic!("{path}: {errors:#?}"))
}

/// The demo shop, then every shop of the examples.
pub fn shops() -> Vec<Shop> {
    let own = files("examples/shops");
    core::iter::once(shop::demo()).chain(own.iter().map(|path| shop_of(path))).collect()
}

/// The shop that a job is planned in: the first that has the line it names.
#[track_caller]
pub fn shop_for(draft: &Draft) -> Shop {
    let line = draft.get("line");
    let shop = shops().into_iter().find(|shop| line.is_empty() || shop.line(line).is_some());
    shop.unwrap_or_else(|| panic!("no shop has a line called {line}"))
}

/// A draft's job, which must be complete and without fault.
#[track_caller]
pub fn job(draft: &Draft, shop: &Shop) -> Job {
    let reading = job::read(draft, shop);
    let errors = reading.errors(draft);
    assert!(errors.is_empty(), "{errors:#?}");
    reading.job.expect("a draft without fault is a job")
}

/// A job file with the shop that has its line.
#[track_caller]
pub fn planned_file(path: &str) -> (Draft, Job, Shop) {
    let draft = draft(path, &job::SCHEMA).unwrap_or_else(|errors| panic!("{path}: {errors:#?}"));
    let shop = shop_for(&draft);
    let job = job(&draft, &shop);
    (draft, job, shop)
}

/// What a program of Debian's prints. `pkg-scripts/toolchain browsers` brings those that tests use.
#[track_caller]
pub fn ran(program: &str, arguments: &[&str]) -> Vec<u8> {
    let output = Command::new(program).args(arguments).output();
    let output = output.unwrap_or_else(|error| {
        panic!("{program}: {error}; pkg-scripts/toolchain browsers installs it")
    });
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{program} {arguments:?}: {}: {said}", output.status);
    output.stdout
}

/// Fails at the first line in which two values differ when written out.
#[track_caller]
pub fn same<T: core::fmt::Debug + PartialEq>(found: &T, expected: &T, what: &str) {
    if found == expected {
        return;
    }
    let (found, expected) = (format!("{found:#?}"), format!("{expected:#?}"));
    let differs = found.lines().zip(expected.lines()).position(|(one, other)| one != other);
    let at = differs.unwrap_or(0);
    let around = |text: &str| -> String {
        text.lines().skip(at.saturating_sub(4)).take(6).collect::<Vec<_>>().join("\n")
    };
    panic!("{what}: found\n{}\nexpected\n{}", around(&found), around(&expected));
}
