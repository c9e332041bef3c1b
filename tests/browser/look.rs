//! Looking at the page: pictures, printed sheets, and an audit of its accessibility.

use crate::case::Outcome;
use crate::page::Page;
use fantoccini::wd::{PrintConfigurationBuilder, PrintSize};
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Sheets to print on, in millimetres.
pub const A4: (f64, f64) = (210.0, 297.0);
pub const LETTER: (f64, f64) = (215.9, 279.4);

/// Keeps a picture of the window as `target/screenshots/ENGINE-NAME.png`, for people to look at.
pub async fn screenshot(page: &Page<'_>, name: &str) -> Outcome<PathBuf> {
    keep(page, name, "png", &page.browser.client.screenshot().await?)
}

/// Prints the page and gives the PDF's bytes; kept beside the pictures.
pub async fn print(page: &Page<'_>, name: &str, sheet: (f64, f64)) -> Outcome<Vec<u8>> {
    let size = PrintSize { width: sheet.0 / 10.0, height: sheet.1 / 10.0 };
    let asked = PrintConfigurationBuilder::default().size(size).build();
    let asked = asked.map_err(|error| error.to_string())?;
    let pdf = page.browser.client.print(asked).await?;
    keep(page, name, "pdf", &pdf)?;
    Ok(pdf)
}

/// Pages of a PDF, by a general tool.
pub fn pages(path: &Path) -> Outcome<u32> {
    let told = Command::new("pdfinfo").arg(path).output()?;
    let told = String::from_utf8_lossy(&told.stdout).into_owned();
    let line = told.lines().find_map(|line| line.strip_prefix("Pages:"));
    Ok(line.ok_or_else(|| format!("no page count: {told}"))?.trim().parse()?)
}

fn keep(page: &Page<'_>, name: &str, end: &str, bytes: &[u8]) -> Outcome<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/screenshots");
    fs::create_dir_all(&folder)?;
    let path = folder.join(format!("{}-{name}.{end}", page.browser.engine.name()));
    fs::write(&path, bytes)?;
    Ok(path)
}

/// Fails with every accessibility fault that axe-core finds, and where.
pub async fn accessible(page: &Page<'_>) -> Outcome {
    let library = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("target/tools/node/node_modules/axe-core/axe.min.js");
    let library = fs::read_to_string(library)?;
    let run = "const done = arguments[0]; axe.run(document, { resultTypes: ['violations'] })\
        .then(({ violations, passes }) => done({ violations, tried: passes.length }))\
        .catch((error) => done({ error: String(error) }));";
    let found = page.script_later(&format!("{library}\n{run}"), vec![]).await?;
    let faults = found["violations"].as_array().ok_or_else(|| format!("no audit: {found}"))?;
    if found["tried"] == json!(0) {
        return Err("the audit tried nothing".into());
    }
    let told: Vec<String> = faults.iter().flat_map(told).collect();
    if told.is_empty() { Ok(()) } else { Err(told.join("\n    ").into()) }
}

fn told(fault: &Value) -> Vec<String> {
    let places = fault["nodes"].as_array().cloned().unwrap_or_default();
    places
        .iter()
        .map(|place| format!("{}: {} {}", fault["id"], place["target"], place["failureSummary"]))
        .collect()
}
