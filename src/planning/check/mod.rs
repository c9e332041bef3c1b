//! Rules: what to say about a finished set of results. One file a rule; the line's limits share one.
//!
//! A rule returns numbers and the name of its case, never a sentence: `rule.ID.CASE` of the language
//! files says it, `rule.ID.CASE.cure` what to do. Only limits of the line decide the verdict, and
//! books that cannot be stitched at all; the trade's habits warn.

mod art_at_risk;
mod blanks;
mod bleed;
mod calibration;
mod carton_heavy;
mod crease;
mod fold_gap;
mod grain;
mod head_foot;
mod line_limit;
mod nick;
mod paper_unsaid;
mod post_step;
mod press_sheet;
mod sheet_grain;
mod sheets_short;
mod short_component;
mod spine_text;
mod spine_wire;
mod standing;
mod stitch_clinch;
mod stitch_overhang;
mod stitch_passes;
mod stitch_pitch;
mod stitch_room;
mod straight_cut;
mod thin_square;
mod too_few_sheets;
mod weight_unknown;
mod wire_proud;
mod wire_work;

/// The answer for the whole book is the worst of its limits.
pub use crate::finishing::Answer as Verdict;

use crate::finishing::LimitId;
use crate::job::Job;
use crate::results::Results;
use crate::run::Supply;
use crate::shop::Shop;
use crate::units::{Band, Measure, Unit};
use crate::words::{Say, Slot, say};

/// How much a finding weighs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// Worth knowing.
    Note,
    /// Worth acting on; the book can still be made.
    Warning,
    /// One end of the band breaks a limit.
    Marginal,
    /// All but one end of the band breaks a limit.
    Unlikely,
    /// Cannot be made so.
    DoesNotFit,
}

