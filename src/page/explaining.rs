//! Figures that are asked about: the explanation opens where the figure stands.

use super::event::Patch;
use super::session::Session;
use crate::view::ask_of;
use crate::view::html;

impl Session {
    /// A figure was asked at an element: opens its explanation there, closes it when asked again.
    pub(super) fn explain(&mut self, element: &str, out: &mut Vec<Patch>) {
        if self.shown.is_none() {
            return;
        }
        let again = self.explained == element;
        let asked = if again { String::new() } else { element.to_owned() };
        let before = core::mem::replace(&mut self.explained, asked);
        self.show_explanation(out);
        if !self.explained.is_empty() {
            out.push(Patch::Focus { id: "explanation-title".to_owned() });
        } else if self.stands(&before) {
            out.push(Patch::Focus { id: before });
        }
    }

    /// Whether an element that was sent still stands on the page.
    pub(super) fn stands(&self, id: &str) -> bool {
        let mark = format!(" id=\"{id}\"");
        self.sent.values().any(|html| html.contains(&mark))
    }

    /// The explanation that is open, behind the figure it was asked at. It goes with the figure.
    pub(super) fn show_explanation(&mut self, out: &mut Vec<Patch>) {
        let asked = ask_of(&self.explained).filter(|_| self.stands(&self.explained));
        let told = asked
            .zip(self.scene())
            .map(|((figure, at), scene)| html::explanation(&scene, figure, at).into_string());
        let told = told.unwrap_or_default();
        if told.is_empty() {
            self.explained.clear();
        }
        let hidden = told.is_empty().then_some("");
        self.set_html("explanation", told, out);
        self.set_attr("explanation".to_owned(), "hidden", hidden, out);
        let at = self.explained.clone();
        if self.sent.insert("explanation at".to_owned(), at.clone()).unwrap_or_default() != at {
            out.push(Patch::Place { id: "explanation".to_owned(), at });
        }
    }
}
