//! One page's state, and what each event does to it.

use super::advising::Advising;
use super::designing::Designing;
use super::event::{Event, Patch};
use super::files::{Note, Opened};
use super::handover::CODE;
use super::history::History;
use super::keeping::Elsewhere;
use super::language::SETTING;
use super::listing::Listing;
use super::offering::Offering;
use super::one_line::Begun;
use super::saved::{Json, Saved};
use super::units_choice::change_unit;
use super::versions::Versions;
use crate::advise::Advice;
use crate::check::Verdict;
use crate::draft::Draft;
use crate::entry::LengthUnit;
use crate::job::{self, Job};
use crate::plan::Plan;
use crate::shop::{self, Shop};
use crate::view::html::design::PASSWORD;
use crate::view::html::{self, fixes::BACK};
use crate::view::set_up::TICK;
use crate::view::{Numbers, Printer, REGIONS, Reading, Screen, Ticks};
use crate::words::{Files, Language, Mark, Words, built_in};
use std::collections::BTreeMap;

/// The job the page starts with, as a person would type it. Invented, like all examples.
pub const EXAMPLE: &[(&str, &str)] = &[
    ("title", "A Field Guide to Teapots"),
    ("pages", "40 + 4"),
    ("size", "A5"),
    ("paper", "Pond Silk 130"),
    ("cover", "Pond Silk Cover 250"),
    ("copies", "1200"),
];

/// One page.
#[derive(Debug)]
pub struct Session {
    pub(super) files: Files,
    pub(super) language: &'static Language,
    /// Somebody has chosen the language; else it is the browser's.
    pub(super) chose_language: bool,
    pub(super) words: Words,
    pub(super) mark: Mark,
    pub(super) json: Json,
    pub(super) draft: Draft,
    pub(super) shop: Shop,
    pub(super) own_shop: Option<Draft>,
    /// The shop file that was opened last on this page.
    pub(super) opened_shop: Option<Opened>,
    /// The job file that was opened last.
    pub(super) opened: Option<Opened>,
    pub(super) history: History,
    /// The one line is being typed in.
    pub(super) begun: Option<Begun>,
    /// Jobs of last time, until the person has said whether to go on with them; the latest last.
    pub(super) pending: Vec<Draft>,
    /// What was kept last time and cannot be read, until somebody has saved it.
    pub(super) unread: Option<String>,
    /// The example, before anything was typed.
    pub(super) untouched: bool,
    /// Somebody is typing in a field: what stands above it stays, or the field would move.
    pub(super) typing: bool,
    pub(super) reading: Reading,
    /// The element whose figure is being explained.
    pub(super) explained: String,
    /// The last complete job, its plan, and what else can be said of it.
    pub(super) shown: Option<(Job, Plan, Advice)>,
    pub(super) advising: Advising,
    pub(super) offering: Offering,
    pub(super) listing: Listing,
    pub(super) designing: Designing,
    pub(super) versions: Versions,
    /// What has been ticked off on the set-up list.
    pub(super) ticks: Ticks,
    pub(super) announced: Option<Verdict>,
    /// What each element was last given, so that only changes are sent.
    pub(super) sent: BTreeMap<String, String>,
    /// Regions that stand open.
    pub(super) open: Vec<&'static str>,
    /// The picture for scanners stands open.
    pub(super) code_open: bool,
    pub(super) keeps: bool,
    /// What the browser was given to keep last.
    pub(super) kept: Saved,
    /// What another page of this file keeps.
    pub(super) elsewhere: Elsewhere,
    /// The screen the page stands on.
    pub(super) screen: Screen,
    /// What stands in the one-line entry.
    pub(super) said: String,
    /// What stood in the form beside that when it was typed.
    pub(super) beside: Vec<(&'static str, String)>,
    /// What became of what was opened, saved or copied last.
    pub(super) file_note: Option<Note>,
    /// The commit that the page was built from, as the build says it.
    pub(super) built: String,
    /// Where this page stands, without what follows the #.
    pub(super) address: String,
}

impl Session {
    /// A page with its language files, the person's languages, and what was kept last time.
    #[must_use]
    pub fn new(files: Files, languages: &[String], saved: Option<&str>, json: Json) -> Self {
        let saved = saved.map(|text| Saved::read(text, json)).unwrap_or_default();
        let (language, mark) = match saved.language {
            Some(language) => (language, language.mark),
            None => Language::choose(languages),
        };
        let files = if files.is_empty() { built_in() } else { files };
        let own_shop = saved.shop;
        let shop = own_shop.as_ref().and_then(|draft| shop::read(draft).ok());
        let mut draft = Draft::of(EXAMPLE);
        draft.set("units", if language.inches { "in" } else { "mm" });
        let mut session = Self {
            words: language.words(&files),
            files,
            language,
            chose_language: saved.language.is_some(),
            mark,
            json,
            draft,
            shop: shop.unwrap_or_else(shop::demo),
            own_shop,
            opened_shop: None,
            opened: None,
            history: History::default(),
            begun: None,
            pending: saved.earlier.into_iter().chain(saved.job).collect(),
            unread: saved.unread,
            untouched: true,
            typing: false,
            reading: saved.reading,
            explained: String::new(),
            shown: None,
            advising: Advising::default(),
            offering: Offering::default(),
            listing: Listing::default(),
            designing: Designing::default(),
            versions: Versions::of_last_time(saved.versions),
            ticks: saved.ticks,
            announced: None,
            sent: BTreeMap::new(),
            open: REGIONS.iter().filter(|row| row.open).map(|row| row.id).collect(),
            code_open: false,
            keeps: true,
            kept: Saved::default(),
            elsewhere: Elsewhere::default(),
            screen: Screen { card: saved.card, ..Screen::default() },
            said: String::new(),
            beside: Vec::new(),
            file_note: None,
            built: String::new(),
            address: String::new(),
        };
        session.name_example();
        session.kept = session.worth_keeping();
        session
    }

