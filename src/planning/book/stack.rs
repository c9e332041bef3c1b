//! H and S: how thick the sheets lie flat, and the book closed.

use crate::data::PRACTICE;
use crate::job::{Job, Role, Section};
use crate::units::{Band, ClosedThickness, FlatStack, Mm};

/// Thickness of the book and of each of its sections' leaves.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Stack {
    /// H, the sheets flat on each other: what the wire pierces.
    pub flat: Band<FlatStack>,
    /// S = 2 H, the closed book at its spine.
    pub closed: Band<ClosedThickness>,
    /// Thickness of one leaf, by section; scaled to the dummy when one was measured.
    pub calipers: Vec<Band<Mm>>,
    /// A dummy of this book was measured and overrules the papers' figures.
    pub measured: bool,
}

/// Adds thicknesses of sheets, so many of each section. Sheets of one lot err together, so their
/// doubts add; lots err independently, so between lots the root of the sum of squares counts (common
/// practice). `sheets` says how many of the section at an index count.
pub(super) fn sum_by_lot(
    job: &Job,
    calipers: &[Band<Mm>],
    sheets: impl Fn(usize, &Section) -> f64,
) -> Band<Mm> {
    Band::<Mm>::sum_independent(calipers.iter().enumerate().map(|(lot, caliper)| {
        // One lot, one account: sections of the same paper are booked on the first of them.
        let booked = job.sections.iter().enumerate().filter(|(_, section)| section.lot == lot);
        caliper.times(booked.map(|(index, section)| sheets(index, section)).sum())
    }))
}

/// The stack of the book: H = Σ t over all sheets, S = 2 H.
///
/// A closed thickness measured on a dummy overrules the papers: every caliper is scaled to it and
/// keeps the doubt of a measurement (1 %, common practice).
#[must_use]
pub fn stack(job: &Job) -> Stack {
    let mut out = Stack::default();
    stack_into(job, &mut out);
    out
}

/// The same, written over an earlier stack so that nothing is allocated.
pub fn stack_into(job: &Job, out: &mut Stack) {
    out.calipers.clear();
    out.calipers.extend(job.sections.iter().map(|section| section.caliper.value));
    out.measured = job.dummy.closed.is_some();
    if let Some(measured) = job.dummy.closed {
        let given = sum_of_sheets(job, &out.calipers);
        let scale = ClosedThickness(measured).flat().0 / given.nominal;
        let doubt = PRACTICE.measured_doubt.value;
        for caliper in &mut out.calipers {
            let leaf = caliper.nominal * scale;
            *caliper = Band::<Mm>::around(leaf, leaf * doubt);
        }
    }
    out.flat = sum_of_sheets(job, &out.calipers).map(FlatStack);
    out.closed = out.flat.map(FlatStack::closed);
}

fn sum_of_sheets(job: &Job, calipers: &[Band<Mm>]) -> Band<Mm> {
    sum_by_lot(job, calipers, |_, section| section.sheets.as_f64())
}

impl Stack {
    /// The stack without a separate cover: what the trade calls the inside.
    #[must_use]
    pub fn inside(&self, job: &Job) -> Band<Mm> {
        sum_by_lot(job, &self.calipers, |_, section| match section.role {
            Role::Cover => 0.0,
            Role::Inside | Role::Insert => section.sheets.as_f64(),
        })
    }
}
