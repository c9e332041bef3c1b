//! What the browser keeps for next time, and the JSON it is written in.

use super::language::SETTING;
use super::reading::{name_of, reading_of};
use super::true_size::card_pixels;
use crate::draft::{Draft, Tree, from_tree, to_tree};
use crate::view::{Reading, Ticks};
use crate::words::Language;
use crate::{job, shop};

/// JSON read and written by whatever the platform has: the browser's own, or a library natively.
#[derive(Debug, Clone, Copy)]
pub struct Json {
    /// Text to tree; nothing when it is no JSON.
    pub parse: fn(&str) -> Option<Tree>,
    /// Tree to text.
    pub print: fn(&Tree) -> String,
}

/// The kept state.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Saved {
    /// The language that somebody has chosen.
    pub language: Option<&'static Language>,
    /// Who reads: a client who opens the page again is still a client.
    pub reading: Reading,
    /// Pixels along a bank card, where somebody has held one to the screen.
    pub card: Option<u32>,
    /// The job in the form.
    pub job: Option<Draft>,
    /// Jobs that nobody has decided about yet, the latest last.
    pub earlier: Vec<Draft>,
    /// Versions kept to compare.
    pub versions: Vec<Draft>,
    /// What has been ticked off on the set-up list.
    pub ticks: Ticks,
    /// The shop's file.
    pub shop: Option<Draft>,
    /// A kept state that could not be read: damaged, or a newer page's.
    pub unread: Option<String>,
}

impl Default for Saved {
    fn default() -> Self {
        Self {
            language: None,
            card: None,
            reading: Reading::Design,
            job: None,
            earlier: Vec::new(),
            versions: Vec::new(),
            ticks: Ticks::default(),
            shop: None,
            unread: None,
        }
    }
}

/// The name of the kept form.
const FORMAT: &str = "quirefit-saved";
/// Undecided jobs kept at most.
const MOST: usize = 5;

impl Saved {
    /// Reads a kept state. Where any of it cannot be read the page starts all the same, and the text
    /// is kept as it is.
    pub(super) fn read(text: &str, json: Json) -> Self {
        let tree = (json.parse)(text);
        let entries = match &tree {
            Some(Tree::Map(entries)) => entries.as_slice(),
            _ => &[],
        };
        let mut whole = true;
        let mut found = Self::default();
        for (key, tree) in entries {
            let mut part = |tree, schema| {
                let draft = from_tree(tree, schema).ok();
                whole &= draft.is_some();
                draft
            };
            match (key.as_str(), tree) {
                ("format", tree) => whole &= *tree == Tree::text(FORMAT),
                (SETTING, Tree::Text(tag)) => found.language = Language::of(tag),
                ("reading", Tree::Text(name)) => match reading_of(name) {
                    Some(reading) => found.reading = reading,
                    None => whole = false,
                },
                ("card", Tree::Text(pixels)) => found.card = card_pixels(pixels),
                ("job", tree) => found.job = part(tree, &job::SCHEMA).filter(says_something),
                ("earlier", Tree::List(list)) => {
                    let jobs = list.iter().filter_map(|tree| part(tree, &job::SCHEMA));
                    found.earlier = jobs.filter(says_something).collect();
                }
                ("versions", Tree::List(list)) => {
                    found.versions =
                        list.iter().filter_map(|tree| part(tree, &job::SCHEMA)).collect();
                }
                ("ticks", Tree::List(list)) => {
                    let texts = list.iter().filter_map(|tree| match tree {
                        Tree::Text(text) => Some(text.clone()),
                        _ => None,
                    });
                    found.ticks = Ticks::of(texts);
                }
                ("shop", tree) => {
                    found.shop = part(tree, &shop::SCHEMA);
                    whole &= found.shop.as_ref().is_none_or(|draft| shop::read(draft).is_ok());
                }
                ("unread", Tree::Text(text)) => found.unread = Some(text.clone()),
                _ => whole = false,
            }
        }
        whole &= entries.iter().any(|(key, _)| key == "format");
        if !whole && !text.trim().is_empty() {
            found.unread = Some(text.to_owned());
        }
        found.shop = found.shop.filter(|draft| shop::read(draft).is_ok());
        found
    }

    /// Writes it.
    pub(super) fn print(&self, json: Json) -> String {
        let mut entries = vec![("format".to_owned(), Tree::text(FORMAT))];
        if let Some(language) = self.language {
            entries.push((SETTING.to_owned(), Tree::text(language.tag)));
        }
        if self.reading != Reading::Design {
            entries.push(("reading".to_owned(), Tree::text(name_of(self.reading))));
        }
        if let Some(pixels) = self.card {
            entries.push(("card".to_owned(), Tree::text(pixels.to_string())));
        }
        if let Some(job) = &self.job {
            entries.push(("job".to_owned(), to_tree(job, &job::SCHEMA)));
        }
        if !self.earlier.is_empty() {
            let from = self.earlier.len().saturating_sub(MOST);
            let jobs = self.earlier.iter().skip(from).map(|job| to_tree(job, &job::SCHEMA));
            entries.push(("earlier".to_owned(), Tree::List(jobs.collect())));
        }
        if !self.versions.is_empty() {
            let versions = self.versions.iter().map(|job| to_tree(job, &job::SCHEMA));
            entries.push(("versions".to_owned(), Tree::List(versions.collect())));
        }
        if self.ticks.all().next().is_some() {
            let lines = self.ticks.all().map(|line| Tree::text(line.clone()));
            entries.push(("ticks".to_owned(), Tree::List(lines.collect())));
        }
        if let Some(shop) = &self.shop {
            entries.push(("shop".to_owned(), to_tree(shop, &shop::SCHEMA)));
        }
        if let Some(text) = &self.unread {
            entries.push(("unread".to_owned(), Tree::text(text.clone())));
        }
        (json.print)(&Tree::Map(entries))
    }
}

/// Whether there is more to a job than the unit of the page it was not typed into.
fn says_something(draft: &Draft) -> bool {
    draft.all().any(|(path, _)| path != "units")
}
