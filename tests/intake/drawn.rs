//! What poppler draws of a file, and where the marks of pages stand in it.

use crate::reading::scratch;
use crate::support::made::{MARKED, colour};
use crate::support::ran;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// A page as dots.
pub struct Dots {
    wide: usize,
    bytes: Vec<u8>,
    /// Dots in a millimetre.
    pub fine: f64,
}

/// Marks of one page farther apart than this across are two, in millimetres.
const APART: f64 = 15.0;

/// A mark while its dots are found: how many, sums of where they are, and where the last was.
struct Mark {
    dots: f64,
    across: f64,
    down: f64,
    row: usize,
    column: usize,
}

/// Draws one page, counted from 1, so many dots to an inch.
pub fn draw(name: &str, bytes: &[u8], page: usize, dots: u32) -> Dots {
    let from = scratch(&format!("{name}.drawn.pdf"));
    fs::write(&from, bytes).unwrap();
    drawn(&from, page, dots, &[])
}

/// The middle of one page's mark, as exactly as it can be drawn, looked for no farther than this from a
/// place in millimetres from the upper left corner. The file is the one that was drawn last by this name.
pub fn mark_near(name: &str, page: usize, of: usize, place: (f64, f64)) -> Option<(f64, f64)> {
    const DOTS: u32 = 600;
    const AROUND: f64 = 8.0;
    let fine = f64::from(DOTS) / 25.4;
    let corner = [place.0, place.1].map(|place| ((place - AROUND) * fine).max(0.0) as usize);
    let side = (2.0 * AROUND * fine) as usize;
    let told = [corner[0], corner[1], side, side].map(|number| number.to_string());
    let part = ["-x", &told[0], "-y", &told[1], "-W", &told[2], "-H", &told[3]];
    let dots = drawn(&scratch(&format!("{name}.drawn.pdf")), page, DOTS, &part);
    let (x, y) = *dots.marks(of + 1).get(&of)?.first()?;
    Some((x + corner[0] as f64 / fine, y + corner[1] as f64 / fine))
}

fn drawn(from: &Path, page: usize, dots: u32, part: &[&str]) -> Dots {
    let (page, dots_told) = (page.to_string(), dots.to_string());
    // Without smoothing: a dot is of one thing or of another.
    let usual = ["-r", &dots_told, "-f", &page, "-l", &page, "-singlefile", "-aaVector", "no"];
    let picture = ran("pdftoppm", &[&usual, part, &[from.to_str().unwrap()]].concat());
    let mut lines = picture.splitn(4, |byte| byte.is_ascii_whitespace());
    let mut next = || String::from_utf8(lines.next().unwrap().to_vec()).unwrap();
    assert_eq!(next(), "P6");
    let wide: usize = next().parse().unwrap();
    let rest = {
        next();
        lines.next().unwrap()
    };
    let start = rest.iter().position(u8::is_ascii_whitespace).unwrap() + 1;
    Dots { wide, bytes: rest[start..].to_vec(), fine: f64::from(dots) / 25.4 }
}

impl Dots {
    /// The colour at a place in millimetres from the upper left corner.
    pub fn at(&self, x: f64, y: f64) -> [u8; 3] {
        let dot = (y * self.fine) as usize * self.wide + (x * self.fine) as usize;
        self.bytes[dot * 3..dot * 3 + 3].try_into().unwrap()
    }

    /// The middles of all marks of pages, in millimetres from the upper left corner, by the page's place in
    /// its file: one mark for each stretch of them that hangs together along the fold.
    pub fn marks(&self, pages: usize) -> BTreeMap<usize, Vec<(f64, f64)>> {
        let known: BTreeMap<[u8; 3], usize> = (0..pages).map(|at| (colour(at, true), at)).collect();
        let mut found: BTreeMap<usize, Vec<Mark>> = BTreeMap::new();
        for (dot, colour) in self.bytes.chunks_exact(3).enumerate() {
            // Most dots are of no mark: the last part of a mark's colour is that of no page.
            if colour[2] != MARKED {
                continue;
            }
            let Some(page) = known.get(colour) else { continue };
            let (column, row) = (dot % self.wide, dot / self.wide);
            let marks = found.entry(*page).or_default();
            let near = |mark: &&mut Mark| {
                row - mark.row <= 1 && column.abs_diff(mark.column) < (APART * self.fine) as usize
            };
            let (across, down) = (column as f64 + 0.5, row as f64 + 0.5);
            match marks.iter_mut().find(near) {
                Some(mark) => {
                    mark.dots += 1.0;
                    (mark.across, mark.down) = (mark.across + across, mark.down + down);
                    (mark.row, mark.column) = (row, column);
                }
                None => marks.push(Mark { dots: 1.0, across, down, row, column }),
            }
        }
        let middle =
            |mark: &Mark| (mark.across / mark.dots / self.fine, mark.down / mark.dots / self.fine);
        found.into_iter().map(|(page, marks)| (page, marks.iter().map(middle).collect())).collect()
    }
}
