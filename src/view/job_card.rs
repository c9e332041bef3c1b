//! What a job card says beside the rows to set and to look at, for the page and for print.

use super::html::answer::paper;
use super::html::run::{copies, fed, over, stops_told};
use super::html::{Scene, sheet};
use crate::explain::{Case, explain, finding};
use crate::job::{ImagesMovedBy, Spine};
use crate::plan::{Trust, Weight};
use crate::units::{Measure, Pages};
use crate::words::{Say, say};

/// What the rules found that a card has room for; the rest is counted.
const MOST_FOUND: usize = 5;

/// The book in one sentence.
#[must_use]
pub fn book(scene: &Scene) -> Say {
    let job = scene.job;
    let pages: u32 = job.sections.iter().map(|section| section.pages.get()).sum();
    say("card.book")
        .say("copies", copies(job.copies))
        .put("pages", Pages(pages))
        .put("width", job.size.width)
        .put("height", job.size.height)
        .say(
            "spine",
            say(match job.spine {
                Spine::Round => "field.spine.round",
                Spine::Square => "field.spine.square",
            }),
        )
        .say(
            "by",
            say(match job.images {
                ImagesMovedBy::Shop => "field.images.shop",
                ImagesMovedBy::Designer => "field.images.designer",
                ImagesMovedBy::Nobody => "field.images.nobody",
            }),
        )
}

/// For whom, from when, by whom and on which line: name and text, as typed.
#[must_use]
pub fn identity(scene: &Scene) -> Vec<(String, String)> {
    let identity = &scene.job.identity;
    let line = scene.shop.lines.get(scene.job.line).map(|line| scene.printer.typed(&line.name));
    let told = [
        ("customer", identity.customer.clone()),
        ("date", identity.date.clone()),
        ("by", identity.by.clone()),
        ("line", line.unwrap_or_default()),
    ];
    let told = told.into_iter().filter(|(_, text)| !text.is_empty());
    told.map(|(field, text)| (scene.printer.word(&format!("field.{field}.label")).to_owned(), text))
        .collect()
}

/// What is worth knowing, and how much more there is. The gravest is the verdict's reason, where there
/// is one against the book.
#[must_use]
pub fn found(scene: &Scene) -> (Vec<Say>, Option<Say>) {
    let plan = scene.plan;
    let reason_told = plan.findings.first().is_some_and(|worst| worst.weight >= Weight::Marginal);
    let told = plan.findings.iter().skip(usize::from(reason_told));
    let told: Vec<_> = told.filter(|finding| finding.weight >= Weight::Warning).collect();
    let more = told.len().saturating_sub(MOST_FOUND) as u32;
    let case = scene.case();
    let said = told.iter().take(MOST_FOUND).map(|one| finding(&case, one, one.say())).collect();
    (said, (more > 0).then(|| say("card.more").count("count", Measure::count(more))))
}

/// What is fed, on which sheet, and when somebody has to be there.
#[must_use]
pub fn run(scene: &Scene) -> Vec<Say> {
    let case = scene.case();
    let sheet = sheet::result(scene.job, scene.shop, scene.plan);
    let told = [Some(fed(&case)), over(&case), Some(sheet)].into_iter().flatten();
    told.chain(stops_told(&case)).collect()
}

/// Each paper with the thickness that was reckoned with and where that comes from; the fold.
#[must_use]
pub fn rests_on(scene: &Scene) -> Vec<Say> {
    let case = scene.case();
    let papers = scene.job.sections.iter().enumerate().map(|(index, section)| {
        let at = index + 1;
        let source = explain(&Case { at, ..case }, "leaf_one").map(|told| told.source);
        let told = say("card.paper").say("paper", paper(section));
        let told =
            source.into_iter().fold(told, |told, source| told.say("source", Say::source(source)));
        case.fill(told, &[("leaf", "leaf_one", at)])
    });
    let fold = say(match scene.plan.results.fold.trust {
        Trust::Good | Trust::Weak => "card.fold.measured",
        Trust::NotMeasured | Trust::Refused => "card.fold.calculated",
    });
    let fold = fold.say("source", Say::source(scene.plan.results.fold.source));
    papers.chain([fold]).collect()
}

/// The shop whose figures these are, and what it says of them.
#[must_use]
pub fn shop(scene: &Scene) -> String {
    let said = [&scene.shop.name, &scene.shop.note].map(|text| scene.printer.named(text.trim()));
    said.into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(": ")
}
