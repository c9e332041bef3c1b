//! One row of the tables of figures, and what its value is taken from.

use crate::advise::Advice;
use crate::data::Line;
use crate::job::{Job, Section};
use crate::plan::{Component, Item, Leaf, LimitCheck, Plan, Run, Stitch, Stop, Supply, Way};
use crate::shop::Shop;
use crate::source::Source;
use crate::units::{Band, Copies, Gram, Measure, Mm, Money, Pages, Second, Unit};
use crate::words::{Say, Slot};

/// What is asked about: a plan in its shop, for one reader, and which row of a table.
#[derive(Debug, Clone, Copy)]
pub struct Case<'a> {
    /// The job.
    pub job: &'a Job,
    /// The shop.
    pub shop: &'a Shop,
    /// The plan.
    pub plan: &'a Plan,
    /// What can be said beyond the plan, where it is known.
    pub advice: Option<&'a Advice>,
    /// A client reads.
    pub client: bool,
    /// Row of a table, from 1; 0 stands for the whole book, its innermost leaf, its chosen sheet.
    pub at: usize,
}

/// A figure's value, where the book has it.
pub(super) type Value = Option<Slot>;

/// One figure.
#[derive(Debug)]
pub struct Figure {
    /// Its id, which is its slot in every formula.
    pub id: &'static str,
    /// Key of its name; empty for terms that are not asked about.
    pub name: &'static str,
    /// What it comes to.
    pub value: fn(&Case) -> Value,
    /// The lines of its explanation; without it one, `explain.ID`.
    pub(super) lines: Option<fn(&Case, &mut Vec<Say>)>,
    /// Key of what its doubt is.
    pub(super) doubt: &'static str,
    /// Where it comes from.
    pub(super) source: fn(&Case) -> Source,
    /// What the row of its table is called.
    pub(super) of: Option<fn(&Case) -> Say>,
    /// It stands only in a table.
    pub only_rows: bool,
    /// It is what the line takes, or the operator's: a client does not read it.
    pub(super) maker: bool,
    /// Its formula names what the line takes: not for a client's eyes.
    pub(super) kept: bool,
}

/// A figure that follows from geometry.
pub(super) const fn figure(
    id: &'static str,
    name: &'static str,
    value: fn(&Case) -> Value,
) -> Figure {
    Figure {
        id,
        name,
        value,
        lines: None,
        doubt: "",
        source: |_| Source::Derived,
        of: None,
        only_rows: false,
        maker: false,
        kept: false,
    }
}

/// A term that only stands in formulas.
pub(super) const fn term(id: &'static str, value: fn(&Case) -> Value) -> Figure {
    figure(id, "", value)
}

impl Figure {
    pub(super) const fn told(self, lines: fn(&Case, &mut Vec<Say>)) -> Self {
        Self { lines: Some(lines), ..self }
    }
    pub(super) const fn doubt(self, doubt: &'static str) -> Self {
        Self { doubt, ..self }
    }
    pub(super) const fn from(self, source: fn(&Case) -> Source) -> Self {
        Self { source, ..self }
    }
    pub(super) const fn practice(self) -> Self {
        self.from(|_| Source::Practice)
    }
    pub(super) const fn shop(self) -> Self {
        self.from(|_| Source::Shop)
    }
    pub(super) const fn job(self) -> Self {
        self.from(|_| Source::Job)
    }
    /// The figure stands once for the whole book, and in each row of a table.
    pub(super) const fn of(self, of: fn(&Case) -> Say) -> Self {
        Self { of: Some(of), ..self }
    }
    /// The figure stands only in the rows of a table.
    pub(super) const fn rows(self, of: fn(&Case) -> Say) -> Self {
        Self { only_rows: true, ..self.of(of) }
    }
    pub(super) const fn maker(self) -> Self {
        Self { maker: true, ..self }
    }
    pub(super) const fn kept(self) -> Self {
        Self { kept: true, ..self }
    }
}

