//! One page's session, played natively: what a person does goes in as events, and the patches that
//! come out are applied to a model of the page.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod session_entry;
mod session_half_said;
mod session_one_line;
mod support;

use proptest::prelude::*;
use quirefit::advise::{Advice, MOST_TRIED};
use quirefit::draft::{Draft, Kind, from_tree, to_tree};
use quirefit::job::{self, SCHEMA};
use quirefit::page::{EXAMPLE, Event, Patch, Session};
use quirefit::plan;
use quirefit::shop::{self, Shop, draft_of};
use quirefit::view::html::{Page as Frame, Scene, frame};
use quirefit::view::{Numbers, Printer, Reading, Screen};
use quirefit::words::{Files, LANGUAGES, Language, built_in};
use std::collections::{BTreeMap, BTreeSet};
use support::{JSON, files, text_of};

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

const SAID: &str = "64 pages, A5, 100 pound text, 750 copies";

/// A figure of the frame, as the build inlines it, has the id that it keeps once the page has started:
/// who is led to it before finds it after.
/// Letters that are not UTF-8 come as the mark that stands for them: such a file would not be saved again
/// as it was, so it is refused.
#[test]
fn a_file_that_is_not_utf8_is_refused() {
    let mut page = Page::open(None);
    let before = page.session.draft().clone();
    let text = text_of("examples/jobs/teapot-guide.json").replacen("Guide", "Gu\u{fffd}de", 1);
    page.tell("file", "latin.json", &text);
    assert!(page.shown("file-note").contains("UTF-8"), "{}", page.shown("file-note"));
    assert_eq!(*page.session.draft(), before);
}

#[test]
fn figures_are_called_the_same_before_and_after_the_start() {
    let (language, shop, draft) = (Language::first(), shop::demo(), Draft::of(EXAMPLE));
    let words = language.words(&built_in());
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let job = job::read(&draft, &shop).job.unwrap();
    let plan = plan::plan(&job, &shop);
    let advice = Advice::searched(&draft, &job, &shop, &plan, MOST_TRIED);
    let scene = Scene {
        job: &job,
        shop: &shop,
        plan: &plan,
        advice: &advice,
        versions: &[],
        ticks: &quirefit::view::Ticks::default(),
        printer,
        reading: Reading::Design,
        screen: Screen::default(),
    };
    let page =
        Frame { draft: &draft, shop: &shop, printer, language, built: "", scene: Some(scene) };
    let asked = |html: &str| -> BTreeSet<String> {
        let ids = html.split(" id=\"ask-").skip(1);
        ids.map(|rest| rest.split('"').next().unwrap().to_owned()).collect()
    };
    let before = asked(&frame(&page).into_string());
    let after: BTreeSet<String> =
        Page::open(None).html.values().flat_map(|html| asked(html)).collect();
    assert!(before.len() > 10, "{before:?}");
    assert_eq!(before, after);
}

/// A separate cover does not fill the sheets inside: 7 pages are 8 with a blank, whatever lies around.
#[test]
fn blanks_are_named_beside_a_cover_too() {
    let mut page = Page::open(None);
    page.input("pages", "8");
    assert!(page.words("echo-pages").contains("8 pages inside + 4 cover = 12 pages"));
    page.input("pages", "7");
    let told = page.words("echo-pages");
    assert!(told.contains("8 pages, 1 blank") && told.contains("a 4-page cover"), "{told}");
}

#[test]
fn a_line_typed_key_by_key_ends_in_an_answer() {
    let mut page = Page::open(None);
    page.type_into("phrase", SAID);
    let draft = page.draft();
    assert_eq!(draft.get("pages"), "64 pages");
    assert_eq!(draft.get("size"), "A5");
    assert_eq!(draft.get("paper"), "100 pound text");
    assert_eq!(draft.get("copies"), "750 copies");
    assert_eq!((draft.get("cover"), draft.get("title")), ("", ""), "the example is typed over");
    assert!(page.words("answer").starts_with(['Y', 'O', 'N']), "{}", page.words("answer"));
    assert!(page.words("answer").contains("The spine will be"), "{}", page.words("answer"));
    assert!(page.attrs[&("answer".to_owned(), "class")].is_none(), "the answer is not stale");
    assert!(page.words("echo-paper").contains("148 g/m²"), "{}", page.words("echo-paper"));
}

/// Half typed, a line may mean something else: nothing of that may stay behind.
#[test]
fn a_line_typed_key_by_key_ends_as_the_line_pasted() {
    for line in [
        SAID,
        "64 pages, A5, 100 pound text",
        "60 + 4, 170 x 240, 115 silk, cover 250 silk, 12,000",
        "48pp 8.5 x 11 in, 80# gloss text, 500 off",
        "A5, 32 pages, 90 gsm 112 µm",
        "120 silk A4 24 pages",
    ] {
        let mut typed = Page::open(None);
        typed.type_into("phrase", line);
        let mut pasted = Page::open(None);
        pasted.input("phrase", line);
        assert_eq!(typed.draft(), pasted.draft(), "{line}");
        // Taken back to nothing, key by key: what was there before.
        for end in (0..line.len()).rev().filter(|end| line.is_char_boundary(*end)) {
            pasted.input("phrase", &line[..end]);
        }
        assert_eq!(pasted.draft(), Page::open(None).draft(), "{line}");
        typed.act("undo", "");
        assert_eq!(typed.draft(), Page::open(None).draft(), "{line}: one undo takes it all back");
    }
}

#[test]
fn a_line_that_says_nothing_changes_nothing() {
    let mut page = Page::open(None);
    let before = page.draft();
    page.type_into("phrase", "well then");
    assert_eq!(page.draft(), before);
    assert!(page.words("echo-phrase").contains("well then"));
    // Nothing was changed, so there is nothing to take back.
    page.input("pages", "48");
    page.act("undo", "");
    assert_eq!(page.draft(), before);
}

