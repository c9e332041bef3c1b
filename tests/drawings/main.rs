//! What is drawn, measured: lengths, places and sizes read off the shapes beside the plan's figures, and
//! for books of every kind on wide and narrow drawings that nothing leaves the drawing and no words
//! stand on each other.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod measured;

use quirefit::advise::CostSteps;
use quirefit::draft::Draft;
use quirefit::drawing::{
    Anchor, Drawing, Kept, Page, Pen, Point, Room, Shape, book_end, card, clearance, flat_cover,
    fold_paths, press_sheet, push_outs, stitches, timeline, true_size, unit_cost,
};
use quirefit::entry::LengthUnit;
use quirefit::job::{self, ImagesMovedBy, Job, Spine};
use quirefit::plan::{Plan, plan};
use quirefit::shop;
use quirefit::units::Mm;
use quirefit::view::{Numbers, Printer, svg};
use quirefit::words::{LANGUAGES, Language, Words, built_in};
use std::sync::LazyLock;

/// A book, and its plan in the demo shop.
struct Book {
    name: String,
    job: Job,
    plan: Plan,
    costs: CostSteps,
}

fn book(fields: &[(&str, &str)]) -> Book {
    let mut draft =
        Draft::of(&[("pages", "40 + 4"), ("size", "A5"), ("paper", "130 gsm silk 0.115 mm")]);
    draft.set("cover", "250 gsm silk cover 0.240 mm");
    draft.set("copies", "750");
    for (path, text) in fields {
        draft.set(path, text);
    }
    let shop = shop::demo();
    let reading = job::read(&draft, &shop);
    let job = reading.job.unwrap_or_else(|| panic!("{fields:?}: {:?}", reading.notes));
    let plan = plan(&job, &shop);
    let costs = CostSteps::of(&job, &shop, &plan).unwrap();
    Book { name: format!("{fields:?}"), job, plan, costs }
}

/// Thin and thick, tiny and huge, upright and lying, round and square, moved and not.
static BOOKS: LazyLock<Vec<Book>> = LazyLock::new(|| {
    let thin = ("paper", "60 gsm uncoated 0.075 mm");
    let own: (&str, &str) = ("cover", "");
    let mut books = vec![book(&[])];
    for pages in ["4", "8", "16", "64", "128", "404"] {
        for spine in ["round", "square"] {
            for copies in ["1", "120", "750", "5,000", "40,000"] {
                let fields = [("pages", pages), own, thin, ("spine", spine), ("copies", copies)];
                books.push(book(&fields));
            }
        }
    }
    for size in
        ["A6", "A4", "210 x 148", "297 x 210", "50 x 50", "60 x 400", "400 x 60", "450 x 640"]
    {
        for spine in ["round", "square"] {
            books.push(book(&[("size", size), ("spine", spine)]));
        }
    }
    for images in ["shop", "nobody"] {
        for (art, folio) in [("1 mm", "0.5 mm"), ("6 mm", "10 mm"), ("40 mm", "3 mm"), ("5 mm", "")]
        {
            books.push(book(&[("images", images), ("art_face", art), ("folio_face", folio)]));
        }
    }
    books.push(book(&[("pages", "200 + 4"), ("spine", "square"), ("images", "nobody")]));
    books.push(book(&[("bleeds", "no"), ("safe", "12 mm")]));
    books.push(book(&[("size", "A6"), ("copies_up", "2"), ("stitches", "4")]));
    books.push(book(&[("paper", "board 0.9 mm"), ("pages", "24 + 4"), ("spine", "square")]));
    books
});

const ROOMS: [Room; 2] = [Room::Wide, Room::Narrow];

fn kept(job: &Job) -> Kept {
    Kept { kind: "silk", bleed: job.bleed, safe: job.safe }
}

fn page(job: &Job) -> Page {
    let moved = job.images != ImagesMovedBy::Nobody;
    Page { kind: "silk", bleed: job.bleed, safe: job.safe, moved }
}

