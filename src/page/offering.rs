//! The list below a field: what opens it, walks through it, takes from it and closes it.
//!
//! The focus stays in the field throughout; the option that counts is pointed at. What was typed is
//! never replaced unless an option was walked to or tapped.

use super::event::Patch;
use super::session::Session;
use super::suggest::offers;
use crate::job::SCHEMA;
use crate::units::Measure;
use crate::view::html::{self, Offer};
use crate::words::say;

/// The list that stands open, or is about to.
#[derive(Debug, Default)]
pub(super) struct Offering {
    /// Below this field; empty while there is none.
    path: String,
    /// Opened without typing: everything is offered, whatever stands in the field.
    all: bool,
    /// The list is not yet that of the field's text.
    due: bool,
    offers: Vec<Offer>,
    /// The option that is pointed at.
    at: Option<usize>,
}

fn id(what: &str, path: &str) -> String {
    format!("{what}-{}", path.replace('.', "-"))
}

fn is_offered(path: &str) -> bool {
    SCHEMA.field(path).is_some_and(html::is_offered)
}

impl Session {
    /// Something was typed into a field: the list follows once the answer has been painted.
    pub(super) fn offer_later(&mut self, path: &str, out: &mut Vec<Patch>) {
        if self.offering.path != path {
            self.close_offers(out);
        }
        if !is_offered(path) {
            return;
        }
        self.point(None, out);
        (self.offering.all, self.offering.due) = (false, true);
        path.clone_into(&mut self.offering.path);
    }

    /// The list, if one is wanted that is not there yet.
    pub(super) fn offer(&mut self, out: &mut Vec<Patch>) {
        if !core::mem::take(&mut self.offering.due) {
            return;
        }
        let path = self.offering.path.clone();
        let typed = if self.offering.all { "" } else { self.draft.get(&path) };
        let mut found = offers(&path, typed, &self.shop, &self.printer());
        if self.offering.all {
            found.retain(|offer| offer.typed != self.draft.get(&path));
        }
        let opens = self.offering.offers.is_empty() && !found.is_empty();
        self.offering.offers = found;
        self.point(None, out);
        self.paint_offers(&path, out);
        if opens {
            out.push(Patch::Near { id: id("offers", &path) });
        }
    }

    /// A field was tapped. An empty one shows all there is to choose from; one that holds a text does
    /// so at the second tap, since the list lies over the fields that follow.
    pub(super) fn tap(&mut self, path: &str, out: &mut Vec<Patch>) {
        let again = self.offering.path == path;
        if !again {
            self.close_offers(out);
            path.clone_into(&mut self.offering.path);
        }
        if is_offered(path) && (again || self.draft.get(path).is_empty()) {
            self.offer_all(out);
        }
    }

    /// All there is to choose from, if no list stands open.
    fn offer_all(&mut self, out: &mut Vec<Patch>) {
        if self.offering.offers.is_empty() {
            (self.offering.all, self.offering.due) = (true, true);
            self.offer(out);
        }
    }

    /// No list any more.
    pub(super) fn close_offers(&mut self, out: &mut Vec<Patch>) {
        let path = core::mem::take(&mut self.offering.path);
        if !path.is_empty() {
            self.point_from(&path, None, out);
            self.offering = Offering::default();
            self.paint_offers(&path, out);
        }
    }

    /// A key that may be meant for the list.
    pub(super) fn offer_key(&mut self, path: &str, key: &str, out: &mut Vec<Patch>) {
        let last = || self.offering.offers.len().checked_sub(1);
        match (key, self.offering.at) {
            ("ArrowDown" | "ArrowUp", at) if is_offered(path) => {
                if self.offering.path != path {
                    self.close_offers(out);
                    path.clone_into(&mut self.offering.path);
                }
                self.offer(out);
                self.offer_all(out);
                let Some(last) = self.offering.offers.len().checked_sub(1) else { return };
                let next = match at {
                    None if key == "ArrowDown" => 0,
                    None => last,
                    Some(at) if key == "ArrowDown" => (at + 1) % (last + 1),
                    Some(at) => at.checked_sub(1).unwrap_or(last),
                };
                self.point(Some(next), out);
                out.push(Patch::Taken {});
            }
            ("Enter", Some(at)) => {
                if let Some(offer) = self.offering.offers.get(at) {
                    let typed = offer.typed.clone();
                    self.act(&format!("choose:{path}"), &typed, out);
                    out.push(Patch::Taken {});
                }
            }
            ("Enter", None) => self.leave(path, out),
            ("Escape", _) if last().is_some() => {
                self.close_offers(out);
                out.push(Patch::Taken {});
            }
            // The caret moves as in any field.
            ("Home" | "End", Some(_)) => self.point(None, out),
            _ => {}
        }
    }

    /// Points at an option, or at none.
    fn point(&mut self, at: Option<usize>, out: &mut Vec<Patch>) {
        let path = self.offering.path.clone();
        self.point_from(&path, at, out);
    }

    fn point_from(&mut self, path: &str, at: Option<usize>, out: &mut Vec<Patch>) {
        let before = core::mem::replace(&mut self.offering.at, at);
        if before == at {
            return;
        }
        for (index, chosen) in [(before, "false"), (at, "true")] {
            let Some(index) = index.filter(|index| *index < self.offering.offers.len()) else {
                continue;
            };
            let id = html::option_id(path, index);
            let value = Some(chosen.to_owned());
            out.push(Patch::Attr { id: id.clone(), name: "aria-selected", value });
            if chosen == "true" {
                out.push(Patch::Near { id });
            }
        }
        let active = at.map(|index| html::option_id(path, index));
        self.set_attr(id("input", path), "aria-activedescendant", active.as_deref(), out);
    }

    fn paint_offers(&mut self, path: &str, out: &mut Vec<Patch>) {
        let list = html::offers(path, &self.offering.offers).into_string();
        let count = self.offering.offers.len();
        let (hidden, expanded) = if count == 0 { (Some(""), "false") } else { (None, "true") };
        self.set_html(&id("offers", path), list, out);
        self.set_attr(id("offers", path), "hidden", hidden, out);
        self.set_attr(id("input", path), "aria-expanded", Some(expanded), out);
        let told = if count == 0 {
            String::new()
        } else {
            self.printer().text(&say("offer.count").count("n", Measure::count(count as u32)))
        };
        self.set_text("offered", &told, out);
    }
}
