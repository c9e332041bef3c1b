//! What is really printed, in a marked language: no slot may stay empty, and few keys unseen.

use crate::shown::{DONE, TYPED, WHOLE, designs_on_the_page, list_on_the_page, show_everything};
use crate::support::{JSON, files, planned_file, root, text_of};
use crate::texts::texts;
use crate::{beginnings, keys_of, looks_like_a_key, slots};
use quirefit::page::{Event, Patch, Session};
use quirefit::plan::plan;
use quirefit::view::{Numbers, Printer};
use quirefit::words::{EN, Files, Words};
use std::collections::BTreeSet;

/// A language in which every pattern says its key and its slots, and nothing else. A slot that is not
/// filled prints its own name.
fn marked() -> String {
    let words = Words::load(&[EN]);
    let mut out = String::new();
    for (key, pattern) in words.all() {
        out.push_str(&format!("{key} ="));
        if !pattern.is_empty() {
            out.push_str(&format!(" ⟦{key}⟧"));
            for slot in slots(pattern) {
                out.push_str(&format!("⟦{key}/{slot}={{{slot}}}⟧"));
            }
        }
        out.push('\n');
    }
    out
}

/// What was printed in the marked language.
pub struct Printed {
    beginnings: BTreeSet<String>,
    keys: BTreeSet<String>,
    /// Slots that nobody filled, and keys without words.
    wrong: BTreeSet<String>,
}

impl Printed {
    pub fn new() -> Self {
        Self { beginnings: beginnings(), keys: BTreeSet::new(), wrong: BTreeSet::new() }
    }

    pub fn take(&mut self, text: &str) {
        // What is being said at each depth: a slot may hold a whole sentence.
        let mut open = vec![String::new()];
        for letter in text.chars() {
            match letter {
                '⟦' => open.push(String::new()),
                '⟧' if open.len() > 1 => {
                    let said = open.pop().unwrap();
                    self.heard(&said);
                    // Something stands in the slot that this was said in.
                    open.last_mut().unwrap().push('…');
                }
                letter => open.last_mut().unwrap().push(letter),
            }
        }
        let within = |c: char| c.is_ascii_alphanumeric() || "._-".contains(c);
        for token in open[0].split(|c| !within(c)) {
            let token = token.trim_matches('.');
            if looks_like_a_key(token, &self.beginnings) {
                self.wrong.insert(format!("{token} has no words"));
            }
        }
    }

    fn heard(&mut self, said: &str) {
        let (key, slot) = said.split_once('/').unwrap_or((said, ""));
        self.keys.insert(key.to_owned());
        if slot.split_once('=').is_some_and(|(slot, value)| slot == value) {
            self.wrong.insert(format!("{key}: nobody fills {{{slot}}}"));
        }
    }
}

