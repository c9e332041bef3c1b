//! Further sections: added, taken out, and moved through the nest, from the cover to the middle.

use super::event::Patch;
use super::session::Session;
use crate::draft::{Draft, MOST_MEMBERS};
use crate::entry;
use crate::job::INSERT_PLACES;
use crate::units::Measure;
use crate::view::html;
use crate::words::{Say, say};

/// The group's name in the draft.
const GROUP: &str = "sections";

fn place_of(index: usize) -> String {
    format!("{GROUP}.{index}.place")
}

/// Sections from the outside in, by their index in the draft; nothing stands for the main pages.
pub(super) fn nest(draft: &Draft) -> Vec<Option<usize>> {
    let place = |index: &usize| entry::choice(draft.get(&place_of(*index)), INSERT_PLACES).value();
    let (around, centre): (Vec<usize>, Vec<usize>) =
        (0..draft.members(GROUP)).partition(|index| place(index) == Some("around"));
    let main = core::iter::once(None);
    around.into_iter().map(Some).chain(main).chain(centre.into_iter().map(Some)).collect()
}

impl Session {
    /// One act on the sections.
    pub(super) fn act_on_sections(&mut self, act: &str, value: &str, out: &mut Vec<Patch>) {
        let count = self.draft.members(GROUP);
        let index = value.parse().ok().filter(|index| *index < count);
        match (act, index) {
            ("section-add", _) if count < MOST_MEMBERS => {
                self.remember("");
                self.draft.set(&format!("{GROUP}.{count}.pages"), "4");
                // Said, so that the section is still there when its pages are deleted to be retyped.
                self.draft.set(&place_of(count), "centre");
                self.redraw_sections(out);
                out.push(Patch::Focus { id: format!("input-{GROUP}-{count}-pages") });
            }
            ("section-remove", Some(index)) => {
                self.remember("");
                self.draft.remove_member(GROUP, index);
                self.redraw_sections(out);
                out.push(Patch::Focus { id: "section-add".to_owned() });
            }
            ("section-out" | "section-in", Some(index)) => {
                let now = nest(&self.draft).iter().position(|item| *item == Some(index));
                let to = now.and_then(|now| match act {
                    "section-out" => now.checked_sub(1),
                    _ => Some(now + 1),
                });
                if let Some(to) = to {
                    self.rearrange(index, to, act, out);
                }
            }
            _ => {}
        }
    }

    /// A section was dropped in the place of another, or of the main pages.
    pub(super) fn drop_section(&mut self, dropped: &str, onto: &str, out: &mut Vec<Patch>) {
        let index = |id: &str| id.strip_prefix("section-")?.parse::<usize>().ok();
        let nest = nest(&self.draft);
        let target = if onto == "section-main" { Some(None) } else { index(onto).map(Some) };
        let place = target.and_then(|target| nest.iter().position(|item| *item == target));
        let known = index(dropped).filter(|index| nest.contains(&Some(*index)));
        if let (Some(index), Some(place)) = (known, place) {
            self.settle();
            self.rearrange(index, place, "section-in", out);
        }
    }

    /// Puts a section at a place of the nest, and gives the focus to its button.
    fn rearrange(&mut self, index: usize, place: usize, button: &str, out: &mut Vec<Patch>) {
        let before = nest(&self.draft);
        let mut nest = before.clone();
        nest.retain(|item| *item != Some(index));
        nest.insert(place.min(nest.len()), Some(index));
        if nest == before {
            return;
        }
        self.remember("");
        let main = nest.iter().position(Option::is_none).unwrap_or_default();
        let order: Vec<usize> = nest.into_iter().flatten().collect();
        self.draft.reorder_members(GROUP, &order);
        for now in 0..order.len() {
            self.draft.set(&place_of(now), if now < main { "around" } else { "centre" });
        }
        let now = order.iter().position(|old| *old == index).unwrap_or_default();
        self.redraw_sections(out);
        out.push(Patch::Focus { id: format!("{button}-{now}") });
        let name = say("section.name").put("number", Measure::count(now as u32 + 1));
        let told = say("section.moved").say("section", name).say("where", self.lies(now));
        out.push(Patch::Announce { text: self.printer().text(&told) });
    }

    /// In words, where a section lies.
    fn lies(&self, index: usize) -> Say {
        let nest = nest(&self.draft);
        let place = nest.iter().position(|item| *item == Some(index)).unwrap_or_default();
        let outer = place.checked_sub(1).and_then(|outer| nest.get(outer).copied());
        let cover = self.shown.as_ref().is_some_and(|(job, ..)| job.cover().is_some());
        let lies = match outer {
            None if cover => say("section.where.cover"),
            None => say("section.where.outermost"),
            Some(None) => say("section.where.main"),
            Some(Some(outer)) => {
                say("section.where.after").put("number", Measure::count(outer as u32 + 1))
            }
        };
        match nest.get(place + 1) {
            None => say("section.where.middle").say("where", lies),
            Some(None) => say("section.where.around").say("where", lies),
            Some(Some(_)) => lies,
        }
    }

    /// The words beside each section.
    pub(super) fn show_places(&mut self, out: &mut Vec<Patch>) {
        for index in 0..self.draft.members(GROUP) {
            let lies = self.printer().text(&self.lies(index));
            self.set_text(&html::place_id(index), &lies, out);
        }
    }
}
