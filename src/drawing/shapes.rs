//! What drawings are made of. Views turn these into SVG or PDF; nothing here knows how.

use crate::words::Say;

/// A place on the drawing, millimetres from its top left corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Downward.
    pub y: f64,
}

/// What a line means; the view knows how each looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pen {
    /// Edge of paper.
    Ink,
    /// Helping lines and dimensions.
    Hair,
    /// What stands on paper, or crosses its edge.
    Print,
    /// Bounds that are kept but not printed, such as a safe area.
    Dash,
    /// The cut, and only the cut.
    Cut,
    /// Wire.
    Wire,
    /// Paper of a kind (its id).
    Paper(&'static str),
}

/// How a text stands to its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// The point is the text's start.
    Start,
    /// The point is the text's middle.
    Middle,
    /// The point is the text's end.
    End,
}

/// One element.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A sheet seen from its edge: a path of straight pieces with rounded corners, as thick as paper.
    Sheet {
        /// From one face round the fold to the other.
        path: Vec<Point>,
        /// Radius of the corners.
        radius: f64,
        /// Thickness.
        thickness: f64,
        /// Its paper.
        pen: Pen,
        /// Draw its edges in ink (thick books ink every fifth).
        inked: bool,
        /// This piece is cut off: shown, but faintly.
        gone: bool,
    },
    /// A straight line.
    Line {
        /// Where it starts.
        from: Point,
        /// Where it ends.
        to: Point,
        /// How it looks.
        pen: Pen,
    },
    /// A dimension line with ticks and its words beside it. Words of an upright one hang below
    /// their point, so that a name can stand on the same point above them.
    Dimension {
        /// One end.
        from: Point,
        /// The other end.
        to: Point,
        /// What it measures.
        label: Say,
        /// Where the words stand.
        at: Point,
        /// How they stand there.
        anchor: Anchor,
    },
    /// Words.
    Text {
        /// What they name.
        pen: Pen,
        /// Where.
        at: Point,
        /// How they stand there.
        anchor: Anchor,
        /// What they say.
        words: Say,
    },
    /// A jagged line where something was left out.
    Break {
        /// How far right.
        x: f64,
        /// From here down.
        top: f64,
        /// To here.
        bottom: f64,
    },
}

/// How much room a drawing has. The same things are laid out for each, so that its words can be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Room {
    /// A desk, a tablet.
    #[default]
    Wide,
    /// A phone, a column on a sheet of paper.
    Narrow,
}

impl Room {
    /// One of two figures.
    pub(super) const fn pick(self, wide: f64, narrow: f64) -> f64 {
        match self {
            Self::Wide => wide,
            Self::Narrow => narrow,
        }
    }
    /// Width of a drawing.
    #[must_use]
    pub const fn width(self) -> f64 {
        self.pick(150.0, 90.0)
    }
    /// Size of its letters.
    #[must_use]
    pub const fn letter(self) -> f64 {
        self.pick(2.8, 3.1)
    }
}

/// A drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// Its name in element ids and files.
    pub id: &'static str,
    /// What it was laid out for.
    pub room: Room,
    /// What it shows, as a heading.
    pub title: Say,
    /// The same for somebody who cannot see it.
    pub description: Say,
    /// Millimetres to the right.
    pub width: f64,
    /// Millimetres down.
    pub height: f64,
    /// Everything on it, back to front.
    pub shapes: Vec<Shape>,
}

/// A place.
pub(super) const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

/// Shapes as they are drawn, back to front.
#[derive(Debug, Default)]
pub(super) struct Sketch {
    pub shapes: Vec<Shape>,
}

impl Sketch {
    pub(super) fn line(&mut self, from: Point, to: Point, pen: Pen) {
        self.shapes.push(Shape::Line { from, to, pen });
    }
    /// The outline between two opposite corners.
    pub(super) fn rectangle(&mut self, from: Point, to: Point, pen: Pen) {
        let corners = [from, at(to.x, from.y), to, at(from.x, to.y)];
        for (corner, next) in corners.into_iter().zip(corners.into_iter().cycle().skip(1)) {
            self.line(corner, next, pen);
        }
    }
    pub(super) fn text(&mut self, pen: Pen, at: Point, anchor: Anchor, words: Say) {
        self.shapes.push(Shape::Text { pen, at, anchor, words });
    }
    /// A straight strip of paper, or of anything else that is so thick.
    pub(super) fn strip(&mut self, from: Point, to: Point, thickness: f64, pen: Pen, gone: bool) {
        self.path(vec![from, to], 0.0, thickness, pen, gone);
    }
    /// A strip that turns.
    pub(super) fn path(
        &mut self,
        path: Vec<Point>,
        radius: f64,
        thickness: f64,
        pen: Pen,
        gone: bool,
    ) {
        let inked = matches!(pen, Pen::Paper(_) | Pen::Wire);
        self.shapes.push(Shape::Sheet { path, radius, thickness, pen, inked, gone });
    }
    /// A dimension with its words at a place.
    pub(super) fn dimension(
        &mut self,
        (from, to): (Point, Point),
        at: Point,
        anchor: Anchor,
        label: Say,
    ) {
        self.shapes.push(Shape::Dimension { from, to, label, at, anchor });
    }
    /// A level dimension with its words above the middle, kept within the drawing: `wide` is the
    /// drawing's width, `words` half of what the words may take.
    pub(super) fn level(
        &mut self,
        (from, to): (f64, f64),
        y: f64,
        (wide, words): (f64, f64),
        label: Say,
    ) {
        let middle = f64::midpoint(from, to).clamp(words, wide - words);
        self.dimension((at(from, y), at(to, y)), at(middle, y - 1.6), Anchor::Middle, label);
    }
    /// An upright dimension with its words beside it.
    pub(super) fn upright(&mut self, x: f64, (from, to): (f64, f64), anchor: Anchor, label: Say) {
        let beside = match anchor {
            Anchor::End => x - 1.7,
            Anchor::Start | Anchor::Middle => x + 1.7,
        };
        let middle = at(beside, f64::midpoint(from, to) - 1.2);
        self.dimension((at(x, from), at(x, to)), middle, anchor, label);
    }
}
