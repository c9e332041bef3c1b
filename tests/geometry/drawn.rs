//! Sheets around each other, drawn as polylines and measured.

use super::WIDTH;
use core::f64::consts::FRAC_PI_2;

/// Chords in a drawn corner.
const CHORDS: u32 = 800;

/// Depth into the book from the spine's foremost point, height over the book's middle plane; mm.
pub type Point = (f64, f64);

/// A straight line with the book's inside on its right.
#[derive(Debug, Clone, Copy)]
struct Line {
    through: Point,
    along: Point,
}

impl Line {
    pub fn between(from: Point, to: Point) -> Self {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length = dx.hypot(dy);
        Self { through: from, along: (dx / length, dy / length) }
    }
    /// The same line moved into the book.
    pub fn inward(self, by: f64) -> Self {
        let (x, y) = self.through;
        let (ax, ay) = self.along;
        Self { through: (x + by * ay, y - by * ax), ..self }
    }
    /// How far a point lies on the inside.
    pub fn inside(self, point: Point) -> f64 {
        let (dx, dy) = (point.0 - self.through.0, point.1 - self.through.1);
        dx * self.along.1 - dy * self.along.0
    }
    pub fn crossing(self, other: Self) -> Point {
        let (ax, ay) = self.along;
        let (bx, by) = other.along;
        let (dx, dy) = (other.through.0 - self.through.0, other.through.1 - self.through.1);
        let share = (dx * by - dy * bx) / (ax * by - ay * bx);
        (self.through.0 + share * ax, self.through.1 + share * ay)
    }
}

/// The upper half of a closed book: its outer face, from the middle of the spine to the face cut.
pub struct Book {
    pub outer: Vec<Point>,
    stack: f64,
    width: f64,
}

impl Book {
    pub fn new(stack: f64, corner: f64, width: f64) -> Self {
        let radius = stack * corner;
        let mut outer = Vec::new();
        if corner < 1.0 {
            outer.push((0.0, 0.0));
        }
        if corner > 0.0 {
            for chord in 0..=CHORDS {
                let turned = FRAC_PI_2 * f64::from(chord) / f64::from(CHORDS);
                let x = radius * (1.0 - turned.cos());
                let y = stack - radius * (1.0 - turned.sin());
                outer.push((x, y));
            }
        } else {
            outer.push((0.0, stack));
        }
        outer.push((width, stack));
        Self { outer, stack, width }
    }

    /// The line at a distance inside the outer face, from the book's middle plane to the face cut.
    pub fn line_at(&self, depth: f64) -> Vec<Point> {
        let middle_plane = Line { through: (self.width, 0.0), along: (-1.0, 0.0) };
        let face_cut = Line { through: (self.width, self.stack), along: (0.0, -1.0) };
        let chords =
            self.outer.windows(2).map(|pair| Line::between(pair[0], pair[1]).inward(depth));
        let mut kept: Vec<Line> = Vec::new();
        for line in core::iter::once(middle_plane).chain(chords).chain([face_cut]) {
            while let [.., before, last] = kept[..]
                && line.inside(before.crossing(last)) < 0.0
            {
                kept.pop();
            }
            kept.push(line);
        }
        kept.windows(2).map(|pair| pair[0].crossing(pair[1])).collect()
    }
}

pub fn length(points: &[Point]) -> f64 {
    points.windows(2).map(|pair| (pair[1].0 - pair[0].0).hypot(pair[1].1 - pair[0].1)).sum()
}

/// A drawn book, measured.
pub struct Drawn {
    pub book: Book,
    /// The outer face, half a book wide.
    pub outer: f64,
    /// The middle of each sheet, half a book wide, outermost first.
    pub middles: Vec<f64>,
    /// The height of each leaf's middle over the book's middle plane, at the face.
    pub heights: Vec<f64>,
}

impl Drawn {
    pub fn new(calipers: &[f64], corner: f64) -> Self {
        let book = Book::new(calipers.iter().sum(), corner, WIDTH);
        let mut depth = 0.0;
        let (mut middles, mut heights) = (Vec::new(), Vec::new());
        for caliper in calipers {
            let line = book.line_at(depth + caliper / 2.0);
            middles.push(length(&line));
            heights.push(line.last().unwrap().1);
            depth += caliper;
        }
        let outer = length(&book.line_at(0.0));
        Self { book, outer, middles, heights }
    }
    /// Sheets of equal width: how far the k-th stands out at the face beyond the outermost.
    pub fn push_out(&self, k: usize) -> f64 {
        self.middles[0] - self.middles[k]
    }
    /// Leaf of the k-th sheet from fold to face cut, where the outermost keeps the length of its
    /// outer face (a creased board does).
    pub fn leaf(&self, k: usize) -> f64 {
        self.outer - self.push_out(k)
    }
}