fn printed() -> Printed {
    let marked = marked();
    let words = Words::load(&[&marked]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let mut printed = Printed::new();
    let languages = ["en-GB".to_owned()];
    let spoken = Files::from([("en".to_owned(), marked.clone())]);
    let page = || Session::new(spoken.clone(), &languages, None, JSON);
    for path in files("examples/jobs").iter().chain(&files("examples/rules")) {
        let (draft, job, shop) = planned_file(path);
        let mut session = page();
        // The search is the helper's, who never answers here; jobs are searched for below.
        session.handle(&Event::new("helper", "", "ready"));
        let shop_file = (JSON.print)(&quirefit::draft::to_tree(
            &quirefit::shop::draft_of(&shop),
            &quirefit::shop::SCHEMA,
        ));
        session.handle(&Event::new("file", "shop", &shop_file));
        session.handle(&Event::new("file", path, &text_of(path)));
        show_everything(&mut session, &mut printed);
        let planned = plan(&job, &shop);
        texts(&draft, &job, &shop, &planned, &printer, &mut printed);
    }
    for path in files("examples/shops") {
        let mut session = page();
        session.handle(&Event::new("helper", "", "ready"));
        session.handle(&Event::new("start", "", ""));
        session.handle(&Event::new("file", &path, &text_of(&path)));
        for (field, text) in WHOLE {
            for patch in session.handle(&Event::new("input", field, text)) {
                if let Patch::Html { html, .. } = patch {
                    printed.take(&html);
                }
            }
            show_everything(&mut session, &mut printed);
        }
    }
    for path in files("examples/failing") {
        let mut session = page();
        for patch in session.handle(&Event::new("file", &path, &text_of(&path))) {
            if let Patch::Html { html, .. } = patch {
                printed.take(&html);
            }
        }
    }
    for path in ["examples/jobs/clockwork-manual.json", "examples/jobs/moth-album.json"] {
        let mut session = page();
        session.handle(&Event::new("file", path, &text_of(path)));
        show_everything(&mut session, &mut printed);
    }
    let mut session = page();
    session.handle(&Event::new("start", "", ""));
    for unit in ["mm", "in"] {
        session.handle(&Event::new("change", "units", unit));
        for (field, text) in TYPED {
            for patch in session.handle(&Event::new("input", field, text)) {
                if let Patch::Html { html, .. } = patch {
                    printed.take(&html);
                }
            }
        }
        show_everything(&mut session, &mut printed);
    }
    let mut session = page();
    session.handle(&Event::new("file", "x", &text_of("examples/shops/tidewater-press.json")));
    let adds = [("act", "section-add", ""); quirefit::draft::MOST_MEMBERS];
    for (kind, id, value) in DONE.iter().chain(&adds) {
        for patch in session.handle(&Event::new(kind, id, value)) {
            match patch {
                Patch::Html { html, .. } => printed.take(&html),
                Patch::Announce { text } => printed.take(&text),
                _ => {}
            }
        }
    }
    for path in files("examples/titles") {
        let bytes = std::fs::read(root().join(path)).unwrap();
        let list = quirefit::titles::List::read(&bytes).unwrap();
        let shop = quirefit::shop::demo();
        let told = quirefit::view::title_rows::answered(&list, &shop, "mm", &printer).0;
        printed.take(&told);
    }
    for commit in ["0123abc", "0123abc+"] {
        let mut session = page().built_from(commit);
        for patch in session.handle(&Event::new("change", "language", "en-US")) {
            if let Patch::Html { html, .. } = patch {
                printed.take(&html);
            }
        }
    }
    list_on_the_page(&printer, |html| printed.take(html));
    let mut session = page();
    session.handle(&Event::new("start", "", ""));
    designs_on_the_page(&mut session, |html| printed.take(html));
    let elsewhere = r#"{ "format": "quirefit-saved", "job": { "title": "Owls by Lamplight" } }"#;
    for (event, value) in [("trap", ""), ("elsewhere", elsewhere), ("storage", "none")] {
        for patch in session.handle(&Event::new(event, "", value)) {
            if let Patch::Html { html, .. } = patch {
                printed.take(&html);
            }
        }
    }
    printed
}

#[test]
fn every_slot_of_what_is_printed_is_filled() {
    let printed = printed();
    assert!(printed.wrong.is_empty(), "{:#?}", printed.wrong);
    // The run must be broad, or it proves little.
    let all = keys_of(&Words::load(&[EN]));
    let with_slots: BTreeSet<String> = Words::load(&[EN])
        .all()
        .filter(|(_, pattern)| !slots(pattern).is_empty())
        .map(|(key, _)| key.to_owned())
        .collect();
    let unseen: Vec<&String> = with_slots.difference(&printed.keys).collect();
    println!(
        "{} of {} keys printed; with slots never printed: {unseen:#?}",
        printed.keys.len(),
        all.len()
    );
    assert!(
        unseen.len() * 20 <= with_slots.len(),
        "{} of {} with slots never printed: {unseen:#?}",
        unseen.len(),
        with_slots.len()
    );
}

/// The marked language itself finds what is wrong.
#[test]
fn the_marked_language_finds_an_empty_slot() {
    let mut printed = Printed::new();
    printed.take(
        "<p>⟦trim.cut⟧</p> ⟦rule.x.y⟧⟦rule.x.y/most=3 mm⟧⟦rule.x.y/least=least⟧ file.no-such",
    );
    assert_eq!(printed.keys.len(), 2);
    assert_eq!(printed.wrong.len(), 2, "{:?}", printed.wrong);
}
