//! One press sheet, one way round, one route: how many flats it holds, where they lie, or why not.

use super::{Edges, Refusal, Route, Way};
use crate::book::{Leaf, Trim};
use crate::data::{Line, Range};
use crate::job::{HeadFoot, Job};
use crate::paper::Grain;
use crate::shop::{PressSheet, SheetGrain};
use crate::units::{Band, Mm, Size, larger};

/// Rounding of sums that must not cost a flat, far below anything measurable.
const NOISE: f64 = 1e-9;

/// What a press sheet must hold, worked out once for all of them.
pub(super) struct Needs<'a> {
    line: &'a Line,
    /// The planned flat sheet.
    flat: Size,
    /// From the fold to the face cut on the outermost leaf: w + wrap.
    half: Mm,
    face_cut: Mm,
    head: Mm,
    foot: Mm,
    /// All copies along one fold with their gutters.
    copies: Mm,
    /// How far printing reaches beyond the cut; inward, as a negative length, where nothing runs off
    /// the page.
    beyond: Mm,
    /// Push-out of the innermost leaf.
    push_out: Band<Mm>,
    tolerance: Mm,
    cut_to_height: bool,
}

/// One direction of a press sheet: its length, and what stays blank at either end.
struct Axis {
    length: Mm,
    low: Mm,
    high: Mm,
}

/// Flats in one direction.
struct Row {
    count: u32,
    /// Where the first begins.
    start: Mm,
    /// Length of them all.
    block: Mm,
    pitch: Mm,
}

impl Axis {
    /// As many pieces as fit, in the middle where the blank ends allow it. `spare` is what each piece
    /// has beyond its printing at its ends: that much may lie in a blank edge.
    fn fill(&self, piece: Mm, spare: Mm, gap: Mm) -> Row {
        let pitch = piece + gap;
        let low = (self.low - spare).max(Mm::ZERO);
        let high = (self.high - spare).max(Mm::ZERO);
        let room = self.length - low - high;
        let count = larger(((room + gap) / pitch + NOISE).floor(), 0.0);
        let block = pitch * count - gap;
        let middle = (self.length - block) / 2.0;
        let start = middle.min(self.length - high - block).max(low);
        Row { count: count as u32, start, block, pitch }
    }
}

impl<'a> Needs<'a> {
    pub(super) fn of(job: &Job, line: &'a Line, trim: &Trim, leaves: &[Leaf]) -> Self {
        let copies = trim.flat.height - job.head_trim - job.foot_trim;
        Self {
            line,
            flat: trim.flat,
            half: trim.flat.width / 2.0 - trim.face_cut,
            face_cut: trim.face_cut,
            head: job.head_trim,
            foot: job.foot_trim,
            copies,
            beyond: job.bleed.unwrap_or(-job.safe),
            push_out: leaves.last().map(|leaf| leaf.push_out).unwrap_or_default(),
            tolerance: job.tolerance,
            cut_to_height: job.head_foot == HeadFoot::Before,
        }
    }

    /// Tries one press sheet; what stood in `way` is replaced.
    pub(super) fn place(
        &self,
        (index, sheet): (usize, &PressSheet),
        route: Route,
        fold_along_long: bool,
        way: &mut Way,
    ) {
        let (long, short) =
            (sheet.size.width.max(sheet.size.height), sheet.size.width.min(sheet.size.height));
        let press = if fold_along_long { Size::new(short, long) } else { Size::new(long, short) };
        let gripper_beside = fold_along_long == sheet.long_side_leads;
        let mut edges = Edges {
            left: sheet.margin,
            right: sheet.margin,
            top: sheet.margin,
            bottom: sheet.margin,
        };
        if gripper_beside {
            edges.left = sheet.gripper;
        } else {
            edges.top = sheet.gripper;
        }
        *way = Way {
            sheet: index,
            route,
            fold_along_long,
            gripper_beside,
            press,
            edges,
            grid: (0, 0),
            origin: Size::default(),
            pitch: self.flat,
            flat: self.flat,
            face_cut: self.face_cut,
            outermost_chip: Band::exact(Mm::ZERO),
            innermost_chip: Band::exact(Mm::ZERO),
            head_trim: self.head,
            grain: match sheet.grain {
                SheetGrain::Unknown => Grain::Unknown,
                grain if (grain == SheetGrain::Long) == fold_along_long => Grain::AlongSpine,
                _ => Grain::AcrossSpine,
            },
            used: 0.0,
            waste: 0.0,
            offcut: Size::default(),
            cuts: 0,
            cost: None,
            refusal: None,
        };
        let across = Axis { length: press.width, low: edges.left, high: edges.right };
        let along = Axis { length: press.height, low: edges.top, high: edges.bottom };
        match route {
            Route::CutFirst => self.cut_first(way, &across, &along),
            Route::Straight => self.straight(way, &across, &along),
        }
        self.chips(way);
        // Straight through, a sheet narrower than the planned flat holds less than that of it.
        let flat = Size::new(self.flat.width.min(press.width), self.flat.height.min(press.height));
        let flats = f64::from(way.flats()) * flat.width.get() * flat.height.get();
        let whole = press.width.get() * press.height.get();
        way.used = flats / whole;
        way.waste = whole - flats;
    }

