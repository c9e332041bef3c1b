//! Files out of the page, and into it again.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::page::Page;
use serde_json::json;
use std::time::Duration;

cases! { "files":
    saved_job_opens_again;
    foreign_file_is_refused_with_words;
    dropped_and_pasted_it_opens;
    saved_as_it_was_opened in &[Engine::Chromium, Engine::Firefox];
}

async fn saved_job_opens_again(page: &Page<'_>) -> Outcome {
    page.type_into("copies", "4321").await?;
    page.choose("spine", "square").await?;
    page.click("[data-act='save-job']").await?;
    let (path, text) = page.saved("json").await?;
    assert!(text.contains("4321"), "{text}");
    page.fresh().await?;
    assert_ne!(page.value("copies").await?, "4321");
    page.field("file").await?.send_keys(&path.display().to_string()).await?;
    tokio::time::sleep(Duration::from_millis(200)).await;
    assert_eq!(page.value("copies").await?, "4321");
    Ok(())
}

async fn foreign_file_is_refused_with_words(page: &Page<'_>) -> Outcome {
    let before = page.answer().await?;
    let path = page.apart("foreign.txt")?;
    std::fs::write(&path, "not a job at all")?;
    page.field("file").await?.send_keys(&path.display().to_string()).await?;
    page.until("file-note", |text| !text.is_empty()).await?;
    assert_eq!(page.answer().await?, before, "a foreign file changed the answer");
    Ok(())
}

/// A job file as somebody else might write it: with a mark, tabs, and an order of its own.
const FOREIGN: &str = "\u{feff}{\t\"version\": 1, \"copies\": \"2468\",\r\n \"pages\": \"36\", \"size\": \"A5\",\
    \"paper\": \"90 gsm\", \"format\": \"quirefit-job\" }\n";

/// Hands the page a file as a browser does.
const HAND: &str = "const [kind, text] = arguments; const transfer = new DataTransfer(); \
    transfer.items.add(new File([text], 'job.txt')); \
    const event = new Event(kind, { bubbles: true, cancelable: true }); \
    event[kind === 'paste' ? 'clipboardData' : 'dataTransfer'] = transfer; \
    document.body.dispatchEvent(event); \
    return getComputedStyle(document.getElementById('drop-here')).display !== 'none';";

async fn dropped_and_pasted_it_opens(page: &Page<'_>) -> Outcome {
    for (kind, copies) in [("drop", "2468"), ("paste", "1357")] {
        let text = FOREIGN.replace("2468", copies);
        if kind == "drop" {
            let said = page.script(HAND, vec![json!("dragover"), json!(text)]).await?;
            assert_eq!(said, json!(true), "nothing says that a file may be let go here");
        }
        let said = page.script(HAND, vec![json!(kind), json!(text)]).await?;
        assert_eq!(said, json!(false), "the page still waits for a file");
        page.until("file-note", |text| text.contains("The job is open")).await?;
        assert_eq!(page.value("copies").await?, copies, "{kind}");
    }
    Ok(())
}

/// Not in WebKit, whose small browser hangs at its seventeenth download: the other cases take sixteen.
async fn saved_as_it_was_opened(page: &Page<'_>) -> Outcome {
    let path = page.apart("mine.json")?;
    std::fs::write(&path, FOREIGN)?;
    page.field("file").await?.send_keys(&path.display().to_string()).await?;
    page.until("file-note", |text| text.contains("The job is open")).await?;
    std::fs::remove_file(&path)?;
    page.click("[data-act='save-job']").await?;
    let (_, bytes) = page.saved_bytes("json").await?;
    assert_eq!(bytes, FOREIGN.as_bytes());
    Ok(())
}