    /// The same page, built from a commit.
    #[must_use]
    pub fn built_from(self, commit: &str) -> Self {
        Self { built: commit.to_owned(), ..self }
    }

    /// What stands in the form.
    #[must_use]
    pub fn draft(&self) -> &Draft {
        &self.draft
    }

    /// How this person reads numbers and words.
    #[must_use]
    pub fn printer(&self) -> Printer<'_> {
        let unit = LengthUnit::of(self.draft.get("units"));
        Printer { words: &self.words, numbers: Numbers { unit, mark: self.mark } }
    }

    /// Takes one event and answers with the changes to the page, in order.
    pub fn handle(&mut self, event: &Event) -> Vec<Patch> {
        let mut out = Vec::new();
        let (id, value) = (event.id.as_str(), event.value.as_str());
        match event.kind.as_str() {
            "start" => self.start(value, &mut out),
            "address" => self.arrive(value, &mut out),
            "change" if id == SETTING => self.speak(value, &mut out),
            "width" => self.width(value, &mut out),
            "change" if id.starts_with(TICK) => self.tick(id, !value.is_empty(), &mut out),
            "input" | "change" if id == "card" => self.card(value, &mut out),
            "input" if id == PASSWORD => self.design_password(value),
            "input" | "change" => self.typed(id, value, &mut out),
            "leave" => self.leave(id, &mut out),
            "tap" => self.tap(id, &mut out),
            "key" => self.key(id, value, &mut out),
            "drop" => self.drop_section(id, value, &mut out),
            "act" => self.act(id, value, &mut out),
            "file" => self.file(id, value, &mut out),
            "list" => self.listed(id, value, &mut out),
            "design" => self.design_told(id, value, &mut out),
            "toggle" => self.toggle(id, value, &mut out),
            "rest" => self.rest(&mut out),
            "print" => self.prepare_print(true, &mut out),
            "printed" => self.prepare_print(false, &mut out),
            "trap" => self.after_trap(value, &mut out),
            "helper" => self.helper(value == "ready", &mut out),
            "found" => self.found(id, value, &mut out),
            "storage" => {
                self.keeps = false;
                self.show_storage(&mut out);
            }
            "elsewhere" => self.kept_elsewhere(value, &mut out),
            _ => {}
        }
        out
    }

    fn start(&mut self, address: &str, out: &mut Vec<Patch>) {
        if self.language != Language::first() {
            self.draw_frame(out);
        }
        self.refill(out);
        self.ask_restore(out);
        self.show_file_note(out);
        self.arrive(address, out);
    }

    /// Asks whether to go on with the latest job of last time, if there is one.
    pub(super) fn ask_restore(&mut self, out: &mut Vec<Patch>) {
        let ask = !self.pending.is_empty() || !self.versions.waiting.is_empty();
        let question = html::restore_question(&self.printer(), ask).into_string();
        self.set_html("restore", question, out);
    }

    /// Whatever is typed from now on is a step of its own.
    pub(super) fn settle(&mut self) {
        self.history.settle();
        self.begun = None;
    }

    /// A key that may mean more than a letter.
    fn key(&mut self, field: &str, key: &str, out: &mut Vec<Patch>) {
        match key {
            "Ctrl+z" | "Ctrl+y" | "Ctrl+Shift+z" => {
                self.settle();
                self.close_offers(out);
                self.step(key == "Ctrl+z", true, out);
                out.push(Patch::Taken {});
            }
            "Enter" if field == "phrase" => self.take_phrase_again(out),
            key => self.offer_key(field, key, out),
        }
    }

