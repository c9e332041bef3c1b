//! The page in the person's language, and in another.

use super::looks::fits_as;
use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::page::Page;
use serde_json::json;

/// Only its tools can change what a running browser says its languages are.
const TOLD: &[Engine] = &[Engine::Chromium];

cases! { "language":
    follows_the_browser in TOLD;
    german_fits_a_phone in TOLD;
    changed_and_back_loses_nothing;
    kept_for_next_time;
}

const WRITTEN_IN: &str = "return document.documentElement.lang";

/// What the browser says its person reads.
async fn reads(page: &Page<'_>, languages: &str) -> Outcome {
    let agent = page.script("return navigator.userAgent", vec![]).await?;
    let told = json!({ "userAgent": agent, "acceptLanguage": languages });
    page.browser.devtools("Emulation.setUserAgentOverride", told).await.map(drop)
}

async fn follows_the_browser(page: &Page<'_>) -> Outcome {
    reads(page, "de-AT,de,en").await?;
    let seen = async {
        page.reload().await?;
        assert_eq!(page.script(WRITTEN_IN, vec![]).await?, json!("de"));
        let answer = page.answer().await?;
        assert!(answer.contains("Der Rücken wird 2,64"), "no German answer: {answer}");
        page.type_into("paper", "90 g Offset 0,125").await?;
        let echo = page.echo("paper").await?;
        assert!(echo.contains("0,125"), "no comma in the echo: {echo}");
        Ok(())
    };
    let outcome: Outcome = seen.await;
    reads(page, "en-GB,en").await?;
    outcome
}

async fn german_fits_a_phone(page: &Page<'_>) -> Outcome {
    page.choose("language", "de").await?;
    page.settle().await?;
    for width in [390, 320] {
        page.width(width).await?;
        fits_as(page, &format!("german-{width}")).await?;
        page.click("#reading-floor").await?;
        page.settle().await?;
        fits_as(page, &format!("german-floor-{width}")).await?;
    }
    Ok(())
}

async fn changed_and_back_loses_nothing(page: &Page<'_>) -> Outcome {
    page.click("#more-pictures > summary").await?;
    page.type_into("bleed", "0,125").await?;
    page.type_into("phrase", "48 + 4, 148 x 205, tied with ribbon").await?;
    page.settle().await?;
    let before = page.answer().await?;
    let own = "return document.querySelector('[name=language]:checked').value";
    let own = page.script(own, vec![]).await?;
    let own = own.as_str().unwrap_or_default();
    for (language, undo) in [("de", "Rückgängig"), (own, "Undo")] {
        page.choose("language", language).await?;
        page.settle().await?;
        assert_eq!(page.value("bleed").await?, "0,125");
        assert_eq!(page.value("phrase").await?, "48 + 4, 148 x 205, tied with ribbon");
        assert!(page.echo("phrase").await?.contains("tied with ribbon"));
        let open = "return document.getElementById('more-pictures').open";
        assert_eq!(page.script(open, vec![]).await?, json!(true), "{language}: it was closed");
        let focus = "return document.activeElement.value";
        assert_eq!(page.script(focus, vec![]).await?, json!(language), "the focus went astray");
        assert_eq!(page.text("act-undo").await?, undo);
    }
    assert_eq!(page.answer().await?, before);
    page.click("#act-undo").await?;
    assert_eq!(page.value("pages").await?, "40 + 4");
    Ok(())
}

async fn kept_for_next_time(page: &Page<'_>) -> Outcome {
    page.choose("language", "de").await?;
    page.settle().await?;
    page.reload().await?;
    assert_eq!(page.script(WRITTEN_IN, vec![]).await?, json!("de"));
    let asked = "return document.getElementById('restore').textContent";
    assert_eq!(page.script(asked, vec![]).await?, json!(""), "the example is no job to go on with");
    Ok(())
}
