//! What would make a book fit: found beside the page, taken with one tap.

use crate::browser::scratch;
use crate::case::Outcome;
use crate::cases;
use crate::page::Page;
use serde_json::json;
use std::fs;

cases! { "advice":
    one_tap_makes_it_fit_and_one_beside_it_takes_it_back;
    a_helper_searches_beside_the_page;
    without_a_helper_the_page_searches;
}

/// Far too thick for every line of the demo shop.
const THICK: &str = "600 + 4";

/// Waits until something is there, for some seconds.
const UNTIL: &str = "const [css, done] = arguments, end = Date.now() + 5000; \
    const look = () => document.querySelector(css) ? done(true) \
      : Date.now() > end ? done(false) : setTimeout(look, 20); look();";

async fn there(page: &Page<'_>, css: &str) -> Outcome {
    let found = page.script_later(UNTIL, vec![json!(css)]).await?;
    if found == json!(true) { Ok(()) } else { Err(format!("there is no {css}").into()) }
}

/// Types a page count of a book that does not fit and waits until ways out are offered.
async fn offered(page: &Page<'_>, pages: &str) -> Outcome {
    page.type_into("pages", pages).await?;
    page.settle().await?;
    there(page, "#body-fixes:not([aria-busy]) #fix-0").await?;
    assert!(page.answer().await?.contains("No."));
    Ok(())
}

async fn one_tap_makes_it_fit_and_one_beside_it_takes_it_back(page: &Page<'_>) -> Outcome {
    offered(page, THICK).await?;
    page.click("#fix-0").await?;
    page.until("answer", |text| text.contains("Yes.")).await?;
    page.click("#take-back").await?;
    page.until("answer", |text| text.contains("No.")).await?;
    assert_eq!(page.value("pages").await?, THICK);
    Ok(())
}

async fn a_helper_searches_beside_the_page(page: &Page<'_>) -> Outcome {
    there(page, "[data-helper=ready]").await?;
    offered(page, THICK).await?;
    // Typed on at once, the region follows the last key.
    page.type_on("pages", " ").await?;
    offered(page, "500 + 4").await?;
    page.click("#fix-0").await?;
    page.until("answer", |text| text.contains("Yes.")).await.map(drop)
}

async fn without_a_helper_the_page_searches(page: &Page<'_>) -> Outcome {
    let built = fs::read_to_string(Page::address().trim_start_matches("file://"))?;
    let shut = built.replacen("worker-src blob:", "worker-src 'none'", 1);
    assert_ne!(built, shut, "the policy has changed");
    let path = scratch().join("no-worker.html");
    fs::write(&path, shut)?;
    page.open(&format!("file://{}", path.display())).await?;
    offered(page, THICK).await?;
    there(page, "[data-helper=none]").await?;
    page.click("#fix-0").await?;
    page.until("answer", |text| text.contains("Yes.")).await?;
    // The policy's refusal is told in the console, as it should be.
    page.complaints().await.map(drop)
}
