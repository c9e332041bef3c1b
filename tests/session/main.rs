//! One page's session, played natively: what a person does goes in as events, and the patches that
//! come out are applied to a model of the page.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod answering;
mod client;
mod deeds;
mod explaining;
mod files;
mod half_said;
mod keeping;
mod language;
mod one_line;
mod printing;
mod sections;
mod suggestions;
#[path = "../support/mod.rs"]
mod support;
mod true_size;
mod undo;

use quirefit::draft::{Draft, Kind};
use quirefit::job::SCHEMA;
use quirefit::page::{EXAMPLE, Event, Patch, Session};
use quirefit::shop;
use quirefit::view::html::{Page as Frame, frame};
use quirefit::view::{Numbers, Printer};
use quirefit::words::{Files, Language, built_in};
use std::collections::BTreeMap;
use support::JSON;

const SAID: &str = "64 pages, A5, 100 pound text, 750 copies";

/// What a browser would hold.
struct Page {
    session: Session,
    /// The page as the build draws it.
    drawn: String,
    /// Content of the elements that were patched.
    html: BTreeMap<String, String>,
    /// Texts of the controls by name.
    values: BTreeMap<String, String>,
    attrs: BTreeMap<(String, &'static str), Option<String>>,
    stored: Option<String>,
    focus: String,
    /// The figure that the explanation stands behind.
    noted: String,
    saved_files: Vec<(String, String)>,
    announced: Vec<String>,
    /// What the document says it is written in.
    language: &'static str,
    /// Patches of the last event, its rest included.
    last: Vec<Patch>,
}

const LANGUAGE: &str = "en-GB";

impl Page {
    /// Opens the page; `saved` is what was kept last time.
    fn open(saved: Option<&str>) -> Self {
        Self::open_in(saved, LANGUAGE)
    }

    fn open_in(saved: Option<&str>, browser: &str) -> Self {
        let language = Language::first();
        let words = language.words(&built_in());
        let printer = Printer { words: &words, numbers: Numbers::METRIC };
        let (draft, shop) = (Draft::of(EXAMPLE), shop::demo());
        let drawn = Frame { draft: &draft, shop: &shop, printer, language, built: "", scene: None };
        let drawn = frame(&drawn).into_string();
        let session = Session::new(Files::new(), &[browser.to_owned()], saved, JSON);
        let mut page = Self {
            session,
            drawn,
            html: BTreeMap::new(),
            values: BTreeMap::new(),
            attrs: BTreeMap::new(),
            stored: saved.map(str::to_owned),
            focus: String::new(),
            noted: String::new(),
            saved_files: Vec::new(),
            announced: Vec::new(),
            language: LANGUAGE,
            last: Vec::new(),
        };
        page.tell("start", "", "");
        page
    }

    /// Closes the page and opens it again with what it kept.
    fn again(&self) -> Self {
        Self::open(self.stored.as_deref())
    }

    fn tell(&mut self, kind: &str, id: &str, value: &str) {
        if matches!(kind, "input" | "change") {
            self.values.insert(id.to_owned(), value.to_owned());
        }
        self.last.clear();
        let mut kind = kind.to_owned();
        let (mut id, mut value) = (id.to_owned(), value.to_owned());
        // The rest is asked for after the next paint.
        loop {
            let patches = self.session.handle(&Event::new(&kind, &id, &value));
            let later = patches.iter().any(|patch| matches!(patch, Patch::Later {}));
            for patch in &patches {
                self.apply(patch);
            }
            self.last.extend(patches);
            if !later {
                break;
            }
            (kind, id, value) = ("rest".to_owned(), String::new(), String::new());
        }
        self.is_sound();
    }

    fn apply(&mut self, patch: &Patch) {
        match patch {
            Patch::Html { id, html } => {
                assert!(self.has(id), "nothing has the id {id}");
                assert!(self.html.get(id) != Some(html), "{id} was patched without a change");
                // Whatever stood inside is gone.
                let within = |inner: &str| self.shown(id).contains(&format!("id=\"{inner}\""));
                let gone: Vec<String> =
                    self.html.keys().filter(|inner| within(inner)).cloned().collect();
                gone.iter().for_each(|inner| drop(self.html.remove(inner)));
                if id == "page" {
                    self.html.clear();
                    self.values.clear();
                    self.attrs.retain(|(id, _), _| id == "page");
                }
                for (name, text) in controls(html) {
                    self.values.insert(name, text);
                }
                self.html.insert(id.clone(), html.clone());
            }
            Patch::Value { id, text } => {
                self.values.insert(id.clone(), text.clone());
            }
            Patch::Attr { id, name, value } => {
                assert!(self.has(id), "nothing has the id {id}");
                self.attrs.insert((id.clone(), *name), value.clone());
            }
            Patch::Focus { id } => {
                assert!(self.has(id), "nothing to focus has the id {id}");
                self.focus.clone_from(id);
            }
            Patch::Language { tag } => self.language = tag,
            Patch::Store { text } => self.stored = Some(text.clone()),
            Patch::Download { name, text } => self.saved_files.push((name.clone(), text.clone())),
            Patch::Announce { text } => self.announced.push(text.clone()),
            Patch::Near { id } => assert!(self.has(id), "nothing to come near has the id {id}"),
            Patch::Design { .. } => {}
            Patch::Place { at, .. } => {
                assert!(at.is_empty() || self.has(at), "nothing to stand behind has the id {at}");
                self.noted.clone_from(at);
            }
            Patch::List { .. }
            | Patch::Picture { .. }
            | Patch::Print {}
            | Patch::Search { .. }
            | Patch::Later {}
            | Patch::Taken {} => {}
            Patch::Save { .. } | Patch::Copy { .. } | Patch::Address { .. } => {}
        }
    }