/// Every drawing of a book.
fn all(book: &Book, room: Room) -> Vec<Drawing> {
    let (job, plan) = (&book.job, &book.plan);
    let kinds = vec!["silk"; job.sections.len()];
    let mut drawings = vec![
        book_end(plan, &kinds, room),
        flat_cover(plan, &kept(job), room),
        stitches(plan, job.size.height, "silk", room),
        timeline(plan, room),
        true_size(plan, job.spine == Spine::Round, "silk"),
        card(room),
    ];
    drawings.extend(fold_paths(plan, &kinds, room));
    drawings.extend(push_outs(plan, &kinds, room));
    drawings.extend(clearance(plan, &page(job), room));
    drawings.extend(press_sheet(plan, room));
    let further = book.costs.copies.total / book.costs.more.as_f64();
    drawings.extend(unit_cost(&book.costs.curve, plan.results.run.quantities.good, further, room));
    drawings
}

/// Looks at every drawing of every book; every complaint is told.
fn each(look: impl Fn(&Drawing, &Printer) -> Vec<String>) {
    assert!(BOOKS.len() > 35);
    let mut complaints = Vec::new();
    for book in BOOKS.iter() {
        for room in ROOMS {
            let drawings = all(book, room);
            assert!(drawings.len() >= 10, "{}: {} drawings", book.name, drawings.len());
            for drawing in &drawings {
                let of = format!("{} {room:?} of {}", drawing.id, book.name);
                let found = printers().flat_map(|printer| look(drawing, &printer));
                complaints.extend(found.map(|what| format!("{of}: {what}")));
            }
        }
    }
    let told = complaints.iter().take(60).cloned().collect::<Vec<_>>().join("\n");
    assert!(complaints.is_empty(), "{} complaints\n{told}", complaints.len());
}

/// Every language with either unit.
static PRINTERS: LazyLock<Vec<(Words, Numbers)>> = LazyLock::new(|| {
    let files = built_in();
    let both = |language: &Language| {
        let numbers = |unit| Numbers { unit, mark: language.mark };
        [LengthUnit::Millimetre, LengthUnit::Inch]
            .map(|unit| (language.words(&files), numbers(unit)))
    };
    LANGUAGES.iter().flat_map(both).collect()
});

fn printers() -> impl Iterator<Item = Printer<'static>> {
    PRINTERS.iter().map(|(words, numbers)| Printer { words, numbers: *numbers })
}

fn printer() -> Printer<'static> {
    printers().next().unwrap()
}

/// A box on a drawing: left, top, right, bottom.
#[derive(Debug, Clone, Copy)]
struct Bounds(f64, f64, f64, f64);

impl Bounds {
    fn meets(self, other: Self) -> bool {
        self.0 < other.2 && other.0 < self.2 && self.1 < other.3 && other.1 < self.3
    }
}

/// Every text of a drawing with the box it takes: letters of a usual typeface are a good half as
/// wide as they are high on average, and three quarters of that height stand over the line.
fn texts(drawing: &Drawing, printer: &Printer) -> Vec<(String, Bounds)> {
    let letter = drawing.room.letter();
    let mut found = Vec::new();
    for shape in &drawing.shapes {
        let (words, at, anchor, hangs) = match shape {
            Shape::Text { words, at, anchor, .. } => (words, at, anchor, false),
            Shape::Dimension { label, at, anchor, from, to } => {
                (label, at, anchor, (from.x - to.x).abs() < (from.y - to.y).abs())
            }
            _ => continue,
        };
        let text = printer.text(words);
        let wide = text.chars().count() as f64 * letter * 0.56;
        let left = match anchor {
            Anchor::Start => at.x,
            Anchor::Middle => at.x - wide / 2.0,
            Anchor::End => at.x - wide,
        };
        let top = if hangs { at.y } else { at.y - letter * 0.74 };
        found.push((text, Bounds(left, top, left + wide, top + letter * 0.9)));
    }
    found
}

fn points(shape: &Shape) -> Vec<Point> {
    match shape {
        Shape::Sheet { path, .. } => path.clone(),
        Shape::Line { from, to, .. } | Shape::Dimension { from, to, .. } => vec![*from, *to],
        Shape::Text { at, .. } => vec![*at],
        Shape::Break { x, top, bottom } => {
            vec![Point { x: *x, y: *top }, Point { x: *x, y: *bottom }]
        }
    }
}

