//! Keys that are put together from rows, and all that each makes.

use crate::keys_of;
use crate::support::rust::{Source, sources};
use crate::support::{files, planned_file, text_of};
use quirefit::check::RULES;
use quirefit::data::{BASIS_SIZES, BINDINGS, CHANGES, STOCK_KINDS, UNSAID};
use quirefit::draft::{Group, Kind};
use quirefit::explain::rows;
use quirefit::finishing::LIMITS;
use quirefit::job;
use quirefit::plan::{STATIONS, Verdict, plan};
use quirefit::view::REGIONS;
use quirefit::view::html::{HANDED, READINGS, SPOKEN_LINES};
use quirefit::words::{EN, Words};
use std::collections::{BTreeMap, BTreeSet};

/// Every key that is put together from rows: the pattern in the code, and all that it makes.
pub fn families() -> Vec<(&'static str, Vec<String>)> {
    let mut labels = Vec::new();
    for (path, field) in fields() {
        let settings = field.group == Group::Setting;
        labels.push(format!("field.{path}.label"));
        if !settings {
            labels.extend([format!("field.{path}.hint"), format!("field.{path}.help")]);
        }
        if let Kind::Choice(words) = field.kind {
            labels.extend(words.iter().map(|word| format!("field.{path}.{word}")));
        }
    }
    labels.extend(list(&["field.phrase.label", "field.phrase.hint", "field.language.label"]));
    let groups = job::SCHEMA.fields.iter().filter_map(|field| match field.group {
        Group::More(group) => Some(group.to_owned()),
        Group::Main | Group::Setting => None,
    });
    let cases: Vec<String> = rule_cases().into_iter().collect();
    let made = |start: &str, ids: Vec<String>| -> Vec<String> {
        ids.into_iter().map(|id| format!("{start}.{id}")).collect()
    };
    let names = |ids: Vec<&str>| list(&ids);
    let verdicts = [Verdict::Fits, Verdict::Marginal, Verdict::Unlikely, Verdict::DoesNotFit]
        .map(Verdict::name);
    vec![
        ("field.*", labels),
        ("group.*", made("group", groups.chain(["sections".to_owned()]).collect())),
        ("region.*", made("region", names(REGIONS.iter().map(|region| region.id).collect()))),
        ("readings.*", made("readings", names(READINGS.iter().map(|(id, _)| *id).collect()))),
        ("limit.*", made("limit", names(LIMITS.iter().map(|limit| limit.name()).collect()))),
        ("answer.*", made("answer", list(&verdicts))),
        ("limit.answer.*", made("limit.answer", list(&verdicts))),
        ("weight.*", made("weight", list(&["note", "warning", "marginal", "unlikely", "no"]))),
        (
            "rule.*.*",
            cases.iter().flat_map(|case| [case.clone(), format!("{case}.cure")]).collect(),
        ),
        ("explain.*", formulas()),
        ("explain.every.*", made("explain.every", list(&["stacker", "chips", "wire", "paper"]))),
        (
            "explain.item.*",
            made(
                "explain.item",
                list(&["paper", "sheets", "click", "line", "wire", "carton", "job"]),
            ),
        ),
        (
            "kind.*",
            made("kind", names(STOCK_KINDS.iter().chain([&UNSAID]).map(|kind| kind.id).collect())),
        ),
        ("grade.*", made("grade", names(BASIS_SIZES.iter().map(|basis| basis.id).collect()))),
        (
            "station.*",
            made("station", names(STATIONS.iter().map(|station| station.name()).collect())),
        ),
        ("supply.*", made("supply", list(&["stacker", "chips", "wire", "paper"]))),
        (
            "binding.*",
            made(
                "binding",
                names(
                    BINDINGS
                        .iter()
                        .map(|row| row.id)
                        .chain(["stitched-round", "stitched-square"])
                        .collect(),
                ),
            ),
        ),
        (
            "binding.why.*",
            made("binding.why", list(&["possible", "just", "unlikely", "limits", "thin", "thick"])),
        ),
        (
            "cost.item.*",
            made("cost.item", list(&["paper", "sheets", "click", "line", "wire", "carton", "job"])),
        ),
        ("cost.unit.*", made("cost.unit", list(&["sheets", "click", "line", "carton", "job"]))),
        ("cover.side.*", made("cover.side", list(&["1", "2", "3", "4"]))),
        (
            "drawing.press_sheet.cover.*",
            made("drawing.press_sheet.cover", list(&["1", "2", "3", "4"])),
        ),
        ("decides.*", made("decides", handed("src/view/html/decides.rs", "name"))),
        ("sheet.column.*", made("sheet.column", handed("src/view/html/sheet.rs", "label"))),
        ("typed.*", typed()),
        ("handed.*", made("handed", HANDED.into_iter().map(|(kind, _)| kind.to_owned()).collect())),
        ("teach.line.*", made("teach.line", list(&SPOKEN_LINES))),
        (
            "act.*",
            made(
                "act",
                list(&["undo", "redo", "new", "section-out", "section-in", "section-remove"])
                    .into_iter()
                    .chain(HANDED.into_iter().flat_map(|(_, acts)| list(acts)))
                    .collect(),
            ),
        ),
        ("design.*", made("design", delivered())),
        ("design.count.*", made("design.count", delivered())),
        ("design.mixed.*", made("design.mixed", delivered())),
        ("design.thumb.*", made("design.thumb", [delivered(), list(&["same"])].concat())),
        ("design.sized.*", made("design.sized", list(&["turned", "spread", "half", "odd"]))),
        ("design.taken.*", made("design.taken", list(&["bled", "crop", "page", "nothing"]))),
        ("design.refused.*", made("design.refused", refusals())),
        (
            "design.refused.*.repair",
            refusals().iter().map(|case| format!("design.refused.{case}.repair")).collect(),
        ),
        ("fix.*", made("fix", plain_changes())),
        ("fix.*.*", made("fix", cased_changes())),
    ]
}

