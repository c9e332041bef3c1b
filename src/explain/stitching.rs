//! Stitches and wire.

use super::row::{Case, Figure, caliper, count, figure, length, lengths, mass, number, term};
use crate::data::STITCH_PRACTICE;
use crate::plan::{Placed, Placement, Wire};
use crate::source::Source;
use crate::units::{Gram, Measure, Mm, Unit};
use crate::words::{Say, say};

/// Milligrams in a gram.
const MG_PER_GRAM: f64 = 1000.0;

pub(super) static ROWS: &[Figure] = &[
    figure("stitch_count", "stitches.per-copy", |c| count(placement(c).per_copy))
        .told(|c, lines| {
            let given = placement(c).given;
            lines.push(say(if given { "explain.as_typed" } else { "explain.stitch_count" }));
        })
        .practice(),
    term("two_up_to", |_| length(Mm(STITCH_PRACTICE.two_up_to.value))),
    term("three_up_to", |_| length(Mm(STITCH_PRACTICE.three_up_to.value))),
    figure("stitch_pitch", "stitches.pitch", |c| {
        if placement(c).per_copy > 1 { length(placement(c).pitch) } else { None }
    })
    .told(pitch)
    .from(|c| if c.job.loops { Source::Memory } else { Source::Practice }),
    figure("stitch_wished", "explain.name.stitch_wished", |c| length(placement(c).wished_pitch))
        .told(|c, lines| lines.push(say(wished(c))))
        .from(|c| if c.job.loops { Source::Memory } else { Source::Practice }),
    figure("stitch_edge", "explain.name.stitch_edge", |c| length(placement(c).edge)).shop(),
    term("pitch", |c| length(placement(c).pitch)),
    term("spaces", |c| count(placement(c).per_copy.saturating_sub(1))),
    figure("overhang", "stitches.overhang", |c| length(placement(c).overhang)),
    figure("overhang_most", "explain.name.overhang_most", |c| {
        length(c.job.size.height * STITCH_PRACTICE.overhang_most.value)
    })
    .practice(),
    figure("between", "stitches.between", |c| length(placement(c).between_copies()?)),
    figure("stitch_total", "explain.name.stitch_total", |c| count(placement(c).total())),
    term("heads", |c| count(placement(c).heads_used)),
    figure("line_heads", "explain.name.line_heads", |c| count(c.line()?.heads))
        .told(as_shop)
        .shop(),
    figure("passes", "stitches.passes", |c| count(placement(c).passes)),
    // The wire.
    figure("wire", "stitches.wire", |c| caliper(wire(c).diameter)).practice(),
    figure("leg", "stitches.leg", |c| lengths(wire(c).leg))
        .told(|_, lines| {
            lines.push(say("explain.leg.meet"));
            lines.push(say("explain.leg"));
        })
        .doubt("explain.leg.doubt")
        .practice(),
    term("crown", |c| length(wire(c).crown)),
    term("loop", |c| length(wire(c).loop_wire)),
    term("clinch_low", |c| length(wire(c).clinch.low)),
    figure("clinch_high", "stitches.clinch", |c| length(wire(c).clinch.high)),
    term("leg_high", |c| length(wire(c).leg.high)),
    term("draw_high", |c| length(wire(c).draw.high)),
    term("flat_low", |c| length(c.plan.results.stack.flat.low.0)),
    figure("clinch_most", "explain.name.clinch_most", |c| length(wire(c).clinch_most)),
    figure("clinch", "stitches.clinch", |c| lengths(wire(c).clinch)),
    figure("draw", "stitches.draw", |c| lengths(wire(c).draw)).told(|c, lines| {
        let loops = wire(c).loop_wire > Mm::ZERO;
        lines.push(say(if loops { "explain.draw.loop" } else { "explain.draw" }));
    }),
    term("wire_length", |c| length(c.run()?.consumed.wire_length)),
    term("stitch_mg", |c| number(wire(c).stitch.get() * MG_PER_GRAM)),
    figure("wire_run", "stitches.run-mass", |c| mass(c.run()?.consumed.wire))
        .told(|_, lines| {
            lines.push(say("explain.wire_run.length"));
            lines.push(say("explain.wire_run"));
        })
        .from(|_| STITCH_PRACTICE.steel.source),
    term("spool", |c| mass(Gram(c.line()?.supplies.spool_mass?))),
    figure("spools", "stitches.spools", |c| number(c.run()?.consumed.spools?)),
    term("text_space", |_| length(Mm(STITCH_PRACTICE.text_clear.value))),
    figure("free_from", "explain.name.free", |c| length(free(c).0)).told(free_told).practice(),
    figure("free_to", "explain.name.free", |c| length(free(c).1)).told(free_told).practice(),
    // One stitch.
    term("before", |c| {
        let (stitch, all) = (c.stitch()?, &placement(c).stitches);
        let same = all.iter().take(c.index()).filter(|other| other.copy == stitch.copy);
        count(same.count() as u32)
    }),
    figure("from_head", "stitches.from-head", |c| length(c.stitch()?.from_head)).rows(stitch),
    figure("from_foot", "stitches.from-foot", |c| length(c.stitch()?.from_foot)).rows(stitch),
    figure("from_stop", "stitches.from-stop", |c| length(c.stitch()?.from_lay))
        .told(|c, lines| {
            let foot = c.line().is_some_and(|line| line.stitching.lay_at_foot);
            lines.push(say(if foot { "explain.from_stop.foot" } else { "explain.from_stop" }));
        })
        .rows(stitch),
    term("lay", |c| length(c.plan.results.trim.head_trim)),
    term("copies_before", |c| count(c.stitch()?.copy)),
    // Moving a set on between passes.
    figure("pass_step", "explain.name.pass_step", |c| {
        length(placement(c).moves().nth(c.index())?.step)
    })
    .rows(pass),
    figure("pass_shift", "explain.name.pass_shift", |c| {
        length(placement(c).moves().nth(c.index())?.from_first)
    })
    .rows(pass),
    term("pass_this", |c| length(lead(c, c.at)?)),
    term("pass_before", |c| length(lead(c, c.index())?)),
    term("pass_first", |c| length(lead(c, 0)?)),
];

