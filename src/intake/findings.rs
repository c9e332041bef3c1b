//! Where the buyer's files and the plan differ. Only what boxes tell: what is drawn on a page is not
//! looked at, so nothing is said about how near to an edge it stands.

use super::Facts;
use super::looked::{Edge, Looked, Part, Sort, looked_at, same};
use super::trimmed::{Assumed, Binding};
use crate::job::{Job, Numbering};
use crate::plan::Plan;
use crate::units::{Mm, PAGES_PER_SHEET, Pages, Size, put_once};

/// What has come in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Delivery<'a> {
    /// The inside, perhaps with the cover around it.
    pub inside: &'a Facts,
    /// The cover, where it came as a file of its own.
    pub cover: Option<&'a Facts>,
}

/// Pages of a file that follow each other, counted from 1, both included.
pub type PageRange = (u32, u32);

/// One difference, or where the cover is. Nothing in it is a sentence.
#[derive(Debug, Clone, PartialEq)]
pub enum Found {
    /// Another number of pages than the job has. Spreads count as two.
    Count(Part, Pages, Pages),
    /// The cover lies in the same file as the inside.
    CoverWithin,
    /// The cover is not there.
    CoverMissing,
    /// The book does not have a cover apart, but one came.
    CoverUnasked,
    /// Page numbers that would stay blank if the book is made from these files: first and last.
    Blanks(u32, u32),
    /// Pages that are no page of the book by their size, by what they are instead; never [`Sort::Page`].
    /// Size as seen, of the first of them.
    Sized(Part, Sort, Size, Vec<PageRange>),
    /// Pages of more than one size: how many sizes.
    Mixed(Part, u32),
    /// Where the finished page was not stated, what was taken for it; never [`Assumed::Stated`].
    Taken(Part, Assumed, Vec<PageRange>),
    /// Pages without anything beyond the cut at these edges.
    NoBleed(Part, Vec<Edge>, Vec<PageRange>),
    /// Pages with less than wanted beyond the cut at these edges: the least there is, and what is wanted.
    ShortBleed(Part, Vec<Edge>, Mm, Mm, Vec<PageRange>),
}

impl Found {
    /// Where the cover is, which is no difference.
    #[must_use]
    pub const fn is_of_cover(&self) -> bool {
        matches!(self, Self::CoverWithin | Self::CoverMissing | Self::CoverUnasked)
    }
}

/// Compares what has come in with the plan, in the order in which a printer would ask.
#[must_use]
pub fn compare(delivery: &Delivery, job: &Job, plan: &Plan, binding: Binding) -> Vec<Found> {
    let mut found = Vec::new();
    let inside = looked_at(delivery.inside, Part::Inside, job, plan, binding);
    let cover = delivery.cover.map(|file| looked_at(file, Part::Cover, job, plan, binding));
    counts(&mut found, &inside, cover.as_deref(), job, plan);
    for (part, pages) in [(Part::Cover, cover.as_deref()), (Part::Inside, Some(&*inside))] {
        let Some(pages) = pages else { continue };
        sizes(&mut found, part, pages, job.tolerance);
        taken(&mut found, part, pages);
        bleeds(&mut found, part, pages, job, binding);
    }
    found
}

fn counts(
    found: &mut Vec<Found>,
    inside: &[Looked],
    cover: Option<&[Looked]>,
    job: &Job,
    plan: &Plan,
) {
    let total = |pages: &[Looked]| Pages(pages.iter().map(Looked::pages).sum());
    let apart = job.numbering == Numbering::SeparateCover;
    let around = Pages(PAGES_PER_SHEET);
    let asked = plan.results.blanks.asked;
    // Pages of the inside that came, whatever they came with.
    let came = match cover.map(total) {
        Some(cover) if apart => {
            // The outside alone, or all four.
            if cover != around && cover + cover != around {
                found.push(Found::Count(Part::Cover, cover, around));
            }
            total(inside)
        }
        Some(cover) => {
            found.push(Found::CoverUnasked);
            total(inside) + cover
        }
        None if apart && total(inside) == asked + around => {
            found.push(Found::CoverWithin);
            asked
        }
        None if apart => {
            found.push(Found::CoverMissing);
            total(inside)
        }
        None => total(inside),
    };
    if came != asked {
        found.push(Found::Count(Part::Inside, came, asked));
    }
    if came.blanks().get() > 0 {
        found.push(Found::Blanks(came.get() + 1, came.sheets().pages().get()));
    }
}

