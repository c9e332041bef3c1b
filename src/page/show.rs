//! Drawing the state: which elements get what, and only when it changed.

use super::event::Patch;
use super::files::Note;
use super::sections::nest;
use super::session::Session;
use crate::advise::Advice;
use crate::draft::{Draft, Field, Kind};
use crate::job::{self, JobReading, SCHEMA};
use crate::plan;
use crate::view::html::{self, Scene};
use crate::view::{REGIONS, Region, placed};
use crate::words::say;

impl Session {
    /// Replaces an element's content when it differs from what it was last given. Figures in it get
    /// ids of their own.
    pub(super) fn set_html(&mut self, id: &str, html: String, out: &mut Vec<Patch>) {
        let html = placed(&html, id);
        let fresh = self.sent.get(id) != Some(&html);
        if fresh {
            self.sent.insert(id.to_owned(), html.clone());
            out.push(Patch::Html { id: id.to_owned(), html });
        }
    }

    /// Plain text into an element, escaped.
    pub(super) fn set_text(&mut self, id: &str, text: &str, out: &mut Vec<Patch>) {
        self.set_html(id, maud::html! { (text) }.into_string(), out);
    }

    pub(super) fn set_attr(
        &mut self,
        id: String,
        name: &'static str,
        value: Option<&str>,
        out: &mut Vec<Patch>,
    ) {
        let key = format!("{id} {name}");
        let now = value.unwrap_or("\u{0}").to_owned();
        if self.sent.get(&key) != Some(&now) {
            self.sent.insert(key, now);
            out.push(Patch::Attr { id, name, value: value.map(str::to_owned) });
        }
    }

    /// Sends the texts of the fields that differ from another draft.
    pub(super) fn send_values(&self, before: &Draft, out: &mut Vec<Patch>) {
        for path in self.paths() {
            if self.draft.get(&path) != before.get(&path) {
                out.push(self.value_of(path));
            }
        }
    }

    /// Every field that stands in the form, with those of each further section.
    pub(super) fn paths(&self) -> Vec<String> {
        let inner = || SCHEMA.groups.iter().flat_map(|(_, fields)| fields.iter());
        let sections = (0..self.draft.members("sections"))
            .flat_map(|index| inner().map(move |field| format!("sections.{index}.{}", field.id)));
        SCHEMA.fields.iter().map(|field| field.id.to_owned()).chain(sections).collect()
    }

    /// What a control shows: its text, or the choice that counts when none is made.
    fn value_of(&self, path: String) -> Patch {
        let text = match (self.draft.get(&path), SCHEMA.field(&path)) {
            ("", Some(Field { kind: Kind::Choice(_), default, .. })) => default,
            // The first line counts when none is named, and the control has no empty choice.
            ("", Some(Field { id: "line", .. })) => {
                self.shop.lines.first().map_or("", |line| &*line.name)
            }
            (text, _) => text,
        };
        let text = text.to_owned();
        Patch::Value { id: path, text }
    }

    /// Everything anew: fields, sections, shop, answer.
    pub(super) fn refill(&mut self, out: &mut Vec<Patch>) {
        let (label, lines) = html::shop_line(&self.shop, self.draft.get("line"), &self.printer());
        self.set_html("shop", label.into_string(), out);
        // The options come before the value that chooses one of them.
        self.set_html("input-line", lines.into_string(), out);
        for field in SCHEMA.fields {
            out.push(self.value_of(field.id.to_owned()));
        }
        out.push(self.card_value());
        self.redraw_sections(out);
    }

    /// The further sections anew, then the rest of the page.
    pub(super) fn redraw_sections(&mut self, out: &mut Vec<Patch>) {
        self.close_offers(out);
        let nest = nest(&self.draft);
        let sections =
            html::sections(&nest, &self.draft, &self.shop, &self.printer()).into_string();
        if self.sent.get("sections") != Some(&sections) {
            // Slots and controls inside are new and empty, whatever they were given before.
            let old = ["echo-sections-", "input-sections-", "offers-sections-", "place-section-"];
            self.sent.retain(|id, _| !old.iter().any(|start| id.starts_with(start)));
        }
        self.set_html("sections", sections, out);
        // What was typed since they were drawn is not in their HTML.
        let paths = self.paths();
        let inner = paths.into_iter().filter(|path| path.starts_with("sections."));
        out.extend(inner.map(|path| self.value_of(path)));
        self.show(out);
    }

    /// Reads the draft, plans it if it is complete, and paints what a person looks at first.
    pub(super) fn show(&mut self, out: &mut Vec<Patch>) {
        let reading = job::read(&self.draft, &self.shop);
        self.show_notes(&reading, out);
        let stale = reading.job.is_none();
        if !stale && matches!(self.file_note, Some(Note::Unread(_))) {
            self.file_note = None;
            self.show_file_note(out);
        }
        if let Some(job) = &reading.job
            && (self.shown.is_none() || !self.advising.knows(&self.draft))
        {
            let plan = plan::plan(job, &self.shop);
            let advice = Advice::at_once(job, &self.shop, &plan);
            self.shown = Some((job.clone(), plan, advice));
            self.advising.begin(&self.draft);
            self.fold_fixes(out);
        }
        self.head_fixes(out);
        let answer = self.answer_html(&reading, stale);
        self.set_html("answer", answer, out);
        self.set_attr("answer".to_owned(), "class", stale.then_some("stale"), out);
        self.paint_drawings(out);
        self.show_places(out);
        self.show_beginning(out);
        if !self.typing {
            self.echo_again(out);
        }
        for act in ["undo", "redo"] {
            let off = (!self.history.can(act == "undo")).then_some("true");
            self.set_attr(format!("act-{act}"), "aria-disabled", off, out);
        }
        self.announce(stale, out);
        out.push(Patch::Later {});
    }

