//! Sentences put into a language: patterns filled with printed values, as text or as HTML.

use super::Numbers;
use crate::units::Measure;
use crate::words::{Part, Say, Slot, Words, parts};
use maud::{Markup, PreEscaped, html};
use std::collections::BTreeMap;

/// What the id of every figure that can be asked begins with.
const ASKED: &str = "ask-";

/// Gives the figures in a piece of HTML ids of their own: the figure, its row, and the element they
/// stand in; where one stands there twice, a number as well.
#[must_use]
pub fn placed(html: &str, place: &str) -> String {
    let mark = format!(" id=\"{ASKED}");
    let mut seen: BTreeMap<&str, u32> = BTreeMap::new();
    let mut pieces = html.split(&mark);
    let mut out = pieces.next().unwrap_or_default().to_owned();
    for piece in pieces {
        let (ask, rest) = piece.split_once('"').unwrap_or((piece, ""));
        let times = seen.entry(ask).or_default();
        *times += 1;
        out.extend([&mark, ask, "-", place]);
        if *times > 1 {
            out.push_str(&format!("-{times}"));
        }
        out.extend(["\"", rest]);
    }
    out
}

/// The figure and the row that the element of an id asks about.
#[must_use]
pub fn ask_of(element: &str) -> Option<(&str, usize)> {
    let (figure, rest) = element.strip_prefix(ASKED)?.split_once('-')?;
    let at = rest.split('-').next()?;
    Some((figure, at.parse().ok()?))
}

/// Prints sentences in one language for one person.
#[derive(Debug, Clone, Copy)]
pub struct Printer<'a> {
    /// The language.
    pub words: &'a Words,
    /// How numbers look.
    pub numbers: Numbers,
}

impl Printer<'_> {
    /// A sentence as plain text.
    #[must_use]
    pub fn text(&self, sentence: &Say) -> String {
        let mut out = String::new();
        for part in parts(self.pattern(sentence)) {
            match part {
                Part::Text(text) => out.push_str(text),
                Part::Slot(name) => match sentence.slot(name) {
                    Some(slot) => out.push_str(&self.slot(slot)),
                    None => out.push_str(name),
                },
            }
        }
        out
    }

    /// A word or sentence without slots.
    #[must_use]
    pub fn word(&self, key: &str) -> &str {
        self.words.plain(key)
    }

    /// A text of the program's own that can be typed, in the reader's words: a whole name where the
    /// language has one for it, else word by word, with the language's decimal sign. It is read as
    /// the same.
    #[must_use]
    pub fn typed(&self, text: &str) -> String {
        if let Some(whole) = self.whole(text) {
            return whole.to_owned();
        }
        let number =
            |word: &str| word.bytes().all(|letter| letter.is_ascii_digit() || letter == b'.');
        let (decimal, _) = self.numbers.mark.signs();
        let mut out = String::new();
        for word in text.split(' ') {
            if !out.is_empty() {
                out.push(' ');
            }
            match self.own_word(word) {
                Some(own) => out.push_str(own),
                None if number(word) => out.extend(
                    word.chars().map(|letter| if letter == '.' { decimal } else { letter }),
                ),
                None => out.push_str(word),
            }
        }
        out
    }

    /// A name or sentence of the program's own in the reader's words; what somebody else wrote stays.
    #[must_use]
    pub fn named<'t>(&'t self, text: &'t str) -> &'t str {
        self.whole(text).unwrap_or(text)
    }

    fn whole(&self, text: &str) -> Option<&str> {
        let plain = |letter: char| match letter.to_ascii_lowercase() {
            letter if letter.is_ascii_alphanumeric() => letter,
            _ => '-',
        };
        self.own_word(&text.chars().map(plain).collect::<String>())
    }

    fn own_word(&self, text: &str) -> Option<&str> {
        self.words.pattern(&format!("typed.{text}"), None)
    }

    /// A sentence as HTML: figures become buttons that explain themselves, everything else is
    /// escaped text.
    #[must_use]
    pub fn html(&self, sentence: &Say) -> Markup {
        html! {
            @for part in parts(self.pattern(sentence)) {
                @match part {
                    Part::Text(text) => (text),
                    Part::Slot(name) => {
                        @match sentence.slot(name) {
                            Some(slot @ Slot::Asked(..)) => (self.slot_html(slot)),
                            Some(Slot::Say(inner)) => (self.html(inner)),
                            Some(slot) => (self.slot(slot)),
                            None => (name),
                        }
                    }
                }
            }
        }
    }

    /// The value of a slot; a figure as a button that asks for its explanation, its doubt behind it.
    /// Where it stands is added to its id by [`placed`].
    #[must_use]
    pub fn slot_html(&self, slot: &Slot) -> Markup {
        let Slot::Asked(ask, value) = slot else { return html! { (self.slot(slot)) } };
        let (shown, range) = match &**value {
            Slot::Value(measure) => (self.quantity(*measure), None),
            Slot::Doubtful(band, unit) => {
                let nominal = self.quantity(Measure::new(band.nominal, *unit));
                (nominal, self.numbers.range(*band, *unit))
            }
            other => (html! { (self.slot(other)) }, None),
        };
        html! {
            button type="button" class="figure" id=(format!("{ASKED}{}-{}", ask.figure, ask.at))
                data-act="explain" { (shown) }
            @if let Some(range) = range { " " span class="band" { "(" (range) ")" } }
        }
    }

    /// A number with its unit set smaller.
    #[must_use]
    pub fn quantity(&self, measure: Measure) -> Markup {
        let (number, unit) = self.numbers.split(measure);
        html! {
            span class="number" { (number) }
            @if !unit.is_empty() { (PreEscaped("&nbsp;")) span class="unit" { (unit) } }
        }
    }

    fn pattern<'w>(&'w self, sentence: &'w Say) -> &'w str {
        self.words.pattern(&sentence.key, sentence.number).unwrap_or(&sentence.key)
    }

    fn slot(&self, slot: &Slot) -> String {
        match slot {
            Slot::Value(measure) => self.numbers.print(*measure),
            Slot::Doubtful(band, unit) => self.numbers.band(*band, *unit),
            Slot::Asked(_, value) => self.slot(value),
            Slot::Text(text) => text.clone(),
            Slot::Typed(text) => self.typed(text),
            Slot::Say(inner) => self.text(inner),
        }
    }
}
