//! A PDF that is to be made of pages that came in. Lengths in millimetres, from the lower left corner.

use super::{Frame, Part};
use serde::{Deserialize, Serialize};

/// How a place goes to another: (x, y) to (a x + c y + e, b x + d y + f), from a to f.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Matrix(pub [f64; 6]);

impl Matrix {
    /// To the right and up by so much.
    #[must_use]
    pub const fn shift(x: f64, y: f64) -> Self {
        Self([1.0, 0.0, 0.0, 1.0, x, y])
    }
    /// Larger by a factor.
    #[must_use]
    pub const fn scale(factor: f64) -> Self {
        Self([factor, 0.0, 0.0, factor, 0.0, 0.0])
    }
    /// So many quarter turns clockwise about the origin, as [`Frame::turned`].
    #[must_use]
    pub const fn turned(quarters: u8) -> Self {
        Self(match quarters % 4 {
            1 => [0.0, -1.0, 1.0, 0.0, 0.0, 0.0],
            2 => [-1.0, 0.0, 0.0, -1.0, 0.0, 0.0],
            3 => [0.0, 1.0, -1.0, 0.0, 0.0, 0.0],
            _ => [1.0, 0.0, 0.0, 1.0, 0.0, 0.0],
        })
    }
    /// This one, then another.
    #[must_use]
    pub const fn then(self, next: Self) -> Self {
        let ([a, b, c, d, e, f], [na, nb, nc, nd, ne, nf]) = (self.0, next.0);
        Self([
            na * a + nc * b,
            nb * a + nd * b,
            na * c + nc * d,
            nb * c + nd * d,
            na * e + nc * f + ne,
            nb * e + nd * f + nf,
        ])
    }
    /// The way back, where it turns and shifts only.
    #[must_use]
    pub const fn back(self) -> Self {
        let [a, b, c, d, e, f] = self.0;
        Self([a, c, b, d, -(a * e + b * f), -(c * e + d * f)])
    }
    /// Where a place goes.
    #[must_use]
    pub const fn of(self, x: f64, y: f64) -> (f64, f64) {
        let [a, b, c, d, e, f] = self.0;
        (a * x + c * y + e, b * x + d * y + f)
    }
    /// Where a rectangle goes, as long as it is turned by quarters at most.
    #[must_use]
    pub fn frame(self, frame: Frame) -> Frame {
        let (x, y) = self.of(frame.left, frame.bottom);
        let (to_x, to_y) = self.of(frame.right, frame.top);
        let sorted = |a: f64, b: f64| if a < b { (a, b) } else { (b, a) };
        let ((left, right), (bottom, top)) = (sorted(x, to_x), sorted(y, to_y));
        Frame { left, bottom, right, top }
    }
}

/// A page of a file on a page that is to be made.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Placed {
    /// Which file.
    pub part: Part,
    /// Which of its pages, counted from 0.
    pub page: u32,
    /// From the page as it is seen in its file to the page that is made.
    pub matrix: Matrix,
    /// Nothing of it shows outside of this.
    pub clip: Frame,
}

/// A page that is to be made.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct OrderPage {
    /// Across and down.
    pub size: (f64, f64),
    /// It is shown turned clockwise by so many quarters.
    pub turned: u8,
    /// What lies on it; nothing for a blank.
    pub placed: Vec<Placed>,
    /// What is drawn over it, as operators of a page with the font F; may be empty.
    pub marks: Vec<u8>,
}

/// A document that is to be made.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Order {
    /// Its title.
    pub title: String,
    /// The tag of its language.
    pub language: String,
    /// The name of the layer that marks lie on.
    pub layer: String,
    /// Its pages.
    pub pages: Vec<OrderPage>,
}

#[cfg(test)]
mod tests {
    use super::Matrix;
    use crate::intake::Frame;

    #[test]
    fn a_turn_of_a_frame_and_of_its_corners_is_the_same() {
        let frame = Frame { left: 1.0, bottom: 2.0, right: 30.0, top: 7.0 };
        for quarters in 0..4 {
            assert_eq!(Matrix::turned(quarters).frame(frame), frame.turned(quarters));
        }
        let both = Matrix::turned(1).then(Matrix::shift(3.0, 4.0));
        assert_eq!(both.of(10.0, 20.0), (23.0, -6.0), "first the turn, then the shift");
        assert_eq!(both.back().of(23.0, -6.0), (10.0, 20.0));
    }
}