    /// A field was typed in or chosen.
    fn typed(&mut self, field: &str, value: &str, out: &mut Vec<Patch>) {
        if field == "phrase" {
            return self.phrase(value, out);
        }
        let before = self.draft.get(field);
        // A unit that is not said is the same as its default: no step that could be taken back.
        let same_unit = field == "units" && LengthUnit::of(before) == LengthUnit::of(value);
        if job::SCHEMA.field(field).is_none() || before == value || same_unit {
            return;
        }
        self.remember(field);
        if field == "units" {
            let before = self.draft.clone();
            change_unit(&mut self.draft, value);
            self.send_values(&before, out);
        } else {
            self.draft.set(field, value);
        }
        self.offer_later(field, out);
        self.typing = true;
        self.show(out);
        self.typing = false;
    }

    pub(super) fn act(&mut self, act: &str, value: &str, out: &mut Vec<Patch>) {
        self.settle();
        self.close_offers(out);
        if let Some(field) = act.strip_prefix("choose:") {
            self.typed(field, value, out);
            self.offering = Offering::default();
            out.push(Patch::Value { id: field.to_owned(), text: value.to_owned() });
            let id = format!("input-{}", field.replace('.', "-"));
            return out.push(Patch::Focus { id });
        }
        if self.hand_over(act, value, out)
            || self.act_on_list(act, value, out)
            || self.act_on_design(act, out)
        {
            return;
        }
        match act {
            "undo" | "redo" => self.step(act == "undo", false, out),
            "new" => {
                let units = self.draft.get("units").to_owned();
                self.pending.clear();
                self.versions.waiting.clear();
                self.ask_restore(out);
                self.replace(Draft::of(&[("units", &units)]), out);
                self.shown = None;
                self.advising.forget();
                self.show(out);
                out.push(Patch::Focus { id: "input-phrase".to_owned() });
            }
            "card" => self.card_by(value, out),
            "say" => {
                out.push(Patch::Value { id: "phrase".to_owned(), text: value.to_owned() });
                self.phrase(value, out);
                self.settle();
                out.push(Patch::Focus { id: "input-phrase".to_owned() });
            }
            "apply" => self.apply(value, out),
            BACK => self.take_back(out),
            "version-keep" => self.keep_version(out),
            "version-take" => self.take_version(value, out),
            "version-drop" => self.drop_version(value, out),
            "restore" => self.restore(value == "yes", out),
            "reading" => self.read_as(value, out),
            "explain" => self.explain(value, out),
            "print" => self.print_page(out),
            "print-card" => self.print_card(out),
            "print-figures" => self.print_figures(out),
            _ => self.act_on_sections(act, value, out),
        }
    }

    /// Puts another draft in place of this one; undo brings it back.
    pub(super) fn replace(&mut self, draft: Draft, out: &mut Vec<Patch>) {
        self.remember("");
        self.draft = draft;
        self.ticks = Ticks::default();
        self.file_note = None;
        self.set_text("file-note", "", out);
        self.said.clear();
        self.show_phrase(out);
        self.refill(out);
    }

    fn restore(&mut self, yes: bool, out: &mut Vec<Patch>) {
        self.versions.restore(yes, &self.shop);
        let ticks = core::mem::take(&mut self.ticks);
        match self.pending.pop() {
            Some(draft) if yes => {
                self.replace(draft, out);
                self.ticks = ticks;
            }
            _ => self.show(out),
        }
        self.ask_restore(out);
        out.push(Patch::Focus { id: "input-phrase".to_owned() });
    }

    fn toggle(&mut self, id: &str, value: &str, out: &mut Vec<Patch>) {
        if id == CODE {
            self.code_open = value == "open";
            return self.show_code(out);
        }
        let id = id.strip_prefix("open-");
        let Some(region) = REGIONS.iter().find(|region| Some(region.id) == id) else { return };
        self.set_open(region.id, value == "open");
        if value == "open" {
            self.rest(out);
        }
    }

    /// Notes that a region stands open, or does not.
    pub(super) fn set_open(&mut self, region: &'static str, open: bool) {
        self.open.retain(|id| *id != region);
        if open {
            self.open.push(region);
        }
    }

    /// The module broke and was started afresh with the last draft.
    fn after_trap(&mut self, _message: &str, out: &mut Vec<Patch>) {
        if let Some(draft) = self.pending.pop() {
            self.draft = draft;
            self.untouched = false;
        }
        // Whatever language the page was in before.
        self.draw_frame(out);
        self.versions.restore(true, &self.shop);
        self.ask_restore(out);
        self.refill(out);
        self.note(Note::said("page.trap"), out);
    }
}
