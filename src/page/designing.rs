//! The design's own file on the page: asked of a reader beside it, a module of its own in a worker, so that
//! a file that breaks the reader takes nothing else with it.

use super::event::Patch;
use super::files::Note;
use super::session::Session;
use crate::draft::Draft;
use crate::intake::{Binding, Facts, Offered, Order, Part, Sources, Unreadable, pass, taken};
use crate::job::Numbering;
use crate::units::{Mm, PAGES_PER_SHEET, fixed, trimmed};
use crate::view::Reading;
use crate::view::html::Scene;
use crate::view::html::design::{Come, SHOWN, Shown, came, compared, refused, working};
use crate::view::pdf;
use crate::words::{Say, say};

/// The files that have come, and what is being done with them.
#[derive(Debug, Default)]
pub(super) struct Designing {
    inside: Option<Arrived>,
    cover: Option<Arrived>,
    doing: Doing,
    /// What stands in the field for a password.
    password: String,
    /// Pages drawn.
    shown: usize,
}

#[derive(Debug)]
struct Arrived {
    name: String,
    facts: Facts,
}

impl Arrived {
    fn come(&self) -> Come<'_> {
        Come { name: &self.name, facts: &self.facts }
    }
}

#[derive(Debug, Default)]
enum Doing {
    #[default]
    Nothing,
    /// A file of this name is being read.
    Reading(String),
    /// It was not read. Somebody has tried a password.
    Refused(String, Unreadable, bool),
    /// A document of this name is being written; so many hundredths are done.
    Writing(String, u32),
    /// It came to an end that is said.
    Said(Say),
}

impl Designing {
    fn shown(&self, binding: Binding) -> Shown<'_> {
        let (inside, cover) = (self.inside.as_ref(), self.cover.as_ref());
        let (inside, cover) = (inside.map(Arrived::come), cover.map(Arrived::come));
        Shown { inside, cover, binding, pages: self.shown.max(SHOWN) }
    }
    const fn is_empty(&self) -> bool {
        self.inside.is_none() && self.cover.is_none()
    }
}

/// How a PDF begins.
const MARK: &str = "%PDF-";
/// How far into a file its beginning may stand.
const NEAR: usize = 1024;

/// Whether what was opened is a PDF, by its name or its beginning.
pub(super) fn is_design(name: &str, text: &str) -> bool {
    let begins = || {
        let near = text.char_indices().nth(NEAR).map_or(text, |(at, _)| text.split_at(at).0);
        near.contains(MARK)
    };
    name.to_lowercase().ends_with(".pdf") || begins()
}

impl Session {
    /// A PDF was opened, dropped or pasted.
    pub(super) fn begin_design(&mut self, name: &str, out: &mut Vec<Patch>) {
        self.designing.doing = Doing::Reading(name.to_owned());
        self.designing.password.clear();
        self.file_note = None;
        self.show_file_note(out);
        Self::turn_to("design", out);
        self.show_design(out);
        self.ask_design("arrive", "", String::new(), out);
    }

    fn ask_design(&self, ask: &'static str, name: &str, text: String, out: &mut Vec<Patch>) {
        out.push(Patch::Design { ask, name: name.to_owned(), text });
    }

    fn binding(&self) -> Binding {
        if self.draft.get("bound_edge") == "top" { Binding::Top } else { Binding::Left }
    }

    /// What has come and what is being done with it.
    pub(super) fn show_design(&mut self, out: &mut Vec<Patch>) {
        let printer = self.printer();
        let design = &self.designing;
        let state = match &design.doing {
            Doing::Nothing => maud::html! {},
            Doing::Reading(name) => {
                working(&say("design.reading").text("name", name.clone()), &printer)
            }
            Doing::Writing(name, _) => {
                working(&say("design.writing").text("name", name.clone()), &printer)
            }
            Doing::Refused(name, why, tried) => refused(name, *why, *tried, &printer),
            Doing::Said(told) => maud::html! { p role="status" { (printer.html(told)) } },
        };
        let shown = design.shown(self.binding());
        let scene = self.scene().filter(|_| !self.untouched);
        let found = maud::html! {
            @if !design.is_empty() {
                (came(&shown, &printer))
                @match &scene {
                    Some(scene) => (compared(&shown, scene)),
                    None => p class="hint" { (printer.word("design.no-book")) },
                }
            }
        };
        let (state, found) = (state.into_string(), found.into_string());
        if self.sent.get("design-state") != Some(&state) {
            // The bar in it is new, whatever the last one showed.
            self.sent.remove("design-progress value");
        }
        self.set_html("design-state", state, out);
        self.show_progress(out);
        self.set_html("design-found", found, out);
    }

    /// How much of a document is written: only the bar moves.
    fn show_progress(&mut self, out: &mut Vec<Patch>) {
        if let Doing::Writing(_, share) = &self.designing.doing {
            let share = share.to_string();
            self.set_attr("design-progress".to_owned(), "value", Some(&share), out);
        }
    }

    /// The reader has answered.
    pub(super) fn design_told(&mut self, what: &str, text: &str, out: &mut Vec<Patch>) {
        match what {
            "facts" => self.arrived(text, out),
            "progress" => {
                if let Doing::Writing(_, share) = &mut self.designing.doing {
                    *share = text.parse().unwrap_or(*share);
                }
                return self.show_progress(out);
            }
            "written" => {
                if let Doing::Writing(name, _) = core::mem::take(&mut self.designing.doing) {
                    self.designing.doing = Doing::Said(say("design.written").text("name", name));
                }
            }
            "lost" => {
                self.designing = Designing::default();
                self.designing.doing = Doing::Said(say("design.lost"));
            }
            _ => return,
        }
        self.show_design(out);
    }

