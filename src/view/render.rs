//! Sentences put into a language: patterns filled with printed values, as text or as HTML.

use super::Numbers;
use crate::units::{Measure, Unit};
use crate::words::{Part, Say, Slot, Words, parts};
use maud::{Markup, PreEscaped, html};

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
        let plain = |letter: char| match letter.to_ascii_lowercase() {
            letter if letter.is_ascii_alphanumeric() => letter,
            _ => '-',
        };
        if let Some(whole) = self.own_word(&text.chars().map(plain).collect::<String>()) {
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
                            Some(Slot::Figure(id, band, unit)) => {
                                (self.figure(id, band.nominal, *unit))
                                @if let Some(range) = self.numbers.range(*band, *unit) {
                                    " " span class="band" { "(" (range) ")" }
                                }
                            }
                            Some(Slot::Say(inner)) => (self.html(inner)),
                            Some(slot) => (self.slot(slot)),
                            None => (name),
                        }
                    }
                }
            }
        }
    }

    /// A figure as a button that asks for its explanation.
    #[must_use]
    pub fn figure(&self, id: &str, value: f64, unit: Unit) -> Markup {
        self.figure_at(&format!("figure-{id}"), id, value, unit)
    }

    /// The same under an element id of its own, where the figure stands a second time.
    #[must_use]
    pub fn figure_at(&self, element: &str, id: &str, value: f64, unit: Unit) -> Markup {
        html! {
            button type="button" class="figure" id=(element) data-act="explain" data-value=(id) {
                (self.quantity(Measure::new(value, unit)))
            }
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
            Slot::Doubtful(band, unit) | Slot::Figure(_, band, unit) => {
                self.numbers.band(*band, *unit)
            }
            Slot::Text(text) => text.clone(),
            Slot::Typed(text) => self.typed(text),
            Slot::Say(inner) => self.text(inner),
        }
    }
}
