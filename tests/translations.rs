//! Every language but English: whole, with the same slots, and nothing of it left in English.
//!
//! A page in the language is shown everything there is, for every example; whatever stands on it is
//! then searched for words that only the English file knows.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::advise::Advice;
use quirefit::data::FINISHED_SIZES;
use quirefit::draft::{Draft, Kind, read_text};
use quirefit::entry::{LengthUnit, Reading, phrase};
use quirefit::job;
use quirefit::page::{Event, Patch, Session};
use quirefit::plan::plan;
use quirefit::view::html::READINGS;
use quirefit::view::{Numbers, Printer, REGIONS};
use quirefit::words::{EN, Files, LANGUAGES, Language, Part, Words, built_in, parts};
use std::collections::BTreeSet;
use support::{JSON, files, name, text_of};

/// Languages with a file of their own, and its words.
fn translations() -> Vec<(String, Words)> {
    let found: Vec<(String, Words)> = files("src/input/words")
        .iter()
        .filter_map(|path| {
            let tag = name(path).strip_suffix(".txt")?;
            let own = tag != "en" && !tag.contains('-');
            own.then(|| (tag.to_owned(), Words::load(&[&text_of(path)])))
        })
        .collect();
    assert!(!found.is_empty(), "no translation at all");
    found
}

fn slots(pattern: &str) -> BTreeSet<&str> {
    let slot = |part| match part {
        Part::Slot(slot) => Some(slot),
        Part::Text(_) => None,
    };
    parts(pattern).filter_map(slot).collect()
}

/// A pattern's own text, slots left out.
fn own_text(pattern: &str) -> String {
    let texts = parts(pattern).map(|part| match part {
        Part::Text(text) => text,
        Part::Slot(_) => " ",
    });
    texts.collect()
}

/// Words of at least three letters, in small letters.
fn words_of(text: &str) -> impl Iterator<Item = String> {
    text.split(|c: char| !c.is_alphabetic())
        .filter(|word| word.chars().count() > 2)
        .map(str::to_lowercase)
}

fn keys(words: &Words) -> BTreeSet<&str> {
    words.all().map(|(key, _)| key).collect()
}

#[test]
fn every_translation_is_whole() {
    let english = Words::load(&[EN]);
    for (language, words) in translations() {
        let (own, all) = (keys(&words), keys(&english));
        let missing: Vec<_> = all.difference(&own).collect();
        let unknown: Vec<_> = own.difference(&all).collect();
        assert!(missing.is_empty(), "{language} lacks {missing:#?}");
        assert!(unknown.is_empty(), "{language}: en.txt knows no {unknown:#?}");
        let differ: Vec<_> = words
            .all()
            .filter(|(key, pattern)| slots(pattern) != slots(english.plain(key)))
            .map(|(key, _)| key)
            .collect();
        assert!(differ.is_empty(), "{language}: other slots than in en.txt: {differ:#?}");
        let empty =
            |(key, pattern): &(&str, &str)| pattern.is_empty() != english.plain(key).is_empty();
        let empty: Vec<_> = words.all().filter(empty).collect();
        assert!(empty.is_empty(), "{language}: empty, or not, other than in en.txt: {empty:#?}");
    }
}

/// What a region calls otherwise leaves every slot where it is.
#[test]
fn every_language_keeps_every_slot() {
    let english = Words::load(&[EN]);
    for language in &LANGUAGES {
        let words = language.words(&built_in());
        assert_eq!(keys(&words), keys(&english), "{}", language.tag);
        for (key, pattern) in words.all() {
            assert_eq!(slots(pattern), slots(english.plain(key)), "{}: {key}", language.tag);
        }
    }
    let says = |tag: &str, word: &str| {
        let words = Language::of(tag).unwrap().words(&built_in());
        words.all().any(|(_, pattern)| words_of(&own_text(pattern)).any(|said| said == word))
    };
    // Words of the trade, US and UK.
    for (us, uk) in [("score", "crease"), ("foot", "tail"), ("face", "fore"), ("center", "centre")]
    {
        assert!(says("en-US", us) && !says("en-US", uk), "US: {us}, not {uk}");
        assert!(says("en-GB", uk) && !says("en-GB", us), "UK: {uk}, not {us}");
    }
    assert!(says("de", "fuß") && says("de-CH", "fuss") && !says("de-CH", "fuß"));
}

/// Patterns that are the same in both: names, signs, words both languages have.
const SAME: [&str; 7] = [
    "page.name",
    "page.version",
    "cost.unit.line",
    "drawing.press_sheet.note",
    "source.published",
    "source.title",
    "field.press_sheet.label",
];

