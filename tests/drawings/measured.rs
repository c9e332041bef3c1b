//! What is drawn to scale, measured on the drawing.

use super::*;

/// Sheets of paper on a drawing: path, radius of the corners, thickness.
fn sheets(drawing: &Drawing) -> Vec<(&[Point], f64, f64)> {
    let paper = |shape| match shape {
        &Shape::Sheet { ref path, radius, thickness, pen: Pen::Paper(_), gone: false, .. } => {
            Some((path.as_slice(), radius, thickness))
        }
        _ => None,
    };
    drawing.shapes.iter().filter_map(paper).collect()
}

/// Both ends of the dimension whose words begin with a key's.
fn dimension(drawing: &Drawing, key: &str) -> (Point, Point) {
    let found = drawing.shapes.iter().find_map(|shape| match shape {
        Shape::Dimension { from, to, label, .. } if label.key == key => Some((*from, *to)),
        _ => None,
    });
    found.unwrap_or_else(|| panic!("{} has no {key}", drawing.id))
}

/// Length of a path whose corners are rounded, added up chord by chord.
fn length(path: &[Point], radius: f64) -> f64 {
    let distance = |a: Point, b: Point| (a.x - b.x).hypot(a.y - b.y);
    let toward = |a: Point, b: Point, by: f64| {
        let share = by / distance(a, b);
        Point { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }
    };
    let mut points = vec![path[0]];
    for corner in path.windows(3) {
        let [before, at, after] = [corner[0], corner[1], corner[2]];
        let (enter, leave) = (toward(at, before, radius), toward(at, after, radius));
        // The centre of a quarter circle lies across from its corner.
        let centre = Point { x: enter.x + leave.x - at.x, y: enter.y + leave.y - at.y };
        for step in 0..=2000 {
            let turned = core::f64::consts::FRAC_PI_2 * f64::from(step) / 2000.0;
            let (cos, sin) = (turned.cos(), turned.sin());
            let x = centre.x + (enter.x - centre.x) * cos + (leave.x - centre.x) * sin;
            let y = centre.y + (enter.y - centre.y) * cos + (leave.y - centre.y) * sin;
            points.push(Point { x, y });
        }
    }
    points.push(*path.last().unwrap());
    points.windows(2).map(|pair| distance(pair[0], pair[1])).sum()
}

/// The enlarged fold: every sheet's path is as much shorter than the outermost as the plan says it
/// pushes out; sheets are as thick as their paper; wrap and page edge are as long as planned, and the
/// outer face of the fold takes that wrap.
#[test]
fn sheets_are_drawn_along_their_true_paths() {
    for book in BOOKS.iter() {
        let leaves = &book.plan.results.leaves;
        let kinds = vec!["silk"; book.job.sections.len()];
        for room in ROOMS {
            let drawing = fold_paths(&book.plan, &kinds, room).unwrap();
            let sheets = sheets(&drawing);
            assert_eq!(sheets.len(), leaves.len() + 2, "{}", book.name);
            let all: f64 = sheets[..leaves.len()].iter().map(|(_, _, thick)| thick).sum();
            let scale = all / book.plan.results.stack.flat.nominal.0.get();
            let half = |nth: usize| length(sheets[nth].0, sheets[nth].1) / 2.0 / scale;
            for (nth, leaf) in leaves.iter().enumerate() {
                near(sheets[nth].2 / scale, leaf.caliper.nominal.get(), DRAWN, &book.name);
                near(half(0) - half(nth), leaf.push_out.nominal.get(), DRAWN, &book.name);
            }
            let (start, spine) = dimension(&drawing, "drawing.fold.wrap");
            let wrap = (spine.x - start.x) / scale;
            near(wrap, book.plan.results.trim.wrap.nominal.get(), DRAWN, &book.name);
            // Round the outer face, half a sheet outside the outermost's middle.
            let (path, radius, thick) = sheets[0];
            let out = thick / 2.0;
            let radius =
                if radius > 0.0 || book.job.spine == Spine::Round { radius + out } else { 0.0 };
            let mut face = path.to_vec();
            for (point, (dx, dy)) in
                face.iter_mut().zip([(0.0, -out), (-out, -out), (-out, out), (0.0, out)])
            {
                *point = Point { x: point.x + dx, y: point.y + dy };
            }
            let beyond = length(&face, radius) / 2.0 - (face[0].x - spine.x);
            near(beyond / scale, wrap, DRAWN, &book.name);
            let (start, spine) = dimension(&drawing, "drawing.fold.shift");
            let shift = leaves.last().unwrap().image_shift.get();
            near((spine.x - start.x) / scale, shift, DRAWN, &book.name);
        }
    }
}