fn placement<'a>(case: &Case<'a>) -> &'a Placement {
    &case.plan.results.stitches.placement
}

fn wire<'a>(case: &Case<'a>) -> &'a Wire {
    &case.plan.results.stitches.wire
}

pub(super) fn as_shop(_: &Case, lines: &mut Vec<Say>) {
    lines.push(say("explain.as_shop"));
}

fn wished(case: &Case) -> &'static str {
    if case.job.loops { "explain.stitch_pitch.loops" } else { "explain.stitch_pitch.even" }
}

fn pitch(case: &Case, lines: &mut Vec<Say>) {
    lines.push(say(wished(case)));
    lines.push(say("explain.stitch_pitch.edge"));
    lines.push(say(match placement(case).placed {
        Placed::Even => "explain.stitch_pitch",
        Placed::Moved => "explain.stitch_pitch.moved",
        Placed::Apart => "explain.stitch_pitch.apart",
    }));
}

fn free(case: &Case) -> (Mm, Mm) {
    placement(case).free_of_wire(case.job.size.height, wire(case).crown)
}

fn free_told(_: &Case, lines: &mut Vec<Say>) {
    lines.push(say("explain.free"));
}

/// Where the first stitch of a pass stands, from the head edge of the set.
fn lead(case: &Case, pass: usize) -> Option<Mm> {
    let mut leads = placement(case).stitches.iter().filter(|stitch| stitch.head == 1);
    leads.nth(pass).map(|stitch| stitch.from_head_edge)
}

fn stitch(case: &Case) -> Say {
    say("explain.row.stitch").put("at", Measure::new(case.at as f64, Unit::Count))
}

fn pass(case: &Case) -> Say {
    say("explain.row.pass").put("at", Measure::new(case.at as f64 + 1.0, Unit::Count))
}
