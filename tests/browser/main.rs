//! The built page, opened from disk in real browsers.
//!
//! `cargo test --features browser --test browser [-- WORDS…]` runs the cases whose full name, such
//! as `firefox::typing::answer_follows`, holds one of the words. `pkg-scripts/test` builds the page
//! and brings in the browsers first. A case is one function in `cases/` and one row in its list.

// Indexing JSON gives null where there is nothing; nothing else is indexed here.
#![allow(clippy::indexing_slicing)]

mod browser;
mod case;
mod cases;
mod console;
mod driver;
mod engine;
#[path = "../support/largest.rs"]
mod largest;
mod look;
#[path = "../support/made.rs"]
mod made;
mod page;
mod server;

use browser::Browser;
use case::{Case, Outcome};
use engine::{Engine, Scheme};
use page::Page;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind, set_hook};
use std::process::ExitCode;
use std::time::{Duration, Instant};
use tokio::runtime::{Builder, Runtime};

/// A case that takes longer hangs.
const PATIENCE: Duration = Duration::from_secs(120);

thread_local! {
    /// The failed assertion of the case that runs.
    static BROKEN: RefCell<String> = RefCell::default();
}

/// What has been counted so far.
#[derive(Default)]
struct Tally {
    passed: usize,
    failed: usize,
    /// By browser, as it calls itself: cases that passed, and all.
    engines: BTreeMap<String, (usize, usize)>,
}

impl Tally {
    fn count(&mut self, name: &str, browser: &str, began: Instant, outcome: &Outcome) {
        let took = began.elapsed().as_secs_f64();
        let (passed, all) = self.engines.entry(browser.to_owned()).or_default();
        (*passed, *all) = (*passed + usize::from(outcome.is_ok()), *all + 1);
        match outcome {
            Ok(()) => {
                self.passed += 1;
                println!("test {name} … ok ({took:.1} s)");
            }
            Err(error) => {
                self.failed += 1;
                println!("test {name} … FAILED ({took:.1} s)\n    {error}");
            }
        }
    }

    /// The browsers that ran, as a table.
    fn table(&self) -> String {
        let mut table = "| browser | cases | passed |\n|---|--:|--:|\n".to_owned();
        for (browser, (passed, all)) in &self.engines {
            table += &format!("| {browser} | {all} | {passed} |\n");
        }
        table
    }
}

fn main() -> ExitCode {
    let words: Vec<String> =
        std::env::args().skip(1).filter(|word| !word.starts_with('-')).collect();
    set_hook(Box::new(|panic| BROKEN.set(panic.to_string().replace('\n', "\n    "))));
    let mut tally = Tally::default();
    match Builder::new_current_thread().enable_all().build() {
        Ok(runtime) => run(&runtime, &words, &mut tally),
        Err(error) => eprintln!("no runtime: {error}"),
    }
    // For whoever asks later which browsers it works in.
    if let Err(error) = std::fs::write(browser::scratch().join("engines.md"), tally.table()) {
        eprintln!("the table of browsers is not kept: {error}");
    }
    print!("\n{}", tally.table());
    println!("\n{} passed, {} failed", tally.passed, tally.failed);
    // A run that found nothing to do has shown nothing.
    if tally.failed == 0 && tally.passed > 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

/// All cases, in as few browser sessions as possible: one for each engine and colour scheme.
fn run(runtime: &Runtime, words: &[String], tally: &mut Tally) {
    let all = cases::all();
    for engine in Engine::ALL {
        for scheme in [Scheme::Light, Scheme::Dark] {
            let wanted: Vec<(String, &Case)> = all
                .iter()
                .copied()
                .filter(|case| case.scheme == scheme && case.engines.contains(&engine))
                .map(|case| (format!("{}::{}", engine.name(), case.name), case))
                .filter(|(name, _)| {
                    words.is_empty() || words.iter().any(|word| name.contains(word))
                })
                .collect();
            if !wanted.is_empty() {
                session(runtime, engine, scheme, &wanted, tally);
            }
        }
    }
}

fn session(
    runtime: &Runtime,
    engine: Engine,
    scheme: Scheme,
    wanted: &[(String, &Case)],
    tally: &mut Tally,
) {
    let began = Instant::now();
    let mut browser = match runtime.block_on(Browser::start(engine, scheme, "")) {
        Ok(browser) => browser,
        Err(error) => {
            let outcome = Err(format!("the browser did not start: {error}").into());
            for (name, _) in wanted {
                tally.count(name, engine.name(), began, &outcome);
            }
            return;
        }
    };
    let called = browser.called();
    for (name, case) in wanted {
        let began = Instant::now();
        let mut outcome = once(runtime, &browser, case);
        // A browser that has crashed says nothing of the page, and would take every further case with it:
        // the case is tried in a new one, and the report says so.
        if outcome.is_err() && !runtime.block_on(lives(&browser)) {
            println!("the browser died in {name}: once more in a new one");
            if let Ok(new) = runtime.block_on(Browser::start(engine, scheme, "")) {
                let dead = core::mem::replace(&mut browser, new);
                runtime.block_on(dead.stop());
                outcome = once(runtime, &browser, case);
            }
        }
        tally.count(name, &called, began, &outcome);
    }
    runtime.block_on(browser.stop());
}

/// One case; a failed assertion must not take the others, or the browser, with it.
fn once(runtime: &Runtime, browser: &Browser, case: &Case) -> Outcome {
    let page = Page::new(browser);
    let outcome = catch_unwind(AssertUnwindSafe(|| runtime.block_on(attempt(&page, case))))
        .unwrap_or_else(|_| Err(BROKEN.take().into()));
    if outcome.is_err() {
        let picture = format!("failed-{}", case.name.replace("::", "-"));
        // Only a help for whoever reads the failure; it has been counted already.
        drop(runtime.block_on(look::screenshot(&page, &picture)));
    }
    outcome
}

/// Whether a browser still answers.
async fn lives(browser: &Browser) -> bool {
    let asked = browser.client.execute("return 1", vec![]);
    matches!(tokio::time::timeout(Duration::from_secs(5), asked).await, Ok(Ok(_)))
}

/// One case on a freshly opened page; whatever it does, the console must stay silent.
async fn attempt(page: &Page<'_>, case: &Case) -> Outcome {
    let work = async {
        page.fresh().await?;
        (case.run)(page).await?;
        page.settle().await?;
        match page.complaints().await?.as_slice() {
            [] => Ok(()),
            lines => Err(format!("the console says: {}", lines.join("\n    ")).into()),
        }
    };
    tokio::time::timeout(PATIENCE, work).await?
}
