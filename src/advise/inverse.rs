//! The questions turned round: how many pages on this paper, how heavy a paper at this page count.

use super::change::Change;
use super::search::Search;
use super::variant::Variant;
use crate::check::Verdict;
use crate::data;
use crate::job::Job;
use crate::plan::Plan;
use crate::shop::Shop;
use crate::units::{Gsm, PAGES_PER_SHEET, Pages, Sheets};

/// The most pages that are planned, as many as the field takes.
const MOST_PAGES: Pages = Pages(2000);

/// Further pages that a book has room for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Room {
    /// So many, whole sheets; none where the book does not fit as it stands.
    Pages(Pages),
    /// As many as can be planned.
    Unlimited,
}

/// Answers to the questions turned round.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Inverse {
    /// Most pages of the main section on its paper; nothing when no count fits.
    pub most_pages: Option<Pages>,
    /// Heaviest usual weight of the paper inside at this page count, as one would type it; nothing
    /// when none fits.
    pub heaviest: Option<(String, Gsm)>,
}

/// Finds room for further pages, of one book after another in the same plan.
#[derive(Debug, Default)]
pub struct Rooms {
    plan: Plan,
}

/// Room for further pages of one book. See [`Rooms::room`].
#[must_use]
pub fn room(job: &Job, shop: &Shop, plan: &Plan) -> Room {
    Rooms::default().room(job, shop, plan)
}

impl Rooms {
    /// Room for further pages in the main section: planned anew at so many pages more, where the book
    /// fits over its whole band. Never more than the closed form of any limit says, so that the answer
    /// and the table of limits agree.
    pub fn room(&mut self, job: &Job, shop: &Shop, plan: &Plan) -> Room {
        if plan.verdict != Verdict::Fits || job.main_section().is_none() {
            return Room::Pages(Pages(0));
        }
        let scratch = core::mem::take(&mut self.plan);
        let mut variant = Variant::over(job, shop, plan, scratch);
        let possible = MOST_PAGES.sheets() - job.sheets();
        let closed = plan.room_pages().map(|pages| {
            let pages = u32::try_from(pages.max(0)).unwrap_or(u32::MAX);
            Sheets(pages / PAGES_PER_SHEET)
        });
        let most = closed.unwrap_or(possible).min(possible);
        let sheets = greatest(most, |more| {
            variant.larger(more).is_some_and(|plan| plan.verdict == Verdict::Fits)
        });
        self.plan = variant.into_plan();
        if sheets == possible { Room::Unlimited } else { Room::Pages(sheets.pages()) }
    }
}

/// The greatest count up to `most` that passes, given that none at all passes: found by halving, and
/// what comes back has itself passed.
fn greatest(most: Sheets, mut passes: impl FnMut(Sheets) -> bool) -> Sheets {
    if most == Sheets(0) || passes(most) {
        return most;
    }
    let (mut good, mut bad) = (0, most.get());
    while bad - good > 1 {
        let middle = good + (bad - good) / 2;
        if passes(Sheets(middle)) { good = middle } else { bad = middle }
    }
    Sheets(good)
}

impl Search<'_> {
    /// Most pages and heaviest paper. `room` is the room of the book as it stands.
    pub(super) fn inverse(&mut self, room: Room) -> Inverse {
        Inverse { most_pages: self.most_pages(room), heaviest: self.heaviest() }
    }

    fn most_pages(&mut self, room: Room) -> Option<Pages> {
        let main = self.asked.job.main_section()?;
        if self.base == Verdict::Fits {
            return match room {
                Room::Pages(more) => Some(main.sheets.pages() + more),
                Room::Unlimited => Some(MOST_PAGES),
            };
        }
        // Halve until a count fits, then close in on the last that does.
        let mut few = main.sheets.get() / 2;
        while few > 0 && !self.passes(Sheets(few)) {
            few /= 2;
        }
        if few == 0 {
            return None;
        }
        let span = main.sheets - Sheets(few);
        let more = greatest(span, |more| self.passes(Sheets(few) + more));
        Some((Sheets(few) + more).pages())
    }

    fn passes(&mut self, sheets: Sheets) -> bool {
        let change = Change::Pages(sheets.pages());
        self.scratch.judge(&self.asked, &[change]) == Verdict::Fits
    }

    fn heaviest(&mut self) -> Option<(String, Gsm)> {
        let mut best: Option<(String, Gsm)> = None;
        if self.base == Verdict::Fits {
            let main = self.asked.job.main_section()?;
            let weight = main.grammage?.nominal;
            best = Some((main.stock.name.clone(), weight));
        }
        for (index, choice) in self.asked.papers.iter().enumerate() {
            let Some(weight) = choice.grammage.map(|band| band.nominal) else { continue };
            let heavier = best.as_ref().is_none_or(|(_, known)| weight > *known);
            if choice.kind.id == data::WEIGHT.id
                && heavier
                && self.scratch.judge(&self.asked, &[Change::Paper(index)]) == Verdict::Fits
            {
                best = Some((choice.text.clone(), weight));
            }
        }
        best
    }
}

#[cfg(test)]
mod tests {
    use super::greatest;
    use crate::units::Sheets;

    #[test]
    fn halving_finds_the_last_that_passes() {
        for limit in 0..40 {
            let found = greatest(Sheets(33), |sheets| sheets.get() <= limit);
            assert_eq!(found, Sheets(limit.min(33)));
        }
    }
}
