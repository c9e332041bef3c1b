//! Files that are opened and saved.

use super::event::Patch;
use super::session::Session;
use crate::draft::{FieldError, Tree, from_tree};
use crate::view::html;
use crate::words::say;
use crate::{job, shop};

impl Session {
    /// Saves a job or a shop under the title of the job.
    pub(super) fn save(&self, what: &str, tree: Tree, out: &mut Vec<Patch>) {
        let title: String = self
            .draft
            .get("title")
            .chars()
            .map(|letter| if letter.is_alphanumeric() { letter } else { '-' })
            .collect();
        let name = match (what, title.trim_matches('-')) {
            ("job", "") => "book".to_owned(),
            ("job", title) => title.to_lowercase(),
            _ => "shop".to_owned(),
        };
        let text = (self.json.print)(&tree);
        out.push(Patch::Download { name: format!("{name}.quirefit-{what}.json"), text });
    }

    /// A file was opened: a job or a shop, told apart by what it says it is.
    pub(super) fn file(&mut self, text: &str, out: &mut Vec<Patch>) {
        self.file_note = Some(self.open_file(text, out));
        self.show_file_note(out);
    }

    fn open_file(
        &mut self,
        text: &str,
        out: &mut Vec<Patch>,
    ) -> Result<&'static str, Vec<FieldError>> {
        let foreign = || {
            vec![FieldError {
                path: String::new(),
                given: String::new(),
                wrong: say("file.no-json"),
                repair: say("file.no-json.repair"),
            }]
        };
        let tree = (self.json.parse)(text).ok_or_else(foreign)?;
        let is = |format: &str| {
            matches!(&tree, Tree::Map(entries)
                if entries.iter().any(|(key, value)| key == "format" && *value == Tree::text(format)))
        };
        if is(shop::SCHEMA.format) {
            let draft = from_tree(&tree, &shop::SCHEMA)?;
            self.shop = shop::read(&draft)?;
            self.own_shop = Some(draft);
            self.advising.forget();
            let line = self.draft.get("line");
            if !line.is_empty() && self.shop.line(line).is_none() {
                self.settle();
                self.remember("");
                self.draft.set("line", "");
            }
            self.refill(out);
            return Ok("file.shop-opened");
        }
        let draft = from_tree(&tree, &job::SCHEMA)?;
        self.replace(draft, out);
        Ok("file.job-opened")
    }

    /// What became of the last file, or what is to be done with what cannot be read.
    pub(super) fn show_file_note(&mut self, out: &mut Vec<Patch>) {
        let note = match &self.file_note {
            Some(Ok(key)) => self.printer().word(key).to_owned(),
            Some(Err(errors)) => self.fault_list(errors),
            None if self.unread.is_some() => html::unread(&self.printer()).into_string(),
            None => String::new(),
        };
        self.set_html("file-note", note, out);
    }

    fn fault_list(&self, errors: &[FieldError]) -> String {
        let printer = self.printer();
        maud::html! {
            p { strong { (printer.word("file.not-opened")) } }
            @if self.may_read(errors) {
                ul { @for error in errors { li { (html::file_fault(error, &printer)) } } }
            } @else {
                p { (printer.word("file.for-makers")) }
            }
        }
        .into_string()
    }
}