/// Every fault in a file leaves the form as it was.
#[test]
fn a_file_that_cannot_be_opened_changes_nothing_that_was_typed() {
    for path in files("examples/failing") {
        let mut page = Page::open(None);
        page.input("title", "The Patient Snail");
        page.input("pages", "60 +");
        let before = page.draft();
        page.tell("file", &path, &text_of(&path));
        let note = page.words("file-note");
        if page.draft() != before {
            // A job whose texts have faults opens all the same: each fault stands beside its field.
            assert!(note.contains("The job is open"), "{path}: {note}");
            page.act("undo", "");
        } else {
            assert!(note.contains("was not opened"), "{path}: {note}");
            assert!(!page.shown("file-note").contains("<li></li>"), "{path}");
        }
        assert_eq!(page.draft(), before, "{path}");
        // And none of it is lost on the way to the next visit.
        let next = page.again();
        assert!(next.shown("restore").contains("restore-yes"), "{path}");
    }
}

/// The commit stands below the page, in every language, as text.
#[test]
fn the_page_says_what_it_was_built_from() {
    for (commit, told) in [
        ("0123abc", "built from 0123abc"),
        ("0123abc+", "built from 0123abc, with changes since"),
        ("", ""),
    ] {
        let session = Session::new(Files::new(), &["en-GB".to_owned()], None, JSON);
        let mut session = session.built_from(commit);
        let patches = session.handle(&Event::new("change", "language", "en-US"));
        let page = patches.iter().find_map(|patch| match patch {
            Patch::Html { id, html } if id == "page" => Some(html.as_str()),
            _ => None,
        });
        let after = page.unwrap().split("id=\"version\">").nth(1).unwrap();
        let line = after.split("</p>").next().unwrap().trim();
        assert!(
            line.ends_with(if told.is_empty() { env!("CARGO_PKG_VERSION") } else { told }),
            "{line}"
        );
    }
}

/// Byte for byte, whatever it looks like; once something is changed, as this page writes it.
#[test]
fn a_file_is_saved_as_it_was_opened() {
    let job = "\u{feff}{ \"version\":1,\r\n\t\"pages\":\"32\", \"size\" : \"A5\", \"copies\": \"90\",\
        \"paper\":\"90 gsm\", \"format\":\"quirefit-job\"}\n\n";
    let mut page = Page::open(None);
    let last = |page: &Page| page.saved_files.last().unwrap().1.clone();
    page.tell("file", "mine.txt", job);
    assert!(page.words("file-note").contains("The job is open"), "{}", page.words("file-note"));
    page.act("save-job", "");
    assert_eq!(last(&page), job);
    page.input("copies", "91");
    page.act("save-job", "");
    assert!(last(&page) != job && last(&page).contains("91"));
    page.act("undo", "");
    page.act("save-job", "");
    assert_eq!(last(&page), job);
    for path in files("examples/shops") {
        let shop = text_of(&path).replace('\n', "\r\n");
        page.tell("file", &path, &shop);
        page.act("save-shop", "");
        assert_eq!(last(&page), shop, "{path}");
    }
}

#[test]
fn every_job_and_every_shop_opens() {
    for path in files("examples/jobs").iter().chain(&files("examples/rules")) {
        let mut page = Page::open(None);
        page.tell("file", path, &text_of(path));
        assert!(page.words("file-note").contains("The job is open"), "{path}");
        let opened = support::draft(path, &SCHEMA).unwrap();
        assert_eq!(page.draft(), opened, "{path}");
        page.act("save-job", "");
        let (name, saved) = page.saved_files.last().unwrap();
        assert!(name.ends_with(".quirefit-job.json"), "{name}");
        let back = from_tree(&(JSON.parse)(saved).unwrap(), &SCHEMA).unwrap();
        assert_eq!(back, opened, "{path}: saved as it was opened");
    }
    for path in files("examples/shops") {
        let mut page = Page::open(None);
        page.input("line", "Light desk-side line");
        let before = page.draft();
        page.tell("file", &path, &text_of(&path));
        assert!(page.words("file-note").contains("The shop is open"), "{path}");
        let shop = support::shop_of(&path);
        assert!(page.words("shop").contains(&shop.name), "{path}");
        assert!(page.shown("input-line").contains(&*shop.lines[0].name), "{path}");
        // The line that was chosen is not in this shop; nothing chosen is lost for good.
        assert_eq!(page.draft().get("line"), "");
        page.act("undo", "");
        assert_eq!(page.draft(), before, "{path}");
        page.act("save-shop", "");
        let (_, saved) = page.saved_files.last().unwrap();
        let back = from_tree(&(JSON.parse)(saved).unwrap(), &shop::SCHEMA).unwrap();
        assert_eq!(back, support::draft(&path, &shop::SCHEMA).unwrap(), "{path}: as it was opened");
        // The shop is there again next time.
        let next = page.again();
        assert!(next.words("shop").contains(&shop.name), "{path}");
    }
}

#[test]
fn restoring_asks_first_and_shows_nothing_of_the_job() {
    let mut page = Page::open(None);
    page.input("title", "Nine Secret Recipes");
    page.input("customer", "Madame Quagga");
    page.input("paper", "0.077 mm newsprint");
    let typed = page.draft();
    let mut next = page.again();
    let told = format!("{:?}", next.last);
    for secret in ["Recipes", "Quagga", "newsprint"] {
        assert!(!told.contains(secret), "{secret} is shown before anyone was asked");
    }
    assert!(next.words("restore").contains("last time"));
    // Whatever is typed meanwhile does not push it out.
    next.input("pages", "16");
    let mut third = next.again();
    third.act("restore", "yes");
    assert_eq!(third.draft().get("pages"), "16");
    assert!(third.shown("restore").contains("restore-yes"), "the earlier job still waits");
    third.act("restore", "yes");
    assert_eq!(third.draft(), typed);
    assert!(third.shown("restore").is_empty());
    third.act("undo", "");
    assert_eq!(third.draft().get("pages"), "16");
    // Leaving it forgets it.
    let mut fourth = page.again();
    fourth.act("restore", "no");
    assert!(fourth.shown("restore").is_empty());
    fourth.input("pages", "20");
    assert!(!fourth.stored.as_ref().unwrap().contains("Quagga"));
    // Opening a file answers nothing: the question stays.
    let mut fifth = page.again();
    fifth.tell("file", "x", &text_of("examples/jobs/teapot-guide.json"));
    assert!(fifth.shown("restore").contains("restore-yes"));
    assert!(fifth.stored.as_ref().unwrap().contains("Quagga"));
}

