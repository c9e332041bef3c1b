//! How many pages, and whether there is a separate cover.

use super::Reading;
use super::number::Style;
use super::text::{Line, Token, begins_one, quoted};
use crate::units::{
    LEAVES_PER_SHEET, Leaves, Measure, PAGES_PER_LEAF, PAGES_PER_SHEET, Pages, Unit,
};
use crate::words::{Say, say};

/// The most inside pages that are planned.
const MOST: u32 = 2000;
/// Words for pages.
const PAGE_WORDS: [&str; 13] = [
    "pages",
    "page",
    "pp",
    "p",
    "pg",
    "pgs",
    "sides",
    "side",
    "seiten",
    "seite",
    "seitig",
    "inhaltsseiten",
    "umschlagseiten",
];
/// Words for leaves.
const LEAF_WORDS: [&str; 4] = ["leaves", "leaf", "blatt", "blätter"];
/// Words for folded sheets.
const SHEET_WORDS: [&str; 6] =
    ["sheets", "sheet", "bogen", "bögen", "doppelblatt", "doppelblätter"];
/// Words that add a cover.
const PLUS_WORDS: [&str; 9] =
    ["plus", "and", "with", "mit", "und", "separate", "zuzüglich", "zzgl", "eigenem"];
/// Words for a cover.
const COVER_WORDS: [&str; 4] = ["cover", "cvr", "cov", "umschlag"];
/// Words for a cover that is counted in.
const SELF_WORDS: [&str; 7] =
    ["self", "selfcover", "including", "incl", "inkl", "inklusive", "einschließlich"];
/// Words that add nothing.
const FILLERS: [&str; 9] =
    ["folded", "of", "text", "inside", "a", "inhalt", "innen", "gefalzt", "gefalzte"];

/// What was said about the cover.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cover {
    /// A separate cover of four pages comes on top: "60 + 4".
    Plus,
    /// The cover is counted in: "64 self cover".
    Counted,
    /// Nothing.
    Unsaid,
}

/// A page count as typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PageCount {
    /// Pages without a cover that was added; 1 to 2000, any number.
    pub inside: Pages,
    /// What was said about the cover.
    pub cover: Cover,
}

/// A page count as written, whatever the numbers may be.
pub(super) struct Written {
    inside: f64,
    /// Pages after the plus.
    plus: Option<f64>,
    cover: Cover,
    /// The text ends where more must follow: "60 +".
    open: bool,
    /// "pages", "+ 4" or another such word says that this is a page count.
    named: bool,
}

impl Written {
    /// It is a page count beyond doubt, and nothing is missing.
    pub(super) fn is_complete(&self) -> bool {
        self.named && !self.open
    }
}

fn is(token: Option<&Token>, words: &[&str]) -> bool {
    token.and_then(Token::word).is_some_and(|word| words.contains(&word))
}

/// Whether a piece is a word for pages.
pub(super) fn is_page_word(token: &Token) -> bool {
    is(Some(token), &PAGE_WORDS)
}

/// What the pieces of a text say.
pub(super) fn written(tokens: &[Token]) -> Option<Written> {
    let last = tokens.len();
    let mut tokens = tokens
        .iter()
        .enumerate()
        .filter(|(index, token)| match token {
            Token::Sign('(' | ')') => false,
            Token::Sign(',') => index + 1 == last,
            _ => true,
        })
        .map(|(_, token)| token)
        .peekable();
    let Some(Token::Number(number)) = tokens.next() else { return None };
    let (mut inside, mut named) = (number.value, false);
    tokens.next_if(|token| is(Some(token), &FILLERS));
    let next = tokens.peek().copied();
    let factor = [
        (1, PAGE_WORDS.as_slice()),
        (PAGES_PER_LEAF, LEAF_WORDS.as_slice()),
        (PAGES_PER_LEAF * LEAVES_PER_SHEET, SHEET_WORDS.as_slice()),
    ];
    if let Some((factor, _)) = factor.iter().find(|(_, words)| is(next, words)) {
        inside *= f64::from(*factor);
        named = true;
        tokens.next();
    }
    let mut written = Written { inside, plus: None, cover: Cover::Unsaid, open: false, named };
    let plus =
        |token: &&Token| matches!(token, Token::Sign('+' | '&')) || is(Some(token), &PLUS_WORDS);
    while let Some(token) = tokens.next() {
        let unsaid = written.cover == Cover::Unsaid;
        if is(Some(token), &SELF_WORDS) && (unsaid || written.open) {
            written.cover = Cover::Counted;
            written.open = !token.is("selfcover") && tokens.peek().is_none();
            tokens.next_if(|token| is(Some(token), &COVER_WORDS));
        } else if plus(&token) && unsaid {
            written.cover = Cover::Plus;
            while tokens.next_if(|token| plus(token) || is(Some(token), &FILLERS)).is_some() {}
            if let Some(Token::Number(number)) = tokens.peek() {
                written.plus = Some(number.value);
                tokens.next();
                tokens.next_if(|token| is(Some(token), &PAGE_WORDS));
            }
            tokens.next_if(|token| is(Some(token), &PLUS_WORDS));
            let cover = tokens.next_if(|token| is(Some(token), &COVER_WORDS)).is_some();
            written.open = !cover && written.plus.is_none();
        } else if is(Some(token), &FILLERS) {
            continue;
        } else {
            return None;
        }
        written.named = true;
    }
    Some(written)
}

