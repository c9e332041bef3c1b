//! Links, codes and texts on their way in and out.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::page::Page;
use base64ct::{Base64, Encoding as _};
use fantoccini::key::Key;
use quirefit::draft::Draft;
use quirefit::job::{to_code, to_link};
use quirefit::page::{Event, Json, Patch, Session};
use quirefit::words::Files;
use serde_json::json;

cases! { "handover":
    link_opens_from_the_address;
    link_opens_in_the_open_page;
    broken_link_changes_nothing;
    scanner_types_a_code;
    pasted_link_is_known;
    copied_link_opens_again;
    copied_text_can_be_pasted;
    xjdf_and_tables_are_saved;
    the_code_is_drawn_where_it_is_opened;
    a_document_is_the_same_file_everywhere in MANY_DOWNLOADS;
}

/// WebKit's small browser hangs at its seventeenth download.
const MANY_DOWNLOADS: &[Engine] = &[Engine::Chromium, Engine::Firefox];

/// Another book than the example.
fn other() -> Draft {
    Draft::of(&[("title", "Low Tide"), ("pages", "64"), ("size", "A4"), ("paper", "90 gsm offset")])
}

/// It as a link; nothing where none can be made, and then no case passes.
fn link() -> String {
    to_link(&other()).unwrap_or_default()
}

/// What follows the # in the page's address.
async fn mark(page: &Page<'_>) -> Outcome<String> {
    let hash = page.script("return location.hash", vec![]).await?;
    Ok(hash.as_str().unwrap_or_default().to_owned())
}

async fn link_opens_from_the_address(page: &Page<'_>) -> Outcome {
    // From elsewhere: the same page with another mark would not be opened anew.
    page.open("about:blank").await?;
    page.open(&format!("{}{}", Page::address(), link())).await?;
    page.until("file-note", |text| text.contains("Low Tide")).await?;
    assert_eq!(page.value("title").await?, "Low Tide");
    assert_eq!(mark(page).await?, "", "the job stays in the address");
    let length = page.script("return history.length", vec![]).await?;
    page.settle().await?;
    assert_eq!(page.script("return history.length", vec![]).await?, length);
    Ok(())
}

async fn link_opens_in_the_open_page(page: &Page<'_>) -> Outcome {
    page.type_into("copies", "4321").await?;
    page.script("location.hash = arguments[0]", vec![json!(link())]).await?;
    page.until("file-note", |text| text.contains("Low Tide")).await?;
    assert_eq!(page.value("title").await?, "Low Tide");
    assert_eq!(mark(page).await?, "", "the job stays in the address");
    page.click("#act-undo").await?;
    assert_eq!(page.value("copies").await?, "4321");
    Ok(())
}

async fn broken_link_changes_nothing(page: &Page<'_>) -> Outcome {
    let before = page.answer().await?;
    let mut broken = link();
    broken.truncate(broken.len() - 2);
    page.script("location.hash = arguments[0]", vec![json!(broken)]).await?;
    page.until("file-note", |text| !text.is_empty()).await?;
    assert_eq!(page.answer().await?, before);
    Ok(())
}

async fn scanner_types_a_code(page: &Page<'_>) -> Outcome {
    let code = to_code(&other()).unwrap_or_default();
    page.type_into("phrase", &code).await?;
    page.until("echo-phrase", |text| text.contains("Low Tide")).await?;
    assert_eq!(page.value("title").await?, "Low Tide");
    assert_eq!(page.value("phrase").await?, "", "the line is not free for the next code");
    // Scanners press Enter after the last letter.
    page.type_on("phrase", &char::from(Key::Enter).to_string()).await?;
    assert_eq!(page.value("pages").await?, "64");
    Ok(())
}

async fn pasted_link_is_known(page: &Page<'_>) -> Outcome {
    // Firefox takes text and type, the others a transfer.
    let paste = "const clipboardData = new DataTransfer(); \
        const [data] = arguments, dataType = 'text/plain', bubbles = true; \
        clipboardData.setData(dataType, data); \
        document.body.dispatchEvent(new ClipboardEvent('paste', \
            { clipboardData, data, dataType, bubbles }));";
    let text = format!("Look: https://quay.example/planner.html{}\nWhat do you think?", link());
    page.script(paste, vec![json!(text)]).await?;
    page.until("file-note", |text| text.contains("Low Tide")).await?;
    assert_eq!(page.value("title").await?, "Low Tide");
    Ok(())
}

