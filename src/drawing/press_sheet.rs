//! The chosen press sheet, front and back, to scale: flats, pages, folds, cuts, gripper, stitches.
//!
//! The fold stands upright. The back is seen as it lies once the press sheet has been turned over with
//! the gripper at the same edge. A short stroke marks the head of each page.

use super::press_marks::{Mark, crowns, cuts};
use super::{Anchor, Drawing, Pen, Point, Room, Shape};
use crate::plan::{Folio, Leaf, Panel, Plan, Side, Way, panels};
use crate::units::{Measure, Size};
use crate::words::{Say, say};

/// Between front and back.
const GAP: f64 = 10.0;
/// Room to the left of a sheet, for the gripper's name.
const LEFT: f64 = 3.0;
/// Room above the sheets for their names.
const ABOVE: f64 = 11.0;
/// Room below.
const BELOW: f64 = 4.0;
/// Height that a sheet may take, beside the other and above it.
const MOST_HIGH: (f64, f64) = (96.0, 60.0);
/// Names stand so far above a sheet.
const OFF: f64 = 6.0;
/// Half the height of a page number.
const LETTER: f64 = 1.0;
/// Pages narrower than this on the drawing carry no number.
const LEAST_PAGE: f64 = 5.0;
/// The gripper's name stands so far above, clear of the cuts.
const CLEAR: f64 = 2.2;
/// A cut runs so far beyond the sheet.
const OVER: f64 = 1.5;
/// Length of the stroke at a page's head, and its distance from it.
const STROKE: f64 = 2.4;
/// See [`STROKE`].
const INSIDE: f64 = 1.0;

/// Draws the chosen press sheet with the outermost folded sheet on it; nothing when none can be used.
#[must_use]
pub fn press_sheet(plan: &Plan, room: Room) -> Option<Drawing> {
    let layout = &plan.results.layout;
    let way = layout.chosen().filter(|way| way.refusal.is_none())?;
    let leaf = plan.results.leaves.first()?;
    let (wide, high) = (way.press.width.get(), way.press.height.get());
    // Beside each other where there is room, else below each other.
    let narrow = room == Room::Narrow;
    let width = if narrow { room.width() } else { (room.width() - GAP) / 2.0 };
    let scale = ((width - LEFT - OVER) / wide).min(room.pick(MOST_HIGH.0, MOST_HIGH.1) / high);
    let each = ABOVE + high * scale + BELOW;
    let mut shapes = Vec::new();
    for (side, nth) in [(Side::Front, 0.0), (Side::Back, 1.0)] {
        let (across, top) = if narrow { (0.0, nth * each) } else { (nth * (width + GAP), 0.0) };
        let middle = across + width / 2.0;
        let frame =
            Frame { plan, way, leaf, side, scale, left: middle - wide * scale / 2.0, top, middle };
        frame.draw(&mut shapes);
    }
    let flats = Measure::count(way.flats());
    Some(Drawing {
        id: "press-sheet",
        room,
        title: say("drawing.press_sheet")
            .put("width", way.press.width)
            .put("height", way.press.height),
        description: say("drawing.press_sheet.spoken")
            .put("flats", flats)
            .put("columns", Measure::count(way.grid.0))
            .put("rows", Measure::count(way.grid.1))
            .put("used", Measure::share(way.used)),
        width: room.width(),
        height: if narrow { each * 2.0 } else { each },
        shapes,
    })
}

/// One side of the press sheet on the drawing.
struct Frame<'a> {
    plan: &'a Plan,
    way: &'a Way,
    leaf: &'a Leaf,
    side: Side,
    scale: f64,
    left: f64,
    /// Top of this side's part of the drawing, and its middle.
    top: f64,
    middle: f64,
}

