//! The package for other pages: its element says what the planner's own page says.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::page::Page;
use crate::server::{Answer, Server};
use serde_json::{Value, json};
use std::fs;
use std::path::Path;

cases! { "embed":
    an_element_answers_like_the_page in &[Engine::Chromium, Engine::Firefox];
    a_client_is_told_the_book_alone in &[Engine::Chromium, Engine::Firefox];
    the_verdict_is_seen_at_every_width in &[Engine::Chromium, Engine::Firefox];
    an_element_names_what_is_wrong in &[Engine::Chromium, Engine::Firefox];
    a_calculator_stands_in_another_page;
    an_element_without_its_module_says_so in &[Engine::Chromium, Engine::Firefox];
}

/// Fields and texts; each job changes what stands in the form after the one before.
const JOBS: [&[(&str, &str)]; 4] = [
    // What stands in examples/embed.html.
    &[
        ("pages", "40 + 4"),
        ("size", "A5"),
        ("paper", "Pond Silk 130"),
        ("cover", "Pond Silk Cover 250"),
        ("copies", "1,200"),
        ("spine", "square"),
        ("line", "Middle line, three knives"),
    ],
    &[("spine", "round"), ("paper", "150 silk 0.125 mm")],
    &[("pages", "96 + 4")],
    &[("pages", "148"), ("cover", ""), ("size", "A4")],
];

/// What a page must allow, as the package's own README says; the example's script stands in the page.
const POLICY: &str = "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; \
    script-src 'self' 'wasm-unsafe-eval' 'unsafe-inline'; connect-src 'self'; img-src data:; worker-src blob:\"><title>";

/// The folder of the project, as any server for files gives it, under the strictest policy.
fn find(path: &str) -> Answer {
    let known = path.starts_with("examples/") || path.starts_with("dist/pkg/");
    let kind = match path.rsplit('.').next() {
        Some("html") => "text/html",
        Some("js") => "text/javascript",
        Some("wasm") => "application/wasm",
        _ => return None,
    };
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(path);
    let mut bytes = known.then(|| fs::read(file).ok()).flatten()?;
    if kind == "text/html" {
        bytes = String::from_utf8(bytes).ok()?.replace("<title>", POLICY).into_bytes();
    }
    Some((kind, bytes))
}

/// The paragraphs of the answer in `root`, white space counted once.
fn said(root: &str) -> String {
    format!(
        "return ['.verdict', '.figures', '.aside'].map((name) => {root}.querySelector(`#answer ${{name}}`) \
            ?.textContent.replace(/\\s+/g, ' ').trim())"
    )
}

/// Gives the element other texts and waits for its next event: its name and what it carries, as JSON.
const GIVE: &str = "const [language, fields, done] = arguments; \
    const element = document.querySelector('quire-fit'); \
    const hear = ({ type, detail }) => done(JSON.stringify([type, detail])); \
    for (const kind of ['plan', 'faults']) element.addEventListener(kind, hear, { once: true }); \
    document.documentElement.lang = language; \
    for (const [name, text] of fields) { \
        if (text) element.setAttribute(name, text); else element.removeAttribute(name); \
    } \
    element.shop = null;";

async fn give(page: &Page<'_>, language: &Value, fields: &[(&str, &str)]) -> Outcome<Value> {
    let told = page.script_later(GIVE, vec![language.clone(), json!(fields)]).await?;
    Ok(serde_json::from_str(told.as_str().ok_or("the event is a text")?)?)
}

