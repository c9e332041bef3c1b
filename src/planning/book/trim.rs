//! What to trim: the face cut, the untrimmed sheet, the chips.

use super::{Fold, Leaf, Stack};
use crate::job::{HeadFoot, Job};
use crate::shop::Shop;
use crate::units::{Band, Mm, Size};

/// The cut and the sheet before it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Trim {
    /// wrap: path the fold takes beyond the finished width, along the outer face.
    pub wrap: Band<Mm>,
    /// c: chip on the outermost leaf.
    pub face_cut: Mm,
    /// The press sheet runs uncut: c falls out of its width, and head and foot of its height.
    pub straight: bool,
    /// Somebody decided c; otherwise it follows from bleed, tolerance and the line's smallest cut.
    pub face_cut_given: bool,
    /// c ± tolerance: the chip on the outermost leaf.
    pub outermost_chip: Band<Mm>,
    /// c + e_n ± tolerance: the chip on the innermost leaf.
    pub innermost_chip: Band<Mm>,
    /// W × height of the untrimmed flat sheet as it must be printed.
    pub flat: Size,
    /// The height that travels through the line.
    pub travel_height: Mm,
    /// From the head edge of the travelling sheet to the first copy.
    pub head_trim: Mm,
    /// E(t₁/2): lengths are shorter by this if the outermost sheet keeps its length in its middle
    /// rather than along its outer face. A creased board keeps its outer face.
    pub line_doubt: Mm,
    /// Setting of the knife measured from the face of the longest sheet: c + e_n.
    pub knife_from_face: Mm,
}

/// The trim of a book.
///
/// W = 2 (w + wrap + c). Unless given, c is the larger of the bleed and the line's smallest clean
/// cut plus the tolerance. Height = u·h + head + foot + (u − 1)·gutter; cut flat to height before the
/// line, only u·h + (u − 1)·gutter travels.
#[must_use]
pub fn trim(job: &Job, shop: &Shop, stack: &Stack, fold: &Fold, leaves: &[Leaf]) -> Trim {
    let flat = stack.flat.map(|flat| flat.0);
    let wrap = Band {
        low: fold.low.wrap(flat.low),
        nominal: fold.nominal.wrap(flat.nominal),
        high: fold.high.wrap(flat.high),
    };
    let least_cut = shop.lines.get(job.line).and_then(|line| line.face_cut.least);
    let by_rule =
        job.bleed.unwrap_or(Mm::ZERO).max(Mm(least_cut.unwrap_or_default()) + job.tolerance);
    let face_cut = job.face_cut.unwrap_or(by_rule);
    let innermost = leaves.last().map(|leaf| leaf.push_out).unwrap_or_default();
    let with_tolerance = |low: Mm, nominal: Mm, high: Mm| Band {
        low: low - job.tolerance,
        nominal,
        high: high + job.tolerance,
    };
    let copies = f64::from(job.copies_up);
    let copies_height = job.size.height * copies + job.gutter * (copies - 1.0);
    let printed_height = copies_height + job.head_trim + job.foot_trim;
    let half_leaf = stack.calipers.first().map_or(Mm::ZERO, |caliper| caliper.nominal / 2.0);
    Trim {
        wrap,
        face_cut,
        straight: false,
        face_cut_given: job.face_cut.is_some(),
        outermost_chip: with_tolerance(face_cut, face_cut, face_cut),
        innermost_chip: with_tolerance(
            face_cut + innermost.low,
            face_cut + innermost.nominal,
            face_cut + innermost.high,
        ),
        flat: Size::new((job.size.width + wrap.nominal + face_cut) * 2.0, printed_height),
        travel_height: match job.head_foot {
            HeadFoot::Before => copies_height,
            HeadFoot::OnLine | HeadFoot::After => printed_height,
        },
        head_trim: match job.head_foot {
            HeadFoot::Before => Mm::ZERO,
            HeadFoot::OnLine | HeadFoot::After => job.head_trim,
        },
        line_doubt: fold.nominal.path_saved(half_leaf, flat.nominal),
        knife_from_face: face_cut + innermost.nominal,
    }
}
