//! The one line that says it all: fills the fields it speaks of, and owns up where the form has moved on.

use super::event::Patch;
use super::history::State;
use super::session::Session;
use crate::draft::read_text;
use crate::entry::{self, LengthUnit, Phrase};
use crate::job::{SCHEMA, read_link};
use crate::view::html;
use crate::words::say;

/// The fields that the line fills.
const SPOKEN: [&str; 5] = ["pages", "size", "paper", "cover", "copies"];

/// Those that a line need not speak of, and that change the book or its name.
const BESIDE: [&str; 2] = ["cover", "title"];

/// What there was before the line was typed in.
#[derive(Debug)]
pub(super) struct Begun {
    pub(super) before: State,
    /// The example stood in the form.
    fresh: bool,
    /// What the line has said all along.
    said: Vec<(&'static str, String)>,
}

impl Session {
    /// The line was typed in.
    pub(super) fn phrase(&mut self, text: &str, out: &mut Vec<Patch>) {
        self.take_phrase(text, false, out);
    }

    /// Enter in the line: all it says counts, whatever was typed in the fields since.
    pub(super) fn take_phrase_again(&mut self, out: &mut Vec<Patch>) {
        self.settle();
        if !self.said.is_empty() {
            self.take_phrase(&self.said.clone(), true, out);
        }
        self.leave("phrase", out);
    }

    /// Fills the fields. Each key starts again from what the form held before, so that nothing is left
    /// of what the line said half typed. What it has said all along is not taken anew, since the form may
    /// have moved on; but where `all` counts.
    fn take_phrase(&mut self, text: &str, all: bool, out: &mut Vec<Patch>) {
        let said = self.understood(text);
        let mut begun = self.begun.take().unwrap_or_else(|| Begun {
            before: self.state(),
            fresh: self.untouched,
            said: self.understood(&self.said).fields,
        });
        begun.said.retain(|spoken| !all && said.fields.contains(spoken));
        let (mut draft, fresh) = (begun.before.draft.clone(), begun.fresh);
        if fresh && said.speaks() {
            for field in SPOKEN.iter().chain(&["title"]) {
                draft.set(field, "");
            }
        }
        for spoken in said.fields.iter().filter(|spoken| !begun.said.contains(spoken)) {
            draft.set(spoken.0, &spoken.1);
        }
        self.begun = Some(begun);
        let stood = BESIDE.iter().filter(|field| !fresh && !draft.get(field).trim().is_empty());
        self.beside = stood.map(|field| (*field, draft.get(field).to_owned())).collect();
        text.clone_into(&mut self.said);
        if self.scanned(text, out) {
            return;
        }
        if draft != self.draft {
            self.remember("phrase");
            let before = core::mem::replace(&mut self.draft, draft);
            self.send_values(&before, out);
        }
        self.untouched = fresh && !said.speaks();
        self.echo_phrase(out);
        self.show(out);
    }

    /// What a line says.
    fn understood(&self, line: &str) -> Phrase {
        entry::phrase(line, LengthUnit::of(self.draft.get("units")))
    }

    /// Says what of the line was not understood, and which fields say something else by now.
    pub(super) fn echo_phrase(&mut self, out: &mut Vec<Patch>) {
        let mut told = Vec::new();
        if let Some(Err(errors)) = read_link(&self.said) {
            told.extend(errors.into_iter().map(|error| error.wrong));
        } else {
            let said = self.understood(&self.said);
            if !said.rest.is_empty() {
                told.push(say("entry.phrase.left").text("rest", said.rest.join(", ")));
            }
            let moved = self.moved_on(&said);
            if !moved.is_empty() {
                told.push(say("entry.phrase.since").text("fields", moved.join(", ")));
            }
            let beside = self.beside(&said);
            if told.is_empty() && said.speaks() && !beside.is_empty() {
                told.push(say("entry.phrase.beside").text("fields", beside.join(", ")));
            }
        }
        let printer = self.printer();
        let told: Vec<String> = told.iter().map(|told| printer.text(told)).collect();
        self.set_text("echo-phrase", &told.join(" · "), out);
    }

    /// Fields by their labels that mean something else than the line says.
    fn moved_on(&self, said: &Phrase) -> Vec<String> {
        let unit = LengthUnit::of(self.draft.get("units"));
        let moved = said.fields.iter().filter(|(field, text)| {
            let meant = |text| {
                let field = SCHEMA.field(field)?;
                read_text(field.kind, text, unit).value()
            };
            let now = self.draft.get(field);
            now != text && (meant(text).is_none() || meant(text) != meant(now))
        });
        moved.map(|(field, _)| html::field_name(field, &self.printer())).collect()
    }

    /// Fields by their labels that stood in the form before the line and still do, beside what it says:
    /// without them the same words would give another book.
    fn beside(&self, said: &Phrase) -> Vec<String> {
        let silent = self.beside.iter().filter(|(field, text)| {
            let spoken = said.fields.iter().any(|(spoken, _)| spoken == field);
            !spoken && self.draft.get(field) == text
        });
        silent.map(|(field, _)| html::field_name(field, &self.printer())).collect()
    }

    /// The same anew, once something else was done. An empty line keeps the word of what was scanned.
    pub(super) fn echo_again(&mut self, out: &mut Vec<Patch>) {
        if !self.said.is_empty() {
            self.echo_phrase(out);
        }
    }

    /// The line anew.
    pub(super) fn show_phrase(&mut self, out: &mut Vec<Patch>) {
        out.push(Patch::Value { id: "phrase".to_owned(), text: self.said.clone() });
        self.echo_phrase(out);
    }
}