    fn has(&self, id: &str) -> bool {
        let mark = format!("id=\"{id}\"");
        self.drawn.contains(&mark) || self.html.values().any(|html| html.contains(&mark))
    }

    /// What stands in the form is what stands in the draft, field by field.
    fn is_sound(&self) {
        let draft = self.session.draft();
        let inner = SCHEMA.groups[0].1;
        let sections = (0..draft.members("sections")).flat_map(|index| {
            inner.iter().map(move |field| (format!("sections.{index}.{}", field.id), field))
        });
        for (path, field) in
            SCHEMA.fields.iter().map(|field| (field.id.to_owned(), field)).chain(sections)
        {
            let typed = draft.get(&path);
            let first_line = self.shown("input-line").split("value=\"").nth(1);
            let expected = match field.kind {
                Kind::Choice(_) if typed.is_empty() => field.default,
                // The first line counts when none is named.
                _ if path == "line" && typed.is_empty() => {
                    first_line.and_then(|after| after.split('"').next()).unwrap()
                }
                _ => typed,
            };
            let shown = self.values.get(&path).map_or("", String::as_str);
            assert_eq!(
                shown, expected,
                "{path}: the form shows {shown}, the draft holds {expected}"
            );
        }
    }

    fn input(&mut self, field: &str, text: &str) {
        self.tell("input", field, text);
    }

    /// Types a text key by key, and leaves the field.
    fn type_into(&mut self, field: &str, text: &str) {
        let ends = text.char_indices().map(|(at, letter)| at + letter.len_utf8());
        for end in ends.collect::<Vec<_>>() {
            self.input(field, &text[..end]);
        }
        self.tell("leave", field, text);
    }

    fn act(&mut self, act: &str, value: &str) {
        self.tell("act", act, value);
    }

    /// Presses a key in a field; whether the page took it.
    fn key(&mut self, field: &str, key: &str) -> bool {
        self.tell("key", field, key);
        self.last.contains(&Patch::Taken {})
    }

    fn attr(&self, id: &str, name: &'static str) -> Option<&str> {
        self.attrs.get(&(id.to_owned(), name)).and_then(Option::as_deref)
    }

    fn shown(&self, id: &str) -> &str {
        self.html.get(id).map_or("", String::as_str)
    }

    /// The words of an element, without its tags.
    fn words(&self, id: &str) -> String {
        text(self.shown(id))
    }

    fn draft(&self) -> Draft {
        self.session.draft().clone()
    }

    /// What stands in the fields, and in the one line that says it all.
    fn form(&self) -> (Draft, String) {
        (self.draft(), self.values.get("phrase").cloned().unwrap_or_default())
    }

    /// Whether a button does something.
    fn can(&self, act: &str) -> bool {
        self.attrs[&(format!("act-{act}"), "aria-disabled")].is_none()
    }

    fn patched(&self) -> Vec<&str> {
        self.last
            .iter()
            .filter_map(|patch| match patch {
                Patch::Html { id, .. } => Some(id.as_str()),
                _ => None,
            })
            .collect()
    }

    /// Everything that anybody could find on the page, whether it is shown or not.
    fn everything(&self) -> String {
        let html: Vec<String> = self.html.values().map(|html| text(html)).collect();
        html.join("\n")
    }
}

/// HTML without its tags.
fn text(html: &str) -> String {
    let mut out = String::new();
    let mut inside = false;
    for letter in html.replace("&nbsp;", " ").chars() {
        match letter {
            '<' => inside = true,
            '>' => inside = false,
            '\u{a0}' if !inside => out.push(' '),
            _ if !inside => out.push(letter),
            _ => {}
        }
    }
    out
}

/// Names and texts of the controls in a piece of HTML.
fn controls(html: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for tag in html.split("<input ").skip(1).filter_map(|after| after.split('>').next()) {
        let attr = |name: &str| {
            let (_, after) = tag.split_once(&format!("{name}=\""))?;
            let text = after.split('"').next()?;
            Some(
                text.replace("&quot;", "\"")
                    .replace("&lt;", "<")
                    .replace("&gt;", ">")
                    .replace("&amp;", "&"),
            )
        };
        let radio = tag.contains("type=\"radio\"");
        if !radio || tag.contains(" checked") {
            let value = attr("value").unwrap_or_default();
            found.extend(attr("name").map(|name| (name, value)));
        }
    }
    found
}

/// The model's own eyes.
#[test]
fn the_model_reads_controls_and_words() {
    let html = "<input type=\"text\" id=\"a\" name=\"x\" value=\"1 &quot;\"><input type=\"radio\" \
                name=\"y\" value=\"p\"> <input type=\"radio\" name=\"y\" value=\"q\" checked>";
    let pair = |name: &str, text: &str| (name.to_owned(), text.to_owned());
    assert_eq!(controls(html), [pair("x", "1 \""), pair("y", "q")]);
    assert_eq!(text("<p>a <b>b</b>&nbsp;c</p>"), "a b c");
}
