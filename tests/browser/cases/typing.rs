//! Typing, and what the page makes of it.

use crate::case::Outcome;
use crate::cases;
use crate::page::Page;
use serde_json::json;

cases! { "typing":
    answer_follows;
    focus_stays;
    job_is_kept;
}

async fn answer_follows(page: &Page<'_>) -> Outcome {
    let before = page.answer().await?;
    page.type_into("pages", "80 + 4").await?;
    let after = page.answer().await?;
    assert_ne!(before, after, "twice the pages, the same answer");
    assert!(!page.echo("pages").await?.is_empty(), "no echo of what was understood");
    Ok(())
}

async fn focus_stays(page: &Page<'_>) -> Outcome {
    page.type_into("pages", "4").await?;
    page.type_on("pages", "8 + 4").await?;
    let focus = "return [document.activeElement.name, document.activeElement.selectionStart]";
    assert_eq!(page.script(focus, vec![]).await?, json!(["pages", 6]));
    assert_eq!(page.value("pages").await?, "48 + 4");
    Ok(())
}

async fn job_is_kept(page: &Page<'_>) -> Outcome {
    page.type_into("copies", "777").await?;
    page.settle().await?;
    let kept = page.script("return localStorage.getItem('quirefit.job')", vec![]).await?;
    assert!(kept.as_str().is_some_and(|text| text.contains("777")), "not kept: {kept}");
    page.reload().await?;
    page.click("[data-act='restore'][data-value='yes']").await?;
    assert_eq!(page.value("copies").await?, "777");
    Ok(())
}
