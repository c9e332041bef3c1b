//! Page numbers on every sheet, blanks, and which facing pages come from one sheet.

use crate::job::{Job, Numbering};
use crate::units::{PAGES_PER_SHEET, Pages, Sheets};

/// The number printed on a side of a leaf.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Folio {
    /// A page of the inside, counted from 1.
    Page(u32),
    /// A side of a separate cover: 1 outside front, 2 inside front, 3 inside back, 4 outside back.
    Cover(u32),
}

/// The four sides of a folded sheet, laid flat: the front is the side that faces out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Folios {
    /// Outer side, left half.
    pub front_left: Folio,
    /// Outer side, right half.
    pub front_right: Folio,
    /// Inner side, left half.
    pub back_left: Folio,
    /// Inner side, right half.
    pub back_right: Folio,
}

impl Folios {
    /// All four.
    #[must_use]
    pub const fn all(self) -> [Folio; PAGES_PER_SHEET as usize] {
        [self.front_left, self.front_right, self.back_left, self.back_right]
    }
}

/// Sheet k of n, N = 4n: front N−2k+2 | 2k−1, back 2k | N−2k+1 (printers' handbooks, 1912 on).
///
/// A separate cover is numbered apart: then k and n count the sheets inside it.
#[must_use]
pub fn folios(job: &Job, place: u32, sheets: Sheets) -> Folios {
    let apart = u32::from(job.numbering == Numbering::SeparateCover);
    let of_cover = place <= apart;
    let (k, n) = if of_cover { (1, 1) } else { (place - apart, sheets.get() - apart) };
    let folio = |number| if of_cover { Folio::Cover(number) } else { Folio::Page(number) };
    let last = PAGES_PER_SHEET * n;
    Folios {
        front_left: folio(last - 2 * k + 2),
        front_right: folio(2 * k - 1),
        back_left: folio(2 * k),
        back_right: folio(last - 2 * k + 1),
    }
}

/// Blank pages: sides of the sheets that nobody asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Blanks {
    /// Pages asked for, cover not counted when it is separate.
    pub asked: Pages,
    /// Pages the sheets have.
    pub made: Pages,
    /// The next count down that fills its sheets.
    pub down: Pages,
}

impl Blanks {
    /// How many pages stay blank, at the end of the book.
    #[must_use]
    pub fn count(self) -> Pages {
        self.made - self.asked
    }
    /// Page numbers that stay blank; empty when none does.
    pub fn numbers(self) -> impl Iterator<Item = u32> {
        self.asked.get() + 1..=self.made.get()
    }
}

/// The blanks of a job.
#[must_use]
pub fn blanks(job: &Job) -> Blanks {
    let inside = job.sections.iter().filter(|section| section.role != crate::job::Role::Cover);
    let (asked, sheets) = inside.fold((Pages(0), Sheets(0)), |(pages, sheets), section| {
        (pages + section.pages, sheets + section.sheets)
    });
    let made = sheets.pages();
    let down = Pages(asked.get() / PAGES_PER_SHEET * PAGES_PER_SHEET);
    Blanks { asked, made, down }
}

/// Two pages that face each other in the finished book.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spread {
    /// Even page on the left.
    pub left: u32,
    /// Odd page on the right.
    pub right: u32,
    /// Place of the sheet that carries the left page.
    pub left_sheet: u32,
    /// Place of the sheet that carries the right page; the same only at the centre.
    pub right_sheet: u32,
}

/// Every pair of facing pages of the inside. Only the pair at the centre is printed side by side on
/// one sheet; all others meet from two sheets, so a picture across them is a crossover.
pub fn spreads(job: &Job) -> impl Iterator<Item = Spread> {
    let apart = u32::from(job.numbering == Numbering::SeparateCover);
    let sheets = job.sheets().get() - apart.min(job.sheets().get());
    let last = PAGES_PER_SHEET * sheets;
    let sheet_of = move |page: u32| apart + page.min(last + 1 - page).div_ceil(2);
    (1..last / 2).map(move |pair| {
        let (left, right) = (2 * pair, 2 * pair + 1);
        Spread { left, right, left_sheet: sheet_of(left), right_sheet: sheet_of(right) }
    })
}
