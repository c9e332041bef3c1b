//! One function a figure.

use super::{Explanation, making, money, sheet};
use crate::job::{Job, Role, Spine};
use crate::plan::Plan;
use crate::source::Source;
use crate::units::{Measure, Mm, Unit};
use crate::words::{Say, say};

/// Explains one figure of a plan.
pub type Explain = fn(&Job, &Plan) -> Explanation;

/// Every figure that can be asked about, with the function that explains it.
pub static FIGURES: [(&str, Explain); 26] = [
    ("spine", spine),
    ("flat_stack", flat_stack),
    ("push_out", push_out),
    ("trade_creep", trade_creep),
    ("face_cut", face_cut),
    ("untrimmed", untrimmed),
    ("image_shift", image_shift),
    ("cover_open", cover_open),
    ("mass", mass),
    ("sheet_used", sheet::sheet_used),
    ("straight_cut", sheet::straight_cut),
    ("stitch_pitch", making::stitch_pitch),
    ("leg", making::leg),
    ("draw", making::draw),
    ("wire_run", making::wire_run),
    ("sets_fed", making::sets_fed),
    ("interval", making::interval),
    ("run_time", making::run_time),
    ("cost_paper", |_, plan| money::line(plan, "cost_paper")),
    ("cost_sheets", |_, plan| money::line(plan, "cost_sheets")),
    ("cost_click", |_, plan| money::line(plan, "cost_click")),
    ("cost_line", |_, plan| money::line(plan, "cost_line")),
    ("cost_wire", |_, plan| money::line(plan, "cost_wire")),
    ("cost_carton", |_, plan| money::line(plan, "cost_carton")),
    ("cost_job", |_, plan| money::line(plan, "cost_job")),
    ("cost_each", |_, plan| money::each(plan)),
];

/// Figures of the book itself, which a client may ask about. All others are the shop's: what its line
/// takes, how fast it runs, what it reckons with.
const OF_THE_BOOK: [&str; 9] = [
    "spine",
    "flat_stack",
    "push_out",
    "trade_creep",
    "face_cut",
    "untrimmed",
    "image_shift",
    "cover_open",
    "mass",
];

/// Of these even the formula names what the line takes.
const NAMES_A_LIMIT: [&str; 1] = ["face_cut"];

/// The explanation of a figure of the book, without its formula where that names what the line takes;
/// nothing for the shop's own figures.
#[must_use]
pub fn explain_to_client(job: &Job, plan: &Plan, figure: &str) -> Option<Explanation> {
    if !OF_THE_BOOK.contains(&figure) {
        return None;
    }
    let told = explain(job, plan, figure)?;
    Some(if NAMES_A_LIMIT.contains(&figure) {
        Explanation { lines: Vec::new(), doubt: None, ..told }
    } else {
        told
    })
}

/// The explanation of a figure of the plan; nothing for an unknown id.
#[must_use]
pub fn explain(job: &Job, plan: &Plan, figure: &str) -> Option<Explanation> {
    FIGURES.iter().find(|(id, _)| *id == figure).map(|(_, explain)| explain(job, plan))
}

pub(super) fn build(
    figure: &'static str,
    lines: Vec<Say>,
    doubt: Option<Say>,
    source: Source,
) -> Explanation {
    Explanation { figure, what: say(format!("explain.{figure}")), lines, doubt, source }
}

/// One line a section: sheets × caliper, and where the caliper comes from.
fn sections(job: &Job, plan: &Plan) -> Vec<Say> {
    let calipers = &plan.results.stack.calipers;
    job.sections
        .iter()
        .zip(calipers)
        .map(|(section, caliper)| {
            say("explain.section")
                .say("role", role(section.role))
                .count("sheets", section.sheets)
                .put("caliper", Measure::caliper(caliper.nominal))
                .put("low", Measure::caliper(caliper.low))
                .put("high", Measure::caliper(caliper.high))
                .say("source", Say::source(section.caliper.source))
        })
        .collect()
}

/// The word for a section's part in the book.
fn role(role: Role) -> Say {
    say(match role {
        Role::Cover => "role.cover",
        Role::Inside => "role.inside",
        Role::Insert => "role.insert",
    })
}

fn flat_stack(job: &Job, plan: &Plan) -> Explanation {
    let stack = &plan.results.stack;
    let mut lines = sections(job, plan);
    lines.push(say("explain.flat_stack.sum").band("flat", stack.flat.map(|flat| flat.0)));
    if stack.measured {
        lines.push(say("explain.measured"));
    }
    build("flat_stack", lines, Some(say("explain.doubt.lots")), Source::Derived)
}

