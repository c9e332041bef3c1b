//! Nothing that is typed leaves the page, and nothing that comes in runs there.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::page::Page;
use crate::server::Server;
use quirefit::draft::Draft;
use quirefit::job::to_link;
use serde_json::{Value, json};

cases! { "leaves":
    a_file_asks_for_nothing in &[Engine::Chromium];
    a_server_is_asked_for_the_page_alone;
    the_policy_refuses_every_way_out;
    what_is_typed_stays_text;
    files_and_links_stay_text in &[Engine::Chromium, Engine::Firefox];
    what_was_kept_stays_text;
    a_saved_file_holds_text;
}

/// What would run, or load, were it taken for more than text.
const HOSTILE: [&str; 5] = [
    "<img src=x onerror=window.ran=1>",
    "</script><script>window.ran=1</script>",
    "\"><svg onload=window.ran=1><a href=\"javascript:window.ran=1\">",
    "' autofocus onfocus='window.ran=1",
    "{title} {{window.ran=1}} ${window.ran=1} <iframe srcdoc=x>",
];

/// Everything a person does: types, opens all there is, changes who reads, saves, opens a file.
async fn use_it_all(page: &Page<'_>) -> Outcome {
    page.type_into("pages", "144 + 4").await?;
    page.settle().await?;
    page.open_all().await?;
    page.read_by_all().await?;
    page.click("[data-act='save-job']").await?;
    let (path, _) = page.saved("json").await?;
    page.field("file").await?.send_keys(&path.display().to_string()).await?;
    page.until("file-note", |text| !text.is_empty()).await.map(drop)
}

/// Of the browser's own tools: every request, by whatever part of the page.
async fn a_file_asks_for_nothing(page: &Page<'_>) -> Outcome {
    let log = json!({ "type": "performance" });
    page.browser.extra("se/log", log.clone()).await?;
    page.reload().await?;
    use_it_all(page).await?;
    let entries = page.browser.extra("se/log", log).await?;
    let mut asked = Vec::new();
    for entry in entries.as_array().ok_or("the log is a list")? {
        let message: Value = serde_json::from_str(entry["message"].as_str().unwrap_or_default())?;
        let message = &message["message"];
        if message["method"] == "Network.requestWillBeSent" {
            asked.push(message["params"]["request"]["url"].as_str().unwrap_or_default().to_owned());
        }
    }
    // What the page has made itself is no way out.
    asked.retain(|url| !url.starts_with("blob:") && !url.starts_with("data:"));
    assert_eq!(asked, [Page::address()]);
    Ok(())
}

/// Of a server: what it is asked for.
async fn a_server_is_asked_for_the_page_alone(page: &Page<'_>) -> Outcome {
    let file = std::fs::read(Page::address().trim_start_matches("file://"))?;
    let server = Server::start().await?;
    let visit = async {
        page.open(&server.address).await?;
        use_it_all(page).await?;
        page.script("localStorage.clear()", vec![]).await.map(drop)
    };
    server.during(|_| Some(("text/html", file.clone())), visit).await?;
    assert_eq!(server.asked(), ["GET / HTTP/1.1"]);
    Ok(())
}

