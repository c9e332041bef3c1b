//! How the page looks at every width, in both colour schemes.

use crate::case::Outcome;
use crate::cases;
use crate::look;
use crate::page::Page;
use serde_json::json;

cases! { "looks":
    fits_a_phone;
    fits_a_tablet;
    fits_a_desk;
    accessible;
    accessible_in_the_dark => Dark;
}

/// What reaches farthest beyond the window, where that makes the page scroll sideways.
const WIDER: &str = "const { scrollWidth, clientWidth } = document.scrollingElement; \
    if (scrollWidth <= clientWidth) return []; \
    return [...document.body.querySelectorAll('*')] \
        .map((element) => [element, Math.ceil(element.getBoundingClientRect().right)]) \
        .filter(([, right]) => right > clientWidth) \
        .sort(([, a], [, b]) => b - a).slice(0, 5) \
        .map(([{ localName, id, className }, right]) => `${localName} #${id} .${className}: ${right}`)";

async fn fits(page: &Page<'_>, width: u32) -> Outcome {
    page.width(width).await?;
    fits_as(page, &format!("{width}")).await
}

/// Nothing on the page as it stands reaches beyond the window.
pub(super) async fn fits_as(page: &Page<'_>, name: &str) -> Outcome {
    page.settle().await?;
    look::screenshot(page, name).await?;
    assert_eq!(page.script(WIDER, vec![]).await?, json!([]), "the page scrolls sideways");
    Ok(())
}

async fn fits_a_phone(page: &Page<'_>) -> Outcome {
    fits(page, 390).await?;
    fits(page, 320).await
}

async fn fits_a_tablet(page: &Page<'_>) -> Outcome {
    fits(page, 820).await
}

async fn fits_a_desk(page: &Page<'_>) -> Outcome {
    fits(page, 1440).await
}

async fn accessible(page: &Page<'_>) -> Outcome {
    page.settle().await?;
    look::accessible(page).await
}

async fn accessible_in_the_dark(page: &Page<'_>) -> Outcome {
    let dark = "return matchMedia('(prefers-color-scheme: dark)').matches";
    assert_eq!(page.script(dark, vec![]).await?, json!(true), "the browser is not dark");
    page.settle().await?;
    look::screenshot(page, "dark").await?;
    look::accessible(page).await
}
