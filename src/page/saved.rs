//! What the browser keeps for next time, and the JSON it is written in.

use crate::draft::{Draft, Tree, from_tree, to_tree};
use crate::{job, shop};

/// JSON read and written by whatever the platform has: the browser's own, or a library natively.
#[derive(Debug, Clone, Copy)]
pub struct Json {
    /// Text to tree; nothing when it is no JSON.
    pub parse: fn(&str) -> Option<Tree>,
    /// Tree to text.
    pub print: fn(&Tree) -> String,
}

/// The kept state: the job in the form, a job not yet decided about, and the shop's file.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Saved {
    pub job: Option<Draft>,
    pub earlier: Option<Draft>,
    pub shop: Option<Draft>,
}

/// The name of the kept form.
const FORMAT: &str = "quirefit-saved";

impl Saved {
    /// Reads a kept state. Whatever of it cannot be read is left out: the page starts all the same.
    pub(super) fn read(text: &str, json: Json) -> Self {
        let Some(Tree::Map(entries)) = (json.parse)(text) else { return Self::default() };
        let part = |name: &str, schema| {
            let (_, tree) = entries.iter().find(|(key, _)| key == name)?;
            from_tree(tree, schema).ok().filter(|draft| !draft.is_empty())
        };
        if !entries.iter().any(|(key, value)| key == "format" && *value == Tree::text(FORMAT)) {
            return Self::default();
        }
        Self {
            job: part("job", &job::SCHEMA),
            earlier: part("earlier", &job::SCHEMA),
            shop: part("shop", &shop::SCHEMA),
        }
    }

    /// Writes it.
    pub(super) fn print(&self, json: Json) -> String {
        let mut entries = vec![("format".to_owned(), Tree::text(FORMAT))];
        for (name, draft, schema) in [
            ("job", &self.job, &job::SCHEMA),
            ("earlier", &self.earlier, &job::SCHEMA),
            ("shop", &self.shop, &shop::SCHEMA),
        ] {
            if let Some(draft) = draft {
                entries.push((name.to_owned(), to_tree(draft, schema)));
            }
        }
        (json.print)(&Tree::Map(entries))
    }
}
