//! How far pages show beyond their cuts.

use crate::drawn::draw;
use crate::laid::{a5, lay};
use crate::support::made::{Made, colour, written};
use quirefit::plan::copies;

const WHITE: [u8; 3] = [255; 3];
/// The bleed of a job that says nothing else, in millimetres.
const BLEED: f64 = 3.0;
/// Dots to an inch: one is 0.08 mm.
const DOTS: u32 = 300;
/// On either side of an edge, what lies farther from it than this is one thing or the other.
const HAIR: f64 = 0.2;
/// Where head and foot are looked at, from the fold: no marks and no words stand there.
const ASIDE: f64 = 30.0;

/// Lays 16 pages and looks at the front of every sheet: around each copy, each page shows as far as its
/// bleed, the flat, or the middle to the next copy, and never across the fold.
fn shows(name: &str, fields: &[(&str, &str)], page: Made) {
    let laid = lay(fields, &[&written(&[page; 16])], "design-pairs");
    let (job, results) = (&laid.job, &laid.plan.results);
    let (way, shape) = (results.layout.chosen().unwrap(), results.layout.copy);
    let up = shape.up;
    let flat = way.flat.width.get() / 2.0;
    let high = job.size.height.get();
    let between = job.gutter.get() / 2.0;
    for (at, leaf) in results.leaves.iter().enumerate() {
        let drawn = draw(name, &laid.bytes, 2 * at + 1, DOTS);
        for copy in copies(shape, way) {
            let (fold, top, long) = (copy.fold.get(), copy.top.get(), leaf.length.get());
            let pages = [15 - 2 * at, 2 * at];
            let (left, right) =
                if copy.head_down { (pages[1], pages[0]) } else { (pages[0], pages[1]) };
            let there = |x: f64, y: f64| drawn.at(fold + x, top + y);
            for (out, page) in [(-1.0, left), (1.0, right)] {
                let own = colour(page, false);
                let said =
                    format!("{name}: sheet {}, copy {}, page {}", leaf.place, copy.nth, page + 1);
                // At the fold, clear of the marks in what is cut off.
                for y in [30.0, high - 30.0] {
                    assert_eq!(there(out * HAIR, y), own, "{said}: at the fold");
                }
                // At the face: the page ends where the shift has put it.
                let ends = job.size.width.get() + leaf.image_shift.get() + BLEED;
                let reach = (long + (flat - long).min(BLEED)).min(ends);
                assert_eq!(there(out * (reach - HAIR), high / 2.0), own, "{said}: beyond the face");
                let most = ends.max(long + BLEED) + HAIR;
                assert_eq!(there(out * most, high / 2.0), WHITE, "{said}: beyond its bleed");
                // At head and foot: to the flat's edge, or half way to the next copy.
                let above = if copy.nth == 0 { way.head_trim.get() } else { between };
                let below = if copy.nth + 1 == up { job.foot_trim.get() } else { between };
                for (edge, beyond, free) in [(0.0, -1.0, above), (high, 1.0, below)] {
                    let reach = free.min(BLEED);
                    let y = |more: f64| edge + beyond * (reach + more);
                    assert_eq!(there(out * ASIDE, y(-HAIR)), own, "{said}: beyond head or foot");
                    let after = there(out * ASIDE, y(HAIR));
                    let next = copies(shape, way).find(|next| {
                        let y = top + y(HAIR) - next.top.get();
                        let outside = y.max(high) - high - y.min(0.0);
                        (next.fold, next.top) != (copy.fold, copy.top) && outside < BLEED + HAIR
                    });
                    match next {
                        // The same page begins there.
                        Some(next) if next.head_down == copy.head_down => {}
                        Some(_) => assert_ne!(after, own, "{said}: over the next copy"),
                        None => assert_eq!(after, WHITE, "{said}: too far at head or foot"),
                    }
                }
            }
        }
    }
}

#[test]
fn bleed_reaches_beyond_the_cut_and_ends_at_the_fold() {
    shows("bleed", &[], a5(1)[0]);
}

#[test]
fn bleed_ends_half_way_to_the_next_copy() {
    let two = ("copies_up", "2");
    shows("bleed-two", &[two], a5(1)[0]);
    shows("bleed-narrow", &[two, ("gutter", "4")], a5(1)[0]);
    shows("bleed-heads", &[two, ("gutter", "8"), ("pairs", "head-to-head")], a5(1)[0]);
}

/// What a viewer shows of a page says nothing of its bleed: a CropBox at the cut takes none of it.
#[test]
fn bleed_outlives_a_crop_box_at_the_cut() {
    let page = a5(1)[0];
    let [media, _, trim, bleed] = page.boxes;
    shows("bleed-cropped", &[], Made { boxes: [media, trim, trim, bleed], ..page });
}

/// Where the facing page is blank nothing hides what would reach across the fold.
#[test]
fn nothing_crosses_the_fold_to_a_blank() {
    let laid = lay(&[], &[&written(&a5(14))], "design-pairs");
    let results = &laid.plan.results;
    let (way, shape) = (results.layout.chosen().unwrap(), results.layout.copy);
    assert!(!way.gripper_beside, "left and right change places on the back");
    let copy = copies(shape, way).next().unwrap();
    let (fold, y) = (copy.fold.get(), copy.top.get() + 100.0);
    // The outermost sheet: page 1 on the right of its front, page 2 on the left of its back.
    for (page, fold, out) in [(0, fold, 1.0), (1, way.press.width.get() - fold, -1.0)] {
        let drawn = draw("bleed-blank", &laid.bytes, page + 1, DOTS);
        assert_eq!(drawn.at(fold + out * HAIR, y), colour(page, false));
        assert_eq!(drawn.at(fold - out * HAIR, y), WHITE, "page {} crosses the fold", page + 1);
    }
}
