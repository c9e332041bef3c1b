//! What comes into the page and leaves it, played natively: links, codes, copied texts, saved files.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::draft::Draft;
use quirefit::job::{read_link, to_code, to_link};
use quirefit::page::{EXAMPLE, Event, Patch, Session};
use quirefit::words::Files;
use support::{JSON, files, text_of};

const HOSTED: &str = "https://quay.example/planner.html";
const DISK: &str = "file:///home/somebody/quirefit.html";

/// Another book than the example.
fn other() -> Draft {
    Draft::of(&[("title", "Low Tide"), ("pages", "64"), ("size", "A4"), ("paper", "90 gsm offset")])
}

fn session(saved: Option<&str>) -> Session {
    Session::new(Files::new(), &["en-GB".to_owned()], saved, JSON)
}

fn started(address: &str, saved: Option<&str>) -> (Session, Vec<Patch>) {
    let mut session = session(saved);
    let patches = session.handle(&Event::new("start", "", address));
    (session, patches)
}

/// What an element was given last.
fn shown<'a>(patches: &'a [Patch], element: &str) -> &'a str {
    let given = patches.iter().rev().find_map(|patch| match patch {
        Patch::Html { id, html } if id == element => Some(html.as_str()),
        _ => None,
    });
    given.unwrap_or_else(|| panic!("nothing was put into {element}"))
}

fn copied(patches: &[Patch]) -> Option<&str> {
    patches.iter().find_map(|patch| match patch {
        Patch::Copy { text } => Some(text.as_str()),
        _ => None,
    })
}

fn address(patches: &[Patch]) -> Option<&str> {
    patches.iter().find_map(|patch| match patch {
        Patch::Address { text } => Some(text.as_str()),
        _ => None,
    })
}

fn download(session: &mut Session, act: &str) -> Option<(String, String)> {
    session.handle(&Event::new("act", act, "")).into_iter().find_map(|patch| match patch {
        Patch::Download { name, text } => Some((name, text)),
        _ => None,
    })
}

#[test]
fn a_link_in_the_address_is_opened_and_leaves_it() {
    let link = to_link(&other()).unwrap();
    for place in [HOSTED, DISK] {
        let (session, patches) = started(&format!("{place}{link}"), None);
        assert_eq!(*session.draft(), other());
        assert_eq!(address(&patches), Some(place), "the address keeps nothing of the job");
        assert!(shown(&patches, "file-note").contains("Low Tide"));
    }
}

#[test]
fn a_broken_link_leaves_all_as_it_was_and_says_so() {
    let link = to_link(&other()).unwrap();
    let (session, patches) = started(&format!("{HOSTED}{}", &link[..link.len() - 3]), None);
    assert_eq!(session.draft().get("title"), EXAMPLE[0].1);
    let note = shown(&patches, "file-note");
    assert!(
        note.contains("not opened") && note.contains("The end of this link is missing"),
        "{note}"
    );
    assert_eq!(address(&patches), Some(HOSTED));
}

#[test]
fn other_marks_in_the_address_are_left_alone() {
    for place in [format!("{DISK}#verdict"), HOSTED.to_owned(), String::new()] {
        let (mut session, patches) = started(&place, None);
        assert!(address(&patches).is_none());
        assert!(
            session.handle(&Event::new("address", "", &format!("{DISK}#region-trim"))).is_empty()
        );
        assert_eq!(session.draft().get("title"), EXAMPLE[0].1);
    }
}

#[test]
fn a_link_takes_nothing_from_last_time() {
    let (mut first, _) = started(HOSTED, None);
    first.handle(&Event::new("input", "title", "Kept from last time"));
    let stored =
        first.handle(&Event::new("rest", "", "")).into_iter().find_map(|patch| match patch {
            Patch::Store { text } => Some(text),
            _ => None,
        });
    let link = to_link(&other()).unwrap();
    let (mut second, patches) = started(&format!("{HOSTED}{link}"), stored.as_deref());
    assert_eq!(second.draft().get("title"), "Low Tide");
    assert!(shown(&patches, "restore").contains("restore-yes"), "last time is still on offer");
    second.handle(&Event::new("act", "restore", "yes"));
    assert_eq!(second.draft().get("title"), "Kept from last time");
    second.handle(&Event::new("act", "undo", ""));
    assert_eq!(*second.draft(), other());
}

#[test]
fn links_and_codes_are_taken_wherever_they_are_put() {
    let (link, code) = (to_link(&other()).unwrap(), to_code(&other()).unwrap());
    let hosted = format!("{HOSTED}{link}");
    for text in [&link, &code, &hosted, &code.to_lowercase()] {
        // Pasted beside the fields, or as a file of text.
        let (mut session, _) = started(DISK, None);
        let patches = session.handle(&Event::new("file", "", text));
        assert_eq!(*session.draft(), other(), "{text}");
        assert!(shown(&patches, "file-note").contains("Low Tide"));
        session.handle(&Event::new("act", "undo", ""));
        assert_eq!(session.draft().get("title"), EXAMPLE[0].1);
        // Into the one line, which says what it read and is empty for the next.
        let patches = session.handle(&Event::new("input", "phrase", text));
        assert_eq!(*session.draft(), other(), "{text}");
        assert!(shown(&patches, "echo-phrase").contains("Low Tide"));
        let emptied = patches.iter().any(
            |patch| matches!(patch, Patch::Value { id, text } if id == "phrase" && text.is_empty()),
        );
        assert!(emptied);
    }
    // In an address that the open page is sent to.
    let (mut session, _) = started(DISK, None);
    let patches = session.handle(&Event::new("address", "", &format!("{DISK}{link}")));
    assert_eq!(*session.draft(), other());
    assert_eq!(address(&patches), Some(DISK));
}

