//! A list of titles: one row a book, each planned like any other book.
//!
//! A row that cannot be read keeps its place and says why. Nothing is allocated for a row beyond its
//! texts: job after job goes through the same plan.

mod heads;
mod list;

pub use list::{List, Place};

use crate::advise::Rooms;
use crate::draft::{Draft, FieldError};
use crate::job::{self, Job};
use crate::plan::{Plan, plan_into};
use crate::shop::Shop;
use crate::units::{Measure, Unit};
use crate::words::say;
use csv::StringRecord;
use heads::{Part, is_length};

/// One row of a list, answered.
#[derive(Debug)]
pub struct Title<'a> {
    /// Where it begins.
    pub place: Place,
    /// What was typed, by field.
    pub draft: &'a Draft,
    /// The book, or everything that is wrong with the row.
    pub answer: Result<Planned<'a>, Vec<FieldError>>,
}

/// A row's book.
#[derive(Debug, Clone, Copy)]
pub struct Planned<'a> {
    /// What it is.
    pub job: &'a Job,
    /// Its plan.
    pub plan: &'a Plan,
    /// Room for further pages, as the page's answer says it.
    pub room: crate::advise::Room,
}

/// Plans every row of a list in a shop, in order, and hands each over, as long as `each` says to go on.
/// `units` is what a bare length is counted in: "mm" or "in".
pub fn plan_list(list: &List, shop: &Shop, units: &str, each: impl FnMut(&Title) -> bool) {
    plan_behind(list, None, shop, units, each);
}

/// The same from the row behind a place on.
pub fn plan_behind(
    list: &List,
    behind: Option<Place>,
    shop: &Shop,
    units: &str,
    mut each: impl FnMut(&Title) -> bool,
) {
    let mut desk = Planner::default();
    list.rows(behind, |place, row| desk.plan(list, place, row, shop, units, &mut each));
}

/// Plans the row at a place once more.
pub fn plan_row<T>(
    list: &List,
    at: Place,
    shop: &Shop,
    units: &str,
    look: impl FnOnce(&Title) -> T,
) -> Option<T> {
    let (mut look, mut found) = (Some(look), None);
    Planner::default().plan(list, at, &list.row(at), shop, units, &mut |title| {
        found = look.take().map(|look| look(title));
        false
    });
    found
}

/// What one row after the other is planned on.
#[derive(Default)]
struct Planner {
    plan: Plan,
    rooms: Rooms,
}

impl Planner {
    fn plan(
        &mut self,
        list: &List,
        place: Place,
        row: &StringRecord,
        shop: &Shop,
        units: &str,
        each: &mut impl FnMut(&Title) -> bool,
    ) -> bool {
        let draft = typed(list, row, units);
        let read = match misshapen(list, row) {
            Some(fault) => Err(vec![fault]),
            None => read(&draft, shop),
        };
        let job;
        let answer = match read {
            Ok(found) => {
                job = found;
                plan_into(&mut self.plan, &job, shop);
                let room = self.rooms.room(&job, shop, &self.plan);
                Ok(Planned { job: &job, plan: &self.plan, room })
            }
            Err(errors) => Err(errors),
        };
        each(&Title { place, draft: &draft, answer })
    }
}

fn read(draft: &Draft, shop: &Shop) -> Result<Job, Vec<FieldError>> {
    let reading = job::read(draft, shop);
    match reading.job {
        Some(job) => Ok(job),
        None => Err(reading.errors(draft)),
    }
}

/// A row with more cells than heads: most likely a separator inside a text.
fn misshapen(list: &List, row: &StringRecord) -> Option<FieldError> {
    let beyond = row.iter().skip(list.heads.count).any(|cell| !cell.trim().is_empty());
    let count = |number: usize| Measure::new(number as f64, Unit::Count);
    beyond.then(|| {
        let wrong = say("titles.cells")
            .put("cells", count(row.len()))
            .put("heads", count(list.heads.count));
        FieldError::repaired("", row.get(list.heads.count).unwrap_or_default(), wrong)
    })
}

/// The row's cells as what a person would have typed.
fn typed(list: &List, row: &StringRecord, units: &str) -> Draft {
    let mut draft = Draft::default();
    draft.set("units", units);
    let (mut width, mut height) = (String::new(), String::new());
    for column in &list.heads.columns {
        let cell = row.get(column.place).unwrap_or_default().trim();
        // A dash is how people write nothing.
        if matches!(cell, "" | "-" | "–" | "—") {
            continue;
        }
        let bare = || cell.ends_with(|letter: char| letter.is_ascii_digit());
        let text = match column.unit {
            "" => cell.to_owned(),
            unit if is_length(column.part) && bare() => format!("{cell} {unit}"),
            _ => cell.to_owned(),
        };
        match column.part {
            Part::Field(id) => draft.set(id, &text),
            Part::Width => width = text,
            Part::Height => height = text,
        }
    }
    if draft.get("size").is_empty() && !(width.is_empty() && height.is_empty()) {
        draft.set("size", &format!("{width} x {height}"));
    }
    draft
}