/// The parts of a delivery.
fn delivered() -> Vec<String> {
    list(&["inside", "cover"])
}

/// Why a design is not read.
fn refusals() -> Vec<String> {
    list(&["empty", "no-pdf", "password", "password-wrong", "cipher", "broken"])
}

/// Words of the texts that the program types, and the names it gave.
fn typed() -> Vec<String> {
    let slug = |name: &str| -> String {
        let plain = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
        name.chars().map(plain).collect()
    };
    let shop = quirefit::shop::demo();
    let names = shop.lines.iter().map(|line| slug(&line.name));
    let names = names.chain(shop.post.iter().map(|step| slug(&step.name)));
    let kinds = STOCK_KINDS.iter().filter_map(|kind| kind.typed.first());
    let words = kinds.flat_map(|typed| typed.split(' ')).chain(["gsm", "landscape"]);
    let all = words.map(str::to_owned).chain(names).chain([slug(&shop.name), slug(&shop.note)]);
    all.map(|word| format!("typed.{word}")).collect()
}

/// The formulas of figures that need no case; those that do name their keys themselves.
fn formulas() -> Vec<String> {
    let english = keys_of(&Words::load(&[EN]));
    let asked = rows().filter(|row| !row.name.is_empty());
    asked.map(|row| format!("explain.{}", row.id)).filter(|key| english.contains(key)).collect()
}

/// Changes whose words need no case.
fn plain_changes() -> Vec<String> {
    let cased = ["spine", "bound", "head-foot", "rule"];
    let plain = CHANGES.iter().map(|change| change.id).filter(|id| !cased.contains(id));
    plain.map(str::to_owned).collect()
}

/// Changes with a case, and which they have: those that `words` of the search gives.
fn cased_changes() -> Vec<String> {
    let mut cased = list(&["volumes.even", "face-cut.auto"]);
    for (change, field) in [("spine", "spine"), ("bound", "bound_edge"), ("head-foot", "head_foot")]
    {
        let Some(Kind::Choice(words)) = job::SCHEMA.field(field).map(|field| field.kind) else {
            panic!("{field} is no choice");
        };
        let words = words.iter().filter(|word| **word != "auto");
        cased.extend(words.map(|word| format!("{change}.{word}")));
    }
    cased.extend(list(&["rule.stitches", "rule.press_sheet", "rule.route"]));
    cased
}

/// `rule.ID.CASE` of every finding that an example of a rule brings out.
fn rule_cases() -> BTreeSet<String> {
    let mut cases = BTreeSet::new();
    for path in files("examples/rules") {
        let (_, job, shop) = planned_file(&path);
        cases.extend(plan(&job, &shop).findings.iter().map(|finding| finding.key()));
    }
    let missing: Vec<&str> = RULES
        .iter()
        .map(|rule| rule.id)
        .filter(|id| !cases.iter().any(|case| case.starts_with(&format!("rule.{id}."))))
        .collect();
    assert!(missing.is_empty(), "no example brings out {missing:?}");
    cases
}

/// Keys that name a fault have another beside them that names the repair.
pub fn repairs(code: &BTreeMap<String, String>) -> Vec<String> {
    let faulty = ["src/input/draft/file.rs", "src/input/job/link.rs", "examples/plan.rs"];
    let lists = ["src/titles/heads.rs", "src/titles/list.rs", "src/titles/mod.rs"];
    let source: String = faulty.into_iter().chain(lists).map(text_of).collect();
    let faults =
        |key: &str| ["file.", "link.", "titles."].iter().any(|start| key.starts_with(start));
    code.keys()
        .filter(|key| faults(key) && source.contains(&format!("\"{key}\"")))
        .map(|key| format!("{key}.repair"))
        // Among much else, the page's own file says this one.
        .chain(["file.no-utf8.repair".to_owned()])
        .collect()
}

/// Texts handed to a small function of a file: `name("book")`.
fn handed(path: &str, function: &str) -> Vec<String> {
    let source: Source = sources().into_iter().find(|source| source.path == path).unwrap();
    let start = format!("{function}(\"");
    let found: Vec<String> = source
        .text
        .split(&start)
        .skip(1)
        .map(|after| after.split('"').next().unwrap().to_owned())
        .collect();
    assert!(!found.is_empty(), "{path} calls {function} no more");
    found
}

fn list(ids: &[&str]) -> Vec<String> {
    ids.iter().map(|id| (*id).to_owned()).collect()
}

/// Paths of fields as keys name them: a member's field has its group before it.
pub fn fields() -> Vec<(String, &'static quirefit::draft::Field)> {
    let single = job::SCHEMA.fields.iter().map(|field| (field.id.to_owned(), field));
    let inner = job::SCHEMA.groups.iter().flat_map(|(group, fields)| {
        fields.iter().map(move |field| (format!("{group}.{}", field.id), field))
    });
    single.chain(inner).collect()
}
