//! What every document has: its name, how it looks, the bar that shows whether it was printed true.

use super::File;
use super::document::{Box4, Document, Ink, LEADING, Type, broken};
use crate::drawing::Anchor;
use crate::entry::LengthUnit;
use crate::view::html::Scene;
use crate::words::{Say, say};
use pdf_writer::types::StructRole;

/// Ink of words and of what is printed.
pub(super) const BLACK: [f32; 3] = [0.0, 0.0, 0.0];
/// What stands back.
pub(super) const GREY: [f32; 3] = [0.45, 0.45, 0.45];
/// The cut, and only the cut.
pub(super) const RED: [f32; 3] = [0.7, 0.15, 0.12];
/// A thin line.
pub(super) const HAIR: f64 = 0.1;
/// The bar to lay a ruler on.
const BAR: f64 = 50.0;
/// How thick the bar is.
const THICK: f64 = 1.5;
/// Size of letters.
pub(super) const LETTER: f64 = 3.2;
/// Size of a title's letters.
pub(super) const LARGE: f64 = 5.5;

/// A4 of ISO 216, and Letter of ANSI Y14.1, upright.
const A4: (f64, f64) = (210.0, 297.0);
/// See [`A4`].
const US_LETTER: (f64, f64) = (215.9, 279.4);

/// The paper that stands in the reader's printer: who reads inches has Letter.
pub(super) const fn paper(scene: &Scene) -> (f64, f64) {
    match scene.printer.numbers.unit {
        LengthUnit::Millimetre => A4,
        LengthUnit::Inch => US_LETTER,
    }
}

/// Words that begin at their place.
pub(super) const fn plain(size: f64) -> Type {
    Type { size, anchor: Anchor::Start, turned: false, colour: BLACK }
}

/// A line as thin as this.
pub(super) const fn hair(colour: [f32; 3]) -> Ink {
    Ink { colour, width: HAIR, dash: None }
}

/// What the document is called: its kind and the book's title.
pub(super) fn title(scene: &Scene, kind: &'static str) -> String {
    let book = match scene.job.identity.title.trim() {
        "" => say("letter.this-book"),
        title => say("letter.named").text("title", title),
    };
    scene.printer.text(&say("pdf.title").say("kind", say(kind)).say("book", book))
}

/// How far the bar and its words reach down.
pub(super) const BAR_HIGH: f64 = 12.0;

/// Where title and sentences end that begin at this height, with the bar below them.
pub(super) fn end((title, sentences): (&str, &[String]), top: f64, wide: f64) -> f64 {
    let high = |text: &str, size: f64| broken(text, wide, size).len() as f64 * size * LEADING;
    let sentences = sentences.iter().filter(|sentence| !sentence.is_empty());
    let below: f64 = sentences.map(|sentence| high(sentence, LETTER)).sum();
    top + LARGE + high(title, LARGE) + below + BAR_HIGH
}

/// Title, then sentences, one below the other; gives back where they end.
pub(super) fn told(
    document: &mut Document,
    (title, sentences): (&str, &[String]),
    (x, y): (f64, f64),
    wide: f64,
) -> f64 {
    let mut y = y + LARGE;
    document.part(StructRole::H1, |document| {
        y = document.sentence(plain(LARGE), (x, y), wide, title);
    });
    for sentence in sentences.iter().filter(|sentence| !sentence.is_empty()) {
        document.part(StructRole::P, |document| {
            y = document.sentence(plain(LETTER), (x, y), wide, sentence);
        });
    }
    y
}

/// For whom, from when and by whom, as typed.
pub(super) fn identity(scene: &Scene) -> String {
    let identity = &scene.job.identity;
    let parts = [&identity.customer, &identity.date, &identity.by];
    let said: Vec<&str> = parts.into_iter().map(|part| part.trim()).collect();
    said.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" · ")
}

/// The bar of 50 mm, from this place to the right, with words below it.
pub(super) fn bar(document: &mut Document, scene: &Scene, (x, y): (f64, f64)) {
    let told = scene.printer.word("card.bar");
    let area: Box4 = [x, y, x + BAR, y + THICK];
    document.figure(told, |document| document.filled(BLACK, &[area]));
    document.part(StructRole::P, |document| {
        let below = (x, y + THICK + LETTER * 1.2);
        document.sentence(plain(LETTER * 0.75), below, BAR, told);
    });
}

/// The file of a document.
pub(super) fn file(document: Document, title: &str, language: &str) -> File {
    let replaced = document.replaced();
    File { bytes: document.finish(title, language), replaced }
}

/// A sentence in the reader's words.
pub(super) fn text(scene: &Scene, sentence: &Say) -> String {
    scene.printer.text(sentence)
}