#[test]
fn a_kept_state_that_cannot_be_read_is_not_lost() {
    let mut page = Page::open(None);
    page.input("title", "Owls by Lamplight");
    page.input("pages", "52");
    let good = page.stored.clone().unwrap();
    for damaged in [
        good[..good.len() / 2].to_owned(),
        good.replace("\"version\": 1", "\"version\": 2"),
        good.replace("quirefit-saved", "another-saved"),
        good.replace("\"pages\"", "\"pagination\""),
        "{\"format\": \"quirefit-saved\", \"novelty\": 1}".to_owned(),
        "not json at all".to_owned(),
        "[1, 2, 3]".to_owned(),
    ] {
        let mut next = Page::open(Some(&damaged));
        assert!(next.words("answer").contains("The spine will be"), "the page works: {damaged}");
        assert!(next.words("file-note").contains("cannot be read"), "{damaged}");
        // Not even by typing on, nor by closing the page once more.
        next.input("pages", "36");
        let mut third = next.again();
        third.act("restore", "yes");
        assert_eq!(third.draft().get("pages"), "36");
        third.act("save-kept", "");
        assert_eq!(third.saved_files.last().unwrap().1, damaged);
        third.input("pages", "40");
        assert!(!third.stored.as_ref().unwrap().contains("unread"), "once saved it is not kept");
    }
    // What is whole makes no noise.
    assert!(Page::open(Some(&good)).shown("file-note").is_empty());
    assert!(Page::open(Some("")).shown("file-note").is_empty());
}

#[test]
fn a_new_job_can_be_taken_back_and_is_forgotten_otherwise() {
    let mut page = Page::open(None);
    page.input("title", "The Quiet Drum");
    page.input("pages", "52");
    page.input("bleed", "4 mm");
    let before = page.draft();
    let answer = page.shown("answer").to_owned();
    page.act("new", "");
    assert_eq!(page.draft(), Draft::of(&[("units", "mm")]));
    assert_eq!(page.focus, "input-phrase");
    assert!(!page.everything().contains("Quiet Drum"));
    assert!(!page.stored.as_ref().unwrap().contains("Quiet Drum"));
    // An empty job is nothing to go on with.
    assert!(page.again().shown("restore").is_empty());
    page.act("undo", "");
    assert_eq!(page.draft(), before);
    assert_eq!(page.shown("answer"), answer);
    page.act("redo", "");
    assert_eq!(page.draft(), Draft::of(&[("units", "mm")]));
}

#[test]
fn sections_are_added_filled_taken_out_and_brought_back() {
    let mut page = Page::open(None);
    page.act("section-add", "");
    assert_eq!(page.focus, "input-sections-0-pages");
    page.input("sections.0.pages", "8");
    page.type_into("sections.0.paper", "90 gsm uncoated");
    page.tell("change", "sections.0.place", "around");
    page.act("section-add", "");
    page.type_into("sections.1.paper", "200 gsm silk");
    let both = page.draft();
    let sheets = page.words("answer");
    page.act("section-remove", "0");
    assert_eq!(page.draft().get("sections.0.paper"), "200 gsm silk");
    assert_eq!(page.draft().members("sections"), 1);
    page.act("undo", "");
    assert_eq!(page.draft(), both);
    assert_eq!(page.words("answer"), sheets);
    // Step by step back to nothing: the form follows, `is_sound` sees to it.
    for _ in 0..8 {
        page.act("undo", "");
    }
    assert_eq!(page.draft(), Page::open(None).draft());
    for _ in 0..8 {
        page.act("redo", "");
    }
    assert_eq!(page.draft().members("sections"), 1);
    // A section that is not there cannot be taken out, and that is no step.
    let before = page.draft();
    page.act("section-remove", "7");
    page.act("section-remove", "x");
    assert_eq!(page.draft(), before);
}

#[test]
fn a_change_of_unit_keeps_every_text_and_shows_it() {
    let mut page = Page::open(None);
    for (field, text) in
        [("size", "170 x 240"), ("bleed", "4"), ("safe", "1/4 in"), ("paper", "115 silk 0.095 mm")]
    {
        page.input(field, text);
    }
    page.act("section-add", "");
    page.input("sections.0.paper", "pack of 20 leaves 2.1");
    let spine = |page: &Page| page.words("answer").split("thick").next().unwrap().to_owned();
    let before = (page.draft(), spine(&page));
    page.tell("change", "units", "in");
    assert_eq!(page.values["bleed"], "4 mm");
    assert!(page.values["size"].starts_with("170 x 240"));
    assert_eq!(page.values["safe"], "1/4 in");
    assert!(page.values["sections.0.paper"].starts_with("pack of 20 leaves 2.1"));
    assert!(spine(&page).contains(" in"), "{}", spine(&page));
    page.tell("change", "units", "mm");
    assert_eq!(page.values["bleed"], "4 mm");
    assert_eq!(spine(&page), before.1);
    // There and back is one step: nothing else was touched between.
    page.act("undo", "");
    assert_eq!(page.draft(), before.0);
}

