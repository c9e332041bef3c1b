//! The design's own file in the page: read beside it, compared, laid anew; whatever breaks its reader takes
//! nothing else with it.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::look;
use crate::made::{Made, whole, written};
use crate::page::Page;
use serde_json::json;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

cases! { "design":
    a_design_is_compared_and_laid in &[Engine::Chromium, Engine::Firefox];
    a_locked_design_asks_for_its_password;
    a_broken_reader_takes_nothing_with_it;
    without_a_helper_the_page_reads_it;
    a_closed_file_leaves_nothing_behind;
    a_client_gets_a_proof_alone;
}

fn a5(pages: usize) -> Vec<Made> {
    vec![whole(148.0, 210.0, 3.0); pages]
}

fn file(page: &Page<'_>, name: &str, bytes: &[u8]) -> Outcome<PathBuf> {
    let path = page.apart(name)?;
    fs::write(&path, bytes)?;
    Ok(path)
}

async fn bring(page: &Page<'_>, path: &Path) -> Outcome {
    page.field("file").await?.send_keys(&path.display().to_string()).await?;
    Ok(())
}

/// A book of 40 pages and a cover apart, and the file of its inside.
async fn begin(page: &Page<'_>, pages: usize) -> Outcome {
    page.type_into("copies", "500").await?;
    let path = file(page, "inside.pdf", &written(&a5(pages)))?;
    bring(page, &path).await?;
    let known = format!("inside.pdf. {pages} page");
    page.until("design-found", |text| text.contains(&known)).await.map(drop)
}

fn qpdf(arguments: &[&str]) -> Outcome<String> {
    let output = Command::new("qpdf").args(arguments).output()?;
    assert!(output.status.success(), "{arguments:?}: {output:?}");
    Ok(String::from_utf8(output.stdout)?)
}

async fn a_design_is_compared_and_laid(page: &Page<'_>) -> Outcome {
    begin(page, 38).await?;
    let told = page.text("design-found").await?;
    assert!(told.contains("The file has 38 pages for the inside; the book has 40"), "{told}");
    assert!(told.contains("cover apart, and it has not come yet"), "{told}");
    begin(page, 40).await?;
    let cover = file(page, "cover.pdf", &written(&a5(4)))?;
    bring(page, &cover).await?;
    page.until("design-found", |text| text.contains("agree with the book")).await?;
    look::accessible(page).await?;
    look::screenshot(page, "design").await?;
    for (act, pages) in [("pairs", "22"), ("proof", "44")] {
        page.click(&format!("#act-design-{act}")).await?;
        let (path, bytes) = page.saved_bytes("pdf").await?;
        page.until("design-state", |text| text.contains("is written")).await?;
        assert!(path.display().to_string().contains(act), "{}", path.display());
        let path = file(page, "laid.pdf", &bytes)?.display().to_string();
        qpdf(&["--check", &path])?;
        assert_eq!(qpdf(&["--show-npages", &path])?.trim(), pages);
    }
    page.click("#act-design-adopt").await?;
    page.settle().await?;
    assert_eq!(page.value("pages").await?, "40 + 4");
    assert_eq!(page.value("size").await?, "148 x 210 mm");
    Ok(())
}

async fn a_locked_design_asks_for_its_password(page: &Page<'_>) -> Outcome {
    let open = file(page, "open.pdf", &written(&a5(8)))?.display().to_string();
    let locked = file(page, "locked.pdf", b"")?;
    qpdf(&["--encrypt", "sesame", "owner", "256", "--", &open, &locked.display().to_string()])?;
    bring(page, &locked).await?;
    page.until("design-state", |text| text.contains("locked with a password")).await?;
    for (word, told) in [("wrong", "does not open"), ("sesame", "")] {
        page.type_into("design-password", word).await?;
        page.click("#act-design-unlock").await?;
        page.until("design-state", |text| {
            if told.is_empty() { text.is_empty() } else { text.contains(told) }
        })
        .await?;
    }
    let found = page.text("design-found").await?;
    assert!(found.contains("8 pages") && found.contains("encrypted"), "{found}");
    Ok(())
}

async fn a_broken_reader_takes_nothing_with_it(page: &Page<'_>) -> Outcome {
    let broken = "window.Whole = Worker; window.Worker = function () { \
        const text = new Blob(['throw new Error(\"broken on purpose\")']); \
        return new Whole(URL.createObjectURL(text)); };";
    page.script(broken, vec![]).await?;
    page.type_into("copies", "4321").await?;
    let path = file(page, "inside.pdf", &written(&a5(40)))?;
    bring(page, &path).await?;
    page.until("design-state", |text| text.contains("broke its reader")).await?;
    assert_eq!(page.value("copies").await?, "4321");
    let before = page.answer().await?;
    page.type_into("pages", "60 + 4").await?;
    page.until("answer", |text| text != before).await?;
    page.script("window.Worker = Whole;", vec![]).await?;
    bring(page, &path).await?;
    page.until("design-found", |text| text.contains("40 pages")).await?;
    // What the worker says as it breaks is meant to be there.
    page.complaints().await.map(drop)
}

async fn without_a_helper_the_page_reads_it(page: &Page<'_>) -> Outcome {
    page.script("window.Worker = function () { throw new Error('none here'); }", vec![]).await?;
    begin(page, 40).await?;
    page.click("#act-design-close").await?;
    page.settle().await?;
    assert_eq!(page.text("design-found").await?, "");
    Ok(())
}

async fn a_closed_file_leaves_nothing_behind(page: &Page<'_>) -> Outcome {
    let counted = "window.ended = 0; const end = Worker.prototype.terminate; \
        Worker.prototype.terminate = function () { window.ended += 1; return end.call(this); };";
    page.script(counted, vec![]).await?;
    begin(page, 40).await?;
    assert_eq!(page.script("return window.ended", vec![]).await?, json!(0));
    page.click("#act-design-close").await?;
    page.settle().await?;
    assert_eq!(page.script("return window.ended", vec![]).await?, json!(1));
    assert_eq!(page.text("design-found").await?, "");
    // And it can be opened once more.
    begin(page, 40).await
}

async fn a_client_gets_a_proof_alone(page: &Page<'_>) -> Outcome {
    page.click("#reading-client").await?;
    page.settle().await?;
    begin(page, 40).await?;
    let there =
        "return ['pairs', 'proof'].map((act) => !!document.getElementById(`act-design-${act}`))";
    assert_eq!(page.script(there, vec![]).await?, json!([false, true]));
    Ok(())
}
