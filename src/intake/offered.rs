//! What a file would say if it filled the form: pages, size, bleed.

use super::looked::same;
use super::trimmed::{Assumed, trimmed};
use super::{Delivery, Facts};
use crate::units::{Mm, Size};

/// What the job could take over.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Offered {
    /// Pages of the inside.
    pub pages: u32,
    /// A cover came as a file of its own.
    pub cover: bool,
    /// Finished size of most pages as they are seen; nothing where no box tells.
    pub size: Option<Size>,
    /// The least bleed that the file states at any edge of any page; nothing where it states none.
    pub bleed: Option<Mm>,
}

impl Offered {
    /// Reads it off, without any book in mind.
    #[must_use]
    pub fn of(delivery: &Delivery) -> Self {
        let pages = &delivery.inside.pages;
        Self {
            pages: u32::try_from(pages.len()).unwrap_or(u32::MAX),
            cover: delivery.cover.is_some(),
            size: usual_size(delivery.inside),
            bleed: bleed(delivery.inside),
        }
    }
}

/// The size that most pages have.
fn usual_size(file: &Facts) -> Option<Size> {
    /// Within this two sizes are one.
    const SAME: Mm = Mm(0.1);
    let mut sizes: Vec<(Size, u32)> = Vec::new();
    for page in &file.pages {
        let Some(found) = trimmed(page, Size::default(), Mm::ZERO, Mm::ZERO) else { continue };
        let size = found.size();
        let known = sizes.iter_mut().find(|(known, _)| same(*known, size, SAME));
        match known {
            Some((_, count)) => *count += 1,
            None => sizes.push((size, 1)),
        }
    }
    // The first of those that are as frequent.
    let most = sizes.iter().map(|(_, count)| *count).max()?;
    sizes.into_iter().find(|(_, count)| *count == most).map(|(size, _)| size)
}

fn bleed(file: &Facts) -> Option<Mm> {
    let mut least: Option<Mm> = None;
    for page in file.pages.iter().filter(|page| page.bleed.is_some()) {
        let found = trimmed(page, Size::default(), Mm::ZERO, Mm::ZERO)?;
        if found.assumed != Assumed::Stated {
            return None;
        }
        let bleed = Mm(found.frame.bleed(found.reach)).max(Mm::ZERO);
        least = Some(least.map_or(bleed, |least| least.min(bleed)));
    }
    least.filter(|least| *least > Mm::ZERO)
}
