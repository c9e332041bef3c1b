//! What goes onto paper: the whole page with every region open, or the job card alone.

use super::event::Patch;
use super::session::Session;
use crate::view::html;
use crate::view::qr::Code;
use crate::view::{REGIONS, Reading};

/// Says, on the page's own element, that only the card is printed.
const ALONE: &str = "data-print";

impl Session {
    /// Opens every region for the printer, and closes them again. A client takes home what was looked at:
    /// what is closed says its result in a line.
    pub(super) fn prepare_print(&mut self, before: bool, out: &mut Vec<Patch>) {
        if self.only_card() {
            if !before {
                self.forget_card(out);
            }
            return;
        }
        let open = self.open.clone();
        let whole = self.reading != Reading::Client;
        if before {
            self.seek_here();
            if whole {
                self.open = REGIONS.iter().map(|region| region.id).collect();
            }
            let screen = self.screen;
            self.screen = screen.on_paper();
            self.paint_drawings(out);
            self.rest(out);
            self.screen = screen;
        } else {
            self.paint_drawings(out);
            out.push(Patch::Later {});
        }
        let folded = REGIONS.iter().filter(|region| whole && !open.contains(&region.id));
        let folded = folded.map(|region| format!("open-{}", region.id));
        // The limits that do not bite are folded away on a screen.
        let limits = self.stands("limits-rest").then(|| "limits-rest".to_owned());
        for id in folded.chain(limits) {
            out.push(Patch::Attr { id, name: "open", value: before.then(String::new) });
        }
        self.open = open;
        if !before {
            self.set_html("appendix", String::new(), out);
        }
    }

    /// Prints the job card, which holds the line's figures: never for a client.
    pub(super) fn print_card(&mut self, out: &mut Vec<Patch>) {
        if self.reading == Reading::Client {
            return;
        }
        let code = Code::of(&self.draft, &self.address);
        match self.settled().map(|scene| html::card(&scene, code.as_ref()).into_string()) {
            Ok(card) => {
                self.set_html("job-card", card, out);
                self.set_attr("page".to_owned(), ALONE, Some("card"), out);
                out.push(Patch::Print {});
            }
            Err(note) => self.note(note, out),
        }
    }

    /// Prints the page as it stands.
    pub(super) fn print_page(&mut self, out: &mut Vec<Patch>) {
        // A browser that never tells when it has printed keeps the card until now.
        self.forget_card(out);
        out.push(Patch::Print {});
    }

    fn only_card(&self) -> bool {
        self.sent.get("job-card").is_some_and(|card| !card.is_empty())
    }

    /// Takes the card off the page: it has been printed, or somebody else reads.
    pub(super) fn forget_card(&mut self, out: &mut Vec<Patch>) {
        if self.only_card() {
            self.set_html("job-card", String::new(), out);
            self.set_attr("page".to_owned(), ALONE, None, out);
        }
    }

    /// How every figure was worked out, for paper; not for a client.
    pub(super) fn print_figures(&mut self, out: &mut Vec<Patch>) {
        if self.reading == Reading::Client {
            return;
        }
        match self.settled().map(|scene| html::appendix(&scene).into_string()) {
            Ok(all) => {
                self.set_html("appendix", all, out);
                self.print_page(out);
            }
            Err(note) => self.note(note, out),
        }
    }
}
