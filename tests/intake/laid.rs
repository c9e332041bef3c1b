//! Where pages stand on the press sheet and in the proof, and how the book reads once it is folded.

use crate::drawn::draw;
use crate::reading::scratch;
use crate::support::made::{MARK, Made, colour, whole, written};
use crate::support::{self, JSON, ran};
use quirefit::draft::Draft;
use quirefit::intake::{Desk, Order, Part, taken};
use quirefit::job::{self, ImagesMovedBy, Job};
use quirefit::page::{Event, Patch, Session};
use quirefit::plan::{Plan, Side, Way, copies, plan};
use quirefit::shop;
use quirefit::words::Files;

/// How far a mark may be from where it should be, in millimetres.
const NEAR: f64 = 0.1;
/// Dots to an inch.
const FINE: u32 = 150;

/// A book as it was typed, and what was made of its design on a page.
pub struct Laid {
    pub job: Job,
    pub plan: Plan,
    pub bytes: Vec<u8>,
}

/// Types a book, brings its files, and has them laid as a person would.
pub fn lay(fields: &[(&str, &str)], files: &[&[u8]], act: &str) -> Laid {
    let mut session = Session::new(Files::new(), &["en-GB".to_owned()], None, JSON);
    let mut desk = Desk::default();
    let mut order = None;
    let mut tell = |kind: &str, id: &str, value: &str| {
        session
            .handle(&Event::new(kind, id, value))
            .into_iter()
            .filter_map(|patch| match patch {
                Patch::Design { ask, text, .. } => Some((ask, text)),
                _ => None,
            })
            .collect::<Vec<_>>()
    };
    tell("start", "", "");
    tell("act", "reading", "design");
    let file = draft(fields);
    tell("file", "job.json", &file);
    tell("rest", "", "");
    for bytes in files {
        tell("file", "design.pdf", "%PDF-");
        let read = desk.arrive(bytes.to_vec(), "");
        for (ask, part) in tell("design", "facts", &quirefit::intake::pass(&read)) {
            assert_eq!(ask, "place");
            desk.place(if part == "cover" { Part::Cover } else { Part::Inside });
        }
    }
    for (ask, text) in tell("act", act, "") {
        assert_eq!(ask, "write");
        order = taken::<Order>(&text);
    }
    desk.begin(order.expect("nothing was ordered"));
    while let (made, all) = desk.go_on()
        && made < all
    {}
    let (job, plan) = planned(fields);
    Laid { job, plan, bytes: desk.written() }
}

fn book(fields: &[(&str, &str)]) -> Draft {
    let usual = [("pages", "16"), ("size", "A5"), ("paper", "300 gsm silk"), ("copies", "500")];
    let mut draft = Draft::of(&usual);
    fields.iter().for_each(|(path, text)| draft.set(path, text));
    draft
}

fn draft(fields: &[(&str, &str)]) -> String {
    (JSON.print)(&quirefit::draft::to_tree(&book(fields), &job::SCHEMA))
}

fn planned(fields: &[(&str, &str)]) -> (Job, Plan) {
    let shop = shop::demo();
    let job = support::job(&book(fields), &shop);
    let plan = plan(&job, &shop);
    (job, plan)
}

/// So many pages of A5 with bleed.
pub fn a5(pages: usize) -> Vec<Made> {
    vec![whole(148.0, 210.0, 3.0); pages]
}

/// Where a page's mark belongs on one side of the press sheet: by the definition of the shift, and by how
/// a sheet of paper is turned over.
struct Half<'a> {
    job: &'a Job,
    way: &'a Way,
    /// Fold and upper cut of the copy, seen from the front.
    fold: f64,
    top: f64,
    /// From the fold to the page's spine edge.
    shift: f64,
}

impl Half<'_> {
    /// `right` of the fold seen from the front; `down` where the page's head points down there.
    fn mark(&self, side: Side, right: bool, down: bool) -> (f64, f64) {
        let (wide, high) = (self.job.size.width.get(), self.job.size.height.get());
        let press = (self.way.press.width.get(), self.way.press.height.get());
        // The finished page on the front, from the left and from the top.
        let left = if right { self.fold + self.shift } else { self.fold - self.shift - wide };
        let (mut x, mut y, mut down) = (left, self.top, down);
        if side == Side::Back && self.way.gripper_beside {
            // Turned over about an axis across: what was up is down.
            (y, down) = (press.1 - self.top - high, !down);
        } else if side == Side::Back {
            x = press.0 - left - wide;
        }
        let [aside, above] = MARK;
        if down { (x + wide - aside, y + above) } else { (x + aside, y + high - above) }
    }
}

