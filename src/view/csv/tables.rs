//! The tables themselves: one function each, and which reading sees it.

use super::{Cell, Column, Table};
use crate::plan::{Leaf, distance_left};
use crate::units::{Copies, Measure, Money, Unit};
use crate::view::html::{Scene, run};
use crate::view::{Numbers, Printer, REGIONS, Reading};
use crate::words::Mark;
use crate::words::say;

/// A table, and the region it belongs to: whoever does not see the region does not get the table.
type Row = (&'static str, fn(&Scene) -> Table);

/// Every table, in the order of the page.
const TABLES: [Row; 8] = [
    ("decides", limits),
    ("inside", inside),
    ("stitches", stitches),
    ("run", components),
    ("run", stops),
    ("sheet", press_sheets),
    ("pack", postal_steps),
    ("cost", cost),
];

/// The tables that this reader may see and that have rows.
#[must_use]
pub fn tables(scene: &Scene) -> Vec<Table> {
    // Sentences in a cell have the same point as the numbers beside them.
    let numbers = Numbers { mark: Mark::Point, ..scene.printer.numbers };
    let scene = &Scene { printer: Printer { numbers, ..scene.printer }, ..*scene };
    let sees = |id: &str| {
        REGIONS.iter().any(|region| region.id == id && region.readings.contains(&scene.reading))
    };
    let seen = TABLES.iter().filter(|(region, _)| sees(region)).map(|(_, table)| table(scene));
    seen.filter(|table| !table.rows.is_empty()).collect()
}

/// The words of a key.
fn word(scene: &Scene, key: &str) -> String {
    scene.printer.word(key).to_owned()
}

fn text(scene: &Scene, key: &str) -> Column {
    Column::text(scene.printer.word(key))
}

fn value(scene: &Scene, key: &str, unit: Unit) -> Column {
    Column::value(scene.printer.word(key), unit)
}

fn band(scene: &Scene, key: &str, unit: Unit) -> Column {
    Column::band(scene.printer.word(key), unit)
}

fn count(number: u32) -> Cell {
    Cell::value(Measure::count(number))
}

fn said(scene: &Scene, key: &str) -> Cell {
    Cell::Text(word(scene, key))
}

/// Every limit of the line. Each has a unit of its own, in a column of its own.
fn limits(scene: &Scene) -> Table {
    let numbers = &scene.printer.numbers;
    let row = |limit: &crate::plan::LimitCheck| {
        let plain = |value| Cell::Value(Measure::new(value, limit.unit));
        let ends = [Some(limit.value.low), Some(limit.value.nominal), Some(limit.value.high)];
        let takes = [limit.range.least, limit.range.most, Some(limit.margin)];
        [said(scene, &format!("limit.{}", limit.id.name()))]
            .into_iter()
            .chain([Cell::Text(numbers.sign(limit.unit).to_owned())])
            .chain(ends.into_iter().chain(takes).map(|value| value.map_or(Cell::Empty, plain)))
            .chain([
                limit.room.pages().map_or(Cell::Empty, |pages| {
                    Cell::Value(Measure::new(pages as f64, Unit::Count))
                }),
                said(scene, &format!("limit.answer.{}", limit.answer.name())),
            ])
            .collect()
    };
    let book = |key| scene.printer.text(&say(key).text("what", word(scene, "decides.book")));
    Table {
        title: word(scene, "decides.table"),
        columns: vec![
            text(scene, "decides.limit"),
            text(scene, "csv.unit"),
            Column::text(&book("csv.least")),
            Column::text(&book("csv.expected")),
            Column::text(&book("csv.most")),
            text(scene, "csv.takes-least"),
            text(scene, "csv.takes-most"),
            text(scene, "csv.margin"),
            text(scene, "csv.room-pages"),
            text(scene, "decides.answer"),
        ],
        rows: scene.plan.results.limits.iter().map(row).collect(),
    }
}

/// Push-out, length and page edge of every sheet.
#[must_use]
pub fn inside(scene: &Scene) -> Table {
    let art = scene.plan.results.margins.art.distance;
    let row = |leaf: &Leaf| {
        let pages = leaf.folios.all().map(|folio| Cell::Text(scene.folio(folio)));
        [count(leaf.place)]
            .into_iter()
            .chain(pages)
            .chain([
                Cell::band(leaf.push_out),
                Cell::value(leaf.length),
                Cell::value(leaf.image_shift),
                Cell::value(distance_left(scene.job, leaf, art)),
            ])
            .collect()
    };
    let side =
        |side, key| Column::text(&scene.printer.text(&say(key).text("side", word(scene, side))));
    let left = scene.printer.text(&say("inside.left").put("art", art));
    Table {
        title: word(scene, "inside.table"),
        columns: vec![
            text(scene, "inside.sheet"),
            side("inside.outer", "csv.left-page"),
            side("inside.outer", "csv.right-page"),
            side("inside.inner", "csv.left-page"),
            side("inside.inner", "csv.right-page"),
            band(scene, "inside.push-out", Unit::Length),
            value(scene, "inside.length", Unit::Length),
            value(scene, "inside.shift", Unit::Length),
            Column::value(&left, Unit::Length),
        ],
        rows: scene.plan.results.leaves.iter().map(row).collect(),
    }
}

fn stitches(scene: &Scene) -> Table {
    let rows = scene.plan.results.stitches.placement.stitches.iter().map(|stitch| {
        vec![
            count(stitch.copy + 1),
            Cell::value(stitch.from_head),
            Cell::value(stitch.from_foot),
            Cell::value(stitch.from_lay),
            count(stitch.pass),
            count(stitch.head),
        ]
    });
    Table {
        title: word(scene, "stitches.table"),
        columns: vec![
            text(scene, "stitches.copy"),
            value(scene, "stitches.from-head", Unit::Length),
            value(scene, "stitches.from-foot", Unit::Length),
            value(scene, "stitches.from-stop", Unit::Length),
            text(scene, "stitches.pass"),
            text(scene, "stitches.head"),
        ],
        rows: rows.collect(),
    }
}

/// A count of the whole run; nothing where nobody has said how many copies.
fn of_run(scene: &Scene, number: u32) -> Cell {
    scene.job.copies.map_or(Cell::Empty, |_| count(number))
}

fn components(scene: &Scene) -> Table {
    let rows = scene.plan.results.run.quantities.components.iter().map(|part| {
        vec![
            said(scene, run::role(scene.job, part.section)),
            count(part.sheets),
            Cell::Value(Measure::caliper(part.leaf.0)),
            Cell::Value(Measure::caliper(part.leaf.1)),
            of_run(scene, part.printed),
            of_run(scene, part.fed),
            part.supplied.map_or(Cell::Empty, count),
            Cell::maybe(part.makes),
        ]
    });
    Table {
        title: word(scene, "run.components"),
        columns: vec![
            text(scene, "run.component"),
            text(scene, "run.per-set"),
            value(scene, "csv.leaf", Unit::Caliper),
            value(scene, "csv.two-leaves", Unit::Caliper),
            text(scene, "run.printed"),
            text(scene, "run.fed"),
            text(scene, "run.supplied"),
            text(scene, "run.makes"),
        ],
        rows: rows.collect(),
    }
}

fn stops(scene: &Scene) -> Table {
    let rows = scene.plan.results.run.stops().map(|stop| {
        vec![
            said(scene, &format!("supply.{}", stop.supply.name())),
            count(stop.every),
            of_run(scene, stop.times),
            Cell::value(stop.first),
            Cell::value(stop.each),
            said(scene, if stop.running { "csv.running" } else { "csv.standing" }),
        ]
    });
    Table {
        title: word(scene, "csv.stops"),
        columns: vec![
            text(scene, "csv.supply"),
            text(scene, "csv.every"),
            text(scene, "csv.times"),
            value(scene, "csv.first", Unit::Time),
            value(scene, "csv.each", Unit::Time),
            text(scene, "csv.line"),
        ],
        rows: rows.collect(),
    }
}

/// Every press sheet on hand, best first, those that cannot be used with the reason.
fn press_sheets(scene: &Scene) -> Table {
    let layout = &scene.plan.results.layout;
    let rows = layout.ranked().map(|way| {
        let name = scene.shop.press_sheets.get(way.sheet).map_or("", |sheet| sheet.name.as_str());
        // What a sheet that cannot be used would hold is no figure to reckon with.
        let usable = way.refusal.is_none();
        let where_usable = |cell: Cell| if usable { cell } else { Cell::Empty };
        let copies = way.flats().saturating_mul(scene.job.copies_up);
        vec![
            Cell::Text(name.to_owned()),
            said(scene, way.route.key()),
            where_usable(Cell::value(Copies(copies))),
            where_usable(Cell::Value(Measure::share(way.used))),
            where_usable(Cell::value(way.offcut.width)),
            where_usable(Cell::value(way.offcut.height)),
            where_usable(Cell::value(way.face_cut)),
            where_usable(count(way.cuts)),
            Cell::Text(scene.printer.text(&crate::explain::why(way))),
        ]
    });
    Table {
        title: word(scene, "sheet.table"),
        columns: vec![
            text(scene, "csv.press-sheet"),
            text(scene, "csv.route"),
            text(scene, "csv.copies-on-it"),
            value(scene, "sheet.used", Unit::Share),
            value(scene, "csv.offcut-width", Unit::Length),
            value(scene, "csv.offcut-height", Unit::Length),
            value(scene, "csv.face-cut", Unit::Length),
            text(scene, "csv.cuts"),
            text(scene, "csv.why"),
        ],
        rows: rows.collect(),
    }
}

/// The postal table; what the shop pays is not for a client.
fn postal_steps(scene: &Scene) -> Table {
    let posted = scene.plan.results.packing.posted.as_ref();
    let posted = posted.filter(|_| scene.reading != Reading::Client);
    let steps = posted.map(|posted| posted.steps.as_slice()).unwrap_or_default();
    let rows = scene.shop.post.iter().zip(steps).map(|(row, step)| {
        vec![
            Cell::Text(row.name.to_string()),
            said(scene, &format!("limit.answer.{}", step.answer.name())),
            Cell::maybe(step.spare),
            Cell::maybe(row.price.map(Money)),
        ]
    });
    let postage = currency(scene, "pack.postage");
    Table {
        title: word(scene, "pack.table"),
        columns: vec![
            text(scene, "pack.step"),
            text(scene, "decides.answer"),
            value(scene, "pack.spare", Unit::Mass),
            postage,
        ],
        rows: rows.collect(),
    }
}

fn cost(scene: &Scene) -> Table {
    let cost = &scene.plan.results.cost;
    let mut rows: Vec<Vec<Cell>> = cost
        .items()
        .map(|item| {
            vec![
                said(scene, &format!("cost.item.{}", item.id)),
                Cell::Value(item.amount()),
                match item.by_mass() {
                    true => Cell::Text(scene.printer.numbers.sign(Unit::Kilos).to_owned()),
                    false => said(scene, &format!("cost.unit.{}", item.id)),
                },
                Cell::Value(item.price()),
                Cell::value(item.total),
            ]
        })
        .collect();
    if !rows.is_empty() {
        let sum = Cell::value(cost.total);
        rows.push(vec![said(scene, "cost.sum"), Cell::Empty, Cell::Empty, Cell::Empty, sum]);
    }
    Table {
        title: word(scene, "region.cost"),
        columns: vec![
            text(scene, "cost.item"),
            text(scene, "cost.quantity"),
            text(scene, "csv.unit"),
            currency(scene, "cost.rate"),
            currency(scene, "cost.total"),
        ],
        rows,
    }
}

/// A column of money, with the currency where the shop says one.
fn currency(scene: &Scene, key: &str) -> Column {
    let name = scene.printer.word(key);
    match scene.shop.rates.currency.as_str() {
        "" => Column::value(name, Unit::Money),
        currency => Column::value(&format!("{name} ({currency})"), Unit::Money),
    }
}
