//! Versions of a book beside each other, differences marked, and a sentence to read aloud.

use super::Scene;
use super::cost::money;
use super::run::copies;
use crate::draft::Draft;
use crate::job::Job;
use crate::plan::{Plan, Verdict, price};
use crate::units::{Band, Measure, Pages};
use crate::view::Reading;
use crate::words::{Say, say};
use maud::{Markup, html};

/// Versions beside the one in the form.
pub const MOST_KEPT: usize = 2;
/// What they are called, the one in the form last.
const NAMES: [&str; MOST_KEPT + 1] = ["A", "B", "C"];

/// A version of the book that somebody has kept.
#[derive(Debug, Clone, PartialEq)]
pub struct Version {
    /// As it was typed.
    pub draft: Draft,
    /// Planned in the present shop; nothing where it cannot be read there.
    pub planned: Option<Box<(Job, Plan)>>,
}

/// One of the versions that stand beside each other.
struct Column<'a> {
    name: &'static str,
    planned: Option<(&'a Job, &'a Plan)>,
    /// Its place among those that were kept.
    kept: Option<usize>,
    /// It stands in the form.
    here: bool,
}

/// Those that were kept, and the one in the form unless it is among them.
fn columns<'a>(scene: &Scene<'a>) -> Vec<Column<'a>> {
    let mut names = NAMES.into_iter();
    let mut found: Vec<Column> = Vec::new();
    for (place, version) in scene.versions.iter().enumerate() {
        let planned = version.planned.as_deref().map(|(job, plan)| (job, plan));
        let here = planned.is_some_and(|(job, _)| job == scene.job);
        let name = names.next().unwrap_or_default();
        found.push(Column { name, planned, kept: Some(place), here });
    }
    if let Some(name) = names.next().filter(|_| !found.iter().any(|column| column.here)) {
        let planned = Some((scene.job, scene.plan));
        found.push(Column { name, planned, kept: None, here: true });
    }
    found
}

/// What keeps the version in the form, or says under which name it is kept.
#[must_use]
pub fn keeper(scene: &Scene) -> Markup {
    let columns = columns(scene);
    let here = columns.iter().find(|column| column.here && column.kept.is_some());
    let told = match here {
        Some(column) => say("compare.kept").text("name", column.name),
        None if scene.versions.len() < MOST_KEPT => say("compare.keep"),
        None => say("compare.full"),
    };
    let off = here.is_some() || scene.versions.len() >= MOST_KEPT;
    html! {
        p class="keep" {
            button type="button" id="keep-version" data-act="version-keep"
                aria-disabled=[off.then_some("true")] { (scene.tell(&told)) }
        }
    }
}

/// One line: how the last differs from the first.
#[must_use]
pub fn summary(scene: &Scene) -> Markup {
    let columns = columns(scene);
    match (columns.as_slice(), scene.versions.is_empty()) {
        (_, true) => scene.word("compare.none"),
        ([first, .., last], _) => scene.tell(&aloud(scene, first, last)),
        _ => scene.word("compare.one"),
    }
}

/// A sentence for each version where there are several, then all of them in a table.
#[must_use]
pub fn body(scene: &Scene) -> Markup {
    let columns = columns(scene);
    let [first, others @ ..] = columns.as_slice() else { return html! {} };
    if scene.versions.is_empty() {
        return html! { p { (scene.word("compare.none")) } };
    }
    html! {
        // Of two versions the line above says it already.
        @if others.len() > 1 {
            ul class="aloud" {
                @for other in others { li { (scene.tell(&aloud(scene, first, other))) } }
            }
        }
        table class="compare" {
            caption { (scene.tell(&say("compare.caption").text("base", first.name))) }
            thead { tr {
                td {}
                @for column in &columns { th scope="col" { (head(scene, column)) } }
            } }
            tbody {
                @for row in rows(scene.reading) { (line(scene, row, &columns)) }
            }
        }
    }
}

fn head(scene: &Scene, column: &Column) -> Markup {
    let title = |key: &'static str| scene.printer.text(&say(key).text("name", column.name));
    html! {
        span class="letter" { (column.name) }
        @if column.here { " " span class="here" { (scene.word("compare.here")) } }
        @if let Some((job, _)) = column.planned {
            span class="book" { (scene.tell(&described(job))) }
        }
        @if let Some(place) = column.kept {
            span class="acts" {
                @if !column.here {
                    button type="button" id={ "take-version-" (place) } data-act="version-take"
                        data-value=(place) aria-label=(title("compare.take.name")) {
                        (scene.word("compare.take"))
                    }
                }
                button type="button" id={ "drop-version-" (place) } data-act="version-drop"
                    data-value=(place) aria-label=(title("compare.drop.name")) {
                    (scene.word("compare.drop"))
                }
            }
        }
    }
}

