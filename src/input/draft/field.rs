//! Rows that say which fields there are: one row an input, with its kind, range and default.

use crate::entry::{self, Fault, LengthUnit, PageCount, Reading};
use crate::paper::Stock;
use crate::units::{Copies, Gram, Measure, Mm, Size, Unit};
use crate::words::{Say, say};

/// What a field holds and how it is read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kind {
    /// A page count: "64", "60 + 4", "16 leaves".
    Pages,
    /// A finished size: "A5", "8.5 x 11 in".
    Size,
    /// A paper: "100# text", "130 silk 0.106 mm".
    Paper,
    /// A number of copies.
    Copies,
    /// A length between two, in millimetres.
    Length(f64, f64),
    /// A mass between two, in grams.
    Mass(f64, f64),
    /// A time of day: "8:30".
    Clock,
    /// A plain number between two, counted in a unit.
    Number(f64, f64, Unit),
    /// One of these words.
    Choice(&'static [&'static str]),
    /// Any text up to so many characters.
    Text(usize),
}

impl Kind {
    /// What can be typed, for whoever has typed a part of it.
    #[must_use]
    pub fn example(self) -> Say {
        let between = |key: &str, least: Measure, most: Measure| {
            say(key).put("least", least).put("most", most)
        };
        match self {
            Self::Pages => say("entry.pages.example"),
            Self::Size => say("entry.size.example"),
            Self::Paper => say("entry.paper.example"),
            Self::Copies => say("entry.copies.example"),
            Self::Length(..) => say("entry.length.example"),
            Self::Mass(least, most) => {
                between("entry.mass.range", Gram(least).into(), Gram(most).into())
            }
            Self::Clock => say("entry.clock.example"),
            Self::Number(least, most, unit) => {
                between("entry.number.repair", Measure::new(least, unit), Measure::new(most, unit))
            }
            Self::Choice(words) => say("entry.choice.repair").text("options", words.join(" · ")),
            Self::Text(_) => say("file.unclear.repair"),
        }
    }
}

/// Where a field stands in the form.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// In sight, in the order of a conversation.
    Main,
    /// Behind the disclosure of this name.
    More(&'static str),
    /// Not in the form: a setting of the page that travels with the job.
    Setting,
}

/// One input: the only place that knows its range and default. Its label and help are
/// `field.ID.label` and `field.ID.help` of the language files.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Field {
    /// Its name in paths, files and language keys.
    pub id: &'static str,
    /// What it holds.
    pub kind: Kind,
    /// Where it stands.
    pub group: Group,
    /// What counts when nothing is typed; empty when nothing does.
    pub default: &'static str,
}

/// The fields of one kind of file.
#[derive(Debug, Clone, Copy)]
pub struct Schema {
    /// The format's name, written into the file.
    pub format: &'static str,
    /// The format's version, written into the file.
    pub version: u32,
    /// Single fields.
    pub fields: &'static [Field],
    /// Repeated groups: name and the fields of a member.
    pub groups: &'static [(&'static str, &'static [Field])],
}

impl Schema {
    /// The row of a path, single or in a group.
    #[must_use]
    pub fn field(&self, path: &str) -> Option<&'static Field> {
        let mut pieces = path.split('.');
        let (first, member) = (pieces.next()?, pieces.nth(1));
        let rows = match member {
            None => self.fields,
            Some(_) => self.groups.iter().find(|(name, _)| *name == first)?.1,
        };
        rows.iter().find(|field| field.id == member.unwrap_or(first))
    }
}

/// A field's text, understood.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// A page count.
    Pages(PageCount),
    /// A size.
    Size(Size),
    /// A paper.
    Paper(Stock),
    /// Copies.
    Copies(Copies),
    /// A number in its unit's inside form.
    Number(f64),
    /// A word of the list.
    Choice(&'static str),
    /// Text.
    Text(String),
}

/// Reads one text as its row says. `unit` is what a bare length is counted in.
#[must_use]
pub fn read_text(kind: Kind, text: &str, unit: LengthUnit) -> Reading<Value> {
    match kind {
        Kind::Pages => entry::pages(text).map(Value::Pages),
        Kind::Size => entry::size(text, unit).map(Value::Size),
        Kind::Paper => entry::paper(text, unit).map(Value::Paper),
        Kind::Copies => entry::copies(text).map(Value::Copies),
        Kind::Length(least, most) => {
            entry::length(text, unit, Mm(least), Mm(most)).map(|length| Value::Number(length.get()))
        }
        Kind::Mass(least, most) => {
            entry::mass(text, Gram(least), Gram(most)).map(|mass| Value::Number(mass.get()))
        }
        Kind::Clock => entry::clock(text).map(|time| Value::Number(time.get())),
        Kind::Number(least, most, unit) => plain_number(text, least, most, unit),
        Kind::Choice(options) => entry::choice(text, options).map(Value::Choice),
        Kind::Text(most) => short_text(text, most),
    }
}

fn plain_number(text: &str, least: f64, most: f64, unit: Unit) -> Reading<Value> {
    let allowed = |wrong: &str| {
        let repair = Kind::Number(least, most, unit).example();
        Reading::Wrong(Fault { wrong: say(wrong).text("given", text), repair })
    };
    let counted = matches!(unit, Unit::Pages | Unit::Sheets | Unit::Copies | Unit::Count);
    match if counted { entry::count(text) } else { entry::number(text) } {
        Reading::Understood(number, _) if number < least || number > most => {
            allowed("entry.number.outside")
        }
        Reading::Understood(number, _) if counted && number.fract() != 0.0 => {
            allowed("entry.number.part")
        }
        Reading::Understood(number, _) => Reading::Understood(
            Value::Number(number),
            say("entry.number.echo").put("value", Measure::new(number, unit)),
        ),
        Reading::Incomplete => Reading::Incomplete,
        Reading::Ask(question) => Reading::Ask(question),
        Reading::Wrong(_) => allowed("entry.number.wrong"),
    }
}

fn short_text(text: &str, most: usize) -> Reading<Value> {
    let length = text.chars().count();
    if length > most {
        return Reading::Wrong(Fault {
            wrong: say("entry.text.long").put("given", Measure::new(length as f64, Unit::Count)),
            repair: say("entry.text.repair").put("most", Measure::new(most as f64, Unit::Count)),
        });
    }
    Reading::Understood(Value::Text(text.to_owned()), say("entry.text.echo"))
}
