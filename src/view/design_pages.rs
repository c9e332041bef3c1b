//! The pages of a design as boxes, those to look at first before the others.

use crate::intake::{Binding, Delivery, Frame, Part, Source, Sources, slots};
use crate::plan::{Folio, distance_left};
use crate::units::{Mm, in_order};
use crate::view::html::Scene;

/// One page of the book on its page of the file.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Boxes {
    /// Which page of the book.
    pub folio: Folio,
    /// Where it comes from.
    pub source: Source,
    /// The whole page of the file.
    pub sheet: Frame,
    /// What is safe after the cut, push-out counted; nothing where nothing is.
    pub safe: Option<Frame>,
}

/// Every page that has come. First whose size is not the book's, then what has least bleed, then what is
/// cut nearest; among the same in the order of the book.
#[must_use]
pub fn worst_first(
    delivery: &Delivery,
    sources: &Sources,
    binding: Binding,
    scene: &Scene,
) -> Vec<Boxes> {
    let (job, leaves) = (scene.job, &scene.plan.results.leaves);
    let wanted = binding.seen(job.size);
    let bleed = job.bleed.unwrap_or_default().get();
    let mut pages: Vec<([f64; 3], Boxes)> = Vec::new();
    for slot in slots(job, scene.plan) {
        let Some(source) = sources.get(slot.folio) else { continue };
        let file = match source.part {
            Part::Inside => Some(delivery.inside),
            Part::Cover => delivery.cover,
        };
        let page = file.and_then(|file| file.pages.get(source.page as usize));
        let Some(sheet) = page.and_then(|page| page.media) else { continue };
        let Some(leaf) = leaves.get((slot.sheet as usize).saturating_sub(1)) else { continue };
        let (matrix, _) = slot.lay(source, binding);
        // Kept free inside the cut, and the doubt of where the page lies besides.
        let (safe, whole) = (job.safe.get(), slot.frame());
        let face = safe + leaf.drift.get();
        let free = Frame {
            left: if slot.fold_right { face } else { 0.0 },
            right: whole.right - if slot.fold_right { 0.0 } else { face },
            bottom: safe,
            top: whole.top - safe,
        };
        let safe = source.frame.within(matrix.back().frame(free));
        let off = |a: f64, b: Mm| (a - b.get()).abs();
        let differs =
            off(source.frame.width(), wanted.width).max(off(source.frame.height(), wanted.height));
        let differs = if differs > job.tolerance.get() { -differs } else { 0.0 };
        let least = source.frame.bleed(source.reach);
        let least = if least < bleed { least } else { bleed };
        // Of what is alike down to a hundredth of a millimetre, the book's order counts.
        let left = (distance_left(job, leaf, job.safe).get() * 100.0).round();
        pages.push((
            [differs, least.round(), left],
            Boxes { folio: slot.folio, source: *source, sheet, safe },
        ));
    }
    let pages = in_order(&pages, |(one, _), (other, _)| {
        one.iter()
            .zip(other)
            .fold(core::cmp::Ordering::Equal, |order, (a, b)| order.then(a.total_cmp(b)))
    });
    pages.into_iter().map(|(_, page)| page).collect()
}