/// From within the page itself, as a script would that had got in.
async fn the_policy_refuses_every_way_out(page: &Page<'_>) -> Outcome {
    for (directive, attempt) in [
        (
            "script-src",
            "const s = document.createElement('script'); s.text = 'window.ran = 1'; document.body.append(s)",
        ),
        (
            "script-src",
            "document.body.insertAdjacentHTML('beforeend', '<b onclick=\"window.ran = 1\">x</b>'); document.body.lastChild.click()",
        ),
        (
            "script-src",
            "const s = document.createElement('script'); s.src = 'https://quirefit.example/x.js'; document.body.append(s)",
        ),
        ("img-src", "new Image().src = 'https://quirefit.example/x.png'"),
        ("connect-src", "fetch('https://quirefit.example/').catch(() => {})"),
        (
            "connect-src",
            "const r = new XMLHttpRequest(); r.open('GET', 'https://quirefit.example/'); r.send()",
        ),
        ("connect-src", "try { new WebSocket('wss://quirefit.example/') } catch {}"),
        ("connect-src", "navigator.sendBeacon('https://quirefit.example/', 'x')"),
        (
            "style-src",
            "const l = document.createElement('link'); l.rel = 'stylesheet'; l.href = 'https://quirefit.example/x.css'; document.head.append(l)",
        ),
        (
            "font-src",
            "const f = new FontFace('x', 'url(https://quirefit.example/x.woff2)'); f.load().catch(() => {})",
        ),
        (
            "frame-src",
            "const f = document.createElement('iframe'); f.src = 'https://quirefit.example/'; document.body.append(f)",
        ),
        (
            "form-action",
            "const f = document.createElement('form'); f.action = 'https://quirefit.example/'; document.body.append(f); f.submit()",
        ),
        (
            "base-uri",
            "const b = document.createElement('base'); b.href = 'https://quirefit.example/'; document.head.append(b)",
        ),
    ] {
        // Some engines throw what others only say.
        page.script(&format!("try {{ {attempt} }} catch {{}}"), vec![]).await?;
        let mut lines = Vec::new();
        for _ in 0..20 {
            page.settle().await?;
            lines.extend(page.complaints().await?);
            if lines.iter().any(|line| line.contains("refused: ")) {
                break;
            }
        }
        let refused = lines.iter().any(|line| line.contains(&format!("refused: {directive}")));
        assert!(refused, "{directive}: {attempt}\n{lines:?}");
    }
    assert_eq!(page.script("return window.ran ?? 0", vec![]).await?, json!(0), "it ran");
    page.reload().await
}

/// How many there are of everything that loads or runs something.
const PARTS: &str = "const hot = '[onerror], [onload], [onfocus], [onclick], [href^=\"javascript:\" i]'; \
    return [window.ran ?? 0, document.querySelectorAll('*').length && document.querySelectorAll( \
        `img, script, iframe, object, embed, base, link, meta, form, [srcdoc], [autofocus], ${hot}`).length]";

/// Whether all these texts are seen as they are, and nothing has come of them; `before` is how many
/// parts of `PARTS` the page has by itself.
async fn stays_text(page: &Page<'_>, before: &Value, texts: &[&str]) -> Outcome {
    page.settle().await?;
    page.open_all().await?;
    let now = page.script(PARTS, vec![]).await?;
    assert_eq!(&now, before, "after {texts:?}");
    let seen = "const fields = [...document.querySelectorAll('input, option')]; \
        const all = document.body.textContent + fields.map(({ value }) => value).join(' '); \
        return arguments[0].filter((text) => !all.includes(text))";
    let missing = page.script(seen, vec![json!(texts)]).await?;
    assert_eq!(missing, json!([]), "nobody sees them, so nothing was tried");
    Ok(())
}

async fn what_is_typed_stays_text(page: &Page<'_>) -> Outcome {
    let before = page.script(PARTS, vec![]).await?;
    let put = "const fields = [...document.querySelectorAll('input[type=text][name], textarea[name]')]; \
        for (const field of fields) { \
            field.value = arguments[0]; \
            field.dispatchEvent(new Event('input', { bubbles: true })); \
        } return fields.length";
    for text in HOSTILE {
        let fields = page.script(put, vec![json!(text)]).await?;
        assert!(fields.as_u64() > Some(15), "only {fields} fields");
        stays_text(page, &before, &[text]).await?;
    }
    Ok(())
}

/// A text of a file with the hostile one in place of every name and remark.
fn spoilt(tree: &mut Value, hostile: &str) {
    match tree {
        Value::Object(entries) => {
            for (key, value) in entries {
                let free = ["title", "name", "note", "square_factor_note"].contains(&key.as_str());
                if free && value.is_string() {
                    *value = json!(hostile);
                } else {
                    spoilt(value, hostile);
                }
            }
        }
        Value::Array(list) => list.iter_mut().for_each(|value| spoilt(value, hostile)),
        _ => {}
    }
}

