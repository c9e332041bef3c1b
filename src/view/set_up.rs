//! What is set on the line, in its order, and what is looked at on the first book: the rows that the
//! page, the job card and the terminal print.

use super::Printer;
use super::html::run::role;
use crate::explain::Case;
use crate::units::Measure;
use crate::words::{Say, say};
use std::collections::BTreeSet;

/// One thing to set or to look at.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// What it is.
    pub label: Say,
    /// The figure, where there is one.
    pub value: Option<Say>,
    /// What to mind.
    pub note: Option<Say>,
}

impl Row {
    fn new(label: Say) -> Self {
        Self { label, value: None, note: None }
    }

    /// A row whose value is one figure.
    fn figure(case: &Case, key: &str, id: &'static str, at: usize) -> Self {
        Self::new(say(key)).value(case.fill(say("setup.value"), &[("value", id, at)]))
    }

    fn value(self, value: Say) -> Self {
        Self { value: Some(value), ..self }
    }

    fn note(self, note: Say) -> Self {
        Self { note: Some(note), ..self }
    }

    /// The row in one line of text.
    #[must_use]
    pub fn text(&self, printer: &Printer) -> String {
        let mut line = printer.text(&self.label);
        for (between, part) in [(": ", &self.value), ("; ", &self.note)] {
            if let Some(part) = part {
                line.extend([between, &printer.text(part)]);
            }
        }
        line
    }
}

/// The operator's values, in the order of the line.
#[must_use]
pub fn settings(case: &Case) -> Vec<Row> {
    let results = &case.plan.results;
    let mut list = vec![sheet(case), Row::figure(case, "setup.sheets", "set_sheets", 0)];
    list.extend(results.run.quantities.components.iter().enumerate().map(|(index, component)| {
        let at = index + 1;
        let told = say("setup.component").say("role", say(role(case.job, component.section)));
        let mut value = say("setup.component.value");
        value.number = Some(f64::from(component.sheets));
        let slots = [("leaf", "leaf_one", at), ("two", "leaf_two", at)];
        Row::new(told)
            .value(case.fill(value, &[("sheets", "part_sheets", at)]))
            .note(case.fill(say("setup.component.note"), &slots))
    }));
    if case.job.sections.len() > 1 {
        list.push(Row::new(say("setup.order")).note(say("setup.order.note")));
    }
    list.push(Row::figure(case, "setup.head-gap", "flat_stack", 0));
    list.extend(stitches(case));
    list.push(
        Row::figure(case, "setup.wire", "wire", 0)
            .note(case.fill(say("setup.wire.note"), &[("leg", "leg", 0), ("draw", "draw", 0)])),
    );
    list.push(
        Row::figure(case, "setup.fold", "fold_at", 0)
            .note(say("setup.fold.note").put("tolerance", case.job.tolerance)),
    );
    list.push(Row::figure(case, "setup.nip", "spine", 0));
    list.push(match results.run.set_up.former {
        Some(_) => Row::figure(case, "setup.former", "spine", 0),
        None => Row::new(say("setup.former")).note(say("setup.former.off")),
    });
    list.push(Row::figure(case, "setup.knife", "knife_spine", 0).note(case.fill(
        say("setup.knife.note"),
        &[("face", "knife_face", 0), ("cut", "face_cut", 0), ("innermost", "innermost_chip", 0)],
    )));
    list.push(Row::figure(case, "setup.clamp", "spine", 0));
    if results.run.set_up.pile.is_some() {
        list.push(
            Row::new(say("setup.pile"))
                .value(case.fill(say("setup.pile.value"), &[("copies", "pile", 0)]))
                .note(case.fill(say("setup.pile.note"), &[("height", "pile_height", 0)])),
        );
    }
    list
}

