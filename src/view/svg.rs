//! Drawings as SVG, with presentation attributes so that a saved file looks like the page; the
//! page's own style sheet may overrule them by class.

use super::Printer;
use crate::drawing::{Anchor, Drawing, Pen, Point, Room, Shape};
use crate::units::{fixed, trimmed};
use maud::{Markup, html};

/// Length of a dimension's end tick, to either side and up and down.
const TICK: f64 = 0.8;

/// Ink.
const INK: &str = "#1b2531";
/// Gap around the cut.
const KERF: &str = "1.2";
/// How much is seen of what is cut off.
const FAINT: &str = "0.4";

/// One drawing as an `svg` element with title and description.
#[must_use]
pub fn svg(drawing: &Drawing, printer: &Printer) -> Markup {
    sized(drawing, printer, None)
}

/// The same in true size, where it is known how many pixels a millimetre takes.
#[must_use]
pub fn sized(drawing: &Drawing, printer: &Printer, millimetre: Option<f64>) -> Markup {
    let room = match drawing.room {
        Room::Wide => "drawing ",
        Room::Narrow => "drawing narrow ",
    };
    let pixels = |length: f64| millimetre.map(|pixels| short(length * pixels));
    let title = format!("{}-title", drawing.id);
    let description = format!("{}-description", drawing.id);
    html! {
        svg xmlns="http://www.w3.org/2000/svg" class={ (room) (drawing.id) } role="img"
            width=[pixels(drawing.width)] height=[pixels(drawing.height)]
            font-size=(short(drawing.room.letter())) viewBox={ "0 0 " (short(drawing.width)) " " (short(drawing.height)) }
            aria-labelledby={ (title) " " (description) } {
            title id=(title) { (printer.text(&drawing.title)) }
            desc id=(description) { (printer.text(&drawing.description)) }
            (shapes(drawing, printer))
        }
    }
}

/// A drawing as a file of its own: as many millimetres as it has, on white, with letters of its own.
#[must_use]
pub fn alone(drawing: &Drawing, printer: &Printer) -> Markup {
    let (width, height) = (short(drawing.width), short(drawing.height));
    html! {
        svg xmlns="http://www.w3.org/2000/svg" width={ (width) "mm" } height={ (height) "mm" }
            viewBox={ "0 0 " (width) " " (height) } font-family="sans-serif"
            font-size=(short(drawing.room.letter())) fill=(INK) {
            title { (printer.text(&drawing.title)) }
            desc { (printer.text(&drawing.description)) }
            rect width=(width) height=(height) fill="#ffffff" {}
            (shapes(drawing, printer))
        }
    }
}

fn shapes(drawing: &Drawing, printer: &Printer) -> Markup {
    html! {
        @for run in drawing.shapes.chunk_by(|one, next| is_sheet(one) && is_sheet(next)) {
            (sheets(run))
            @for shape in run { (element(shape, printer)) }
        }
    }
}

const fn is_sheet(shape: &Shape) -> bool {
    matches!(shape, Shape::Sheet { .. })
}

/// Sheets that lie on each other. Those that look alike are one path: browsers take several times as
/// long for a path each, and a thick book has hundreds.
fn sheets(run: &[Shape]) -> Markup {
    let mut looks: Vec<((f64, Pen, bool, bool), String)> = Vec::new();
    for shape in run {
        let Shape::Sheet { path, radius, thickness, pen, inked, gone } = shape else { continue };
        let look = (*thickness, *pen, *inked, *gone);
        let path = rounded(path, *radius);
        match looks.iter_mut().find(|(other, _)| *other == look) {
            Some((_, paths)) => paths.push_str(&path),
            None => looks.push((look, path)),
        }
    }
    html! {
        @for ((thickness, pen, inked, gone), path) in &looks {
            // Ink first, paper on top of it a hair thinner: the sheet keeps its true thickness.
            @let edge = if *inked { (thickness / 5.0).min(0.18) } else { 0.0 };
            g fill="none" class=[gone.then_some("gone")] opacity=[gone.then_some(FAINT)] {
                @if *inked {
                    path d=(path) class="edge" stroke=(INK) stroke-width=(short(*thickness)) {}
                }
                path d=(path) class=(class(*pen)) stroke=(colour(*pen))
                    stroke-width=(short(thickness - edge)) stroke-dasharray=[dashes(*pen)] {}
            }
        }
    }
}

/// Anything but a sheet.
fn element(shape: &Shape, printer: &Printer) -> Markup {
    match shape {
        Shape::Sheet { .. } => html! {},
        Shape::Line { from, to, pen } => html! {
            // The knife leaves a gap: red never touches paper, whatever its tint.
            @if *pen == Pen::Cut {
                line x1=(short(from.x)) y1=(short(from.y)) x2=(short(to.x)) y2=(short(to.y))
                    class="kerf" stroke="#ffffff" stroke-width=(KERF) {}
            }
            line x1=(short(from.x)) y1=(short(from.y)) x2=(short(to.x)) y2=(short(to.y))
                class=(class(*pen)) stroke=(colour(*pen)) stroke-width=(width(*pen))
                stroke-linecap=[(*pen == Pen::Wire).then_some("round")] stroke-dasharray=[dashes(*pen)] {}
        },
        Shape::Dimension { from, to, label, at, anchor } => {
            let upright = (from.x - to.x).abs() < (from.y - to.y).abs();
            html! {
                g class="dimension" {
                    (line(*from, *to))
                    @for end in [from, to] {
                        (line(Point { x: end.x - TICK, y: end.y + TICK }, Point { x: end.x + TICK, y: end.y - TICK }))
                    }
                    (words(Pen::Ink, *at, *anchor, upright, &printer.text(label)))
                }
            }
        }
        Shape::Text { pen, at, anchor, words: say } => {
            words(*pen, *at, *anchor, false, &printer.text(say))
        }
        Shape::Break { x, top, bottom } => {
            let (middle, step) = ((top + bottom) / 2.0, 1.2);
            html! {
                path class="hair" fill="none" stroke=(colour(Pen::Hair)) stroke-width=(width(Pen::Hair)) d={
                    "M" (short(*x)) " " (short(*top)) "V" (short(middle - step))
                    "l" (short(step)) " " (short(step / 2.0)) "l" (short(-2.0 * step)) " " (short(step))
                    "l" (short(step)) " " (short(step / 2.0)) "V" (short(*bottom))
                } {}
            }
        }
    }
}

