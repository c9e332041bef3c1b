//! The largest job that may be typed: planned, shown whole, and within the memory set for it.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::largest::largest;
use crate::page::Page;
use serde_json::json;

cases! { "bounds":
    the_largest_job_stays_within_64_megabytes in &[Engine::Chromium];
}

/// Lays hold of the module's memory when it starts; it never shrinks.
const WATCH: &str = "const { Instance } = WebAssembly; \
    WebAssembly.Instance = function (...parts) { \
        const made = new Instance(...parts); window.memory = made.exports.memory; return made }";

async fn the_largest_job_stays_within_64_megabytes(page: &Page<'_>) -> Outcome {
    let watch = json!({ "source": WATCH });
    let added = page.browser.devtools("Page.addScriptToEvaluateOnNewDocument", watch).await?;
    page.reload().await?;
    let outcome = largest_job(page).await;
    page.browser.devtools("Page.removeScriptToEvaluateOnNewDocument", added).await?;
    outcome
}

async fn largest_job(page: &Page<'_>) -> Outcome {
    let bytes = "return window.memory.buffer.byteLength";
    let before = page.script(bytes, vec![]).await?.as_f64().ok_or("no memory")?;
    let path = page.apart("largest.json")?;
    std::fs::write(&path, largest())?;
    page.field("file").await?.send_keys(&path.display().to_string()).await?;
    page.until("file-note", |text| !text.is_empty()).await?;
    assert_eq!(page.value("copies").await?, "5,000,000", "it is not opened");
    assert!(page.answer().await?.contains("mm"), "it is not planned");
    let began = std::time::Instant::now();
    page.open_all().await?;
    let took = began.elapsed().as_secs_f64();
    page.script("document.querySelector('[data-act=version-keep]').click()", vec![]).await?;
    page.read_by_all().await?;
    page.script("dispatchEvent(new Event('beforeprint'))", vec![]).await?;
    page.settle().await?;
    let used = page.script(bytes, vec![]).await?.as_f64().ok_or("no memory")?;
    const MEGABYTE: f64 = 1_048_576.0;
    println!(
        "    memory: {:.1} MB at the start, {:.1} MB with the largest job; all opened in {took:.1} s",
        before / MEGABYTE,
        used / MEGABYTE
    );
    assert!(used <= 64.0 * MEGABYTE, "{used} bytes");
    Ok(())
}
