//! A sentence before it is put into a language: a key and the values of its slots.

use crate::units::{Band, Measure, Unit};

/// What is asked when a figure is tapped.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ask {
    /// The figure's id.
    pub figure: &'static str,
    /// Row of the table it stands in, from 1; 0 where it stands for the whole book.
    pub at: usize,
}

/// A value for one slot of a sentence.
#[derive(Debug, Clone, PartialEq)]
pub enum Slot {
    /// One value.
    Value(Measure),
    /// A value with its doubt.
    Doubtful(Band<f64>, Unit),
    /// A figure of the plan that explains itself when asked, and its value.
    Asked(Ask, Box<Slot>),
    /// Text from outside, printed as it is.
    Text(String),
    /// Text as a person types it, or a name that the program gave: printed in the reader's words.
    Typed(String),
    /// A further sentence or word.
    Say(Box<Say>),
}

/// A key of the language files and the values to put into its pattern.
#[derive(Debug, Clone, PartialEq)]
pub struct Say {
    /// The key, such as `answer.fits`.
    pub key: String,
    /// Slot names of the pattern and their values.
    pub slots: Vec<(&'static str, Slot)>,
    /// The number that decides between one and many, when the wording depends on it.
    pub number: Option<f64>,
}

/// Starts a sentence.
///
/// ```
/// use quirefit_input::units::Sheets;
/// use quirefit_input::words::say;
/// let room = say("room.sheets").count("n", Sheets(12));
/// assert_eq!(room.key, "room.sheets");
/// ```
#[must_use]
pub fn say(key: impl Into<String>) -> Say {
    Say { key: key.into(), slots: Vec::new(), number: None }
}

impl Say {
    /// Puts one value into a slot.
    #[must_use]
    pub fn put(mut self, slot: &'static str, value: impl Into<Measure>) -> Self {
        self.slots.push((slot, Slot::Value(value.into())));
        self
    }
    /// Puts a value in that also decides between one and many.
    #[must_use]
    pub fn count(mut self, slot: &'static str, value: impl Into<Measure>) -> Self {
        let measure = value.into();
        self.number = Some(measure.value);
        self.put(slot, measure)
    }
    /// Puts a value with its doubt into a slot.
    #[must_use]
    pub fn band<T: Copy + Into<Measure>>(mut self, slot: &'static str, band: Band<T>) -> Self {
        let unit = band.nominal.into().unit;
        self.slots.push((slot, Slot::Doubtful(band.map(|value| value.into().value), unit)));
        self
    }
    /// Puts outside text into a slot.
    #[must_use]
    pub fn text(mut self, slot: &'static str, text: impl Into<String>) -> Self {
        self.slots.push((slot, Slot::Text(text.into())));
        self
    }
    /// Puts text in that the reader could type.
    #[must_use]
    pub fn typed(mut self, slot: &'static str, text: impl Into<String>) -> Self {
        self.slots.push((slot, Slot::Typed(text.into())));
        self
    }
    /// Puts another sentence or word into a slot.
    #[must_use]
    pub fn say(mut self, slot: &'static str, inner: Say) -> Self {
        self.slots.push((slot, Slot::Say(Box::new(inner))));
        self
    }
    /// The value of a slot, if the sentence has it.
    #[must_use]
    pub fn slot(&self, name: &str) -> Option<&Slot> {
        self.slots.iter().find(|(slot, _)| *slot == name).map(|(_, value)| value)
    }
}

impl Say {
    /// The words for where a figure comes from.
    #[must_use]
    pub fn source(source: crate::source::Source) -> Self {
        use crate::source::Source;
        match source {
            Source::Measured => say("source.measured"),
            Source::Mill => say("source.mill"),
            Source::Shop => say("source.shop"),
            Source::Job => say("source.job"),
            // What has no title of its own is described by a key; a title is printed as it is.
            Source::Published { title, year: 0 } => say("source.title").say("title", say(title)),
            Source::Published { title, year } => {
                say("source.published").say("title", say(title)).text("year", year.to_string())
            }
            Source::Derived => say("source.derived"),
            Source::Practice => say("source.practice"),
            Source::Memory => say("source.memory"),
            Source::Invented => say("source.invented"),
        }
    }
}