    /// How to begin, until somebody has.
    fn show_beginning(&mut self, out: &mut Vec<Patch>) {
        let teach = html::teach(&self.printer()).into_string();
        let stays = self.typing && self.sent.get("example") == Some(&teach);
        let told = if self.untouched {
            html::first_visit(&self.printer()).into_string()
        } else if stays || self.draft.all().all(|(path, _)| path == "units") {
            teach
        } else {
            String::new()
        };
        self.set_html("example", told, out);
    }

    fn answer_html(&self, reading: &JobReading, stale: bool) -> String {
        let printer = self.printer();
        let wanted: Vec<String> =
            reading.missing.iter().map(|field| html::field_name(field, &printer)).collect();
        let scene = self.scene();
        maud::html! {
            @if self.untouched { p class="example" { (printer.word("answer.example")) } }
            @if !wanted.is_empty() {
                p class="missing" {
                    (printer.text(&say("answer.missing").text("fields", wanted.join(", "))))
                }
            }
            @match &scene {
                Some(scene) => (html::answer(scene, stale)),
                None => p class="empty" { (printer.word("answer.empty")) },
            }
        }
        .into_string()
    }

    pub(super) fn show_notes(&mut self, reading: &JobReading, out: &mut Vec<Patch>) {
        for path in self.paths() {
            let field = SCHEMA.field(&path);
            let quiet = field.is_some_and(|field| {
                matches!(field.kind, Kind::Choice(_) | Kind::Text(_)) && field.id != "line"
            });
            let half = self.half_said(&path, reading).map(job::Note::Wrong);
            let note = half.as_ref().or_else(|| reading.notes.get(&path));
            if quiet && !matches!(note, Some(job::Note::Wrong(_))) {
                continue;
            }
            let id = path.replace('.', "-");
            let printed = html::note(&path, note, &self.printer()).into_string();
            self.set_html(&format!("echo-{id}"), printed, out);
            // A choice is several controls; its fault stands beside all of them.
            if !field.is_some_and(|field| matches!(field.kind, Kind::Choice(_))) {
                let wrong = matches!(note, Some(job::Note::Wrong(_))).then_some("true");
                self.set_attr(format!("input-{id}"), "aria-invalid", wrong, out);
            }
        }
    }

    /// The verdict in words, once it has changed.
    fn announce(&mut self, stale: bool, out: &mut Vec<Patch>) {
        let Some((_, plan, _)) = self.shown.as_ref().filter(|_| !stale) else { return };
        let verdict = plan.verdict;
        if self.announced == Some(verdict) {
            return;
        }
        let key = &format!("answer.{}", verdict.name());
        self.announced = Some(verdict);
        out.push(Patch::Announce { text: self.printer().word(key).to_owned() });
    }

    /// What a person looks at second, after the first has been painted; then the job is kept.
    pub(super) fn rest(&mut self, out: &mut Vec<Patch>) {
        self.offer(out);
        self.seek(out);
        for region in &REGIONS {
            if !self.advising.waits(region.id, self.reading) {
                self.paint_region(region, out);
            }
        }
        self.show_reading(out);
        self.show_explanation(out);
        self.show_first_off(out);
        self.show_design(out);
        self.show_code(out);
        self.keep(out);
    }

    /// Leads to an element below the answer once all is painted: what changed its height later would move
    /// it out of sight.
    pub(super) fn lead_to(&mut self, id: &str, out: &mut Vec<Patch>) {
        self.rest(out);
        out.push(Patch::Focus { id: id.to_owned() });
    }

    /// One region's summary, and its body where that can be seen.
    pub(super) fn paint_region(&mut self, region: &Region, out: &mut Vec<Patch>) {
        let hidden = !region.readings.contains(&self.reading);
        if region.id == "cost"
            && !hidden
            && self.open.contains(&region.id)
            && let Some((job, plan, advice)) = &mut self.shown
        {
            advice.reckon(job, &self.shop, plan);
        }
        let hide = hidden.then_some("");
        self.set_attr(format!("region-{}", region.id), "hidden", hide, out);
        // What this reader does not see is not in the page either, nor what an earlier one has closed.
        let scene = self.scene().filter(|_| !hidden);
        let summary = html::region_summary(region, scene.as_ref()).into_string();
        let seen = scene.as_ref().filter(|_| self.open.contains(&region.id));
        let body = html::region_body(region, seen).into_string();
        self.set_html(&format!("summary-{}", region.id), summary, out);
        self.set_html(&format!("body-{}", region.id), body, out);
        self.advising.painted(region.id, self.reading);
    }

    fn show_first_off(&mut self, out: &mut Vec<Patch>) {
        let told = self.scene().map(|scene| html::first_off(&scene).into_string());
        self.set_html("first-off", told.unwrap_or_default(), out);
    }

    /// What the views look at; nothing before the first complete job.
    pub(super) fn scene(&self) -> Option<Scene<'_>> {
        let (job, plan, advice) = self.shown.as_ref()?;
        let (printer, reading) = (self.printer(), self.reading);
        let (versions, ticks, screen) = (&self.versions.kept, &self.ticks, self.screen);
        let shop = &self.shop;
        Some(Scene { job, shop, plan, advice, versions, ticks, printer, reading, screen })
    }
}