impl Frame<'_> {
    /// A place on this side of the press sheet.
    fn at(&self, x: f64, y: f64) -> Point {
        Point { x: self.left + x * self.scale, y: self.top + ABOVE + y * self.scale }
    }

    fn line(&self, from: (f64, f64), to: (f64, f64), pen: Pen, shapes: &mut Vec<Shape>) {
        shapes.push(Shape::Line { from: self.at(from.0, from.1), to: self.at(to.0, to.1), pen });
    }

    fn rectangle(&self, corner: (f64, f64), size: (f64, f64), pen: Pen, shapes: &mut Vec<Shape>) {
        let (left, top) = corner;
        let (right, bottom) = (left + size.0, top + size.1);
        for (from, to) in [
            ((left, top), (right, top)),
            ((right, top), (right, bottom)),
            ((right, bottom), (left, bottom)),
            ((left, bottom), (left, top)),
        ] {
            self.line(from, to, pen, shapes);
        }
    }

    fn draw(&self, shapes: &mut Vec<Shape>) {
        let press = self.way.press;
        self.name(shapes);
        self.gripper(shapes);
        for panel in panels(self.plan.results.layout.copy, self.way, self.leaf, self.side) {
            self.page(&panel, shapes);
        }
        self.stitches(shapes);
        self.cuts(shapes);
        let size = (press.width.get(), press.height.get());
        self.rectangle((0.0, 0.0), size, Pen::Ink, shapes);
    }

    /// Which side it is.
    fn name(&self, shapes: &mut Vec<Shape>) {
        let key = match self.side {
            Side::Front => "drawing.press_sheet.front",
            Side::Back => "drawing.press_sheet.back",
        };
        shapes.push(Shape::Text {
            pen: Pen::Ink,
            at: Point { x: self.middle, y: self.top + ABOVE - OFF },
            anchor: Anchor::Middle,
            words: say(key).put("sheet", Measure::count(self.leaf.place)),
        });
    }

    /// Where the press grips: it keeps its edge when the sheet is turned over.
    fn gripper(&self, shapes: &mut Vec<Shape>) {
        let (press, edges) = (self.way.press, self.way.edges);
        let (wide, high) = (press.width.get(), press.height.get());
        let (from, to) = if self.way.gripper_beside {
            let x = edges.left.get();
            ((x, 0.0), (x, high))
        } else {
            let y = edges.top.get();
            ((0.0, y), (wide, y))
        };
        self.line(from, to, Pen::Hair, shapes);
        let corner = self.at(0.0, 0.0);
        let key = if self.way.gripper_beside {
            "drawing.press_sheet.gripper-left"
        } else {
            "drawing.press_sheet.gripper-top"
        };
        shapes.push(Shape::Text {
            pen: Pen::Hair,
            at: Point { y: corner.y - CLEAR, ..corner },
            anchor: Anchor::Start,
            words: say(key)
                .put("gripper", if self.way.gripper_beside { edges.left } else { edges.top }),
        });
    }

    /// One page: its trimmed outline, its number, its head, and the fold beside it.
    fn page(&self, panel: &Panel, shapes: &mut Vec<Shape>) {
        let (x, y) = (panel.corner.width.get(), panel.corner.height.get());
        let (wide, high) = (panel.size.width.get(), panel.size.height.get());
        self.rectangle((x, y), (wide, high), Pen::Hair, shapes);
        if panel.fold_right {
            self.line((x + wide, y), (x + wide, y + high), Pen::Ink, shapes);
        }
        let head = if panel.head_down {
            self.at(x + wide / 2.0, y + high).y - INSIDE
        } else {
            self.at(x + wide / 2.0, y).y + INSIDE
        };
        let middle = self.at(x + wide / 2.0, y + high / 2.0);
        let stroke = STROKE.min(wide * self.scale / 2.0) / 2.0;
        shapes.push(Shape::Line {
            from: Point { x: middle.x - stroke, y: head },
            to: Point { x: middle.x + stroke, y: head },
            pen: Pen::Ink,
        });
        if wide * self.scale >= LEAST_PAGE {
            shapes.push(Shape::Text {
                pen: Pen::Ink,
                at: Point { y: middle.y + LETTER, ..middle },
                anchor: Anchor::Middle,
                words: number(panel.folio),
            });
        }
    }

    /// Crowns of the stitches, which lie outside: on the front.
    fn stitches(&self, shapes: &mut Vec<Shape>) {
        if self.side == Side::Front {
            for (x, from, to) in crowns(self.plan, self.way, self.side) {
                self.line((x.get(), from.get()), (x.get(), to.get()), Pen::Wire, shapes);
            }
        }
    }

    /// The guillotine's cuts, right through the press sheet.
    fn cuts(&self, shapes: &mut Vec<Shape>) {
        let Size { width: wide, height: high } = self.way.press;
        let over = OVER / self.scale;
        for Mark { upright, place } in cuts(self.way, self.side) {
            let place = place.get();
            let (from, to) = if upright {
                ((place, -over), (place, high.get() + over))
            } else {
                ((-over, place), (wide.get() + over, place))
            };
            self.line(from, to, Pen::Cut, shapes);
        }
    }
}

/// What stands on a page of the drawing.
#[must_use]
pub fn number(folio: Folio) -> Say {
    match folio {
        Folio::Page(page) => say("drawing.press_sheet.page").put("page", Measure::count(page)),
        Folio::Cover(side) => say(format!("drawing.press_sheet.cover.{side}")),
    }
}
