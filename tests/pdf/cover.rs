//! The flat cover: its boxes, lines and layers.

use super::*;

#[test]
fn the_boxes_of_the_cover_are_the_plans() {
    for (name, fields) in [("square", SQUARE), ("round", ROUND)] {
        let (job, plan) = planned(fields);
        let bytes = saved(&mut session("en-GB", fields), "save-cover");
        let path = on_disk(&format!("boxes-{name}.pdf"), &bytes);
        let cover = &plan.results.cover;
        let [trim, bleed] = [boxed(&path, "TrimBox"), boxed(&path, "BleedBox")];
        // The program prints hundredths of a point.
        let within = 0.02 * POINT;
        near(trim[2], cover.open.width.get(), within, "cut, width");
        near(trim[3], cover.open.height.get(), within, "cut, height");
        near(bleed[2], cover.with_bleed.width.get(), within, "bleed, width");
        near(bleed[3], cover.with_bleed.height.get(), within, "bleed, height");
        let by = job.bleed.map_or(0.0, |bleed| bleed.get());
        near(trim[0] - bleed[0], by, within, "bleed at the left");
        near(trim[1] - bleed[1], by, within, "bleed at the foot");
        let media = boxed(&path, "MediaBox");
        assert!(media[2] > bleed[2] + 20.0 && media[3] > bleed[3] + 20.0, "{media:?}");
    }
}

/// Above the bleed stand the marks: both cuts, both page edges, the creases; below the middle of the
/// page the bar.
#[test]
fn the_lines_of_the_cover_stand_where_the_plan_says() {
    for (name, fields) in [("square", SQUARE), ("round", ROUND)] {
        let (_, plan) = planned(fields);
        let bytes = saved(&mut session("en-GB", fields), "save-cover");
        let path = on_disk(&format!("lines-{name}.pdf"), &bytes);
        let raster = Raster::of(&path, 1);
        let bleed = boxed(&path, "BleedBox");
        let head = boxed(&path, "MediaBox")[3] - bleed[1] - bleed[3];
        let middle = bleed[0] + bleed[2] / 2.0;
        let cover = &plan.results.cover;
        let half = cover.open.width.get() / 2.0;
        let (edge, crease) = (plan.results.trim.wrap.nominal.get(), cover.crease_offset.get());
        let creases = if cover.creases == 1 { vec![0.0] } else { vec![-crease, crease] };
        let mut expected = [vec![-half, half, -edge, edge], creases].concat();
        expected.sort_by(f64::total_cmp);
        // Lines nearer than they are thick run into one.
        expected.dedup_by(|one, other| (*one - *other).abs() < 0.25);
        let found = raster.marks_along(head - 6.0);
        assert_eq!(found.len(), expected.len(), "{name}: {found:?}, {expected:?}");
        for (found, expected) in found.iter().zip(&expected) {
            near(found - middle, *expected, 0.13, name);
        }
        // The cuts of head and foot, left of the bleed.
        let found = raster.marks_down(bleed[0] - 6.0);
        let trim = head + (bleed[3] - cover.open.height.get()) / 2.0;
        for (found, expected) in found.iter().zip([trim, trim + cover.open.height.get()]) {
            near(*found, expected, PIXEL, name);
        }
        near(raster.longest_black(), 50.0, PIXEL, "the bar");
    }
}

/// With every layer but one switched off nothing but its lines is left.
#[test]
fn each_kind_of_line_is_a_layer_of_its_own() {
    let bytes = saved(&mut session("en-GB", SQUARE), "save-cover");
    let text = String::from_utf8_lossy(&bytes).into_owned();
    let names = ["Bleed", "Cut", "Safe area", "Spine, page edges", "Folds and creases", "Stitches"];
    for name in names.iter().chain(&["Notes"]) {
        assert!(text.contains(&format!("/Type/OCG/Name({name})")), "no layer {name}");
    }
    let order = "/Order[6 0 R 7 0 R 8 0 R 9 0 R 10 0 R 11 0 R 12 0 R]";
    let from = bytes.windows(order.len()).position(|part| part == order.as_bytes()).unwrap();
    let colours = |shown: Option<usize>| -> BTreeSet<[u8; 3]> {
        let off: Vec<String> =
            (6..13).filter(|id| Some(*id) != shown).map(|id| format!("{id} 0 R")).collect();
        let off = format!("{:<length$}", format!("/OFF[{}]", off.join(" ")), length = order.len());
        let mut changed = bytes.clone();
        changed[from..from + order.len()].copy_from_slice(off.as_bytes());
        let raster = Raster::of(&on_disk("layers.pdf", &changed), 1);
        let all = (0..raster.wide * raster.high).step_by(7);
        let seen: BTreeSet<[u8; 3]> =
            all.map(|at| raster.pixel(at % raster.wide, at / raster.wide)).collect();
        seen.into_iter().filter(|pixel| *pixel != [255; 3]).collect()
    };
    assert!(colours(None).is_empty(), "something lies on no layer");
    let cut = colours(Some(7));
    assert!(!cut.is_empty() && cut.iter().all(|[red, green, _]| red >= green), "{cut:?}");
    assert!(cut.iter().any(|[red, green, blue]| *red > 150 && *green < 90 && *blue < 90));
    let safe = colours(Some(8));
    assert!(!safe.is_empty() && safe.iter().all(|[red, green, _]| green >= red), "{safe:?}");
}