#[test]
fn a_page_in_the_states_starts_in_inches() {
    let page = Page::open_in(None, "en-US");
    assert_eq!(page.draft().get("units"), "in");
    assert!(page.words("answer").contains(" in"));
    let page = Page::open_in(None, "fr-FR");
    assert_eq!(page.draft().get("units"), "mm");
    assert!(page.words("answer").contains(','), "a comma for decimals: {}", page.words("answer"));
}

/// A page on which everything has been done that stands only in the session.
fn busy_page(saved: Option<&str>, browser: &str) -> Page {
    let mut page = Page::open_in(saved, browser);
    page.tell("storage", "", "none");
    page.tell("file", "x.json", "no file");
    page.type_into("phrase", "48 + 4 pages, 148 x 205, tied with ribbon");
    page.type_into("bleed", "far");
    page.act("section-add", "");
    page.type_into("sections.0.paper", "90 gsm 0,112 mm");
    page.tell("toggle", "open-run", "open");
    page.act("explain", "ask-spine-0-answer");
    page
}

#[test]
fn a_page_in_another_language_says_the_same_of_the_same_book() {
    for there in &LANGUAGES {
        let back = Language::first();
        if there == back {
            continue;
        }
        let mut page = busy_page(None, back.tag);
        let before = page.draft();
        let everything = page.html.clone();
        page.tell("change", "language", there.tag);
        assert_eq!(page.language, there.tag);
        assert_eq!(page.focus, format!("input-language-{}", there.tag));
        assert_eq!(page.draft(), before, "{}: what was typed changed", there.tag);
        assert_eq!(page.values["phrase"], "48 + 4 pages, 148 x 205, tied with ribbon");
        // What stands there is what a page in that language would have shown from the start.
        let mut own = busy_page(None, back.tag);
        own.tell("change", "language", there.tag);
        own.tell("rest", "", "");
        for (id, html) in &own.html {
            assert_eq!(page.html.get(id), Some(html), "{}: {id}", there.tag);
        }
        for id in ["echo-bleed", "echo-phrase", "file-note", "storage", "explanation", "body-run"] {
            assert!(!page.shown(id).is_empty(), "{}: {id} is empty", there.tag);
        }
        page.tell("change", "language", back.tag);
        assert_eq!(page.draft(), before, "{}: what was typed changed", there.tag);
        for (id, html) in &everything {
            // Values aside: they come apart from the controls.
            assert_eq!(page.words(id), text(html), "{} and back: {id}", there.tag);
        }
        page.act("undo", "");
        assert_ne!(page.draft(), before, "{}: nothing to undo", there.tag);
    }
}

#[test]
fn the_language_that_was_chosen_is_kept_and_follows_the_browser_until_then() {
    for language in &LANGUAGES {
        let mut page = Page::open_in(None, language.tag);
        let wanted = language.tag;
        assert_eq!(page.language, wanted);
        assert!(page.stored.is_none(), "{}", language.tag);
        for other in &LANGUAGES {
            page.tell("change", "language", other.tag);
            page.tell("change", "language", "tlh");
            let again = Page::open_in(page.stored.as_deref(), language.tag);
            let drawn = text(&again.drawn) + &again.words("page");
            assert!(drawn.contains(other.name));
            assert_eq!(again.session.printer().numbers.mark, other.mark);
            assert!(again.shown("restore").is_empty(), "the example is no job to go on with");
        }
    }
}

/// Ids of the figures in a piece of HTML.
fn figures_in(html: &str) -> Vec<String> {
    html.split(" id=\"ask-")
        .skip(1)
        .map(|after| format!("ask-{}", after.split('"').next().unwrap()))
        .collect()
}

#[test]
fn a_figure_explains_itself_and_gives_the_focus_back() {
    let mut page = Page::open(None);
    page.tell("toggle", "open-cover", "open");
    let answer = figures_in(page.shown("answer"));
    assert!(answer.len() >= 5, "{answer:?}");
    let cover = figures_in(page.shown("body-cover"));
    // The spine stands in the answer and in the cover's region: two elements, one figure.
    assert!(answer.contains(&"ask-spine-0-answer".to_owned()));
    assert!(cover.contains(&"ask-spine-0-body-cover".to_owned()));
    for figure in answer.iter().chain(&cover) {
        page.act("explain", figure);
        assert_eq!(page.focus, "explanation-title");
        assert_eq!(&page.noted, figure);
        assert!(page.words("explanation").contains("Where it comes from"), "{figure}");
        assert!(page.attrs[&("explanation".to_owned(), "hidden")].is_none());
        // Closed by its button, or by asking again.
        let close = if answer.contains(figure) { "explanation-close" } else { figure };
        page.act("explain", close);
        assert_eq!(&page.focus, figure, "the focus goes back to the very figure");
        assert!(page.shown("explanation").is_empty() && page.noted.is_empty());
        assert!(page.attrs[&("explanation".to_owned(), "hidden")].is_some());
    }
    // It follows what is typed meanwhile, and another figure takes its place.
    page.act("explain", "ask-spine-0-answer");
    let told = page.words("explanation");
    page.input("pages", "56 + 4");
    assert_ne!(page.words("explanation"), told);
    page.act("explain", "ask-spine-0-body-cover");
    assert_eq!(page.noted, "ask-spine-0-body-cover");
    page.act("explain", "");
    // Closing what is not open, and asking what nobody knows, does nothing.
    page.act("explain", "");
    for nothing in ["ask-moon_phase-0-answer", "ask-spine-0-nowhere", "ask-", "moon"] {
        page.act("explain", nothing);
        assert!(page.shown("explanation").is_empty(), "{nothing}");
    }
}

/// A figure that is no longer there takes its explanation with it.
#[test]
fn an_explanation_goes_with_its_figure() {
    let mut page = Page::open(None);
    page.tell("toggle", "open-stitches", "open");
    page.act("explain", "ask-stitch_pitch-0-body-stitches");
    assert!(!page.shown("explanation").is_empty());
    page.input("stitches", "1");
    assert!(page.shown("explanation").is_empty() && page.noted.is_empty());
    page.act("undo", "");
    page.act("explain", "ask-stitch_pitch-0-body-stitches");
    page.act("reading", "client");
    assert!(page.shown("explanation").is_empty(), "a client asked nothing");
}