impl<'a> Case<'a> {
    /// A plan for whoever makes the book.
    #[must_use]
    pub const fn new(job: &'a Job, shop: &'a Shop, plan: &'a Plan) -> Self {
        Self { job, shop, plan, advice: None, client: false, at: 0 }
    }
    /// The index of the row, of whatever table.
    pub(super) const fn index(&self) -> usize {
        self.at.saturating_sub(1)
    }
    pub(super) fn line(&self) -> Option<&'a Line> {
        self.shop.lines.get(self.job.line)
    }
    /// The run, where it is said how many copies.
    pub(super) fn run(&self) -> Option<&'a Run> {
        self.job.copies.map(|_| &self.plan.results.run)
    }
    /// The leaf of the row; the innermost without one.
    pub(super) fn leaf(&self) -> Option<&'a Leaf> {
        let leaves = &self.plan.results.leaves;
        if self.at > 0 { leaves.get(self.index()) } else { leaves.last() }
    }
    /// The way of the row, by its place; the chosen one without a row.
    pub(super) fn way(&self) -> Option<&'a Way> {
        let layout = &self.plan.results.layout;
        if self.at > 0 { layout.way(self.index()) } else { layout.chosen() }
    }
    pub(super) fn limit(&self) -> Option<&'a LimitCheck> {
        self.plan.results.limits.get(self.index())
    }
    pub(super) fn section(&self) -> Option<&'a Section> {
        self.job.sections.get(self.index())
    }
    pub(super) fn component(&self) -> Option<&'a Component> {
        self.plan.results.run.quantities.components.get(self.index())
    }
    pub(super) fn stitch(&self) -> Option<&'a Stitch> {
        self.plan.results.stitches.placement.stitches.get(self.index())
    }
    pub(super) fn item(&self) -> Option<&'a Item> {
        self.plan.results.cost.lines.get(self.index())?.as_ref()
    }
    /// The stop of the supply of that number.
    pub(super) fn stop(&self) -> Option<&'a Stop> {
        let supply = *Supply::ALL.get(self.index())?;
        self.plan.results.run.stops().find(|stop| stop.supply == supply)
    }
}

const fn value(value: f64, unit: Unit) -> Value {
    Some(Slot::Value(Measure::new(value, unit)))
}

pub(super) const fn length(length: Mm) -> Value {
    value(length.get(), Unit::Length)
}
pub(super) const fn caliper(length: Mm) -> Value {
    value(length.get(), Unit::Caliper)
}
pub(super) const fn mass(mass: Gram) -> Value {
    value(mass.get(), Unit::Mass)
}
pub(super) const fn time(time: Second) -> Value {
    value(time.get(), Unit::Time)
}
pub(super) const fn money(amount: Money) -> Value {
    value(amount.get(), Unit::Money)
}
pub(super) const fn rate(amount: Money) -> Value {
    value(amount.get(), Unit::Rate)
}
pub(super) const fn number(number: f64) -> Value {
    value(number, Unit::Number)
}
pub(super) const fn whole(number: f64) -> Value {
    value(number, Unit::Count)
}
pub(super) const fn share(part: f64) -> Value {
    value(part, Unit::Share)
}
pub(super) fn count(number: u32) -> Value {
    whole(f64::from(number))
}
pub(super) fn copies(copies: Copies) -> Value {
    whole(copies.as_f64())
}
pub(super) fn pages(pages: Pages) -> Value {
    whole(pages.as_f64())
}
pub(super) fn lengths(band: Band<Mm>) -> Value {
    Some(Slot::Doubtful(band.map(Mm::get), Unit::Length))
}
pub(super) fn masses(band: Band<Gram>) -> Value {
    Some(Slot::Doubtful(band.map(Gram::get), Unit::Mass))
}
pub(super) fn said(sentence: Say) -> Value {
    Some(Slot::Say(Box::new(sentence)))
}
/// A limit or capacity that nobody has set reads as such in a formula.
pub(super) fn or_endless(value: Value) -> Value {
    value.or_else(|| said(crate::words::say("explain.endless")))
}
