//! A value beside each limit of the line: whether it fits, how surely, and with which head-room.

use super::Stitches;
use super::room::{Larger, Room, room};
use crate::book::{Fold, Leaf, Stack, Trim};
use crate::data::{Line, Range};
use crate::job::{Job, Role, Spine};
use crate::units::{Band, Mm, Unit, larger, smaller};

/// How a value stands to a limit, over its whole band; of a whole book, how the worst of them stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Answer {
    /// True over the whole band.
    #[default]
    Fits,
    /// What to expect fits, one end of the band does not: make a dummy.
    Marginal,
    /// What to expect does not fit, one end of the band would: a dummy may show that it does.
    Unlikely,
    /// True nowhere in the band.
    DoesNotFit,
}

impl Answer {
    /// How a band stands to a range: inside it over its whole width, nowhere, or in part, and then on
    /// which side of the range's end the nominal value lies.
    #[must_use]
    pub fn of(value: Band<f64>, range: Range) -> Self {
        let under = |value: f64| range.least.is_some_and(|least| value < least - NOISE);
        let over = |value: f64| range.most.is_some_and(|most| value > most + NOISE);
        if under(value.high) || over(value.low) {
            Self::DoesNotFit
        } else if under(value.nominal) || over(value.nominal) {
            Self::Unlikely
        } else if under(value.low) || over(value.high) {
            Self::Marginal
        } else {
            Self::Fits
        }
    }
    /// Its name in language keys and in the JSON of a plan.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Fits => "fits",
            Self::Marginal => "marginal",
            Self::Unlikely => "unlikely",
            Self::DoesNotFit => "no",
        }
    }
}

/// The limits of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LimitId {
    /// H under the stitching heads.
    FlatStack,
    /// Sheets in a set.
    Sheets,
    /// S at the part that presses the spine square.
    Former,
    /// S under the knife.
    Knife,
    /// Open sheet across the spine.
    OpenWidth,
    /// Sheet along the spine as it travels.
    TravelHeight,
    /// Spine as it travels.
    SpineLength,
    /// Finished book, spine to face.
    FinishedWidth,
    /// Grammage of the inside.
    TextWeight,
    /// Grammage of the cover.
    CoverWeight,
    /// Chip on the outermost leaf.
    OutermostChip,
    /// Chip on the innermost leaf.
    InnermostChip,
    /// Leg of a stitch.
    Leg,
    /// Wire drawn for a stitch.
    Draw,
    /// Passes under the heads.
    Passes,
    /// Sheets against bins side by side.
    Bins,
}

/// Every limit in the order in which a person reads them.
pub const LIMITS: [LimitId; 16] = [
    LimitId::FlatStack,
    LimitId::Sheets,
    LimitId::Former,
    LimitId::Knife,
    LimitId::OpenWidth,
    LimitId::TravelHeight,
    LimitId::SpineLength,
    LimitId::FinishedWidth,
    LimitId::TextWeight,
    LimitId::CoverWeight,
    LimitId::OutermostChip,
    LimitId::InnermostChip,
    LimitId::Leg,
    LimitId::Draw,
    LimitId::Passes,
    LimitId::Bins,
];

/// One value beside its limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LimitCheck {
    /// Which limit.
    pub id: LimitId,
    /// The value with its band.
    pub value: Band<f64>,
    /// What both are counted in.
    pub unit: Unit,
    /// What the line takes.
    pub range: Range,
    /// How the value stands.
    pub answer: Answer,
    /// Distance to the nearer end of the range at the unfavourable end of the band; negative beyond.
    pub margin: f64,
    /// Head-room.
    pub room: Room,
}

