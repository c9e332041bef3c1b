//! What a copy costs against the number of copies.

use super::{Anchor, Drawing, Pen, Point, Room, Shape};
use crate::plan::AtCopies;
use crate::units::{Copies, Measure, Money};
use crate::words::{Say, say};

/// Height of the drawing.
const HEIGHT: f64 = 78.0;
/// Where the axes meet: room for amounts to the left, for numbers below.
const CORNER: Point = Point { x: 16.0, y: 66.0 };
/// Room above the highest amount.
const TOP: f64 = 10.0;
/// Room to the right.
const RIGHT: f64 = 8.0;
/// Words under the axis need so much.
const APART: f64 = 13.0;
/// Most amounts named along the upright axis.
const AMOUNTS: f64 = 5.0;
/// Amounts go up in steps of these, times a power of ten.
const STEPS: [f64; 4] = [1.0, 2.0, 5.0, 10.0];
/// Length of a tick.
const TICK: f64 = 1.2;

/// Draws the curve with the job's own number on it, and the level that further copies cost. Nothing
/// is drawn of a curve without a length.
#[must_use]
pub fn unit_cost(curve: &[AtCopies], own: Copies, further: Money, room: Room) -> Option<Drawing> {
    let (first, last) = (curve.first()?, curve.last()?);
    let here = curve.iter().find(|at| at.copies == own)?;
    let dearest = curve.iter().map(|at| at.each.get()).fold(0.0, f64::max);
    if last.copies == first.copies || dearest <= 0.0 {
        return None;
    }
    let right = room.width() - RIGHT;
    let frame = Frame {
        right,
        least: first.copies.as_f64().ln(),
        across: (right - CORNER.x) / (last.copies.as_f64() / first.copies.as_f64()).ln(),
        up: (CORNER.y - TOP) / dearest,
    };
    let mut shapes = Vec::new();
    frame.amounts(dearest, &mut shapes);
    frame.numbers(curve, here, &mut shapes);
    frame.level(further, here, &mut shapes);
    for pair in curve.windows(2) {
        if let [from, to] = pair {
            shapes.push(line(frame.at(from), frame.at(to), Pen::Ink));
        }
    }
    let ordered = curve.iter().filter(|at| at.ordered).map(|at| frame.at(at));
    shapes.extend(ordered.map(|dot| line(dot, dot, Pen::Wire)));
    frame.own(here, &mut shapes);
    let told = |key: &'static str| {
        say(key)
            .put("own", own)
            .put("each", Measure::rate(here.each))
            .put("least", first.copies)
            .put("at_least", Measure::rate(first.each))
            .put("most", last.copies)
            .put("at_most", Measure::rate(last.each))
            .put("further", Measure::rate(further))
    };
    Some(Drawing {
        id: "unit-cost",
        room,
        title: told("drawing.unit_cost"),
        description: told("drawing.unit_cost.spoken"),
        width: room.width(),
        height: HEIGHT,
        shapes,
    })
}

const fn line(from: Point, to: Point, pen: Pen) -> Shape {
    Shape::Line { from, to, pen }
}

const fn text(x: f64, y: f64, anchor: Anchor, pen: Pen, words: Say) -> Shape {
    Shape::Text { pen, at: Point { x, y }, anchor, words }
}

/// Numbers of copies stand by their logarithm, so that twice as many is everywhere as far.
struct Frame {
    /// Where the lower axis ends.
    right: f64,
    least: f64,
    across: f64,
    up: f64,
}

impl Frame {
    fn x(&self, copies: Copies) -> f64 {
        CORNER.x + (copies.as_f64().ln() - self.least) * self.across
    }

    fn y(&self, each: f64) -> f64 {
        CORNER.y - each * self.up
    }

    fn at(&self, at: &AtCopies) -> Point {
        Point { x: self.x(at.copies), y: self.y(at.each.get()) }
    }

    /// Both axes, with round amounts along the upright one.
    fn amounts(&self, dearest: f64, shapes: &mut Vec<Shape>) {
        let power = 10.0_f64.powf((dearest / AMOUNTS).log10().floor());
        let steps = STEPS.map(|step| step * power);
        let step = steps.into_iter().find(|step| dearest / step <= AMOUNTS).unwrap_or(dearest);
        let top = Point { x: CORNER.x, y: TOP };
        shapes.push(line(top, CORNER, Pen::Hair));
        shapes.push(line(CORNER, Point { x: self.right, y: CORNER.y }, Pen::Hair));
        let mut amount = 0.0;
        while amount <= dearest {
            let y = self.y(amount);
            shapes.push(line(Point { x: CORNER.x, y }, Point { x: self.right, y }, Pen::Hair));
            let words = say("drawing.unit_cost.amount").put("amount", Measure::rate(Money(amount)));
            shapes.push(text(CORNER.x - 2.0, y + 1.0, Anchor::End, Pen::Hair, words));
            amount += step;
        }
        shapes.push(text(0.0, 4.0, Anchor::Start, Pen::Hair, say("drawing.unit_cost.upright")));
    }

    /// Ticks at the numbers people order, named where there is room; the job's own goes first.
    fn numbers(&self, curve: &[AtCopies], here: &AtCopies, shapes: &mut Vec<Shape>) {
        let own = self.x(here.copies);
        let mut last = f64::NEG_INFINITY;
        for at in curve.iter().filter(|at| at.ordered) {
            let x = self.x(at.copies);
            let (from, to) = (Point { x, y: CORNER.y }, Point { x, y: CORNER.y + TICK });
            shapes.push(line(from, to, Pen::Hair));
            let free = x - last >= APART && (x - own).abs() >= APART;
            if free {
                last = x;
                shapes.push(number(x, at.copies, Pen::Hair));
            }
        }
        shapes.push(number(own, here.copies, Pen::Ink));
        let words = say("drawing.unit_cost.along");
        shapes.push(text(self.right + RIGHT, HEIGHT - 1.0, Anchor::End, Pen::Hair, words));
    }

    /// What each further copy costs: the curve comes down to it. Told behind the job's own number, whose
    /// line would run through the words.
    fn level(&self, further: Money, here: &AtCopies, shapes: &mut Vec<Shape>) {
        let y = self.y(further.get());
        if y <= TOP || y > CORNER.y {
            return;
        }
        let (mut x, end) = (CORNER.x, self.right);
        while x < end {
            let to = Point { x: (x + TICK).min(end), y };
            shapes.push(line(Point { x, y }, to, Pen::Ink));
            x += TICK * 2.0;
        }
        let words = say("drawing.unit_cost.further").put("further", Measure::rate(further));
        // Under the level where the axis leaves room, else over it.
        let words_at = if y + APART / 2.0 < CORNER.y { y + 4.0 } else { y - 1.6 };
        shapes.push(text(self.x(here.copies) + 1.5, words_at, Anchor::Start, Pen::Ink, words));
    }

    /// The job's own number: lines to both axes, and what a copy costs there.
    fn own(&self, here: &AtCopies, shapes: &mut Vec<Shape>) {
        let at = self.at(here);
        shapes.push(line(at, Point { x: at.x, y: CORNER.y }, Pen::Ink));
        let words = say("drawing.unit_cost.own").put("each", Measure::rate(here.each));
        shapes.push(text(at.x + 1.5, at.y - 2.5, Anchor::Start, Pen::Ink, words));
    }
}

fn number(x: f64, copies: Copies, pen: Pen) -> Shape {
    let words = say("drawing.unit_cost.number").put("copies", copies);
    text(x, CORNER.y + 5.0, Anchor::Middle, pen, words)
}