/// A scanner types letter after letter. Nothing changes until the last, nothing is lost on the way.
#[test]
fn a_scanner_may_take_its_time() {
    let code = to_code(&other()).unwrap();
    let (mut session, _) = started(DISK, None);
    session.handle(&Event::new("input", "copies", "77"));
    for end in 1..code.len() {
        session.handle(&Event::new("input", "phrase", &code[..end]));
        assert_eq!(session.draft().get("copies"), "77", "after {end} letters");
        assert_eq!(session.draft().get("title"), EXAMPLE[0].1);
    }
    session.handle(&Event::new("input", "phrase", &code));
    assert_eq!(*session.draft(), other());
    session.handle(&Event::new("act", "undo", ""));
    assert_eq!(session.draft().get("copies"), "77");
}

#[test]
fn a_copied_link_opens_to_the_same_and_carries_no_path() {
    for (place, start) in [(HOSTED, HOSTED), (DISK, "#book=")] {
        let (mut session, _) = started(place, None);
        session.handle(&Event::new("input", "title", "Ferries & Fog"));
        let patches = session.handle(&Event::new("act", "copy-link", ""));
        let link = copied(&patches).unwrap();
        assert!(link.starts_with(start) && !link.contains("somebody"), "{link}");
        assert_eq!(read_link(link).unwrap().unwrap(), *session.draft());
    }
    // A shop with a name and figures of its own leaves no trace in it.
    let (mut session, _) = started(HOSTED, None);
    let before = session.handle(&Event::new("act", "copy-link", ""));
    let before = copied(&before).unwrap().to_owned();
    for path in files("examples/shops") {
        session.handle(&Event::new("file", "", &text_of(&path)));
        let after = session.handle(&Event::new("act", "copy-link", ""));
        assert_eq!(copied(&after), Some(before.as_str()), "{path}");
    }
}

#[test]
fn too_long_a_job_is_offered_as_a_file() {
    let (mut session, _) = started(HOSTED, None);
    for index in 0..12 {
        let paper = "very long words about a paper ".repeat(14);
        session.handle(&Event::new("act", "section-add", ""));
        session.handle(&Event::new("input", &format!("sections.{index}.paper"), &paper));
    }
    let patches = session.handle(&Event::new("act", "copy-link", ""));
    assert!(copied(&patches).is_none());
    let note = shown(&patches, "file-note");
    assert!(note.contains("No link was made") && note.contains("Save it as a file"), "{note}");
}

#[test]
fn texts_and_files_are_handed_over_by_name() {
    let (mut session, _) = started(DISK, None);
    let patches = session.handle(&Event::new("act", "copy-text", ""));
    assert_eq!(copied(&patches).unwrap().lines().count(), 5);
    let (name, text) = download(&mut session, "save-xjdf").unwrap();
    assert_eq!(name, "a-field-guide-to-teapots.xjdf");
    assert!(text.starts_with("<?xml version=\"1.0\""));
    let (name, makers) = download(&mut session, "save-tables").unwrap();
    assert_eq!(name, "a-field-guide-to-teapots.csv");
    // The client's tables hold no limit, no run, no cost.
    session.handle(&Event::new("act", "reading", "client"));
    let (_, client) = download(&mut session, "save-tables").unwrap();
    assert!(makers.contains("Limits of the line") && !client.contains("Limits of the line"));
    // Without a complete job there is nothing to hand over yet, and that is said.
    session.handle(&Event::new("act", "new", ""));
    for act in ["save-xjdf", "save-tables", "copy-text"] {
        assert!(download(&mut session, act).is_none());
        let patches = session.handle(&Event::new("act", act, ""));
        assert!(copied(&patches).is_none());
    }
}

/// While a field cannot be read the page goes on showing the book before. Nobody is handed that one.
#[test]
fn nothing_goes_out_for_a_book_that_nobody_typed() {
    let (mut session, _) = started(DISK, None);
    for (field, label, typed) in [("size", "Finished size", "5x5 m"), ("pages", "Pages", "80 pag")]
    {
        let before = session.draft().get(field).to_owned();
        session.handle(&Event::new("input", field, typed));
        let mut told = Vec::new();
        for act in
            ["copy-text", "save-tables", "save-xjdf", "save-cover", "save-creep", "print-card"]
        {
            let patches = session.handle(&Event::new("act", act, ""));
            let out = |patch: &Patch| {
                matches!(
                    patch,
                    Patch::Copy { .. }
                        | Patch::Download { .. }
                        | Patch::Save { .. }
                        | Patch::Print {}
                )
            };
            assert!(!patches.iter().any(out), "{act} with {typed}: {patches:?}");
            told.extend(patches);
        }
        let note = shown(&told, "file-note");
        assert!(note.contains(&format!("<strong>{label}</strong>: <q>{typed}</q>")), "{note}");
        // The job itself is kept as it is typed, and what can be read goes out again.
        assert!(download(&mut session, "save-job").unwrap().1.contains(typed));
        session.handle(&Event::new("input", field, &before));
        let patches = session.handle(&Event::new("act", "copy-text", ""));
        assert!(copied(&patches).is_some(), "{before}");
    }
}
