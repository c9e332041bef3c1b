//! Where the stitches go: count, pitch, positions, passes under the heads.

use crate::book::Trim;
use crate::data::{Line, Range, STITCH_PRACTICE};
use crate::job::Job;
use crate::units::{Mm, larger, smaller};

/// Rounding of sums that must not decide a placement, far below anything measurable.
const NOISE: f64 = 1e-9;

/// One stitch, by the middle of its crown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stitch {
    /// Which copy along the fold, 0 at the head.
    pub copy: u32,
    /// From the head of its finished copy.
    pub from_head: Mm,
    /// From the foot of its finished copy.
    pub from_foot: Mm,
    /// From the head edge of the sheet as it travels: head trim, copies and gutters before it count.
    pub from_head_edge: Mm,
    /// From the edge of the travelling sheet that lies against the stop.
    pub from_lay: Mm,
    /// Which pass of the set under the heads, 1 first.
    pub pass: u32,
    /// Which head strikes it, 1 nearest the head edge.
    pub head: u32,
}

/// A set moved on from one pass to the next.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Move {
    /// The pass it is moved on for.
    pub pass: u32,
    /// From the pass before.
    pub step: Mm,
    /// From the first pass.
    pub from_first: Mm,
}

/// What became of the wish to spread stitches evenly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Placed {
    /// As wished.
    #[default]
    Even,
    /// Moved to a pitch that the heads can stand at.
    Moved,
    /// Not struck together: no pitch of the heads suits, so each takes a pass of its own.
    Apart,
}

/// Stitches of one set.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Placement {
    /// In one copy.
    pub per_copy: u32,
    /// Somebody decided their number; otherwise it follows from the spine.
    pub given: bool,
    /// Distance that would spread them evenly; of loops, the binder's.
    pub wished_pitch: Mm,
    /// Distance of neighbours in a copy; zero for a single one.
    pub pitch: Mm,
    /// What became of the wish.
    pub placed: Placed,
    /// From the head or foot of the copy to the nearest stitch.
    pub overhang: Mm,
    /// Least distance of a stitch's middle from any edge or cut: crown / 2 + clearance.
    pub edge: Mm,
    /// The spine holds them without crowns touching or a cut coming too near.
    pub has_room: bool,
    /// All of a set, from the head edge on.
    pub stitches: Vec<Stitch>,
    /// Passes of a set under the heads.
    pub passes: u32,
    /// Fewest passes with so many heads: ceil(stitches / heads).
    pub passes_least: u32,
    /// Heads that strike in the fullest pass.
    pub heads_used: u32,
}

/// How many stitches a spine gets: two up to 320 mm, three up to 420 mm, then four (common practice).
#[must_use]
pub fn usual_count(spine: Mm) -> u32 {
    let practice = &STITCH_PRACTICE;
    let beyond = |length: f64| u32::from(spine.get() > length);
    2 + beyond(practice.two_up_to.value) + beyond(practice.three_up_to.value)
}

/// Places the stitches of a set.
///
/// Evenly spread, then moved to the nearest pitch that the heads can stand at, if that keeps them
/// clear of every edge and leaves no overhang beyond a third of the spine (common practice);
/// otherwise each is struck in a pass of its own. Loops stand at the binder's pitch (80 mm, ISO 838,
/// from memory). What stood in `out` before is replaced; its list is used again.
pub fn place(job: &Job, line: &Line, trim: &Trim, out: &mut Placement) {
    let stitching = &line.stitching;
    let spine = job.size.height.get();
    let edge = stitching.crown / 2.0 + stitching.edge;
    let span = spine - 2.0 * edge;
    let fits = |m: u32| span + NOISE >= f64::from(m - 1) * stitching.crown;
    let mut per_copy =
        job.stitches.unwrap_or_else(|| usual_count(job.size.height).max(stitching.stitches_least));
    per_copy = per_copy.max(1);
    while job.stitches.is_none() && per_copy > 1 && !fits(per_copy) {
        per_copy -= 1;
    }
    let spaces = f64::from(per_copy - 1);
    let wished =
        if job.loops { STITCH_PRACTICE.loop_pitch.value } else { spine / f64::from(per_copy) };
    let roomy = if spaces > 0.0 { smaller(wished, larger(span / spaces, 0.0)) } else { 0.0 };
    let (pitch, placed) = if line.heads > 1 && spaces > 0.0 {
        to_heads(roomy, line.pitch, spaces, span, spine, job.loops)
    } else {
        (roomy, Placed::Even)
    };
    let overhang = (spine - pitch * spaces) / 2.0;
    let mut stitches = core::mem::take(&mut out.stitches);
    stitches.clear();
    along(job, line, trim, (per_copy, overhang, pitch), &mut stitches);
    *out = Placement {
        per_copy,
        given: job.stitches.is_some(),
        wished_pitch: Mm(wished),
        pitch: Mm(pitch),
        placed,
        overhang: Mm(overhang),
        edge: Mm(edge),
        has_room: fits(per_copy),
        stitches,
        passes: 0,
        passes_least: 0,
        heads_used: 0,
    };
    out.strike(line);
}

/// The pitch nearest to a wish that the heads can stand at, where it leaves the book well held.
fn to_heads(
    wish: f64,
    heads: Range,
    spaces: f64,
    span: f64,
    spine: f64,
    loops: bool,
) -> (f64, Placed) {
    let pitch =
        larger(smaller(wish, heads.most.unwrap_or(f64::INFINITY)), heads.least.unwrap_or_default());
    if pitch == wish {
        return (wish, Placed::Even);
    }
    let overhang = (spine - pitch * spaces) / 2.0;
    let held = overhang <= spine * STITCH_PRACTICE.overhang_most.value + NOISE;
    let clear = pitch * spaces <= span + NOISE;
    // A loop anywhere but at the binder's pitch is of no use.
    if held && clear && !loops { (pitch, Placed::Moved) } else { (wish, Placed::Apart) }
}

