//! How a paper was understood, and the questions about it.

use super::paper_read::WEIGHT_RANGE;
use super::paper_scan::Described;
use super::paper_words::usual;
use super::text::{Line, quoted, tidy};
use super::{Choice, Question, Reading};
use crate::data::{BASIS_SIZES, BasisSize, UNSAID};
use crate::paper::{Stock, Thickness, Weight, caliper, pounds};
use crate::units::{Gsm, Measure, Mm, Unit};
use crate::words::{Say, Slot, say};

/// Grades that a question about pounds offers.
const OFFERED_GRADES: [&str; 4] = ["text", "cover", "bond", "index"];
/// Grades that coated papers are sold in.
const COATED_GRADES: usize = 2;
/// Kinds that a question about the kind offers.
const OFFERED_KINDS: [(&str, &str); 3] =
    [("kind.gloss", "gloss"), ("kind.silk", "silk"), ("kind.uncoated", "uncoated")];

/// "100 lb text = 148 g/m², kind not said: one leaf 0.11–0.21 mm".
pub(super) fn echo(stock: &Stock) -> Say {
    let unsaid = *stock.kind == UNSAID;
    let key = match stock.thickness {
        Thickness::FromKind if unsaid => "entry.paper.unsaid",
        Thickness::FromKind => "entry.paper.from-kind",
        Thickness::Pack { .. } => "entry.paper.measured",
        Thickness::Caliper(_) | Thickness::Bulk(_) => "entry.paper.given",
    };
    let echo = say(key).say("weight", weight(stock)).say("kind", kind(stock));
    let mut echo =
        if key == "entry.paper.unsaid" { echo.say("hint", say("entry.paper.hint")) } else { echo };
    if let Some(leaf) = caliper(stock) {
        let band = leaf.value.map(Mm::get);
        echo.slots.push(("leaf", Slot::Doubtful(band, Unit::Caliper)));
    }
    echo
}

fn weight(stock: &Stock) -> Say {
    match stock.weight {
        None => say("entry.paper.no-weight"),
        Some(Weight::Grammage(grammage)) => say("entry.paper.grams").put("weight", grammage),
        Some(Weight::Pounds(weight, grade)) => in_pounds(weight, grade),
    }
}

fn kind(stock: &Stock) -> Say {
    say(format!("kind.{}", stock.kind.id))
}

/// "80 lb text = 118 g/m²".
fn in_pounds(weight: f64, grade: &BasisSize) -> Say {
    say("entry.paper.pounds")
        .put("pounds", Measure::new(weight, Unit::Number))
        .say("grade", say(format!("grade.{}", grade.id)))
        .put("weight", pounds(weight, grade))
}

fn possible(weight: Gsm) -> bool {
    weight >= WEIGHT_RANGE.0 && weight <= WEIGHT_RANGE.1
}

/// Answers in pounds, the usual ones first: each grade put behind the text.
fn grade_choices(weight: f64, text: &str, coated: bool) -> Vec<Choice> {
    let most = if coated { COATED_GRADES } else { OFFERED_GRADES.len() };
    let offered = || {
        OFFERED_GRADES
            .iter()
            .take(most)
            .filter_map(|id| BASIS_SIZES.iter().find(|row| row.id == *id))
    };
    let (first, later): (Vec<_>, Vec<_>) = offered()
        .filter(|grade| possible(pounds(weight, grade)))
        .partition(|grade| usual(weight, grade));
    let choice = |grade: &'static BasisSize| Choice {
        label: in_pounds(weight, grade),
        typed: format!("{text} {}", grade.id),
    };
    first.into_iter().chain(later).map(choice).collect()
}

fn is_coated(described: &Described) -> bool {
    described.kind.is_some_and(|kind| kind.coated)
}

/// Pounds of what? With the weight that each grade would make of them.
pub(super) fn ask_grade(weight: f64, described: &Described, line: &Line) -> Reading<Stock> {
    let text = line.span(0, line.tokens().len());
    let choices = grade_choices(weight, text, is_coated(described));
    if choices.is_empty() {
        return too_odd(text);
    }
    let ask = say("entry.paper.ask-grade").put("pounds", Measure::new(weight, Unit::Number));
    Reading::Ask(Question { ask, choices })
}

/// Grams or pounds? `index` is where the number stands.
pub(super) fn ask_unit(
    number: f64,
    index: usize,
    described: &Described,
    line: &Line,
) -> Reading<Stock> {
    let grams = possible(Gsm(number)).then(|| Choice {
        label: say("entry.paper.grams").put("weight", Gsm(number)),
        typed: line.with_after(index, "gsm"),
    });
    let typed = line.with_after(index, "lb");
    let in_pounds = match described.grade {
        Some(grade) => vec![Choice { label: in_pounds(number, grade), typed }],
        None => {
            grade_choices(number, &typed, is_coated(described)).into_iter().take(1 + 1).collect()
        }
    };
    let choices: Vec<Choice> = grams.into_iter().chain(in_pounds).collect();
    if choices.is_empty() {
        return too_odd(line.span(0, line.tokens().len()));
    }
    let ask = say("entry.paper.ask-unit").put("number", Measure::new(number, Unit::Number));
    Reading::Ask(Question { ask, choices })
}

fn too_odd(text: &str) -> Reading<Stock> {
    let (least, most) = WEIGHT_RANGE;
    Reading::wrong(
        say("entry.paper.odd").text("given", quoted(text)),
        say("entry.paper.weight-range").put("least", least).put("most", most),
    )
}

/// Ready answers that name the kind of a paper whose thickness depends on it: what was typed with the
/// kind put behind. Empty where the kind or the thickness is said.
///
/// ```
/// use quirefit_input::entry::{self, LengthUnit};
/// let stock = entry::paper("100# text", LengthUnit::Millimetre).value().unwrap();
/// let typed: Vec<String> =
///     entry::kind_choices(&stock).into_iter().map(|choice| choice.typed).collect();
/// assert_eq!(typed, ["100# text gloss", "100# text silk", "100# text uncoated"]);
/// ```
#[must_use]
pub fn kind_choices(stock: &Stock) -> Vec<Choice> {
    if *stock.kind != UNSAID || stock.thickness != Thickness::FromKind {
        return Vec::new();
    }
    let text = tidy(&stock.typed);
    let choice =
        |(key, word): (&str, &str)| Choice { label: say(key), typed: format!("{text} {word}") };
    OFFERED_KINDS.into_iter().map(choice).collect()
}
