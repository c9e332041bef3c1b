//! The shape of the fold, one number: how much path each sheet saves by lying further inside.
//!
//! # Derivation
//! Closed, the sheets are parallel curves. A curve at the distance d inside another that turns by the
//! angle θ about the same centre is shorter by θ·d. From the spine's middle to a leaf a sheet turns
//! π/2. While the outer corner's radius R reaches in as far as d, that gives (π/2)·d; beyond R the
//! corner of the inner curve is sharp and each further step saves one step along the spine and one
//! along the leaf, 2 in all:
//!
//! E(d) = (π/2)·d for d ≤ R, (π/2)·R + 2·(d − R) beyond.
//!
//! R = H is a round fold, R = 0 an ideal square back. The tests draw the sheets as polylines and
//! measure them.

use crate::units::Mm;
use core::f64::consts::FRAC_PI_2;

/// The step factor of an ideal square corner: one step along the spine, one along the leaf.
const SQUARE_FACTOR: f64 = 2.0;

/// One shape of a fold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shape {
    /// R / H: radius of the outer corner as a share of the stack, 0 (square) to 1 (round).
    pub corner: f64,
    /// Below 1 where paper crushed in the crease saves less path than geometry says, above 1 where
    /// a part-empty fold saves more.
    pub crush: f64,
}

/// The doubt about a shape: which to reckon with at the low end, as likely, at the high end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fold {
    /// Least push-out.
    pub low: Shape,
    /// As likely.
    pub nominal: Shape,
    /// Most push-out.
    pub high: Shape,
}

impl Shape {
    /// A round fold: the corner reaches through the whole stack.
    pub const ROUND: Self = Self { corner: 1.0, crush: 1.0 };
    /// An ideal square back.
    pub const SQUARE: Self = Self { corner: 0.0, crush: 1.0 };

    /// The shape whose mean factor over the stack is `factor`: push-out of the innermost leaf
    /// divided by the stack step it rose over.
    ///
    /// Between π/2 and 2 it is geometry: 2 − (2 − π/2)·R/H = factor. Outside, paper was crushed or
    /// the fold part empty, and the nearer shape is scaled.
    #[must_use]
    pub fn of_factor(factor: f64) -> Self {
        if factor < FRAC_PI_2 {
            Self { crush: factor / FRAC_PI_2, ..Self::ROUND }
        } else if factor > SQUARE_FACTOR {
            Self { crush: factor / SQUARE_FACTOR, ..Self::SQUARE }
        } else {
            let corner = (SQUARE_FACTOR - factor) / (SQUARE_FACTOR - FRAC_PI_2);
            Self { corner, crush: 1.0 }
        }
    }

    /// The mean factor over the stack, the inverse of [`Shape::of_factor`].
    #[must_use]
    pub fn factor(self) -> f64 {
        self.crush * (SQUARE_FACTOR - (SQUARE_FACTOR - FRAC_PI_2) * self.corner)
    }

    /// E(d): path saved by a curve at the distance `depth` from the outer face, half a book wide.
    ///
    /// `depth` from 0 to `stack`; both in mm.
    #[must_use]
    #[inline(always)] // Six times a leaf: built for size, the call would cost more than the sums.
    pub fn path_saved(self, depth: Mm, stack: Mm) -> Mm {
        let radius = stack * self.corner;
        let in_corner = depth.min(radius);
        let beyond = (depth - radius).max(Mm::ZERO);
        (in_corner * FRAC_PI_2 + beyond * SQUARE_FACTOR) * self.crush
    }

    /// Path that the fold takes from the outer face of the outermost leaf beyond the finished width:
    /// wrap = E(H) − H = H − (2 − π/2)·R. Never negative.
    ///
    /// ```
    /// use quirefit_input::units::Mm;
    /// use quirefit_planning::book::Shape;
    /// let wrap = Shape::SQUARE.wrap(Mm(2.5));
    /// assert_eq!(wrap, Mm(2.5)); // open cover = 2 × width + S
    /// ```
    #[must_use]
    pub fn wrap(self, stack: Mm) -> Mm {
        (self.path_saved(stack, stack) - stack).max(Mm::ZERO)
    }

    /// The factor that remains when the book lies open at an angle: (π − β)/2 for a round fold, with
    /// β from 0 (closed) to π (flat) in radians.
    #[must_use]
    pub fn factor_open_at(self, angle: f64) -> f64 {
        self.factor() * (core::f64::consts::PI - angle) / core::f64::consts::PI
    }
}

impl Fold {
    /// A fold whose shape is known.
    #[must_use]
    pub const fn certain(shape: Shape) -> Self {
        Self { low: shape, nominal: shape, high: shape }
    }
    /// An unmeasured round fold: π/2 throughout.
    pub const ROUND: Self = Self::certain(Shape::ROUND);
    /// An unmeasured square back: between π/2 and 2, and 2 is what to reckon with.
    pub const SQUARE: Self =
        Self { low: Shape::ROUND, nominal: Shape::SQUARE, high: Shape::SQUARE };

    /// A fold measured on a dummy, with the error of the reading.
    #[must_use]
    pub fn measured(factor: f64, error: f64) -> Self {
        Self {
            low: Shape::of_factor((factor - error).max(0.0)),
            nominal: Shape::of_factor(factor),
            high: Shape::of_factor(factor + error),
        }
    }
}
