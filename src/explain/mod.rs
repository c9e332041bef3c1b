//! Why a figure is what it is: formula, the numbers put in, the band, the source.
//!
//! Every figure is one row: its id, its name, its value. The formula is a pattern of the language
//! files, `explain.ID`, whose slots are the ids of other rows: whatever is worked out can be put into
//! any formula. Built when somebody asks, never while planning.

mod allowed;
mod dispatch;
mod folding;
mod found;
mod pressing;
mod row;
mod running;
mod stitching;

pub use allowed::{room_told, takes};
pub use found::finding;
pub use pressing::{offcut, why};
pub use row::{Case, Figure};

use crate::source::Source;
use crate::words::{Ask, Say, Slot, say};

/// The explanation of one figure.
#[derive(Debug, Clone, PartialEq)]
pub struct Explanation {
    /// What the figure is called.
    pub name: Say,
    /// The formula with its numbers, line by line; the last ends in the figure.
    pub lines: Vec<Say>,
    /// Why it is in doubt, where it is.
    pub doubt: Option<Say>,
    /// Where the formula comes from.
    pub source: Source,
}

/// Every row: figures that can be asked about, and terms that only stand in formulas.
pub fn rows() -> impl Iterator<Item = &'static Figure> {
    [folding::ROWS, stitching::ROWS, running::ROWS, pressing::ROWS, dispatch::ROWS, allowed::ROWS]
        .into_iter()
        .flatten()
}

/// The figure of an id, if it can be asked about.
#[must_use]
pub fn figure(id: &str) -> Option<&'static Figure> {
    rows().find(|row| row.id == id && !row.name.is_empty())
}

/// Figures of the whole book, which are not one row of a table of many.
pub fn figures() -> impl Iterator<Item = &'static Figure> {
    rows().filter(|row| !row.name.is_empty() && !row.only_rows)
}

/// What a client may ask about beside the book itself. All else is the shop's: what its line takes, how
/// fast it runs, what it reckons with.
const TOLD: [&str; 9] = [
    "room",
    "offer_spine",
    "offer_room",
    "copy_mass",
    "run_mass",
    "carton_copies",
    "cartons",
    "carton_last",
    "price",
];

/// A figure of the book itself, or one that is told with it.
fn told_to_client(figure: &Figure) -> bool {
    let of_the_book = || folding::ROWS.iter().any(|row| row.id == figure.id);
    !figure.maker && (TOLD.contains(&figure.id) || of_the_book())
}

/// The explanation of a figure of the plan; nothing for an unknown id, or where the book has no such
/// figure. A client is told what a figure is, never what the line takes.
#[must_use]
pub fn explain(case: &Case, id: &str) -> Option<Explanation> {
    let figure = figure(id).filter(|figure| !case.client || told_to_client(figure))?;
    let value = (figure.value)(case)?;
    let kept = figure.kept && case.client;
    let mut lines = Vec::new();
    match figure.lines {
        _ if kept => lines.push(say("explain.kept")),
        Some(told) => told(case, &mut lines),
        None => lines.push(say(format!("explain.{id}"))),
    }
    let doubt = (!figure.doubt.is_empty() && !kept).then(|| say(figure.doubt));
    let mut terms = vec![("value", value)];
    terms.extend(rows().filter_map(|row| Some((row.id, (row.value)(case)?))));
    let fill = |mut line: Say| {
        line.slots.extend(terms.iter().cloned());
        line
    };
    let name = match figure.of {
        Some(of) if case.at > 0 => {
            say("explain.of").say("of", of(case)).say("name", say(figure.name))
        }
        _ => say(figure.name),
    };
    Some(Explanation {
        name,
        lines: lines.into_iter().map(fill).collect(),
        doubt: doubt.map(fill),
        source: (figure.source)(case),
    })
}

impl Case<'_> {
    /// The value of a figure as a slot that can be asked, of one row of its table where `at` is not 0.
    #[must_use]
    pub fn ask(&self, id: &'static str, at: usize) -> Option<Slot> {
        let figure = figure(id).filter(|figure| !self.client || told_to_client(figure))?;
        let value = (figure.value)(&Self { at, ..*self })?;
        Some(Slot::Asked(Ask { figure: id, at }, Box::new(value)))
    }
    /// Puts figures into the slots of a sentence: slot, figure, row of its table.
    #[must_use]
    pub fn fill(&self, mut sentence: Say, slots: &[(&'static str, &'static str, usize)]) -> Say {
        for (slot, id, at) in slots {
            if let Some(value) = self.ask(id, *at) {
                sentence.slots.push((slot, value));
            }
        }
        sentence
    }
}
