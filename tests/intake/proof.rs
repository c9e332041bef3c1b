//! The reader's proof: the book after the cut, page by page.

use crate::drawn::{draw, mark_near};
use crate::laid::{FINE, NEAR, a5, kept, lay, planned, shift};
use crate::support::made::{MARK, colour, whole, written};
use crate::support::ran;

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

/// Each page is as wide as its leaf, its mark stands where the moved page has it, and what the cut takes
/// off is gone.
#[test]
fn a_proof_is_the_book_after_the_cut() {
    let top = [("bound_edge", "top"), ("size", "A5 landscape"), ("images", "shop")];
    let (moved, laid) = ([("images", "shop")], [("images", "nobody")]);
    let upright = whole(148.0, 210.0, 3.0);
    let cases: [(&str, &[(&str, &str)], _); 3] = [
        ("proof", &moved, upright),
        ("proof-laid", &laid, upright),
        ("proof-top", &top, whole(210.0, 148.0, 3.0)),
    ];
    for (name, fields, made) in cases {
        let laid = lay(fields, &[&written(&[made; 16])], "design-proof");
        let path = kept(name, &laid.bytes);
        ran("qpdf", &["--check", &path]);
        let told = String::from_utf8(ran("pdfinfo", &["-f", "1", "-l", "99", &path])).unwrap();
        assert!(told.contains("Pages:           16"), "{told}");
        let mut lengths = Vec::new();
        for page in 1..=16_usize {
            let place = if page <= 8 { page.div_ceil(2) } else { (17 - page).div_ceil(2) };
            let leaf = &laid.plan.results.leaves[place - 1];
            let long = leaf.length.get();
            lengths.push(long);
            let line = told.lines().find(|line| line.starts_with(&format!("Page {page:4} size:")));
            let sizes: Vec<f64> =
                line.unwrap().split_whitespace().filter_map(|word| word.parse().ok()).collect();
            let (wide, high) = (sizes[1] / 72.0 * 25.4, sizes[2] / 72.0 * 25.4);
            assert!((wide - long).abs() < NEAR && (high - 210.0).abs() < NEAR, "{wide} {high}");
            let shift = shift(&laid.job, leaf);
            let recto = page % 2 == 1;
            let wanted = if name == "proof-top" {
                // Its spine is at the head of a recto, at the foot of a verso.
                let head = if recto { shift } else { long - shift - 148.0 };
                (MARK[0], head + 148.0 - MARK[1])
            } else {
                let left = if recto { shift } else { long - shift - 148.0 };
                (left + MARK[0], 210.0 - MARK[1])
            };
            let drawn = draw(name, &laid.bytes, page, FINE);
            assert_eq!(drawn.marks(16).len(), 1, "{name}: page {page} shows others");
            let (x, y) = mark_near(name, page, page - 1, wanted).unwrap();
            let off = (x - wanted.0, y - wanted.1);
            assert!(
                off.0.abs() < NEAR && off.1.abs() < NEAR,
                "{name}: page {page}: off by {off:?}"
            );
        }
        // Four of the leaves before the middle, of four lengths, and the same backwards.
        lengths.dedup();
        assert!(lengths.len() == 7, "leaves are of different lengths: {lengths:?}");
    }
}
