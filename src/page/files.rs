//! Files that are opened and saved, and what is said of that.

use super::designing::is_design;
use super::event::Patch;
use super::reading::may_read;
use super::session::Session;
use crate::draft::{Draft, FieldError, Tree, from_tree};
use crate::job::{self, read_link};
use crate::shop;
use crate::view::html;
use crate::words::{Say, say};

/// A job or shop file as it was opened: saved again without a change it is the same file, byte for byte.
#[derive(Debug, Clone)]
pub(super) struct Opened {
    text: String,
    draft: Draft,
}

impl Opened {
    /// The file's own text, as long as what it says still holds.
    pub(super) fn unchanged(&self, draft: &Draft) -> Option<String> {
        (self.draft == *draft).then(|| self.text.clone())
    }
}

/// What became of what was opened, saved or copied last.
#[derive(Debug)]
pub(super) enum Note {
    /// It was done.
    Done(Say),
    /// It was not: the sentence above the list of a file's faults, and the list.
    Faults(&'static str, Vec<FieldError>),
    /// It was not, for what is wrong with the form.
    Unread(Vec<FieldError>),
}

impl Note {
    /// A sentence without slots.
    pub(super) fn said(key: &str) -> Self {
        Self::Done(say(key))
    }
}

impl Session {
    /// A file named after the book.
    pub(super) fn download(&self, extension: &str, text: String, out: &mut Vec<Patch>) {
        out.push(Patch::Download { name: self.file_name(extension), text });
    }

    /// The name of a file that is named after the book.
    pub(super) fn file_name(&self, extension: &str) -> String {
        let dashed = |letter: char| if letter.is_alphanumeric() { letter } else { '-' };
        let title: String = self.draft.get("title").chars().map(dashed).collect();
        let name = match title.trim_matches('-') {
            "" => "book".to_owned(),
            title => title.to_lowercase(),
        };
        format!("{name}.{extension}")
    }

    /// What was kept last time and cannot be read, as it was.
    pub(super) fn save_kept(&mut self, out: &mut Vec<Patch>) {
        if let Some(text) = self.unread.take() {
            self.file_note = None;
            self.show_file_note(out);
            out.push(Patch::Download { name: "last-time.quirefit-saved.json".to_owned(), text });
            out.push(Patch::Later {});
        }
    }

    /// Something was opened, dropped or pasted: a link, a code, a PDF, a job file, a shop file or a
    /// list of titles, told apart by what it says it is.
    pub(super) fn file(&mut self, name: &str, text: &str, out: &mut Vec<Patch>) {
        if let Some(read) = read_link(text) {
            return self.open_link(read, out);
        }
        if is_design(name, text) {
            return self.begin_design(name, out);
        }
        if !text.trim_start_matches('\u{feff}').trim_start().starts_with('{')
            && self.is_list(name, text, out)
        {
            return;
        }
        let note = match self.open_file(text, out) {
            Ok(key) => Note::said(key),
            Err(errors) => Note::Faults("file.not-opened", errors),
        };
        self.note(note, out);
    }

    fn open_file(
        &mut self,
        text: &str,
        out: &mut Vec<Patch>,
    ) -> Result<&'static str, Vec<FieldError>> {
        let foreign = || vec![FieldError::repaired("", "", say("file.no-json"))];
        // Where bytes were no letters, the script has put this in their place: saved again it would be
        // another file, and what was meant is not known.
        if text.contains(char::REPLACEMENT_CHARACTER) {
            return Err(vec![FieldError::repaired("", "", say("file.no-utf8"))]);
        }
        // The mark of UTF-8 is the file's, not the text's.
        let tree = (self.json.parse)(text.trim_start_matches('\u{feff}')).ok_or_else(foreign)?;
        let is = |format: &str| {
            matches!(&tree, Tree::Map(entries)
                if entries.iter().any(|(key, value)| key == "format" && *value == Tree::text(format)))
        };
        if !is(shop::SCHEMA.format) {
            let draft = from_tree(&tree, &job::SCHEMA)?;
            self.opened = Some(Opened { text: text.to_owned(), draft: draft.clone() });
            self.replace(draft, out);
            return Ok("file.job-opened");
        }
        let draft = from_tree(&tree, &shop::SCHEMA)?;
        self.shop = shop::read(&draft)?;
        self.opened_shop = Some(Opened { text: text.to_owned(), draft: draft.clone() });
        self.own_shop = Some(draft);
        self.advising.forget();
        self.versions.plan_again(&self.shop);
        let line = self.draft.get("line");
        if !line.is_empty() && self.shop.line(line).is_none() {
            self.settle();
            self.remember("");
            self.draft.set("line", "");
        }
        self.refill(out);
        Ok("file.shop-opened")
    }

    /// Opens the region of what was brought, and brings it into view.
    pub(super) fn turn_to(region: &str, out: &mut Vec<Patch>) {
        let (id, open) = (format!("open-{region}"), Some(String::new()));
        out.push(Patch::Attr { id, name: "open", value: open });
        out.push(Patch::Near { id: format!("{region}-state") });
    }

    /// Says what became of it.
    pub(super) fn note(&mut self, note: Note, out: &mut Vec<Patch>) {
        self.file_note = Some(note);
        self.show_file_note(out);
    }

    /// The last note, or what is to be done with what cannot be read.
    pub(super) fn show_file_note(&mut self, out: &mut Vec<Patch>) {
        let printer = self.printer();
        let note = match &self.file_note {
            Some(Note::Done(told)) => printer.html(told).into_string(),
            Some(Note::Faults(head, errors)) => maud::html! {
                p { strong { (printer.word(head)) } }
                @if may_read(self.reading, errors) {
                    (html::file_faults(errors, &printer))
                } @else {
                    p { (printer.word("file.for-makers")) }
                }
            }
            .into_string(),
            Some(Note::Unread(errors)) => maud::html! {
                p { strong { (printer.word("answer.unread")) } }
                (html::form_faults(errors, &printer))
            }
            .into_string(),
            None if self.unread.is_some() => html::unread(&printer).into_string(),
            None => String::new(),
        };
        self.set_html("file-note", note, out);
    }
}
