//! H and S: how thick the sheets lie flat, and the book closed.

use crate::data::PRACTICE;
use crate::job::{Job, Role};
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

/// Adds thicknesses of sheets. Sheets of one lot err together, so their doubts add; lots err
/// independently, so between lots the root of the sum of squares counts (common practice).
pub(super) struct LotSum<'a> {
    job: &'a Job,
    calipers: &'a [Band<Mm>],
    /// Thickness counted so far, in leaves, by section.
    counted: Vec<f64>,
}

impl<'a> LotSum<'a> {
    pub(super) fn new(job: &'a Job, calipers: &'a [Band<Mm>]) -> Self {
        Self { job, calipers, counted: vec![0.0; calipers.len()] }
    }
    /// Counts so many leaves of a section.
    pub(super) fn add(&mut self, section: usize, leaves: f64) {
        // One lot, one account: sections of the same paper are booked on the first of them.
        let lot = self.job.sections.get(section).map_or(section, |section| section.lot);
        if let Some(counted) = self.counted.get_mut(lot) {
            *counted += leaves;
        }
    }
    /// What has been counted, with its doubt.
    pub(super) fn band(&self) -> Band<Mm> {
        let parts = self.calipers.iter().zip(&self.counted);
        Band::<Mm>::sum_independent(parts.map(|(caliper, leaves)| caliper.times(*leaves)))
    }
}

/// The stack of the book: H = Σ t over all sheets, S = 2 H.
///
/// A closed thickness measured on a dummy overrules the papers: every caliper is scaled to it and
/// keeps the doubt of a measurement (1 %, common practice).
#[must_use]
pub fn stack(job: &Job) -> Stack {
    let given: Vec<Band<Mm>> = job.sections.iter().map(|section| section.caliper.value).collect();
    let flat = sum_of_sheets(job, &given);
    let Some(measured) = job.dummy.closed else {
        return finish(flat, given, false);
    };
    let scale = ClosedThickness(measured).flat().0 / flat.nominal;
    let doubt = PRACTICE.measured_doubt.value;
    let scaled: Vec<Band<Mm>> = given
        .iter()
        .map(|caliper| {
            let leaf = caliper.nominal * scale;
            Band::<Mm>::around(leaf, leaf * doubt)
        })
        .collect();
    finish(sum_of_sheets(job, &scaled), scaled, true)
}

fn sum_of_sheets(job: &Job, calipers: &[Band<Mm>]) -> Band<Mm> {
    let mut sum = LotSum::new(job, calipers);
    for (index, section) in job.sections.iter().enumerate() {
        sum.add(index, section.sheets.as_f64());
    }
    sum.band()
}

fn finish(flat: Band<Mm>, calipers: Vec<Band<Mm>>, measured: bool) -> Stack {
    let flat = flat.map(FlatStack);
    Stack { flat, closed: flat.map(FlatStack::closed), calipers, measured }
}

impl Stack {
    /// The stack without a separate cover: what the trade calls the inside.
    #[must_use]
    pub fn inside(&self, job: &Job) -> Band<Mm> {
        let mut sum = LotSum::new(job, &self.calipers);
        for (index, section) in job.sections.iter().enumerate() {
            if section.role != Role::Cover {
                sum.add(index, section.sheets.as_f64());
            }
        }
        sum.band()
    }
}
