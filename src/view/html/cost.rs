//! What the run costs, what a little more costs, and a copy at other numbers of copies.

use super::Scene;
use crate::advise::CostSteps;
use crate::explain::Case;
use crate::job::Job;
use crate::plan::{Cost, Item, Plan, Verdict, price};
use crate::shop::Shop;
use crate::units::{Copies, Measure, Money};
use crate::words::{Say, say};
use maud::{Markup, html};

/// One line: the whole run and one copy.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    scene.tell(&result(scene.job, scene.shop, &scene.plan.results.cost))
}

fn result(job: &Job, shop: &Shop, cost: &Cost) -> Say {
    if job.copies.is_none() {
        return say("run.unknown");
    }
    if cost.items().next().is_none() {
        return say("cost.none");
    }
    say("cost.summary").say("total", money(shop, cost.total)).say("each", rate(shop, cost.each))
}

/// The lines, the sum, the price where the shop has a rule for it, and what a little more costs.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let (shop, cost) = (scene.shop, &scene.plan.results.cost);
    if scene.job.copies.is_none() {
        return html! { p { (summary(scene)) } };
    }
    let currency = shop.rates.currency.as_str();
    html! {
        div class="scroll" tabindex="0" role="region" aria-label=(scene.printer.word("region.cost")) {
            table {
                @if !currency.is_empty() {
                    caption { (scene.tell(&say("cost.caption").text("currency", currency))) }
                }
                thead { tr {
                    th scope="col" { (scene.word("cost.item")) }
                    th scope="col" { (scene.word("cost.quantity")) }
                    th scope="col" { (scene.word("cost.rate")) }
                    th scope="col" { (scene.word("cost.total")) }
                } }
                tbody {
                    @for (at, item) in cost.lines.iter().enumerate().filter_map(numbered) {
                        tr {
                            th scope="row" { (scene.word(&format!("cost.item.{}", item.id))) }
                            td { (scene.fill(unit(item), &[("quantity", "item_quantity", at)])) }
                            td { (scene.printer.numbers.print(item.price())) }
                            td { (scene.figure("item_total", at)) }
                        }
                    }
                    tr class="sum" {
                        th scope="row" { (scene.word("cost.sum")) }
                        td {} td {}
                        td { (scene.figure("cost_total", 0)) }
                    }
                    tr {
                        th scope="row" { (scene.word("cost.each")) }
                        td {} td {}
                        td { (scene.figure("cost_each", 0)) }
                    }
                }
            }
        }
        @for told in remarks(shop, cost, Some(&scene.case())) { p { (scene.tell(&told)) } }
        @if let Some(steps) = &scene.advice.cost {
            h3 { (scene.word("cost.more")) }
            @for told in steps_told(shop, scene.plan, steps, Some(&scene.case())) { p { (scene.tell(&told)) } }
            (chart(scene, steps))
        }
    }
}

/// Lines, sum, a copy and the price, line by line.
#[must_use]
pub fn told(job: &Job, shop: &Shop, plan: &Plan) -> Vec<Say> {
    let cost = &plan.results.cost;
    let line = |item: &Item| {
        say("cost.line")
            .say("item", say(format!("cost.item.{}", item.id)))
            .say("quantity", quantity(item))
            .put("rate", item.price())
            .say("amount", money(shop, item.total))
    };
    let lines: Vec<Say> = cost.items().map(line).collect();
    let after = if lines.is_empty() { Vec::new() } else { remarks(shop, cost, None) };
    lines.into_iter().chain([result(job, shop, cost)]).chain(after).collect()
}

/// What four pages and some copies more cost; with a case, as figures to be asked about.
#[must_use]
pub fn steps_told(shop: &Shop, plan: &Plan, steps: &CostSteps, case: Option<&Case>) -> Vec<Say> {
    let amount = |id, amount| asked(shop, case, id, amount);
    let sheet = steps.sheet.map(|step| {
        say("cost.step.sheet")
            .say("total", amount("step_sheet", step.total.into()))
            .say("each", amount("step_sheet_each", Measure::rate(step.each)))
    });
    let copies = say("cost.step.copies")
        .put("copies", steps.more)
        .say("total", amount("step_copies", steps.copies.total.into()))
        .say("further", amount("step_further", Measure::rate(steps.further())));
    let then = steps.sheet.and_then(|step| then(plan.verdict, step.verdict));
    sheet.into_iter().chain(then).chain([copies]).collect()
}

