//! The plan as plain text, for a terminal.

use crate::explain::{FIGURES, explain};
use crate::job::Job;
use crate::plan::{Answer, Plan, Verdict};
use crate::shop::Shop;
use crate::units::{Measure, Mm};
use crate::view::Printer;
use crate::words::say;

/// The plan for a person to read, line by line.
#[must_use]
pub fn text(job: &Job, shop: &Shop, plan: &Plan, printer: &Printer) -> String {
    let numbers = &printer.numbers;
    let results = &plan.results;
    let mut lines = vec![];
    let verdict = match plan.verdict {
        Verdict::Fits => "answer.fits",
        Verdict::Marginal => "answer.marginal",
        Verdict::DoesNotFit => "answer.no",
    };
    let line = shop.lines.get(job.line).map(|line| line.name.to_string()).unwrap_or_default();
    lines.push(format!("{} [{line}]", printer.word(verdict)));
    for (id, _) in &FIGURES {
        if let Some(told) = explain(job, plan, id) {
            lines.push(format!("\n{}", printer.text(&told.what)));
            lines.extend(told.lines.iter().map(|line| format!("  {}", printer.text(line))));
        }
    }
    lines.push(format!("\n{}", printer.word("region.decides")));
    for limit in &results.limits {
        let answer = match limit.answer {
            Answer::Fits => "limit.answer.fits",
            Answer::Marginal => "limit.answer.marginal",
            Answer::DoesNotFit => "limit.answer.no",
        };
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
    lines.push(format!("\n{}", printer.word("cautions.dummy")));
    lines.join("\n")
}