/// Lays a book in pairs, and looks for every page's mark on both sides of every sheet. Gives back how the
/// pages follow each other in the folded book, by their places in the file.
fn follows(name: &str, fields: &[(&str, &str)], pages: &[Made]) -> Vec<usize> {
    let laid = lay(fields, &[&written(pages)], "design-pairs");
    let (job, results) = (&laid.job, &laid.plan.results);
    let way = results.layout.chosen().unwrap();
    let shape = results.layout.copy;
    let (mut front, mut back) = (Vec::new(), Vec::new());
    for (at, leaf) in results.leaves.iter().enumerate() {
        let shift = match job.images {
            ImagesMovedBy::Shop => leaf.image_shift.get(),
            ImagesMovedBy::Designer | ImagesMovedBy::Nobody => 0.0,
        };
        let mut halves = [[None; 2]; 2];
        for (nth, side) in [Side::Front, Side::Back].into_iter().enumerate() {
            let found = draw(name, &laid.bytes, 2 * at + nth + 1, FINE).marks(pages.len());
            let all: usize = found.values().map(Vec::len).sum();
            assert_eq!(
                all,
                2 * copies(shape, way).count(),
                "{name}: sheet {}, {side:?}",
                leaf.place
            );
            for copy in copies(shape, way) {
                let half = Half { job, way, fold: copy.fold.get(), top: copy.top.get(), shift };
                for right in [true, false] {
                    let wanted = half.mark(side, right, copy.head_down);
                    let near = |(x, y): &(f64, f64)| {
                        (x - wanted.0).abs() < NEAR && (y - wanted.1).abs() < NEAR
                    };
                    let page = found.iter().find(|(_, marks)| marks.iter().any(near));
                    let page = page.unwrap_or_else(|| {
                        panic!(
                            "{name}: sheet {}, {side:?}: no mark at {wanted:?}: {found:?}",
                            leaf.place
                        )
                    });
                    // Upright, the right leaf is the first of the two; head down the left one is.
                    let first = right != copy.head_down;
                    let known = &mut halves[usize::from(!first)][nth];
                    assert!(known.is_none_or(|known| known == *page.0), "copies differ");
                    *known = Some(*page.0);
                }
            }
        }
        front.extend(halves[0].map(Option::unwrap));
        back.extend(halves[1].map(Option::unwrap));
    }
    // First leaves from the outside in, recto then verso; then the others from the inside out.
    front.into_iter().chain(back.into_iter().rev()).collect()
}

#[test]
fn folded_every_page_follows_the_one_before() {
    let upright: Vec<usize> = (0..16).collect();
    let cases: [(&str, &[(&str, &str)]); 8] = [
        ("one", &[]),
        ("straight", &[("route", "straight")]),
        ("two", &[("copies_up", "2")]),
        ("three", &[("copies_up", "3"), ("size", "100 x 120 mm")]),
        ("heads", &[("copies_up", "2"), ("pairs", "head-to-head")]),
        ("laid", &[("images", "nobody")]),
        ("square", &[("spine", "square")]),
        ("moved", &[("images", "designer"), ("copies_up", "2")]),
    ];
    let mut grippers = std::collections::BTreeSet::new();
    for (name, fields) in cases {
        let size = planned(fields).0.size;
        let pages = vec![whole(size.width.get(), size.height.get(), 3.0); 16];
        assert_eq!(follows(name, fields, &pages), upright, "{name}");
        let (_, plan) = planned(fields);
        grippers.insert(plan.results.layout.chosen().unwrap().gripper_beside);
    }
    assert_eq!(grippers.len(), 2, "a gripper beside the fold and one across it are both tried");
}

/// Bound at the top, pages are laid on their sides: the mark goes with them.
#[test]
fn a_book_bound_at_the_top_is_turned() {
    let fields = [("bound_edge", "top"), ("size", "A5 landscape")];
    let laid = lay(&fields, &[&written(&vec![whole(210.0, 148.0, 3.0); 16])], "design-pairs");
    let results = &laid.plan.results;
    let (way, shape) = (results.layout.chosen().unwrap(), results.layout.copy);
    let copy = copies(shape, way).next().unwrap();
    for (at, leaf) in results.leaves.iter().enumerate() {
        let found = draw("top", &laid.bytes, 2 * at + 1, FINE).marks(16);
        // The page that is first of its leaf hangs from the fold: its upper edge lies there, its left
        // edge at the foot.
        let [aside, above] = MARK;
        let wanted = (
            copy.fold.get() + leaf.image_shift.get() + (148.0 - above),
            copy.top.get() + 210.0 - aside,
        );
        let marks = &found[&(2 * at)];
        let near = |(x, y): &(f64, f64)| (x - wanted.0).abs() < NEAR && (y - wanted.1).abs() < NEAR;
        assert!(marks.iter().any(near), "sheet {}: {wanted:?}, {marks:?}", leaf.place);
    }
}