/// Every stitch of a set in its place; heads and passes are still to come.
fn along(
    job: &Job,
    line: &Line,
    trim: &Trim,
    (per_copy, overhang, pitch): (u32, f64, f64),
    out: &mut Vec<Stitch>,
) {
    let spine = job.size.height;
    let head = trim.head_trim;
    let step = spine + job.gutter;
    for copy in 0..job.copies_up {
        for index in 0..per_copy {
            let from_head = Mm(overhang + pitch * f64::from(index));
            let from_head_edge = head + step * f64::from(copy) + from_head;
            let from_lay = if line.stitching.lay_at_foot {
                trim.travel_height - from_head_edge
            } else {
                from_head_edge
            };
            let from_foot = spine - from_head;
            out.push(Stitch {
                copy,
                from_head,
                from_foot,
                from_head_edge,
                from_lay,
                pass: 0,
                head: 0,
            });
        }
    }
}

impl Placement {
    /// All stitches of a set.
    #[must_use]
    pub fn total(&self) -> u32 {
        self.stitches.len() as u32
    }

    /// Deals the stitches out to heads and passes, in as few passes as the heads allow.
    ///
    /// Heads stand still during a run: what the first pass strikes together, later passes strike at
    /// the same distances or with fewer heads. Fewest passes: ceil(stitches / heads).
    fn strike(&mut self, line: &Line) {
        let heads = line.heads.clamp(1, self.total().max(1));
        self.passes_least = self.total().div_ceil(line.heads.max(1));
        let (mut passes, mut opening) = (u32::MAX, 1);
        for first in (1..=heads).rev() {
            let taken = deal(&mut self.stitches, line.pitch, first);
            if taken < passes {
                (passes, opening) = (taken, first);
            }
        }
        self.passes = deal(&mut self.stitches, line.pitch, opening);
        self.heads_used = opening;
    }

    /// How the set moves on between its passes.
    pub fn moves(&self) -> impl Iterator<Item = Move> {
        let leads = || self.stitches.iter().filter(|stitch| stitch.head == 1);
        let first = leads().next().map(|stitch| stitch.from_head_edge).unwrap_or_default();
        leads().zip(leads().skip(1)).map(move |(before, this)| Move {
            pass: this.pass,
            step: this.from_head_edge - before.from_head_edge,
            from_first: this.from_head_edge - first,
        })
    }

    /// Distance between the last stitch of a copy and the first of the next.
    #[must_use]
    pub fn between_copies(&self) -> Option<Mm> {
        self.stitches
            .iter()
            .zip(self.stitches.iter().skip(1))
            .find(|(this, next)| this.copy != next.copy)
            .map(|(this, next)| next.from_head_edge - this.from_head_edge)
    }
    /// What words on the spine keep from the middle of a stitch: half its crown and a clearance.
    #[must_use]
    pub fn kept_free(&self, crown: Mm) -> Mm {
        crown / 2.0 + Mm(STITCH_PRACTICE.text_clear.value)
    }

    /// The longest stretch of the spine free of wire, from and to, measured from the head: crown / 2
    /// and 3 mm (common practice) either side of every stitch are not for words.
    #[must_use]
    pub fn free_of_wire(&self, spine: Mm, crown: Mm) -> (Mm, Mm) {
        let zone = self.kept_free(crown);
        let mut longest = (Mm::ZERO, Mm::ZERO);
        let mut from = Mm::ZERO;
        let mut consider = |from: Mm, to: Mm| {
            if to - from > longest.1 - longest.0 {
                longest = (from, to);
            }
        };
        for stitch in self.stitches.iter().filter(|stitch| stitch.copy == 0) {
            consider(from, stitch.from_head - zone);
            from = stitch.from_head + zone;
        }
        consider(from, spine);
        longest
    }
}

/// Deals stitches out with so many in the first pass; how many passes it takes. A first pass that the
/// heads cannot strike counts as more than any.
fn deal(stitches: &mut [Stitch], heads: Range, first: u32) -> u32 {
    let (least, most) = (heads.least.unwrap_or_default() - NOISE, heads.most);
    let allowed = |gap: f64| gap >= least && most.is_none_or(|most| gap <= most + NOISE);
    let opening = first as usize;
    let gap = |stitches: &[Stitch], index: usize| {
        let at = |index: usize| stitches.get(index).map(|stitch| stitch.from_head_edge.get());
        at(index + 1).zip(at(index)).map(|(next, this)| next - this)
    };
    if !(1..opening).all(|index| gap(stitches, index - 1).is_some_and(allowed)) {
        return u32::MAX;
    }
    let (mut passes, mut begun) = (0, 0);
    for index in 0..stitches.len() {
        let struck = index - begun;
        let together = struck < opening
            && struck > 0
            && gap(stitches, index - 1)
                .zip(gap(stitches, struck - 1))
                .is_some_and(|(here, set)| (here - set).abs() <= NOISE);
        if !together {
            passes += 1;
            begun = index;
        }
        if let Some(stitch) = stitches.get_mut(index) {
            (stitch.pass, stitch.head) = (passes, (index - begun) as u32 + 1);
        }
    }
    passes
}
