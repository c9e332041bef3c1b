//! Weights in which paper is usually sold, lightest first: the steps in which a stock can become
//! lighter or heavier. No mill makes them all.

use crate::source::Source;

/// The usual weights of one class of paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UsualWeights {
    /// The grade its pounds are quoted for; nothing where grams a square metre count.
    pub grade: Option<&'static str>,
    /// Card for covers rather than text.
    pub card: bool,
    /// Kinds that are sold so, by id, the usual ones first.
    pub kinds: &'static [&'static str],
    /// The weights, in pounds a ream or in g/m².
    pub weights: &'static [f64],
    /// Where they come from.
    pub source: Source,
}

/// Kinds of text paper; by pounds, copier paper is a grade of its own.
const TEXT: &[&str] = &["silk", "gloss", "uncoated", "recycled", "bulky"];
/// Kinds of card for covers.
const COVER: &[&str] = &["silk-cover", "gloss-cover", "card"];
/// Cards that are never coated.
const CARD: &[&str] = &["card"];

const fn row(
    grade: Option<&'static str>,
    card: bool,
    kinds: &'static [&'static str],
    weights: &'static [f64],
) -> UsualWeights {
    UsualWeights { grade, card, kinds, weights, source: Source::Practice }
}

/// The classes.
pub static USUAL_WEIGHTS: [UsualWeights; 9] = [
    row(
        None,
        false,
        &["silk", "gloss", "uncoated", "recycled", "bulky", "copier"],
        &[60.0, 70.0, 80.0, 90.0, 100.0, 115.0, 120.0, 130.0, 135.0, 150.0, 170.0, 200.0, 250.0],
    ),
    row(None, true, COVER, &[160.0, 200.0, 225.0, 250.0, 280.0, 300.0, 350.0, 400.0]),
    row(Some("text"), false, TEXT, &[40.0, 45.0, 50.0, 60.0, 70.0, 80.0, 100.0]),
    row(Some("bond"), false, &["copier"], &[16.0, 20.0, 24.0, 28.0, 32.0]),
    row(Some("newsprint"), false, &["newsprint"], &[28.0, 30.0, 33.0, 35.0]),
    row(Some("cover"), true, COVER, &[60.0, 65.0, 80.0, 100.0, 120.0]),
    row(Some("index"), true, CARD, &[90.0, 110.0, 140.0]),
    row(Some("bristol"), true, CARD, &[57.0, 67.0, 80.0, 100.0]),
    row(Some("tag"), true, CARD, &[100.0, 125.0, 150.0]),
];
