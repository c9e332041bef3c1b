//! The picture of a job, as the page shows it, read back by a general decoder (zbar): what comes out is
//! the link or code itself, and opens the same job.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::draft::Draft;
use quirefit::job::{CODE_MOST, to_code, to_link};
use quirefit::page::{Event, Patch, Session};
use quirefit::view::qr::{Code, Held};
use quirefit::words::Files;
use std::path::PathBuf;
use std::{fs, str};
use support::{JSON, ran};

const HOSTED: &str = "https://quay.example/planner.html";
const DISK: &str = "file:///home/somebody/quirefit.html";
/// Pixels to a module.
const PIXELS: i32 = 4;

fn book() -> Draft {
    Draft::of(&[
        ("title", "Grüße vom Wehr"),
        ("pages", "64 + 4"),
        ("size", "A5"),
        ("paper", "90 gsm offset"),
        ("cover", "Pond Silk Cover 250"),
        ("copies", "900"),
    ])
}

/// A page at an address, with the book in it and the picture open.
fn shown(address: &str, language: &str, draft: &Draft) -> String {
    let mut session = Session::new(Files::new(), &[language.to_owned()], None, JSON);
    session.handle(&Event::new("start", "", &format!("{address}{}", to_link(draft).unwrap())));
    let patches = session.handle(&Event::new("toggle", "open-code", "open"));
    let html = patches.into_iter().find_map(|patch| match patch {
        Patch::Html { id, html } if id == "code" => Some(html),
        _ => None,
    });
    html.expect("the picture is shown")
}

/// What a scanner reads from a piece of HTML with the picture in it.
fn scanned(html: &str, name: &str) -> String {
    let from = html.find("<svg").expect("a picture");
    let svg = &html[from..html.find("</svg>").unwrap() + "</svg>".len()];
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR"));
    let (drawn, raster) = (folder.join(format!("{name}.svg")), folder.join(format!("{name}.png")));
    fs::write(&drawn, svg).unwrap();
    let zoom = PIXELS.to_string();
    let (drawn, raster) = (drawn.to_str().unwrap(), raster.to_str().unwrap());
    ran("rsvg-convert", &["--zoom", &zoom, "--output", raster, drawn]);
    let out = ran("zbarimg", &["--raw", "--quiet", "-Sdisable", "-Sqrcode.enable", raster]);
    str::from_utf8(&out).unwrap().trim_end().to_owned()
}

/// A page that the text comes into.
fn opened(text: &str) -> Draft {
    let mut session = Session::new(Files::new(), &["en-GB".to_owned()], None, JSON);
    session.handle(&Event::new("start", "", DISK));
    session.handle(&Event::new("input", "phrase", text));
    session.draft().clone()
}

#[test]
fn a_hosted_page_shows_its_link() {
    let html = shown(HOSTED, "en-GB", &book());
    let read = scanned(&html, "hosted");
    assert_eq!(read, format!("{HOSTED}{}", to_link(&book()).unwrap()));
    assert_eq!(opened(&read), book());
    assert!(html.contains("a link to this page"), "{html}");
}

#[test]
fn a_page_on_a_disk_shows_the_code_that_scanners_type() {
    for (language, told) in [("en-GB", "holds this job as letters"), ("de", "als Buchstaben")] {
        let html = shown(DISK, language, &book());
        let read = scanned(&html, &format!("disk-{language}"));
        assert_eq!(read, to_code(&book()).unwrap());
        assert_eq!(opened(&read), book());
        assert!(html.contains(told), "{html}");
    }
}

/// A link that would be too fine for paper gives way to the code; the longest code is still read.
#[test]
fn a_long_job_is_shown_as_the_code() {
    let mut draft = book();
    let long = |length| "Weir ".repeat(length / 5 + 1)[..length].to_owned();
    draft.set("title", &long(500));
    assert_eq!(Code::of(&draft, HOSTED).unwrap().held, Held::Keys);
    let room = CODE_MOST - to_code(&draft).unwrap().len();
    // Five bits to a letter.
    draft.set("customer", &long(room * 5 / 8 - 8));
    let code = to_code(&draft).unwrap();
    assert!(code.len() > CODE_MOST - 20, "{}", code.len());
    let read = scanned(&shown(HOSTED, "en-GB", &draft), "longest");
    assert_eq!(read, code);
    assert_eq!(opened(&read), draft);
}

#[test]
fn a_job_that_says_too_much_is_told_so() {
    let mut draft = book();
    for (field, length) in [("title", 500), ("customer", 120)] {
        draft.set(field, &"x".repeat(length));
    }
    assert!(to_code(&draft).is_err());
    assert!(Code::of(&draft, DISK).is_none());
    let html = shown(DISK, "en-GB", &draft);
    assert!(!html.contains("<svg") && html.contains("Save it as a file"), "{html}");
}

/// The picture follows what is typed while it stands open, and is not drawn while it does not.
#[test]
fn the_picture_follows_the_form() {
    let mut session = Session::new(Files::new(), &["en-GB".to_owned()], None, JSON);
    session.handle(&Event::new("start", "", DISK));
    let code = |patches: Vec<Patch>| {
        patches.into_iter().find_map(|patch| match patch {
            Patch::Html { id, html } if id == "code" => Some(html),
            _ => None,
        })
    };
    let typed = |session: &mut Session, copies: &str| {
        session.handle(&Event::new("input", "copies", copies));
        code(session.handle(&Event::new("rest", "", "")))
    };
    assert!(typed(&mut session, "77").is_none_or(|html| html.is_empty()));
    session.handle(&Event::new("toggle", "open-code", "open"));
    let html = typed(&mut session, "78").expect("drawn anew");
    assert_eq!(opened(&scanned(&html, "typed")), *session.draft());
    let closed = code(session.handle(&Event::new("toggle", "open-code", "closed")));
    assert_eq!(closed.as_deref(), Some(""));
}
