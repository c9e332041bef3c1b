//! The tests' own ears: a case that hears nothing has to be able to hear.

use crate::case::Outcome;
use crate::cases;
use crate::page::Page;
use serde_json::json;

cases! { "harness":
    hears_an_error;
    hears_an_uncaught_exception;
    hears_what_the_policy_refuses;
}

async fn heard(page: &Page<'_>, script: &str, words: &[&str]) -> Outcome {
    page.script(script, vec![]).await?;
    page.settle().await?;
    let lines = page.complaints().await?;
    if lines.iter().any(|line| words.iter().any(|word| line.contains(word))) {
        Ok(())
    } else {
        Err(format!("not heard: {words:?}; only {lines:?}").into())
    }
}

async fn hears_an_error(page: &Page<'_>) -> Outcome {
    heard(page, "console.error('probe of the console')", &["probe of the console"]).await
}

async fn hears_an_uncaught_exception(page: &Page<'_>) -> Outcome {
    // What goes wrong in a script from disk, WebKit hides from the page and Firefox from its
    // scripts: the one says only that something did, the other writes it down.
    let words = ["uncaught", "JavaScript error"];
    heard(page, "setTimeout(() => { throw new Error('probe') })", &words).await
}

async fn hears_what_the_policy_refuses(page: &Page<'_>) -> Outcome {
    heard(page, "document.body.setAttribute('style', 'color: red')", &["style-src"]).await?;
    let color = page.script("return document.body.style.color", vec![]).await?;
    assert_eq!(color, json!(""), "the policy lets an inline style through");
    Ok(())
}
