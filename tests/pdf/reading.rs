//! What general tools say of a file, in millimetres.

use crate::support::ran;
use std::fs;
use std::path::PathBuf;

/// Millimetres in a point, and in a pixel of the raster.
pub const POINT: f64 = 25.4 / 72.0;
pub const DOTS: u32 = 600;
pub const PIXEL: f64 = 25.4 / DOTS as f64;

/// A file on the disk for other programs.
pub fn on_disk(name: &str, bytes: &[u8]) -> String {
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::write(&path, bytes).unwrap();
    path.to_str().unwrap().to_owned()
}

pub fn said(program: &str, arguments: &[&str]) -> String {
    String::from_utf8(ran(program, arguments)).unwrap()
}

/// Two lengths agree within so much.
#[track_caller]
pub fn near(found: f64, expected: f64, within: f64, what: &str) {
    assert!((found - expected).abs() <= within, "{what}: found {found}, expected {expected}");
}

/// A raster, red green blue, three bytes a pixel.
pub struct Raster {
    pub wide: usize,
    pub high: usize,
    bytes: Vec<u8>,
}

impl Raster {
    /// One page at [`DOTS`] an inch.
    pub fn of(path: &str, page: usize) -> Self {
        let (dots, page) = (DOTS.to_string(), page.to_string());
        let out = ran("pdftoppm", &["-r", &dots, "-f", &page, "-l", &page, path]);
        // P6, width and height, the greatest value, then the pixels.
        let mut head = out.splitn(4, |byte| *byte == b'\n');
        assert_eq!(head.next(), Some(&b"P6"[..]));
        let size = std::str::from_utf8(head.next().unwrap()).unwrap();
        let (wide, high) = size.split_once(' ').unwrap();
        assert_eq!(head.next(), Some(&b"255"[..]));
        let bytes = head.next().unwrap().to_vec();
        let raster = Self { wide: wide.parse().unwrap(), high: high.parse().unwrap(), bytes };
        assert_eq!(raster.bytes.len(), raster.wide * raster.high * 3);
        raster
    }

    pub fn pixel(&self, x: usize, y: usize) -> [u8; 3] {
        let at = (y * self.wide + x) * 3;
        self.bytes[at..at + 3].try_into().unwrap()
    }

    /// Middles of the runs of pixels along a row, in millimetres, that are not paper.
    pub fn marks_along(&self, y: f64) -> Vec<f64> {
        let row = (y / PIXEL) as usize;
        let inked = |x: usize| self.pixel(x, row).iter().any(|part| *part < 230);
        self.runs(self.wide, inked)
    }

    pub fn marks_down(&self, x: f64) -> Vec<f64> {
        let column = (x / PIXEL) as usize;
        let inked = |y: usize| self.pixel(column, y).iter().any(|part| *part < 230);
        self.runs(self.high, inked)
    }

    fn runs(&self, length: usize, inked: impl Fn(usize) -> bool) -> Vec<f64> {
        let begins = (0..length).filter(|at| inked(*at) && (*at == 0 || !inked(at - 1)));
        let run = |from: usize| (from..length).take_while(|at| inked(*at)).count();
        begins.map(|from| (from as f64 + run(from) as f64 / 2.0) * PIXEL).collect()
    }

    /// The longest black run in any row, in millimetres.
    pub fn longest_black(&self) -> f64 {
        let mut longest = 0;
        for y in (0..self.high).step_by(8) {
            let mut run = 0;
            for x in 0..self.wide {
                run = if self.pixel(x, y).iter().all(|part| *part < 60) { run + 1 } else { 0 };
                longest = longest.max(run);
            }
        }
        longest as f64 * PIXEL
    }
}

/// Words of one page and the boxes they stand in, in millimetres.
pub fn words(path: &str, page: usize) -> Vec<(String, [f64; 4])> {
    let page = page.to_string();
    let told = said("pdftotext", &["-bbox", "-f", &page, "-l", &page, path, "-"]);
    // What is read is XHTML of the program's own; its document type is passed over.
    let from = told.find("<html").unwrap();
    let tree = roxmltree::Document::parse(&told[from..]).unwrap();
    let words = tree.descendants().filter(|node| node.has_tag_name("word"));
    let each = words.map(|word| {
        let place = ["xMin", "yMin", "xMax", "yMax"]
            .map(|name| word.attribute(name).unwrap().parse::<f64>().unwrap() * POINT);
        (word.text().unwrap().to_owned(), place)
    });
    each.collect()
}

/// The box of a page by its name: left, bottom, width, height in millimetres.
pub fn boxed(path: &str, name: &str) -> [f64; 4] {
    let told = said("pdfinfo", &["-box", path]);
    let line = told.lines().find(|line| line.starts_with(name)).unwrap();
    let numbers: Vec<f64> =
        line.split_whitespace().skip(1).map(|number| number.parse::<f64>().unwrap()).collect();
    let [left, bottom, right, top] = numbers.try_into().unwrap();
    [left, bottom, right - left, top - bottom].map(|points| points * POINT)
}
