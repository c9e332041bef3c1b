//! The four answers a reader of typed text can give.

use crate::words::Say;

/// What came of reading one typed text.
#[derive(Debug, Clone, PartialEq)]
pub enum Reading<T> {
    /// It was understood, and this is how: the echo that stands beside the field.
    Understood(T, Say),
    /// The beginning of something; more typing may complete it. No fault while somebody types.
    Incomplete,
    /// It can mean two things: a question with ready answers.
    Ask(Question),
    /// It cannot be right.
    Wrong(Fault),
}

/// A question about what was typed.
#[derive(Debug, Clone, PartialEq)]
pub struct Question {
    /// The question.
    pub ask: Say,
    /// Its answers.
    pub choices: Vec<Choice>,
}

/// One ready answer: what to show, and the text that replaces what was typed.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// Words on the button.
    pub label: Say,
    /// The text that takes the place of what was typed.
    pub typed: String,
}

/// Why a text cannot be right and how to mend it.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// What is wrong with it.
    pub wrong: Say,
    /// What to type instead.
    pub repair: Say,
}

impl<T> Reading<T> {
    /// It cannot be right: what is wrong, and what to type instead.
    #[must_use]
    pub fn wrong(wrong: Say, repair: Say) -> Self {
        Self::Wrong(Fault { wrong, repair })
    }
    /// The same reading with its value turned into another.
    pub fn map<U>(self, f: impl FnOnce(T) -> U) -> Reading<U> {
        match self {
            Self::Understood(value, echo) => Reading::Understood(f(value), echo),
            Self::Incomplete => Reading::Incomplete,
            Self::Ask(question) => Reading::Ask(question),
            Self::Wrong(fault) => Reading::Wrong(fault),
        }
    }
    /// The value, where there is one.
    pub fn value(self) -> Option<T> {
        match self {
            Self::Understood(value, _) => Some(value),
            _ => None,
        }
    }
}
