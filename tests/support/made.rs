//! PDF files made for tests.
#![allow(dead_code, reason = "every test takes what it needs")]
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

use pdf_writer::{Finish, Pdf, Rect, Ref};

/// Points in a millimetre.
pub const POINT: f64 = 72.0 / 25.4;

/// A page to be made: media, crop, trim and bleed box in millimetres, turned by degrees.
#[derive(Clone, Copy, Default)]
pub struct Made {
    pub boxes: [Option<[f64; 4]>; 4],
    pub rotate: i32,
    pub unit: Option<f32>,
    pub empty: bool,
    /// Where two pages lie on one: whose marks these are and where the finished page of each begins, from
    /// the lower left corner of both. Otherwise there is one mark, of the page's own place in the file.
    pub both: Option<[(usize, [f64; 2]); 2]>,
}

impl Made {
    /// Its colours, as operators.
    pub fn drawn(&self, at: usize) -> String {
        let Some([left, bottom, right, top]) = self.boxes[0] else { return "0 0 m 9 9 l S".into() };
        let trim = self.boxes[2].or(self.boxes[1]).unwrap_or([left, bottom, right, top]);
        let square = |[left, bottom, right, top]: [f64; 4]| {
            let sides = [left, bottom, right - left, top - bottom].map(|side| side * POINT);
            sides.map(|side| format!("{side:.4}")).join(" ")
        };
        let fill = |[red, green, blue]: [u8; 3], sides| {
            let part = |part: u8| format!("{:.5}", f64::from(part) / 255.0);
            format!("{} {} {} rg {} re f\n", part(red), part(green), part(blue), square(sides))
        };
        // A unit of its own makes everything larger, the mark must not become so.
        let unit = f64::from(self.unit.unwrap_or(1.0));
        let half = SIDE / 2.0 / unit;
        let marks = self.both.map_or_else(|| vec![(at, [0.0; 2])], |both| both.to_vec());
        let marks = marks.into_iter().map(|(of, [along, up])| {
            let [x, y] = self.mark(trim, [MARK[0] + along, MARK[1] + up].map(|side| side / unit));
            fill(colour(of, true), [x - half, y - half, x + half, y + half])
        });
        fill(colour(at, false), [left, bottom, right, top]) + &marks.collect::<String>()
    }

    /// Where a mark stands, before the page is turned: its place is that on the page as it is seen.
    fn mark(&self, [left, bottom, right, top]: [f64; 4], [aside, above]: [f64; 2]) -> [f64; 2] {
        match self.rotate.rem_euclid(360) {
            90 => [right - above, bottom + aside],
            180 => [right - aside, top - above],
            270 => [left + above, top - aside],
            _ => [left + aside, bottom + above],
        }
    }
}

/// The middle of a page's mark, from the lower left corner of its finished page as it is seen.
pub const MARK: [f64; 2] = [30.0, 50.0];
/// The side of the mark.
pub const SIDE: f64 = 8.0;

/// The colour of a page, or of its mark. A file has less than 1024.
pub fn colour(at: usize, mark: bool) -> [u8; 3] {
    let part = |bits: usize| u8::try_from((at >> bits) % 32 * 6 + 40).unwrap();
    [part(0), part(5), if mark { MARKED } else { 250 }]
}

/// The last part of the colour of a mark.
pub const MARKED: u8 = 20;

/// A page of this finished size with so much bleed all round, and every box.
pub fn whole(width: f64, height: f64, bleed: f64) -> Made {
    let slug = bleed + 10.0;
    let around = |more: f64| {
        let low = slug - more;
        Some([low, low, slug + width + more, slug + height + more])
    };
    let media = Some([0.0, 0.0, width + 2.0 * slug, height + 2.0 * slug]);
    Made { boxes: [media, None, around(0.0), around(bleed)], ..Made::default() }
}

/// A page of this size that says nothing else.
pub fn bare(width: f64, height: f64) -> Made {
    Made { boxes: [Some([0.0, 0.0, width, height]), None, None, None], ..Made::default() }
}

/// A file of these pages. Each is filled with a colour of its own as far as it reaches, and has a mark of
/// another colour of its own: see [`colour`] and [`MARK`].
pub fn written(pages: &[Made]) -> Vec<u8> {
    written_from(0, pages)
}

/// The same with the colours of a file's later pages, from this one on.
pub fn written_from(first: usize, pages: &[Made]) -> Vec<u8> {
    let mut pdf = Pdf::new();
    let (catalog, tree) = (Ref::new(1), Ref::new(2));
    pdf.catalog(catalog).pages(tree);
    let id = |at: usize| Ref::new(3 + 2 * i32::try_from(at).unwrap());
    pdf.pages(tree).kids((0..pages.len()).map(id)).count(i32::try_from(pages.len()).unwrap());
    for (at, made) in pages.iter().enumerate() {
        let content = Ref::new(id(at).get() + 1);
        let mut page = pdf.page(id(at));
        let rect = |sides: [f64; 4]| {
            let [left, bottom, right, top] = sides.map(|side| (side * POINT) as f32);
            Rect::new(left, bottom, right, top)
        };
        let [media, crop, trim, bleed] = made.boxes.map(|sides| sides.map(rect));
        if let Some(media) = media {
            page.media_box(media);
        }
        if let Some(crop) = crop {
            page.crop_box(crop);
        }
        if let Some(trim) = trim {
            page.trim_box(trim);
        }
        if let Some(bleed) = bleed {
            page.bleed_box(bleed);
        }
        if made.rotate != 0 {
            page.rotate(made.rotate);
        }
        if let Some(unit) = made.unit {
            page.user_unit(unit);
        }
        page.parent(tree).contents(content).resources();
        page.finish();
        let drawn = if made.empty { " \n ".to_owned() } else { made.drawn(first + at) };
        pdf.stream(content, drawn.as_bytes());
    }
    pdf.finish()
}
