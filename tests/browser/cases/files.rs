//! Files out of the page, and into it again.

use crate::case::Outcome;
use crate::cases;
use crate::page::Page;
use std::time::Duration;

cases! { "files":
    saved_job_opens_again;
    foreign_file_is_refused_with_words;
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
    let path = page.browser.home.join("foreign.txt");
    std::fs::write(&path, "not a job at all")?;
    page.field("file").await?.send_keys(&path.display().to_string()).await?;
    page.until("file-note", |text| !text.is_empty()).await?;
    assert_eq!(page.answer().await?, before, "a foreign file changed the answer");
    Ok(())
}
