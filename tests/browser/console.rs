//! What a browser complains about: errors, and what the page's policy refused.
//!
//! Ears are put into the page as soon as it has opened. What was said before that, Chromium's
//! driver hands over and Firefox writes into its driver's log. WebKit tells nobody; there a start
//! that went wrong shows in the notice that stays.

use crate::browser::Browser;
use crate::case::Outcome;
use crate::engine::Engine;
use serde_json::{Value, json};

const EARS: &str = "
    if (window.heard) return;
    const heard = window.heard = [];
    addEventListener('error', (event) => heard.push(`uncaught: ${event.message}`));
    addEventListener('unhandledrejection', (event) => heard.push(`unhandled: ${event.reason}`));
    document.addEventListener('securitypolicyviolation',
        (event) => heard.push(`refused: ${event.effectiveDirective} ${event.blockedURI}`));
    const say = console.error;
    console.error = (...words) => { heard.push(`error: ${words.join(' ')}`); say(...words); };
";

/// Puts ears into the page.
pub async fn listen(browser: &Browser) -> Outcome {
    browser.client.execute(EARS, vec![]).await?;
    Ok(())
}

/// All complaints since this was last asked; `from` is where the driver's log was read to then.
pub async fn complaints(browser: &Browser, from: usize) -> Outcome<Vec<String>> {
    let heard = browser.client.execute("return (window.heard || []).splice(0)", vec![]).await?;
    let mut lines: Vec<String> =
        heard.as_array().into_iter().flatten().map(Value::to_string).collect();
    match browser.engine {
        Engine::Chromium => {
            let entries = browser.extra("se/log", json!({ "type": "browser" })).await?;
            let entries = entries.as_array().ok_or("the log is a list")?;
            lines.extend(entries.iter().map(|entry| format!("console: {}", entry["message"])));
        }
        Engine::Firefox => {
            // Its own parts complain as well; they have no file: address.
            let said = browser.driver.said(from)?;
            let ours = said.lines().filter(|line| line.contains("JavaScript error: file:"));
            lines.extend(ours.map(str::to_owned));
        }
        Engine::WebKit => {}
    }
    Ok(lines)
}