async fn an_element_answers_like_the_page(page: &Page<'_>) -> Outcome {
    let mut own = Vec::new();
    for language in ["en-GB", "de"] {
        page.choose("language", language).await?;
        for fields in JOBS {
            for (name, text) in fields {
                match *name {
                    "line" | "spine" => page.choose(name, text).await?,
                    _ => page.put(name, text).await?,
                }
            }
            page.settle().await?;
            own.push((json!(language), fields, page.script(&said("document"), vec![]).await?));
        }
    }
    let server = Server::start().await?;
    let visit = async {
        page.visit(&format!("{}examples/embed.html", server.address)).await?;
        // The page shows the plan of its own accord.
        page.until("plan", |text| text.contains("\"spine_mm\"")).await?;
        let mut verdicts = Vec::new();
        for (language, fields, own) in &own {
            let told = give(page, language, fields).await?;
            assert_eq!(told[0], "plan", "{told}");
            let shown = said("document.querySelector('quire-fit').shadowRoot");
            let shown = page.script(&shown, vec![]).await?;
            assert_eq!(&shown, own, "{fields:?}");
            assert!(shown[0].is_string() && shown[1].is_string() && shown[2].is_string());
            verdicts.push(told[1]["verdict"].to_string());
        }
        verdicts.sort();
        verdicts.dedup();
        assert!(verdicts.len() > 1, "every job had the same answer: {verdicts:?}");
        Ok(())
    };
    server.during(find, visit).await
}

async fn a_client_is_told_the_book_alone(page: &Page<'_>) -> Outcome {
    let server = Server::start().await?;
    let visit = async {
        page.visit(&format!("{}examples/embed.html", server.address)).await?;
        page.until("plan", |text| text.contains("\"limits\"")).await?;
        let told = give(page, &json!("en-GB"), &[("reading", "client")]).await?;
        assert!(told[1]["spine_mm"].is_object() && told[1]["limits"].is_null(), "{told}");
        assert!(told[1]["cost"].is_null() && told[1]["findings"].is_null(), "{told}");
        Ok(())
    };
    server.during(find, visit).await
}

/// The word and its shape, as they lie on the page.
const SEEN: &str = "const { shadowRoot } = document.querySelector('quire-fit'); \
    const [word, mark] = ['strong', 'svg'].map((name) => shadowRoot.querySelector(`.verdict ${name}`)); \
    const size = ({ width, height }) => Math.min(width, height); \
    const sizes = [word, mark].map((part) => size(part.getBoundingClientRect())); \
    return [Math.min(...sizes) > 15, getComputedStyle(word).clipPath, \
        document.documentElement.scrollWidth <= innerWidth]";

async fn the_verdict_is_seen_at_every_width(page: &Page<'_>) -> Outcome {
    let server = Server::start().await?;
    let visit = async {
        page.visit(&format!("{}examples/embed.html", server.address)).await?;
        page.until("plan", |text| text.contains("\"spine_mm\"")).await?;
        page.script("document.getElementById('plan').hidden = true", vec![]).await?;
        for width in [500, 900, 1400] {
            page.browser.client.set_window_size(width, 900).await?;
            page.settle().await?;
            assert_eq!(page.script(SEEN, vec![]).await?, json!([true, "none", true]), "{width}");
        }
        Ok(())
    };
    server.during(find, visit).await
}

async fn an_element_names_what_is_wrong(page: &Page<'_>) -> Outcome {
    let hostile = "<img src=x onerror=window.ran=1>";
    let server = Server::start().await?;
    let visit = async {
        page.visit(&format!("{}examples/embed.html", server.address)).await?;
        page.until("plan", |text| text.contains("\"spine_mm\"")).await?;
        let told = give(page, &json!("en-GB"), &[("pages", hostile), ("size", "B99")]).await?;
        assert_eq!(told[0], "faults", "{told}");
        let faults = told[1].as_array().ok_or("faults are a list")?;
        let paths: Vec<&str> = faults.iter().filter_map(|fault| fault["path"].as_str()).collect();
        assert!(paths.contains(&"pages") && paths.contains(&"size"), "{paths:?}");
        let seen = page
            .script("const { shadowRoot } = document.querySelector('quire-fit'); \
                return [shadowRoot.textContent, shadowRoot.querySelectorAll('img, button').length, window.ran ?? 0]", vec![])
            .await?;
        assert!(seen[0].as_str().is_some_and(|text| text.contains("B99")), "{seen}");
        assert_eq!((&seen[1], &seen[2]), (&json!(0), &json!(0)));
        Ok(())
    };
    server.during(find, visit).await
}