#[test]
fn nothing_is_left_in_english() {
    let english = Words::load(&[EN]);
    for (language, words) in translations() {
        let same: Vec<_> = words
            .all()
            .filter(|(key, pattern)| {
                let says = words_of(&own_text(pattern)).next().is_some();
                says && *pattern == english.plain(key) && !SAME.contains(key)
            })
            .collect();
        assert!(same.is_empty(), "{language}: the same as in English: {same:#?}");
    }
}

#[test]
fn no_label_is_much_longer_than_the_english() {
    let english = Words::load(&[EN]);
    let letters = |text: &str| text.chars().count();
    for (language, words) in translations() {
        let long: Vec<_> = words
            .all()
            .filter(|(key, pattern)| {
                let label = english.plain(key);
                // A short word may be a long one elsewhere: eight letters are always allowed.
                let most = letters(label) * 9 / 5 + 8;
                // Kinds of paper stand in sentences only.
                !key.starts_with("kind.")
                    && letters(label) < 40
                    && !label.ends_with('.')
                    && letters(pattern) > most
            })
            .collect();
        assert!(long.is_empty(), "{language}: too long for a label: {long:#?}");
    }
}

/// What a person sees or hears of HTML: its text, and the attributes that are read aloud or shown.
fn seen(html: &str) -> String {
    let mut out = String::new();
    for (index, piece) in html.split('<').enumerate() {
        let (tag, text) = match piece.split_once('>') {
            Some((tag, text)) if index > 0 => (tag, text),
            _ => ("", piece),
        };
        for shown in ["aria-label=\"", "title=\"", "alt=\"", "placeholder=\""] {
            if let Some((_, after)) = tag.split_once(shown) {
                out.push_str(after.split('"').next().unwrap());
                out.push('\n');
            }
        }
        out.push_str(text);
        out.push('\n');
    }
    out
}

/// Texts in quotes and names of fields in a file come from outside.
fn without_quotes(text: &str) -> String {
    let mut out = String::new();
    let mut inside = false;
    for letter in text.chars() {
        match letter {
            '„' => inside = true,
            '“' => inside = false,
            letter if !inside => out.push(letter),
            _ => {}
        }
    }
    out
}

fn without(html: &str, tag: &str) -> String {
    let (open, close) = (format!("<{tag}>"), format!("</{tag}>"));
    let mut pieces = html.split(&open);
    let first = pieces.next().unwrap_or_default().to_owned();
    first + &pieces.filter_map(|piece| Some(piece.split_once(&close)?.1)).collect::<String>()
}

/// Does everything on a page that prints something, and gives back what can be seen of it.
fn everything_seen(session: &mut Session, path: &str) -> String {
    let mut out = String::new();
    let mut tell = |kind: &str, id: &str, value: &str| {
        for patch in session.handle(&Event::new(kind, id, value)) {
            match patch {
                Patch::Html { html, .. } => {
                    out.push_str(&seen(&without(&without(&html, "code"), "q")))
                }
                Patch::Announce { text } => out.push_str(&text),
                _ => {}
            }
            out.push('\n');
        }
    };
    tell("start", "", "");
    // The search takes its time; the jobs bring out every sort of what it finds.
    let helper = if path.starts_with("examples/jobs") { "none" } else { "ready" };
    tell("helper", "", helper);
    tell("elsewhere", "", "another page's");
    tell("storage", "", "none");
    tell("file", path, &text_of(path));
    for region in &REGIONS {
        tell("toggle", &format!("open-{}", region.id), "open");
    }
    for (reading, _) in READINGS {
        tell("act", "reading", reading);
        tell("rest", "", "");
        tell("act", "print-card", "");
        tell("act", "print-figures", "");
        tell("printed", "", "");
    }
    for text in ["12.5", "wide", "9999999", "60 + 6"] {
        for field in ["pages", "size", "paper", "copies", "bleed", "wrapper", "start", "stitches"] {
            tell("input", field, text);
        }
    }
    out
}

/// What a person has typed, and names that nobody translates: they may stand on any page.
fn names(draft: &Draft) -> Vec<String> {
    let mut names: Vec<String> = draft.all().map(|(_, text)| text.to_owned()).collect();
    // What the program itself has named, it names in every language.
    for shop in support::shops().into_iter().skip(1) {
        names.push(shop.name.clone());
        names.extend(shop.lines.iter().map(|line| line.name.to_string()));
        names.extend(shop.post.iter().map(|step| step.name.to_string()));
    }
    for shop in support::shops() {
        names.extend(shop.stocks.iter().map(|stock| stock.name.clone()));
        names.extend(shop.press_sheets.iter().map(|sheet| sheet.name.clone()));
    }
    names.extend(FINISHED_SIZES.iter().map(|size| size.name.to_owned()));
    names.extend(LANGUAGES.iter().map(|language| language.name.to_owned()));
    // Titles of what a figure is taken from.
    names.push("Government Paper Specification Standards".to_owned());
    names.push("Washburn &amp; Moen".to_owned());
    names.retain(|name| name.chars().count() > 2);
    names.sort_by_key(|name| core::cmp::Reverse(name.len()));
    names
}