/// Whatever form a page comes in, its mark is in the same place.
#[test]
fn turned_pages_and_other_units_are_laid_as_they_are_seen() {
    let mut pages = a5(16);
    for (page, rotate) in [(2, 90), (3, 180), (4, 270)] {
        let lying = if rotate == 180 { whole(148.0, 210.0, 3.0) } else { whole(210.0, 148.0, 3.0) };
        pages[page] = Made { rotate, ..lying };
    }
    // Moved away from the origin, shown without its bleed.
    let moved = |frame: [f64; 4], by: f64| frame.map(|side| side + by);
    for page in [5, 6] {
        let [media, _, trim, bleed] =
            pages[page].boxes.map(|frame| frame.map(|frame| moved(frame, -70.0)));
        pages[page].boxes = [media, trim, trim, bleed];
    }
    let all: Vec<usize> = (0..16).collect();
    assert_eq!(follows("turned", &[("copies_up", "2")], &pages), all);
}

/// Pages side by side are parted; the first and the last page stand alone.
#[test]
fn spreads_are_parted_where_they_fold() {
    let spread = whole(296.0, 210.0, 3.0);
    let pages = [&a5(1)[..], &[spread; 7], &a5(1)].concat();
    let laid = lay(&[], &[&written(&pages)], "design-proof");
    for page in 1..=16_usize {
        let drawn = draw("spread", &laid.bytes, page, FINE);
        let file = page / 2;
        assert_eq!(drawn.at(70.0, 20.0), colour(file, false), "page {page}");
        // The mark stands on the left page of a spread, and on each page that stands alone.
        let marks = drawn.marks(pages.len());
        let expected = page % 2 == 0 || page == 1;
        assert_eq!(marks.contains_key(&file), expected, "page {page}: {marks:?}");
    }
}

/// A cover of its own, as single pages, as its outside alone and laid flat; and one within the file.
#[test]
fn covers_stand_around_the_inside() {
    let fields = [("pages", "16 + 4"), ("cover", "250 gsm silk")];
    let flat = planned(&fields).1.results.cover.open.width.get();
    let inside = written(&a5(16));
    // Which page of the cover's file each of its four sides shows.
    let cases: [(_, _, [Option<usize>; 4]); 4] = [
        ("four", a5(4), [Some(0), Some(1), Some(2), Some(3)]),
        ("outside", a5(2), [Some(0), None, None, Some(1)]),
        ("flat", vec![whole(flat, 210.0, 3.0); 2], [Some(0), Some(1), Some(1), Some(0)]),
        ("flat-outside", vec![whole(flat, 210.0, 3.0)], [Some(0), None, None, Some(0)]),
    ];
    for (name, cover, sides) in cases {
        let laid = lay(&fields, &[&inside, &written(&cover)], "design-proof");
        for (page, side) in [1, 2, 19, 20].into_iter().zip(sides) {
            let there = draw(name, &laid.bytes, page, FINE).at(140.0, 20.0);
            let wanted = side.map_or([255; 3], |file| colour(file, false));
            assert_eq!(there, wanted, "{name}: page {page} of the proof");
        }
        let third = draw(name, &laid.bytes, 3, FINE).at(140.0, 20.0);
        assert_eq!(third, colour(0, false), "{name}: page 1 of the inside");
    }
    let within = lay(&fields, &[&written(&a5(20))], "design-proof");
    for page in [1, 2, 3, 18, 19, 20] {
        let there = draw("within", &within.bytes, page, FINE).at(140.0, 20.0);
        assert_eq!(there, colour(page - 1, false), "within: page {page}");
    }
    // Without its cover the inside is written alone.
    let alone = lay(&fields, &[&inside], "design-pairs");
    let info = String::from_utf8(ran("pdfinfo", &[&kept("alone", &alone.bytes)])).unwrap();
    assert!(info.contains("Pages:           8"), "{info}");
}

