//! Opening the file from disk.

use crate::case::Outcome;
use crate::cases;
use crate::page::Page;
use serde_json::json;

cases! { "opens":
    with_an_answer;
    without_the_notice;
    without_a_request;
}

async fn with_an_answer(page: &Page<'_>) -> Outcome {
    let answer = page.answer().await?;
    assert!(answer.contains(|letter: char| letter.is_ascii_digit()), "no figure: {answer}");
    assert!(page.value("pages").await?.contains("40"), "the example is not in the form");
    Ok(())
}

/// The notice stands in the file, and goes once the planner has started.
async fn without_the_notice(page: &Page<'_>) -> Outcome {
    let file = std::fs::read_to_string(Page::address().trim_start_matches("file://"))?;
    assert!(file.contains("id=\"notice\""), "the file has no notice");
    let hidden = "const notice = document.getElementById('notice'); \
        return !notice || getComputedStyle(notice).display === 'none'";
    assert_eq!(page.script(hidden, vec![]).await?, json!(true), "the notice stands");
    Ok(())
}

async fn without_a_request(page: &Page<'_>) -> Outcome {
    page.type_into("pages", "48 + 4").await?;
    page.settle().await?;
    let asked = "return performance.getEntriesByType('resource').map((entry) => entry.name)";
    assert_eq!(page.script(asked, vec![]).await?, json!([]), "the page asked for something");
    Ok(())
}
