//! What a guillotine has to do before and after the line, for the job card.

use super::{Route, Way};
use crate::job::{HeadFoot, Job};
use crate::units::{Mm, Size};

/// One step at a guillotine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Step {
    /// Before: each press sheet into flats.
    IntoFlats {
        /// Flats across the fold and along it.
        grid: (u32, u32),
        /// Size of each.
        flat: Size,
        /// Cuts of a pile.
        cuts: u32,
    },
    /// Before: head and foot off the uncut press sheet, down to this height.
    ToHeight(Mm),
    /// After: the stitched copies apart, two cuts so far from each other.
    Apart {
        /// Copies along the fold.
        copies: u32,
        /// Between two of them.
        gutter: Mm,
    },
    /// After: head and foot off the stitched copies, down to this height.
    Square(Mm),
}

impl Step {
    /// It comes before the line.
    #[must_use]
    pub const fn before(self) -> bool {
        matches!(self, Self::IntoFlats { .. } | Self::ToHeight(_))
    }
}

/// The steps of a job whose sheets are laid out in one way.
pub fn steps(job: &Job, way: &Way, travel_height: Mm) -> impl Iterator<Item = Step> {
    let before_height = job.head_foot == HeadFoot::Before;
    let first = match way.route {
        Route::CutFirst => Some(Step::IntoFlats {
            grid: way.grid,
            flat: if before_height { Size::new(way.flat.width, travel_height) } else { way.flat },
            cuts: way.cuts,
        })
        .filter(|_| way.cuts > 0),
        Route::Straight => before_height.then_some(Step::ToHeight(travel_height)),
    };
    let apart =
        (job.copies_up > 1).then_some(Step::Apart { copies: job.copies_up, gutter: job.gutter });
    let square = (job.head_foot == HeadFoot::After).then_some(Step::Square(job.size.height));
    [first, apart, square].into_iter().flatten()
}
