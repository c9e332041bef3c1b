//! The page in another language: the whole of it is printed again, and nothing typed is lost.

use super::event::Patch;
use super::offering::Offering;
use super::session::Session;
use crate::view::html::{self, Page};
use crate::words::Language;

/// The name of the setting.
pub(super) const SETTING: &str = "language";

impl Session {
    /// Somebody has chosen a language.
    pub(super) fn speak(&mut self, tag: &str, out: &mut Vec<Patch>) {
        let Some(language) = Language::of(tag).filter(|chosen| *chosen != self.language) else {
            return;
        };
        self.language = language;
        self.mark = language.mark;
        self.words = language.words(&self.files);
        self.chose_language = true;
        self.name_example();
        self.draw_frame(out);
        self.ask_restore(out);
        self.show_file_note(out);
        self.show_storage(out);
        self.show_phrase(out);
        self.refill(out);
        self.rest(out);
        out.push(Patch::Focus { id: format!("input-{SETTING}-{}", language.tag) });
    }

    /// The frame in the page's language. What stood in it is gone: all of it is sent anew.
    pub(super) fn draw_frame(&mut self, out: &mut Vec<Patch>) {
        let (draft, shop, language) = (&self.draft, &self.shop, self.language);
        let (printer, built) = (self.printer(), self.built.as_str());
        let page = Page { draft, shop, printer, language, built, scene: None };
        let html = html::body(&page).into_string();
        out.push(Patch::Html { id: "page".to_owned(), html });
        out.push(Patch::Language { tag: language.tag });
        self.sent.clear();
        self.offering = Offering::default();
        self.advising.forget_painted();
        self.announced = None;
    }

    /// The title of the example is a title in the page's language.
    pub(super) fn name_example(&mut self) {
        if self.untouched {
            let title = self.words.plain("example.title").to_owned();
            self.draft.set("title", &title);
        }
    }
}
