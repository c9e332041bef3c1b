//! A text that is half said is no fault while somebody types it, and one once the field is left.

use super::event::Patch;
use super::session::Session;
use crate::entry::Fault;
use crate::job::{self, JobReading, Note, SCHEMA};
use crate::view::html;
use crate::words::say;

impl Session {
    /// Somebody has typed to the end in this field: what stands half said in any is told.
    pub(super) fn leave(&mut self, field: &str, out: &mut Vec<Patch>) {
        self.settle();
        self.close_offers(out);
        let reading = job::read(&self.draft, &self.shop);
        self.show_notes(&reading, out);
        self.echo_again(out);
        if let Some(fault) = self.half_said(field, &reading) {
            out.push(Patch::Announce { text: self.printer().text(&fault.wrong) });
        }
    }

    /// What is wrong with a text that cannot be read to its end, once nobody types there any more.
    pub(super) fn half_said(&self, path: &str, reading: &JobReading) -> Option<Fault> {
        let text = self.draft.get(path).trim();
        let half = reading.notes.get(path) == Some(&Note::Incomplete);
        if !half || text.is_empty() || self.history.is_typed_in(path) {
            return None;
        }
        let wrong = say("answer.half").text("field", html::field_name(path, &self.printer()));
        let repair = SCHEMA.field(path)?.kind.example();
        Some(Fault { wrong: wrong.text("given", text), repair })
    }
}
