//! Results: what every stage found, and the only place that knows their order.

use crate::book::{self, BookMass, Calibrated, CoverPlan, FirstOff, Leaf, Margins, Stack, Trim};
use crate::cost::{self, Cost};
use crate::data::Line;
use crate::finishing::{self, LimitCheck, Stitches};
use crate::job::Job;
use crate::layout::{self, Layout};
use crate::pack::{self, Packing};
use crate::run::{self, Run};
use crate::shop::Shop;
use crate::units::{Band, Mm};

/// The outcome of every stage for one job in one shop.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Results {
    /// Thickness.
    pub stack: Stack,
    /// How the book folds.
    pub fold: Calibrated,
    /// Every sheet, outermost first.
    pub leaves: Vec<Leaf>,
    /// Innermost leaf against the nominal page by the trade's rule.
    pub trade_creep: Band<Mm>,
    /// The cut and the untrimmed sheet.
    pub trim: Trim,
    /// The outermost sheet, flat.
    pub cover: CoverPlan,
    /// Pages at risk, bleed and gaps.
    pub margins: Margins,
    /// Blank pages.
    pub blanks: book::Blanks,
    /// Mass of a book; nothing when a paper's weight is not known.
    pub mass: Option<BookMass>,
    /// The flat sheet on the press sheets on hand.
    pub layout: Layout,
    /// Stitches and wire.
    pub stitches: Stitches,
    /// What to feed, how fast, how long.
    pub run: Run,
    /// What leaves the house.
    pub packing: Packing,
    /// What the run costs.
    pub cost: Cost,
    /// The first book off the machine beside the plan.
    pub first_off: FirstOff,
    /// A value beside every limit of the line.
    pub limits: Vec<LimitCheck>,
}

/// Runs every stage.
#[must_use]
pub fn work_out(job: &Job, shop: &Shop) -> Results {
    let mut out = Results::default();
    work_out_into(&mut out, job, shop);
    out
}

/// The line of a shop that has none.
static UNLIMITED: Line = Line::UNLIMITED;

/// Runs every stage over earlier results. The search for what would make a book fit plans thousands
/// of books: nothing is allocated once the lists have grown, so a stage that fills a list is handed
/// the list of last time.
pub fn work_out_into(out: &mut Results, job: &Job, shop: &Shop) {
    book::stack_into(job, &mut out.stack);
    out.fold = book::fold_of(job, shop, &out.stack);
    let fold = &out.fold.fold;
    book::leaves(job, &out.stack, fold, &mut out.leaves);
    out.trim = book::trim(job, shop, &out.stack, fold, &out.leaves);
    let line = shop.lines.get(job.line).unwrap_or(&UNLIMITED);
    layout::layout(job, shop, line, (&out.trim, &out.leaves), &mut out.layout);
    layout::straight_trim(job, &out.layout, &mut out.trim);
    finishing::stitches(job, line, &out.stack, &out.trim, &mut out.stitches);
    let (trim, stitches, limits) = (&out.trim, &out.stitches, &mut out.limits);
    let sheets = (&out.stack, fold, out.leaves.as_slice());
    finishing::check_limits(job, line, sheets, trim, stitches, limits);
    out.trade_creep = book::trade_creep(job, &out.stack);
    out.cover = book::cover(job, &out.stack, fold, out.trim.wrap.nominal);
    out.margins = book::margins(job, &out.leaves);
    out.blanks = book::blanks(job);
    out.mass = book::mass(job, &out.leaves, &out.trim);
    let book = run::Book {
        stack: &out.stack,
        leaves: &out.leaves,
        trim: &out.trim,
        cover: &out.cover,
        stitches: &out.stitches,
    };
    run::run(job, shop, line, &book, &mut out.run);
    if job.copies.is_some() {
        let components = &out.run.quantities.components;
        out.layout.count(components.iter().map(|part| (part.printed, part.sheets)));
    }
    pack::pack(job, shop, &out.stack, out.mass, out.stitches.wire.copy, &mut out.packing);
    let pressed = out.layout.chosen().zip(out.layout.needed).map(|(way, needed)| {
        let sheet = shop.press_sheets.get(way.sheet);
        cost::Pressed {
            size: way.press,
            flats: way.flats(),
            sides: needed.sides,
            sheets: needed.sheets,
            thousand: sheet.and_then(|sheet| sheet.thousand),
            click: sheet.and_then(|sheet| sheet.click),
        }
    });
    let quantities = cost::quantities(job, &out.trim, pressed, &out.run, &out.packing);
    out.cost = match job.copies {
        Some(_) => cost::cost(&shop.rates, &quantities, out.run.quantities.good),
        None => Cost::UNKNOWN,
    };
    out.first_off = book::first_off(job, &out.stack);
}
