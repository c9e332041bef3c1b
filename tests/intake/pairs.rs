//! Where pages stand on the press sheet, and how the book reads once it is folded.

use crate::laid::{a5, follows, kept, lay, planned};
use crate::support::made::{Made, whole, written, written_from};
use crate::support::ran;
use quirefit::plan::Route;
use std::collections::BTreeSet;

type Fields = [(&'static str, &'static str)];

/// Pages of the book's size, with bleed.
fn pages(fields: &Fields, count: usize) -> Vec<Made> {
    let size = planned(fields).0.size;
    let (width, height) = (size.width.get(), size.height.get());
    let top = fields.contains(&("bound_edge", "top"));
    let page = if top { whole(height, width, 3.0) } else { whole(width, height, 3.0) };
    vec![page; count]
}

/// Lays each of these books of 8 pages: they follow each other. Gives back the ways they are printed.
#[track_caller]
fn all_follow(cases: &[(&str, &Fields)]) -> BTreeSet<(bool, bool)> {
    let way = |(name, fields): &(&str, &Fields)| {
        let fields = [*fields, &[("pages", "8")]].concat();
        let file = written(&pages(&fields, 8));
        let (read, way) = follows(name, &fields, &[&file], 8);
        assert_eq!(read, (0..8).collect::<Vec<_>>(), "{name}");
        (way.gripper_beside, way.route == Route::CutFirst)
    };
    cases.iter().map(way).collect()
}

#[test]
fn folded_every_page_follows_the_one_before() {
    let (read, _) = follows("one", &[], &[&written(&a5(16))], 16);
    assert_eq!(read, (0..16).collect::<Vec<_>>());
    let ways = all_follow(&[
        ("straight", &[("route", "straight")]),
        ("cut", &[("route", "cut")]),
        ("laid", &[("images", "nobody")]),
        ("square", &[("spine", "square")]),
        ("small", &[("size", "100 x 120 mm")]),
        ("large", &[("size", "A4"), ("images", "designer")]),
        ("trims", &[("head_trim", "9"), ("foot_trim", "5")]),
    ]);
    assert_eq!(ways.len(), 3, "gripper beside the fold or across it, cut first or not: {ways:?}");
}

#[test]
fn copies_along_the_fold_are_all_the_same_book() {
    let ways = all_follow(&[
        ("two", &[("copies_up", "2")]),
        ("gutter", &[("copies_up", "2"), ("gutter", "11"), ("head_trim", "9")]),
        ("straight-two", &[("copies_up", "2"), ("size", "100 x 120 mm"), ("route", "straight")]),
        ("three", &[("copies_up", "3"), ("size", "100 x 120 mm")]),
        ("moved", &[("images", "designer"), ("copies_up", "2"), ("route", "cut")]),
    ]);
    assert_eq!(ways.len(), 3, "gripper beside the fold or across it, cut first or not: {ways:?}");
}

#[test]
fn heads_meet_heads() {
    let heads = ("pairs", "head-to-head");
    let ways = all_follow(&[
        ("heads-one", &[heads, ("foot_trim", "5"), ("head_trim", "9")]),
        ("heads-many", &[heads, ("size", "100 x 120 mm")]),
        ("heads-straight", &[heads, ("route", "straight")]),
        ("heads-two", &[heads, ("copies_up", "2")]),
        ("heads-three", &[heads, ("copies_up", "3"), ("size", "100 x 120 mm"), ("route", "cut")]),
    ]);
    assert_eq!(ways.len(), 3, "gripper beside the fold or across it, cut first or not: {ways:?}");
}

/// Bound at the top, pages are laid on their sides: the mark goes with them.
#[test]
fn a_book_bound_at_the_top_is_turned() {
    let top = ("bound_edge", "top");
    let small = ("size", "150 x 110 mm");
    all_follow(&[
        ("top", &[top, ("size", "A5 landscape")]),
        ("top-heads", &[top, small, ("copies_up", "2"), ("pairs", "head-to-head")]),
        (
            "top-straight",
            &[top, ("size", "A5 landscape"), ("route", "straight"), ("images", "nobody")],
        ),
    ]);
}

