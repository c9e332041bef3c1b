//! Where the finished page lies on a page of the file, and what reaches beyond it.

use super::{Frame, PageFacts};
use crate::units::{Mm, Size};

/// The edge that is bound. Sizes of a job lie spine to face; pages are seen upright.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Binding {
    /// On the left of page 1.
    Left,
    /// At the top of page 1, as on a calendar.
    Top,
}

impl Binding {
    /// A page of the book as it is seen, width across.
    #[must_use]
    pub const fn seen(self, size: Size) -> Size {
        match self {
            Self::Left => size,
            Self::Top => Size::new(size.height, size.width),
        }
    }
}

/// What was taken for the finished page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Assumed {
    /// The TrimBox, as the file states.
    Stated,
    /// The page without the bleed that it is larger by on all four edges; there is no TrimBox.
    Bled,
    /// The CropBox; there is no TrimBox.
    Crop,
    /// The whole page; there is neither TrimBox nor CropBox.
    Page,
    /// Nothing: there is no box at all, so no size.
    Nothing,
}

/// The finished page on a page of the file.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trimmed {
    /// Where it lies.
    pub frame: Frame,
    /// As far as there can be picture: the BleedBox, or the whole page where there is none.
    pub reach: Frame,
    /// What it was taken from.
    pub assumed: Assumed,
}

impl Trimmed {
    /// Size of the finished page as it is seen.
    #[must_use]
    pub fn size(&self) -> Size {
        Size::new(Mm(self.frame.width()), Mm(self.frame.height()))
    }
    /// How far the file is from a size: what was taken from a page with bleed is held against that page.
    pub(super) fn off(&self, wanted: Size, bleed: Mm) -> f64 {
        let (frame, more) = match self.assumed {
            Assumed::Bled => (self.reach, bleed * 2.0),
            _ => (self.frame, Mm::ZERO),
        };
        let far = |given: f64, wanted: Mm| (Mm(given) - wanted - more).get().abs();
        far(frame.width(), wanted.width) + far(frame.height(), wanted.height)
    }
    /// Picture beyond the finished page: left, bottom, right, top. Never below nothing.
    #[must_use]
    pub fn beyond(&self) -> [Mm; 4] {
        self.frame.beyond(self.reach).map(|length| Mm(length).max(Mm::ZERO))
    }
}

/// Finds the finished page. `wanted` is its size as it is seen, `bleed` what it should have, and within
/// `tolerance` two lengths are the same. Nothing where the file states no box.
#[must_use]
pub fn trimmed(page: &PageFacts, wanted: Size, bleed: Mm, tolerance: Mm) -> Option<Trimmed> {
    let sheet = page.media?;
    let shown = page.crop.and_then(|crop| crop.within(sheet));
    let reach = page.bleed.and_then(|bleed| bleed.within(sheet)).unwrap_or(sheet);
    if let Some(frame) = page.trim.and_then(|trim| trim.within(sheet)) {
        return Some(Trimmed { frame, reach, assumed: Assumed::Stated });
    }
    let outer = shown.unwrap_or(sheet);
    let larger = |given: f64, wanted: Mm| (Mm(given) - wanted - bleed * 2.0).get().abs();
    let bled = bleed > Mm::ZERO
        && larger(outer.width(), wanted.width) <= tolerance.get()
        && larger(outer.height(), wanted.height) <= tolerance.get();
    if bled {
        // The finished page is taken to lie in the middle.
        let aside = (outer.width() - wanted.width.get()) / 2.0;
        let above = (outer.height() - wanted.height.get()) / 2.0;
        let frame = Frame {
            left: outer.left + aside,
            bottom: outer.bottom + above,
            right: outer.right - aside,
            top: outer.top - above,
        };
        return Some(Trimmed { frame, reach: outer.within(reach)?, assumed: Assumed::Bled });
    }
    let assumed = if shown.is_some() { Assumed::Crop } else { Assumed::Page };
    Some(Trimmed { frame: outer, reach, assumed })
}
