//! Prints the body of the page, filled with the first example: `cargo run --example frame`. The build
//! puts it into the page, so that the page reads as a finished sample even where the module cannot run.
//!
//! With `lost` it prints what an element in another page says there, in every language.

use quirefit::advise::{Advice, MOST_TRIED};
use quirefit::draft::Draft;
use quirefit::page::EXAMPLE;
use quirefit::view::html::{Page, Scene, frame};
use quirefit::view::{Numbers, Printer, Reading, Screen, Ticks};
use quirefit::words::{LANGUAGES, Language, built_in};
use quirefit::{job, plan, shop};
use std::collections::BTreeMap;

fn main() {
    match std::env::args().nth(1).as_deref() {
        Some("lost") => print_lost(),
        _ => print_frame(),
    }
}

fn print_lost() {
    let mut said = BTreeMap::new();
    for language in &LANGUAGES {
        let words = language.words(&built_in());
        let tongue = language.tag.get(..2).unwrap_or(language.tag);
        said.entry(tongue).or_insert_with(|| words.plain("embed.lost").to_owned());
    }
    println!("{}", serde_json::json!(said));
}

fn print_frame() {
    let language = Language::first();
    let words = language.words(&built_in());
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let shop = shop::demo();
    let draft = Draft::of(EXAMPLE);
    let job = job::read(&draft, &shop).job;
    let planned = job.as_ref().map(|job| plan::plan(job, &shop));
    let both = job.as_ref().zip(planned.as_ref());
    let advice = both.map(|(job, plan)| Advice::searched(&draft, job, &shop, plan, MOST_TRIED));
    let ticks = Ticks::default();
    let scene = both.zip(advice.as_ref()).map(|((job, plan), advice)| Scene {
        versions: &[],
        ticks: &ticks,
        job,
        shop: &shop,
        plan,
        advice,
        printer,
        reading: Reading::Design,
        screen: Screen::default(),
    });
    let built = &std::env::var("QUIREFIT_BUILT").unwrap_or_default();
    let page = Page { draft: &draft, shop: &shop, printer, language, built, scene };
    println!("{}", frame(&page).into_string());
}