/// All of them on paper, for whoever makes the book; a client's page holds nothing of it.
#[test]
fn every_figure_can_be_printed_with_its_explanation() {
    let mut page = Page::open(None);
    page.act("print-figures", "");
    assert!(page.last.iter().any(|patch| matches!(patch, Patch::Print {})));
    let told = page.words("appendix");
    for formula in
        ["S = 2 × H", "W = 2 × (width + wrap + cut)", "crown + 2 × leg", "Where it comes"]
    {
        assert!(told.contains(formula), "{formula}");
    }
    page.tell("print", "", "");
    page.tell("printed", "", "");
    assert!(page.shown("appendix").is_empty());
    page.act("reading", "client");
    page.act("print-figures", "");
    assert!(page.shown("appendix").is_empty());
}

#[test]
fn only_what_changed_is_patched() {
    let mut page = Page::open(None);
    page.input("title", "One");
    page.input("title", "Two");
    let patched = page.patched();
    assert!(
        patched.iter().all(|id| *id == "answer"),
        "a title changes no more than itself: {patched:?}"
    );
    page.input("title", "Two");
    assert!(page.last.is_empty(), "the same again changes nothing: {:?}", page.last);
    page.input("copies", "900");
    let patched = page.patched();
    assert!(!patched.contains(&"picture"), "copies do not change the picture: {patched:?}");
    assert!(!patched.contains(&"echo-pages") && patched.contains(&"echo-copies"), "{patched:?}");
    page.tell("rest", "", "");
    assert!(page.patched().is_empty(), "nothing has changed since: {:?}", page.patched());
    for (kind, id, value) in [
        ("input", "no such field", "1"),
        ("act", "dance", ""),
        ("wave", "", ""),
        ("toggle", "x", "open"),
    ] {
        page.tell(kind, id, value);
        assert!(page.last.is_empty(), "{kind} {id}: {:?}", page.last);
    }
}

/// While something is incomplete the last answer stays, and says which book it is about.
#[test]
fn a_half_typed_field_leaves_the_last_answer() {
    let mut page = Page::open(None);
    page.input("pages", "60 + 4");
    let spine = page.words("answer");
    page.input("pages", "60 +");
    assert_eq!(page.attrs[&("answer".to_owned(), "class")].as_deref(), Some("stale"));
    assert!(page.words("answer").contains("For 64 pages"), "{}", page.words("answer"));
    assert!(page.shown("echo-pages").is_empty(), "half typed is no fault");
    page.input("pages", "three score");
    assert!(page.words("echo-pages").contains("not a page count"));
    assert_eq!(page.attrs[&("input-pages".to_owned(), "aria-invalid")].as_deref(), Some("true"));
    page.input("pages", "60 + 4");
    assert_eq!(page.words("answer"), spine);
    assert!(page.attrs[&("input-pages".to_owned(), "aria-invalid")].is_none());
    page.input("paper", "");
    assert!(page.words("answer").contains("Still to say: Paper inside"));
}

