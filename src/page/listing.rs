//! A list of titles on the page: asked of a desk beside it, shown as far as it is.
//!
//! The desk is a planner of its own, in a worker where one can be had: the page stays free meanwhile.

use super::event::Patch;
use super::files::Note;
use super::list_desk::wanted;
use super::session::Session;
use crate::draft::from_tree;
use crate::job;
use crate::titles::List;
use crate::view::Reading;
use crate::view::html::titles::{Progress, state, told};
use crate::view::title_desk::Order;
use crate::view::title_rows::{Tally, template};
use crate::words::say;

/// The list that is shown.
#[derive(Debug, Default)]
pub(super) struct Listing {
    /// There is one.
    there: bool,
    progress: Progress,
    order: Order,
    from: usize,
    /// For whom, in which language and unit it was last shown.
    asked: String,
    /// Why there is none, as HTML.
    fault: String,
}

impl Session {
    /// Whether a text that was opened is a list; then it is begun with.
    pub(super) fn is_list(&mut self, name: &str, text: &str, out: &mut Vec<Patch>) -> bool {
        let named = [".csv", ".tsv"].iter().any(|end| name.to_lowercase().ends_with(end));
        let list =
            named || (text.trim_start().lines().count() > 1 && List::read(text.as_bytes()).is_ok());
        if list {
            self.begin_list(out);
        }
        list
    }

    fn begin_list(&mut self, out: &mut Vec<Patch>) {
        if self.reading == Reading::Client {
            return self.note(Note::said("titles.makers"), out);
        }
        self.listing = Listing { there: true, ..Listing::default() };
        self.listing.progress.running = true;
        let shop = self.shop_text();
        self.set_html("titles-table", String::new(), out);
        self.show_listing(out);
        Self::turn_to("titles", out);
        self.ask_list("begin", Some(shop), String::new(), out);
    }

    fn ask_list(
        &mut self,
        ask: &'static str,
        shop: Option<String>,
        text: String,
        out: &mut Vec<Patch>,
    ) {
        let units = self.printer().numbers.unit.name();
        out.push(Patch::List { ask, language: self.language.tag, units, shop, text });
    }

    /// Asks for the part of the table that is to be shown.
    fn ask_part(&mut self, out: &mut Vec<Patch>) {
        let text = wanted(self.listing.order, self.listing.from);
        self.ask_list("show", None, text, out);
    }

    fn show_listing(&mut self, out: &mut Vec<Patch>) {
        let progress = self.listing.progress;
        if !self.listing.there || self.reading == Reading::Client {
            self.set_html("titles-state", self.listing.fault.clone(), out);
            return self.set_html("titles-table", String::new(), out);
        }
        let state = state(progress.running, &self.printer()).into_string();
        if self.sent.get("titles-state") != Some(&state) {
            // What stands in it is new and empty, whatever it was given before.
            self.sent.retain(|id, _| !id.starts_with("titles-progress") && id != "titles-told");
        }
        self.set_html("titles-state", state, out);
        if progress.running {
            let share = progress.share.to_string();
            self.set_attr("titles-progress".to_owned(), "value", Some(&share), out);
        }
        let told = told(&progress, &self.printer()).into_string();
        self.set_html("titles-told", told, out);
    }

    /// Another reader, language or unit: the table follows.
    pub(super) fn show_list_again(&mut self, out: &mut Vec<Patch>) {
        let hidden = (self.reading == Reading::Client).then_some("");
        self.set_attr("region-titles".to_owned(), "hidden", hidden, out);
        self.show_listing(out);
        let (language, unit) = (self.language.tag, self.printer().numbers.unit.name());
        let now = [language, unit, super::reading::name_of(self.reading)].concat();
        let before = core::mem::replace(&mut self.listing.asked, now.clone());
        if self.listing.there && hidden.is_none() && before != now && !before.is_empty() {
            self.ask_part(out);
        }
    }

    /// The desk has answered.
    pub(super) fn listed(&mut self, what: &str, text: &str, out: &mut Vec<Patch>) {
        // What the desk of an earlier list still had to say.
        if !self.listing.there {
            return;
        }
        match what {
            "progress" => self.list_is(text, out),
            "table" if self.reading != Reading::Client => {
                self.set_html("titles-table", text.to_owned(), out);
            }
            "csv" if self.reading != Reading::Client => {
                let text = text.to_owned();
                out.push(Patch::Download { name: ["titles", ".csv"].concat(), text });
            }
            "job" => self.take_title(text, out),
            "fault" => self.no_list(text.to_owned(), out),
            "lost" => {
                let told = self.printer().html(&say("titles.lost")).into_string();
                self.no_list(told, out);
            }
            _ => {}
        }
    }

    fn no_list(&mut self, fault: String, out: &mut Vec<Patch>) {
        self.listing = Listing { fault, ..Listing::default() };
        self.show_listing(out);
    }

    /// So many hundredths, rows, rows that cannot be read, and whether there are more.
    fn list_is(&mut self, text: &str, out: &mut Vec<Patch>) {
        let mut parts = text.split(' ');
        let mut number = || parts.next().and_then(|part| part.parse().ok()).unwrap_or_default();
        let (share, rows, unread) = (number(), number(), number());
        let first = self.listing.progress.tally.rows == 0;
        let running = text.ends_with("more") && !self.listing.progress.stopped;
        self.listing.progress =
            Progress { share, tally: Tally { rows, unread }, running, ..self.listing.progress };
        self.show_listing(out);
        if first || !running {
            self.ask_part(out);
        }
    }

    fn take_title(&mut self, text: &str, out: &mut Vec<Patch>) {
        let draft = (self.json.parse)(text).and_then(|tree| from_tree(&tree, &job::SCHEMA).ok());
        if let Some(draft) = draft {
            self.untouched = false;
            self.replace(draft, out);
            self.note(Note::said("titles.taken"), out);
            out.push(Patch::Focus { id: "input-phrase".to_owned() });
        }
    }

    /// The table's buttons; false where the act is another's.
    pub(super) fn act_on_list(&mut self, act: &str, value: &str, out: &mut Vec<Patch>) -> bool {
        let number = || value.parse().unwrap_or_default();
        match act {
            "list-empty" => {
                let text = template(&self.printer());
                out.push(Patch::Download { name: ["titles-to-begin-with", ".csv"].concat(), text });
            }
            _ if !self.listing.there => return false,
            "list-stop" => {
                self.listing.progress.stopped = true;
                self.listing.progress.running = false;
                self.ask_list("stop", None, String::new(), out);
                self.show_listing(out);
                self.ask_part(out);
            }
            "list-save" => self.ask_list("save", None, String::new(), out),
            "list-take" => self.ask_list("take", None, value.to_owned(), out),
            "list-turn" => {
                self.listing.from = number();
                self.ask_part(out);
            }
            "list-sort" => {
                let (column, order) = (Some(number()), self.listing.order);
                // A second tap turns it round; the third gives back the list's own order.
                self.listing.order = match (order.column == column, order.down) {
                    (true, false) => Order { column, down: true },
                    (true, true) => Order::default(),
                    (false, _) => Order { column, down: false },
                };
                self.listing.from = 0;
                self.ask_part(out);
            }
            _ => return false,
        }
        true
    }
}