fn line(from: Point, to: Point) -> Markup {
    html! {
        line x1=(short(from.x)) y1=(short(from.y)) x2=(short(to.x)) y2=(short(to.y))
            class="hair" stroke=(colour(Pen::Hair)) stroke-width=(width(Pen::Hair)) {}
    }
}

fn words(pen: Pen, at: Point, anchor: Anchor, hang: bool, text: &str) -> Markup {
    let anchor = match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    };
    html! {
        text x=(short(at.x)) y=(short(at.y)) text-anchor=(anchor)
            dominant-baseline=[hang.then_some("hanging")] class=(class(pen))
            font-family="system-ui, sans-serif" fill=(colour(pen)) { (text) }
    }
}

/// A path of straight pieces whose corners are rounded by quarter circles.
fn rounded(path: &[Point], radius: f64) -> String {
    let mut out = String::new();
    let mut before: Option<Point> = None;
    // Where the pen stands.
    let (mut x, mut y) = (String::new(), String::new());
    let mut points = path.iter().copied().peekable();
    while let Some(point) = points.next() {
        let corner = before.zip(points.peek()).filter(|_| radius > 0.0);
        let to = corner.map_or(point, |(from, _)| toward(point, from, radius));
        let (to_x, to_y) = (short(to.x), short(to.y));
        match (before, to_x == x, to_y == y) {
            (None, ..) => out.push_str(&format!("M{to_x} {to_y}")),
            (_, true, true) => {}
            (_, true, false) => out.push_str(&format!("V{to_y}")),
            (_, false, true) => out.push_str(&format!("H{to_x}")),
            (_, false, false) => out.push_str(&format!("L{to_x} {to_y}")),
        }
        (x, y) = (to_x, to_y);
        if let Some((from, next)) = corner {
            let leave = toward(point, *next, radius);
            let sweep = u8::from(
                (point.x - from.x) * (next.y - point.y) > (point.y - from.y) * (next.x - point.x),
            );
            (x, y) = (short(leave.x), short(leave.y));
            out.push_str(&format!("A{r} {r} 0 0 {sweep} {x} {y}", r = short(radius)));
        }
        before = Some(point);
    }
    out
}

/// The point at a distance from a corner along the piece to its neighbour, at most half of it.
fn toward(corner: Point, neighbour: Point, distance: f64) -> Point {
    let (dx, dy) = (neighbour.x - corner.x, neighbour.y - corner.y);
    let length = dx.hypot(dy);
    let share = if length > 0.0 { (distance / length).min(1.0) } else { 0.0 };
    Point { x: corner.x + dx * share, y: corner.y + dy * share }
}

/// A coordinate to a hundredth of a millimetre.
pub(super) fn short(value: f64) -> String {
    trimmed(fixed(value, 2))
}

fn class(pen: Pen) -> String {
    match pen {
        Pen::Ink => "ink".to_owned(),
        Pen::Hair => "hair".to_owned(),
        Pen::Print => "print".to_owned(),
        Pen::Dash => "dash".to_owned(),
        Pen::Cut => "cut".to_owned(),
        Pen::Wire => "wire".to_owned(),
        Pen::Paper(kind) => format!("paper paper-{kind}"),
    }
}

/// Colours for a drawing that stands alone; the page's style sheet has its own for dark grounds.
fn colour(pen: Pen) -> &'static str {
    match pen {
        Pen::Ink | Pen::Print => INK,
        Pen::Hair | Pen::Dash => "#6b7685",
        Pen::Cut => "#b3261e",
        Pen::Wire => "#56616f",
        Pen::Paper("gloss" | "silk") => "#e7eff5",
        Pen::Paper("gloss-cover" | "silk-cover") => "#c9dbe7",
        Pen::Paper("copier") => "#eef1ee",
        Pen::Paper("recycled" | "newsprint") => "#d3cfc2",
        Pen::Paper("bulky") => "#f0deb4",
        Pen::Paper("card" | "board") => "#dcc79f",
        Pen::Paper(_) => "#f8efd9",
    }
}

const fn width(pen: Pen) -> &'static str {
    match pen {
        Pen::Cut => "0.45",
        Pen::Wire => "0.9",
        Pen::Dash => "0.3",
        Pen::Ink | Pen::Print | Pen::Hair | Pen::Paper(_) => "0.2",
    }
}

fn dashes(pen: Pen) -> Option<&'static str> {
    (pen == Pen::Dash).then_some("1.4 1")
}
