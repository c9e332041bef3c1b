//! What runs full or empty during a run: stacker, chip bin, wire, paper.

use super::Quantities;
use crate::book::{Leaf, Stack, Trim};
use crate::data::Line;
use crate::finishing::Stitches;
use crate::job::{HeadFoot, Job};
use crate::units::{Gram, LEAVES_PER_SHEET, Mm, SECONDS_PER_MINUTE, Second};

/// Millimetres in a metre.
const MM_PER_METRE: f64 = 1000.0;

/// What runs full or empty.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Supply {
    /// The stacker is full.
    Stacker,
    /// The chip bin is full.
    Chips,
    /// The spools are empty.
    Wire,
    /// The bins or the feeder are empty.
    Paper,
}

impl Supply {
    /// Every supply.
    pub const ALL: [Self; SUPPLIES] = [Self::Stacker, Self::Chips, Self::Wire, Self::Paper];
    /// Its name in language keys and files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Stacker => "stacker",
            Self::Chips => "chips",
            Self::Wire => "wire",
            Self::Paper => "paper",
        }
    }
}

/// One supply that wants somebody during the run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stop {
    /// Which.
    pub supply: Supply,
    /// Sets from one time to the next, at least one.
    pub every: u32,
    /// How often during the run; none after the last set.
    pub times: u32,
    /// From the first set to the first time, nothing else standing in the way.
    pub first: Second,
    /// How long somebody is busy.
    pub each: Second,
    /// It can be done while the line runs.
    pub running: bool,
}

/// Wire and chips of the whole run.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Consumed {
    /// Wire for every set fed.
    pub wire_length: Mm,
    /// Its mass.
    pub wire: Gram,
    /// Full spools that makes, parts of one counted; nothing where a spool's mass is not known.
    pub spools: Option<f64>,
    /// Chips that fall on the line from one set; nothing where a paper's weight is not known.
    pub chips_set: Option<Gram>,
    /// Chips of the run that fall on the line.
    pub chips: Option<Gram>,
    /// Litres that those fill, loose.
    pub chip_litres: Option<f64>,
}

impl Consumed {
    /// The wire in metres.
    #[must_use]
    pub fn wire_metres(&self) -> f64 {
        self.wire_length.get() / MM_PER_METRE
    }
}

/// Chips that fall on the line from one set: Σ 2 (c + e_k) · travelling height · g, and head and foot
/// where the line cuts them.
fn chips_of_set(job: &Job, leaves: &[Leaf], trim: &Trim) -> Option<Gram> {
    let pair = f64::from(LEAVES_PER_SHEET);
    let beyond = match job.head_foot {
        HeadFoot::OnLine => trim.travel_height - job.size.height * f64::from(job.copies_up),
        HeadFoot::Before | HeadFoot::After => Mm::ZERO,
    };
    let mut total = Gram::ZERO;
    for leaf in leaves {
        let grammage = job.sections.get(leaf.section)?.grammage?.nominal;
        let face = trim.face_cut + leaf.push_out.nominal;
        total = total
            + grammage.mass_of(face * pair, trim.travel_height)
            + grammage.mass_of(leaf.length * pair, beyond);
    }
    Some(total)
}

/// Wire and chips of a run.
#[must_use]
pub fn consumed(
    job: &Job,
    line: &Line,
    (leaves, trim): (&[Leaf], &Trim),
    stitches: &Stitches,
    fed: u32,
) -> Consumed {
    let sets = f64::from(fed);
    let strikes = sets * f64::from(stitches.placement.total());
    let chips_set = chips_of_set(job, leaves, trim);
    let chips = chips_set.map(|set| set * sets);
    let wire = stitches.wire.stitch * strikes;
    Consumed {
        wire_length: stitches.wire.draw.high * strikes,
        wire,
        spools: line.supplies.spool_mass.map(|spool| wire.get() / spool),
        chips_set,
        chips,
        chip_litres: chips.map(|chips| chips.get() / line.supplies.chip_density),
    }
}

/// The stops of a run, first come first; empty places behind.
#[must_use]
pub fn stops(
    job: &Job,
    line: &Line,
    stack: &Stack,
    stitches: &Stitches,
    (quantities, consumed): (&Quantities, &Consumed),
    interval: Second,
) -> [Option<Stop>; SUPPLIES] {
    let supplies = &line.supplies;
    let up = f64::from(job.copies_up.max(1));
    let closed = stack.closed.high.0.get();
    let chips = consumed.chips_set.map(Gram::get);
    // Every head has a spool of its own; the one that strikes in every pass is empty first.
    let strikes = f64::from(stitches.placement.passes) * stitches.wire.stitch.get();
    let thickest = stack.calipers.iter().map(|caliper| caliper.high.get()).fold(0.0, f64::max);
    // Bins each hold one sheet of the set, a feeder all of them.
    let load =
        if line.pace.feeder_sheets_hour.is_some() { stack.flat.high.0.get() } else { thickest };
    let sets = |room: Option<f64>, set: f64| room.filter(|_| set > 0.0).map(|room| room / set);
    let least = |a: Option<f64>, b: Option<f64>| a.into_iter().chain(b).min_by(f64::total_cmp);
    let every = [
        least(sets(supplies.stacker_books, up), sets(supplies.stacker_height, closed * up)),
        least(
            chips.and_then(|set| sets(supplies.chip_mass, set)),
            chips.and_then(|set| sets(supplies.chip_litres, set / supplies.chip_density)),
        ),
        sets(supplies.spool_mass, strikes),
        sets(supplies.load_height, load),
    ];
    let how = [
        (Supply::Stacker, supplies.stacker_minutes, supplies.stacker_running),
        (Supply::Chips, supplies.chip_minutes, supplies.chip_running),
        (Supply::Wire, supplies.spool_minutes, false),
        (Supply::Paper, supplies.load_minutes, supplies.load_running),
    ];
    let mut stops = [None; SUPPLIES];
    for (place, (every, (supply, minutes, running))) in
        stops.iter_mut().zip(every.into_iter().zip(how))
    {
        let Some(every) = every.map(|sets| (sets.floor() as u32).max(1)) else { continue };
        *place = Some(Stop {
            supply,
            every,
            times: quantities.fed.saturating_sub(1) / every,
            first: interval * f64::from(every),
            each: Second(minutes * f64::from(SECONDS_PER_MINUTE)),
            running,
        });
    }
    // Each in the place that as many as come before it leave.
    let when = stops.map(|stop| stop.map_or(u32::MAX, |stop| stop.every));
    let mut out = [None; SUPPLIES];
    for (index, (stop, own)) in stops.into_iter().zip(when).enumerate() {
        let before =
            when.iter().enumerate().filter(|(other, sets)| (**sets, *other) < (own, index));
        if let Some(place) = out.get_mut(before.count()) {
            *place = stop;
        }
    }
    out
}

/// How many supplies there are.
pub const SUPPLIES: usize = 4;