/// What stands in the calculator, and what the page around it looks like.
const WHOLE: &str = "const root = document.getElementById('calculator').shadowRoot; \
    const seen = (found) => found?.checkVisibility() ? found.textContent : ''; \
    return [seen(root.querySelector('#answer .figures')), !!seen(root.getElementById('region-decides')), \
        getComputedStyle(document.querySelector('h1')).fontFamily, root.querySelector('h1') ? 'a form' : '']";

/// Types into the calculator, or gives it an attribute, and waits for its next plan.
const CHANGE: &str = "const [name, text, attribute, done] = arguments; \
    const element = document.getElementById('calculator'); \
    element.addEventListener('plan', ({ detail }) => done(detail), { once: true }); \
    if (attribute) return element.setAttribute(name, text); \
    const field = element.shadowRoot.querySelector(`[name=${name}]`); \
    field.value = text; field.dispatchEvent(new Event('input', { bubbles: true }));";

async fn whole(page: &Page<'_>, so: impl Fn(&Value) -> bool) -> Outcome<Value> {
    let mut found = Value::Null;
    for _ in 0..200 {
        found = page.script(WHOLE, vec![]).await?;
        if so(&found) {
            return Ok(found);
        }
        tokio::time::sleep(std::time::Duration::from_millis(50)).await;
    }
    Err(format!("the calculator stays so: {found}").into())
}

async fn a_calculator_stands_in_another_page(page: &Page<'_>) -> Outcome {
    let server = Server::start().await?;
    let visit = async {
        page.visit(&format!("{}examples/embed.html", server.address)).await?;
        let says = |part: &'static str| {
            move |found: &Value| found[0].as_str().is_some_and(|text| text.contains(part))
        };
        let first = whole(page, |found| says("mm")(found) && found[1] == json!(false)).await?;
        let serif = first[2].as_str().is_some_and(|font| !font.contains("system-ui"));
        assert!(serif && first[3] == json!("a form"), "the style leaked: {first}");
        let typed = |name: &str, text: &str, attribute: bool| {
            page.script_later(CHANGE, vec![json!(name), json!(text), json!(attribute)])
        };
        let plan = typed("pages", "200 + 4", false).await?;
        assert_eq!(plan["verdict"], json!("no"), "{plan}");
        assert!(plan["limits"].is_null() && plan["cost"].is_null(), "a client reads: {plan}");
        let job = json!({ "format": "quirefit-job", "version": 1, "pages": "16", "size": "A5",
            "paper": "100 gsm offset", "copies": "500" });
        let plan = typed("job", &job.to_string(), true).await?;
        assert_eq!(plan["verdict"], json!("fits"), "{plan}");
        page.script("document.getElementById('calculator').setAttribute('units', 'in')", vec![])
            .await?;
        whole(page, says("in")).await?;
        page.script(
            "document.getElementById('calculator').setAttribute('reading', 'design')",
            vec![],
        )
        .await?;
        whole(page, |found| found[1] == json!(true)).await?;
        let plan = typed("pages", "24", false).await?;
        assert!(plan["limits"].is_array() && plan["cost"].is_object(), "a maker reads: {plan}");
        // The other element of the page has kept its own job.
        assert!(page.text("plan").await?.contains("\"spine_mm\""));
        Ok(())
    };
    server.during(find, visit).await
}

async fn an_element_without_its_module_says_so(page: &Page<'_>) -> Outcome {
    let server = Server::start().await?;
    let visit = async {
        page.visit(&format!("{}examples/embed.html", server.address)).await?;
        let said = "const [language, begins, done] = arguments; \
            const element = document.querySelector('quire-fit'); \
            element.lang = language; const look = () => { \
            const text = element.shadowRoot.textContent; \
            if (text.startsWith(begins)) done(text); else setTimeout(look, 50); }; look()";
        for (language, begins) in
            [("en-GB", "The planner could not be loaded"), ("de-AT", "Der Planer konnte nicht")]
        {
            page.script_later(said, vec![json!(language), json!(begins)]).await?;
        }
        // What the browser itself says of it is meant to be there.
        page.complaints().await.map(drop)
    };
    server.during(|path| if path.ends_with(".wasm") { None } else { find(path) }, visit).await
}
