//! What the run costs, and the same book bound otherwise.

use super::Scene;
use crate::plan::{Answer, Cost, price};
use crate::units::{Measure, Money, Unit};
use crate::view::Reading;
use crate::words::{Say, say};
use maud::{Markup, html};

/// One line: the whole run and one copy.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    let cost = &scene.plan.results.cost;
    if cost.items().next().is_none() {
        return scene.word("cost.none");
    }
    scene.tell(
        &say("cost.summary")
            .say("total", money(scene, cost.total))
            .say("each", money(scene, cost.each)),
    )
}

/// The lines, the sum, and the price where the shop has a rule for it.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let cost = &scene.plan.results.cost;
    html! {
        div class="scroll" tabindex="0" role="region" aria-label=(scene.printer.word("region.cost")) {
            table {
                caption { (scene.tell(&say("cost.caption").text("currency", currency(scene)))) }
                thead { tr {
                    th scope="col" { (scene.word("cost.item")) }
                    th scope="col" { (scene.word("cost.quantity")) }
                    th scope="col" { (scene.word("cost.rate")) }
                    th scope="col" { (scene.word("cost.total")) }
                } }
                tbody {
                    @for item in cost.items() {
                        tr {
                            th scope="row" { (scene.word(&format!("cost.item.{}", item.id))) }
                            td {
                                (scene.printer.numbers.print(Measure::new(item.quantity, Unit::Number))) " "
                                (scene.word(&format!("cost.unit.{}", item.id)))
                            }
                            td { (amount(scene, item.rate)) }
                            td { (amount(scene, item.total)) }
                        }
                    }
                    tr class="sum" {
                        th scope="row" { (scene.word("cost.sum")) }
                        td {} td {}
                        td { (amount(scene, cost.total)) }
                    }
                }
            }
        }
        p { (scene.tell(&say("cost.each").say("each", money(scene, cost.each)))) }
        @if cost.incomplete { p { (scene.word("cost.incomplete")) } }
        @if let Some(told) = priced(scene, cost) { p { (scene.tell(&told)) } }
    }
}

/// The price by the shop's rule; nothing where it has none.
#[must_use]
pub fn priced(scene: &Scene, cost: &Cost) -> Option<Say> {
    let rule = scene.shop.rates.price.as_ref()?;
    let key = if rule.valid.is_empty() { "cost.price" } else { "cost.price.valid" };
    Some(say(key).say("price", money(scene, price(rule, cost))).text("valid", rule.valid.clone()))
}

fn currency(scene: &Scene) -> String {
    scene.shop.rates.currency.clone()
}

fn money(scene: &Scene, amount: Money) -> Say {
    say("cost.money").text("currency", currency(scene)).put("amount", amount)
}

/// An amount in a table whose caption names the currency.
fn amount(scene: &Scene, amount: Money) -> String {
    scene.printer.numbers.print(amount.into())
}

/// One line: what else is possible.
#[must_use]
pub fn bindings_summary(scene: &Scene) -> Markup {
    let possible = scene
        .plan
        .results
        .alternatives
        .iter()
        .filter(|row| row.answer == Answer::Fits && !row.chosen)
        .map(|row| scene.printer.word(&format!("binding.{}", row.id)))
        .collect::<Vec<_>>();
    if possible.is_empty() {
        return scene.word("binding.none");
    }
    scene.tell(&say("binding.summary").text("possible", possible.join(", ")))
}

/// Every way of binding, possible or not, and why. No limit of the line is named.
#[must_use]
pub fn bindings(scene: &Scene) -> Markup {
    html! {
        ul class="findings" {
            @for row in &scene.plan.results.alternatives {
                li {
                    strong { (scene.word(&format!("binding.{}", row.id))) } " "
                    (scene.word(&format!("binding.why.{}", row.why)))
                    @if row.lies_flat { " " (scene.word("binding.flat")) }
                    @if row.spine_text { " " (scene.word("binding.text")) }
                }
            }
        }
        @if scene.reading != Reading::Client { p { (scene.word("binding.source")) } }
    }
}