/// Whatever form a page comes in, its mark is in the same place.
#[test]
fn turned_pages_and_other_units_are_laid_as_they_are_seen() {
    let mut pages = a5(8);
    for (page, rotate) in [(2, 90), (3, 180), (4, 270)] {
        let lying = if rotate == 180 { whole(148.0, 210.0, 3.0) } else { whole(210.0, 148.0, 3.0) };
        pages[page] = Made { rotate, ..lying };
    }
    // Moved away from the origin, shown without its bleed.
    let moved = |frame: [f64; 4], by: f64| frame.map(|side| side + by);
    for page in [4, 5] {
        let [media, _, trim, bleed] =
            pages[page].boxes.map(|frame| frame.map(|frame| moved(frame, -70.0)));
        pages[page].boxes = [media, trim, trim, bleed];
    }
    // In a unit twice as large, upright and turned.
    for page in [1, 2] {
        let boxes = pages[page].boxes.map(|frame| frame.map(|frame| frame.map(|side| side / 2.0)));
        pages[page] = Made { unit: Some(2.0), boxes, ..pages[page] };
    }
    let fields = [("copies_up", "2"), ("pages", "8")];
    let (read, _) = follows("turned", &fields, &[&written(&pages)], 8);
    assert_eq!(read, (0..8).collect::<Vec<_>>());
}

/// Two pages on one page of a file: the first hangs left of the second, or above it.
fn spread(page: Made, between: f64, first: usize, second: usize, top: bool) -> Made {
    let [_, _, trim, _] = page.boxes;
    let [left, bottom, right, upper] = trim.unwrap();
    let (wide, high) = (right - left, upper - bottom);
    let (width, height) = if top { (wide, 2.0 * high) } else { (2.0 * wide + between, high) };
    let ends = if top {
        [(first, [0.0, high]), (second, [0.0, 0.0])]
    } else {
        [(first, [0.0, 0.0]), (second, [wide + between, 0.0])]
    };
    Made { both: Some(ends), ..whole(width, height, 3.0) }
}

/// Pages side by side are parted where the book folds; the first and the last stand alone.
#[test]
fn spreads_are_parted() {
    let left: &Fields = &[("pages", "8")];
    let top: &Fields = &[("pages", "8"), ("bound_edge", "top"), ("size", "A5 landscape")];
    for (name, fields) in [("spread", left), ("spread-top", top)] {
        let single = pages(fields, 1)[0];
        let mark = |at| Made { both: Some([(at, [0.0; 2]); 2]), ..single };
        let pair = |nth: usize| spread(single, 0.0, 2 * nth + 1, 2 * nth + 2, name == "spread-top");
        let file: Vec<Made> =
            [mark(0)].into_iter().chain((0..3).map(pair)).chain([mark(7)]).collect();
        let (read, _) = follows(name, fields, &[&written(&file)], 8);
        assert_eq!(read, (0..8).collect::<Vec<_>>(), "{name}");
    }
}

/// A cover of its own, single or laid flat, and one within the file.
#[test]
fn covers_are_the_outermost_sheet() {
    let fields = [("pages", "8 + 4"), ("cover", "250 gsm silk")];
    let inside = written(&a5(8));
    // The cover's pages have the colours after those of the inside.
    let expected: Vec<usize> = [8, 9].into_iter().chain(0..8).chain([10, 11]).collect();
    let single = written_from(8, &a5(4));
    let (read, _) = follows("cover", &fields, &[&inside, &single], 12);
    assert_eq!(read, expected);

    let open = planned(&fields).1.results.cover.open.width.get() - 2.0 * 148.0;
    let page = a5(1)[0];
    // Outside: the back stands left of the front; inside: the other way round.
    let flat = [spread(page, open, 11, 8, false), spread(page, open, 9, 10, false)];
    let (read, _) = follows("cover-flat", &fields, &[&inside, &written(&flat)], 12);
    assert_eq!(read, expected);

    let (read, _) = follows("cover-within", &fields, &[&written(&a5(12))], 12);
    assert_eq!(read, (0..12).collect::<Vec<_>>());
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
