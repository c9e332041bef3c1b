//! The plan as plain text, for a terminal.

use crate::advise::{CostSteps, Offer, Room, Told, only_just};
use crate::explain::{Case, explain, figures};
use crate::job::Job;
use crate::plan::{Plan, Verdict};
use crate::shop::Shop;
use crate::units::{Measure, Mm, Pages};
use crate::view::html::{cost, run, sheet};
use crate::view::{Printer, set_up};
use crate::words::{Say, say};

/// The plan for a person to read, line by line.
#[must_use]
pub fn text(job: &Job, shop: &Shop, plan: &Plan, printer: &Printer) -> String {
    let numbers = &printer.numbers;
    let results = &plan.results;
    let mut lines = vec![];
    let verdict = &format!("answer.{}", plan.verdict.name());
    let line = shop.lines.get(job.line).map(|line| printer.typed(&line.name)).unwrap_or_default();
    lines.push(format!("{} [{line}]", printer.word(verdict)));
    let case = Case::new(job, shop, plan);
    for figure in figures() {
        if let Some(told) = explain(&case, figure.id) {
            lines.push(format!("\n{}", printer.text(&told.name)));
            lines.extend(told.lines.iter().map(|line| format!("  {}", printer.text(line))));
        }
    }
    lines.push(format!("\n{}", printer.word("region.decides")));
    for limit in &results.limits {
        let answer = &format!("limit.answer.{}", limit.answer.name());
        lines.push(format!(
            "  {}: {} — {}",
            printer.word(&format!("limit.{}", limit.id.name())),
            numbers.band(limit.value, limit.unit),
            printer.word(answer),
        ));
    }
    for finding in &plan.findings {
        lines.push(format!(
            "  · {} {}",
            printer.text(&finding.say()),
            printer.text(&finding.cure())
        ));
    }
    lines.push(format!("\n{}", printer.word("region.inside")));
    for leaf in &results.leaves {
        let pages = leaf.folios.all().map(|folio| match folio {
            crate::plan::Folio::Page(page) => page.to_string(),
            crate::plan::Folio::Cover(side) => {
                printer.word(&format!("cover.side.{side}")).to_owned()
            }
        });
        lines.push(
            printer.text(
                &say("text.sheet")
                    .put("place", Measure::count(leaf.place))
                    .text("pages", pages.join(" · "))
                    .band("push_out", leaf.push_out)
                    .put("length", Mm(leaf.length.get()))
                    .put("shift", leaf.image_shift),
            ),
        );
    }
    lines.push(format!("\n{}", printer.word("region.sheet")));
    lines.extend(
        sheet::told(job, shop, plan).iter().map(|told| format!("  {}", printer.text(told))),
    );
    lines.push(format!("\n{}", printer.word("region.set-up")));
    lines.extend(set_up::settings(&case).iter().map(|row| format!("  [ ] {}", row.text(printer))));
    lines.push(format!("\n{}", printer.word("region.run")));
    lines.extend(run::told(&case).iter().map(|told| format!("  {}", printer.text(told))));
    lines.push(format!("\n{}", printer.word("region.cost")));
    lines
        .extend(cost::told(job, shop, plan).iter().map(|told| format!("  {}", printer.text(told))));
    lines.push(format!("\n{}", printer.word("cautions.machine")));
    lines.push(printer.word("cautions.wire").to_owned());
    lines.push(printer.word("cautions.dummy").to_owned());
    lines.join("\n")
}

/// What would make it fit, or what else would work, line by line.
#[must_use]
pub fn advice(case: &Case, printer: &Printer) -> String {
    let Some(advice) = case.advice else { return String::new() };
    let fits = case.plan.verdict == Verdict::Fits;
    let mut lines = vec![printer.word(if fits { "fixes.else" } else { "region.fixes" }).to_owned()];
    if only_just(&advice.offers) {
        lines.push(format!("  {}", printer.word("fixes.only-just")));
    }
    if advice.offers.is_empty() {
        let key = if fits { "fixes.none.else" } else { "fixes.none" };
        lines.push(format!("  {}", printer.word(key)));
    }
    for offer in &advice.offers {
        let (way, gain) = (way(offer), gain(offer));
        lines.push(format!("  · {} — {}", printer.text(&way), printer.text(&gain)));
    }
    lines.extend(turned_round(case).iter().map(|line| format!("  {}", printer.text(line))));
    lines.join("\n")
}

/// What a little more costs, line by line; nothing where the shop has no rates.
#[must_use]
pub fn cost_steps(shop: &Shop, plan: &Plan, steps: &CostSteps, printer: &Printer) -> String {
    let curve = steps.curve.iter().filter(|at| at.ordered).map(|at| {
        say("text.unit-cost")
            .put("copies", at.copies)
            .say("total", cost::money(shop, at.total))
            .say("each", cost::rate(shop, at.each))
    });
    let told = cost::steps_told(shop, plan, steps, None).into_iter().chain(curve);
    told.map(|told| format!("  {}", printer.text(&told))).collect::<Vec<_>>().join("\n")
}

/// An offer's changes in one sentence part.
#[must_use]
pub fn way(offer: &Offer) -> Say {
    let mut told = offer.told.iter().map(Told::say);
    match (told.next(), told.next()) {
        (Some(first), Some(second)) => say("fixes.two").say("first", first).say("second", second),
        (Some(first), None) => first,
        _ => say("fixes.none.else"),
    }
}

/// What the book of an offer is like: its spine, and room for further pages.
#[must_use]
pub fn gain(offer: &Offer) -> Say {
    let spine = offer.spine.map(|spine| spine.0);
    match offer.room {
        Room::Pages(pages) if pages > Pages(0) => {
            say("fixes.gain.room").band("spine", spine).put("pages", pages)
        }
        Room::Pages(_) if offer.verdict == Verdict::Fits => {
            say("fixes.gain.full").band("spine", spine)
        }
        _ => say("fixes.gain").band("spine", spine),
    }
}

/// Most pages on this paper and heaviest paper at this page count.
#[must_use]
pub fn turned_round(case: &Case) -> Vec<Say> {
    let inverse = case.advice.and_then(|advice| advice.inverse.as_ref());
    let unlimited = case.advice.is_some_and(|advice| advice.room == Room::Unlimited);
    let most = inverse.and_then(|inverse| inverse.most_pages).filter(|_| !unlimited);
    let heaviest = inverse.and_then(|inverse| inverse.heaviest.as_ref());
    most.map(|_| case.fill(say("fixes.most-pages"), &[("pages", "most_pages", 0)]))
        .into_iter()
        .chain(heaviest.map(|(paper, _)| {
            let told = say("fixes.heaviest").typed("paper", paper.clone());
            case.fill(told, &[("weight", "heaviest", 0)])
        }))
        .collect()
}
