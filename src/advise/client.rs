//! Ways out as a client is told them: page counts only in steps, so that none names a line's limit.

use super::offer::Offer;
use super::typed::pages;
use crate::check::Verdict;
use crate::data::{CLIENT_STEP, PAGES};
use crate::draft::Draft;
use crate::job;
use crate::shop::Shop;
use crate::units::Pages;

/// The offers that speak only of the book. A page count that the search found is as far as the line
/// goes: it is moved on to the next full step, planned again, and left out where that does not pass.
pub(super) fn for_client(draft: &Draft, shop: &Shop, offers: &[Offer]) -> Vec<Offer> {
    let mut told: Vec<Offer> = Vec::new();
    for offer in offers.iter().filter(|offer| offer.for_client()) {
        let counted = offer.told.iter().any(|told| told.kind.id == PAGES.id);
        let offer = if counted { stepped(draft, shop, offer) } else { Some(offer.clone()) };
        told.extend(offer.filter(|offer| told.iter().all(|known| known.edits != offer.edits)));
    }
    told
}

/// The same way with its page count moved on, away from the limit, to a full step.
fn stepped(draft: &Draft, shop: &Shop, offer: &Offer) -> Option<Offer> {
    let main = |draft: &Draft| {
        let job = job::read(draft, shop).job?;
        let pages = job.main_section()?.pages;
        Some((pages, job.cover().is_some()))
    };
    let (now, _) = main(draft)?;
    let (found, separate) = main(&offer.applied(draft))?;
    let step = CLIENT_STEP.value.get();
    let steps = if found < now { found.get() / step } else { found.get().div_ceil(step) };
    let full = Pages(steps * step);
    if full == Pages(0) || full == now {
        return None;
    }
    let (old, new) = (pages(found, separate), pages(full, separate));
    let mut moved = offer.clone();
    let texts = moved.told.iter_mut().map(|told| &mut told.to);
    for text in texts.chain(moved.edits.iter_mut().map(|(_, text)| text)) {
        if *text == old {
            text.clone_from(&new);
        }
    }
    let passes = Offer::of(draft, shop, moved.told, moved.edits, Verdict::Marginal)?;
    let counts = main(&passes.applied(draft))?;
    (counts.0 == full && passes.verdict <= offer.verdict).then_some(passes)
}
