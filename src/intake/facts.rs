//! What stands in a PDF, as the reader's module hands it over: numbers, no PDF.

use serde::{Deserialize, Serialize};

/// A rectangle on a page, in millimetres, as the page is seen: turned as its file says.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Frame {
    /// Left edge.
    pub left: f64,
    /// Lower edge.
    pub bottom: f64,
    /// Right edge.
    pub right: f64,
    /// Upper edge.
    pub top: f64,
}

impl Frame {
    /// From left to right.
    #[must_use]
    pub fn width(self) -> f64 {
        self.right - self.left
    }
    /// From bottom to top.
    #[must_use]
    pub fn height(self) -> f64 {
        self.top - self.bottom
    }
    /// After so many quarter turns clockwise about the origin.
    #[must_use]
    pub fn turned(self, quarters: u8) -> Self {
        (0..quarters % 4).fold(self, |frame, _| Self {
            left: frame.bottom,
            bottom: -frame.right,
            right: frame.top,
            top: -frame.left,
        })
    }
    /// How far another reaches beyond it: left, bottom, right, top.
    #[must_use]
    pub fn beyond(self, reach: Self) -> [f64; 4] {
        [
            self.left - reach.left,
            self.bottom - reach.bottom,
            reach.right - self.right,
            reach.top - self.top,
        ]
    }
    /// The least of that but one: the bound edge is not cut and needs none.
    #[must_use]
    pub fn bleed(self, reach: Self) -> f64 {
        let (mut least, mut next) = (f64::INFINITY, f64::INFINITY);
        for beyond in self.beyond(reach) {
            if beyond < least {
                (least, next) = (beyond, least);
            } else if beyond < next {
                next = beyond;
            }
        }
        next
    }
    /// What lies in both; nothing where they do not meet.
    #[must_use]
    pub fn within(self, other: Self) -> Option<Self> {
        let greater = |a: f64, b: f64| if a > b { a } else { b };
        let lesser = |a: f64, b: f64| if a < b { a } else { b };
        let both = Self {
            left: greater(self.left, other.left),
            bottom: greater(self.bottom, other.bottom),
            right: lesser(self.right, other.right),
            top: lesser(self.top, other.top),
        };
        (both.width() > 0.0 && both.height() > 0.0).then_some(both)
    }
}

/// One page of a file. A box that the file does not state, or that has no area, is nothing.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct PageFacts {
    /// The whole page (MediaBox).
    pub media: Option<Frame>,
    /// What is shown (CropBox).
    pub crop: Option<Frame>,
    /// The finished page (TrimBox).
    pub trim: Option<Frame>,
    /// The finished page with what reaches beyond the cut (BleedBox).
    pub bleed: Option<Frame>,
    /// Quarter turns clockwise by which it is shown; the boxes are turned already.
    pub turned: u8,
    /// Nothing is drawn on it: it has no content stream, or only white space in it.
    pub empty: bool,
}

/// A sign that a file is not whole. It could be read all the same.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Damage {
    /// So many bytes stand before the file's own beginning.
    Before(u32),
    /// Its end is missing: it may have been cut off on the way.
    NoEnd,
    /// Its list of contents is not where it says: pages were found by searching.
    Index,
    /// It says that it has another number of pages than are found.
    Pages {
        /// What it says.
        said: u32,
        /// What is there.
        found: u32,
    },
}

/// What stands in a PDF.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Facts {
    /// How large the file is, in bytes.
    pub bytes: u64,
    /// It is encrypted, and opens with the password given, or without one.
    pub encrypted: bool,
    /// What is wrong with it.
    pub damage: Vec<Damage>,
    /// Its pages, in order. At least one.
    pub pages: Vec<PageFacts>,
}

/// Why a file gives no facts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Unreadable {
    /// There is nothing in it.
    Empty,
    /// It is no PDF.
    NoPdf,
    /// It needs a password, or another one.
    Password,
    /// It is encrypted in a way that the reader does not know.
    Cipher,
    /// It is a PDF, but no page of it can be found.
    Broken,
}

#[cfg(test)]
mod tests {
    use super::Frame;

    /// A page that says "turn me clockwise": its left edge is seen at the top, its foot at the left.
    #[test]
    fn a_quarter_turn_takes_the_left_edge_to_the_top() {
        let page = Frame { left: 0.0, bottom: 0.0, right: 100.0, top: 200.0 };
        let mark = Frame { left: 1.0, bottom: 10.0, right: 31.0, top: 30.0 };
        let (seen, there) = (page.turned(1), mark.turned(1));
        assert_eq!((seen.width(), seen.height()), (200.0, 100.0));
        assert_eq!(seen.top - there.top, 1.0, "1 mm from the left is 1 mm from the top");
        assert_eq!(there.left - seen.left, 10.0, "10 mm from the foot is 10 mm from the left");
        assert_eq!(mark.turned(2).turned(2), mark);
        assert_eq!(mark.turned(3).turned(1), mark);
    }
}
