//! Entry as a conversation, with real keys and pointers: suggestions, sections, undo.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::page::Page;
use fantoccini::actions::{InputSource, MouseActions, PointerAction};
use fantoccini::key::Key;
use serde_json::{Value, json};
use std::time::Duration;

cases! { "entry":
    suggestions_by_keys;
    suggestions_by_tap;
    list_leaves_the_text_in_sight in Engine::TYPE_ON_A_PHONE;
    fast_typing_loses_nothing;
    sections_by_buttons;
    sections_by_dragging;
    undo_by_keys;
    a_field_is_left_by_tab_tap_and_enter;
    the_line_counts_again_by_enter;
}

fn key(key: Key) -> String {
    char::from(key).to_string()
}

fn held(keys: &[Key], letter: &str) -> String {
    let keys: String = keys.iter().map(|key| char::from(*key)).collect();
    format!("{keys}{letter}{}", char::from(Key::Null))
}

/// The texts that a field's list shows; none where it is closed.
async fn offered(page: &Page<'_>, field: &str) -> Outcome<Vec<String>> {
    let shown = "return [...document.querySelectorAll(`#offers-${arguments[0]}:not([hidden]) [role=option]`)] \
        .map((option) => option.dataset.value)";
    Ok(serde_json::from_value(page.script(shown, vec![json!(field)]).await?)?)
}

/// The field with the focus, and the option it points at.
async fn focus(page: &Page<'_>) -> Outcome<Value> {
    let focus = "const { id, dataset, ariaActiveDescendant } = document.activeElement; \
        return [id, document.activeElement.getAttribute('aria-activedescendant')]";
    page.script(focus, vec![]).await
}

async fn suggestions_by_keys(page: &Page<'_>) -> Outcome {
    page.type_into("paper", "130 s").await?;
    page.settle().await?;
    let list = offered(page, "paper").await?;
    assert_eq!(list[..2], ["Pond Silk 130", "130 gsm silk"]);
    // Enter alone takes nothing away.
    page.type_on("paper", &key(Key::Enter)).await?;
    assert_eq!(page.value("paper").await?, "130 s");
    page.type_on("paper", "i").await?;
    page.settle().await?;
    page.type_on("paper", &key(Key::Down)).await?;
    page.type_on("paper", &key(Key::Down)).await?;
    assert_eq!(focus(page).await?, json!(["input-paper", "offer-paper-1"]));
    page.type_on("paper", &key(Key::Enter)).await?;
    assert_eq!(page.value("paper").await?, "130 gsm silk");
    assert_eq!(focus(page).await?, json!(["input-paper", null]));
    assert!(offered(page, "paper").await?.is_empty(), "the list stays open");
    assert!(page.echo("paper").await?.contains("130 g/m²"));
    // Escape closes, and the text is what was typed.
    page.type_into("size", "let").await?;
    page.settle().await?;
    assert!(!offered(page, "size").await?.is_empty());
    page.type_on("size", &key(Key::Escape)).await?;
    assert!(offered(page, "size").await?.is_empty());
    assert_eq!(page.value("size").await?, "let");
    // Tab leaves the field and closes the list.
    page.type_on("size", "t").await?;
    page.settle().await?;
    assert!(!offered(page, "size").await?.is_empty());
    page.type_on("size", &key(Key::Tab)).await?;
    assert!(offered(page, "size").await?.is_empty());
    assert_eq!(page.value("size").await?, "lett");
    Ok(())
}

async fn suggestions_by_tap(page: &Page<'_>) -> Outcome {
    // What holds a text keeps the fields below in reach until it is tapped again.
    page.click("#input-cover").await?;
    page.settle().await?;
    assert!(offered(page, "cover").await?.is_empty());
    page.click("#input-cover").await?;
    page.settle().await?;
    assert!(!offered(page, "cover").await?.is_empty(), "a second tap shows what there is");
    let sizes = "return [...document.querySelectorAll('#offers-cover [role=option]')] \
        .map((option) => option.getBoundingClientRect().height)";
    let heights: Vec<f64> = serde_json::from_value(page.script(sizes, vec![]).await?)?;
    assert!(heights.iter().all(|height| *height >= 44.0), "{heights:?}");
    let name = offered(page, "cover").await?[0].clone();
    page.click("#offer-cover-0").await?;
    assert_eq!(page.value("cover").await?, name);
    assert_eq!(focus(page).await?[0], json!("input-cover"));
    assert!(offered(page, "cover").await?.is_empty());
    // A tap elsewhere closes.
    page.type_into("size", &key(Key::Delete)).await?;
    page.click("#input-size").await?;
    page.settle().await?;
    assert!(!offered(page, "size").await?.is_empty(), "an empty field shows it at once");
    page.click("#input-phrase").await?;
    page.settle().await?;
    assert!(offered(page, "size").await?.is_empty());
    Ok(())
}

