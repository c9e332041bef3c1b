//! The answer in five sentences, for an e-mail that a client can read: no limit of a machine, no rate,
//! no cost, and a price only by the shop's own rule.

use super::html::answer::paper;
use super::html::cost::money;
use super::html::run::copies;
use crate::job::{ImagesMovedBy, Job};
use crate::plan::{Plan, Verdict, price};
use crate::shop::Shop;
use crate::units::Pages;
use crate::view::Printer;
use crate::words::{Say, say};

/// The five sentences, one to a line.
#[must_use]
pub fn letter(job: &Job, shop: &Shop, plan: &Plan, printer: &Printer) -> String {
    let told =
        [verdict(job, plan), book(job, printer), feel(plan), send(job), priced(job, shop, plan)];
    told.map(|sentence| printer.text(&sentence)).join("\n")
}

/// Whether it can be made, by the book's name.
fn verdict(job: &Job, plan: &Plan) -> Say {
    let title = job.identity.title.trim();
    let book = match title {
        "" => say("letter.this-book"),
        title => say("letter.named").text("title", title),
    };
    let key = match plan.verdict {
        Verdict::Fits => "letter.fits",
        Verdict::Marginal => "letter.marginal",
        Verdict::Unlikely => "letter.unlikely",
        Verdict::DoesNotFit => "letter.no",
    };
    say(key).say("book", book)
}

/// What it is.
fn book(job: &Job, printer: &Printer) -> Say {
    let pages = job.sections.iter().map(|section| section.pages.get()).sum();
    let papers: Vec<String> =
        job.sections.iter().map(|section| printer.text(&paper(section))).collect();
    say("letter.book")
        .say("copies", copies(job.copies))
        .put("pages", Pages(pages))
        .put("width", job.size.width)
        .put("height", job.size.height)
        .text("papers", papers.join("; "))
}

/// How thick and how heavy.
fn feel(plan: &Plan) -> Say {
    let spine = plan.results.stack.closed.nominal.0;
    match plan.results.mass {
        Some(mass) => say("letter.feel").put("spine", spine).put("mass", mass.book.nominal),
        None => say("letter.thick").put("spine", spine),
    }
}

/// What to send, and who makes up for push-out: done twice or by nobody, it is wrong.
fn send(job: &Job) -> Say {
    let moved = say(match job.images {
        ImagesMovedBy::Shop => "letter.moved.shop",
        ImagesMovedBy::Designer => "letter.moved.designer",
        ImagesMovedBy::Nobody => "letter.moved.nobody",
    });
    let sentence = match job.bleed {
        Some(bleed) => say("letter.send.bleed").put("bleed", bleed),
        None => say("letter.send"),
    };
    sentence
        .put("width", job.size.width)
        .put("height", job.size.height)
        .put("safe", job.safe)
        .say("moved", moved)
}

/// The price by the shop's rule, of a book that can be made and whose whole cost is known; else that it
/// follows.
fn priced(job: &Job, shop: &Shop, plan: &Plan) -> Say {
    let cost = &plan.results.cost;
    let sure = plan.verdict == Verdict::Fits && !cost.incomplete;
    let rule = shop.rates.price.as_ref().filter(|_| sure).zip(job.copies);
    let Some((rule, copies)) = rule else { return say("letter.price.later") };
    let key = if rule.valid.is_empty() { "letter.price" } else { "letter.price.valid" };
    say(key)
        .count("copies", copies)
        .say("price", money(shop, price(rule, cost)))
        .text("valid", rule.valid.as_str())
}