#[test]
fn a_page_in_another_language_prints_no_english_word() {
    let english = Words::load(&[EN]);
    for (language, words) in translations() {
        let own: BTreeSet<String> = words
            .all()
            .flat_map(|(_, pattern)| words_of(&own_text(pattern)).collect::<Vec<_>>())
            .collect();
        let foreign: BTreeSet<String> = english
            .all()
            .flat_map(|(_, pattern)| words_of(&own_text(pattern)).collect::<Vec<_>>())
            .filter(|word| !own.contains(word))
            .collect();
        assert!(foreign.len() > 500, "only {} words to look for", foreign.len());
        let mut found = BTreeSet::new();
        let jobs = files("examples/jobs").into_iter().chain(files("examples/rules"));
        for path in jobs.chain(files("examples/failing")) {
            let draft = support::draft(&path, &job::SCHEMA).unwrap_or_default();
            let mut session =
                Session::new(Files::new(), core::slice::from_ref(&language), None, JSON);
            let mut text = without_quotes(&everything_seen(&mut session, &path));
            for name in names(&draft) {
                text = text.replace(&name, " ");
            }
            for word in words_of(&text).filter(|word| foreign.contains(word)) {
                let line = text.lines().find(|line| words_of(line).any(|said| said == word));
                found.insert(format!("{word}: {}", line.unwrap_or_default()));
            }
        }
        assert!(found.is_empty(), "{language}: English on the page: {found:#?}");
    }
}

/// What the program types in another language is read as what it types in English.
#[test]
fn what_is_typed_in_another_language_is_read_as_the_same() {
    let files = built_in();
    for path in support::files("examples/jobs").iter().chain(&support::files("examples/rules")) {
        let (draft, job, shop) = support::planned_file(path);
        let advice = Advice::searched(&draft, &job, &shop, &plan(&job, &shop), 400);
        let typed = advice.offers.iter().flat_map(|offer| &offer.edits);
        let unit = LengthUnit::of(draft.get("units"));
        for (field, text) in typed {
            let Some(kind) = job::SCHEMA.field(field).map(|field| field.kind) else { continue };
            // Other fields hold names and choices, which are the same in every language.
            if !matches!(kind, Kind::Paper | Kind::Size | Kind::Length(..)) {
                continue;
            }
            for language in &LANGUAGES {
                let words = language.words(&files);
                let numbers = Numbers { unit, mark: language.mark };
                let own = Printer { words: &words, numbers }.typed(text);
                let (one, other) = (read_text(kind, text, unit), read_text(kind, &own, unit));
                // A paper keeps its own text as its name.
                let other = format!("{:?}", other.value()).replace(&own, text);
                assert_eq!(format!("{:?}", one.value()), other, "{}: {own}", language.tag);
            }
        }
    }
}

/// Every example that a hint or a repair gives is read without a fault.
#[test]
fn hints_are_read_as_they_stand() {
    for language in &LANGUAGES {
        let words = language.words(&built_in());
        let unit = if language.inches { LengthUnit::Inch } else { LengthUnit::Millimetre };
        let mut read = 0;
        for field in job::SCHEMA.fields {
            let hint = words.plain(&format!("field.{}.hint", field.id));
            let example = hint.split([';', '\u{2026}']).next().unwrap_or_default();
            let counted = example.starts_with(|c: char| c.is_ascii_digit() || c == 'A')
                && !matches!(field.kind, Kind::Number(..));
            for text in example.split(", ").filter(|_| counted) {
                let reading = read_text(field.kind, text, unit);
                let understood = matches!(reading, Reading::Understood(..) | Reading::Ask(_));
                assert!(understood, "{}: {}: {text}", language.tag, field.id);
                read += 1;
            }
        }
        assert!(read > 10, "{}: only {read} examples found", language.tag);
        let line = phrase(words.plain("field.phrase.hint"), unit);
        assert!(line.rest.is_empty(), "{}: {:?} is not understood", language.tag, line.rest);
        assert_eq!(line.fields.len(), 4, "{}: {:?}", language.tag, line.fields);
    }
}

/// The search itself finds what it should.
#[test]
fn an_english_word_is_seen_wherever_it_stands() {
    let html = "<p aria-label=\"The spine\">Rücken <b data-act=\"cut\">fold</b></p>";
    let said: Vec<String> = words_of(&seen(html)).collect();
    assert_eq!(said, ["the", "spine", "rücken", "fold"]);
}
