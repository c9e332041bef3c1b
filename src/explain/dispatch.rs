//! Mass, cartons, post, and what it costs.

use super::row::{Case, Figure, copies, count, figure, mass, masses, money, or_endless};
use super::row::{rate, share, term};
use super::stitching::as_shop;
use crate::advise::CostSteps;
use crate::plan::{AtCopies, Cartons, Cost, price};
use crate::shop::PriceRule;
use crate::units::Gram;
use crate::words::{Say, Slot, say};

const WEIGHT: &str = "explain.doubt.weight";

pub(super) static ROWS: &[Figure] = &[
    // Mass and cartons.
    figure("copy_mass", "pack.copy", |c| masses(c.plan.results.packing.copy?)).doubt(WEIGHT),
    term("copy_wire", |c| mass(c.plan.results.stitches.wire.copy)),
    term("copy_high", |c| or_endless(c.plan.results.packing.copy.and_then(|copy| mass(copy.high)))),
    figure("copy_most", "pack.copy", |c| mass(c.plan.results.packing.copy?.high)).doubt(WEIGHT),
    figure("run_mass", "pack.run", |c| masses(c.plan.results.packing.run?)).doubt(WEIGHT),
    term("carton_most", |c| or_endless(c.shop.carton.mass_most.and_then(mass))),
    term("tare", |c| mass(c.shop.carton.tare)),
    term("by_mass", |c| or_endless(cartons(c)?.by_mass.and_then(count))),
    term("by_size", |c| or_endless(cartons(c)?.by_size.and_then(count))),
    figure("carton_copies", "pack.each", |c| count(cartons(c)?.each))
        .told(|_, lines| {
            lines.push(say("explain.carton_copies.mass"));
            lines.push(say("explain.carton_copies.size"));
            lines.push(say("explain.carton_copies"));
        })
        .shop()
        .kept(),
    figure("cartons", "pack.boxes", |c| count(cartons(c)?.cartons?)),
    figure("carton_last", "pack.last", |c| count(cartons(c)?.last?)),
    // A carton is filled as far as it may be: that is the shop's own limit.
    figure("carton_full", "pack.full", |c| {
        let copy = c.plan.results.packing.copy?;
        masses(copy.times(f64::from(cartons(c)?.each)).shifted(c.shop.carton.tare))
    })
    .doubt(WEIGHT)
    .maker(),
    figure("carton_limit", "explain.name.carton_limit", |c| mass(c.shop.carton.mass_most?))
        .told(as_shop)
        .shop(),
    // Post.
    term("wrapper", |c| mass(c.job.wrapper)),
    figure("posted_mass", "explain.name.posted_mass", |c| {
        masses(c.plan.results.packing.posted.as_ref()?.mass)
    })
    .doubt(WEIGHT),
    term("posted_high", |c| mass(c.plan.results.packing.posted.as_ref()?.mass.high)),
    term("step_most", |c| mass(Gram(c.shop.post.get(c.index())?.mass_most?))),
    figure("post_spare", "pack.spare", |c| {
        mass(c.plan.results.packing.posted.as_ref()?.steps.get(c.index())?.spare?)
    })
    .shop()
    .rows(|c| {
        let name = c.shop.post.get(c.index()).map_or("", |step| &*step.name);
        say("explain.row.named").typed("name", name)
    }),
    // Cost.
    figure("item_quantity", "cost.quantity", |c| Some(Slot::Value(c.item()?.amount())))
        .told(|c, lines| {
            let id = c.item().map_or("", |item| item.id);
            let flats = id == "paper" && c.plan.results.layout.needed.is_none();
            lines.push(match flats {
                true => say("explain.item.flats"),
                false => say(format!("explain.item.{id}")),
            });
        })
        .rows(item),
    term("item_rate", |c| Some(Slot::Value(c.item()?.price()))),
    figure("item_total", "cost.total", |c| money(c.item()?.total)).shop().rows(item),
    figure("cost_total", "cost.sum", |c| money(cost(c)?.total))
        .told(|c, lines| {
            for item in cost(c).into_iter().flat_map(Cost::items) {
                lines.push(
                    say("explain.cost_total.item")
                        .say("item", say(format!("cost.item.{}", item.id)))
                        .put("amount", item.total),
                );
            }
            lines.push(say("explain.cost_total"));
        })
        .shop(),
    figure("cost_each", "explain.name.cost_each", |c| rate(cost(c)?.each)).shop(),
    // What a little more costs.
    term("more", |c| copies(steps(c)?.more)),
    figure("step_sheet", "explain.name.step_sheet", |c| money(steps(c)?.sheet?.total)).shop(),
    figure("step_sheet_each", "explain.name.step_sheet", |c| rate(steps(c)?.sheet?.each)).shop(),
    figure("step_copies", "explain.name.step_copies", |c| money(steps(c)?.copies.total)).shop(),
    figure("step_further", "explain.name.step_further", |c| {
        let steps = steps(c)?;
        rate(steps.copies.total / steps.more.as_f64().max(1.0))
    })
    .shop(),
    figure("curve_total", "cost.sum", |c| money(curve(c)?.total)).shop().rows(at_copies),
    figure("curve_each", "cost.each", |c| rate(curve(c)?.each)).shop().rows(at_copies),
    term("curve_copies", |c| copies(curve(c)?.copies)),
    figure("price", "explain.name.price", |c| money(price(rule(c)?, cost(c)?)))
        .told(|c, lines| {
            let round = rule(c).is_some_and(|rule| rule.round.is_some());
            lines.push(say(if round { "explain.price.rounded" } else { "explain.price" }));
        })
        .shop()
        .kept(),
    term("markup", |c| share(rule(c)?.markup)),
    term("price_least", |c| money(rule(c)?.least)),
    term("price_step", |c| money(rule(c)?.round?)),
];

fn cartons<'a>(case: &Case<'a>) -> Option<&'a Cartons> {
    case.plan.results.packing.cartons.as_ref()
}

fn cost<'a>(case: &Case<'a>) -> Option<&'a Cost> {
    case.run().map(|_| &case.plan.results.cost)
}

fn rule<'a>(case: &Case<'a>) -> Option<&'a PriceRule> {
    case.shop.rates.price.as_ref()
}

fn steps<'a>(case: &Case<'a>) -> Option<&'a CostSteps> {
    case.advice?.cost.as_ref()
}

fn curve<'a>(case: &Case<'a>) -> Option<&'a AtCopies> {
    steps(case)?.curve.get(case.index())
}

fn at_copies(case: &Case) -> Say {
    let copies = curve(case).map(|at| at.copies).unwrap_or_default();
    say("entry.copies.echo").count("n", copies)
}

fn item(case: &Case) -> Say {
    say(format!("cost.item.{}", case.item().map_or("job", |item| item.id)))
}
