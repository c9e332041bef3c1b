//! What the line takes and how much room is left; what else was planned.

use super::row::{Case, Figure, Value, figure, lengths, pages, said};
use crate::advise::{Offer, Room};
use crate::data::CLIENT_STEP;
use crate::plan::{LimitCheck, LimitId};
use crate::units::{Measure, Unit};
use crate::words::{Say, Slot, say};

pub(super) static ROWS: &[Figure] = &[
    figure("line_takes", "decides.takes", |c| said(takes(c.limit()?)))
        .told(super::stitching::as_shop)
        .shop()
        .rows(limit),
    figure("limit_value", "decides.book", |c| {
        let limit = c.limit()?;
        Some(Slot::Doubtful(limit.value, limit.unit))
    })
    .told(|c, lines| {
        let Some(limit) = c.limit() else { return };
        match underlying(limit.id).and_then(super::figure) {
            Some(figure) => match figure.lines {
                Some(told) => told(c, lines),
                None => lines.push(say(format!("explain.{}", figure.id))),
            },
            None => lines.push(say("explain.limit.weight")),
        }
    })
    .rows(limit),
    figure("limit_room", "decides.room", |c| said(room_told(c.limit()?)))
        .told(|c, lines| {
            let grows = c.limit().is_some_and(|limit| limit.room.sheets.is_some());
            lines.push(say("explain.limit_room.takes"));
            lines.push(say(if grows { "explain.limit_room.grows" } else { "explain.limit_room" }));
        })
        .shop()
        .rows(limit),
    figure("room", "explain.name.room", |c| match c.advice?.room {
        Room::Pages(room) => pages(if c.client { room.min(CLIENT_STEP.value) } else { room }),
        Room::Unlimited => None,
    }),
    figure("offer_spine", "cover.spine", |c| lengths(offer(c)?.spine.map(|spine| spine.0)))
        .rows(offered),
    figure("offer_room", "explain.name.room", |c| match offer(c)?.room {
        Room::Pages(room) => pages(room),
        Room::Unlimited => None,
    })
    .told(|_, lines| lines.push(say("explain.room")))
    .rows(offered),
    figure("most_pages", "explain.name.most_pages", |c| {
        pages(c.advice?.inverse.as_ref()?.most_pages?)
    }),
    figure("heaviest", "explain.name.heaviest", |c| {
        let weight = c.advice?.inverse.as_ref()?.heaviest.as_ref()?.1;
        grammage(weight.get())
    }),
];

/// The figure that a limit's value is, where it is one that stands elsewhere too.
fn underlying(limit: LimitId) -> Option<&'static str> {
    Some(match limit {
        LimitId::FlatStack => "flat_stack",
        LimitId::Sheets | LimitId::Bins => "set_sheets",
        LimitId::Former | LimitId::Knife => "spine",
        LimitId::OpenWidth => "flat_width",
        LimitId::TravelHeight | LimitId::SpineLength => "travel",
        LimitId::FinishedWidth => "knife_spine",
        LimitId::OutermostChip => "outermost_chip",
        LimitId::InnermostChip => "innermost_chip",
        LimitId::Passes => "passes",
        LimitId::Leg => "leg",
        LimitId::Draw => "draw",
        LimitId::TextWeight | LimitId::CoverWeight => return None,
    })
}

fn limit(case: &Case) -> Say {
    case.limit()
        .map_or_else(|| say("decides.none"), |limit| say(format!("limit.{}", limit.id.name())))
}

fn offer<'a>(case: &Case<'a>) -> Option<&'a Offer> {
    let advice = case.advice?;
    let offers = if case.client { &advice.for_client } else { &advice.offers };
    offers.get(case.index())
}

fn offered(case: &Case) -> Say {
    let told = offer(case).and_then(|offer| offer.told.first());
    told.map_or_else(|| say("fixes.none.else"), crate::advise::Told::say)
}

fn grammage(weight: f64) -> Value {
    Some(Slot::Value(Measure::new(weight, Unit::Grammage)))
}

/// What the line takes, in words.
#[must_use]
pub fn takes(limit: &LimitCheck) -> Say {
    let measure = |value| Measure::new(value, limit.unit);
    match (limit.range.least, limit.range.most) {
        (Some(least), Some(most)) => {
            say("range.between").put("least", measure(least)).put("most", measure(most))
        }
        (None, Some(most)) => say("range.most").put("most", measure(most)),
        (Some(least), None) => say("range.least").put("least", measure(least)),
        (None, None) => say("range.any"),
    }
}

/// Head-room in sheets, pages and grammage where the limit grows with the book, else the margin.
#[must_use]
pub fn room_told(limit: &LimitCheck) -> Say {
    let Some((sheets, pages)) = limit.room.sheets.zip(limit.room.pages()) else {
        let (key, value) = if limit.margin < 0.0 {
            ("room.beyond", -limit.margin)
        } else {
            ("room.left", limit.margin)
        };
        return say(key).put("margin", Measure::new(value, limit.unit));
    };
    let count = |value: i64| Measure::new(value.unsigned_abs() as f64, Unit::Count);
    let weight = limit.room.grammage.unwrap_or_default();
    let key = match (sheets < 0, weight >= 1.0) {
        (true, _) => "room.too-many",
        (false, true) => "room.sheets-weight",
        (false, false) => "room.sheets",
    };
    say(key)
        .count("sheets", count(sheets))
        .put("pages", count(pages))
        .put("weight", Measure::new(weight, Unit::Grammage))
}
