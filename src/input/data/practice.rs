//! Rules of the trade that are numbers: thresholds and defaults, each with its origin.

use crate::source::{Source, Sourced};
use crate::units::{Gsm, Mm, Pages};

/// Thresholds that warn. A shop's own limits refuse; these never do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Practice {
    /// From here on a coated or recycled stock wants a crease at the fold.
    pub crease_coated: Sourced<Gsm>,
    /// From here on any stock wants a crease at the fold.
    pub crease_any: Sourced<Gsm>,
    /// Crease channel as a multiple of the caliper, fold along the grain; the rule's width is added.
    pub crease_channel_along: Sourced<f64>,
    /// The same across the grain.
    pub crease_channel_across: Sourced<f64>,
    /// Width of the creasing rule.
    pub crease_rule: Sourced<Mm>,
    /// Below this a square spine shows nothing and is usually left off.
    pub square_spine_least: Sourced<Mm>,
    /// From here on a closed cut nicks head and foot of the spine.
    pub nick_from: Sourced<Mm>,
    /// Narrowest spine for text, a rule of adhesive-bound books.
    pub spine_text_least: Sourced<Mm>,
    /// Space either side of spine text, a rule of adhesive-bound books.
    pub spine_text_clear: Sourced<Mm>,
    /// Most blank pages at the back before a reader notices.
    pub blanks_unnoticed: Sourced<Pages>,
    /// Smallest stack step a dummy can be measured against with a ruler and be believed.
    pub calibration_step_least: Sourced<Mm>,
    /// Error of reading a push-out with a ruler.
    pub reading_error: Sourced<Mm>,
    /// Smallest fold factor that any paper shows.
    pub fold_factor_least: Sourced<f64>,
    /// Greatest fold factor that any paper shows.
    pub fold_factor_most: Sourced<f64>,
    /// Share by which a caliper that somebody measured is in doubt.
    pub measured_doubt: Sourced<f64>,
    /// Share by which a caliper that the mill gives is in doubt, at least.
    pub mill_doubt: Sourced<f64>,
}

const CREASING: Source = Source::Published { title: "title.mill-guide", year: 0 };

/// The trade's thresholds.
pub static PRACTICE: Practice = Practice {
    crease_coated: Sourced::new(Gsm(150.0), Source::Practice),
    crease_any: Sourced::new(Gsm(170.0), Source::Practice),
    crease_channel_along: Sourced::new(1.3, CREASING),
    crease_channel_across: Sourced::new(1.5, CREASING),
    crease_rule: Sourced::new(Mm::from_inches(0.028), CREASING),
    square_spine_least: Sourced::new(Mm(1.5), Source::Practice),
    nick_from: Sourced::new(Mm(5.0), Source::Practice),
    spine_text_least: Sourced::new(Mm(6.4), Source::Practice),
    spine_text_clear: Sourced::new(Mm(3.2), Source::Practice),
    blanks_unnoticed: Sourced::new(Pages(2), Source::Practice),
    calibration_step_least: Sourced::new(Mm(1.5), Source::Practice),
    reading_error: Sourced::new(Mm(0.3), Source::Practice),
    fold_factor_least: Sourced::new(0.5, Source::Practice),
    fold_factor_most: Sourced::new(2.2, Source::Practice),
    measured_doubt: Sourced::new(0.01, Source::Practice),
    mill_doubt: Sourced::new(0.05, Source::Practice),
};

/// What a shop does unless it says otherwise.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Defaults {
    /// Picture carried beyond the cut.
    pub bleed: Mm,
    /// Width inside the cut that stays free of anything important.
    pub safe: Mm,
    /// How far a cut or fold may stand off, either way.
    pub tolerance: Mm,
    /// Cut off at the head.
    pub head_trim: Mm,
    /// Cut off at the foot.
    pub foot_trim: Mm,
    /// Left between two copies along one fold, for a double cut.
    pub gutter: Mm,
    /// Where these come from.
    pub source: Source,
}

/// Defaults of the trade; every shop may replace them.
pub static SHOP_DEFAULTS: Defaults = Defaults {
    bleed: Mm(3.0),
    safe: Mm(5.0),
    tolerance: Mm(1.0),
    head_trim: Mm(3.0),
    foot_trim: Mm(3.0),
    gutter: Mm(6.0),
    source: Source::Practice,
};

/// Page counts that a client is told are full steps of so many: a sheet that is folded twice.
pub const CLIENT_STEP: Sourced<Pages> = Sourced::new(Pages(8), Source::Practice);

/// Thickness of a sheet of copier paper, to picture a book by: 80 g/m² at 1.3 cm³/g.
pub const COPIER_SHEET: Sourced<Mm> = Sourced::new(Mm(0.104), Source::Practice);
