//! Lays books as a person would, and reads the folded book off its press sheets.

use crate::drawn::{draw, mark_near};
use crate::reading::scratch;
use crate::support::made::{MARK, Made, whole};
use crate::support::{self, JSON};
use quirefit::draft::Draft;
use quirefit::intake::{Desk, Order, Part, taken};
use quirefit::job::{self, ImagesMovedBy, Job};
use quirefit::page::{Event, Patch, Session};
use quirefit::plan::{Leaf, Plan, Side, Way, copies, plan};
use quirefit::shop;
use quirefit::words::Files;

/// How far a mark may be from where it should be, in millimetres. A dot of 600 to an inch is 0.04 mm.
pub const NEAR: f64 = 0.05;
/// Dots to an inch of what is looked over as a whole.
pub const FINE: u32 = 75;

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
    desk.begin(order.unwrap_or_else(|| panic!("nothing was ordered: {fields:?}")));
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

pub fn planned(fields: &[(&str, &str)]) -> (Job, Plan) {
    let shop = shop::demo();
    let job = support::job(&book(fields), &shop);
    let plan = plan(&job, &shop);
    (job, plan)
}

/// So many pages of A5 with bleed.
pub fn a5(pages: usize) -> Vec<Made> {
    vec![whole(148.0, 210.0, 3.0); pages]
}

/// Where the mark of a page lies on its leaf as it is bound, from the leaf's lower left corner: a book bound
/// at the top lies with its heads to the left, so that its spine stands upright.
pub fn mark_on_leaf(job: &Job, top: bool) -> [f64; 2] {
    let [aside, above] = MARK;
    if top { [job.size.width.get() - above, aside] } else { [aside, above] }
}

/// From the fold to the spine edge of this leaf's pages: s, where the shop moves them.
pub fn shift(job: &Job, leaf: &Leaf) -> f64 {
    match job.images {
        ImagesMovedBy::Shop => leaf.image_shift.get(),
        ImagesMovedBy::Designer | ImagesMovedBy::Nobody => 0.0,
    }
}

/// Where a page's mark belongs on one side of the press sheet: by the definition of the shift, and by how
/// a sheet of paper is turned over.
struct Half<'a> {
    job: &'a Job,
    way: &'a Way,
    /// Fold and upper cut of the copy, seen from the front.
    fold: f64,
    top: f64,
    shift: f64,
    mark: [f64; 2],
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
        let [aside, above] = self.mark;
        if down { (x + wide - aside, y + above) } else { (x + aside, y + high - above) }
    }
}

/// Lays a book in pairs, and looks for every page's mark on both sides of every sheet: it stands where it
/// should, and there is no other. Gives back how the pages follow each other in the folded book, by the
/// colours of their marks, of which there are so many.
pub fn follows(
    name: &str,
    fields: &[(&str, &str)],
    files: &[&[u8]],
    colours: usize,
) -> (Vec<usize>, Way) {
    let laid = lay(fields, files, "design-pairs");
    let (job, results) = (&laid.job, &laid.plan.results);
    let way = results.layout.chosen().unwrap();
    let shape = results.layout.copy;
    let mark = mark_on_leaf(job, fields.contains(&("bound_edge", "top")));
    let (mut front, mut back) = (Vec::new(), Vec::new());
    for (at, leaf) in results.leaves.iter().enumerate() {
        let mut halves = [[None; 2]; 2];
        for (nth, side) in [Side::Front, Side::Back].into_iter().enumerate() {
            let there = || format!("{name}: sheet {}, {side:?}", leaf.place);
            let page = 2 * at + nth + 1;
            let found = draw(name, &laid.bytes, page, FINE).marks(colours);
            let all: usize = found.values().map(Vec::len).sum();
            assert_eq!(all, 2 * copies(shape, way).count(), "{}: {found:?}", there());
            for copy in copies(shape, way) {
                let (fold, top) = (copy.fold.get(), copy.top.get());
                let half = Half { job, way, fold, top, shift: shift(job, leaf), mark };
                for right in [true, false] {
                    let wanted = half.mark(side, right, copy.head_down);
                    let close = |(x, y): &(f64, f64)| {
                        (x - wanted.0).abs() < 1.0 && (y - wanted.1).abs() < 1.0
                    };
                    let of = found.iter().find(|(_, marks)| marks.iter().any(close));
                    let Some((of, _)) = of else {
                        panic!("{}: no mark at {wanted:?}: {found:?}", there());
                    };
                    let (x, y) = mark_near(name, page, *of, wanted).unwrap();
                    let off = (x - wanted.0, y - wanted.1);
                    assert!(
                        off.0.abs() < NEAR && off.1.abs() < NEAR,
                        "{}: off by {off:?}",
                        there()
                    );
                    // Upright, the right leaf is the first of the two; head down the left one is.
                    let first = right != copy.head_down;
                    let known = &mut halves[usize::from(!first)][nth];
                    assert!(known.is_none_or(|known| known == *of), "copies differ");
                    *known = Some(*of);
                }
            }
        }
        front.extend(halves[0].map(Option::unwrap));
        back.extend(halves[1].map(Option::unwrap));
    }
    // First leaves from the outside in, recto then verso; then the others from the inside out.
    (front.into_iter().chain(back.into_iter().rev()).collect(), *way)
}

pub fn kept(name: &str, bytes: &[u8]) -> String {
    let path = scratch(&format!("{name}.kept.pdf"));
    std::fs::write(&path, bytes).unwrap();
    path.to_str().unwrap().to_owned()
}
