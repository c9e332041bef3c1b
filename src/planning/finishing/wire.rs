//! The wire: which, how long a leg, how much for a stitch.

use crate::data::{Line, STITCH_PRACTICE, WIRES};
use crate::job::Job;
use crate::units::{Band, FlatStack, Gram, Mm};
use core::f64::consts::FRAC_PI_4;

/// Cubic millimetres in a cubic centimetre.
const MM3_PER_CM3: f64 = 1000.0;

/// The wire of a job.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Wire {
    /// Its diameter.
    pub diameter: Mm,
    /// Its number in the stitching trade (Washburn & Moen), when the table knows the diameter.
    pub gauge: Option<&'static str>,
    /// Thickness of work its maker suggests.
    pub suggested: Option<(Mm, Mm)>,
    /// The stack lies in that range.
    pub within: bool,
    /// Outer width of its crown.
    pub crown: Mm,
    /// What a loop takes; nothing of a flat stitch.
    pub loop_wire: Mm,
    /// Each leg: H + clinch. One is cut for the whole run, the longest.
    pub leg: Band<Mm>,
    /// What the legs turn in: least at the high end of H, most at its low end.
    pub clinch: Band<Mm>,
    /// Longest clinch before the legs meet under the crown: crown / 2 − diameter.
    pub clinch_most: Mm,
    /// Wire drawn for one stitch: crown + 2 legs, and what a loop takes.
    pub draw: Band<Mm>,
    /// Mass of one stitch, of the longest.
    pub stitch: Gram,
    /// Mass of wire in one copy.
    pub copy: Gram,
}

/// Mass of a length of round steel wire: π · (d/2)² · length · 7.85 g/cm³ (EN 1991-1-1, table A.4).
///
/// ```
/// use quirefit_input::units::Mm;
/// use quirefit_planning::finishing::wire_mass;
/// // A metre of half a millimetre weighs 1.541 g.
/// assert!((wire_mass(Mm(0.5), Mm(1000.0)).get() - 1.541).abs() < 0.001);
/// ```
#[must_use]
pub fn wire_mass(diameter: Mm, length: Mm) -> Gram {
    let section = FRAC_PI_4 * diameter.get() * diameter.get();
    Gram(section * length.get() * STITCH_PRACTICE.steel.value / MM3_PER_CM3)
}

/// Leg of a stitch: the stack and the clinch.
#[must_use]
pub fn leg(flat: FlatStack, clinch: Mm) -> Mm {
    flat.0 + clinch
}

/// Wire drawn for a flat stitch: crown + 2 legs.
#[must_use]
pub fn draw(crown: Mm, leg: Mm) -> Mm {
    crown + leg * 2.0
}

/// The wire for a stack, of those on hand. Makers' ranges only rank: first wires whose range holds the
/// stack, then those whose range is nearest; among equals the finest.
#[must_use]
pub fn wire(job: &Job, line: &Line, flat: Band<FlatStack>, per_copy: u32) -> Wire {
    let stitching = &line.stitching;
    let crown = Mm(stitching.crown);
    let leg = flat.map(|flat| leg(flat, Mm(stitching.clinch)));
    let own = stitching.wires.iter().flatten().copied();
    let chosen = if stitching.wires.iter().all(Option::is_none) {
        best(WIRES.iter().map(|row| row.diameter), flat.nominal)
    } else {
        best(own.map(Mm), flat.nominal)
    };
    let (diameter, gauge, suggested) = chosen.unwrap_or_default();
    let loop_wire = if job.loops { Mm(stitching.loop_wire) } else { Mm::ZERO };
    let draw = leg.map(|leg| draw(crown, leg) + loop_wire);
    let stitch = wire_mass(diameter, draw.high);
    Wire {
        diameter,
        gauge,
        suggested,
        within: suggested.is_none_or(|range| outside(range, flat.nominal) == Mm::ZERO),
        crown,
        loop_wire,
        leg,
        clinch: Band {
            low: leg.high - flat.high.0,
            nominal: leg.high - flat.nominal.0,
            high: leg.high - flat.low.0,
        },
        clinch_most: crown / 2.0 - diameter,
        draw,
        stitch,
        copy: stitch * f64::from(per_copy),
    }
}

/// A wire with its number and its range of work.
type Ranked = (Mm, Option<&'static str>, Option<(Mm, Mm)>);

/// How far a stack lies outside a range of work.
fn outside((least, most): (Mm, Mm), flat: FlatStack) -> Mm {
    (least - flat.0).max(flat.0 - most).max(Mm::ZERO)
}

fn best(wires: impl Iterator<Item = Mm>, flat: FlatStack) -> Option<Ranked> {
    wires
        .map(|diameter| {
            let row = WIRES.iter().find(|row| {
                (row.diameter - diameter).get().abs() <= STITCH_PRACTICE.same_wire.value
            });
            let range = row.map(|row| (row.work_least, row.work_most));
            (diameter, row.map(|row| row.gauge), range)
        })
        .min_by(|a, b| {
            let rank =
                |wire: &Ranked| wire.2.map_or(f64::INFINITY, |range| outside(range, flat).get());
            rank(a).total_cmp(&rank(b)).then(a.0.get().total_cmp(&b.0.get()))
        })
}
