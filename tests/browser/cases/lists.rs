//! A list of titles on the page: planned beside it, stopped, sorted, saved, while the page stays free.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::look;
use crate::page::Page;
use serde_json::json;
use std::fmt::Write;
use std::fs;
use std::time::Duration;

cases! { "lists":
    a_list_is_answered_row_by_row;
    the_page_is_free_while_a_long_list_is_planned;
    stopped_it_shows_what_there_is;
    without_a_helper_the_page_plans_it;
    a_client_is_not_shown_it;
    a_phone_keeps_the_titles_in_sight in Engine::TYPE_ON_A_PHONE;
}

/// A list of so many rows; every tenth cannot be read.
fn list(rows: usize) -> String {
    let mut text = "title,pages,size,paper,cover,copies\n".to_owned();
    for row in 0..rows {
        let pages = if row % 10 == 9 { "many".to_owned() } else { (16 + row % 20 * 4).to_string() };
        let _ = writeln!(
            text,
            "Title {row},{pages},A5,115 gsm silk,250 gsm silk cover,{}",
            500 + row % 7
        );
    }
    text
}

/// Waits until a script's answer is as wanted: what stands on the page is replaced meanwhile.
async fn until(page: &Page<'_>, script: &str, so: impl Fn(&serde_json::Value) -> bool) -> Outcome {
    let mut found = json!(null);
    for _ in 0..600 {
        found = page.script(script, vec![]).await?;
        if so(&found) {
            return Ok(());
        }
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    Err(format!("waited in vain: {script}: {found}").into())
}

async fn open(page: &Page<'_>, rows: usize) -> Outcome {
    let path = page.apart(format!("list-{rows}.csv"))?;
    fs::write(&path, list(rows))?;
    page.field("file").await?.send_keys(&path.display().to_string()).await?;
    Ok(())
}

/// The list is being worked at.
async fn begun(page: &Page<'_>) -> Outcome {
    let script = "return !!document.querySelector('#act-list-stop, #act-list-save')";
    until(page, script, |found| *found == json!(true)).await
}

async fn done(page: &Page<'_>) -> Outcome {
    let script = "return !!document.getElementById('act-list-save')";
    until(page, script, |found| *found == json!(true)).await?;
    page.settle().await
}

/// How many rows of the table are shown.
const COUNT: &str = "return document.querySelectorAll('.titles tbody tr').length";

async fn rows(page: &Page<'_>) -> Outcome<Vec<String>> {
    let script =
        "return [...document.querySelectorAll('.titles tbody tr')].map((row) => row.textContent)";
    Ok(serde_json::from_value(page.script(script, vec![]).await?)?)
}

async fn a_list_is_answered_row_by_row(page: &Page<'_>) -> Outcome {
    open(page, 130).await?;
    done(page).await?;
    let told = page.text("titles-told").await?;
    assert!(
        told.contains("130 titles planned.") && told.contains("13 rows cannot be read"),
        "{told}"
    );
    let part = "return document.getElementById('titles-table').textContent";
    let shows = |part: &'static str| {
        move |text: &serde_json::Value| text.as_str().is_some_and(|text| text.contains(part))
    };
    // The table of the first hundred is replaced by that of all.
    until(page, part, shows("1 to 100 of 130")).await?;
    until(page, COUNT, |count| *count == json!(100)).await?;
    let first = rows(page).await?;
    assert!(first[9].contains("Title 9") && first[9].contains("“many”"), "{}", first[9]);
    page.click("#list-on").await?;
    until(page, part, shows("101 to 130 of 130")).await?;
    until(page, COUNT, |count| *count == json!(30)).await?;
    // Thickest last, thickest first.
    page.click("#list-sort-4").await?;
    until(page, part, shows("1 to 100 of 130")).await?;
    page.click("#list-sort-4").await?;
    let turned = "return document.querySelector('.titles [aria-sort]')?.ariaSort ?? ''";
    until(page, turned, |found| *found == json!("descending")).await?;
    // 92 pages are the most: rows 19, 39, … cannot be read, so 88 it is.
    assert!(rows(page).await?[0].contains("Title 18"), "{:?}", rows(page).await?.first());
    look::accessible(page).await?;
    look::screenshot(page, "list").await?;
    page.click("#list-take-18").await?;
    page.settle().await?;
    assert_eq!(page.value("pages").await?, "88");
    page.click("#act-undo").await?;
    page.settle().await?;
    assert_eq!(page.value("pages").await?, "40 + 4");
    Ok(())
}

