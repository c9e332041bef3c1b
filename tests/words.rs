//! Every key has words, every word has a key, and every slot is filled.
//!
//! Keys are collected from the code: literals as they stand, and families built from rows. What is
//! really printed is seen with a marked language, in which every pattern says its own key and slots.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::check::RULES;
use quirefit::data::{BASIS_SIZES, BINDINGS, CHANGES, STOCK_KINDS, UNSAID};
use quirefit::draft::{Draft, Group, Kind};
use quirefit::explain::{Case, explain, figures, rows};
use quirefit::finishing::LIMITS;
use quirefit::intake::{Unreadable, taken};
use quirefit::job;
use quirefit::page::{Event, Patch, Session};
use quirefit::plan::{Plan, STATIONS, Verdict, plan};
use quirefit::view::html::titles;
use quirefit::view::html::{HANDED, READINGS, SPOKEN_LINES};
use quirefit::view::json::plan_out;
use quirefit::view::title_desk::{Desk, Order};
use quirefit::view::title_rows::Tally;
use quirefit::view::{Numbers, Printer, REGIONS};
use quirefit::words::{EN, Files, Part, Words, parts};
use std::collections::{BTreeMap, BTreeSet};
use support::rust::{Source, sources};
use support::{JSON, designs, files, name, text_of};

/// Where a number decides between two patterns.
const FORMS: [&str; 2] = [".one", ".other"];

/// What a region says otherwise than its language, by region. Other languages have a test of their
/// own, `translations`.
fn regions() -> Vec<(String, Words)> {
    let found: Vec<(String, Words)> = files("src/input/words")
        .iter()
        .filter_map(|path| {
            let region = name(path).strip_suffix(".txt").filter(|tag| tag.contains('-'))?;
            Some((region.to_owned(), Words::load(&[&text_of(path)])))
        })
        .collect();
    assert!(found.len() >= 2, "only {} files of regions", found.len());
    found
}

fn keys_of(words: &Words) -> BTreeSet<String> {
    words.all().map(|(key, _)| key.to_owned()).collect()
}

fn slots(pattern: &str) -> BTreeSet<&str> {
    let slot = |part| match part {
        Part::Slot(slot) => Some(slot),
        Part::Text(_) => None,
    };
    parts(pattern).filter_map(slot).collect()
}

/// A key without its form.
fn stem(key: &str) -> &str {
    FORMS.iter().find_map(|form| key.strip_suffix(form)).unwrap_or(key)
}

/// First pieces of keys: what a text must begin with to be one.
fn beginnings() -> BTreeSet<String> {
    let words = Words::load(&[EN]);
    words.all().map(|(key, _)| key.split('.').next().unwrap().to_owned()).collect()
}

/// Whether a text has the shape of a key; `{…}` may stand in it.
fn looks_like_a_key(text: &str, beginnings: &BTreeSet<String>) -> bool {
    let (first, rest) = text.split_once('.').unwrap_or((text, ""));
    let letters = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || "._-{}".contains(c);
    !rest.is_empty()
        && beginnings.contains(first)
        && rest.chars().all(letters)
        && !rest.ends_with('.')
}

/// Keys and key patterns in the code, with a place where each stands.
fn in_code() -> BTreeMap<String, String> {
    let beginnings = beginnings();
    let mut found = BTreeMap::new();
    let mut programs = sources();
    programs.retain(|source| !source.path.starts_with("src/input/words/store"));
    programs.push(support::rust::source("examples/plan.rs"));
    for source in programs {
        for string in &source.strings {
            if looks_like_a_key(&string.text, &beginnings) {
                let place = format!("{}:{}", source.path, source.line(string.at));
                found.insert(without_names(&string.text), place);
            }
        }
    }
    assert!(found.len() > 300, "only {} keys found: the search is broken", found.len());
    found
}

