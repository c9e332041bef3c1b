//! Documents for print, read by general tools: qpdf says that they are sound, poppler what their boxes
//! are, what stands where, and what they look like in a raster that is measured.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use base64ct::{Base64, Encoding};
use quirefit::page::{Event, Patch, Session};
use quirefit::words::Files;
use std::fs;
use std::path::PathBuf;
use support::{JSON, ran};

/// The acts that save a document.
const ACTS: [&str; 3] = ["save-cover", "save-dummy", "save-creep"];

fn session(language: &str, fields: &[(&str, &str)]) -> Session {
    let mut session = Session::new(Files::new(), &[language.to_owned()], None, JSON);
    session.handle(&Event::new("start", "", ""));
    for (field, text) in fields {
        session.handle(&Event::new("input", field, text));
    }
    session
}

/// A document as the page saves it: its name and its bytes.
fn saved(session: &mut Session, act: &str) -> (String, Vec<u8>) {
    let patches = session.handle(&Event::new("act", act, ""));
    let file = patches.into_iter().find_map(|patch| match patch {
        Patch::Save { name, base64 } => Some((name, Base64::decode_vec(&base64).unwrap())),
        _ => None,
    });
    file.unwrap_or_else(|| panic!("{act} saves nothing"))
}

/// A file on the disk for other programs.
fn on_disk(name: &str, bytes: &[u8]) -> String {
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::write(&path, bytes).unwrap();
    path.to_str().unwrap().to_owned()
}

#[test]
fn every_document_is_sound() {
    for language in ["en-GB", "de"] {
        let mut session = session(language, &[]);
        for act in ACTS {
            let (name, bytes) = saved(&mut session, act);
            let path = on_disk(&format!("{language}-{name}"), &bytes);
            let said = String::from_utf8(ran("qpdf", &["--check", &path])).unwrap();
            assert!(said.contains("No syntax or stream encoding errors"), "{said}");
        }
    }
}
