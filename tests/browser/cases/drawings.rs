//! Drawings in a browser: letters that can be read on a phone, and a screen measured with a bank card.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::page::Page;
use fantoccini::key::Key;

cases! { "drawings":
    letters_can_be_read_on_a_phone;
    letters_can_be_read_on_a_desk;
    a_bank_card_makes_50_mm_true;
    saved_as_svg_and_as_png in SAVERS;
    gone_with_the_book;
}

/// WebKit's browser takes only so many downloads in a run.
const SAVERS: &[Engine] = &[Engine::Chromium, Engine::Firefox];

/// Every drawing that is seen, with the pixels of its smallest letters.
const LETTERS: &str = "return [...document.querySelectorAll('svg.drawing')] \
    .filter((drawing) => drawing.querySelector('text') && drawing.getBoundingClientRect().width) \
    .map((drawing) => [drawing.classList[drawing.classList.length - 1], \
        Math.min(...[...drawing.querySelectorAll('text')].map((text) => \
            parseFloat(getComputedStyle(text).fontSize) * text.getScreenCTM().a))])";

/// So many drawings with letters stand in the designer's reading.
const DRAWN: usize = 9;

/// Pixels of the smallest letter that anybody should have to read.
const LEAST: f64 = 11.0;

async fn letters_can_be_read(page: &Page<'_>, width: u32) -> Outcome {
    page.width(width).await?;
    page.open_all().await?;
    let found = page.script(LETTERS, vec![]).await?;
    let found: Vec<(String, f64)> = serde_json::from_value(found)?;
    assert!(found.len() >= DRAWN, "only {found:?} are drawn");
    let small: Vec<_> = found.iter().filter(|(_, pixels)| *pixels < LEAST).collect();
    assert!(small.is_empty(), "letters too small at {width}: {small:?}");
    Ok(())
}

async fn letters_can_be_read_on_a_phone(page: &Page<'_>) -> Outcome {
    letters_can_be_read(page, 390).await
}

async fn letters_can_be_read_on_a_desk(page: &Page<'_>) -> Outcome {
    letters_can_be_read(page, 820).await?;
    letters_can_be_read(page, 1440).await
}

/// Pixels of the card's long edge as the slider has it, of its outline, and of the bar of 50 mm.
const SIZES: &str = "const wide = (css) => document.querySelector(css).getBoundingClientRect().width; \
    return [Number(document.getElementById('input-card').value), \
        wide('.card-drawn .dimension line'), wide('.true-size-drawn .dimension line')]";

/// Long edge of a bank card (ISO/IEC 7810, ID-1).
const CARD: f64 = 85.60;

/// The slider's place, if outline and bar have the sizes that go with it, to a fifth of a pixel.
async fn true_to_the_card(page: &Page<'_>) -> Outcome<f64> {
    let (card, outline, bar): (f64, f64, f64) =
        serde_json::from_value(page.script(SIZES, vec![]).await?)?;
    assert!((outline - card).abs() < 0.7, "slider {card}, outline {outline}");
    assert!((bar - 50.0 * outline / CARD).abs() < 0.2, "outline {outline}, bar {bar}");
    Ok(card)
}

async fn a_bank_card_makes_50_mm_true(page: &Page<'_>) -> Outcome {
    page.click("#measure-screen summary").await?;
    page.settle().await?;
    let assumed = true_to_the_card(page).await?;
    let slider = page.field("card").await?;
    let right = char::from(Key::Right).to_string();
    slider.send_keys(&right.repeat(40)).await?;
    page.settle().await?;
    let measured = true_to_the_card(page).await?;
    assert!((measured - assumed - 40.0).abs() < 0.1, "{assumed}, then {measured}");
    for (button, key, by) in [("#card-more", Key::Enter, 1.0), ("#card-less", Key::Space, 0.0)] {
        page.find(button).await?.send_keys(&char::from(key).to_string()).await?;
        page.settle().await?;
        let now = true_to_the_card(page).await?;
        assert!((now - measured - by).abs() < 0.1, "{button}: {measured}, then {now}");
    }
    page.reload().await?;
    page.click("#measure-screen summary").await?;
    page.settle().await?;
    let again = true_to_the_card(page).await?;
    assert!((again - measured).abs() < 0.1, "kept {measured}, found {again}");
    Ok(())
}

/// The end of the book: an SVG that says its millimetres, and a PNG of 300 dots to the inch that is not
/// one white sheet.
async fn saved_as_svg_and_as_png(page: &Page<'_>) -> Outcome {
    page.click("#save-svg-book-end").await?;
    let (_, text) = page.saved("svg").await?;
    let document = roxmltree::Document::parse(&text)?;
    let length = |side: &str| -> Outcome<f64> {
        let told = document.root_element().attribute(side).ok_or("no size")?;
        Ok(told.trim_end_matches("mm").parse()?)
    };
    page.click("#save-png-book-end").await?;
    let (_, bytes) = page.saved_bytes("png").await?;
    // ISO/IEC 15948: the signature, then width and height in the first chunk.
    assert!(bytes.starts_with(b"\x89PNG\r\n\x1a\n"), "no PNG");
    for (at, side) in [(16, "width"), (20, "height")] {
        let dots = u32::from_be_bytes(bytes[at..at + 4].try_into()?);
        let wanted = length(side)? / 25.4 * 300.0;
        assert!((f64::from(dots) - wanted).abs() <= 1.0, "{side}: {dots} dots, {wanted} wanted");
    }
    assert!(bytes.len() > 8000, "a picture of {} bytes is empty", bytes.len());
    Ok(())
}

/// Of a book that nobody has said yet there is nothing to see.
async fn gone_with_the_book(page: &Page<'_>) -> Outcome {
    let seen = page.script(LETTERS, vec![]).await?;
    assert_ne!(seen, serde_json::json!([]));
    page.click("#act-new").await?;
    page.settle().await?;
    assert_eq!(page.script(LETTERS, vec![]).await?, serde_json::json!([]));
    Ok(())
}