    /// As many flats as the sheet holds, in rows and columns, so that every cut runs right through.
    fn cut_first(&self, way: &mut Way, across: &Axis, along: &Axis) {
        let beyond = |trim: Mm| (self.beyond - trim).max(Mm::ZERO);
        let ends = self.head.min(self.foot);
        let columns =
            across.fill(self.flat.width, self.face_cut - self.beyond, beyond(self.face_cut) * 2.0);
        let rows =
            along.fill(self.flat.height, ends - self.beyond, beyond(self.head) + beyond(self.foot));
        if columns.count == 0 || rows.count == 0 {
            way.refusal = Some(self.lacking(across, along));
            return;
        }
        let rest = Size::new(across.length - columns.block, along.length - rows.block);
        let (beside, below) =
            (Size::new(rest.width, along.length), Size::new(across.length, rest.height));
        let area = |piece: Size| piece.width.get() * piece.height.get();
        way.grid = (columns.count, rows.count);
        way.origin = Size::new(columns.start, rows.start);
        way.pitch = Size::new(columns.pitch, rows.pitch);
        way.offcut = if area(beside) >= area(below) { beside } else { below };
        way.cuts = cuts(&columns, across, self.flat.width) + cuts(&rows, along, self.flat.height);
    }

    /// Why not even one flat has room.
    fn lacking(&self, across: &Axis, along: &Axis) -> Refusal {
        let short = (self.flat.width - across.length).max(self.flat.height - along.length);
        if short > Mm::ZERO {
            return Refusal::Small(short);
        }
        let into = |axis: &Axis, piece: Mm, spare: Mm| {
            let blank = (axis.low - spare).max(Mm::ZERO) + (axis.high - spare).max(Mm::ZERO);
            piece + blank - axis.length
        };
        Refusal::Edges(into(across, self.flat.width, self.face_cut - self.beyond).max(into(
            along,
            self.flat.height,
            self.head.min(self.foot) - self.beyond,
        )))
    }

    /// The whole press sheet as one flat: c = W_press / 2 − w − wrap.
    fn straight(&self, way: &mut Way, across: &Axis, along: &Axis) {
        let face_cut = across.length / 2.0 - self.half;
        let first = self.head.max(along.low + self.beyond);
        let last = along.length - self.copies - self.foot.max(along.high + self.beyond);
        let middle = (along.length - self.copies) / 2.0;
        let short = (-face_cut * 2.0).max(self.flat.height - along.length);
        let blank = across.low.max(across.high);
        let into = (self.beyond + blank - face_cut).max(first - last);
        let travel = if self.cut_to_height { self.copies } else { along.length };
        let outside = |range: Range, length: Mm| {
            range.least.is_some_and(|least| length.get() < least)
                || range.most.is_some_and(|most| length.get() > most)
        };
        let refusal = if short > Mm::ZERO {
            Some(Refusal::Small(short))
        } else if into.get() > NOISE {
            Some(Refusal::Edges(into))
        } else if outside(self.line.open_width, across.length) {
            Some(Refusal::OpenWidth(across.length))
        } else if outside(self.line.travel_height, travel)
            || outside(self.line.spine_length, travel)
        {
            Some(Refusal::TravelHeight(travel))
        } else {
            None
        };
        let held = refusal.is_none_or(Refusal::by_line);
        way.grid = if held { (1, 1) } else { (0, 0) };
        way.pitch = way.press;
        way.flat = way.press;
        way.face_cut = face_cut;
        way.head_trim = middle.min(last).max(first);
        way.cuts = if self.cut_to_height { 2 } else { 0 };
        way.refusal = refusal;
    }

    /// Chips with their tolerance; straight through, the line's cut must take them.
    fn chips(&self, way: &mut Way) {
        let cut = way.face_cut;
        way.outermost_chip = Band::<Mm>::around(cut, self.tolerance);
        way.innermost_chip = Band {
            low: cut + self.push_out.low - self.tolerance,
            nominal: cut + self.push_out.nominal,
            high: cut + self.push_out.high + self.tolerance,
        };
        if way.route == Route::CutFirst || way.refusal.is_some() {
            return;
        }
        let (thin, deep) = (way.outermost_chip.low, way.innermost_chip.high);
        let taken = self.line.face_cut;
        if taken.least.is_some_and(|least| thin.get() < least - NOISE) {
            way.refusal = Some(Refusal::ChipThin(thin));
        } else if taken.most.is_some_and(|most| deep.get() > most + NOISE) {
            way.refusal = Some(Refusal::ChipDeep(deep));
        }
    }
}

/// Cuts of a pile in one direction: one at each edge that is too large, one or two between flats.
fn cuts(row: &Row, axis: &Axis, piece: Mm) -> u32 {
    let edge = |rest: Mm| u32::from(rest.get() > NOISE);
    let between = if row.pitch > piece { 2 } else { 1 };
    edge(row.start)
        + edge(axis.length - row.start - row.block)
        + between * row.count.saturating_sub(1)
}
