//! What goes to the helper that searches beside the page, and what comes back.
//!
//! The helper is a second instance of the planner with no page of its own. It is asked with the texts
//! of a job and a shop, and answers with changes and texts to type; the page reads and plans those
//! once more before it shows them.

use super::Json;
use crate::advise::{Advice, Inverse, MOST_TRIED, Offer, Told};
use crate::check::Verdict;
use crate::draft::{Draft, Tree, from_tree};
use crate::job::{self, Job};
use crate::plan::{Plan, plan};
use crate::shop::{self, Shop};
use crate::units::{Gsm, Pages};

/// Searches for a job file's text in a shop file's, or in the demo shop where that is empty. The
/// answer is text as well; empty where a file cannot be read.
#[must_use]
pub fn search(job: &str, shop: &str, json: Json) -> String {
    let job = (json.parse)(job).and_then(|tree| from_tree(&tree, &job::SCHEMA).ok());
    let found = shop_of(shop, json).zip(job).and_then(|(shop, draft)| {
        let job = job::read(&draft, &shop).job?;
        let planned = plan(&job, &shop);
        Some(Advice::searched(&draft, &job, &shop, &planned, MOST_TRIED))
    });
    found.map(|advice| (json.print)(&to_tree(&advice))).unwrap_or_default()
}

/// The shop of a file's text, the demo shop where that is empty; nothing where it cannot be read.
pub(super) fn shop_of(text: &str, json: Json) -> Option<Shop> {
    match text {
        "" => Some(shop::demo()),
        text => shop::read(&from_tree(&(json.parse)(text)?, &shop::SCHEMA).ok()?).ok(),
    }
}

/// A list of short lists of texts.
fn rows<const N: usize>(rows: impl Iterator<Item = [String; N]>) -> Tree {
    let row = |row: [String; N]| Tree::List(row.into_iter().map(Tree::Text).collect());
    Tree::List(rows.map(row).collect())
}

fn to_tree(advice: &Advice) -> Tree {
    let offers = advice.offers.iter().map(|offer| {
        let told = offer.told.iter().map(|told| {
            [told.kind.id.to_owned(), told.case.clone(), told.to.clone(), told.then.clone()]
        });
        let edits = offer.edits.iter().map(|(path, text)| [path.clone(), text.clone()]);
        Tree::Map(vec![("told".to_owned(), rows(told)), ("edits".to_owned(), rows(edits))])
    });
    let mut entries = vec![
        ("offers".to_owned(), Tree::List(offers.collect())),
        ("tried".to_owned(), Tree::Number(advice.tried as f64)),
    ];
    if let Some(inverse) = &advice.inverse {
        if let Some(pages) = inverse.most_pages {
            entries.push(("most_pages".to_owned(), Tree::Number(pages.as_f64())));
        }
        if let Some((paper, weight)) = &inverse.heaviest {
            entries.push(("heaviest".to_owned(), Tree::Text(paper.clone())));
            entries.push(("weight".to_owned(), Tree::Number(weight.get())));
        }
    }
    Tree::Map(entries)
}

fn entry<'a>(tree: &'a Tree, name: &str) -> Option<&'a Tree> {
    let Tree::Map(entries) = tree else { return None };
    entries.iter().find(|(key, _)| key == name).map(|(_, value)| value)
}

fn number(tree: &Tree, name: &str) -> Option<f64> {
    match entry(tree, name)? {
        Tree::Number(number) => Some(*number),
        _ => None,
    }
}

fn list<'a>(tree: &'a Tree, name: &str) -> &'a [Tree] {
    match entry(tree, name) {
        Some(Tree::List(members)) => members,
        _ => &[],
    }
}

fn texts<const N: usize>(tree: &Tree) -> Option<[String; N]> {
    let Tree::List(members) = tree else { return None };
    let texts: Vec<String> = members.iter().filter_map(Tree::typed).collect();
    texts.try_into().ok()
}

/// What a helper found, each way read and planned once more for the draft as it stands.
pub(super) fn advice(found: &Tree, draft: &Draft, job: &Job, shop: &Shop, plan: &Plan) -> Advice {
    let offer = |tree: &Tree| {
        let told = list(tree, "told").iter().filter_map(|row| {
            let [kind, case, to, then] = texts(row)?;
            Told::again(&kind, &case, &to, &then)
        });
        let edits = list(tree, "edits").iter().filter_map(|row| {
            let [path, text] = texts(row)?;
            Some((path, text))
        });
        Offer::of(draft, shop, told.collect(), edits.collect(), Verdict::Marginal)
    };
    let heaviest = match (entry(found, "heaviest"), number(found, "weight")) {
        (Some(Tree::Text(paper)), Some(weight)) => Some((paper.clone(), Gsm(weight))),
        _ => None,
    };
    let most_pages = number(found, "most_pages").map(|pages| Pages(pages as u32));
    let mut advice = Advice {
        inverse: Some(Inverse { most_pages, heaviest }),
        tried: number(found, "tried").unwrap_or_default() as usize,
        ..Advice::at_once(job, shop, plan)
    };
    advice.offer(draft, shop, list(found, "offers").iter().filter_map(offer).collect());
    advice
}
