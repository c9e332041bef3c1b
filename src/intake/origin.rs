//! Which page of which file each page of the book comes from.

use super::looked::{Looked, Part, Sort, looked_at};
use super::{Binding, Delivery, Frame};
use crate::job::{Job, Numbering};
use crate::plan::{Folio, Plan};
use crate::units::{PAGES_PER_LEAF, PAGES_PER_SHEET};

/// A page of the book on a page of a file, as it is seen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Source {
    /// Which file.
    pub part: Part,
    /// Which of its pages, counted from 0.
    pub page: u32,
    /// The finished page.
    pub frame: Frame,
    /// As far as there can be picture. At the spine of a spread that is its middle.
    pub reach: Frame,
}

/// Where all pages of a book come from.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sources {
    /// The four sides of a separate cover: outside front, inside front, inside back, outside back.
    cover: Vec<Option<Source>>,
    /// The pages of the inside.
    inside: Vec<Option<Source>>,
}

impl Sources {
    /// Finds them. A cover of two pages is its outside, front and back; spreads are parted.
    #[must_use]
    pub fn of(delivery: &Delivery, job: &Job, plan: &Plan, binding: Binding) -> Self {
        let look = |file, part| looked_at(file, part, job, plan, binding);
        let list = |part, pages: &[Looked]| -> Vec<Option<Source>> {
            (0..).zip(pages).flat_map(|(at, page)| parted(part, at, page, binding)).collect()
        };
        let mut inside = list(Part::Inside, &look(delivery.inside, Part::Inside));
        let cover = delivery.cover.map(|file| look(file, Part::Cover)).unwrap_or_default();
        let mut cover = around(&cover, list(Part::Cover, &cover));
        let asked = plan.results.blanks.asked.get() as usize;
        let apart = job.numbering == Numbering::SeparateCover;
        let (four, two) = (PAGES_PER_SHEET as usize, PAGES_PER_LEAF as usize);
        if !apart && cover.len() == four {
            // The cover is the outermost sheet: its pages are the first two and the last two.
            let back = cover.split_off(two);
            inside = cover.into_iter().chain(inside).chain(back).collect();
            cover = Vec::new();
        } else if apart && cover.is_empty() && inside.len() == asked + four {
            let back = inside.split_off(inside.len() - two);
            let front = inside.drain(..two).collect::<Vec<_>>();
            cover = front.into_iter().chain(back).collect();
        }
        Self { cover, inside }
    }

    /// Where a page comes from; nothing for a blank, and for a page that has not come.
    #[must_use]
    pub fn get(&self, folio: Folio) -> Option<&Source> {
        let (list, number) = match folio {
            Folio::Page(number) => (&self.inside, number),
            Folio::Cover(side) => (&self.cover, side),
        };
        list.get((number as usize).checked_sub(1)?)?.as_ref()
    }

    /// Nothing has come for the separate cover.
    #[must_use]
    pub fn lacks_cover(&self) -> bool {
        self.cover.iter().all(Option::is_none)
    }
}

/// The sides of a cover in their order.
fn around(looked: &[Looked], pages: Vec<Option<Source>>) -> Vec<Option<Source>> {
    let spreads = looked.iter().all(|page| page.sort == Sort::Spread);
    let get = |at: usize| pages.get(at).copied().flatten();
    match (pages.len(), spreads) {
        // Laid flat, the outside shows the back on the left of the front.
        (2, true) => vec![get(1), None, None, get(0)],
        (4, true) => vec![get(1), get(2), get(3), get(0)],
        (2, false) => vec![get(0), None, None, get(1)],
        _ => pages,
    }
}

/// The pages of the book that a page of a file holds; nothing where no box says where they lie.
fn parted(part: Part, page: u32, looked: &Looked, binding: Binding) -> Vec<Option<Source>> {
    let Some(trimmed) = looked.trimmed else { return vec![None] };
    let (frame, reach) = (trimmed.frame, trimmed.reach);
    if looked.sort != Sort::Spread {
        return vec![Some(Source { part, page, frame, reach })];
    }
    // What a cover has between its pages goes round the spine: each page reaches to the middle.
    let spine = looked.spine;
    let halves = match binding {
        Binding::Left => {
            let middle = f64::midpoint(frame.left, frame.right);
            [
                (Frame { right: middle - spine, ..frame }, Frame { right: middle, ..reach }),
                (Frame { left: middle + spine, ..frame }, Frame { left: middle, ..reach }),
            ]
        }
        // The earlier page hangs above the later one.
        Binding::Top => {
            let middle = f64::midpoint(frame.bottom, frame.top);
            [
                (Frame { bottom: middle + spine, ..frame }, Frame { bottom: middle, ..reach }),
                (Frame { top: middle - spine, ..frame }, Frame { top: middle, ..reach }),
            ]
        }
    };
    halves.map(|(frame, reach)| Some(Source { part, page, frame, reach })).into()
}