/// Reads a page count: "64", "64pp", "60 + 4", "64 self cover", "16 leaves", "16 sheets" (folded,
/// four pages each). Any number of pages from 1 to 2000; blanks fill the last sheet.
///
/// # Errors
/// [`Reading::Wrong`] for anything else, for more pages, and for covers of other than 4 pages.
///
/// ```
/// use quirefit_input::{entry::{self, Cover}, units::Pages};
/// let count = entry::pages("60 + 4").value().unwrap();
/// assert_eq!((count.inside, count.cover), (Pages(60), Cover::Plus));
/// ```
#[must_use]
pub fn pages(text: &str) -> Reading<PageCount> {
    let line = match Line::of(text, Style::Counted) {
        Ok(line) => line,
        Err(reading) => return reading.into(),
    };
    match written(line.tokens()) {
        Some(written) if written.open => Reading::Incomplete,
        Some(written) => ranged(&written, text),
        None => unread(line.tokens(), text),
    }
}

fn unread(tokens: &[Token], text: &str) -> Reading<PageCount> {
    let all: [&[&str]; 7] =
        [&PAGE_WORDS, &LEAF_WORDS, &SHEET_WORDS, &PLUS_WORDS, &COVER_WORDS, &SELF_WORDS, &FILLERS];
    let begun = match tokens {
        [Token::Number(_), Token::Sign('.' | ',' | '\'' | '-')] => true,
        [Token::Number(_), .., Token::Word(last)] => {
            all.iter().any(|words| begins_one(last, words))
        }
        _ => false,
    };
    if begun {
        return Reading::Incomplete;
    }
    Reading::wrong(say("entry.pages.wrong").text("given", quoted(text)), say("entry.pages.example"))
}

fn ranged(written: &Written, text: &str) -> Reading<PageCount> {
    let most = Pages(MOST);
    if written.inside < 1.0 || written.inside > most.as_f64() {
        let given = Measure::new(written.inside, Unit::Pages);
        return Reading::wrong(
            say("entry.pages.outside").put("given", given),
            say("entry.pages.range").put("least", Pages(1)).put("most", most),
        );
    }
    if written.inside.fract() > 0.0 {
        return Reading::wrong(
            say("entry.pages.part").text("given", quoted(text)),
            say("entry.pages.example"),
        );
    }
    let inside = Pages(written.inside as u32);
    if let Some(plus) = written.plus.filter(|plus| *plus != f64::from(PAGES_PER_SHEET)) {
        let given = Measure::new(plus, Unit::Pages);
        let folded_out = plus > f64::from(PAGES_PER_SHEET);
        let key = if folded_out { "entry.pages.cover-large" } else { "entry.pages.cover-small" };
        return Reading::wrong(
            say(key).put("given", given),
            say("entry.pages.cover-repair").put("inside", inside),
        );
    }
    let count = PageCount { inside, cover: written.cover };
    Reading::Understood(count, pages_echo(count))
}

/// How a page count is understood: "15 pages → 16 pages, 1 blank, 4 folded sheets".
#[must_use]
pub fn pages_echo(count: PageCount) -> Say {
    let sheets = count.inside.sheets();
    let full = sheets.pages();
    let paged = |pages: Pages| say("entry.n-pages").count("n", pages);
    let filled = if count.inside.blanks() == Pages(0) {
        say("entry.pages.full").say("pages", paged(full)).say("leaves", leaves(full.leaves()))
    } else {
        say("entry.pages.blanks")
            .say("asked", paged(count.inside))
            .say("pages", paged(full))
            .say("blanks", say("entry.n-blanks").count("n", count.inside.blanks()))
    };
    let filled = filled.say("sheets", say("entry.n-sheets").count("n", sheets));
    match count.cover {
        Cover::Unsaid => filled,
        Cover::Counted => say("entry.pages.self").say("inside", filled),
        Cover::Plus => say("entry.pages.plus").say("inside", filled),
    }
}

fn leaves(leaves: Leaves) -> Say {
    say("entry.n-leaves").count("n", Measure::count(leaves.get()))
}
