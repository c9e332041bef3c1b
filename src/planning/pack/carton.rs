//! Cartons by mass and by size.

use crate::job::Job;
use crate::shop::Carton;
use crate::units::{Band, ClosedThickness, Gram, Mm, larger};

/// How the copies go into cartons.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cartons {
    /// Most copies that the mass limit lets into one, at the high end of their mass; nothing
    /// without a limit or a mass.
    pub by_mass: Option<u32>,
    /// Most copies that lie in one; nothing without its size.
    pub by_size: Option<u32>,
    /// Copies in a full carton, at least one.
    pub each: u32,
    /// Cartons for the run, where it is said how many copies.
    pub cartons: Option<u32>,
    /// Copies in the last of them.
    pub last: Option<u32>,
}

/// Cartons for the run; nothing when the shop has said neither how heavy nor how large one may be.
///
/// By mass: floor((limit − tare) / mass of a copy), the copy at its high end. By size: copies lie
/// flat in layers, the better of both ways round, and stack to their closed thickness at its high
/// end. There is no limit by default: manual handling is for local rules to say.
#[must_use]
pub fn cartons(
    job: &Job,
    carton: &Carton,
    copy: Option<Band<Gram>>,
    closed: Band<ClosedThickness>,
) -> Option<Cartons> {
    let by_mass =
        carton.mass_most.zip(copy).map(|(limit, copy)| whole((limit - carton.tare) / copy.high));
    let by_size = carton.inside.map(|(floor, height)| {
        let in_row = |along: Mm, length: Mm| whole(along / length);
        let upright = in_row(floor.width, job.size.width) * in_row(floor.height, job.size.height);
        let turned = in_row(floor.width, job.size.height) * in_row(floor.height, job.size.width);
        upright.max(turned) * whole(height / closed.high.0)
    });
    let most = by_mass.into_iter().chain(by_size).min()?;
    // One copy always goes somewhere, even where it breaks the limit: a rule says so.
    let copies = job.copies.map(|copies| copies.get().max(1));
    let each = most.clamp(1, copies.unwrap_or(u32::MAX));
    let cartons = copies.map(|copies| copies.div_ceil(each));
    let last = copies.zip(cartons).map(|(copies, cartons)| copies - each * (cartons - 1));
    Some(Cartons { by_mass, by_size, each, cartons, last })
}

/// How many whole times a positive share goes in; none for what is negative.
fn whole(share: f64) -> u32 {
    larger(share.floor(), 0.0) as u32
}
