//! Thickness, push-out, the cut, the cover: the book itself.

use super::row::{
    Case, Figure, Value, caliper, copies, count, figure, length, lengths, mass, masses,
};
use super::row::{number, pages, term};
use crate::data::{COPIER_SHEET, PRACTICE};
use crate::job::{HeadFoot, Role, Spine};
use crate::plan::{Leaf, distance_left};
use crate::units::{Copies, Measure, Mm, PAGES_PER_SHEET};
use crate::words::{Say, say};

const LOTS: &str = "explain.doubt.lots";
const LINE: &str = "explain.untrimmed.doubt";

pub(super) static ROWS: &[Figure] = &[
    // What was asked for, and what the shop does.
    term("width", |c| length(c.job.size.width)),
    term("height", |c| length(c.job.size.height)),
    term("bleed", |c| length(c.job.bleed.unwrap_or(Mm::ZERO))),
    term("tolerance", |c| length(c.job.tolerance)),
    term("copies", |c| copies(c.job.copies?)),
    term("up", |c| count(c.job.copies_up)),
    term("head", |c| length(c.job.head_trim)),
    term("foot", |c| length(c.job.foot_trim)),
    term("gutter", |c| length(c.job.gutter)),
    term("gutters", |c| length(c.job.gutter * f64::from(c.job.copies_up.saturating_sub(1)))),
    // Thickness.
    figure("set_sheets", "limit.sheets", |c| count(c.job.sheets().get())),
    figure("flat_stack", "limit.flat_stack", |c| {
        lengths(c.plan.results.stack.flat.map(|flat| flat.0))
    })
    .told(|c, lines| {
        sections(c, lines);
        lines.push(say("explain.flat_stack"));
    })
    .doubt(LOTS),
    term("flat", |c| length(c.plan.results.stack.flat.nominal.0)),
    figure("spine", "cover.spine", |c| lengths(c.plan.results.stack.closed.map(|closed| closed.0)))
        .told(|c, lines| {
            lines.push(say("explain.spine.why"));
            sections(c, lines);
            if c.job.spine == Spine::Round {
                lines.push(say("explain.spine.springs"));
            }
            lines.push(say("explain.spine"));
        })
        .doubt(LOTS),
    term("spine_low", |c| length(c.plan.results.stack.closed.low.0)),
    term("spine_high", |c| length(c.plan.results.stack.closed.high.0)),
    term("closed", |c| length(c.plan.results.stack.closed.nominal.0)),
    term("copier_sheet", |_| caliper(COPIER_SHEET.value)),
    figure("copier_sheets", "explain.name.copier_sheets", |c| {
        let thick = c.plan.results.stack.closed.nominal.0;
        copies(Copies((thick / COPIER_SHEET.value).round() as u32))
    })
    .from(|_| COPIER_SHEET.source),
    figure("leaf_one", "explain.name.leaf_one", |c| caliper(c.component()?.leaf.0))
        .told(|c, lines| {
            lines.extend(sections_of(c).nth(c.index()));
            lines.push(say("explain.leaf_one"));
        })
        .from(|c| c.section().map_or(crate::source::Source::Derived, |part| part.caliper.source))
        .rows(role_of),
    figure("leaf_two", "explain.name.leaf_two", |c| caliper(c.component()?.leaf.1)).rows(role_of),
    // Inside the fold.
    term("step", |c| length(c.leaf()?.step.nominal)),
    term("factor", |c| {
        let leaf = c.leaf()?;
        let step = leaf.step.nominal.get();
        let fold = c.plan.results.fold.fold.nominal.factor();
        number(if step > 0.0 { leaf.push_out.nominal.get() / step } else { fold })
    }),
    term("factor_low", |c| number(c.plan.results.fold.fold.low.factor())),
    term("factor_high", |c| number(c.plan.results.fold.fold.high.factor())),
    figure("push_out", "inside.push-out", |c| lengths(c.leaf()?.push_out))
        .told(|c, lines| {
            let fold = c.plan.results.fold.fold;
            let certain = fold.low == fold.high;
            lines.push(say(if certain {
                "explain.push_out.certain"
            } else {
                "explain.push_out.doubt"
            }));
            lines.push(say("explain.push_out"));
        })
        .doubt(LOTS)
        .from(|c| c.plan.results.fold.source)
        .of(sheet),
    figure("trade_creep", "inside.trade", |c| lengths(c.plan.results.trade_creep)).practice(),
    term("sheets_inside", |c| {
        let inside = c.job.sections.iter().filter(|section| section.role != Role::Cover);
        count(inside.map(|section| section.sheets.get()).sum())
    }),
    term("wrap", |c| length(c.plan.results.trim.wrap.nominal)),
    term("out", |c| length(c.leaf()?.push_out.nominal)),
    term("drift", |c| length(c.leaf()?.drift)),
    figure("image_shift", "inside.shift", |c| length(c.leaf()?.image_shift))
        .doubt("explain.image_shift.doubt")
        .of(sheet),
    figure("leaf_length", "inside.length", |c| length(c.leaf()?.length)).doubt(LINE).of(sheet),
    term("art", |c| length(c.plan.results.margins.art.distance)),
    figure("art_left", "explain.name.art_left", |c| {
        length(distance_left(c.job, c.leaf()?, c.plan.results.margins.art.distance))
    })
    .told(|c, lines| {
        use crate::job::ImagesMovedBy::Nobody;
        let nobody = c.job.images == Nobody;
        lines.push(say(if nobody { "explain.art_left.unmoved" } else { "explain.art_left" }));
    })
    .of(sheet),
    // The cut.
    figure("face_cut", "trim.cut", |c| length(c.plan.results.trim.face_cut))
        .told(|c, lines| {
            let trim = &c.plan.results.trim;
            lines.push(say(if trim.straight {
                "explain.face_cut.straight"
            } else if trim.face_cut_given {
                "explain.face_cut.given"
            } else {
                "explain.face_cut.rule"
            }));
        })
        .practice()
        .kept(),
    // With its tolerance the outermost chip is the least that the line cuts clean.
    figure("outermost_chip", "trim.outermost", |c| lengths(c.plan.results.trim.outermost_chip))
        .maker(),
    figure("innermost_chip", "trim.innermost", |c| lengths(c.plan.results.trim.innermost_chip))
        .maker(),
    term("innermost", |c| length(c.plan.results.leaves.last()?.push_out.nominal)),
    figure("knife_spine", "trim.knife-spine", |c| length(c.job.size.width)).job().maker(),
    figure("knife_face", "trim.knife-face", |c| length(c.plan.results.trim.knife_from_face))
        .maker(),
    figure("flat_width", "trim.flat-width", |c| length(c.plan.results.trim.flat.width))
        .told(|c, lines| {
            let straight = c.plan.results.trim.straight;
            lines.push(say(if straight {
                "explain.untrimmed.straight"
            } else {
                "explain.flat_width"
            }));
        })
        .doubt(LINE),
    figure("flat_height", "trim.flat-height", |c| length(c.plan.results.trim.flat.height)).told(
        |c, lines| {
            let straight = c.plan.results.trim.straight;
            lines.push(say(if straight {
                "explain.untrimmed.straight"
            } else {
                "explain.flat_height"
            }));
        },
    ),
    figure("travel", "trim.travel", |c| length(c.plan.results.trim.travel_height)).told(
        |c, lines| {
            let before = c.job.head_foot == HeadFoot::Before;
            lines.push(say(if before { "explain.travel.before" } else { "explain.travel" }));
        },
    ),
    term("line_doubt", |c| length(c.plan.results.trim.line_doubt)),
    figure("face_bleed", "trim.bleed", |c| length(c.plan.results.margins.face_bleed)),
    figure("fold_gap", "trim.gap", |c| some_length(c.plan.results.margins.fold_gap)),
    figure("fold_overlap", "trim.overlap", |c| some_length(c.plan.results.margins.fold_overlap)),
    term("shift_most", |c| length(shifts(c).fold(Mm(f64::NEG_INFINITY), Mm::max))),
    term("shift_least", |c| length(shifts(c).fold(Mm(f64::INFINITY), Mm::min))),
    figure("chips", "trim.chips", |c| mass(c.plan.results.mass?.chips)),
    figure("mass", "explain.name.mass", |c| masses(c.plan.results.mass?.book))
        .told(|c, lines| {
            grammages(c, lines);
            lines.push(say("explain.mass"));
        })
        .doubt("explain.doubt.weight"),
    term("mass_nominal", |c| mass(c.plan.results.mass?.nominal_page)),
    // The cover.
    figure("cover_open", "cover.open", |c| length(c.plan.results.cover.open.width)).told(
        |_, lines| {
            lines.push(say("explain.cover_open.middle"));
            lines.push(say("explain.cover_open"));
        },
    ),
    term("cover_middle", |c| length(c.plan.results.cover.open_middle)),
    figure("cover_height", "cover.height", |c| length(c.plan.results.cover.open.height)).job(),
    figure("bleed_width", "cover.bleed-width", |c| {
        c.job.bleed?;
        length(c.plan.results.cover.with_bleed.width)
    }),
    figure("bleed_height", "cover.bleed-height", |c| {
        c.job.bleed?;
        length(c.plan.results.cover.with_bleed.height)
    }),
    term("cover_caliper", |c| caliper(c.plan.results.stack.calipers.first()?.nominal)),
    term("crease_rule", |_| length(PRACTICE.crease_rule.value)),
    term("crease_along", |_| number(PRACTICE.crease_channel_along.value)),
    term("crease_across", |_| number(PRACTICE.crease_channel_across.value)),
    figure("channel_along", "cover.channel-along", |c| creased(c, c.plan.results.cover.channel.0))
        .from(|_| PRACTICE.crease_channel_along.source),
    figure("channel_across", "cover.channel-across", |c| {
        creased(c, c.plan.results.cover.channel.1)
    })
    .from(|_| PRACTICE.crease_channel_across.source),
    figure("crease_offset", "explain.name.crease_offset", |c| {
        some_length(c.plan.results.cover.crease_offset)
    }),
    term("cover_half", |c| caliper(c.plan.results.stack.calipers.first()?.nominal / 2.0)),
    term("text_clear", |_| length(PRACTICE.spine_text_clear.value)),
    figure("text_room", "cover.text-room", |c| some_length(c.plan.results.cover.text_room))
        .from(|_| PRACTICE.spine_text_clear.source),
    // Pages that stay blank, and counts that leave none.
    figure("blanks", "explain.name.blanks", |c| pages(c.plan.results.blanks.count())),
    figure("pages_up", "explain.name.pages_up", |c| pages(c.plan.results.blanks.made)),
    figure("pages_down", "explain.name.pages_down", |c| pages(c.plan.results.blanks.down)),
    term("pages_asked", |c| pages(c.plan.results.blanks.asked)),
    term("pages_sheet", |_| count(PAGES_PER_SHEET)),
    // What the first book tells.
    figure("first_thicker", "explain.name.first_thicker", |c| {
        length(c.plan.results.first_off.thicker?)
    }),
    term("first_closed", |c| length(c.job.first_off.closed?)),
    figure("first_factor", "explain.name.first_factor", |c| {
        number(c.plan.results.first_off.factor?.0)
    }),
    figure("first_error", "explain.name.first_error", |c| {
        number(c.plan.results.first_off.factor?.1)
    })
    .from(|_| PRACTICE.reading_error.source),
    term("first_out", |c| length(c.job.first_off.push_out?)),
    term("reading_error", |_| length(PRACTICE.reading_error.value)),
    figure("first_move", "explain.name.first_move", |c| {
        let by = c.plan.results.first_off.knife?;
        length(by.max(-by))
    }),
    term("first_width", |c| length(c.job.first_off.width?)),
    // Numbers of the trade that a rule goes by.
    figure("square_least", "explain.name.threshold", |_| length(PRACTICE.square_spine_least.value))
        .told(threshold)
        .practice(),
    figure("text_least", "explain.name.threshold", |_| length(PRACTICE.spine_text_least.value))
        .told(threshold)
        .practice(),
    figure("factor_least", "explain.name.threshold", |_| number(PRACTICE.fold_factor_least.value))
        .told(threshold)
        .practice(),
    figure("factor_most", "explain.name.threshold", |_| number(PRACTICE.fold_factor_most.value))
        .told(threshold)
        .practice(),
];