async fn the_page_is_free_while_a_long_list_is_planned(page: &Page<'_>) -> Outcome {
    open(page, 60_000).await?;
    begun(page).await?;
    page.type_into("copies", "4321").await?;
    page.until("summary-run", |text| !text.is_empty()).await?;
    let running = page.script("return !!document.getElementById('act-list-stop')", vec![]).await?;
    assert_eq!(
        running,
        json!(true),
        "the list was done before a field was typed in: too short a test"
    );
    assert_eq!(page.value("copies").await?, "4321");
    done(page).await?;
    assert!(
        page.text("titles-told").await?.contains("60,000 titles"),
        "{}",
        page.text("titles-told").await?
    );
    Ok(())
}

async fn stopped_it_shows_what_there_is(page: &Page<'_>) -> Outcome {
    open(page, 100_000).await?;
    begun(page).await?;
    page.click("#act-list-stop").await?;
    done(page).await?;
    // What was planned before it heard of it comes after.
    until(page, COUNT, |count| *count == json!(100)).await?;
    let told = page.text("titles-told").await?;
    assert!(told.contains("Stopped before the end."), "{told}");
    assert!(!told.contains("100,000"), "{told}");
    // It stays stopped, and another list begins anew.
    tokio::time::sleep(Duration::from_millis(500)).await;
    assert_eq!(page.text("titles-told").await?, told);
    open(page, 30).await?;
    let told = "return document.getElementById('titles-told')?.textContent ?? ''";
    until(page, told, |text| {
        text.as_str().is_some_and(|text| text.starts_with("30 titles planned."))
    })
    .await
}

async fn without_a_helper_the_page_plans_it(page: &Page<'_>) -> Outcome {
    page.script("window.Worker = function () { throw new Error('none here'); }", vec![]).await?;
    open(page, 3000).await?;
    done(page).await?;
    assert!(page.text("titles-told").await?.contains("3,000 titles planned."));
    until(page, COUNT, |count| *count == json!(100)).await?;
    Ok(())
}

async fn a_client_is_not_shown_it(page: &Page<'_>) -> Outcome {
    open(page, 30).await?;
    done(page).await?;
    page.click("#reading-client").await?;
    page.settle().await?;
    assert_eq!(rows(page).await?, [""; 0]);
    let section = page.find("#region-titles").await?;
    assert!(!section.is_displayed().await?, "a client is offered lists");
    Ok(())
}

/// Answers and their reasons are seen as they come; the columns that follow are scrolled to beside the titles.
async fn a_phone_keeps_the_titles_in_sight(page: &Page<'_>) -> Outcome {
    page.width(390).await?;
    open(page, 30).await?;
    done(page).await?;
    let seen = "const row = document.querySelectorAll('.titles tbody tr')[9]; \
        return [...row.children].map((cell) => cell.getBoundingClientRect()) \
            .map(({ left, right }) => left >= 0 && right <= innerWidth)";
    let first = page.script(seen, vec![]).await?;
    assert_eq!(first.as_array().map(|cells| cells[..3].to_vec()), Some(vec![json!(true); 3]));
    page.script("document.getElementById('titles-scroll').scrollLeft = 300", vec![]).await?;
    let scrolled = page.script(seen, vec![]).await?;
    assert_eq!([&scrolled[0], &scrolled[1], &scrolled[4]], [false, true, true], "{scrolled}");
    Ok(())
}