/// Something a rule found: which, how grave, and its numbers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Finding {
    /// The rule's name.
    pub rule: &'static str,
    /// Which of the rule's cases.
    pub case: &'static str,
    /// How grave.
    pub weight: Weight,
    /// Numbers for the sentence.
    values: [Option<(&'static str, Band<f64>, Unit)>; Finding::SLOTS],
}

/// A rule: its name, and how it looks at the results.
#[derive(Debug, Clone, Copy)]
pub struct Rule {
    /// Its name in language keys and in `examples/rules`.
    pub id: &'static str,
    /// How it looks.
    look: Look,
}

/// What a rule looks at.
#[derive(Debug, Clone, Copy)]
enum Look {
    /// One limit of the line.
    Limit(LimitId),
    /// Whatever it needs.
    Whole(fn(&Job, &Shop, &Results) -> Option<Finding>),
}

const fn limit(id: LimitId) -> Rule {
    Rule { id: id.name(), look: Look::Limit(id) }
}

const fn whole(id: &'static str, look: fn(&Job, &Shop, &Results) -> Option<Finding>) -> Rule {
    Rule { id, look: Look::Whole(look) }
}

/// Every rule, in the order in which findings of one weight are told.
pub static RULES: [Rule; 48] = [
    whole(too_few_sheets::ID, too_few_sheets::look),
    limit(LimitId::FlatStack),
    limit(LimitId::Sheets),
    limit(LimitId::Former),
    limit(LimitId::Knife),
    limit(LimitId::OpenWidth),
    limit(LimitId::TravelHeight),
    limit(LimitId::SpineLength),
    limit(LimitId::FinishedWidth),
    limit(LimitId::TextWeight),
    limit(LimitId::CoverWeight),
    limit(LimitId::OutermostChip),
    limit(LimitId::InnermostChip),
    limit(LimitId::Leg),
    limit(LimitId::Draw),
    limit(LimitId::Passes),
    limit(LimitId::Bins),
    whole(stitch_room::ID, stitch_room::look),
    whole(paper_unsaid::ID, paper_unsaid::look),
    whole(art_at_risk::ART, |job, _, results| {
        art_at_risk::look(art_at_risk::ART, job, Some(&results.margins.art))
    }),
    whole(art_at_risk::FOLIO, |job, _, results| {
        art_at_risk::look(art_at_risk::FOLIO, job, results.margins.folio.as_ref())
    }),
    whole(bleed::ID, bleed::look),
    whole(fold_gap::ID, fold_gap::look),
    whole(blanks::ID, blanks::look),
    whole(crease::ID, crease::look),
    whole(press_sheet::ID, press_sheet::look),
    whole(straight_cut::ID, straight_cut::look),
    whole(sheets_short::ID, sheets_short::look),
    whole(grain::ID, grain::look),
    whole(sheet_grain::ID, sheet_grain::look),
    whole(thin_square::ID, thin_square::look),
    whole(nick::ID, nick::look),
    whole(spine_text::ID, spine_text::look),
    whole(calibration::ID, calibration::look),
    whole(head_foot::ID, head_foot::look),
    whole(weight_unknown::ID, weight_unknown::look),
    whole(post_step::ID, post_step::look),
    whole(carton_heavy::ID, carton_heavy::look),
    whole(stitch_pitch::ID, stitch_pitch::look),
    whole(stitch_overhang::ID, stitch_overhang::look),
    whole(stitch_passes::ID, stitch_passes::look),
    whole(stitch_clinch::ID, stitch_clinch::look),
    whole(wire_proud::ID, wire_proud::look),
    whole(wire_work::ID, wire_work::look),
    whole(spine_wire::ID, spine_wire::look),
    whole(standing::STACKER, |_, _, results| {
        standing::look(standing::STACKER, Supply::Stacker, results)
    }),
    whole(standing::CHIPS, |_, _, results| standing::look(standing::CHIPS, Supply::Chips, results)),
    whole(short_component::ID, short_component::look),
];

impl Finding {
    /// Most numbers a finding carries.
    const SLOTS: usize = 4;

    /// A finding without numbers.
    #[must_use]
    pub const fn new(rule: &'static str, case: &'static str, weight: Weight) -> Self {
        Self { rule, case, weight, values: [None; Self::SLOTS] }
    }
    /// Puts a number in.
    #[must_use]
    fn with(self, slot: &'static str, value: impl Into<Measure>) -> Self {
        let measure = value.into();
        self.with_band(slot, Band::exact(measure.value), measure.unit)
    }
    /// Puts a number with its doubt in.
    #[must_use]
    fn with_band(mut self, slot: &'static str, band: Band<f64>, unit: Unit) -> Self {
        if let Some(free) = self.values.iter_mut().find(|value| value.is_none()) {
            *free = Some((slot, band, unit));
        }
        self
    }
    /// Its key in the language files.
    #[must_use]
    pub fn key(&self) -> String {
        format!("rule.{}.{}", self.rule, self.case)
    }
    /// What it says.
    #[must_use]
    pub fn say(&self) -> Say {
        self.fill(say(self.key()))
    }
    /// What to do about it.
    #[must_use]
    pub fn cure(&self) -> Say {
        self.fill(say(format!("{}.cure", self.key())))
    }
    fn fill(&self, mut sentence: Say) -> Say {
        for (slot, band, unit) in self.values.iter().flatten() {
            let value = if band.low == band.high {
                Slot::Value(Measure::new(band.nominal, *unit))
            } else {
                Slot::Doubtful(*band, *unit)
            };
            sentence.slots.push((slot, value));
        }
        sentence
    }
}

/// Asks every rule; findings come back gravest first.
pub fn check(job: &Job, shop: &Shop, results: &Results, out: &mut Vec<Finding>) {
    out.clear();
    for rule in &RULES {
        let found = match rule.look {
            Look::Limit(id) => line_limit::look(id, results),
            Look::Whole(look) => look(job, shop, results),
        };
        if let Some(finding) = found {
            // Behind its equals; unlike a sort, this never allocates.
            let place = out.partition_point(|known| known.weight >= finding.weight);
            out.insert(place, finding);
        }
    }
}

/// The verdict that findings add up to.
#[must_use]
pub fn verdict(findings: &[Finding]) -> Verdict {
    match findings.iter().map(|finding| finding.weight).max() {
        Some(Weight::DoesNotFit) => Verdict::DoesNotFit,
        Some(Weight::Unlikely) => Verdict::Unlikely,
        Some(Weight::Marginal) => Verdict::Marginal,
        _ => Verdict::Fits,
    }
}
