//! For whom the page is read, and what a client does not get to see: at once, not after the next paint.

use super::event::Patch;
use super::session::Session;
use crate::draft::{FieldError, to_tree};
use crate::shop;
use crate::view::Reading;
use crate::view::html::READINGS;

/// A reading by its name.
pub(super) fn reading_of(name: &str) -> Option<Reading> {
    READINGS.iter().find(|(id, _)| *id == name).map(|(_, reading)| *reading)
}

/// The name of a reading.
pub(super) fn name_of(reading: Reading) -> &'static str {
    READINGS.iter().find(|(_, row)| *row == reading).map_or("", |(name, _)| *name)
}

/// What only makers save: the shop's figures, what goes to other machines, waste included, and what
/// lies on the shop's press sheet.
pub(super) const MAKERS_SAVE: [&str; 6] =
    ["save-shop", "print-card", "print-figures", "save-xjdf", "save-card", "save-dummy"];

/// Faults of a shop's file name its figures: a client only reads that there are some.
pub(super) fn may_read(reading: Reading, errors: &[FieldError]) -> bool {
    let shops = |error: &FieldError| shop::SCHEMA.field(&error.path).is_some();
    reading != Reading::Client || !errors.iter().any(shops)
}

impl Session {
    /// Somebody else reads. Whatever a client must not see leaves the page before the next paint.
    pub(super) fn read_as(&mut self, name: &str, out: &mut Vec<Patch>) {
        let Some(reading) = reading_of(name) else { return };
        self.reading = reading;
        self.explained.clear();
        // A browser that never tells when it has printed keeps the figures' workings until now.
        self.set_html("appendix", String::new(), out);
        self.forget_card(out);
        self.announced = None;
        self.show_file_note(out);
        self.show(out);
        self.rest(out);
    }

    /// The shop for whoever works beside the page: its file's text, empty for the demo shop.
    pub(super) fn shop_text(&self) -> String {
        let print = |draft| (self.json.print)(&to_tree(draft, &shop::SCHEMA));
        self.own_shop.as_ref().map(print).unwrap_or_default()
    }

    /// Saves the shop's file, which holds all its rates and limits: never for a client.
    pub(super) fn save_shop(&self, out: &mut Vec<Patch>) {
        if self.reading != Reading::Client {
            let demo = || (self.json.print)(&to_tree(&shop::draft_of(&self.shop), &shop::SCHEMA));
            let own = self.own_shop.as_ref().map(|draft| {
                let opened = self.opened_shop.as_ref();
                opened
                    .and_then(|opened| opened.unchanged(draft))
                    .unwrap_or_else(|| self.shop_text())
            });
            let text = own.unwrap_or_else(demo);
            out.push(Patch::Download { name: ["shop", ".quirefit-shop.json"].concat(), text });
        }
    }

    /// Marks the reading that counts, and takes away what it does not offer.
    pub(super) fn show_reading(&mut self, out: &mut Vec<Patch>) {
        for (name, reading) in READINGS {
            let pressed = if reading == self.reading { "true" } else { "false" };
            self.set_attr(format!("reading-{name}"), "aria-pressed", Some(pressed), out);
        }
        let name = name_of(self.reading);
        self.set_attr("page".to_owned(), "data-reading", Some(name), out);
        let hidden = (self.reading == Reading::Client).then_some("");
        self.show_list_again(out);
        for act in MAKERS_SAVE {
            self.set_attr(format!("act-{act}"), "hidden", hidden, out);
        }
    }
}
