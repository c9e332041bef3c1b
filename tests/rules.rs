//! Every rule fires on its job and is quiet on the near miss.
//!
//! `examples/rules/ID.fires.json` and `ID.near.json` are planned in the demo shop.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use quirefit::check::RULES;
use quirefit::draft::{Draft, Schema, Tree, from_tree};
use quirefit::shop::Shop;
use quirefit::units::Gram;
use quirefit::{job, plan, shop};
use std::path::PathBuf;

fn path(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("examples/rules").join(name)
}

fn draft(name: &str, schema: &Schema) -> Draft {
    let text = std::fs::read_to_string(path(name)).unwrap_or_else(|_| panic!("{name} is missing"));
    let tree: Tree = serde_json::from_str(&text).unwrap();
    from_tree(&tree, schema).unwrap_or_else(|errors| panic!("{name}: {errors:?}"))
}

/// The demo shop; for cartons one that lifts no more than half a pound, since no stitched book is too
/// heavy for the demo's.
fn shop_for(rule: &str) -> Shop {
    let mut shop = shop::demo();
    if rule == "carton_heavy" {
        shop.carton.mass_most = Some(Gram(250.0));
        shop.carton.tare = Gram(0.0);
    }
    shop
}

/// Whether a rule finds something in the job of that name.
fn finds(rule: &str, ending: &str) -> bool {
    let shop = shop_for(rule);
    let name = format!("{rule}.{ending}.json");
    let draft = draft(&name, &job::SCHEMA);
    let reading = job::read(&draft, &shop);
    let errors = reading.errors(&draft);
    let job = reading.job.unwrap_or_else(|| panic!("{name}: {errors:?}"));
    plan::plan(&job, &shop).findings.iter().any(|finding| finding.rule == rule)
}

#[test]
fn every_rule_fires_on_its_job() {
    let quiet: Vec<&str> =
        RULES.iter().map(|rule| rule.id).filter(|id| !finds(id, "fires")).collect();
    assert!(quiet.is_empty(), "these do not fire: {quiet:?}");
}

#[test]
fn every_rule_is_quiet_on_the_near_miss() {
    let loud: Vec<&str> = RULES.iter().map(|rule| rule.id).filter(|id| finds(id, "near")).collect();
    assert!(loud.is_empty(), "these fire: {loud:?}");
}

#[test]
fn no_job_belongs_to_a_rule_that_is_gone() {
    for entry in std::fs::read_dir(path("")).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        let rule = name.split('.').next().unwrap();
        assert!(RULES.iter().any(|row| row.id == rule), "{name} has no rule");
    }
}