fn spine(job: &Job, plan: &Plan) -> Explanation {
    let stack = &plan.results.stack;
    let mut lines = sections(job, plan);
    lines.push(
        say("explain.spine.sum")
            .band("flat", stack.flat.map(|flat| flat.0))
            .band("spine", stack.closed.map(|closed| closed.0)),
    );
    if stack.measured {
        lines.push(say("explain.measured"));
    }
    if job.spine == Spine::Round {
        lines.push(say("explain.spine.springs"));
    }
    build("spine", lines, Some(say("explain.doubt.lots")), Source::Derived)
}

fn push_out(_: &Job, plan: &Plan) -> Explanation {
    let results = &plan.results;
    let (step, push_out) =
        results.leaves.last().map(|leaf| (leaf.step, leaf.push_out)).unwrap_or_default();
    let factor = |value| Measure::new(value, Unit::Number);
    let fold = results.fold.fold;
    let line = say("explain.push_out.sum")
        .put("step", step.nominal)
        .put("factor", factor(fold.nominal.factor()))
        .band("push_out", push_out);
    let doubt = if fold.low == fold.high {
        say("explain.push_out.certain")
    } else {
        say("explain.push_out.doubt")
            .put("low", factor(fold.low.factor()))
            .put("high", factor(fold.high.factor()))
    };
    build("push_out", vec![line], Some(doubt), results.fold.source)
}

fn trade_creep(job: &Job, plan: &Plan) -> Explanation {
    let inside: u32 = job
        .sections
        .iter()
        .filter(|section| section.role != Role::Cover)
        .map(|section| section.sheets.get())
        .sum();
    let line = say("explain.trade_creep.sum")
        .put("sheets", Measure::count(inside))
        .band("creep", plan.results.trade_creep);
    build("trade_creep", vec![line], None, Source::Practice)
}

fn face_cut(job: &Job, plan: &Plan) -> Explanation {
    let trim = &plan.results.trim;
    let key = if trim.straight {
        "explain.face_cut.straight"
    } else if trim.face_cut_given {
        "explain.face_cut.given"
    } else {
        "explain.face_cut.rule"
    };
    let lines = vec![
        say(key)
            .put("cut", trim.face_cut)
            .put("bleed", job.bleed.unwrap_or(Mm::ZERO))
            .put("tolerance", job.tolerance),
        say("explain.face_cut.innermost").band("chip", trim.innermost_chip),
    ];
    build("face_cut", lines, None, Source::Practice)
}

fn untrimmed(job: &Job, plan: &Plan) -> Explanation {
    let trim = &plan.results.trim;
    let lines = vec![
        say("explain.untrimmed.width")
            .put("width", job.size.width)
            .put("wrap", trim.wrap.nominal)
            .put("cut", trim.face_cut)
            .put("open", trim.flat.width),
        if trim.straight {
            say("explain.untrimmed.straight").put("open", trim.flat.height)
        } else {
            say("explain.untrimmed.height")
                .put("height", job.size.height)
                .put("head", job.head_trim)
                .put("foot", job.foot_trim)
                .put("open", trim.flat.height)
        },
    ];
    let doubt = say("explain.untrimmed.doubt").put("line", trim.line_doubt);
    build("untrimmed", lines, Some(doubt), Source::Derived)
}

fn image_shift(_: &Job, plan: &Plan) -> Explanation {
    let results = &plan.results;
    let innermost = results.leaves.last();
    let line = say("explain.image_shift.sum")
        .put("wrap", results.trim.wrap.nominal)
        .put("push_out", innermost.map_or(Mm::ZERO, |leaf| leaf.push_out.nominal))
        .put("shift", innermost.map_or(Mm::ZERO, |leaf| leaf.image_shift));
    let drift = innermost.map_or(Mm::ZERO, |leaf| leaf.drift);
    let doubt = say("explain.image_shift.doubt").put("drift", drift);
    build("image_shift", vec![line], Some(doubt), Source::Derived)
}

fn cover_open(job: &Job, plan: &Plan) -> Explanation {
    let cover = &plan.results.cover;
    let lines = vec![
        say("explain.cover_open.sum")
            .put("width", job.size.width)
            .put("wrap", plan.results.trim.wrap.nominal)
            .put("open", cover.open.width),
        say("explain.cover_open.middle").put("middle", cover.open_middle),
    ];
    build("cover_open", lines, None, Source::Derived)
}

fn mass(job: &Job, plan: &Plan) -> Explanation {
    let mut lines: Vec<Say> = job
        .sections
        .iter()
        .filter_map(|section| {
            let grammage = section.grammage?;
            Some(
                say("explain.mass.section")
                    .say("role", role(section.role))
                    .count("sheets", section.sheets)
                    .band("grammage", grammage),
            )
        })
        .collect();
    if let Some(mass) = plan.results.mass {
        lines.push(
            say("explain.mass.sum").band("mass", mass.book).put("nominal", mass.nominal_page),
        );
    }
    build("mass", lines, Some(say("explain.doubt.weight")), Source::Derived)
}
