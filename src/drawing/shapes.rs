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

/// A drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// Its name in element ids and files.
    pub id: &'static str,
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
