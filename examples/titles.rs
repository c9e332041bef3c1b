//! Plans every row of a list: `cargo run --release --example titles -- LIST.csv [SHOP.json]`.
//!
//! The answer goes to the output as CSV, a row for each row of the list, in order; how many there were
//! and how long it took goes beside it. A row that cannot be read keeps its place and says why.

use quirefit::draft::{FieldError, Tree, from_tree};
use quirefit::shop::{self, Shop};
use quirefit::titles::List;
use quirefit::view::title_rows::{answered, fault};
use quirefit::view::{Numbers, Printer};
use quirefit::words::{EN, EN_GB, Words, say};
use std::io::Write;
use std::path::Path;
use std::process::ExitCode;
use std::time::Instant;

const USAGE: &str = "usage: titles LIST.csv [SHOP.json]";

fn unread(path: &str) -> Vec<FieldError> {
    vec![FieldError::repaired("", path, say("file.not-read"))]
}

fn shop(path: Option<&String>) -> Result<Shop, Vec<FieldError>> {
    let Some(path) = path else { return Ok(shop::demo()) };
    let text = std::fs::read_to_string(Path::new(path)).map_err(|_| unread(path))?;
    let tree: Tree = serde_json::from_str(&text)
        .map_err(|_| vec![FieldError::repaired("", path, say("file.no-json"))])?;
    shop::read(&from_tree(&tree, &shop::SCHEMA)?)
}

fn run(list: &str, shop_path: Option<&String>, printer: &Printer) -> Result<(), Vec<FieldError>> {
    let shop = shop(shop_path)?;
    let bytes = std::fs::read(Path::new(list)).map_err(|_| unread(list))?;
    let began = Instant::now();
    let list = List::read(&bytes)?;
    let (text, tally) = answered(&list, &shop, "mm", printer);
    let took = began.elapsed().as_secs_f64();
    // Whoever reads the output may have had enough of it: no fault of ours.
    let _ = std::io::stdout().write_all(text.as_bytes());
    if !list.ignored().is_empty() {
        eprintln!("not read: {}", list.ignored().join(" · "));
    }
    let a_second = f64::from(tally.rows) / took;
    eprintln!("{} titles, {} cannot be read, {a_second:.0} a second", tally.rows, tally.unread);
    Ok(())
}

fn main() -> ExitCode {
    let words = Words::load(&[EN, EN_GB]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let asked: Vec<String> = std::env::args().skip(1).collect();
    let (Some(list), true) = (asked.first(), asked.len() <= 2) else {
        eprintln!("{USAGE}");
        return ExitCode::FAILURE;
    };
    match run(list, asked.get(1), &printer) {
        Ok(()) => ExitCode::SUCCESS,
        Err(errors) => {
            errors.iter().for_each(|error| eprintln!("{}", fault(error, &printer)));
            ExitCode::FAILURE
        }
    }
}