/// An amount in the shop's currency; with a case, as a figure to be asked about.
fn asked(shop: &Shop, case: Option<&Case>, id: &'static str, amount: Measure) -> Say {
    match case {
        Some(case) => case.fill(plain(shop), &[("amount", id, 0)]),
        None => in_currency(shop, amount),
    }
}

/// A line of the cost with its row from 1.
fn numbered((index, line): (usize, &Option<Item>)) -> Option<(usize, &Item)> {
    Some((index + 1, line.as_ref()?))
}

/// What the line says of the larger book, where it says worse than now.
fn then(now: Verdict, then: Verdict) -> Option<Say> {
    match then {
        _ if then <= now => None,
        Verdict::Fits => None,
        Verdict::Marginal => Some(say("cost.step.marginal")),
        Verdict::Unlikely => Some(say("cost.step.unlikely")),
        Verdict::DoesNotFit => Some(say("cost.step.no")),
    }
}

/// A copy against the number of copies, drawn, and the same in figures.
fn chart(scene: &Scene, steps: &CostSteps) -> Markup {
    let own = scene.plan.results.run.quantities.good;
    let label = |key: &str| scene.printer.word(key);
    html! {
        (scene.drawn("unit-cost", None))
        details class="refused" id="cost-curve" {
            summary { (scene.word("cost.curve.figures")) }
            div class="scroll" tabindex="0" role="region" aria-label=(label("cost.curve.figures")) {
                table {
                    thead { tr {
                        th scope="col" { (label("field.copies.label")) }
                        th scope="col" { (label("cost.sum")) }
                        th scope="col" { (label("cost.each")) }
                    } }
                    tbody {
                        @for (row, at) in steps.curve.iter().enumerate().filter(|(_, at)| at.ordered) {
                            tr class=[(at.copies == own).then_some("chosen")] {
                                th scope="row" { (copies(scene, at.copies)) }
                                @for id in ["curve_total", "curve_each"] {
                                    td { (scene.figure(id, row + 1)) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn copies(scene: &Scene, copies: Copies) -> String {
    scene.printer.numbers.print(copies.into())
}

/// That something is missing, what currency it is in, and the price by the shop's rule.
fn remarks(shop: &Shop, cost: &Cost, case: Option<&Case>) -> Vec<Say> {
    let missing = cost.incomplete.then(|| say("cost.incomplete"));
    let bare = shop.rates.currency.is_empty().then(|| say("cost.no-currency"));
    [missing, bare, priced(shop, cost, case)].into_iter().flatten().collect()
}

/// The price by the shop's rule; nothing where it has none.
#[must_use]
pub fn priced(shop: &Shop, cost: &Cost, case: Option<&Case>) -> Option<Say> {
    let rule = shop.rates.price.as_ref()?;
    let key = if rule.valid.is_empty() { "cost.price" } else { "cost.price.valid" };
    Some(
        say(key)
            .say("price", asked(shop, case, "price", price(rule, cost).into()))
            .text("valid", rule.valid.as_str()),
    )
}

fn quantity(item: &Item) -> Say {
    unit(item).put("quantity", item.amount())
}

fn unit(item: &Item) -> Say {
    if item.by_mass() {
        return say("cost.mass");
    }
    say("cost.amount").say("unit", say(format!("cost.unit.{}", item.id)))
}

/// An amount in the shop's currency.
#[must_use]
pub fn money(shop: &Shop, amount: Money) -> Say {
    in_currency(shop, amount.into())
}

/// What one of something costs, in the shop's currency.
#[must_use]
pub fn rate(shop: &Shop, rate: Money) -> Say {
    in_currency(shop, Measure::rate(rate))
}

/// A plain number, with the currency where the shop says one.
fn plain(shop: &Shop) -> Say {
    match shop.rates.currency.as_str() {
        "" => say("cost.plain"),
        currency => say("cost.money").text("currency", currency),
    }
}

fn in_currency(shop: &Shop, amount: Measure) -> Say {
    plain(shop).put("amount", amount)
}
