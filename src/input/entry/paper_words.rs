//! The words with which papers are described: units, grades, kinds, grain.

use super::text::{Token, begins_one};
use crate::data::{BASIS_SIZES, BasisSize, STOCK_KINDS, StockKind, stock_kind};
use crate::paper::Grain;
use crate::units::{MICRON_PER_MM, MILS_PER_INCH, MM_PER_INCH};

/// Grams in a square metre.
const GRAMMAGE: [&str; 16] = [
    "gsm", "g", "g/m2", "g/m²", "g/qm", "gm2", "gm²", "gm", "gms", "gr", "grs", "gram", "grams",
    "gramm", "gramme", "grammes",
];
/// Pounds a ream.
const POUNDS: [&str; 5] = ["lb", "lbs", "pound", "pounds", "pfund"];
/// Thickness in micrometres.
const MICRONS: [&str; 8] = ["µm", "um", "mic", "mics", "micron", "microns", "µ", "mikrometer"];
/// Thickness in thousandths of an inch.
const MILS: [&str; 7] = ["mil", "mils", "pt", "pts", "point", "points", "thou"];
/// Thickness in millimetres.
const MILLIMETRES: [&str; 5] = ["mm", "millimetre", "millimetres", "millimeter", "millimeters"];
/// Thickness in inches.
const INCHES: [&str; 4] = ["in", "inch", "inches", "zoll"];
/// Pages to an inch of book.
pub(super) const PPI: [&str; 1] = ["ppi"];
/// Specific volume, after its number; in German "1,5-fach" or "1,5faches Volumen".
const VOLUME_UNITS: [&str; 7] = ["cm3/g", "cm³/g", "cc/g", "ccm/g", "fach", "faches", "fachem"];
/// Specific volume, before or after its number.
const BULK: [&str; 1] = ["bulk"];
/// Ten times the specific volume.
const VOLUME: [&str; 3] = ["vol", "volume", "volumen"];
/// Leaves of a measured pack; a flat sheet counts as one.
const LEAVES: [&str; 7] = ["leaves", "leaf", "sheets", "sheet", "blatt", "blätter", "bogen"];
/// Words that begin what says as much as an empty field.
const NO_PAPER: [&str; 11] =
    ["none", "no", "self", "selfcover", "same", "like", "as", "ohne", "kein", "keiner", "wie"];
/// Words that say nothing of weight, thickness or kind.
const FILLERS: [&str; 60] = [
    "pack",
    "of",
    "paper",
    "stock",
    "weight",
    "thick",
    "thickness",
    "each",
    "grain",
    "long",
    "short",
    "the",
    "to",
    "spine",
    "along",
    "across",
    "parallel",
    "c1s",
    "c2s",
    "m2",
    "m²",
    "a",
    "on",
    "white",
    "measured",
    "for",
    "and",
    "wt",
    "is",
    "finish",
    "caliper",
    "with",
    // German.
    "packen",
    "paket",
    "von",
    "papier",
    "sorte",
    "dick",
    "dicke",
    "stark",
    "stärke",
    "je",
    "laufrichtung",
    "schmalbahn",
    "breitbahn",
    "der",
    "die",
    "das",
    "zum",
    "rücken",
    "längs",
    "auf",
    "weiß",
    "weiss",
    "gemessen",
    "für",
    "und",
    "mit",
    "aus",
    "innen",
];
/// Words for the grain along the spine.
const ALONG: [&str; 4] = ["along", "parallel", "with", "längs"];
/// Words for the grain across the spine.
const ACROSS: [&str; 5] = ["across", "perpendicular", "against", "cross", "quer"];
/// Words that say cover, whatever the weight is counted in.
const COVER: [&str; 7] = ["cover", "cov", "cvr", "card", "umschlag", "karton", "umschlagkarton"];
/// Grade words that people who count in grams use as well.
const SHARED: [&str; 7] =
    ["offset", "newsprint", "news", "copier", "laser", "writing", "zeitungsdruck"];

/// Pounds in which each grade is usually sold, common practice. Only decides what a number
/// without a unit may mean.
const USUAL: [(&str, f64, f64); 7] = [
    ("text", 30.0, 120.0),
    ("bond", 9.0, 44.0),
    ("cover", 50.0, 130.0),
    ("bristol", 57.0, 200.0),
    ("index", 90.0, 220.0),
    ("tag", 100.0, 250.0),
    ("newsprint", 25.0, 40.0),
];

/// What stands behind a number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum PaperUnit {
    /// Grams in a square metre.
    Grammage,
    /// Pounds a ream.
    Pounds,
    /// A thickness: millimetres in the unit, and whether it is metric.
    Thick(f64, bool),
    /// Pages to an inch.
    Ppi,
    /// Specific volume.
    Volume,
    /// Specific volume, in a word that may as well stand before the number.
    Bulk,
    /// Specific volume or ten times it, likewise.
    TenfoldBulk,
    /// Leaves of a pack.
    Leaves,
}

/// The unit that a piece of text names.
pub(super) fn unit(token: &Token) -> Option<PaperUnit> {
    match token {
        Token::Sign('#') => Some(PaperUnit::Pounds),
        Token::Sign('"') => Some(PaperUnit::Thick(MM_PER_INCH, false)),
        token => unit_word(token.word()?),
    }
}