/// Not in WebKit, whose window says "Script error." in about half the runs, after a file was handed over.
/// Why is not known: no fault was caught in the page's callbacks, helper or patches.
async fn files_and_links_stay_text(page: &Page<'_>) -> Outcome {
    let before = page.script(PARTS, vec![]).await?;
    let path = page.apart("hostile.json")?;
    let shop = include_str!("../../../examples/shops/prairie-loft-bindery.json");
    for hostile in HOSTILE {
        let mut tree: Value = serde_json::from_str(shop)?;
        // One name is one name: lines and papers are told apart by theirs.
        for list in ["lines", "stocks"] {
            let all = tree[list].as_array_mut();
            all.into_iter().for_each(|all| all.truncate(1));
        }
        spoilt(&mut tree, hostile);
        let foreign = json!({ "format": "quirefit-job", "version": 1, hostile: hostile });
        let job = json!({ "format": "quirefit-job", "version": 1, "title": hostile,
            "pages": hostile, "size": "A5", "paper": hostile });
        for file in [tree, job, foreign, json!(hostile)] {
            std::fs::write(&path, file.to_string())?;
            page.script("document.getElementById('file-note').textContent = ''", vec![]).await?;
            page.field("file").await?.send_keys(&path.display().to_string()).await?;
            page.until("file-note", |text| !text.is_empty()).await?;
            stays_text(page, &before, &[]).await?;
        }
        stays_text(page, &before, &[hostile]).await?;
        let link = to_link(&Draft::of(&[("title", hostile), ("pages", "64"), ("size", "A4")]))
            .unwrap_or_default();
        assert!(!link.is_empty(), "no link of {hostile}");
        page.script("location.hash = arguments[0]", vec![json!(link)]).await?;
        stays_text(page, &before, &[hostile]).await?;
    }
    Ok(())
}

async fn what_was_kept_stays_text(page: &Page<'_>) -> Outcome {
    let before = page.script(PARTS, vec![]).await?;
    for hostile in HOSTILE {
        let job = json!({ "format": "quirefit-job", "version": 1, "title": hostile,
            "pages": "40", "copies": hostile });
        let state = json!({ "format": "quirefit-saved", "language": hostile, "reading": hostile,
            "card": hostile, "job": job, "unread": hostile, hostile: hostile });
        let good = json!({ "format": "quirefit-saved", "job": job });
        for (kept, seen) in
            [(state.to_string(), true), (good.to_string(), true), (hostile.to_owned(), false)]
        {
            let set = "localStorage.setItem('quirefit.job', arguments[0])";
            page.script(set, vec![json!(kept)]).await?;
            page.reload().await?;
            if seen {
                page.script(
                    "document.querySelector('[data-act=restore][data-value=yes]')?.click()",
                    vec![],
                )
                .await?;
            }
            let seen: &[&str] = if seen { &[hostile] } else { &[] };
            stays_text(page, &before, seen).await?;
        }
    }
    Ok(())
}

/// Other programs read what is saved.
async fn a_saved_file_holds_text(page: &Page<'_>) -> Outcome {
    let formula = "=HYPERLINK(\"https://quirefit.example\")";
    let [image, _, quotes, ..] = HOSTILE;
    // No more: WebKit's small browser hangs at its seventeenth download.
    for title in [image, quotes, formula, "\t@SUM(1)"] {
        page.put("title", title).await?;
        page.settle().await?;
        page.click("[data-act='save-xjdf']").await?;
        let (_, text) = page.saved("xjdf").await?;
        let document = roxmltree::Document::parse(&text)?;
        let mut values = document.descendants().flat_map(|node| node.attributes());
        let said = title.trim();
        assert!(values.any(|attribute| attribute.value().trim() == said), "{title}: {text}");
        page.click("[data-act='save-tables']").await?;
        let (_, text) = page.saved("csv").await?;
        let mut rows = csv::ReaderBuilder::new()
            .flexible(true)
            .has_headers(false)
            .from_reader(text.as_bytes());
        for row in rows.records() {
            for cell in &row? {
                let number = cell.parse::<f64>().is_ok();
                assert!(number || !cell.starts_with(['=', '+', '-', '@', '\t']), "{title}: {cell}");
            }
        }
    }
    Ok(())
}