fn sizes(found: &mut Vec<Found>, part: Part, pages: &[Looked], tolerance: Mm) {
    // Of each sort, and of each size of what is no sort, one finding.
    let mut groups: Vec<(Sort, Size, Vec<PageRange>)> = Vec::new();
    for (number, page, size) in numbered(pages) {
        let known = groups.iter_mut().find(|(sort, first, _)| {
            *sort == page.sort && (*sort != Sort::Other || same(*first, size, tolerance))
        });
        match known {
            Some((_, _, ranges)) => add(ranges, number),
            None => groups.push((page.sort, size, vec![(number, number)])),
        }
    }
    if groups.len() > 1 {
        found.push(Found::Mixed(part, u32::try_from(groups.len()).unwrap_or(u32::MAX)));
    }
    let differing = groups.into_iter().filter(|(sort, ..)| *sort != Sort::Page);
    found.extend(differing.map(|(sort, size, ranges)| Found::Sized(part, sort, size, ranges)));
}

/// Pages whose size is known, with their numbers in the file.
fn numbered(pages: &[Looked]) -> impl Iterator<Item = (u32, &Looked, Size)> {
    let sized = |(number, page): (u32, _)| {
        let page: &Looked = page;
        page.trimmed.map(|trimmed| (number, page, trimmed.size()))
    };
    (1..).zip(pages).filter_map(sized)
}

fn taken(found: &mut Vec<Found>, part: Part, pages: &[Looked]) {
    let of = |page: &Looked| page.trimmed.map_or(Assumed::Nothing, |trimmed| trimmed.assumed);
    for assumed in [Assumed::Nothing, Assumed::Page, Assumed::Crop, Assumed::Bled] {
        let mut ranges = Vec::new();
        for (number, _) in (1..).zip(pages).filter(|(_, page)| of(page) == assumed) {
            add(&mut ranges, number);
        }
        if !ranges.is_empty() {
            found.push(Found::Taken(part, assumed, ranges));
        }
    }
}

/// One group of pages that lack the same at the same edges.
struct Lack {
    edges: Vec<Edge>,
    least: Mm,
    ranges: Vec<PageRange>,
}

fn bleeds(found: &mut Vec<Found>, part: Part, pages: &[Looked], job: &Job, binding: Binding) {
    let Some(wanted) = job.bleed.filter(|bleed| *bleed > Mm::ZERO) else { return };
    let (mut none, mut short): (Vec<Lack>, Vec<Lack>) = (Vec::new(), Vec::new());
    for (number, page) in (1..).zip(pages) {
        let Some(trimmed) = page.trimmed.filter(|_| fits(page.sort)) else { continue };
        let edges = page.edges(binding).into_iter().zip(trimmed.beyond());
        let cut: Vec<(Edge, Mm)> = edges.filter(|(edge, _)| *edge != Edge::Spine).collect();
        let of = |lacks: fn(Mm, Mm) -> bool| {
            cut.iter().copied().filter(move |(_, beyond)| lacks(*beyond, wanted))
        };
        lack(&mut none, number, of(|beyond, _| beyond.get() < HAIR));
        let short_of =
            of(|beyond, wanted| beyond.get() >= HAIR && beyond.get() < wanted.get() - HAIR);
        lack(&mut short, number, short_of);
    }
    found.extend(none.into_iter().map(|group| Found::NoBleed(part, group.edges, group.ranges)));
    found.extend(
        short
            .into_iter()
            .map(|group| Found::ShortBleed(part, group.edges, group.least, wanted, group.ranges)),
    );
}

/// Below this two boxes lie on each other: a file rounds to hundredths of a point or so.
const HAIR: f64 = 0.05;

/// Only pages that could be printed as they are have edges worth speaking of.
const fn fits(sort: Sort) -> bool {
    matches!(sort, Sort::Page | Sort::Spread)
}

fn lack(groups: &mut Vec<Lack>, number: u32, lacking: impl Iterator<Item = (Edge, Mm)>) {
    let (mut edges, mut least): (Vec<Edge>, Option<Mm>) = (Vec::new(), None);
    for (edge, beyond) in lacking {
        put_once(&mut edges, edge);
        least = Some(least.map_or(beyond, |least| least.min(beyond)));
    }
    let Some(least) = least else { return };
    match groups.iter_mut().find(|group| group.edges == edges) {
        Some(group) => {
            group.least = group.least.min(least);
            add(&mut group.ranges, number);
        }
        None => groups.push(Lack { edges, least, ranges: vec![(number, number)] }),
    }
}

fn add(ranges: &mut Vec<PageRange>, number: u32) {
    match ranges.last_mut() {
        Some((_, last)) if *last + 1 == number => *last = number,
        _ => ranges.push((number, number)),
    }
}
