//! Every rule fires on its job and is quiet on the near miss, in every one of its cases.
//!
//! `examples/rules/ID.fires.json` and `ID.near.json`; where one job cannot show every case, also
//! `ID.CASE.fires.json` and `ID.CASE.near.json`. A job is planned in the first shop that has its line: the
//! demo shop, then those of `examples/shops`.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::check::RULES;
use quirefit::finishing::LIMITS;
use quirefit::plan::{Finding, Verdict, Weight, plan};
use quirefit::words::{EN, Words};
use std::collections::{BTreeMap, BTreeSet};
use support::{files, name, planned_file, root};

/// A job of a rule.
struct Example {
    path: String,
    rule: String,
    /// The case it is there for; nothing when any will do.
    case: Option<String>,
    fires: bool,
}

fn examples() -> Vec<Example> {
    let examples: Vec<Example> = files("examples/rules")
        .into_iter()
        .map(|path| {
            let pieces: Vec<&str> = name(&path).split('.').collect();
            let (rule, case, kind) = match pieces[..] {
                [rule, kind, "json"] => (rule, None, kind),
                [rule, case, kind, "json"] => (rule, Some(case.to_owned()), kind),
                _ => panic!("{path}: ID.fires.json or ID.CASE.fires.json"),
            };
            assert!(kind == "fires" || kind == "near", "{path} is neither fires nor near");
            let (rule, fires) = (rule.to_owned(), kind == "fires");
            Example { rule, case, fires, path }
        })
        .collect();
    assert!(examples.len() >= 2 * RULES.len());
    examples
}

/// What an example's own rule finds in it.
fn found(example: &Example) -> Vec<Finding> {
    let (_, job, shop) = planned_file(&example.path);
    let findings = plan(&job, &shop).findings;
    findings.into_iter().filter(|finding| finding.rule == example.rule).collect()
}

#[test]
fn every_rule_has_a_job_that_fires_it_and_a_near_miss() {
    for rule in &RULES {
        for kind in ["fires", "near"] {
            let path = format!("examples/rules/{}.{kind}.json", rule.id);
            assert!(root().join(&path).exists(), "{path} is missing");
        }
    }
    for example in examples() {
        let known = RULES.iter().any(|rule| rule.id == example.rule);
        assert!(known, "{}: there is no such rule", example.path);
    }
}

#[test]
fn every_rule_fires_on_its_jobs() {
    for example in examples().iter().filter(|example| example.fires) {
        let cases: Vec<&str> = found(example).iter().map(|finding| finding.case).collect();
        match &example.case {
            None => assert!(!cases.is_empty(), "{} fires nothing", example.path),
            Some(case) => {
                assert!(cases.contains(&case.as_str()), "{} fires {cases:?}", example.path)
            }
        }
    }
}

#[test]
fn every_rule_is_quiet_on_the_near_misses() {
    for example in examples().iter().filter(|example| !example.fires) {
        let cases: Vec<&str> = found(example).iter().map(|finding| finding.case).collect();
        assert!(cases.is_empty(), "{} fires {cases:?}", example.path);
    }
}

/// A near miss is the same job but for one text or two.
#[test]
fn a_near_miss_is_near() {
    let examples = examples();
    for near in examples.iter().filter(|example| !example.fires) {
        let fires = examples
            .iter()
            .find(|other| other.fires && other.rule == near.rule && other.case == near.case)
            .unwrap_or_else(|| panic!("{} misses nothing", near.path));
        let texts = |example: &Example| -> BTreeMap<String, String> {
            let (draft, ..) = planned_file(&example.path);
            let said = |(path, text): (&str, &str)| (path.to_owned(), text.to_owned());
            draft.all().map(said).filter(|(path, _)| path != "title").collect()
        };
        let (near_texts, fires_texts) = (texts(near), texts(fires));
        let all: BTreeSet<&String> = near_texts.keys().chain(fires_texts.keys()).collect();
        let differ: Vec<&&String> =
            all.iter().filter(|path| near_texts.get(**path) != fires_texts.get(**path)).collect();
        assert!((1..=2).contains(&differ.len()), "{} differs in {differ:?}", near.path);
    }
}

/// The cases that have words are the cases there are (a test of the words sees to that): each is fired.
#[test]
fn every_case_is_fired_by_some_job() {
    let fired: BTreeSet<String> = examples()
        .iter()
        .filter(|example| example.fires)
        .flat_map(|example| found(example).into_iter().map(|finding| finding.key()))
        .collect();
    let words = Words::load(&[EN]);
    let spoken = |key: &str| words.pattern(key, None).is_some_and(|words| !words.is_empty());
    let cases = words.all().map(|(key, _)| key).filter(|key| key.starts_with("rule."));
    let silent: Vec<&str> =
        cases.filter(|key| !key.ends_with(".cure") && !fired.contains(*key)).collect();
    assert!(silent.is_empty(), "no job fires {silent:?}");
    for key in fired {
        assert!(spoken(&key) && spoken(&format!("{key}.cure")), "{key} has no words or no cure");
    }
}

/// A limit that no rule looks at would be shown, but decide nothing.
#[test]
fn every_limit_is_a_rule_and_decides_the_verdict() {
    for limit in LIMITS {
        assert!(
            RULES.iter().any(|rule| rule.id == limit.name()),
            "{} decides nothing",
            limit.name()
        );
    }
    let limits: Vec<&str> = LIMITS.iter().map(|limit| limit.name()).collect();
    for example in examples() {
        let (_, job, shop) = planned_file(&example.path);
        let planned = plan(&job, &shop);
        for finding in &planned.findings {
            let grave = finding.weight >= Weight::Marginal;
            let decides = limits.contains(&finding.rule);
            // Apart from limits only a book that cannot be stitched at all is refused.
            let refused = finding.weight == Weight::DoesNotFit
                && ["too_few_sheets", "stitch_room"].contains(&finding.rule);
            assert!(
                grave == (decides || refused),
                "{}: {} {:?}",
                example.path,
                finding.rule,
                finding.weight
            );
        }
        let worst = planned.findings.iter().map(|finding| finding.weight).max();
        let verdict = match worst {
            Some(Weight::DoesNotFit) => Verdict::DoesNotFit,
            Some(Weight::Unlikely) => Verdict::Unlikely,
            Some(Weight::Marginal) => Verdict::Marginal,
            _ => Verdict::Fits,
        };
        assert_eq!(planned.verdict, verdict, "{}", example.path);
        let sorted = planned.findings.is_sorted_by(|one, next| one.weight >= next.weight);
        assert!(sorted, "{}: the gravest comes first", example.path);
    }
}

#[test]
fn names_are_unique() {
    let ids: BTreeSet<&str> = RULES.iter().map(|rule| rule.id).collect();
    assert_eq!(ids.len(), RULES.len());
}
