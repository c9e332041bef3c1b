//! For whom the page is read, and what a client does not get to see: at once, not after the next paint.

use super::event::Patch;
use super::session::Session;
use crate::draft::{Draft, FieldError, to_tree};
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

    /// Faults of a shop's file name its figures: a client only reads that there are some.
    pub(super) fn may_read(&self, errors: &[FieldError]) -> bool {
        let shops = |error: &FieldError| shop::SCHEMA.field(&error.path).is_some();
        self.reading != Reading::Client || !errors.iter().any(shops)
    }

    /// Saves the shop's file, which holds all its rates and limits: never for a client.
    pub(super) fn save_shop(&self, out: &mut Vec<Patch>) {
        if self.reading != Reading::Client {
            let print = || {
                let own: Option<Draft> = self.own_shop.clone();
                let draft = own.unwrap_or_else(|| shop::draft_of(&self.shop));
                (self.json.print)(&to_tree(&draft, &shop::SCHEMA))
            };
            let text = self.own_shop_text.clone().unwrap_or_else(print);
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
