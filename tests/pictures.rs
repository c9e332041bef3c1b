//! Drawings as files of their own: read by a general XML reader, as large as they say, text as text, and
//! nobody gets a drawing that the page does not show.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::page::{Event, Patch, Session};
use quirefit::view::pictures::PICTURES;
use quirefit::words::Files;
use roxmltree::Document;
use support::{JSON, files, text_of};

fn session() -> Session {
    let mut session = Session::new(Files::new(), &["en-GB".to_owned()], None, JSON);
    session.handle(&Event::new("start", "", ""));
    session
}

/// A file's name, the drawing's text, and the dots where it is to be painted.
type Saved = (String, String, Option<(u32, u32)>);

/// What comes of an act.
fn saved(session: &mut Session, act: &str, id: &str) -> Option<Saved> {
    session.handle(&Event::new("act", act, id)).into_iter().find_map(|patch| match patch {
        Patch::Download { name, text } => Some((name, text, None)),
        Patch::Picture { name, svg, width, height } => {
            Some((name, svg, Some((width.parse().unwrap(), height.parse().unwrap()))))
        }
        _ => None,
    })
}

fn open_all(session: &mut Session) {
    for region in &quirefit::view::REGIONS {
        session.handle(&Event::new("toggle", &format!("open-{}", region.id), "open"));
    }
    session.handle(&Event::new("rest", "", ""));
}

#[test]
fn every_drawing_of_every_job_is_a_file_of_its_own_size() {
    let mut seen = std::collections::BTreeSet::new();
    for path in files("examples/jobs") {
        let mut session = session();
        session.handle(&Event::new("file", &path, &text_of(&path)));
        session.handle(&Event::new("act", "reading", "floor"));
        open_all(&mut session);
        for picture in &PICTURES {
            let Some((name, text, _)) = saved(&mut session, "picture-svg", picture.id) else {
                continue;
            };
            seen.insert(picture.id);
            assert!(name.ends_with(&format!("{}.svg", picture.id)), "{name}");
            let document = Document::parse(&text).unwrap_or_else(|error| panic!("{path}: {error}"));
            let svg = document.root_element();
            assert_eq!(svg.tag_name().namespace(), Some("http://www.w3.org/2000/svg"));
            let number = |text: &str| text.parse::<f64>().unwrap();
            let seen: Vec<f64> = svg.attribute("viewBox").unwrap().split(' ').map(number).collect();
            for (side, length) in [("width", seen[2]), ("height", seen[3])] {
                let told = svg.attribute(side).unwrap().strip_suffix("mm").unwrap();
                assert!((number(told) - length).abs() < 1e-9, "{path}: {side}");
            }
            assert!(
                svg.children()
                    .any(|child| child.has_tag_name("title") || child.tag_name().name() == "title")
            );
            // Nothing is drawn by a style sheet that is not there, and nothing is fetched.
            let shapes =
                svg.descendants().filter(|node| ["path", "line"].contains(&node.tag_name().name()));
            for shape in shapes {
                let inked =
                    |name: &str| shape.ancestors().any(|node| node.attribute(name).is_some());
                assert!(
                    inked("stroke") || inked("fill"),
                    "{path}: {:?}",
                    shape.attributes().collect::<Vec<_>>()
                );
            }
            assert!(!text.contains("href") && !text.contains("url("), "{path}");
            // As a picture it has 300 dots to the inch.
            let (_, same, dots) = saved(&mut session, "picture-png", picture.id).unwrap();
            assert_eq!(same, text);
            let (across, down) = dots.unwrap();
            for (dots, length) in [(across, seen[2]), (down, seen[3])] {
                assert!(
                    (f64::from(dots) / 300.0 * 25.4 - length).abs() < 0.05,
                    "{dots} dots, {length} mm"
                );
            }
        }
    }
    assert_eq!(seen.len(), PICTURES.len(), "{seen:?}");
}

#[test]
fn a_title_stays_text_in_a_file() {
    let mut session = session();
    for (field, text) in
        [("title", "<script>&\""), ("paper", "90 gsm offset"), ("spine_text", "yes")]
    {
        session.handle(&Event::new("input", field, text));
    }
    for picture in &PICTURES {
        if let Some((name, text, _)) = saved(&mut session, "picture-svg", picture.id) {
            Document::parse(&text).unwrap();
            assert!(!text.contains("<script"), "{}", picture.id);
            assert!(!name.contains(['<', '>', '&', '"', '/']), "{name}");
        }
    }
}

#[test]
fn a_client_saves_no_drawing_of_the_makers() {
    let mut session = session();
    open_all(&mut session);
    session.handle(&Event::new("act", "reading", "client"));
    let got: Vec<&str> = PICTURES
        .iter()
        .filter(|picture| saved(&mut session, "picture-svg", picture.id).is_some())
        .map(|picture| picture.id)
        .collect();
    assert!(got.contains(&"book-end") && got.contains(&"flat-cover"), "{got:?}");
    for makers in ["stitches-drawn", "timeline", "press-sheet", "unit-cost"] {
        assert!(!got.contains(&makers), "{got:?}");
    }
}