/// Pastes with keys into a field.
async fn paste_into(page: &Page<'_>, name: &str) -> Outcome {
    let keys = format!("{}v{}", char::from(Key::Control), char::from(Key::Null));
    page.type_into(name, &keys).await
}

async fn copied_link_opens_again(page: &Page<'_>) -> Outcome {
    page.type_into("copies", "4321").await?;
    page.click("#act-copy-link").await?;
    page.until("file-note", |text| !text.is_empty()).await?;
    page.type_into("copies", "55").await?;
    paste_into(page, "phrase").await?;
    page.until("echo-phrase", |text| !text.is_empty()).await?;
    assert_eq!(page.value("copies").await?, "4321");
    Ok(())
}

async fn copied_text_can_be_pasted(page: &Page<'_>) -> Outcome {
    page.click("#act-copy-text").await?;
    page.until("file-note", |text| !text.is_empty()).await?;
    paste_into(page, "phrase").await?;
    let text = page.value("phrase").await?;
    assert!(text.contains("single pages") && text.contains("Teapots"), "{text}");
    Ok(())
}

async fn xjdf_and_tables_are_saved(page: &Page<'_>) -> Outcome {
    page.click("#act-save-xjdf").await?;
    let (_, text) = page.saved("xjdf").await?;
    assert!(text.starts_with("<?xml") && text.contains("SaddleStitch"), "{text}");
    page.click("#act-save-tables").await?;
    let (_, text) = page.saved("csv").await?;
    assert!(text.contains("Leaf, fold to cut ("), "{text}");
    Ok(())
}

/// What a page saves for print is byte for byte what the planner writes natively.
async fn a_document_is_the_same_file_everywhere(page: &Page<'_>) -> Outcome {
    for language in ["en-GB", "de"] {
        page.choose("language", language).await?;
        page.settle().await?;
        page.click("#act-save-dummy").await?;
        let (path, bytes) = page.saved_bytes("pdf").await?;
        assert!(bytes.starts_with(b"%PDF-"), "{}", path.display());
        let json = Json { parse: |_| None, print: |_| String::new() };
        let mut session = Session::new(Files::new(), &[language.to_owned()], None, json);
        session.handle(&Event::new("start", "", ""));
        let patches = session.handle(&Event::new("act", "save-dummy", ""));
        let native = patches.into_iter().find_map(|patch| match patch {
            Patch::Save { base64, .. } => Base64::decode_vec(&base64).ok(),
            _ => None,
        });
        let native = native.ok_or("nothing is saved natively")?;
        assert_eq!(bytes.len(), native.len(), "{language}");
        let differs = bytes.iter().zip(&native).position(|(one, other)| one != other);
        assert_eq!(differs, None, "{language}: the first byte that differs");
    }
    Ok(())
}

/// Square, as large as a scanner needs, and black on white whatever the ground.
async fn the_code_is_drawn_where_it_is_opened(page: &Page<'_>) -> Outcome {
    let drawn = "const [code] = document.querySelectorAll('#code svg'); \
        if (!code) return null; \
        const { width, height } = code.getBoundingClientRect(); \
        return [width, height, getComputedStyle(code.querySelector('rect')).fill, \
            getComputedStyle(code.querySelector('path')).fill]";
    assert_eq!(
        page.script(drawn, vec![]).await?,
        json!(null),
        "the code is drawn before it is asked for"
    );
    page.click("#open-code > summary").await?;
    page.until("code", |text| text.contains("letters")).await?;
    let found = page.script(drawn, vec![]).await?;
    let (wide, high) = (found[0].as_f64().unwrap_or(0.0), found[1].as_f64().unwrap_or(0.0));
    assert!(wide > 150.0 && (wide - high).abs() < 1.0, "{found}");
    assert_eq!([&found[2], &found[3]], [&json!("rgb(255, 255, 255)"), &json!("rgb(0, 0, 0)")]);
    Ok(())
}
