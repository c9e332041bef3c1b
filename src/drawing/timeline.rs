//! The run on a line of time: its first half hour, and all of it.

use super::{Anchor, Drawing, Pen, Point, Room, Shape};
use crate::plan::{Plan, Stop};
use crate::units::{Second, Sheets};
use crate::words::say;

/// Room to the left for names.
const LEFT: f64 = 27.0;
/// Room to the right of the line.
const RIGHT: f64 = 6.0;
/// Half of the longest words at a mark.
const HALF_MARK: f64 = 9.6;
/// Height of a row.
const ROW: f64 = 6.5;
/// How thick work is drawn.
const THICK: f64 = 3.4;
/// The first stretch that is drawn on its own: half an hour.
const FIRST: f64 = 1800.0;
/// Marks along the axis, seconds apart.
const STEPS: [f64; 11] =
    [60.0, 300.0, 600.0, 900.0, 1800.0, 3600.0, 7200.0, 14_400.0, 28_800.0, 43_200.0, 86_400.0];
/// Most ticks of one supply: more would run into each other.
const TICKS: u32 = 60;

/// Draws the first half hour above the whole run; a run of less than that is drawn once.
#[must_use]
pub fn timeline(plan: &Plan, room: Room) -> Drawing {
    let run = &plan.results.run;
    let stops: Vec<&Stop> = run.stops().filter(|stop| stop.times > 0).collect();
    let whole = run.times.worst.get().max(1.0);
    let mut shapes = Vec::new();
    let mut top = 0.0;
    if whole > FIRST {
        top = strip(plan, &stops, (FIRST, room), top, "drawing.timeline.first", &mut shapes);
    }
    let height = strip(plan, &stops, (whole, room), top, "drawing.timeline.whole", &mut shapes);
    Drawing {
        id: "timeline",
        room,
        title: say("drawing.timeline").put("best", run.times.best).put("worst", run.times.worst),
        description: say("drawing.timeline.spoken")
            .put("makeready", run.times.makeready)
            .put("running", run.times.running)
            .put("best", run.times.best)
            .put("worst", run.times.worst)
            .count("stops", Sheets(stops.iter().map(|stop| stop.times).sum())),
        width: room.width(),
        height,
        shapes,
    }
}

/// One strip of time below `top`; where it ends.
fn strip(
    plan: &Plan,
    stops: &[&Stop],
    (span, room): (f64, Room),
    top: f64,
    title: &'static str,
    shapes: &mut Vec<Shape>,
) -> f64 {
    let times = &plan.results.run.times;
    let frame =
        Frame { scale: (room.width() - LEFT - RIGHT) / span, span, marks: room.pick(6.0, 3.0) };
    let text = |x: f64, y: f64, anchor: Anchor, pen: Pen, words| Shape::Text {
        pen,
        at: Point { x, y },
        anchor,
        words,
    };
    shapes.push(text(0.0, top + 5.0, Anchor::Start, Pen::Ink, say(title)));
    let work = top + ROW * 2.0;
    shapes.push(text(0.0, work + 1.2, Anchor::Start, Pen::Hair, say("drawing.timeline.line")));
    let makeready = times.makeready.get();
    frame.bar(0.0, makeready, work, Pen::Paper("board"), shapes);
    let all = Walk::new(plan, stops);
    let mut from = makeready;
    for (at, stop) in all.clone().filter(|(_, stop)| !stop.running) {
        frame.bar(from, at, work, Pen::Paper("silk"), shapes);
        from = at + stop.each.get();
    }
    frame.bar(from, times.best.get(), work, Pen::Paper("silk"), shapes);
    let mut bottom = work;
    for stop in stops {
        bottom += ROW;
        let name = format!("supply.{}", stop.supply.name());
        shapes.push(text(0.0, bottom + 1.2, Anchor::Start, Pen::Hair, say(name)));
        // A long run shows every so many of them; the words beside say how often.
        let thinned = stop.times.div_ceil(TICKS).max(1) as usize;
        let own = all.clone().filter(|(_, other)| other.supply == stop.supply);
        for (at, _) in own.step_by(thinned).take_while(|(at, _)| *at <= span) {
            shapes.push(Shape::Line {
                from: Point { x: frame.x(at), y: bottom - THICK / 2.0 },
                to: Point { x: frame.x(at), y: bottom + THICK / 2.0 },
                pen: if stop.running { Pen::Hair } else { Pen::Ink },
            });
        }
    }
    bottom += ROW;
    frame.axis(bottom, times.clock.map(|(start, _, _)| start), shapes);
    bottom + ROW
}

