//! A document while it is drawn: pages, layers, lines and words in millimetres from the top left.
//!
//! What is drawn goes onto the last page. Words belong to the part of the document that is open; lines
//! belong to none, unless a figure is open. Nothing in it depends on when or where it is written.

use super::letters::Letters;
use super::tags::{self, Tags};
use crate::drawing::Anchor;
use crate::units::POINTS_PER_MM;
use pdf_writer::types::StructRole;
use pdf_writer::{Content, Finish, Name, Str, TextStr};

/// What the names of layers begin with, inside the file.
pub(super) const LAYER: &str = "L";
/// From one line of words to the next, in sizes of a letter.
pub(super) const LEADING: f64 = 1.4;

/// A rectangle: left, top, right and bottom, in millimetres from the top left.
pub(super) type Box4 = [f64; 4];

/// How a line looks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Ink {
    /// Red, green, blue; 0 … 1.
    pub colour: [f32; 3],
    /// Width in millimetres.
    pub width: f64,
    /// Stroke and gap in millimetres, where it is broken.
    pub dash: Option<(f32, f32)>,
}

/// Where words stand to their place, how large, and in what colour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Type {
    /// Size of a letter in millimetres.
    pub size: f64,
    /// Where the place is in them.
    pub anchor: Anchor,
    /// They stand upside down.
    pub turned: bool,
    /// Red, green, blue.
    pub colour: [f32; 3],
}

#[derive(Debug)]
pub(super) struct Page {
    pub size: (f64, f64),
    /// What is cut out of it, and how far a picture reaches that runs off.
    pub trim: Option<Box4>,
    pub bleed: Option<Box4>,
    /// Its operators.
    pub drawn: Vec<u8>,
}

/// A document.
pub(super) struct Document {
    pub layers: Vec<String>,
    pub pages: Vec<Page>,
    content: Content,
    pub tags: Tags,
    /// Some letter is not in the font's encoding.
    replaced: bool,
    figure: bool,
}

impl Document {
    /// A document with these layers, by their names.
    pub fn new(layers: Vec<String>) -> Self {
        let (content, tags) = (Content::new(), Tags::new());
        Self { layers, pages: Vec::new(), content, tags, replaced: false, figure: false }
    }

    /// The next page.
    pub fn page(&mut self, size: (f64, f64), trim: Option<Box4>, bleed: Option<Box4>) {
        self.end_page();
        self.pages.push(Page { size, trim, bleed, drawn: Vec::new() });
        self.tags.page();
    }

    /// Nothing more is drawn on the last page.
    pub fn end_page(&mut self) {
        let content = core::mem::replace(&mut self.content, Content::new());
        if let Some(page) = self.pages.last_mut() {
            page.drawn = content.finish().into_vec();
        }
    }

    /// Everything drawn in `draw` lies on a layer.
    pub fn layer(&mut self, layer: usize, draw: impl FnOnce(&mut Self)) {
        let name = format!("{LAYER}{layer}");
        let mark = self.content.begin_marked_content_with_properties(Name(b"OC"));
        mark.properties_named(Name(name.as_bytes()));
        draw(self);
        self.content.end_marked_content();
    }

    /// Everything drawn in `draw` is a part of the document, or of the part that is open.
    pub fn part(&mut self, role: StructRole, draw: impl FnOnce(&mut Self)) {
        self.tags.open(role, None);
        draw(self);
        self.tags.close();
    }

    /// Lines drawn in `draw` are a figure that shows this.
    pub fn figure(&mut self, shows: &str, draw: impl FnOnce(&mut Self)) {
        self.tags.open(StructRole::Figure, Some(clean(shows)));
        self.figure = true;
        draw(self);
        self.figure = false;
        self.tags.close();
    }

    /// Draws as a piece of the open figure; elsewhere as something to pass over.
    fn shape(&mut self, draw: impl FnOnce(&mut Content)) {
        if self.figure {
            let (role, number) = self.tags.draw();
            let mut mark = self.content.begin_marked_content_with_properties(tags::name(role));
            mark.properties().identify(number);
            mark.finish();
        } else {
            self.content.begin_marked_content(Name(b"Artifact"));
        }
        draw(&mut self.content);
        self.content.end_marked_content();
    }

