//! Whole numbers of things that are never mixed: pages, leaves, sheets, copies.

use core::ops::{Add, Sub};

/// Sides of a leaf.
pub const PAGES_PER_LEAF: u32 = 2;
/// Leaves of a sheet folded once.
pub const LEAVES_PER_SHEET: u32 = 2;
/// Pages of a sheet folded once.
pub const PAGES_PER_SHEET: u32 = PAGES_PER_LEAF * LEAVES_PER_SHEET;

/// Defines one kind of count.
macro_rules! count {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Hash)]
        pub struct $name(pub u32);

        impl $name {
            /// The bare number.
            #[must_use]
            pub const fn get(self) -> u32 {
                self.0
            }
            /// As a floating-point number, for geometry.
            #[must_use]
            pub const fn as_f64(self) -> f64 {
                self.0 as f64
            }
        }
        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0.saturating_add(other.0))
            }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0.saturating_sub(other.0))
            }
        }
    };
}

count!(
    /// Pages: sides of leaves.
    Pages
);
count!(
    /// Leaves: halves of folded sheets, two pages each.
    Leaves
);
count!(
    /// Folded sheets: two leaves, four pages each.
    Sheets
);
count!(
    /// Copies of the finished book.
    Copies
);

impl Pages {
    /// Sheets needed to hold these pages; the last may carry blanks.
    ///
    /// ```
    /// use quirefit_input::units::{Pages, Sheets};
    /// assert_eq!(Pages(10).sheets(), Sheets(3));
    /// ```
    #[must_use]
    pub const fn sheets(self) -> Sheets {
        Sheets(self.0.div_ceil(PAGES_PER_SHEET))
    }
    /// Blank pages needed to fill the last sheet.
    #[must_use]
    pub const fn blanks(self) -> Self {
        Self(self.sheets().pages().0 - self.0)
    }
    /// Leaves that carry these pages.
    #[must_use]
    pub const fn leaves(self) -> Leaves {
        Leaves(self.0.div_ceil(PAGES_PER_LEAF))
    }
}

impl Sheets {
    /// Pages of so many folded sheets.
    #[must_use]
    pub const fn pages(self) -> Pages {
        Pages(self.0.saturating_mul(PAGES_PER_SHEET))
    }
}

impl Leaves {
    /// Pages of so many leaves.
    #[must_use]
    pub const fn pages(self) -> Pages {
        Pages(self.0.saturating_mul(PAGES_PER_LEAF))
    }
}