/// `kind.{}` and `kind.{id}` are one pattern: `kind.*`.
fn without_names(text: &str) -> String {
    let mut out = String::new();
    for (index, piece) in text.split('{').enumerate() {
        match piece.split_once('}') {
            Some((_, after)) if index > 0 => {
                out.push('*');
                out.push_str(after);
            }
            _ => out.push_str(piece),
        }
    }
    out
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
fn fields() -> Vec<(String, &'static quirefit::draft::Field)> {
    let single = job::SCHEMA.fields.iter().map(|field| (field.id.to_owned(), field));
    let inner = job::SCHEMA.groups.iter().flat_map(|(group, fields)| {
        fields.iter().map(move |field| (format!("{group}.{}", field.id), field))
    });
    single.chain(inner).collect()
}

/// Every key that is put together from rows: the pattern in the code, and all that it makes.
fn families() -> Vec<(&'static str, Vec<String>)> {
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
        let (_, job, shop) = support::planned_file(&path);
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
fn repairs(code: &BTreeMap<String, String>) -> Vec<String> {
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

#[test]
fn every_key_in_the_code_has_words() {
    let english = keys_of(&Words::load(&[EN]));
    let stems: BTreeSet<&str> = english.iter().map(|key| stem(key)).collect();
    let code = in_code();
    let families = families();
    let mut wrong = Vec::new();
    for (key, place) in &code {
        if !key.contains('*') {
            if !stems.contains(key.as_str()) && !english.contains(key) {
                wrong.push(format!("{place}: {key} has no words"));
            }
        } else if !families.iter().any(|(pattern, _)| begins_as(key, pattern)) {
            wrong.push(format!("{place}: keys {key} are made here: add their rows to `families`"));
        }
    }
    for key in families.iter().flat_map(|(_, keys)| keys).chain(&repairs(&code)) {
        if !stems.contains(key.as_str()) && !english.contains(key) {
            wrong.push(format!("{key} has no words"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// `field.*.*` and `field.*.label` are made by the family `field.*`.
fn begins_as(key: &str, pattern: &str) -> bool {
    key == pattern
        || (pattern == "field.*" && key.starts_with("field.*"))
        || (pattern == "field.*" && key == "field.units.*")
}

#[test]
fn every_word_has_a_key_in_the_code() {
    let code = in_code();
    let mut used: BTreeSet<String> = code.keys().cloned().collect();
    used.extend(families().into_iter().flat_map(|(_, keys)| keys));
    used.extend(repairs(&code));
    let english = Words::load(&[EN]);
    let orphans: Vec<&str> = english
        .all()
        .map(|(key, _)| key)
        .filter(|key| !used.contains(stem(key)) && !used.contains(*key))
        .collect();
    assert!(orphans.is_empty(), "nothing prints {orphans:#?}");
}

#[test]
fn every_pattern_of_a_family_is_found_in_the_code() {
    let code = in_code();
    let made = |pattern: &str| code.keys().any(|key| begins_as(key, pattern));
    let gone: Vec<&str> =
        families().iter().map(|(pattern, _)| *pattern).filter(|pattern| !made(pattern)).collect();
    assert!(gone.is_empty(), "the code makes no keys {gone:?} any more");
}

#[test]
fn every_region_says_only_what_differs() {
    let english = Words::load(&[EN]);
    let keys = keys_of(&english);
    for (region, words) in regions() {
        let own = keys_of(&words);
        let unknown: Vec<&String> = own.difference(&keys).collect();
        assert!(unknown.is_empty(), "{region}: {unknown:?} are not in en.txt");
        for (key, pattern) in words.all() {
            let expected = english.pattern(key, None).unwrap();
            assert_eq!(slots(pattern), slots(expected), "{region}: {key}");
            assert_ne!(pattern, expected, "{region}: {key} does not differ");
        }
    }
}

/// Every field says what it means and where to find what to type.
#[test]
fn every_field_has_help() {
    let english = Words::load(&[EN]);
    let short: Vec<String> = fields()
        .into_iter()
        .filter(|(_, field)| field.group != Group::Setting)
        .map(|(path, _)| format!("field.{path}.help"))
        .filter(|key| english.plain(key).chars().count() < 30)
        .collect();
    assert!(short.is_empty(), "no help in {short:?}");
}

#[test]
fn files_are_well_formed() {
    let mut whole: BTreeSet<String> = in_code().into_keys().collect();
    whole.extend(families().into_iter().flat_map(|(_, keys)| keys));
    for path in files("src/input/words").iter().filter(|path| path.ends_with(".txt")) {
        let text = text_of(path);
        let mut seen = BTreeSet::new();
        for (number, line) in text.lines().enumerate() {
            let at = format!("{path}:{}", number + 1);
            if line.is_empty() || line.starts_with(['#', ' ']) {
                continue;
            }
            let (key, pattern) = line.split_once(" =").unwrap_or_else(|| panic!("{at}: {line}"));
            assert!(seen.insert(key), "{at}: {key} stands twice");
            let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || "._-".contains(c);
            assert!(key.chars().all(plain), "{at}: {key}");
            assert_eq!(pattern.matches('{').count(), pattern.matches('}').count(), "{at}");
            assert!(!pattern.trim().contains("  "), "{at}: two spaces");
        }
        for key in &seen {
            // A word may end in "one" and be no form.
            let alone = whole.contains(*key);
            for (form, other) in [(".one", ".other"), (".other", ".one")] {
                if let Some(stem) = key.strip_suffix(form).filter(|_| !alone) {
                    assert!(
                        seen.contains(format!("{stem}{other}").as_str()),
                        "{path}: {key} is alone"
                    );
                }
            }
        }
    }
}

/// A language in which every pattern says its key and its slots, and nothing else. A slot that is not
/// filled prints its own name.
fn marked() -> String {
    let words = Words::load(&[EN]);
    let mut out = String::new();
    for (key, pattern) in words.all() {
        out.push_str(&format!("{key} ="));
        if !pattern.is_empty() {
            out.push_str(&format!(" ⟦{key}⟧"));
            for slot in slots(pattern) {
                out.push_str(&format!("⟦{key}/{slot}={{{slot}}}⟧"));
            }
        }
        out.push('\n');
    }
    out
}

/// What was printed in the marked language.
#[derive(Default)]
struct Printed {
    keys: BTreeSet<String>,
    /// Slots that nobody filled, and keys without words.
    wrong: BTreeSet<String>,
}

impl Printed {
    fn take(&mut self, text: &str, beginnings: &BTreeSet<String>) {
        // What is being said at each depth: a slot may hold a whole sentence.
        let mut open = vec![String::new()];
        for letter in text.chars() {
            match letter {
                '⟦' => open.push(String::new()),
                '⟧' if open.len() > 1 => {
                    let said = open.pop().unwrap();
                    self.heard(&said);
                    // Something stands in the slot that this was said in.
                    open.last_mut().unwrap().push('…');
                }
                letter => open.last_mut().unwrap().push(letter),
            }
        }
        let within = |c: char| c.is_ascii_alphanumeric() || "._-".contains(c);
        for token in open[0].split(|c| !within(c)) {
            let token = token.trim_matches('.');
            if looks_like_a_key(token, beginnings) {
                self.wrong.insert(format!("{token} has no words"));
            }
        }
    }

    fn heard(&mut self, said: &str) {
        let (key, slot) = said.split_once('/').unwrap_or((said, ""));
        self.keys.insert(key.to_owned());
        if slot.split_once('=').is_some_and(|(slot, value)| slot == value) {
            self.wrong.insert(format!("{key}: nobody fills {{{slot}}}"));
        }
    }
}

/// Shows a page everything: every region, every reading, every explanation, paper.
fn show_everything(session: &mut Session, printed: &mut Printed, beginnings: &BTreeSet<String>) {
    let mut asked = BTreeSet::new();
    let mut tell = |session: &mut Session, kind: &str, id: &str, value: &str| {
        for patch in session.handle(&Event::new(kind, id, value)) {
            match patch {
                Patch::Html { html, .. } => {
                    printed.take(&html, beginnings);
                    let ids = html.split(" id=\"ask-").skip(1);
                    asked.extend(ids.map(|id| format!("ask-{}", id.split('"').next().unwrap())));
                }
                Patch::Announce { text } => printed.take(&text, beginnings),
                _ => {}
            }
        }
        core::mem::take(&mut asked)
    };
    let mut figures = tell(session, "start", "", "");
    // The next book of this session stands beside it.
    figures.extend(tell(session, "act", "version-keep", ""));
    for region in &REGIONS {
        figures.extend(tell(session, "toggle", &format!("open-{}", region.id), "open"));
    }
    for (reading, _) in READINGS {
        figures.extend(tell(session, "act", "reading", reading));
        figures.extend(tell(session, "rest", "", ""));
        // Every figure of a table's first rows; those of the whole book are printed below, but not to
        // a client.
        let mut seen = BTreeSet::new();
        for id in &figures {
            let (name, row) = id["ask-".len()..].split_once('-').unwrap();
            let at: usize = row.split('-').next().unwrap().parse().unwrap();
            let rows = at > 0 || reading == "client";
            if rows && at <= 16 && seen.insert((name.to_owned(), at)) {
                tell(session, "act", "explain", id);
            }
        }
        tell(session, "act", "explain", "");
    }
    tell(session, "act", "print-card", "");
    tell(session, "act", "print-figures", "");
    tell(session, "print", "", "");
}

/// Texts for a book that stays whole, one after the other.
const WHOLE: &[(&str, &str)] = &[
    ("start", "8:30"),
    ("first_thickness", "3.1 mm"),
    ("first_push_out", "1.9 mm"),
    ("first_width", "147.5 mm"),
    ("first_width", "148.5 mm"),
    ("first_thickness", "9 mm"),
    ("head_foot", "after"),
    ("copies", "1"),
    ("pages", "1"),
    ("pages", "2 leaves"),
    ("pages", "4"),
    ("pages", "1 leaf"),
    ("press_sheet", "no such sheet"),
];

/// Texts that bring out every sort of echo, question and fault.
const TYPED: &[(&str, &str)] = &[
    ("phrase", "64 pages, A5, 100 pound text, 750 copies, tied with ribbon"),
    ("pages", "15"),
    ("pages", "60 + 4"),
    ("pages", "64 self cover"),
    ("pages", "60 +"),
    ("pages", "3000"),
    ("pages", "12.5"),
    ("pages", "x"),
    ("pages", "60 + 6"),
    ("pages", "60 + 2"),
    ("pages", "16 leaves"),
    ("size", "A5"),
    ("size", "A5 landscape"),
    ("size", "210 x 210"),
    ("size", "8.5 x 11"),
    ("size", "3 x 4 mm"),
    ("size", "large"),
    ("size", "170 x 240"),
    ("paper", "100# text"),
    ("paper", "80 lb"),
    ("paper", "100"),
    ("paper", "130 silk"),
    ("paper", "90 gsm 112 µm"),
    ("paper", "130"),
    ("paper", "130 gsm"),
    ("paper", "300 gsm board"),
    ("paper", "12 pt board"),
    ("paper", "pack of 20 leaves 2.1 mm"),
    ("paper", "pack of 0 leaves 2.1 mm"),
    ("paper", "80 gsm 0.4 mm"),
    ("paper", "90 gsm 100 gsm"),
    ("paper", "90 gsm 9 mm"),
    ("paper", "3 gsm silk"),
    ("paper", "77 lb text 300 gsm"),
    ("paper", "100 gsm vol 9"),
    ("paper", "80 gsm vol 15"),
    ("paper", "blue"),
    ("paper", "Pond Silk 130"),
    ("paper", "0.1 mm"),
    ("paper", "2000 lb text"),
    ("paper", "0 gsm silk"),
    ("paper", "20 lb bond"),
    ("cover", "250 silk"),
    ("copies", "0"),
    ("copies", "1"),
    ("copies", "12.5"),
    ("copies", "many"),
    ("copies", "1,200"),
    ("bleed", "3"),
    ("bleed", "60"),
    ("bleed", "wide"),
    ("safe", "0.2"),
    ("wrapper", "7 g"),
    ("wrapper", "9 kg"),
    ("wrapper", "heavy"),
    ("start", "8:30"),
    ("start", "25:00"),
    ("stitches", "2"),
    ("stitches", "13"),
    ("stitches", "two"),
    ("stitches", "2.5"),
    ("spine", "oval"),
    ("line", "nowhere"),
    ("line", ""),
    ("supplied_cover", "20"),
    ("supplied_inside", "10"),
    ("pages", "9999999999999999999999"),
];

/// What a person does beside typing: suggestions, sections, steps back and forward.
const DONE: &[(&str, &str, &str)] = &[
    ("tap", "size", ""),
    ("tap", "size", ""),
    ("tap", "paper", ""),
    ("tap", "paper", ""),
    ("input", "paper", "130 s"),
    ("rest", "", ""),
    ("input", "paper", "28 newsp"),
    ("rest", "", ""),
    ("act", "save-creep", ""),
    ("leave", "paper", ""),
    ("act", "save-xjdf", ""),
    ("act", "undo", ""),
    ("act", "redo", ""),
    ("act", "section-add", ""),
    ("input", "sections.0.paper", "90 gsm offset"),
    ("act", "section-add", ""),
    ("input", "sections.1.paper", "115 gloss"),
    ("act", "section-add", ""),
    ("input", "sections.2.paper", "115 silk"),
    ("input", "sections.2.pages", "6"),
    ("act", "section-out", "2"),
    ("act", "section-out", "1"),
    ("act", "section-out", "0"),
    ("act", "section-remove", "1"),
    ("drop", "section-0", "section-main"),
];

fn printed() -> Printed {
    let beginnings = beginnings();
    let marked = marked();
    let words = Words::load(&[&marked]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let mut printed = Printed::default();
    let languages = ["en-GB".to_owned()];
    let spoken = Files::from([("en".to_owned(), marked.clone())]);
    let page = || Session::new(spoken.clone(), &languages, None, JSON);
    for path in files("examples/jobs").iter().chain(&files("examples/rules")) {
        let (draft, job, shop) = support::planned_file(path);
        let mut session = page();
        // The search is the helper's, who never answers here; jobs are searched for below.
        session.handle(&Event::new("helper", "", "ready"));
        let shop_file = (JSON.print)(&quirefit::draft::to_tree(
            &quirefit::shop::draft_of(&shop),
            &quirefit::shop::SCHEMA,
        ));
        session.handle(&Event::new("file", "shop", &shop_file));
        session.handle(&Event::new("file", path, &text_of(path)));
        show_everything(&mut session, &mut printed, &beginnings);
        let planned = plan(&job, &shop);
        texts(&draft, &job, &shop, &planned, &printer, &mut printed, &beginnings);
    }
    for path in files("examples/shops") {
        let mut session = page();
        session.handle(&Event::new("helper", "", "ready"));
        session.handle(&Event::new("start", "", ""));
        session.handle(&Event::new("file", &path, &text_of(&path)));
        for (field, text) in WHOLE {
            for patch in session.handle(&Event::new("input", field, text)) {
                if let Patch::Html { html, .. } = patch {
                    printed.take(&html, &beginnings);
                }
            }
            show_everything(&mut session, &mut printed, &beginnings);
        }
    }
    for path in files("examples/failing") {
        let mut session = page();
        for patch in session.handle(&Event::new("file", &path, &text_of(&path))) {
            if let Patch::Html { html, .. } = patch {
                printed.take(&html, &beginnings);
            }
        }
    }
    for path in ["examples/jobs/clockwork-manual.json", "examples/jobs/moth-album.json"] {
        let mut session = page();
        session.handle(&Event::new("file", path, &text_of(path)));
        show_everything(&mut session, &mut printed, &beginnings);
    }
    let mut session = page();
    session.handle(&Event::new("start", "", ""));
    for unit in ["mm", "in"] {
        session.handle(&Event::new("change", "units", unit));
        for (field, text) in TYPED {
            for patch in session.handle(&Event::new("input", field, text)) {
                if let Patch::Html { html, .. } = patch {
                    printed.take(&html, &beginnings);
                }
            }
        }
        show_everything(&mut session, &mut printed, &beginnings);
    }
    let mut session = page();
    session.handle(&Event::new("file", "x", &text_of("examples/shops/tidewater-press.json")));
    let adds = [("act", "section-add", ""); quirefit::draft::MOST_MEMBERS];
    for (kind, id, value) in DONE.iter().chain(&adds) {
        for patch in session.handle(&Event::new(kind, id, value)) {
            match patch {
                Patch::Html { html, .. } => printed.take(&html, &beginnings),
                Patch::Announce { text } => printed.take(&text, &beginnings),
                _ => {}
            }
        }
    }
    for path in files("examples/titles") {
        let bytes = std::fs::read(support::root().join(path)).unwrap();
        let list = quirefit::titles::List::read(&bytes).unwrap();
        let shop = quirefit::shop::demo();
        let told = quirefit::view::title_rows::answered(&list, &shop, "mm", &printer).0;
        printed.take(&told, &beginnings);
    }
    for commit in ["0123abc", "0123abc+"] {
        let mut session = page().built_from(commit);
        for patch in session.handle(&Event::new("change", "language", "en-US")) {
            if let Patch::Html { html, .. } = patch {
                printed.take(&html, &beginnings);
            }
        }
    }
    list_on_the_page(&printer, |html| printed.take(html, &beginnings));
    let mut session = page();
    session.handle(&Event::new("start", "", ""));
    designs_on_the_page(&mut session, |html| printed.take(html, &beginnings));
    let elsewhere = r#"{ "format": "quirefit-saved", "job": { "title": "Owls by Lamplight" } }"#;
    for (event, value) in [("trap", ""), ("elsewhere", elsewhere), ("storage", "none")] {
        for patch in session.handle(&Event::new(event, "", value)) {
            if let Patch::Html { html, .. } = patch {
                printed.take(&html, &beginnings);
            }
        }
    }
    printed
}

/// A long list with a column that nobody reads, and how far it is.
fn list_on_the_page(printer: &Printer, mut take: impl FnMut(&str)) {
    let row = |number: usize| format!("Title {number},{},A5,90 gsm,blue\n", 16 + number % 8 * 4);
    let text: String = (0..120).map(row).collect();
    let text = format!("title,pages,size,paper,colour\n{text}");
    let shop = quirefit::shop::demo();
    let mut desk = Desk::begin(text.as_bytes(), shop, "mm", printer).unwrap();
    desk.go_on(200, printer);
    take(&titles::table(&desk, Order::default(), 0, printer).into_string());
    for (rows, unread) in [(1, 1), (120, 30)] {
        let tally = Tally { rows, unread };
        let progress = titles::Progress { tally, stopped: true, ..titles::Progress::default() };
        take(&titles::told(&progress, printer).into_string());
    }
}

/// Designs of every sort, held against books with and without a cover apart.
fn designs_on_the_page(session: &mut Session, mut take: impl FnMut(&str)) {
    let mut told = Vec::new();
    let mut tell = |kind: &str, id: &str, value: &str| {
        for patch in session.handle(&Event::new(kind, id, value)) {
            match patch {
                Patch::Html { html, .. } => take(&html),
                Patch::Design { ask: "write", text, .. } => told.push(text),
                _ => {}
            }
        }
    };
    let opened = ("file", "a.pdf", "%PDF-1.7");
    for pages in ["40 + 4", "40"] {
        tell("input", "pages", pages);
        for facts in designs::telling() {
            tell(opened.0, opened.1, opened.2);
            tell("design", "facts", &designs::told(&facts));
            tell("act", "design-more", "");
        }
        tell("act", "design-pairs", "");
        tell("act", "design-proof", "");
        tell("design", "progress", "50");
        tell("design", "written", "a.pdf");
        tell("act", "design-close", "");
    }
    for why in [
        Unreadable::Empty,
        Unreadable::NoPdf,
        Unreadable::Password,
        Unreadable::Cipher,
        Unreadable::Broken,
    ] {
        tell(opened.0, opened.1, opened.2);
        tell("design", "facts", &designs::refused(why));
    }
    tell(opened.0, opened.1, opened.2);
    tell("design", "facts", &designs::refused(Unreadable::Password));
    tell("input", "design-password", "secret");
    tell("act", "design-unlock", "");
    tell("design", "facts", &designs::refused(Unreadable::Password));
    for text in told {
        let order: quirefit::intake::Order = taken(&text).unwrap();
        take(&order.title);
        take(&order.layer);
    }
}

/// The texts of a document for print that no font has: UTF-16 in hexadecimal, line after line.
fn unprintable(bytes: &[u8]) -> String {
    let text = String::from_utf8_lossy(bytes);
    let lines = text.split("<FEFF").skip(1).map(|after| {
        let digits = after.split('>').next().unwrap().as_bytes();
        let unit = |four: &[u8]| u16::from_str_radix(str::from_utf8(four).unwrap(), 16).unwrap();
        String::from_utf16(&digits.chunks(4).map(unit).collect::<Vec<_>>()).unwrap()
    });
    lines.collect::<Vec<_>>().join(" ")
}

/// The plan as text and as JSON, and every explanation as text.
fn texts(
    draft: &Draft,
    job: &job::Job,
    shop: &quirefit::shop::Shop,
    planned: &Plan,
    printer: &Printer,
    printed: &mut Printed,
    beginnings: &BTreeSet<String>,
) {
    let json = serde_json::to_string(&plan_out(job, planned, printer)).unwrap();
    printed.take(&json, beginnings);
    let told = quirefit::view::text::text(job, shop, planned, printer);
    printed.take(&told, beginnings);
    printed.take(&quirefit::view::letter::letter(job, shop, planned, printer), beginnings);
    printed.take(&quirefit::view::xjdf::xjdf(job, planned, printer), beginnings);
    let advice = quirefit::advise::Advice::at_once(job, shop, planned);
    let (reading, printer) = (quirefit::view::Reading::Floor, *printer);
    let screen = quirefit::view::Screen::default();
    let scene = quirefit::view::html::Scene {
        job,
        shop,
        plan: planned,
        advice: &advice,
        versions: &[],
        ticks: &quirefit::view::Ticks::default(),
        printer,
        reading,
        screen,
    };
    let tables = quirefit::view::csv::tables(&scene);
    printed.take(&quirefit::view::csv::write(&tables, &printer), beginnings);
    for document in &quirefit::view::pdf::DOCUMENTS {
        let wanted = quirefit::view::pdf::Wanted { scene: &scene, language: "en", code: None };
        if let Some(file) = (document.write)(&wanted) {
            assert!(file.replaced, "the marks of the marked language are in no font");
            printed.take(&unprintable(&file.bytes), beginnings);
        }
    }
    let printer = &printer;
    let case = Case::new(job, shop, planned);
    for told in figures().filter_map(|figure| explain(&case, figure.id)) {
        for sentence in told.lines.iter().chain([&told.name]).chain(&told.doubt) {
            printed.take(&printer.text(sentence), beginnings);
        }
    }
    for note in job::read(draft, shop).notes.values() {
        if let job::Note::Echo(echo) = note {
            printed.take(&printer.text(echo), beginnings);
        }
    }
}

#[test]
fn every_slot_of_what_is_printed_is_filled() {
    let printed = printed();
    assert!(printed.wrong.is_empty(), "{:#?}", printed.wrong);
    // The run must be broad, or it proves little.
    let all = keys_of(&Words::load(&[EN]));
    let with_slots: BTreeSet<String> = Words::load(&[EN])
        .all()
        .filter(|(_, pattern)| !slots(pattern).is_empty())
        .map(|(key, _)| key.to_owned())
        .collect();
    let unseen: Vec<&String> = with_slots.difference(&printed.keys).collect();
    println!(
        "{} of {} keys printed; with slots never printed: {unseen:#?}",
        printed.keys.len(),
        all.len()
    );
    assert!(
        unseen.len() * 20 <= with_slots.len(),
        "{} of {} with slots never printed: {unseen:#?}",
        unseen.len(),
        with_slots.len()
    );
}

/// The marked language itself finds what is wrong.
#[test]
fn the_marked_language_finds_an_empty_slot() {
    let beginnings = beginnings();
    let mut printed = Printed::default();
    printed.take(
        "<p>⟦trim.cut⟧</p> ⟦rule.x.y⟧⟦rule.x.y/most=3 mm⟧⟦rule.x.y/least=least⟧ file.no-such",
        &beginnings,
    );
    assert_eq!(printed.keys.len(), 2);
    assert_eq!(printed.wrong.len(), 2, "{:?}", printed.wrong);
}