    /// Straight lines of one look.
    pub fn lines(&mut self, ink: Ink, lines: &[Box4]) {
        let high = self.high();
        self.shape(|content| {
            let [red, green, blue] = ink.colour;
            content.set_stroke_rgb(red, green, blue).set_line_width(points(ink.width));
            let dash = ink.dash.map(|(stroke, gap)| [stroke, gap].map(|part| points(part.into())));
            content.set_dash_pattern(dash.into_iter().flatten(), 0.0);
            for [x, y, to_x, to_y] in lines {
                content.move_to(points(*x), points(high - y));
                content.line_to(points(*to_x), points(high - to_y));
            }
            content.stroke();
        });
    }

    /// An outline.
    pub fn outline(&mut self, ink: Ink, [left, top, right, bottom]: Box4) {
        self.lines(
            ink,
            &[
                [left, top, right, top],
                [right, top, right, bottom],
                [right, bottom, left, bottom],
                [left, bottom, left, top],
            ],
        );
    }

    /// Filled rectangles.
    pub fn filled(&mut self, colour: [f32; 3], areas: &[Box4]) {
        let high = self.high();
        self.shape(|content| {
            let [red, green, blue] = colour;
            content.set_fill_rgb(red, green, blue);
            for [left, top, right, bottom] in areas {
                let (wide, down) = (points(right - left), points(bottom - top));
                content.rect(points(*left), points(high - bottom), wide, down);
            }
            content.fill_nonzero();
        });
    }

    /// Words on one line; their place is where they begin, end or have their middle on the line they
    /// stand on.
    pub fn words(&mut self, style: Type, (x, y): (f64, f64), text: &str) {
        let text = clean(text);
        let letters = Letters::of(&text);
        self.replaced |= letters.replaced;
        let wide = letters.width(style.size);
        let back = match style.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => wide / 2.0,
            Anchor::End => wide,
        };
        let (back, way) = if style.turned { (-back, -1.0) } else { (back, 1.0) };
        let (left, high) = (x - back, self.high());
        let (role, number) = self.tags.draw();
        let mut mark = self.content.begin_marked_content_with_properties(tags::name(role));
        mark.properties().identify(number);
        mark.finish();
        // What was typed, for whoever reads aloud or copies.
        let replaced = letters.replaced;
        if replaced {
            let mut mark = self.content.begin_marked_content_with_properties(Name(b"Span"));
            mark.properties().actual_text(TextStr(&text));
        }
        let [red, green, blue] = style.colour;
        self.content
            .set_fill_rgb(red, green, blue)
            .begin_text()
            .set_font(Name(b"F"), points(style.size))
            .set_text_matrix([way, 0.0, 0.0, way, points(left), points(high - y)])
            .show(Str(&letters.bytes))
            .end_text();
        if replaced {
            self.content.end_marked_content();
        }
        self.content.end_marked_content();
    }

    /// A sentence in lines no wider than this; gives back where the next would stand.
    pub fn sentence(&mut self, style: Type, (x, y): (f64, f64), wide: f64, text: &str) -> f64 {
        let mut y = y;
        for line in broken(text, wide, style.size) {
            self.words(style, (x, y), &line);
            y += style.size * LEADING;
        }
        y
    }

    /// The same with its last line at this place: at the foot of a page, seen the way it is read.
    pub fn rising(&mut self, style: Type, (x, y): (f64, f64), wide: f64, text: &str) {
        let step = if style.turned { -LEADING } else { LEADING } * style.size;
        let lines = broken(text, wide, style.size);
        for (above, line) in lines.iter().rev().enumerate() {
            self.words(style, (x, y - step * above as f64), line);
        }
    }

    /// Whether anything was replaced so far.
    pub const fn replaced(&self) -> bool {
        self.replaced
    }

    fn high(&self) -> f64 {
        self.pages.last().map_or(0.0, |page| page.size.1)
    }
}

/// Millimetres in points.
pub(super) const fn points(length: f64) -> f32 {
    (length * POINTS_PER_MM) as f32
}

/// Without signs that are no letters: some of them mean something in a file.
pub(super) fn clean(text: &str) -> String {
    text.chars().map(|letter| if letter.is_control() { ' ' } else { letter }).collect()
}

/// Words in lines no wider than this; a single word that is wider stands alone.
pub(super) fn broken(text: &str, wide: f64, size: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split(' ') {
        match lines.last_mut() {
            Some(line) if Letters::of(&format!("{line} {word}")).width(size) <= wide => {
                line.extend([" ", word]);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}
