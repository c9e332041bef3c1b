//! Nothing that was typed is lost: not with a killed tab, not between two windows, nor where the
//! browser keeps nothing.

use crate::browser::{Browser, scratch};
use crate::case::Outcome;
use crate::cases;
use crate::console;
use crate::engine::{Engine, Scheme};
use crate::page::Page;
use serde_json::{Value, json};
use std::time::Duration;

cases! { "lost":
    a_killed_tab_is_offered_again in &[Engine::Chromium];
    a_key_is_kept_soon_after_its_paint;
    a_page_that_is_left_keeps_the_last_key;
    two_windows_keep_both_jobs;
    full_storage_is_said_and_the_file_still_saved;
    forbidden_storage_is_said_and_the_file_still_saved;
    a_newer_pages_state_is_offered_as_a_file;
    a_file_cut_short_changes_nothing;
}

/// What stands in the browser's keeping.
const KEPT: &str = "return localStorage.getItem('quirefit.job') ?? ''";

async fn kept(page: &Page<'_>) -> Outcome<String> {
    Ok(page.script(KEPT, vec![]).await?.as_str().unwrap_or_default().to_owned())
}

/// The address of another page.
fn elsewhere() -> Outcome<String> {
    let path = scratch().join("elsewhere.html");
    std::fs::write(&path, "<!doctype html><title>Elsewhere</title>")?;
    Ok(format!("file://{}", path.display()))
}

/// The drivers of the other two go with the first tab that dies.
async fn a_killed_tab_is_offered_again(page: &Page<'_>) -> Outcome {
    // A browser of its own, in case this driver does so as well.
    let browser = Browser::start(page.browser.engine, Scheme::Light, "-killed").await?;
    let outcome = killed(&Page::new(&browser)).await;
    browser.stop().await;
    outcome
}

async fn killed(page: &Page<'_>) -> Outcome {
    page.fresh().await?;
    let client = &page.browser.client;
    let there = client.new_window(false).await?.handle;
    page.type_into("pages", "56 + 4").await?;
    page.type_into("copies", "4321").await?;
    page.settle().await?;
    // The tab's process is the one that works while the tab does. No driver likes to see the window
    // die that it stands in; and all files may be opened by one process, so this one opens none yet.
    let spin =
        "setTimeout(() => { const end = Date.now() + 1500; while (Date.now() < end); }, 300)";
    page.script(spin, vec![]).await?;
    client.switch_to_window(there).await?;
    page.browser.driver.kill_the_busiest(Duration::from_millis(1000)).await?;
    page.open(&Page::address()).await?;
    assert_eq!(page.value("pages").await?, "40 + 4", "it asks first");
    page.click("[data-act='restore'][data-value='yes']").await?;
    assert_eq!(page.value("copies").await?, "4321");
    assert_eq!(page.value("pages").await?, "56 + 4");
    Ok(())
}

/// Frames from the key until the browser has it, median of some keys: however long a frame takes.
async fn a_key_is_kept_soon_after_its_paint(page: &Page<'_>) -> Outcome {
    let wait = "const done = arguments[0]; const field = document.querySelector('[name=title]'); \
        const counts = []; let frames = 0; \
        const frame = () => { frames += 1; requestAnimationFrame(frame) }; frame(); \
        const key = () => { \
            if (counts.length === 15) return done(counts.sort((a, b) => a - b)[7]); \
            const text = `Owls ${counts.length}`, began = frames; \
            field.value = text; \
            field.dispatchEvent(new Event('input', { bubbles: true })); \
            const { port1, port2 } = new MessageChannel(); \
            port1.onmessage = () => { \
                if (!(localStorage.getItem('quirefit.job') ?? '').includes(text)) return port2.postMessage(0); \
                counts.push(frames - began); \
                setTimeout(key, 50); \
            }; \
            port2.postMessage(0); \
        }; key();";
    let median = page.script_later(wait, vec![]).await?.as_f64().ok_or("no count")?;
    // One for the answer, one until it is painted, one for what is looked at second.
    assert!(median <= 3.0, "{median} frames");
    Ok(())
}

/// Closing or hiding the page leaves no time for a paint.
async fn a_page_that_is_left_keeps_the_last_key(page: &Page<'_>) -> Outcome {
    let last = "const field = document.querySelector('[name=title]'); field.value = 'Owls at Dusk'; \
        field.dispatchEvent(new Event('input', { bubbles: true })); \
        location.href = arguments[0];";
    page.script(last, vec![json!(elsewhere()?)]).await?;
    page.reload().await?;
    assert!(kept(page).await?.contains("Owls at Dusk"), "{}", kept(page).await?);
    Ok(())
}

async fn two_windows_keep_both_jobs(page: &Page<'_>) -> Outcome {
    let client = &page.browser.client;
    let here = client.window().await?;
    let there = client.new_window(false).await?.handle;
    let outcome = two_windows(page, [&here, &there]).await;
    client.switch_to_window(there).await?;
    client.close_window().await?;
    client.switch_to_window(here).await?;
    outcome
}