/// Where times stand on a strip.
struct Frame {
    scale: f64,
    span: f64,
    /// Most marks along the axis.
    marks: f64,
}

impl Frame {
    fn x(&self, time: f64) -> f64 {
        LEFT + time.clamp(0.0, self.span) * self.scale
    }

    fn bar(&self, from: f64, to: f64, y: f64, pen: Pen, shapes: &mut Vec<Shape>) {
        let (from, to) = (self.x(from), self.x(to));
        if to > from {
            shapes.push(Shape::Sheet {
                path: vec![Point { x: from, y }, Point { x: to, y }],
                radius: 0.0,
                thickness: THICK,
                pen,
                inked: true,
                gone: false,
            });
        }
    }

    /// Marks at round times, by the clock when the start is known.
    fn axis(&self, y: f64, start: Option<Second>, shapes: &mut Vec<Shape>) {
        let step = STEPS.iter().copied().find(|step| self.span / step <= self.marks);
        let step = step.unwrap_or(self.span / self.marks);
        shapes.push(Shape::Line {
            from: Point { x: LEFT, y: y - ROW / 2.0 },
            to: Point { x: self.x(self.span), y: y - ROW / 2.0 },
            pen: Pen::Hair,
        });
        let mut time = 0.0;
        while time <= self.span {
            let x = self.x(time);
            shapes.push(Shape::Line {
                from: Point { x, y: y - ROW / 2.0 },
                to: Point { x, y: y - ROW / 4.0 },
                pen: Pen::Hair,
            });
            let words = match start {
                Some(start) => say("drawing.timeline.clock").put(
                    "time",
                    crate::units::Measure::new(start.get() + time, crate::units::Unit::Clock),
                ),
                None => say("drawing.timeline.clock").put("time", Second(time)),
            };
            shapes.push(Shape::Text {
                pen: Pen::Hair,
                // The last mark may stand at the very end of the line.
                at: Point { x: x.min(self.x(self.span) + RIGHT - HALF_MARK), y: y + ROW / 2.0 },
                anchor: if time > 0.0 { Anchor::Middle } else { Anchor::Start },
                words,
            });
            time += step;
        }
    }
}

/// Every stop of the run in its order, with the time it comes: what stands still puts off the rest.
#[derive(Clone)]
struct Walk<'a> {
    stops: Vec<(&'a Stop, u32)>,
    set: f64,
    makeready: f64,
    standing: f64,
}

impl<'a> Walk<'a> {
    fn new(plan: &Plan, stops: &[&'a Stop]) -> Self {
        let run = &plan.results.run;
        Self {
            stops: stops.iter().map(|stop| (*stop, 0)).collect(),
            set: run.times.running.get() / f64::from(run.quantities.fed.max(1)),
            makeready: run.times.makeready.get(),
            standing: 0.0,
        }
    }
}

impl<'a> Iterator for Walk<'a> {
    type Item = (f64, &'a Stop);

    fn next(&mut self) -> Option<Self::Item> {
        let (stop, done) = self
            .stops
            .iter_mut()
            .filter(|(stop, done)| *done < stop.times)
            .min_by_key(|(stop, done)| stop.every.saturating_mul(*done + 1))?;
        *done += 1;
        let sets = f64::from(stop.every.saturating_mul(*done));
        let at = self.makeready + sets * self.set + self.standing;
        if !stop.running {
            self.standing += stop.each.get();
        }
        Some((at, stop))
    }
}
