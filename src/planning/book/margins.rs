//! Which pages the push-out endangers, and how much bleed the face and the fold need.

use super::{Folio, Leaf};
use crate::job::{ImagesMovedBy, Job};
use crate::units::{Band, Mm, PAGES_PER_SHEET};

/// How near the knife comes to something that stands at one distance from the face on every page.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Clearance {
    /// That distance.
    pub distance: Mm,
    /// Least that remains of it on any page after push-out and tolerance; negative: cut into.
    pub left: Mm,
    /// Place of the sheet that decides, counted from the outside.
    pub worst: u32,
    /// Where the knife falls on that sheet's pages, see [`cut_on_page`].
    pub cut: Band<Mm>,
    /// The outermost sheet whose pages are at risk; nothing when none is.
    pub at_risk_from: Option<u32>,
}

/// Margins over the whole book.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Margins {
    /// The nearest art: at the distance typed, or at the safe margin.
    pub art: Clearance,
    /// The page numbers, when their distance was typed.
    pub folio: Option<Clearance>,
    /// Bleed that the face needs so that no white shows on any page.
    pub face_bleed: Mm,
    /// Widest gap at a fold between the two pages of a sheet, when pictures are moved.
    pub fold_gap: Mm,
    /// Widest overlap at a fold; the centre spread loses it.
    pub fold_overlap: Mm,
}

/// Where the knife falls on a leaf's pages, from the face of the page as it is laid, outward positive.
///
/// Moved pictures leave only the drift and the tolerance; laid from the fold and not moved, the page
/// ends short of the cut by its shift s_k, or beyond it where that is negative.
#[must_use]
pub fn cut_on_page(job: &Job, leaf: &Leaf) -> Band<Mm> {
    let nominal = match job.images {
        ImagesMovedBy::Shop | ImagesMovedBy::Designer => Mm::ZERO,
        ImagesMovedBy::Nobody => leaf.image_shift,
    };
    Band::<Mm>::around(nominal, leaf.drift + job.tolerance)
}

/// What remains of a distance from the face on one leaf at worst.
#[must_use]
pub fn distance_left(job: &Job, leaf: &Leaf, distance: Mm) -> Mm {
    distance + cut_on_page(job, leaf).low
}

/// How near the knife comes over the whole book.
fn clearance(job: &Job, leaves: &[Leaf], distance: Mm) -> Clearance {
    let mut result = Clearance { distance, ..Clearance::default() };
    for leaf in leaves {
        let left = distance_left(job, leaf, distance);
        if result.worst == 0 || left < result.left {
            (result.left, result.worst) = (left, leaf.place);
            result.cut = cut_on_page(job, leaf);
        }
        if left < Mm::ZERO && result.at_risk_from.is_none() {
            result.at_risk_from = Some(leaf.place);
        }
    }
    result
}

/// Margins of the book.
#[must_use]
pub fn margins(job: &Job, leaves: &[Leaf]) -> Margins {
    let mut result = Margins {
        art: clearance(job, leaves, job.art_face.unwrap_or(job.safe)),
        folio: job.folio_face.map(|distance| clearance(job, leaves, distance)),
        ..Margins::default()
    };
    for leaf in leaves {
        result.face_bleed =
            result.face_bleed.max(cut_on_page(job, leaf).high.max(leaf.drift + job.tolerance));
        if job.images != ImagesMovedBy::Nobody {
            result.fold_gap = result.fold_gap.max(leaf.image_shift * 2.0);
            result.fold_overlap = result.fold_overlap.max(leaf.image_shift * -2.0);
        }
    }
    result
}

/// The pages on which less than nothing remains of a distance: sides of a separate cover that are, and
/// page numbers from … to.
#[must_use]
pub fn pages_at_risk(job: &Job, leaves: &[Leaf], distance: Mm) -> (bool, Vec<(u32, u32)>) {
    let mut cover = false;
    let mut marked = vec![false; leaves.len() * PAGES_PER_SHEET as usize + 1];
    let at_risk = leaves.iter().filter(|leaf| distance_left(job, leaf, distance) < Mm::ZERO);
    for folio in at_risk.flat_map(|leaf| leaf.folios.all()) {
        match folio {
            Folio::Page(page) => {
                if let Some(mark) = marked.get_mut(page as usize) {
                    *mark = true;
                }
            }
            Folio::Cover(_) => cover = true,
        }
    }
    let mut spans: Vec<(u32, u32)> = Vec::new();
    for (page, _) in (0..).zip(marked).filter(|(_, marked)| *marked) {
        match spans.last_mut() {
            Some((_, last)) if *last + 1 == page => *last = page,
            _ => spans.push((page, page)),
        }
    }
    (cover, spans)
}

#[cfg(test)]
mod tests {
    use super::{cut_on_page, pages_at_risk};
    use crate::book::Folio;
    use crate::draft::Draft;
    use crate::units::Mm;
    use crate::{job, plan, shop};
    use std::collections::BTreeSet;

    /// Page by page: a page is at risk where the knife at its worst falls inside of what stands there.
    #[test]
    fn pages_at_risk_are_those_the_knife_reaches() {
        let shop = shop::demo();
        let mut seen = BTreeSet::new();
        for pages in ["4", "40", "40 + 4", "150 + 4"] {
            for images in ["shop", "nobody"] {
                for spine in ["round", "square"] {
                    let fields = [
                        ("pages", pages),
                        ("size", "A5"),
                        ("paper", "90 gsm uncoated"),
                        ("images", images),
                        ("spine", spine),
                    ];
                    let draft = Draft::of(&fields);
                    let job = job::read(&draft, &shop).job.unwrap();
                    let leaves = plan::plan(&job, &shop).results.leaves;
                    for tenths in 0..60 {
                        let distance = Mm(f64::from(tenths) / 10.0);
                        let (cover, spans) = pages_at_risk(&job, &leaves, distance);
                        let reached =
                            |leaf: &&crate::book::Leaf| -cut_on_page(&job, leaf).low > distance;
                        let folios: Vec<Folio> = leaves
                            .iter()
                            .filter(reached)
                            .flat_map(|leaf| leaf.folios.all())
                            .collect();
                        let told: Vec<u32> =
                            spans.iter().flat_map(|(first, last)| *first..=*last).collect();
                        let numbers = folios.iter().filter_map(|folio| match folio {
                            Folio::Page(page) => Some(*page),
                            Folio::Cover(_) => None,
                        });
                        let numbers: BTreeSet<u32> = numbers.collect();
                        assert_eq!(told, numbers.into_iter().collect::<Vec<_>>());
                        assert_eq!(cover, folios.contains(&Folio::Cover(1)));
                        // Spans are as few as can be.
                        assert!(spans.windows(2).all(|pair| pair[0].1 + 1 < pair[1].0));
                        seen.insert((cover, spans.len()));
                    }
                }
            }
        }
        assert!(seen.len() > 2, "only {seen:?} ever happen");
    }
}
