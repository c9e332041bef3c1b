//! Plans a job file: `cargo run --example plan -- examples/jobs/NAME.json [--shop FILE] [--json]
//! [--lang TAG]`.

use quirefit::advise::{Advice, CostSteps, MOST_TRIED};
use quirefit::draft::{Draft, FieldError, Schema, Tree, from_tree};
use quirefit::entry::LengthUnit;
use quirefit::explain::Case;
use quirefit::view::json::{errors_out, plan_out};
use quirefit::view::text::{advice, cost_steps, text};
use quirefit::view::{Numbers, Printer};
use quirefit::words::{Language, built_in, say};
use quirefit::{job, plan, shop};
use std::process::ExitCode;

const USAGE: &str = "usage: plan JOB.json [--shop SHOP.json] [--json] [--lang TAG]";

/// What was asked for on the command line.
struct Asked {
    job: String,
    shop: Option<String>,
    json: bool,
    language: &'static Language,
}

fn asked() -> Option<Asked> {
    let (mut job, mut shop, mut json, mut language) = (None, None, false, Language::first());
    let mut words = std::env::args().skip(1);
    while let Some(word) = words.next() {
        match word.as_str() {
            "--shop" => shop = Some(words.next()?),
            "--json" => json = true,
            "--lang" => language = Language::of(&words.next()?)?,
            _ if job.is_none() && !word.starts_with('-') => job = Some(word),
            _ => return None,
        }
    }
    Some(Asked { job: job?, shop, json, language })
}

fn draft(path: &str, schema: &Schema) -> Result<Draft, Vec<FieldError>> {
    let fault = |key: &str, given: String| {
        let repair = say(format!("{key}.repair"));
        vec![FieldError { path: path.to_owned(), given, wrong: say(key), repair }]
    };
    let text =
        std::fs::read_to_string(path).map_err(|error| fault("file.not-read", error.to_string()))?;
    let tree: Tree =
        serde_json::from_str(&text).map_err(|error| fault("file.no-json", error.to_string()))?;
    from_tree(&tree, schema)
}

fn run(asked: &Asked, printer: &Printer) -> Result<String, Vec<FieldError>> {
    let shop = match &asked.shop {
        Some(path) => shop::read(&draft(path, &shop::SCHEMA)?)?,
        None => shop::demo(),
    };
    let draft = draft(&asked.job, &job::SCHEMA)?;
    let reading = job::read(&draft, &shop);
    let errors = reading.errors(&draft);
    let Some(job) = reading.job.filter(|_| errors.is_empty()) else { return Err(errors) };
    let planned = plan::plan(&job, &shop);
    if asked.json {
        let out = plan_out(&job, &planned, printer);
        return Ok(serde_json::to_string_pretty(&out).unwrap_or_default());
    }
    let mut told = vec![job.identity.title.clone(), text(&job, &shop, &planned, printer)];
    if let Some(steps) = CostSteps::of(&job, &shop, &planned) {
        told.push(format!("\n{}", printer.word("cost.more")));
        told.push(cost_steps(&shop, &planned, &steps, printer));
    }
    let found = Advice::searched(&draft, &job, &shop, &planned, MOST_TRIED);
    let case = Case { advice: Some(&found), ..Case::new(&job, &shop, &planned) };
    told.push(format!("\n{}", advice(&case, printer)));
    Ok(told.join("\n"))
}

fn main() -> ExitCode {
    let Some(asked) = asked() else {
        eprintln!("{USAGE}");
        return ExitCode::FAILURE;
    };
    let words = asked.language.words(&built_in());
    let unit = if asked.language.inches { LengthUnit::Inch } else { LengthUnit::Millimetre };
    let printer = Printer { words: &words, numbers: Numbers { unit, mark: asked.language.mark } };
    match run(&asked, &printer) {
        Ok(told) => {
            println!("{told}");
            ExitCode::SUCCESS
        }
        Err(errors) => {
            for error in errors_out(&errors, &printer) {
                eprintln!("{}: \"{}\": {} {}", error.path, error.given, error.wrong, error.repair);
            }
            ExitCode::FAILURE
        }
    }
}
