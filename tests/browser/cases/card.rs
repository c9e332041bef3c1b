//! The job card on paper: one sheet, whatever the job; its bar as long as it says.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::look::{self, A4, LETTER};
use crate::page::Page;
use serde_json::json;
use std::fs;
use std::path::Path;
use std::process::Command;

/// WebKit's driver has no command for printing.
pub const PRINTERS: &[Engine] = &[Engine::Chromium, Engine::Firefox];

cases! { "card":
    is_one_sheet_whatever_the_job in PRINTERS;
    keeps_its_bar_of_50_mm in PRINTERS;
    ticks_outlive_a_key_and_a_reload;
}

/// Has the card put together as for printing, without the window that a browser would open.
async fn put_together(page: &Page<'_>) -> Outcome {
    page.script("window.print = () => {}", vec![]).await?;
    page.click("#act-print-card").await?;
    page.settle().await?;
    let when = "return document.querySelector('#job-card time').textContent";
    let when = page.script(when, vec![]).await?;
    assert!(when.as_str().is_some_and(|text| text.contains("20")), "the card says no date: {when}");
    Ok(())
}

/// Prints the card; gives the PDF's path.
async fn printed(page: &Page<'_>, name: &str, sheet: (f64, f64)) -> Outcome<std::path::PathBuf> {
    put_together(page).await?;
    let pdf = look::print(page, name, sheet).await?;
    let path = page.apart(format!("{name}.pdf"))?;
    fs::write(&path, pdf)?;
    page.script("dispatchEvent(new Event('afterprint'))", vec![]).await?;
    let left = page.script("return document.getElementById('job-card').innerHTML", vec![]).await?;
    assert_eq!(left, json!(""), "the card stays on the page after it has been printed");
    Ok(path)
}

async fn is_one_sheet_whatever_the_job(page: &Page<'_>) -> Outcome {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/jobs");
    for language in ["en-GB", "de"] {
        page.choose("language", language).await?;
        for job in ["moth-album.json", "island-atlas.json", "dummy-measured.json"] {
            page.field("file").await?.send_keys(&folder.join(job).display().to_string()).await?;
            page.settle().await?;
            for (name, sheet) in [("card-a4", A4), ("card-letter", LETTER)] {
                let path = printed(page, name, sheet).await?;
                assert_eq!(look::pages(&path)?, 1, "{language}, {job}, {name}");
            }
        }
    }
    Ok(())
}

/// Dots to the inch of the picture that is measured.
const DPI: f64 = 300.0;

/// The longest run of dark dots in a row of a picture as `pdftoppm -gray` writes it.
fn longest_row(picture: &[u8]) -> Outcome<usize> {
    let mut words = Vec::new();
    let mut at = 0;
    while words.len() < 4 {
        let rest = picture.get(at..).ok_or("a picture cut off")?;
        let end = rest.iter().position(u8::is_ascii_whitespace).ok_or("no picture")?;
        words.push(String::from_utf8_lossy(&rest[..end]).into_owned());
        at += end + 1;
    }
    let width: usize = words[1].parse()?;
    let rows = picture[at..].chunks_exact(width);
    let longest = |row: &[u8]| row.split(|dot| *dot > 128).map(<[u8]>::len).max().unwrap_or(0);
    // Whatever runs across the whole sheet is a rule between parts.
    Ok(rows.map(longest).filter(|run| *run < width / 3).max().unwrap_or(0))
}

async fn keeps_its_bar_of_50_mm(page: &Page<'_>) -> Outcome {
    for (name, sheet) in [("bar-a4", A4), ("bar-letter", LETTER)] {
        let path = printed(page, name, sheet).await?;
        let (low, high) = (sheet.1 * 0.6, sheet.1 * 0.4);
        let dots = |mm: f64| (mm / 25.4 * DPI).round().to_string();
        // The foot of the sheet; its right half holds no line, the left the bar alone.
        let picture = Command::new("pdftoppm")
            .args(["-gray", "-r", &DPI.to_string(), "-x", "0", "-y", &dots(low)])
            .args(["-W", &dots(sheet.0), "-H", &dots(high)])
            .arg(&path)
            .output()?;
        let found = longest_row(&picture.stdout)? as f64 / DPI * 25.4;
        // The bar's own ends are a quarter of a millimetre thick.
        assert!((found - 50.0).abs() < 0.4, "{name}: the bar is {found} mm long");
    }
    Ok(())
}

async fn ticks_outlive_a_key_and_a_reload(page: &Page<'_>) -> Outcome {
    page.click("#reading-floor").await?;
    page.settle().await?;
    let boxes = "return [...document.querySelectorAll('.set-up input')].filter((box) => box.checked).map((box) => box.id)";
    page.click("#tick-set-1").await?;
    page.click("#tick-set-2").await?;
    page.settle().await?;
    let both = json!(["tick-set-1", "tick-set-2"]);
    assert_eq!(page.script(boxes, vec![]).await?, both);
    page.type_into("copies", "1300").await?;
    page.settle().await?;
    assert_eq!(page.script(boxes, vec![]).await?, both, "copies change neither line");
    page.reload().await?;
    page.click("#restore-yes").await?;
    page.settle().await?;
    assert_eq!(page.script(boxes, vec![]).await?, both, "after a reload");
    page.type_into("pages", "44 + 4").await?;
    page.settle().await?;
    assert_eq!(
        page.script(boxes, vec![]).await?,
        json!(["tick-set-2"]),
        "another number of sheets"
    );
    Ok(())
}