fn unit_word(word: &str) -> Option<PaperUnit> {
    let mil = MM_PER_INCH / MILS_PER_INCH;
    let table: [(&[&str], PaperUnit); 11] = [
        (&GRAMMAGE, PaperUnit::Grammage),
        (&POUNDS, PaperUnit::Pounds),
        (&MICRONS, PaperUnit::Thick(1.0 / MICRON_PER_MM, true)),
        (&MILS, PaperUnit::Thick(mil, false)),
        (&MILLIMETRES, PaperUnit::Thick(1.0, true)),
        (&INCHES, PaperUnit::Thick(MM_PER_INCH, false)),
        (&PPI, PaperUnit::Ppi),
        (&VOLUME_UNITS, PaperUnit::Volume),
        (&BULK, PaperUnit::Bulk),
        (&VOLUME, PaperUnit::TenfoldBulk),
        (&LEAVES, PaperUnit::Leaves),
    ];
    table.iter().find(|(words, _)| words.contains(&word)).map(|(_, unit)| *unit)
}

/// The grade that one of the words names; a grade's own name before the others.
pub(super) fn grade(words: &[String]) -> Option<&'static BasisSize> {
    let own = words.iter().find_map(|word| BASIS_SIZES.iter().find(|row| row.id == word));
    own.or_else(|| words.iter().find_map(|word| grade_of(word)))
}

fn grade_of(word: &str) -> Option<&'static BasisSize> {
    BASIS_SIZES.iter().find(|row| row.typed.contains(&word))
}

/// Whether a number of pounds is usual for a grade.
pub(super) fn usual(pounds: f64, grade: &BasisSize) -> bool {
    let row = USUAL.iter().find(|(id, _, _)| *id == grade.id);
    row.is_some_and(|(_, least, most)| pounds >= *least && pounds <= *most)
}

/// Whether the words that name the grade are also used where paper is weighed in grams.
pub(super) fn shared(words: &[String]) -> bool {
    let mut grades = words.iter().filter(|word| grade_of(word).is_some());
    grades.all(|word| SHARED.contains(&word.as_str()))
}

/// The kind that the words name: board, then kinds of two words, coated kinds, and of the rest the
/// one furthest down the list, which is the most special.
pub(super) fn kind(words: &[String]) -> Option<&'static StockKind> {
    let has = |word: &str| words.iter().any(|said| said == word);
    let said = |typed: &&&str| typed.split(' ').all(has);
    let (mut board, mut double, mut coated, mut last) = (None, None, None, None);
    for kind in &STOCK_KINDS {
        let mut names = kind.typed.iter().filter(said).peekable();
        if names.peek().is_none() {
            continue;
        }
        last = Some(kind);
        if kind.bulk.is_none() {
            board = board.or(last);
        }
        if kind.coated {
            coated = coated.or(last);
        }
        if names.any(|typed| typed.contains(' ')) {
            double = double.or(last);
        }
    }
    let coated = || {
        let cover = COVER.iter().any(|word| has(word));
        let cover_kind = |kind: &StockKind| stock_kind(&format!("{}-cover", kind.id));
        coated.map(|kind| cover.then(|| cover_kind(kind)).flatten().unwrap_or(kind))
    };
    board.or(double).or_else(coated).or(last)
}

/// The grain along or across the spine; long and short depend on the sheet and say neither.
pub(super) fn grain(words: &[String]) -> Grain {
    let one_of = |list: &[&str]| words.iter().any(|word| list.contains(&word.as_str()));
    match one_of(&["grain", "spine", "laufrichtung", "rücken"]) {
        true if one_of(&ALONG) => Grain::AlongSpine,
        true if one_of(&ACROSS) => Grain::AcrossSpine,
        _ => Grain::Unknown,
    }
}

/// Whether a text says that there is no paper of its own: nothing, "none", "self cover", "wie innen".
#[must_use]
pub fn no_paper(text: &str) -> bool {
    let first = text.split_whitespace().next().unwrap_or_default().to_lowercase();
    let none = NO_PAPER.contains(&first.as_str()) && !text.contains(|c: char| c.is_ascii_digit());
    first.is_empty() || none
}

/// Whether a word has a meaning in the description of a paper.
pub(super) fn known(word: &str) -> bool {
    describes(word)
        || FILLERS.contains(&word)
        || ACROSS.contains(&word)
        || unit_word(word).is_some()
}

/// Whether a word says what grade or kind a paper is.
pub(super) fn describes(word: &str) -> bool {
    let kind = |row: &StockKind| row.typed.contains(&word);
    grade_of(word).is_some() || STOCK_KINDS.iter().any(kind)
}

/// Whether a word is the beginning of one that has a meaning.
pub(super) fn begins(word: &str) -> bool {
    let lists: [&[&str]; 10] =
        [&GRAMMAGE, &POUNDS, &MICRONS, &MILS, &MILLIMETRES, &INCHES, &PPI, &BULK, &VOLUME, &LEAVES];
    lists.iter().any(|words| begins_one(word, words))
        || begins_one(word, &FILLERS)
        || BASIS_SIZES.iter().any(|row| begins_one(word, row.typed))
        || STOCK_KINDS.iter().any(|row| begins_one(word, row.typed))
}