/// The sheet as it travels, and which of its edges lies at the stop.
fn sheet(case: &Case) -> Row {
    let line = case.shop.lines.get(case.job.line);
    let at_foot = line.is_some_and(|line| line.stitching.lay_at_foot);
    let edge = say(if at_foot { "setup.foot" } else { "setup.head" });
    let slots = [("width", "flat_width", 0), ("height", "travel", 0)];
    Row::new(say("setup.sheet"))
        .value(case.fill(say("setup.sheet.value"), &slots))
        .note(say("setup.sheet.note").say("edge", edge))
}

/// Where the heads stand, and how the set moves on between passes.
fn stitches(case: &Case) -> Vec<Row> {
    let placement = &case.plan.results.stitches.placement;
    let first = placement.stitches.iter().enumerate().filter(|(_, stitch)| stitch.pass == 1);
    let heads = first.map(|(index, stitch)| {
        let at = index + 1;
        let slots = [("from_head", "from_head", at), ("from_foot", "from_foot", at)];
        Row::new(say("setup.stitch").put("head", Measure::count(stitch.head)))
            .value(case.fill(say("setup.value"), &[("value", "from_stop", at)]))
            .note(case.fill(say("setup.stitch.note"), &slots))
    });
    let moves = placement.moves().enumerate().map(|(index, to)| {
        let at = index + 1;
        Row::new(say("setup.pass").put("pass", Measure::count(to.pass)))
            .value(case.fill(say("setup.value"), &[("value", "pass_step", at)]))
            .note(case.fill(say("setup.pass.note"), &[("shift", "pass_shift", at)]))
    });
    heads.chain(moves).collect()
}

/// What to look at on the first book and after the first stop.
#[must_use]
pub fn first_book(case: &Case) -> Vec<Row> {
    let job = case.job;
    let size = |key: &str, value: crate::units::Mm| {
        let within = say("setup.first.within");
        Row::new(say(key)).value(within.put("value", value).put("tolerance", job.tolerance))
    };
    let to =
        |key: &str| Row::new(say(key)).value(say("setup.first.to").put("tolerance", job.tolerance));
    vec![
        Row::new(say("setup.first.order")).note(say("setup.first.order.note")),
        Row::figure(case, "setup.first.spine", "spine", 0),
        size("setup.first.width", job.size.width),
        size("setup.first.height", job.size.height),
        to("setup.first.square"),
        to("setup.first.stitch"),
        Row::new(say("setup.first.legs")).note(say("setup.first.legs.note")),
        Row::figure(case, "setup.first.push-out", "push_out", 0)
            .note(say("setup.first.push-out.note")),
    ]
}

/// The lines that have been ticked off, as they read when they were: a line whose figure has changed
/// since is to be looked at again.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Ticks {
    lines: BTreeSet<String>,
}

impl Ticks {
    /// Lines that were ticked earlier.
    #[must_use]
    pub fn of(lines: impl IntoIterator<Item = String>) -> Self {
        let mut ticks = Self::default();
        ticks.lines.extend(lines);
        ticks
    }
    /// Whether this line is ticked.
    #[must_use]
    pub fn has(&self, line: &str) -> bool {
        self.lines.contains(line)
    }
    /// Ticks a line, or takes its tick away.
    pub fn set(&mut self, line: String, ticked: bool) {
        if ticked {
            self.lines.insert(line);
        } else {
            self.lines.remove(&line);
        }
    }
    /// All of them.
    pub fn all(&self) -> impl Iterator<Item = &String> {
        self.lines.iter()
    }
}

/// Every row by the name of its box.
#[must_use]
pub fn boxes(case: &Case) -> [Vec<(String, Row)>; 2] {
    let named = |kind: &str, rows: Vec<Row>| {
        let rows = rows.into_iter().enumerate();
        rows.map(|(at, row)| (format!("{TICK}{kind}-{at}"), row)).collect()
    };
    [named("set", settings(case)), named("first", first_book(case))]
}

/// What the name of every box begins with.
pub const TICK: &str = "tick-";