#[test]
fn a_question_is_answered_with_a_tap() {
    let mut page = Page::open(None);
    page.type_into("paper", "80 lb");
    let echo = page.shown("echo-paper").to_owned();
    assert!(echo.contains("data-act=\"choose:paper\""), "{echo}");
    let answer = echo.split("data-value=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
    page.act("choose:paper", &answer);
    assert_eq!(page.draft().get("paper"), answer);
    assert_eq!(page.focus, "input-paper");
    assert!(!page.shown("echo-paper").contains("class=\"question\""));
    page.act("undo", "");
    assert_eq!(page.draft().get("paper"), "80 lb");
}

/// The demo shop whose lines take a little more than they did, of everything; the chip's limits stay,
/// because the cut follows from them.
fn roomier_shop() -> Shop {
    let mut shop = shop::demo();
    for line in &mut shop.lines {
        for (range, more) in [
            (&mut line.open_width, 0.37),
            (&mut line.travel_height, 0.37),
            (&mut line.finished_width, 0.37),
            (&mut line.spine_length, 0.37),
            (&mut line.flat_stack, 0.02),
            (&mut line.former, 0.02),
            (&mut line.knife, 0.02),
            (&mut line.leg, 0.02),
            (&mut line.draw, 0.2),
            (&mut line.text_weight, 1.0),
            (&mut line.cover_weight, 1.0),
        ] {
            range.most = range.most.map(|most| most + more);
        }
    }
    shop
}

/// A page with everything open, planned in a shop, as a maker and then as a client finds it.
fn read_by_both(shop: &Shop, pages: &str) -> (String, String, Page) {
    let mut page = Page::open(None);
    page.tell("file", "shop", &(JSON.print)(&to_tree(&draft_of(shop), &shop::SCHEMA)));
    assert!(page.words("file-note").contains("is open"), "{}", page.words("file-note"));
    page.input("pages", pages);
    page.input("paper", "115 gsm silk 0.095 mm");
    page.input("cover", "");
    for region in &quirefit::view::REGIONS {
        page.tell("toggle", &format!("open-{}", region.id), "open");
    }
    let maker = page.everything();
    page.act("reading", "client");
    page.tell("print", "", "");
    (maker, page.everything(), page)
}

/// A client at the table reads no limit, no rate and no cost: not even in what is hidden.
#[test]
fn the_clients_reading_holds_no_limit_and_no_cost() {
    for pages in ["40 + 4", "100 + 4", "140 + 4", "200 + 4"] {
        let (maker, client, mut page) = read_by_both(&shop::demo(), pages);
        let (other_maker, other_client, _) = read_by_both(&roomier_shop(), pages);
        // Other limits, and a maker sees many other figures; a client sees the same page.
        let differ = maker.lines().zip(other_maker.lines()).filter(|(one, other)| one != other);
        assert!(differ.count() >= 2, "{pages}: a maker sees the limits");
        for (one, other) in client.lines().zip(other_client.lines()) {
            assert_eq!(one, other, "{pages}: a client sees a limit");
        }
        assert_eq!(client, other_client, "{pages}");
        let limits = [
            "takes at most",
            "takes at least",
            "The line takes",
            "Limits of the line",
            "Head-room",
            "bins",
            "An hour of the line",
        ];
        assert!(limits.iter().filter(|words| maker.contains(**words)).count() >= 3, "{pages}");
        for words in limits {
            assert!(!client.contains(words), "{pages}: a client finds “{words}”");
        }
        for region in &quirefit::view::REGIONS {
            let all = [
                page.shown(&format!("summary-{}", region.id)),
                page.shown(&format!("body-{}", region.id)),
            ];
            let seen = region.readings.contains(&quirefit::view::Reading::Client);
            assert_eq!(all.iter().any(|part| !part.is_empty()), seen, "{pages}: {}", region.id);
        }
        page.act("reading", "design");
        page.tell("printed", "", "");
        assert!(page.everything().contains("The line takes"), "and a maker sees them again");
    }
}

/// The cut follows from the line's smallest: a maker is told so, a client only what the cut is.
#[test]
fn an_explanation_tells_a_client_no_limit() {
    let mut page = Page::open(None);
    page.act("explain", "ask-face_cut-0-answer");
    assert!(page.words("explanation").contains("smallest clean cut"));
    page.act("reading", "client");
    page.act("explain", "ask-face_cut-0-answer");
    let told = page.words("explanation");
    assert!(told.contains("Set by the print shop"), "{told}");
    assert!(!told.contains("smallest clean cut"), "{told}");
}

#[test]
fn the_verdict_is_announced_once() {
    let mut page = Page::open(None);
    assert_eq!(page.announced, ["Yes."]);
    page.input("copies", "700");
    assert_eq!(page.announced.len(), 1);
    page.input("pages", "400 + 4");
    assert_eq!(page.announced.last().map(String::as_str), Some("No."));
    page.input("pages", "404 + 4");
    assert_eq!(page.announced.len(), 2);
}

/// The module broke; a fresh one is given what was kept and says so.
/// Width and height of the first drawing in an element, as its attributes say.
fn size_of(page: &Page, id: &str) -> (f64, f64) {
    let number = |name: &str| {
        let after = page.shown(id).split(&format!(" {name}=\"")).nth(1).unwrap();
        after.split('"').next().unwrap().parse().unwrap()
    };
    (number("width"), number("height"))
}

/// A bank card is 85.60 by 53.98 mm; its drawing has a millimetre round it. An inch is 96 pixels where
/// nobody has measured.
#[test]
fn a_bank_card_makes_the_size_true_and_is_remembered() {
    let mut page = Page::open(None);
    assert!(page.words("true-size").contains("About true size"), "{}", page.words("true-size"));
    let millimetre = |page: &Page| size_of(page, "card").0 / 87.6;
    assert!((millimetre(&page) - 96.0 / 25.4).abs() < 0.001);
    assert_eq!(page.values["card"], "324");
    assert!(page.stored.is_none());

    page.tell("input", "card", "428");
    assert!((millimetre(&page) - 5.0).abs() < 0.001);
    let (wide, high) = size_of(&page, "true-size");
    assert!((wide - 56.0 * 5.0).abs() < 0.01, "{wide}");
    assert!(
        page.words("true-size").contains("In true size on this screen"),
        "{}",
        page.words("true-size")
    );
    for (by, pixels) in [("1", "429"), ("-1", "428"), ("-1", "427"), ("1", "428")] {
        page.act("card", by);
        assert_eq!(page.values["card"], pixels);
    }
    // Thicker books are drawn thicker, in the same scale.
    page.input("pages", "80 + 4");
    assert!(size_of(&page, "true-size").1 > high);

    let again = page.again();
    assert!((millimetre(&again) - 5.0).abs() < 0.001);
    assert_eq!(again.values["card"], "428");
    page.tell("input", "card", "20");
    page.tell("input", "card", "NaN");
    assert!((millimetre(&page) - 5.0).abs() < 0.001, "no screen is like that");

    page.act("card", "");
    assert!(page.words("true-size").contains("About true size"));
    assert!(!page.stored.as_ref().unwrap().contains("\"card\""));
    assert_eq!(page.values["card"], "324");
}

/// The measure alone is worth keeping; the example is not.
#[test]
fn a_measured_screen_is_kept_without_a_job() {
    let mut page = Page::open(None);
    page.tell("input", "card", "428");
    let again = page.again();
    assert_eq!(again.values["card"], "428");
    assert!(again.shown("restore").is_empty() && again.shown("file-note").is_empty());
    assert_eq!(again.draft(), Page::open(None).draft());
}

/// Paper unfolds everything for whoever makes the book, and leaves a client what was looked at.
#[test]
fn paper_unfolds_what_a_maker_reads() {
    let mut page = Page::open(None);
    let turned = |page: &Page, opened: bool| {
        let turned = page.last.iter().filter_map(|patch| match patch {
            Patch::Attr { id, name: "open", value } => (value.is_some() == opened).then_some(id),
            _ => None,
        });
        turned.cloned().collect::<Vec<_>>()
    };
    page.tell("toggle", "open-cover", "open");
    page.tell("print", "", "");
    let unfolded = turned(&page, true);
    assert!(["open-inside", "limits-rest"].iter().all(|id| unfolded.iter().any(|on| on == id)));
    assert!(!unfolded.contains(&"open-cover".to_owned()), "it stands open already");
    assert!(page.words("body-inside").contains("Leaf, fold to cut"));
    page.tell("printed", "", "");
    assert_eq!(turned(&page, false), unfolded);
    page.act("reading", "client");
    page.tell("print", "", "");
    assert!(turned(&page, true).is_empty(), "a client has looked at the cover alone");
    assert!(page.words("body-cover").contains("Open width, trimmed"));
}

/// A narrow page has narrow drawings, open regions included; so has paper, whose columns are narrow.
#[test]
fn drawings_are_laid_out_for_the_width() {
    let mut page = Page::open(None);
    page.tell("toggle", "open-cover", "open");
    let narrow = |page: &Page| {
        ["picture", "body-cover"].map(|id| page.shown(id).contains("class=\"drawing narrow "))
    };
    page.tell("width", "", "358");
    assert_eq!(narrow(&page), [true; 2]);
    let card = size_of(&page, "card");
    assert!(card.0 < card.1, "the card stands where it cannot lie");
    page.tell("width", "", "700");
    assert_eq!(narrow(&page), [false; 2]);
    page.tell("print", "", "");
    assert_eq!(narrow(&page), [true; 2]);
    assert!(page.words("true-size").contains("printed at 100 %"));
    page.tell("printed", "", "");
    assert_eq!(narrow(&page), [false; 2]);
    page.tell("width", "", "710");
    assert!(page.last.is_empty(), "nothing changes within a layout");
}

#[test]
fn after_a_trap_the_form_is_as_it_was() {
    let mut page = Page::open(None);
    page.input("pages", "60 +");
    page.input("title", "Half a Title");
    let before = page.draft();
    let mut fresh = page.again();
    fresh.tell("trap", "", "unreachable");
    assert_eq!(fresh.draft(), before);
    assert!(fresh.words("file-note").contains("stumbled"));
    assert!(fresh.shown("restore").is_empty());
}

#[test]
fn where_nothing_can_be_kept_the_page_says_so() {
    let mut page = Page::open(None);
    page.tell("storage", "", "none");
    assert!(page.words("storage").contains("keeps nothing"));
    page.input("pages", "52");
    assert!(!page.last.iter().any(|patch| matches!(patch, Patch::Store { .. })));
}

/// Two pages of the same file keep their state in one place.
#[test]
fn what_another_page_keeps_is_kept_as_well() {
    let (mut here, mut there) = (Page::open(None), Page::open(None));
    there.input("title", "The Quiet Drum");
    there.act("version-keep", "");
    there.input("pages", "52");
    here.input("title", "Owls");
    let mine = here.stored.clone().unwrap();
    here.tell("elsewhere", "", there.stored.as_ref().unwrap());
    assert!(here.words("storage").contains("second window"));
    // There the next key finds what this page has stored, its own earlier state in it.
    there.input("pages", "5");
    there.tell("elsewhere", "", &mine);
    here.input("title", "Owls by Lamplight");
    here.tell("elsewhere", "", there.stored.as_ref().unwrap());
    let mut next = here.again();
    let mut found = Vec::new();
    while next.has("restore") && !next.shown("restore").is_empty() {
        next.act("restore", "yes");
        found.push((next.draft().get("title").to_owned(), next.draft().get("pages").to_owned()));
    }
    let job = |title: &str, pages: &str| (title.to_owned(), pages.to_owned());
    let quiet = |pages| job("The Quiet Drum", pages);
    assert_eq!(found, [job("Owls by Lamplight", "40 + 4"), quiet("5"), quiet("40 + 4")]);
}

/// A newer page of the same name may stand beside this one.
#[test]
fn what_another_page_keeps_and_nobody_here_can_read_is_kept_as_it_is() {
    let mut page = Page::open(None);
    page.input("pages", "52");
    page.tell("elsewhere", "", "{\"format\": \"quirefit-saved\", \"novelty\": 1}");
    assert!(page.words("file-note").contains("cannot be read"));
    let mut next = page.again();
    next.act("save-kept", "");
    assert!(next.saved_files.last().unwrap().1.contains("novelty"));
}

/// Whoever goes back and types on has left the way forward.
#[test]
fn typing_after_an_undo_ends_what_could_be_redone() {
    let mut page = Page::open(None);
    page.input("pages", "52");
    page.input("copies", "900");
    page.act("undo", "");
    page.input("copies", "70");
    let typed = page.draft();
    page.act("redo", "");
    assert_eq!(page.draft(), typed);
    page.act("undo", "");
    assert_eq!((page.draft().get("pages"), page.draft().get("copies")), ("52", "1200"));
}

/// What would make it fit is taken with one tap, and taken back with one.
#[test]
fn an_offer_is_taken_and_taken_back() {
    let mut page = Page::open(None);
    page.input("line", "Light desk-side line");
    page.input("pages", "96 + 4");
    assert!(page.words("answer").contains("No."), "{}", page.words("answer"));
    let before = page.draft();
    let answer = page.words("answer");
    assert!(
        page.shown("body-fixes").contains("data-act=\"apply\""),
        "{}",
        page.words("body-fixes")
    );
    page.act("apply", "0");
    assert_ne!(page.draft(), before);
    assert!(page.words("answer").contains("Yes."), "{}", page.words("answer"));
    assert_eq!(page.focus, "summary-fixes");
    page.act("undo", "");
    assert_eq!(page.draft(), before);
    assert_eq!(page.words("answer"), answer);
    page.act("apply", "999");
    assert_eq!(page.draft(), before, "what was not offered cannot be taken");
}

/// What a person may do, at random.
fn deeds() -> impl Strategy<Value = Vec<(&'static str, String, String)>> {
    let field = proptest::sample::select(vec![
        "pages",
        "size",
        "paper",
        "cover",
        "copies",
        "bleed",
        "face_cut",
        "title",
        "dummy_push_out",
        "start",
        "sections.0.pages",
        "sections.0.paper",
        "sections.1.paper",
    ]);
    let typed = proptest::sample::select(vec![
        "",
        "64",
        "60 + 4",
        "A5",
        "8.5 x 11",
        "115 silk",
        "80 lb",
        "0.2",
        "3",
        "-1",
        "1e308",
        "Line H",
        "🦆",
        "pack of 20 leaves 2.1",
        "5 mm",
        "12:30",
        "A long title",
    ]);
    let phrase =
        proptest::sample::select(vec![SAID, "48pp A4", "120 silk", "750", "well then", ""]);
    let act = proptest::sample::select(vec![
        ("undo", ""),
        ("redo", ""),
        ("new", ""),
        ("section-add", ""),
        ("section-add", ""),
        ("section-remove", "0"),
        ("section-out", "1"),
        ("section-in", "0"),
        ("apply", "0"),
        ("reading", "client"),
        ("reading", "floor"),
        ("explain", "ask-spine-0-answer"),
        ("explain", ""),
        ("restore", "no"),
        ("save-job", ""),
    ]);
    let choice = proptest::sample::select(vec![
        ("units", "mm"),
        ("units", "in"),
        ("spine", "square"),
        ("spine", "round"),
        ("bleeds", "no"),
        ("line", "Line H"),
        ("line", "Light desk-side line"),
        ("sections.0.place", "around"),
    ]);
    let file = proptest::sample::select(vec![
        "examples/jobs/moth-album.json",
        "examples/jobs/puppet-programme.json",
        "examples/failing/two-faults.json",
        "examples/failing/truncated.txt",
        "examples/shops/prairie-loft-bindery.json",
    ]);
    let dropped = proptest::sample::select(vec![
        ("section-0", "section-main"),
        ("section-1", "section-0"),
        ("section-0", "section-2"),
        ("section-main", "section-0"),
    ]);
    let key = proptest::sample::select(vec![
        ("paper", "ArrowDown"),
        ("paper", "Enter"),
        ("size", "ArrowUp"),
        ("size", "Enter"),
        ("pages", "Ctrl+z"),
        ("", "Ctrl+Shift+z"),
        ("sections.0.paper", "Escape"),
    ]);
    let deed = prop_oneof![
        6 => (field, typed).prop_map(|(field, text)| ("input", field.to_owned(), text.to_owned())),
        2 => phrase.prop_map(|text| ("input", "phrase".to_owned(), text.to_owned())),
        4 => act.prop_map(|(act, value)| ("act", act.to_owned(), value.to_owned())),
        2 => choice.prop_map(|(field, word)| ("change", field.to_owned(), word.to_owned())),
        1 => file.prop_map(|file| ("file", file.to_owned(), text_of(file))),
        1 => Just(("leave", "pages".to_owned(), String::new())),
        1 => dropped.prop_map(|(what, onto)| ("drop", what.to_owned(), onto.to_owned())),
        2 => key.prop_map(|(field, key)| ("key", field.to_owned(), key.to_owned())),
    ];
    proptest::collection::vec(deed, 1..25)
}

proptest! {
    #![proptest_config(support::tried(48, None))]

    /// Whatever is done: every patch meets an element, the form shows the draft (`is_sound`), undo
    /// goes back through every draft there was, redo forward through all of them again.
    #[test]
    fn every_change_can_be_taken_back_exactly(deeds in deeds()) {
        let mut page = Page::open(None);
        // The search is the helper's, who never answers here.
        page.tell("helper", "", "ready");
        for (kind, id, value) in &deeds {
            let typed = id.starts_with("sections.");
            let index = id.split('.').nth(1).and_then(|index| index.parse().ok());
            // Only what stands on the page can be typed into.
            if typed && index.is_none_or(|index: usize| index >= page.draft().members("sections")) {
                continue;
            }
            page.tell(kind, id, value);
        }
        page.tell("leave", "", "");
        let end = page.form();
        let mut seen = vec![end.clone()];
        loop {
            let can = page.can("undo");
            let before = page.form();
            page.act("undo", "");
            if !can {
                prop_assert_eq!(&page.form(), &before);
                break;
            }
            seen.push(page.form());
        }
        prop_assert_eq!(&page.form().0, &Page::open(None).draft(), "all the way back");
        for form in seen.iter().rev().skip(1) {
            prop_assert!(page.can("redo"));
            page.act("redo", "");
            prop_assert_eq!(&page.form(), form);
        }
        prop_assert_eq!(page.form(), end);
    }

    /// What is kept brings everything back, whatever was typed.
    #[test]
    fn what_is_kept_brings_everything_back(deeds in deeds()) {
        let mut page = Page::open(None);
        page.tell("helper", "", "ready");
        page.input("title", "A Beginning");
        for (kind, id, value) in &deeds {
            let index = id.split('.').nth(1).and_then(|index| index.parse().ok());
            let typed = id.starts_with("sections.");
            if typed && index.is_none_or(|index: usize| index >= page.draft().members("sections")) {
                continue;
            }
            page.tell(kind, id, value);
        }
        page.tell("rest", "", "");
        let kept = page.draft();
        let mut next = page.again();
        prop_assert!(next.shown("file-note").is_empty(), "{}", next.words("file-note"));
        if kept.all().any(|(path, _)| path != "units") {
            next.act("restore", "yes");
            prop_assert_eq!(next.draft(), kept);
        } else {
            prop_assert!(next.shown("restore").is_empty());
        }
        prop_assert_eq!(next.words("shop"), page.words("shop"));
    }
}

/// The model's own eyes.
#[test]
fn the_model_reads_controls_and_words() {
    let html = "<input type=\"text\" id=\"a\" name=\"x\" value=\"1 &quot;\"><input type=\"radio\" \
                name=\"y\" value=\"p\"> <input type=\"radio\" name=\"y\" value=\"q\" checked>";
    let pair = |name: &str, text: &str| (name.to_owned(), text.to_owned());
    assert_eq!(controls(html), [pair("x", "1 \""), pair("y", "q")]);
    assert_eq!(text("<p>a <b>b</b>&nbsp;c</p>"), "a b c");
    let _ = job::read(&Draft::default(), &shop::demo());
}
