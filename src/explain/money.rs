//! Every line of the cost explained: where its quantity comes from, and quantity × rate.

use super::Explanation;
use super::figures::build;
use crate::plan::{Item, Plan};
use crate::source::Source;
use crate::units::{Measure, Unit};
use crate::words::{Say, say};

/// One line of the cost: `figure` is `cost_` and the line's name.
pub(super) fn line(plan: &Plan, figure: &'static str) -> Explanation {
    let name = figure.trim_start_matches("cost_");
    let lines = plan.results.cost.item(name).map_or_else(Vec::new, |item| {
        quantity(plan, item).into_iter().chain([product(item)]).collect()
    });
    let doubt = lines.is_empty().then(|| say("explain.cost.none"));
    build(figure, lines, doubt, Source::Shop)
}

/// Quantity × rate, in numbers.
fn product(item: &Item) -> Say {
    say("explain.cost.product")
        .put("quantity", Measure::new(item.quantity, Unit::Quantity))
        .say("unit", say(format!("cost.unit.{}", item.id)))
        .put("rate", Measure::rate(item.rate))
        .put("amount", item.total)
}

/// Where a quantity comes from.
fn quantity(plan: &Plan, item: &Item) -> Option<Say> {
    let results = &plan.results;
    let (run, way) = (&results.run, results.layout.chosen());
    let needed = results.layout.needed.map(|needed| Measure::count(needed.sheets));
    Some(match (item.id, needed) {
        ("paper", Some(sheets)) => {
            let press = way?.press;
            say("explain.cost_paper.sheets")
                .put("sheets", sheets)
                .put("width", press.width)
                .put("height", press.height)
        }
        ("paper", None) => say("explain.cost_paper.flats")
            .put("width", results.trim.flat.width)
            .put("height", results.trim.flat.height),
        ("sheets", _) => say("explain.cost_sheets.thousand").put("sheets", needed?),
        ("click", _) => say("explain.cost_click.sides")
            .put("sheets", needed?)
            .put("sides", Measure::new(item.quantity, Unit::Count)),
        ("line", _) => say("explain.run_time.sum")
            .put("makeready", run.times.makeready)
            .put("running", run.times.running)
            .put("standing", run.times.standing)
            .put("best", run.times.best),
        ("wire", _) => say("explain.cost_wire.sets")
            .put("sets", Measure::count(run.quantities.fed))
            .put("mass", run.consumed.wire),
        ("carton", _) => {
            let cartons = results.packing.cartons?;
            say("explain.cost_carton.filled")
                .put("each", Measure::count(cartons.each))
                .put("cartons", Measure::count(cartons.cartons))
        }
        _ => return None,
    })
}

/// A copy's share of the whole.
pub(super) fn each(plan: &Plan) -> Explanation {
    let cost = &plan.results.cost;
    let line = say("explain.cost_each.share")
        .put("total", cost.total)
        .put("copies", plan.results.run.quantities.good)
        .put("each", Measure::rate(cost.each));
    build("cost_each", vec![line], None, Source::Shop)
}