pub fn kept(name: &str, bytes: &[u8]) -> String {
    let path = scratch(&format!("{name}.kept.pdf"));
    std::fs::write(&path, bytes).unwrap();
    path.to_str().unwrap().to_owned()
}

/// Bleed shows beyond the cuts and not across the fold; a page that is short leaves white.
#[test]
fn bleed_reaches_beyond_the_cut_and_ends_at_the_fold() {
    let laid = lay(&[], &[&written(&a5(16))], "design-pairs");
    let results = &laid.plan.results;
    let (way, shape) = (results.layout.chosen().unwrap(), results.layout.copy);
    let copy = copies(shape, way).next().unwrap();
    let (fold, top) = (copy.fold.get(), copy.top.get());
    for (at, leaf) in results.leaves.iter().enumerate() {
        let drawn = draw("bleed", &laid.bytes, 2 * at + 1, 300);
        let (left, right) = (colour(15 - 2 * at, false), colour(2 * at, false));
        // A hair on either side of the fold, clear of the marks in what is cut off.
        for y in [top + 30.0, top + 180.0] {
            assert_eq!(drawn.at(fold - 0.2, y), left, "sheet {}", leaf.place);
            assert_eq!(drawn.at(fold + 0.2, y), right, "sheet {}", leaf.place);
        }
        let (cut, chip) = (leaf.length.get(), way.flat.width.get() / 2.0 - leaf.length.get());
        let beyond = chip.min(3.0) - 0.2;
        assert_eq!(drawn.at(fold + cut + beyond, top + 100.0), right);
        assert_eq!(drawn.at(fold - cut - beyond, top + 100.0), left);
        assert_eq!(drawn.at(fold + 60.0, top - 2.8), right, "bleed at the head");
        let outside = 3.0 + leaf.image_shift.get().abs() + 0.4;
        assert_eq!(
            drawn.at(fold + cut + outside, top + 100.0),
            [255; 3],
            "nothing beyond the bleed"
        );
        assert_eq!(drawn.at(fold + 60.0, top - 3.3), [255; 3]);
    }
}

/// The proof: each page as wide as its leaf, its mark where the moved page has it, and what the cut takes
/// off is gone.
#[test]
fn a_proof_is_the_book_after_the_cut() {
    for (name, images) in [("proof", "shop"), ("proof-laid", "nobody")] {
        let fields = [("images", images)];
        let laid = lay(&fields, &[&written(&a5(16))], "design-proof");
        let path = kept(name, &laid.bytes);
        ran("qpdf", &["--check", &path]);
        let told = String::from_utf8(ran("pdfinfo", &["-f", "1", "-l", "99", &path])).unwrap();
        for page in 1..=16_usize {
            let place = if page <= 8 { page.div_ceil(2) } else { (17 - page).div_ceil(2) };
            let leaf = &laid.plan.results.leaves[place - 1];
            let line = told.lines().find(|line| line.starts_with(&format!("Page {page:4} size:")));
            let sizes: Vec<f64> =
                line.unwrap().split_whitespace().filter_map(|word| word.parse().ok()).collect();
            let (wide, high) = (sizes[1] / 72.0 * 25.4, sizes[2] / 72.0 * 25.4);
            assert!((wide - leaf.length.get()).abs() < NEAR && (high - 210.0).abs() < NEAR);
            let marks = draw(name, &laid.bytes, page, FINE).marks(16);
            let shift = if images == "shop" { leaf.image_shift.get() } else { 0.0 };
            let left = if page % 2 == 1 { shift } else { leaf.length.get() - shift - 148.0 };
            let (x, y) = marks[&(page - 1)][0];
            let wanted = (left + MARK[0], 210.0 - MARK[1]);
            assert!(
                (x - wanted.0).abs() < NEAR && (y - wanted.1).abs() < NEAR,
                "page {page}: {x} {y}, {wanted:?}"
            );
        }
    }
}

/// What a file of 600 pages takes is read and written whole.
#[test]
fn six_hundred_pages_are_written() {
    let fields = [("pages", "600"), ("paper", "60 gsm offset")];
    let laid = lay(&fields, &[&written(&a5(600))], "design-pairs");
    let path = kept("many", &laid.bytes);
    ran("qpdf", &["--check", &path]);
    let info = String::from_utf8(ran("pdfinfo", &[&path])).unwrap();
    assert!(info.contains("Pages:           300"), "{info}");
}