async fn two_windows(page: &Page<'_>, windows: [&fantoccini::wd::WindowHandle; 2]) -> Outcome {
    let client = &page.browser.client;
    let jobs = ["4321", "765"];
    client.switch_to_window(windows[1].clone()).await?;
    page.open(&Page::address()).await?;
    for (window, copies) in windows.into_iter().zip(jobs) {
        client.switch_to_window(window.clone()).await?;
        page.type_into("copies", copies).await?;
        page.settle().await?;
    }
    // The one that wrote second has found the other's, and says so.
    page.until("storage", |text| text.contains("second window")).await?;
    client.switch_to_window(windows[0].clone()).await?;
    page.type_into("pages", "60 + 4").await?;
    page.until("storage", |text| text.contains("second window")).await?;
    page.settle().await?;
    let text = kept(page).await?;
    assert!(jobs.iter().all(|job| text.contains(job)), "{text}");
    page.reload().await?;
    for copies in jobs {
        page.click("[data-act='restore'][data-value='yes']").await?;
        assert_eq!(page.value("copies").await?, copies);
    }
    Ok(())
}

/// The page says that nothing is kept, answers, and saves.
async fn works_without_storage(page: &Page<'_>) -> Outcome {
    let before = page.answer().await?;
    page.put("pages", "60 + 4").await?;
    page.until("storage", |text| text.contains("keeps nothing")).await?;
    assert_ne!(page.answer().await?, before);
    page.click("[data-act='save-job']").await?;
    let (_, text) = page.saved("json").await?;
    assert!(text.contains("60 + 4"), "{text}");
    Ok(())
}

async fn full_storage_is_said_and_the_file_still_saved(page: &Page<'_>) -> Outcome {
    let fill = "let text = 'x'.repeat(1 << 20); \
        for (let part = 0; text; part += 1) { \
            try { localStorage.setItem(`fill ${part}`, text) } catch { text = text.slice(text.length / 2 + 1) } \
        } return localStorage.length";
    let parts = page.script(fill, vec![]).await?;
    let outcome = works_without_storage(page).await;
    page.script("localStorage.clear()", vec![]).await?;
    assert!(parts.as_u64() > Some(1), "nothing was filled: {parts}");
    outcome
}

/// A frame that may only run scripts has an origin of its own, for which no browser keeps anything.
async fn forbidden_storage_is_said_and_the_file_still_saved(page: &Page<'_>) -> Outcome {
    let wrapper = scratch().join("shut.html");
    // As large as the window is: WebKit's has lost height by now, and a click beside it goes nowhere.
    let frame = format!(
        "<!doctype html><title>Shut</title>\
         <style>iframe {{ position: fixed; inset: 0; width: 100%; height: 100%; border: 0 }}</style>\
         <iframe title=page sandbox=\"allow-scripts allow-downloads\" src=\"{}\"></iframe>",
        Page::address()
    );
    std::fs::write(&wrapper, frame)?;
    page.open(&format!("file://{}", wrapper.display())).await?;
    page.browser.client.enter_frame(0).await?;
    console::listen(page.browser).await?;
    page.started().await?;
    let asked = "try { localStorage.length; return 'open' } catch (error) { return error.name }";
    assert_eq!(page.script(asked, vec![]).await?, json!("SecurityError"));
    let outcome = works_without_storage(page).await;
    page.browser.client.enter_parent_frame().await?;
    outcome
}

async fn a_newer_pages_state_is_offered_as_a_file(page: &Page<'_>) -> Outcome {
    let newer = json!({ "format": "quirefit-saved", "version": 9, "job": { "novelty": "yes" } });
    let set = "localStorage.setItem('quirefit.job', arguments[0])";
    page.script(set, vec![json!(newer.to_string())]).await?;
    page.reload().await?;
    page.until("file-note", |text| text.contains("newer page")).await?;
    // Typing on loses nothing of it, nor does opening the page once more.
    page.type_into("pages", "60 + 4").await?;
    page.settle().await?;
    page.reload().await?;
    page.click("[data-act='save-kept']").await?;
    let (_, text) = page.saved("json").await?;
    assert_eq!(serde_json::from_str::<Value>(&text)?, newer);
    Ok(())
}

/// As a download that was interrupted leaves it.
async fn a_file_cut_short_changes_nothing(page: &Page<'_>) -> Outcome {
    page.type_into("copies", "4321").await?;
    page.click("[data-act='save-job']").await?;
    let (path, text) = page.saved("json").await?;
    page.type_into("copies", "765").await?;
    let before = page.answer().await?;
    std::fs::write(&path, text.get(..text.len() / 2).ok_or("a job file is ASCII here")?)?;
    page.field("file").await?.send_keys(&path.display().to_string()).await?;
    page.until("file-note", |text| text.contains("this page has saved")).await?;
    assert_eq!(page.value("copies").await?, "765");
    assert_eq!(page.answer().await?, before);
    Ok(())
}