/// The list covers neither what is typed nor how it was understood, on the narrowest screen too.
async fn list_leaves_the_text_in_sight(page: &Page<'_>) -> Outcome {
    for width in [390, 1100] {
        page.width(width).await?;
        for field in ["size", "paper", "cover"] {
            page.type_into(field, "a").await?;
            page.settle().await?;
            let apart = "const box = (id) => document.getElementById(id + arguments[0]).getBoundingClientRect(); \
                const list = box('offers-'); \
                return [list.height > 40, list.top >= box('input-').bottom, list.top >= box('echo-').bottom, \
                    list.left >= 0 && list.right <= document.documentElement.clientWidth]";
            let apart = page.script(apart, vec![json!(field)]).await?;
            assert_eq!(apart, json!([true, true, true, true]), "{field} at {width}");
        }
    }
    Ok(())
}

/// Keys as fast as they can be made: every one arrives, and the list is that of the whole text.
async fn fast_typing_loses_nothing(page: &Page<'_>) -> Outcome {
    let text = "130 gsm silk 0.106 mm";
    let fast = "const [name, text] = arguments; const field = document.querySelector(`[name=${name}]`); \
        field.focus(); field.value = ''; let longest = 0; \
        for (const letter of text) { \
            field.value += letter; \
            const began = performance.now(); \
            field.dispatchEvent(new Event('input', { bubbles: true })); \
            longest = Math.max(longest, performance.now() - began); \
        } \
        return [longest, document.querySelectorAll('#offers-paper [role=option]').length]";
    let told = page.script(fast, vec![json!("paper"), json!(text)]).await?;
    assert_eq!(told[1], json!(0), "a list was made between two keys");
    page.settle().await?;
    assert_eq!(page.value("paper").await?, text);
    assert!(page.echo("paper").await?.contains("130 g/m²"));
    page.type_into("paper", "marm").await?;
    page.settle().await?;
    assert_eq!(offered(page, "paper").await?, ["Marmalade Offset 90", "Marmalade Offset 120"]);
    Ok(())
}

/// Adds sections of these pages, all at the centre.
async fn add_sections(page: &Page<'_>, pages: &[&str]) -> Outcome {
    page.click("#more-sections > summary").await?;
    for (index, pages) in pages.iter().enumerate() {
        page.click("#section-add").await?;
        page.type_into(&format!("sections.{index}.pages"), pages).await?;
        page.type_into(&format!("sections.{index}.paper"), "90 gsm offset").await?;
    }
    page.settle().await
}

/// Pages of the sections in the form, from the outside in.
async fn order(page: &Page<'_>) -> Outcome<Value> {
    let order = "return [...document.querySelectorAll('#sections > .insert')] \
        .map((item) => item.querySelector('[name$=\".pages\"]')?.value ?? 'main')";
    page.script(order, vec![]).await
}

async fn sections_by_buttons(page: &Page<'_>) -> Outcome {
    add_sections(page, &["8", "12"]).await?;
    assert_eq!(order(page).await?, json!(["main", "8", "12"]));
    page.click("#section-out-1").await?;
    assert_eq!(order(page).await?, json!(["main", "12", "8"]));
    // The focus has gone along: Enter moves the same section once more.
    assert_eq!(focus(page).await?[0], json!("section-out-0"));
    page.find("#section-out-0").await?.send_keys(&key(Key::Enter)).await?;
    assert_eq!(order(page).await?, json!(["12", "main", "8"]));
    assert!(page.text("place-section-0").await?.contains("just inside the cover"));
    page.click("#act-undo").await?;
    page.click("#act-undo").await?;
    assert_eq!(order(page).await?, json!(["main", "8", "12"]));
    page.click("#act-redo").await?;
    assert_eq!(order(page).await?, json!(["main", "12", "8"]));
    Ok(())
}