/// Straight lines of a pen.
fn lines(drawing: &Drawing, of: Pen) -> Vec<(Point, Point)> {
    let line = |shape: &Shape| match shape {
        Shape::Line { from, to, pen } if *pen == of => Some((*from, *to)),
        _ => None,
    };
    drawing.shapes.iter().filter_map(line).collect()
}

#[test]
fn nothing_leaves_the_drawing() {
    each(|drawing, printer| {
        let (width, height) = (drawing.width, drawing.height);
        let outside = |bounds: &Bounds, by: f64| {
            bounds.0 < -by || bounds.1 < -by || bounds.2 > width + by || bounds.3 > height + by
        };
        let shapes = drawing.shapes.iter().flat_map(|shape| {
            let all = points(shape).into_iter().map(move |point| (shape, point));
            all.map(|(shape, point)| {
                (format!("{shape:?}"), Bounds(point.x, point.y, point.x, point.y))
            })
        });
        let lines = shapes.filter(|(_, bounds)| outside(bounds, 0.01));
        let words = texts(drawing, printer).into_iter().filter(|(_, bounds)| outside(bounds, 0.5));
        lines
            .chain(words)
            .map(|(what, at)| format!("{what} at {at:.1?} of {width} × {height}"))
            .collect()
    });
}

#[test]
fn no_words_stand_on_each_other() {
    each(|drawing, printer| {
        let texts = texts(drawing, printer);
        let mut meeting = Vec::new();
        for (index, (text, bounds)) in texts.iter().enumerate() {
            for (other, beside) in &texts[index + 1..] {
                if bounds.meets(*beside) {
                    meeting.push(format!("“{text}” {bounds:.1?} and “{other}” {beside:.1?}"));
                }
            }
        }
        meeting
    });
}

/// Upright lines leave words alone.
#[test]
fn no_line_runs_through_words() {
    each(|drawing, printer| {
        let texts = texts(drawing, printer);
        let mut through = Vec::new();
        for pen in [Pen::Ink, Pen::Hair, Pen::Print, Pen::Dash, Pen::Cut] {
            for (from, to) in lines(drawing, pen) {
                if from.x != to.x {
                    continue;
                }
                let line = Bounds(from.x - 0.1, from.y.min(to.y), from.x + 0.1, from.y.max(to.y));
                let met = texts.iter().filter(|(_, bounds)| bounds.meets(line));
                through
                    .extend(met.map(|(text, _)| format!("{pen:?} at {line:.1?} through “{text}”")));
            }
        }
        through
    });
}

/// A drawing is a picture with a name and a description in words, both found by its own ids.
#[test]
fn every_drawing_is_described_in_words() {
    each(|drawing, printer| {
        let mut missing = Vec::new();
        for said in [&drawing.title, &drawing.description] {
            let text = printer.text(said);
            if text.split_whitespace().count() < 3 || text.contains(['{', '}']) || text == said.key
            {
                missing.push(text);
            }
        }
        let element = svg::svg(drawing, printer).into_string();
        let id = drawing.id;
        let parts = [
            "role=\"img\"".to_owned(),
            format!("aria-labelledby=\"{id}-title {id}-description\""),
            format!("<title id=\"{id}-title\">"),
            format!("<desc id=\"{id}-description\">"),
        ];
        missing.extend(parts.into_iter().filter(|part| !element.contains(part)));
        let numberless = ["NaN", "inf"].into_iter().filter(|sign| element.contains(sign));
        missing.extend(numberless.map(str::to_owned));
        missing
    });
}

// ---- measured ---------------------------------------------------------------------------------------

/// Good to a millionth of a drawing's width.
const DRAWN: f64 = 1e-4;

#[track_caller]
fn near(found: f64, expected: f64, tolerance: f64, what: &str) {
    assert!((found - expected).abs() <= tolerance, "{what}: drawn {found}, planned {expected}");
}
