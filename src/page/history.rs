//! Undo and redo: every change of what stands in the form is a step, keystrokes in one field are one.

use super::event::Patch;
use super::session::Session;
use crate::advise::Offer;
use crate::draft::Draft;
use crate::words::say;

/// Steps that can be taken back.
const HISTORY: usize = 200;
/// Fields that are named when a step is taken back.
const NAMED: usize = 4;

/// What a step brings back.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct State {
    pub(super) draft: Draft,
    /// The one line that says it all.
    pub(super) phrase: String,
    /// The offer that led here.
    taken: Option<Offer>,
}

/// States before and after the one that stands in the form.
#[derive(Debug, Default)]
pub(super) struct History {
    past: Vec<State>,
    future: Vec<State>,
    /// The field typed in last.
    edited: String,
    /// The offer that led to what stands in the form.
    pub(super) taken: Option<Offer>,
}

impl History {
    /// Keeps a state that is about to change, once for a run of keystrokes in one field.
    fn keep(&mut self, field: &str, state: State) {
        if field.is_empty() || self.edited != field {
            if self.past.len() == HISTORY {
                self.past.remove(0);
            }
            self.past.push(state);
        }
        self.future.clear();
        field.clone_into(&mut self.edited);
    }

    /// Whatever is typed from now on is a step of its own.
    pub(super) fn settle(&mut self) {
        self.edited.clear();
    }

    /// Somebody is typing in this field, or in the one line, which fills any.
    pub(super) fn is_typed_in(&self, field: &str) -> bool {
        [field, "phrase"].contains(&&*self.edited)
    }

    /// Whether there is a step back, or forward.
    pub(super) fn can(&self, back: bool) -> bool {
        !if back { &self.past } else { &self.future }.is_empty()
    }

    /// Goes one step, if there is one.
    fn step(&mut self, back: bool, now: &mut State) {
        let (from, to) = if back {
            (&mut self.past, &mut self.future)
        } else {
            (&mut self.future, &mut self.past)
        };
        if let Some(state) = from.pop() {
            to.push(core::mem::replace(now, state));
        }
    }
}

impl Session {
    /// What stands in the form, and how it came there.
    pub(super) fn state(&self) -> State {
        let (draft, phrase) = (self.draft.clone(), self.said.clone());
        State { draft, phrase, taken: self.history.taken.clone() }
    }

    /// Keeps what stands in the form for undo. A change of the one line takes everything back to
    /// before its first key.
    pub(super) fn remember(&mut self, field: &str) {
        let begun = self.begun.as_ref().filter(|_| field == "phrase");
        let phrase = begun.map_or(&self.said, |begun| &begun.before.phrase).clone();
        self.history.keep(field, State { phrase, ..self.state() });
        self.history.taken = None;
        if field != "phrase" {
            self.untouched = false;
            self.begun = None;
        }
    }

    /// One step back or forward. By a key, the first field that changes comes into view.
    pub(super) fn step(&mut self, back: bool, by_key: bool, out: &mut Vec<Patch>) {
        if !self.history.can(back) {
            return;
        }
        let mut now = self.state();
        let before = now.draft.clone();
        self.history.step(back, &mut now);
        (self.draft, self.said, self.history.taken) = (now.draft, now.phrase, now.taken);
        self.untouched = false;
        self.show_phrase(out);
        self.refill(out);
        let changed = self.changed(&before);
        if let Some(first) = changed.first().filter(|_| by_key) {
            out.push(Patch::Near { id: format!("field-{}", first.replace('.', "-")) });
        }
        self.tell_step(back, &changed, out);
    }

    /// Fields of the form whose texts differ from another draft's.
    fn changed(&self, before: &Draft) -> Vec<String> {
        let differs = |path: &String| self.draft.get(path) != before.get(path);
        self.paths().into_iter().filter(differs).collect()
    }

    /// Says what a step has changed, together with the verdict if that is new as well.
    fn tell_step(&self, back: bool, changed: &[String], out: &mut Vec<Patch>) {
        let printer = self.printer();
        let mut names: Vec<&str> = changed
            .iter()
            .map(|path| match path.split_once('.') {
                Some((group, _)) => printer.word(&format!("group.{group}")),
                None => printer.word(&format!("field.{path}.label")),
            })
            .collect();
        names.dedup();
        if names.len() > NAMED {
            names.truncate(NAMED);
            names.push("…");
        }
        let key = if back { "history.undone" } else { "history.redone" };
        let told = printer.text(&say(key).text("fields", names.join(", ")));
        let verdict = out.iter_mut().rev().find_map(|patch| match patch {
            Patch::Announce { text } => Some(text),
            _ => None,
        });
        match verdict {
            Some(text) => *text = format!("{told} {text}"),
            None => out.push(Patch::Announce { text: told }),
        }
    }
}
