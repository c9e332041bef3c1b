//! Where the sheets of a closed book lie: the one place that knows their paths round the fold.

use super::shapes::at;
use super::{Pen, Point, Shape};
use crate::plan::{Leaf, Plan};

/// Magnifications that people can picture.
const MAGNIFICATIONS: [f64; 21] = [
    1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0,
    60.0, 80.0, 100.0, 150.0,
];

/// The largest magnification up to `most` that fits; else what just fits.
pub(super) fn magnification(fits: f64, most: f64) -> f64 {
    let round = MAGNIFICATIONS.iter().rev().find(|scale| **scale <= fits && **scale <= most);
    round.copied().unwrap_or(fits)
}

/// The fold's end of a book on a drawing.
#[derive(Debug, Clone, Copy)]
pub(super) struct Nest {
    /// Drawing for a millimetre of book.
    pub scale: f64,
    /// H, millimetres of book.
    pub flat: f64,
    /// Radius of the outer corner, millimetres of book.
    pub corner: f64,
    /// The spine's outer face.
    pub spine: f64,
    /// The plane between the two halves of the book.
    pub middle: f64,
}

impl Nest {
    /// The fold of a plan, with its spine and its middle plane at these places.
    pub(super) fn of(plan: &Plan, scale: f64, spine: f64, middle: f64) -> Self {
        let flat = plan.results.stack.flat.nominal.0.get();
        let corner = plan.results.fold.fold.nominal.corner * flat;
        Self { scale, flat, corner, spine, middle }
    }
    /// Height of the upper and of the lower face.
    pub(super) fn faces(&self) -> (f64, f64) {
        let half = self.flat * self.scale;
        (self.middle - half, self.middle + half)
    }
    /// The innermost point of the fold.
    pub(super) fn inmost(&self) -> f64 {
        self.spine + self.flat * self.scale
    }
    /// Height of a leaf's middle in the upper and in the lower half.
    pub(super) fn levels(&self, leaf: &Leaf) -> (f64, f64) {
        let reach = (self.flat - leaf.depth.get().min(self.flat)) * self.scale;
        (self.middle - reach, self.middle + reach)
    }
    /// The middle of a sheet round the fold, open toward `end`, and the radius of its corners.
    pub(super) fn path(&self, leaf: &Leaf, end: f64) -> (Vec<Point>, f64) {
        let depth = leaf.depth.get().min(self.flat);
        let x = self.spine + depth * self.scale;
        let (above, below) = self.levels(leaf);
        let path = vec![at(end, above), at(x, above), at(x, below), at(end, below)];
        (path, (self.corner - depth).max(0.0) * self.scale)
    }
    /// A sheet round the fold.
    pub(super) fn sheet(&self, leaf: &Leaf, end: f64, pen: Pen, inked: bool) -> Shape {
        let (path, radius) = self.path(leaf, end);
        let thickness = leaf.caliper.nominal.get() * self.scale;
        Shape::Sheet { path, radius, thickness, pen, inked, gone: false }
    }
}