/// A bar for every sheet, as long as its push-out; the stepped line goes up by the thickness of a sheet.
#[test]
fn bars_are_as_long_as_the_push_out() {
    for book in BOOKS.iter() {
        let leaves = &book.plan.results.leaves;
        let kinds = vec!["silk"; book.job.sections.len()];
        let drawing = push_outs(&book.plan, &kinds, Room::Narrow).unwrap();
        let steps = drawing.shapes.iter().find_map(|shape| match shape {
            Shape::Sheet { path, pen: Pen::Print, .. } => Some(path),
            _ => None,
        });
        let steps = steps.unwrap();
        let bars = sheets(&drawing);
        // The outermost has none.
        assert_eq!(bars.len(), leaves.len() - 1, "{}", book.name);
        let Some(longest) = bars.last() else { continue };
        let left = longest.0[0].x;
        let scale = (longest.0[1].x - left) / leaves.last().unwrap().push_out.nominal.get();
        let mut height = f64::NEG_INFINITY;
        for ((path, _, _), leaf) in bars.iter().zip(&leaves[1..]) {
            near(path[1].x - path[0].x, leaf.push_out.nominal.get() * scale, DRAWN, &book.name);
            assert!(path[0].y > height, "{}: bars stand on each other", book.name);
            height = path[0].y;
        }
        let cover = book.job.cover().map_or(0.0, |cover| cover.caliper.value.nominal.get());
        let mut thickness = -cover;
        for (leaf, step) in leaves.iter().zip(steps.chunks(2)) {
            thickness += leaf.caliper.nominal.get();
            near((step[0].x - left) / scale, thickness, DRAWN, &book.name);
        }
    }
}

/// The flat cover: its cut is as wide and high as the open cover, creases and stitches stand where the
/// plan has them, the room for words is clear of what is kept from the wire.
#[test]
fn the_flat_cover_is_to_scale() {
    for book in BOOKS.iter() {
        let results = &book.plan.results;
        for room in ROOMS {
            let drawing = flat_cover(&book.plan, &kept(&book.job), room);
            let cuts = lines(&drawing, Pen::Cut);
            assert_eq!(cuts.len(), 4, "{}", book.name);
            let xs = || cuts.iter().flat_map(|(a, b)| [a.x, b.x]);
            let ys = || cuts.iter().flat_map(|(a, b)| [a.y, b.y]);
            let (left, right) = (xs().fold(f64::MAX, f64::min), xs().fold(f64::MIN, f64::max));
            let (head, foot) = (ys().fold(f64::MAX, f64::min), ys().fold(f64::MIN, f64::max));
            let scale = (foot - head) / book.job.size.height.get();
            near((right - left) / scale, results.cover.open.width.get(), DRAWN, &book.name);
            let sheet = sheets(&drawing)[0];
            let bleed = book.job.bleed.map_or(0.0, Mm::get);
            near((left - sheet.0[0].x) / scale, bleed, DRAWN, &book.name);
            near(sheet.2 / scale, book.job.size.height.get() + 2.0 * bleed, DRAWN, &book.name);
            let middle = f64::midpoint(left, right);
            let creases: Vec<f64> = lines(&drawing, Pen::Print)
                .iter()
                .filter(|(from, to)| from.x == to.x && to.y > foot)
                .map(|(from, _)| (from.x - middle) / scale)
                .collect();
            let offset = results.cover.crease_offset.get();
            let expected =
                if book.job.spine == Spine::Square { vec![-offset, offset] } else { vec![0.0] };
            assert_eq!(creases.len(), expected.len(), "{}", book.name);
            for (crease, expected) in creases.iter().zip(expected) {
                near(*crease, expected, DRAWN, &book.name);
            }
            let own = results.stitches.placement.stitches.iter().filter(|stitch| stitch.copy == 0);
            let wires = lines(&drawing, Pen::Wire);
            assert_eq!(wires.len(), own.clone().count(), "{}", book.name);
            for ((from, to), stitch) in wires.iter().zip(own) {
                near(
                    (f64::midpoint(from.y, to.y) - head) / scale,
                    stitch.from_head.get(),
                    DRAWN,
                    &book.name,
                );
                near((to.y - from.y) / scale, results.stitches.wire.crown.get(), DRAWN, &book.name);
            }
        }
    }
}