fn threshold(_: &Case, lines: &mut Vec<Say>) {
    lines.push(say("explain.threshold"));
}

fn some_length(some: Mm) -> Value {
    if some > Mm::ZERO { length(some) } else { None }
}

fn creased(case: &Case, channel: Mm) -> Value {
    if case.plan.results.cover.wants_crease { length(channel) } else { None }
}

fn shifts<'a>(case: &Case<'a>) -> impl Iterator<Item = Mm> + use<'a> {
    case.plan.results.leaves.iter().map(|leaf: &Leaf| leaf.image_shift)
}

fn sheet(case: &Case) -> Say {
    say("explain.row.sheet").put("at", Measure::count(case.at as u32))
}

/// The word for the part in the book of the section of a row.
pub(super) fn role_of(case: &Case) -> Say {
    case.section().map_or_else(|| say("role.inside"), |section| role(section.role))
}

pub(super) fn role(role: Role) -> Say {
    say(match role {
        Role::Cover => "role.cover",
        Role::Inside => "role.inside",
        Role::Insert => "role.insert",
    })
}

/// One line a section: sheets × caliper, and where the caliper comes from.
fn sections(case: &Case, lines: &mut Vec<Say>) {
    lines.extend(sections_of(case));
    if case.plan.results.stack.measured {
        lines.push(say("explain.measured"));
    }
}

fn sections_of<'a>(case: &Case<'a>) -> impl Iterator<Item = Say> + use<'a> {
    let calipers = &case.plan.results.stack.calipers;
    case.job.sections.iter().zip(calipers).map(|(section, caliper)| {
        say("explain.section")
            .say("role", role(section.role))
            .count("sheets", section.sheets)
            .put("caliper", Measure::caliper(caliper.nominal))
            .put("low", Measure::caliper(caliper.low))
            .put("high", Measure::caliper(caliper.high))
            .say("source", Say::source(section.caliper.source))
    })
}

/// One line a section: its leaves and its grammage.
fn grammages(case: &Case, lines: &mut Vec<Say>) {
    for section in &case.job.sections {
        let Some(grammage) = section.grammage else { continue };
        lines.push(
            say("explain.mass.section")
                .say("role", role(section.role))
                .count("sheets", section.sheets)
                .band("grammage", grammage),
        );
    }
}
