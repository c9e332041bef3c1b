//! Pages of a file, each held against a page of the book: what it is by its size, and which of its edges
//! is which.

use super::trimmed::{Binding, Trimmed, trimmed};
use super::{Facts, PageFacts};
use crate::job::Job;
use crate::plan::Plan;
use crate::units::{Mm, Size};
use serde::{Deserialize, Serialize};

/// Which part of the book a file holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Part {
    /// Everything, or everything but the cover.
    Inside,
    /// The separate cover alone.
    Cover,
}

/// An edge of a page in the book.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Edge {
    /// Upper edge.
    Head,
    /// Lower edge.
    Foot,
    /// The open edge across from the spine.
    Face,
    /// The bound edge: facing pages meet there, it is not cut.
    Spine,
}

/// Which side of the spine a page lies on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Side {
    /// Odd pages: the spine is at their left, or at their top.
    Right,
    /// Even pages.
    Left,
}

/// What a page of a file is by its finished size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sort {
    /// A page of the book.
    Page,
    /// A page of the book lying on its side.
    Turned,
    /// Two pages side by side.
    Spread,
    /// Half a page: what should be one page came as two.
    Half,
    /// None of these.
    Other,
}

/// A page of a file, looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Looked {
    /// Where the finished page lies on it; nothing where the file states no box.
    pub trimmed: Option<Trimmed>,
    /// What it is by its size.
    pub sort: Sort,
    /// Half of what lies between the two pages of a spread.
    pub spine: f64,
    /// Number of its first page in the part, counted from 1.
    pub first: u32,
}

impl Looked {
    /// Pages of the book that it holds.
    #[must_use]
    pub fn pages(&self) -> u32 {
        if self.sort == Sort::Spread { 2 } else { 1 }
    }
    /// What its left, lower, right and upper edge are in the book.
    #[must_use]
    pub const fn edges(&self, binding: Binding) -> [Edge; 4] {
        let side = if self.first % 2 == 1 { Side::Right } else { Side::Left };
        edges(self.sort, side, binding)
    }
}

/// Looks at every page of a file.
#[must_use]
pub fn looked_at(
    file: &Facts,
    part: Part,
    job: &Job,
    plan: &Plan,
    binding: Binding,
) -> Vec<Looked> {
    let page = binding.seen(job.size);
    let bleed = job.bleed.unwrap_or(job.tolerance.max(Mm::ZERO));
    // A cover laid flat is wider than two pages: it goes round the spine.
    let spine = match part {
        Part::Cover => plan.results.cover.open.width - job.size.width * 2.0,
        Part::Inside => Mm::ZERO,
    };
    let mut next = 1;
    file.pages
        .iter()
        .map(|facts| {
            let (sort, trimmed, between) = sort(facts, page, bleed, job.tolerance, spine, binding);
            let spine = between.get() / 2.0;
            let looked = Looked { trimmed, sort, spine, first: next };
            next += looked.pages();
            looked
        })
        .collect()
}

/// What a page is. One without a TrimBox is tried as each: the bleed that it holds is told apart by that.
fn sort(
    facts: &PageFacts,
    page: Size,
    bleed: Mm,
    tolerance: Mm,
    spine: Mm,
    binding: Binding,
) -> (Sort, Option<Trimmed>, Mm) {
    let across = |factor: f64, more: Mm| match binding {
        Binding::Left => Size::new(page.width * factor + more, page.height),
        Binding::Top => Size::new(page.width, page.height * factor + more),
    };
    let tries = [
        (Sort::Page, page, Mm::ZERO),
        (Sort::Turned, Size::new(page.height, page.width), Mm::ZERO),
        (Sort::Spread, across(2.0, Mm::ZERO), Mm::ZERO),
        (Sort::Spread, across(2.0, spine), spine),
        (Sort::Half, across(0.5, Mm::ZERO), Mm::ZERO),
    ];
    // Several may be within the tolerance, as a cover laid flat with what goes round the spine or without.
    let mut best = (Sort::Other, None, Mm::ZERO);
    let mut least = f64::INFINITY;
    for (sort, wanted, between) in tries {
        let Some(found) = trimmed(facts, wanted, bleed, tolerance) else { continue };
        let off = found.off(wanted, bleed);
        if same(found.size(), wanted, tolerance) && off < least {
            (best, least) = ((sort, Some(found), between), off);
        }
    }
    if best.1.is_some() {
        return best;
    }
    (Sort::Other, trimmed(facts, page, bleed, tolerance), Mm::ZERO)
}

/// Whether two sizes agree within a tolerance.
pub(super) fn same(one: Size, other: Size, tolerance: Mm) -> bool {
    let near = |a: Mm, b: Mm| (a - b).get().abs() <= tolerance.get();
    near(one.width, other.width) && near(one.height, other.height)
}

/// What the left, lower, right and upper edge of a page as seen are in the book. One bound at the top is
/// turned to the left so that its spine stands upright: its left edge is then at the foot.
const fn edges(sort: Sort, side: Side, binding: Binding) -> [Edge; 4] {
    use Edge::{Face, Foot, Head, Spine};
    match (binding, sort, side) {
        (Binding::Left, Sort::Spread, _) => [Face, Foot, Face, Head],
        (Binding::Left, _, Side::Right) => [Spine, Foot, Face, Head],
        (Binding::Left, _, Side::Left) => [Face, Foot, Spine, Head],
        (Binding::Top, Sort::Spread, _) => [Foot, Face, Head, Face],
        (Binding::Top, _, Side::Right) => [Foot, Face, Head, Spine],
        (Binding::Top, _, Side::Left) => [Foot, Spine, Head, Face],
    }
}