/// Pages, size, papers, copies.
fn described(job: &Job) -> Say {
    let mut papers: Vec<&str> = Vec::new();
    for section in &job.sections {
        let stock = &section.stock;
        let name = if stock.name.is_empty() { &stock.typed } else { &stock.name };
        if !papers.contains(&name.as_str()) {
            papers.push(name);
        }
    }
    say("compare.book")
        .put("pages", Pages(job.sections.iter().map(|section| section.pages.get()).sum()))
        .put("width", job.size.width)
        .put("height", job.size.height)
        .text("papers", papers.join(", "))
        .say("copies", copies(job.copies))
}

/// What stands in one row for one version.
enum Cell {
    /// Nothing is known.
    Unknown,
    /// Words, which are the same or others.
    Words(Say),
    /// A figure, with its doubt, and how it is printed.
    Figure(Band<f64>, Measure),
    /// An amount of the shop's currency.
    Amount(crate::units::Money),
}

/// One row: its name, what stands in it, and the words for less and for more.
type Row = (&'static str, fn(&Scene, &Job, &Plan) -> Cell, &'static str, &'static str);

const ROWS: [Row; 9] = [
    ("compare.verdict", verdict, "", ""),
    ("compare.spine", spine, "compare.thinner", "compare.thicker"),
    ("compare.push-out", push_out, "compare.less", "compare.more"),
    ("compare.mass", mass, "compare.lighter", "compare.heavier"),
    ("compare.post", post, "", ""),
    ("compare.open", open, "", ""),
    ("compare.sheets", sheets, "compare.fewer", "compare.more"),
    ("compare.time", time, "compare.shorter", "compare.longer"),
    ("compare.cost", cost, "compare.cheaper", "compare.dearer"),
];
const PRICE: Row = ("compare.price", asked, "compare.cheaper", "compare.dearer");
/// Of the rows the last so many are for makers.
const FOR_MAKERS: usize = 2;

/// The rows this reader sees: time and cost are for makers, the price by the shop's rule for all.
fn rows(reading: Reading) -> impl Iterator<Item = &'static Row> {
    let hidden = if reading == Reading::Client { FOR_MAKERS } else { 0 };
    ROWS.iter().take(ROWS.len() - hidden).chain([&PRICE])
}

fn figure<T: Copy + Into<Measure>>(band: Band<T>) -> Cell {
    Cell::Figure(band.map(|value| value.into().value), band.nominal.into())
}

fn verdict(_: &Scene, _: &Job, plan: &Plan) -> Cell {
    Cell::Words(say(format!("answer.{}", plan.verdict.name())))
}

fn spine(_: &Scene, _: &Job, plan: &Plan) -> Cell {
    figure(plan.results.stack.closed.map(|closed| closed.0))
}

fn push_out(_: &Scene, _: &Job, plan: &Plan) -> Cell {
    plan.results.leaves.last().map_or(Cell::Unknown, |leaf| figure(leaf.push_out))
}

fn mass(_: &Scene, _: &Job, plan: &Plan) -> Cell {
    plan.results.mass.map_or(Cell::Unknown, |mass| figure(mass.book))
}

fn post(scene: &Scene, _: &Job, plan: &Plan) -> Cell {
    let Some(posted) = &plan.results.packing.posted else { return Cell::Unknown };
    let step = posted.goes_by.and_then(|step| scene.shop.post.get(step));
    Cell::Words(match step {
        Some(step) => say("compare.step").text("step", step.name.to_string()),
        None => say("compare.no-step"),
    })
}

fn open(_: &Scene, _: &Job, plan: &Plan) -> Cell {
    let flat = plan.results.trim.flat;
    Cell::Words(say("compare.size").put("width", flat.width).put("height", flat.height))
}

fn sheets(_: &Scene, job: &Job, _: &Plan) -> Cell {
    figure(Band::exact(job.sheets()))
}

fn time(_: &Scene, job: &Job, plan: &Plan) -> Cell {
    job.copies.map_or(Cell::Unknown, |_| figure(Band::exact(plan.results.run.times.best)))
}

fn cost(_: &Scene, _: &Job, plan: &Plan) -> Cell {
    let cost = &plan.results.cost;
    if cost.items().next().is_none() { Cell::Unknown } else { Cell::Amount(cost.total) }
}

/// The price by the shop's rule, where there is one and the cost is whole.
fn asked(scene: &Scene, _: &Job, plan: &Plan) -> Cell {
    let cost = &plan.results.cost;
    let rule = scene.shop.rates.price.as_ref().filter(|_| !cost.incomplete);
    rule.map_or(Cell::Unknown, |rule| Cell::Amount(price(rule, cost)))
}

