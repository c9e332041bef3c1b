//! Versions kept beside each other, by touch and by keyboard alone, on a desk and on a phone.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::look;
use crate::page::Page;
use fantoccini::key::Key;
use serde_json::json;

cases! { "compare":
    two_versions_stand_beside_each_other;
    works_by_keyboard_alone;
    fits_a_phone in Engine::TYPE_ON_A_PHONE;
    versions_outlive_a_reload;
}

async fn press(page: &Page<'_>, css: &str) -> Outcome {
    page.script(&format!("document.querySelector('{css}').focus()"), vec![]).await?;
    let enter = char::from(Key::Enter).to_string();
    page.find(css).await?.send_keys(&enter).await?;
    page.settle().await
}

async fn active(page: &Page<'_>) -> Outcome<serde_json::Value> {
    page.script("return document.activeElement.id", vec![]).await
}

/// The text of an element, whether it is on the screen or further down.
async fn content(page: &Page<'_>, id: &str) -> Outcome<String> {
    let script = format!("return document.getElementById('{id}').textContent");
    let found = page.script(&script, vec![]).await?;
    Ok(found.as_str().unwrap_or_default().to_owned())
}

async fn two_versions_stand_beside_each_other(page: &Page<'_>) -> Outcome {
    page.choose("units", "mm").await?;
    page.click("#keep-version").await?;
    page.type_into("pages", "64 + 4").await?;
    page.settle().await?;
    let told = content(page, "summary-compare").await?;
    assert!(told.contains("Beside A, B is") && told.contains("thicker"), "{told}");
    assert!(content(page, "body-compare").await?.contains("mm thicker"));
    look::accessible(page).await?;
    page.click("#take-version-0").await?;
    page.settle().await?;
    assert_eq!(page.value("pages").await?, "40 + 4");
    page.click("#act-undo").await?;
    page.settle().await?;
    assert_eq!(page.value("pages").await?, "64 + 4");
    page.click("#drop-version-0").await?;
    page.settle().await?;
    assert!(content(page, "summary-compare").await?.contains("Keep this version"));
    Ok(())
}

async fn works_by_keyboard_alone(page: &Page<'_>) -> Outcome {
    press(page, "#keep-version").await?;
    assert_eq!(active(page).await?, json!("keep-version"), "the focus stays on the button");
    assert!(content(page, "keep-version").await?.contains("kept as A"));
    page.type_into("pages", "64 + 4").await?;
    page.settle().await?;
    press(page, "#take-version-0").await?;
    assert_eq!(active(page).await?, json!("summary-compare"));
    assert_eq!(page.value("pages").await?, "40 + 4");
    press(page, "#drop-version-0").await?;
    assert_eq!(active(page).await?, json!("summary-compare"));
    Ok(())
}

async fn fits_a_phone(page: &Page<'_>) -> Outcome {
    page.width(390).await?;
    page.settle().await?;
    for pages in ["64 + 4", "400 + 4"] {
        press(page, "#keep-version").await?;
        page.type_into("pages", pages).await?;
        page.settle().await?;
    }
    let sizes = "const page = document.scrollingElement, table = document.querySelector('.compare'); \
        return [page.scrollWidth <= page.clientWidth, \
            table.getBoundingClientRect().right <= page.clientWidth, \
            [...table.querySelectorAll('button')].every((button) => button.offsetHeight >= 44)]";
    assert_eq!(page.script(sizes, vec![]).await?, json!([true, true, true]));
    look::screenshot(page, "compare-phone").await.map(drop)
}

async fn versions_outlive_a_reload(page: &Page<'_>) -> Outcome {
    page.click("#keep-version").await?;
    page.type_into("pages", "64 + 4").await?;
    page.settle().await?;
    let told = content(page, "summary-compare").await?;
    page.reload().await?;
    page.settle().await?;
    assert_ne!(content(page, "summary-compare").await?, told, "shown before anyone was asked");
    page.click("[data-act='restore'][data-value='yes']").await?;
    page.settle().await?;
    assert_eq!(content(page, "summary-compare").await?, told);
    Ok(())
}