/// Takes the second section by its name and drops it on the main pages.
async fn sections_by_dragging(page: &Page<'_>) -> Outcome {
    add_sections(page, &["8", "12"]).await?;
    let near = "document.querySelector('#section-1 > legend').scrollIntoView({ block: 'center' })";
    page.script(near, vec![]).await?;
    page.settle().await?;
    let middle = "const { left, top, height } = document.querySelector(arguments[0]).getBoundingClientRect(); \
        return [Math.round(left + 30), Math.round(top + height / 2)]";
    let place = async |css: &str| -> Outcome<(i64, i64)> {
        Ok(serde_json::from_value(page.script(middle, vec![json!(css)]).await?)?)
    };
    let slow = Some(Duration::from_millis(50));
    let to =
        |(x, y): (i64, i64)| PointerAction::MoveTo { duration: slow, x: x as f64, y: y as f64 };
    let grip = place("#section-1 > legend").await?;
    let left = 0;
    let take = MouseActions::new("mouse".to_owned())
        .then(to(grip))
        .then(PointerAction::Down { button: left })
        .then(to((grip.0, grip.1 - 20)));
    page.browser.client.perform_actions(take).await?;
    // Only names are left of the list; the main pages have come nearer.
    let drop = MouseActions::new("mouse".to_owned())
        .then(to(place("#section-main").await?))
        .then(PointerAction::Up { button: left });
    page.browser.client.perform_actions(drop).await?;
    page.browser.client.release_actions().await?;
    page.settle().await?;
    assert_eq!(order(page).await?, json!(["12", "main", "8"]));
    let rest = "return [document.querySelectorAll('.sorting, [data-onto]').length, \
        document.getElementById('section-0').style.translate]";
    assert_eq!(page.script(rest, vec![]).await?, json!([0, ""]), "something of the drag is left");
    page.click("#act-undo").await?;
    assert_eq!(order(page).await?, json!(["main", "8", "12"]));
    Ok(())
}

async fn undo_by_keys(page: &Page<'_>) -> Outcome {
    let disabled = "return ['undo', 'redo'].map((act) => \
        document.getElementById(`act-${act}`).getAttribute('aria-disabled'))";
    page.settle().await?;
    assert_eq!(page.script(disabled, vec![]).await?, json!(["true", "true"]));
    let copies = page.value("copies").await?;
    page.type_into("pages", "80 + 4").await?;
    page.type_into("copies", "90").await?;
    assert_eq!(page.script(disabled, vec![]).await?, json!([null, "true"]));
    let undo = held(&[Key::Control], "z");
    // In another field than the one that changes, and twice in the same.
    page.type_on("copies", &undo).await?;
    assert_eq!(page.value("copies").await?, copies);
    page.type_on("copies", &undo).await?;
    assert_eq!(page.value("pages").await?, "40 + 4");
    assert_eq!(page.script(disabled, vec![]).await?, json!(["true", null]));
    page.type_on("copies", &held(&[Key::Control, Key::Shift], "z")).await?;
    page.type_on("copies", &held(&[Key::Control], "y")).await?;
    assert_eq!(
        (page.value("pages").await?, page.value("copies").await?),
        ("80 + 4".into(), "90".into())
    );
    Ok(())
}

/// What is half said is told where the focus goes; a tap that ends a field does what it was meant for.
async fn a_field_is_left_by_tab_tap_and_enter(page: &Page<'_>) -> Outcome {
    page.type_into("size", "5x5 m").await?;
    page.settle().await?;
    assert_eq!(page.text("echo-size").await?, "");
    page.type_on("size", &key(Key::Tab)).await?;
    let told = page.text("echo-size").await?;
    assert!(told.contains("“5x5 m” cannot be read as a whole"), "{told}");
    page.type_into("pages", "64 pag").await?;
    page.click("#more-sections > summary").await?;
    let told = page.text("echo-pages").await?;
    assert!(told.contains("“64 pag” cannot be read as a whole"), "{told}");
    let open = page.script("return document.getElementById('more-sections').open", vec![]).await?;
    assert_eq!(open, json!(true), "the tap opened nothing");
    page.type_into("copies", "7 cop").await?;
    page.type_on("copies", &key(Key::Enter)).await?;
    let told = page.text("echo-copies").await?;
    assert!(told.contains("“7 cop” cannot be read as a whole"), "{told}");
    page.type_on("copies", "ies").await?;
    page.settle().await?;
    assert!(page.text("echo-copies").await?.contains("7 copies"));
    Ok(())
}

async fn the_line_counts_again_by_enter(page: &Page<'_>) -> Outcome {
    let line = "64 pages, A5, 130 silk, 750 copies";
    page.type_into("phrase", line).await?;
    page.type_into("pages", "48").await?;
    page.type_on("pages", &key(Key::Tab)).await?;
    assert!(page.text("echo-phrase").await?.contains("moved on from this line: Pages."));
    assert_eq!(page.value("phrase").await?, line);
    page.type_on("phrase", &key(Key::Enter)).await?;
    assert_eq!(page.value("pages").await?, "64 pages");
    assert_eq!(page.text("echo-phrase").await?, "");
    page.click("#act-undo").await?;
    assert_eq!(
        (page.value("pages").await?, page.value("phrase").await?),
        ("48".into(), line.into())
    );
    Ok(())
}
