//! What every target does with what it has read: plan it, and look at what comes out.

use quirefit::draft::{Draft, Schema, Tree, from_tree};
use quirefit::job::{self, Job};
use quirefit::page::Json;
use quirefit::plan::{Plan, plan};
use quirefit::shop::{self, Shop, draft_of};
use quirefit::view::{Numbers, Printer, letter, text, xjdf};
use quirefit::words::{EN, EN_GB, Words};
use std::sync::LazyLock;

/// The library's JSON, in place of the browser's own.
pub const JSON: Json = Json { parse, print };

static SHOP: LazyLock<Shop> = LazyLock::new(shop::demo);
static WORDS: LazyLock<Words> = LazyLock::new(|| Words::load(&[EN, EN_GB]));

fn parse(text: &str) -> Option<Tree> {
    serde_json::from_str(text).ok()
}

fn print(tree: &Tree) -> String {
    serde_json::to_string_pretty(tree).unwrap_or_default()
}

/// A file's draft, if its bytes are one.
pub fn draft(bytes: &[u8], schema: &Schema) -> Option<Draft> {
    let text = std::str::from_utf8(bytes).ok()?;
    from_tree(&parse(text)?, schema).ok()
}

/// Reads a draft and plans the job in the demo shop, if there is one.
pub fn work_out(draft: &Draft) {
    work_out_in(draft, &SHOP);
}

/// Reads a draft and plans the job in a shop, if there is one; every fault that is told has words.
pub fn work_out_in(draft: &Draft, shop: &Shop) {
    let printer = Printer { words: &WORDS, numbers: Numbers::METRIC };
    let reading = job::read(draft, shop);
    for error in reading.errors(draft) {
        assert!(!printer.text(&error.wrong).is_empty(), "{error:?}");
    }
    if let Some(job) = &reading.job {
        let plan = plan(job, shop);
        sound(job, &plan);
        let told = [
            text::text(job, shop, &plan, &printer),
            letter::letter(job, shop, &plan, &printer),
            xjdf::xjdf(job, &plan, &printer),
        ];
        // What a person has typed may say so; other programs get it without its control letters.
        let typed = |word: &str| {
            let letters = |text: &str| text.chars().filter(|c| c.is_alphabetic()).collect::<String>();
            let shop = draft_of(shop);
            draft.all().chain(shop.all()).any(|(_, text)| letters(text).contains(word))
        };
        for told in told {
            assert!(typed("NaN") || !told.contains("NaN"), "{told}");
            assert!(typed("inf") || !told.contains("inf\u{a0}"), "{told}");
        }
    }
}

/// What holds of every plan.
fn sound(job: &Job, plan: &Plan) {
    let results = &plan.results;
    let closed = results.stack.closed;
    assert!(closed.low <= closed.nominal && closed.nominal <= closed.high, "{closed:?}");
    assert!(closed.high.0.get().is_finite());
    assert_eq!(results.leaves.len(), job.sheets().get() as usize);
}
