//! What the stages found, brought into the units that rates are quoted in.

use super::{Paper, Quantities};
use crate::book::Trim;
use crate::job::Job;
use crate::pack::Packing;
use crate::run::Run;
use crate::units::{Gram, Money, Size};

/// The press sheet the flats are laid on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pressed {
    /// Its size.
    pub size: Size,
    /// Untrimmed flat sheets on it.
    pub flats: u32,
    /// Printed sides of it in the run.
    pub sides: f64,
    /// Press sheets in the run.
    pub sheets: f64,
    /// What a thousand of them cost, where the shop buys them so.
    pub thousand: Option<Money>,
    /// What a printed side of this press sheet costs, where that is not the shop's rate for all.
    pub click: Option<Money>,
}

/// Quantities of a run. Without a press sheet nothing is said of clicks.
#[must_use]
pub fn quantities(
    job: &Job,
    trim: &Trim,
    pressed: Option<Pressed>,
    run: &Run,
    packing: &Packing,
) -> Quantities {
    Quantities {
        paper: paper(job, trim, pressed, run),
        press_sides: pressed.map(|pressed| pressed.sides),
        click: pressed.and_then(|pressed| pressed.click),
        line_time: Some(run.times.best),
        wire: Some(run.consumed.wire),
        cartons: packing.cartons.and_then(|cartons| cartons.cartons),
    }
}

/// Paper as it is bought, with all overs: by the thousand where the chosen press sheet has such a
/// price, else by its mass, whole press sheets where one is chosen and the untrimmed flats otherwise.
fn paper(job: &Job, trim: &Trim, pressed: Option<Pressed>, run: &Run) -> Paper {
    if let Some((pressed, thousand)) =
        pressed.and_then(|pressed| Some((pressed, pressed.thousand?)))
    {
        return Paper::Sheets(pressed.sheets, thousand);
    }
    let mut mass = Some(Gram::ZERO);
    for component in &run.quantities.components {
        // All flats of one press sheet are the same folded sheet.
        let (each_sheet, size) = match pressed {
            Some(pressed) => (component.printed.div_ceil(pressed.flats.max(1)), pressed.size),
            None => (component.printed, trim.flat),
        };
        let count = f64::from(each_sheet) * f64::from(component.sheets);
        let weight = job.sections.get(component.section).and_then(|section| section.grammage);
        let each = weight.map(|weight| weight.nominal.mass_of(size.width, size.height));
        mass = mass.zip(each).map(|(sum, each)| sum + each * count);
    }
    Paper::Kilos(mass)
}