/// The worst page: the knife falls where the plan has it, from its page's edge, and what is said to stay
/// is what lies between the art and the knife at its worst.
#[test]
fn the_knife_is_drawn_where_it_falls() {
    for book in BOOKS.iter() {
        for room in ROOMS {
            let drawing = clearance(&book.plan, &page(&book.job), room).unwrap();
            let art = book.plan.results.margins.art;
            let (edge_art, edge) = dimension(&drawing, "drawing.clearance.art");
            let scale = (edge.x - edge_art.x) / art.distance.get();
            let (low, high) = dimension(&drawing, "drawing.clearance.knife");
            near((low.x - edge.x) / scale, art.cut.low.get(), DRAWN, &book.name);
            near((high.x - edge.x) / scale, art.cut.high.get(), DRAWN, &book.name);
            let knife = lines(&drawing, Pen::Cut);
            assert_eq!(knife.len(), 1, "{}", book.name);
            near((knife[0].0.x - edge.x) / scale, art.cut.nominal.get(), DRAWN, &book.name);
            let lost = art.left < Mm(0.0);
            let key = if lost { "drawing.clearance.lost" } else { "drawing.clearance.stays" };
            let (from, to) = dimension(&drawing, key);
            near((to.x - from.x) / scale, art.left.get(), DRAWN, &book.name);
            assert_eq!(lost, low.x < edge_art.x - DRAWN, "{}", book.name);
        }
    }
}

/// One unit is a millimetre, so that so many pixels a millimetre make it true: the bar is 50 long, the
/// book as thick as planned, the card 85.60 by 53.98 (ISO/IEC 7810, ID-1).
#[test]
fn true_size_is_true() {
    let book = &BOOKS[0];
    let drawing = true_size(&book.plan, true, "silk");
    let (from, to) = dimension(&drawing, "drawing.length");
    near(to.x - from.x, 50.0, 1e-9, "bar");
    let spine = book.plan.results.stack.closed.nominal.0.get();
    let (path, _, thick) = sheets(&drawing)[0];
    near(path[2].y - path[1].y + thick, spine, 1e-9, "book");
    for (room, wide, high) in [(Room::Wide, 85.60, 53.98), (Room::Narrow, 53.98, 85.60)] {
        let drawing = card(room);
        let Shape::Sheet { path, .. } = &drawing.shapes[0] else { panic!("no outline") };
        let across = |of: fn(&Point) -> f64| {
            let ends = path.iter().map(of);
            ends.clone().fold(f64::MIN, f64::max) - ends.fold(f64::MAX, f64::min)
        };
        near(across(|point| point.x), wide, 1e-9, "card");
        near(across(|point| point.y), high, 1e-9, "card");
        let element = svg::sized(&drawing, &printer(), Some(4.0)).into_string();
        let sized =
            format!("width=\"{}\" height=\"{}\"", drawing.width * 4.0, drawing.height * 4.0);
        assert!(element.contains(&sized), "{sized}: {element}");
    }
}
