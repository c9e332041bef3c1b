//! With a client at the table: nothing of the shop's own figures is in the page, on paper or in a file.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::look::{self, A4};
use crate::page::Page;
use quirefit::draft::to_tree;
use quirefit::shop::{SCHEMA, demo, draft_of};
use serde_json::json;
use std::fs;

cases! { "client":
    finds_no_figure_of_the_shop;
    prints_no_figure_of_the_shop in &[Engine::Chromium, Engine::Firefox];
    stays_a_client_after_a_reload;
    is_not_asked_for_the_line_by_an_older_browser;
}

/// Figures of the shop's file that nobody mistakes, and how they are printed.
const PLANTED: [(&str, &str, &str); 6] = [
    ("lines.0.open_width_most", "613.7 mm", "613.7"),
    ("lines.0.knife_most", "8.737 mm", "8.74"),
    ("rate_line_hour", "1234.56", "1,234.56"),
    ("rate_paper_kilo", "7.1357", "7.136"),
    ("rate_carton", "9.8761", "9.876"),
    ("postal_steps.0.price", "6.65", "6.65"),
];

/// The planted figures that stand anywhere in the document, whether shown or not.
async fn found(page: &Page<'_>) -> Outcome<Vec<&'static str>> {
    let html = page.script("return document.getElementById('page').outerHTML", vec![]).await?;
    let html = html.as_str().unwrap_or_default();
    // Words and what is spoken, not the coordinates of drawings.
    Ok(PLANTED.iter().map(|(_, _, print)| *print).filter(|print| told(html, print)).collect())
}

/// Whether a figure stands there as one, not as a part of another.
fn told(html: &str, print: &str) -> bool {
    let part = |c: char| c.is_ascii_digit() || c == '.' || c == ',';
    html.match_indices(print).any(|(at, _)| {
        let before = html.get(..at).and_then(|text| text.chars().next_back());
        let after = html.get(at + print.len()..).and_then(|text| text.chars().next());
        !before.is_some_and(part) && !after.is_some_and(|c| c.is_ascii_digit())
    })
}

/// Opens a shop with planted figures, and every region, as a maker.
async fn planted(page: &Page<'_>) -> Outcome {
    page.choose("units", "mm").await?;
    let mut shop = draft_of(&demo());
    for (path, text, _) in PLANTED {
        shop.set(path, text);
    }
    let path = page.apart("shop.txt")?;
    fs::write(&path, serde_json::to_string(&to_tree(&shop, &SCHEMA))?)?;
    page.field("file").await?.send_keys(&path.display().to_string()).await?;
    page.until("file-note", |text| text.contains("shop is open")).await?;
    page.open_all().await?;
    let seen = found(page).await?;
    assert!(seen.len() >= 5, "a maker finds only {seen:?}");
    Ok(())
}

async fn finds_no_figure_of_the_shop(page: &Page<'_>) -> Outcome {
    planted(page).await?;
    page.click("#reading-client").await?;
    assert_eq!(found(page).await?, [""; 0], "left from the maker's reading");
    for pages in ["152 + 4", "240 + 4"] {
        page.type_into("pages", pages).await?;
        page.settle().await?;
        assert_eq!(found(page).await?, [""; 0], "{pages}");
    }
    let save = page.find("#act-save-shop").await?;
    assert!(!save.is_displayed().await?, "a client is offered the shop's file");
    page.click("#act-save-job").await?;
    let (_, text) = page.saved("json").await?;
    assert!(text.contains("240 + 4"), "{text}");
    for (_, typed, print) in PLANTED {
        assert!(!text.contains(typed) && !text.contains(print), "{text}");
    }
    page.click("#reading-floor").await?;
    page.settle().await?;
    assert!(found(page).await?.len() >= 4, "a maker finds them again");
    Ok(())
}

async fn prints_no_figure_of_the_shop(page: &Page<'_>) -> Outcome {
    planted(page).await?;
    page.click("#reading-client").await?;
    // What is printed is the page as it stands between these two.
    page.script("dispatchEvent(new Event('beforeprint'))", vec![]).await?;
    assert_eq!(found(page).await?, [""; 0]);
    page.script("dispatchEvent(new Event('afterprint'))", vec![]).await?;
    let pdf = look::print(page, "client", A4).await?;
    assert!(pdf.starts_with(b"%PDF-"), "no PDF came");
    assert_eq!(found(page).await?, [""; 0]);
    Ok(())
}

async fn stays_a_client_after_a_reload(page: &Page<'_>) -> Outcome {
    planted(page).await?;
    page.click("#reading-client").await?;
    page.type_into("copies", "777").await?;
    page.settle().await?;
    page.reload().await?;
    page.settle().await?;
    let pressed = "return document.querySelector('#readings [aria-pressed=true]').id";
    assert_eq!(page.script(pressed, vec![]).await?, json!("reading-client"));
    page.click("[data-act='restore'][data-value='yes']").await?;
    page.settle().await?;
    assert_eq!(page.value("copies").await?, "777");
    assert_eq!(found(page).await?, [""; 0]);
    Ok(())
}

/// A browser drops a rule whole when it does not know one of its selectors.
const WITHOUT_HAS: &str = "
    let dropped = 0;
    const drop = (sheet) => [...sheet.cssRules].map((rule, at) => [rule, at]).reverse().forEach(([rule, at]) => {
        if (rule.selectorText?.includes(':has(')) { sheet.deleteRule(at); dropped += 1; }
        else if (rule.cssRules) drop(rule);
    });
    [...document.styleSheets].forEach(drop);
    return dropped;";

/// `:has()` came to browsers at the end of 2023, and the page runs in those of its beginning.
async fn is_not_asked_for_the_line_by_an_older_browser(page: &Page<'_>) -> Outcome {
    let dropped = page.script(WITHOUT_HAS, vec![]).await?;
    assert!(dropped.as_u64() > Some(3), "{dropped} rules dropped");
    let shown = "const asked = [...document.querySelectorAll('[data-for], #field-line')];
        return asked.filter((part) => part.offsetParent).map((part) => part.id);";
    let asked = || page.script(shown, vec![]);
    assert!(asked().await?.to_string().contains("field-line"), "a maker is asked for it");
    page.click("#reading-client").await?;
    assert_eq!(asked().await?, json!(["more-dispatch", "more-identity"]));
    Ok(())
}