    /// A file was read, or not; it gets its place by how many pages it has.
    fn arrived(&mut self, text: &str, out: &mut Vec<Patch>) {
        let Doing::Reading(name) = core::mem::take(&mut self.designing.doing) else { return };
        let read: Option<Result<Facts, Unreadable>> = taken(text);
        match read {
            Some(Ok(facts)) => {
                let part = self.part_of(&facts);
                let (place, text) = match part {
                    Part::Cover => (&mut self.designing.cover, "cover"),
                    Part::Inside => (&mut self.designing.inside, ""),
                };
                *place = Some(Arrived { name, facts });
                self.designing.shown = SHOWN;
                self.designing.password.clear();
                self.ask_design("place", "", text.to_owned(), out);
            }
            Some(Err(why)) => {
                let tried = !self.designing.password.is_empty();
                self.designing.password.clear();
                self.designing.doing = Doing::Refused(name, why, tried);
            }
            None => self.designing.doing = Doing::Said(say("design.lost")),
        }
    }

    /// A file of one sheet, for a book that has a cover apart and more than a sheet inside, is the cover.
    fn part_of(&self, facts: &Facts) -> Part {
        let sheet = PAGES_PER_SHEET as usize;
        let apart = self.shown.as_ref().is_some_and(|(job, plan, _)| {
            let asked = plan.results.blanks.asked.get();
            job.numbering == Numbering::SeparateCover && asked > PAGES_PER_SHEET
        });
        if apart && facts.pages.len() <= sheet { Part::Cover } else { Part::Inside }
    }

    /// The region's buttons; false where the act is another's.
    pub(super) fn act_on_design(&mut self, act: &str, out: &mut Vec<Patch>) -> bool {
        match act {
            "design-stop" => self.stop_design(out),
            "design-unlock" => {
                if let Doing::Refused(name, ..) = &self.designing.doing {
                    self.designing.doing = Doing::Reading(name.clone());
                    let password = self.designing.password.clone();
                    self.ask_design("arrive", "", password, out);
                }
            }
            "design-close" => {
                self.designing = Designing::default();
                self.ask_design("end", "", String::new(), out);
            }
            "design-swap" => {
                let design = &mut self.designing;
                core::mem::swap(&mut design.inside, &mut design.cover);
                self.ask_design("swap", "", String::new(), out);
            }
            "design-more" => self.designing.shown = self.designing.shown.max(SHOWN) + SHOWN * 4,
            "design-adopt" => return self.adopt(out),
            "design-pairs" => self.write_design(true, out),
            "design-proof" => self.write_design(false, out),
            _ => return false,
        }
        self.show_design(out);
        true
    }

    /// Reading cannot be stopped but with the reader, and it takes with it whatever it holds open.
    fn stop_design(&mut self, out: &mut Vec<Patch>) {
        if matches!(self.designing.doing, Doing::Writing(..)) {
            self.designing.doing = Doing::Said(say("design.stopped-writing"));
            self.ask_design("stop", "", String::new(), out);
        } else {
            self.designing = Designing::default();
            self.designing.doing = Doing::Said(say("design.stopped"));
            self.ask_design("end", "", String::new(), out);
        }
    }

    fn write_design(&mut self, pairs: bool, out: &mut Vec<Patch>) {
        if pairs && self.reading == Reading::Client {
            return;
        }
        let name = self.file_name(if pairs { "pairs.pdf" } else { "proof.pdf" });
        let binding = self.binding();
        let write = |scene: Scene| -> Option<Order> {
            let delivery = self.designing.shown(binding).delivery()?;
            let sources = Sources::of(&delivery, scene.job, scene.plan, binding);
            let language = self.language.tag;
            if pairs {
                pdf::pairs(&scene, &sources, binding, language)
            } else {
                Some(pdf::proof(&scene, &sources, binding, language))
            }
        };
        let order = match self.settled().map(write) {
            Ok(order) => order,
            Err(note) => return self.note(note, out),
        };
        if let Some(order) = order {
            self.ask_design("write", &name, pass(&order), out);
            self.designing.doing = Doing::Writing(name, 0);
        }
    }

    /// Pages, size and bleed of the file go into the form.
    fn adopt(&mut self, out: &mut Vec<Patch>) -> bool {
        let Some(delivery) = self.designing.shown(self.binding()).delivery() else { return true };
        let offered = Offered::of(&delivery);
        let mut draft = if self.untouched {
            let units = self.draft.get("units").to_owned();
            Draft::of(&[("units", &units)])
        } else {
            self.draft.clone()
        };
        let cover = if offered.cover { " + 4" } else { "" };
        draft.set("pages", &format!("{}{cover}", offered.pages));
        let printed = |length: Mm| trimmed(fixed(length.get(), 1));
        if let Some(size) = offered.size {
            draft.set("size", &format!("{} x {} mm", printed(size.width), printed(size.height)));
        }
        if let Some(bleed) = offered.bleed {
            draft.set("bleed", &format!("{} mm", printed(bleed)));
        }
        self.untouched = false;
        self.replace(draft, out);
        self.note(Note::said("design.adopted"), out);
        true
    }

    /// Somebody types the password of a file: it is kept until it is used, and nowhere else.
    pub(super) fn design_password(&mut self, text: &str) {
        text.clone_into(&mut self.designing.password);
    }
}
