//! The blank dummy: its pages and marks.

use super::*;

/// Where the middle of a page belongs on the press sheet, reckoned from the fold: half a page and the
/// page edge off it, the back mirrored as the press sheet is turned over.
fn middles(job: &Job, plan: &Plan, leaf: &Leaf, side: Side) -> Vec<(String, f64, f64)> {
    let way = plan.results.layout.chosen().unwrap();
    let off = leaf.image_shift.get() + job.size.width.get() / 2.0;
    let folios = leaf.folios;
    let (left, right) = match side {
        Side::Front => (folios.front_left, folios.front_right),
        Side::Back => (folios.back_left, folios.back_right),
    };
    let name = |folio: Folio| match folio {
        Folio::Page(page) => page.to_string(),
        Folio::Cover(side) => format!("C{side}"),
    };
    let mut found = Vec::new();
    for copy in copies(plan.results.layout.copy, way) {
        let (mut x, mut y) =
            (copy.fold.get(), (copy.top + plan.results.layout.copy.height / 2.0).get());
        let mut down = copy.head_down;
        if side == Side::Back {
            if way.gripper_beside {
                y = way.press.height.get() - y;
                down = !down;
            } else {
                x = way.press.width.get() - x;
            }
        }
        let (left, right) = if down { (right, left) } else { (left, right) };
        found.push((name(left), x - off, y));
        found.push((name(right), x + off, y));
    }
    found
}

#[test]
fn every_page_of_the_dummy_stands_at_its_place() {
    let turned: Vec<(&str, &str)> =
        [ROUND, &[("pairs", "head-to-head"), ("copies_up", "2")]].concat();
    for (name, fields) in [("square", SQUARE), ("round", ROUND), ("turned", &turned)] {
        let (job, plan) = planned(fields);
        let bytes = saved(&mut session("en-GB", fields), "save-dummy");
        let path = on_disk(&format!("dummy-{name}.pdf"), &bytes);
        let press = plan.results.layout.chosen().unwrap().press;
        let media = boxed(&path, "MediaBox");
        near(media[2], press.width.get(), 0.02, "press sheet, width");
        near(media[3], press.height.get(), 0.02, "press sheet, height");
        let mut page = 0;
        for leaf in &plan.results.leaves {
            for side in [Side::Front, Side::Back] {
                page += 1;
                let words = words(&path, page);
                let expected = middles(&job, &plan, leaf, side);
                assert!(!expected.is_empty());
                for (number, x, y) in &expected {
                    let stands = words.iter().any(|(word, [left, top, right, bottom])| {
                        let middle = (f64::midpoint(*left, *right), f64::midpoint(*top, *bottom));
                        word == number && (middle.0 - x).abs() < 0.02 && (middle.1 - y).abs() < 5.0
                    });
                    assert!(
                        stands,
                        "{name}: {number} of sheet {} at {x} {y}: {words:?}",
                        leaf.place
                    );
                }
            }
        }
        let told = said("pdfinfo", &[&path]);
        let pages: usize = 2 * plan.results.leaves.len();
        assert!(told.contains(&format!("Pages:           {pages}\n")), "{told}");
    }
}

/// Folds, cuts and the bar, measured on the first side of a raster.
#[test]
fn the_marks_of_the_dummy_stand_where_the_plan_says() {
    let (job, plan) = planned(SQUARE);
    let bytes = saved(&mut session("en-GB", SQUARE), "save-dummy");
    let raster = Raster::of(&on_disk("marks.pdf", &bytes), 1);
    near(raster.longest_black(), 50.0, PIXEL, "the bar");
    let results = &plan.results;
    let way = results.layout.chosen().unwrap();
    let copy = copies(results.layout.copy, way).next().unwrap();
    // Just below the head of the page, the fold's first stroke; the leaf's face cut and the page's
    // spine edge on either side of it.
    let leaf = results.leaves.first().unwrap();
    let fold = copy.fold.get();
    let (edge, length) = (leaf.image_shift.get(), leaf.length.get());
    let row = copy.top.get() - 1.0;
    let found = raster.marks_along(row);
    assert!(found.iter().any(|x| (x - fold).abs() <= PIXEL), "no fold at {fold}: {found:?}");
    for place in [fold - length, fold + length] {
        assert!(
            found.iter().any(|x| (x - place).abs() <= PIXEL),
            "no face cut at {place}: {found:?}"
        );
    }
    let row = copy.top.get() + 4.0;
    let found = raster.marks_along(row);
    for place in [fold - edge, fold + edge] {
        let stands = found.iter().any(|x| (x - place).abs() <= 2.0 * PIXEL);
        assert!(stands, "no page edge at {place}: {found:?}");
    }
    near(length - edge, job.size.width.get(), 1e-9, "a page is as wide as the book");
    // A stitch of the outside: a thick stroke on the fold.
    let stitch = results.stitches.placement.stitches.first().unwrap();
    let row = (copy.top + stitch.from_head).get();
    let strokes = raster.marks_along(row);
    assert!(strokes.iter().any(|x| (x - fold).abs() <= PIXEL), "no stitch: {strokes:?}");
    let thick = (0..raster.wide)
        .filter(|x| raster.pixel(*x, (row / PIXEL) as usize).iter().all(|part| *part < 60))
        .count() as f64;
    assert!(thick * PIXEL >= 0.65, "a stitch of {} mm", thick * PIXEL);
}