/// One row of the table; nothing where no version has anything to say.
fn line(scene: &Scene, row: &Row, columns: &[Column]) -> Markup {
    let (name, cell, ..) = row;
    let cell = |column: &Column| {
        column.planned.map_or(Cell::Unknown, |(job, plan)| cell(scene, job, plan))
    };
    let known = columns.iter().any(|column| !matches!(cell(column), Cell::Unknown));
    let base = columns.first().map(|first| (first.name, cell(first)));
    html! {
        @if known {
            tr {
                th scope="row" { (scene.word(name)) }
                @for column in columns {
                    @let own = cell(column);
                    @let differs = base.as_ref().and_then(|(name, base)| difference(scene, row, (name, base), &own));
                    td class=[differs.is_some().then_some("differs")] {
                        (printed(scene, &own))
                        @if let Some(told) = differs {
                            " " strong { (scene.tell(&told)) }
                        }
                    }
                }
            }
        }
    }
}

fn printed(scene: &Scene, cell: &Cell) -> Markup {
    match cell {
        Cell::Unknown => scene.word("compare.unknown"),
        Cell::Words(words) => scene.tell(words),
        Cell::Figure(band, of) => html! {
            (scene.printer.numbers.print(*of))
            @if let Some(range) = scene.printer.numbers.range(*band, of.unit) {
                " " span class="band" { (range) }
            }
        },
        Cell::Amount(amount) => scene.tell(&money(scene.shop, *amount)),
    }
}

/// How a cell differs from the first version's, in words; nothing where print cannot tell them apart.
fn difference(scene: &Scene, row: &Row, base: (&'static str, &Cell), own: &Cell) -> Option<Say> {
    let (name, base) = base;
    let (_, _, less, more) = row;
    let numbers = &scene.printer.numbers;
    match (base, own) {
        (Cell::Words(base), Cell::Words(own)) => {
            let apart = scene.printer.text(base) != scene.printer.text(own);
            apart.then(|| say("compare.other").text("base", name))
        }
        (Cell::Figure(_, base), Cell::Figure(_, own)) => {
            let by = own.value - base.value;
            let told = say(if by < 0.0 { *less } else { *more });
            let apart = numbers.print(*base) != numbers.print(*own);
            apart.then(|| told.put("by", Measure::new(by.abs(), own.unit)))
        }
        (Cell::Amount(base), Cell::Amount(own)) => {
            let by = *own - *base;
            let told = say(if by.get() < 0.0 { *less } else { *more });
            let apart = numbers.print((*base).into()) != numbers.print((*own).into());
            let by = crate::units::Money(by.get().abs());
            apart.then(|| told.say("by", money(scene.shop, by)))
        }
        _ => None,
    }
}

/// How one version differs from another in thickness, mass and what it costs, and whether both can be
/// made: a sentence to read aloud.
fn aloud(scene: &Scene, first: &Column, other: &Column) -> Say {
    let name = |column: &Column| say("compare.unplanned").text("name", column.name);
    let (Some(one), Some(two)) = (first.planned, other.planned) else {
        return name(if first.planned.is_none() { first } else { other });
    };
    let [_, spine, _, mass, .., cost] = &ROWS;
    let paid = if scene.reading == Reading::Client { &PRICE } else { cost };
    let told = |row: &Row, same: Option<&'static str>| {
        let cell = |(job, plan): (&Job, &Plan)| (row.1)(scene, job, plan);
        let (base, own) = (cell(one), cell(two));
        let known = !matches!((&base, &own), (Cell::Unknown, _) | (_, Cell::Unknown));
        difference(scene, row, (first.name, &base), &own)
            .or_else(|| same.filter(|_| known).map(say))
    };
    let thickness = told(spine, Some("compare.same-thickness"));
    let mass = told(mass, Some("compare.same-mass"));
    let all = [thickness, mass, told(paid, None)].into_iter().flatten().rev();
    let parts = all.fold(None, |behind: Option<(Say, bool)>, part| {
        Some(match behind {
            None => (part, true),
            Some((last, alone)) => {
                let key = if alone { "compare.and" } else { "compare.list" };
                (say(key).say("first", part).say("second", last), false)
            }
        })
    });
    let parts = parts.map_or_else(|| say("compare.same-thickness"), |(parts, _)| parts);
    say("compare.aloud")
        .text("base", first.name)
        .text("name", other.name)
        .say("parts", parts)
        .say("can", can((first.name, one.1.verdict), (other.name, two.1.verdict)))
}

/// Whether both can be made.
fn can(one: (&'static str, Verdict), two: (&'static str, Verdict)) -> Say {
    use Verdict::{DoesNotFit, Fits, Marginal, Unlikely};
    let only = |verdict| if one.1 == verdict { one.0 } else { two.0 };
    match (one.1, two.1) {
        (Fits, Fits) => say("compare.can.both"),
        (DoesNotFit, DoesNotFit) => say("compare.can.neither"),
        (DoesNotFit, _) | (_, DoesNotFit) => say("compare.can.not").text("name", only(DoesNotFit)),
        (Unlikely, Unlikely) => say("compare.can.unlikely-both"),
        (Unlikely, _) | (_, Unlikely) => say("compare.can.unlikely").text("name", only(Unlikely)),
        (Marginal, Marginal) => say("compare.can.just-both"),
        (Marginal, _) | (_, Marginal) => say("compare.can.just").text("name", only(Marginal)),
    }
}