impl LimitId {
    /// The limit's name in language keys and files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::FlatStack => "flat_stack",
            Self::Sheets => "sheets",
            Self::Former => "former",
            Self::Knife => "knife",
            Self::OpenWidth => "open_width",
            Self::TravelHeight => "travel_height",
            Self::SpineLength => "spine_length",
            Self::FinishedWidth => "finished_width",
            Self::TextWeight => "text_weight",
            Self::CoverWeight => "cover_weight",
            Self::OutermostChip => "outermost_chip",
            Self::InnermostChip => "innermost_chip",
            Self::Leg => "leg",
            Self::Draw => "draw",
            Self::Passes => "passes",
            Self::Bins => "bins",
        }
    }

    /// What the line takes of it.
    fn range(self, line: &Line) -> Range {
        match self {
            Self::FlatStack => line.flat_stack,
            Self::Sheets => line.sheets,
            Self::Former => line.former,
            Self::Knife => line.knife,
            Self::OpenWidth => line.open_width,
            Self::TravelHeight => line.travel_height,
            Self::SpineLength => line.spine_length,
            Self::FinishedWidth => line.finished_width,
            Self::TextWeight => line.text_weight,
            Self::CoverWeight => line.cover_weight,
            // Each chip has one end of the cut's range to fear: too thin outside, too thick inside.
            Self::OutermostChip => Range { most: None, ..line.face_cut },
            Self::InnermostChip => Range { least: None, ..line.face_cut },
            Self::Leg => line.leg,
            Self::Draw => line.draw,
            Self::Passes => line.passes,
            Self::Bins => Range { least: None, most: line.pace.bins },
        }
    }

    /// The book's value, if this limit concerns the book.
    fn value(self, book: &Measured) -> Option<(Band<f64>, Unit)> {
        let length = |band: Band<Mm>| Some((band.map(Mm::get), Unit::Length));
        let exact = |length: Mm| Some((Band::exact(length.get()), Unit::Length));
        let closed = || length(book.stack.closed.map(|closed| closed.0));
        match self {
            Self::FlatStack => length(book.stack.flat.map(|flat| flat.0)),
            Self::Sheets => Some((Band::exact(book.job.sheets().as_f64()), Unit::Sheets)),
            Self::Former if book.job.spine == Spine::Square => closed(),
            Self::Former => None,
            Self::Knife => closed(),
            Self::OpenWidth => exact(book.trim.flat.width),
            Self::TravelHeight | Self::SpineLength => exact(book.trim.travel_height),
            Self::FinishedWidth => exact(book.job.size.width),
            Self::TextWeight => grammage(book.job, |role| role != Role::Cover),
            Self::CoverWeight => grammage(book.job, |role| role == Role::Cover),
            Self::OutermostChip => length(book.trim.outermost_chip),
            Self::InnermostChip => length(book.trim.innermost_chip),
            Self::Leg => length(book.stitches.wire.leg),
            Self::Draw => length(book.stitches.wire.draw),
            Self::Passes => {
                Some((Band::exact(f64::from(book.stitches.placement.passes)), Unit::Count))
            }
            Self::Bins => Some((Band::exact(book.job.sheets().as_f64()), Unit::Sheets)),
        }
    }
}

/// Least and greatest grammage among the sections of a part, as one band.
fn grammage(job: &Job, part: impl Fn(Role) -> bool) -> Option<(Band<f64>, Unit)> {
    let mut nominal = job
        .sections
        .iter()
        .filter(|section| part(section.role))
        .filter_map(|section| section.grammage)
        .map(|grammage| grammage.nominal.get());
    let first = nominal.next()?;
    let (low, high) = nominal
        .fold((first, first), |(low, high), weight| (smaller(low, weight), larger(high, weight)));
    Some((Band { low, nominal: first, high }, Unit::Grammage))
}

/// What the limits look at.
pub(super) struct Measured<'a> {
    pub(super) job: &'a Job,
    pub(super) stack: &'a Stack,
    pub(super) fold: &'a Fold,
    pub(super) leaves: &'a [Leaf],
    pub(super) trim: &'a Trim,
    stitches: &'a Stitches,
}

/// Puts every limit of the line that concerns the book beside its value, into `out`.
pub fn check_limits(
    job: &Job,
    line: &Line,
    (stack, fold, leaves): (&Stack, &Fold, &[Leaf]),
    trim: &Trim,
    stitches: &Stitches,
    out: &mut Vec<LimitCheck>,
) {
    out.clear();
    out.reserve(LIMITS.len());
    let book = Measured { job, stack, fold, leaves, trim, stitches };
    let thicker = Larger::of(&book);
    out.extend(LIMITS.iter().filter_map(|id| {
        let range = id.range(line);
        if range == Range::ANY {
            return None;
        }
        let (value, unit) = id.value(&book)?;
        let (answer, margin) = judge(*id, value, range);
        let spare = range.most.map(|most| most - value.high);
        let room =
            spare.zip(thicker.as_ref()).map(|(spare, thicker)| room(*id, thicker, job, spare));
        Some(LimitCheck {
            id: *id,
            value,
            unit,
            range,
            answer,
            margin,
            room: room.unwrap_or_default(),
        })
    }));
}

/// Rounding of sums that must not decide a verdict, far below anything measurable.
pub(super) const NOISE: f64 = 1e-9;

/// Compares a band with a range: the answer, and the margin at the unfavourable end.
fn judge(id: LimitId, value: Band<f64>, range: Range) -> (Answer, f64) {
    let below = range.least.map_or(f64::INFINITY, |least| value.low - least);
    let above = range.most.map_or(f64::INFINITY, |most| most - value.high);
    let margin = smaller(below, above);
    // Two papers of different weight are no doubt about one: the worse of them decides.
    let certain = matches!(id, LimitId::TextWeight | LimitId::CoverWeight);
    let answer = match Answer::of(value, range) {
        Answer::Marginal | Answer::Unlikely if certain => Answer::DoesNotFit,
        answer => answer,
    };
    (answer, margin)
}
