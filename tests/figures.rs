//! Every figure explains itself: whatever a region prints of what was worked out is a button, and its
//! explanation names a source and ends in the figure as it is printed.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::page::{Event, Patch, Session};
use quirefit::view::REGIONS;
use quirefit::view::html::READINGS;
use quirefit::words::built_in;
use std::collections::{BTreeMap, BTreeSet};
use support::{JSON, files, text_of};

/// A page with everything open, and what its elements hold.
struct Page {
    session: Session,
    html: BTreeMap<String, String>,
}

impl Page {
    /// `searched`: what would make it fit is searched for, which takes a while.
    fn open(job: &str, reading: &str, searched: bool) -> Self {
        let session = Session::new(built_in(), &["en-GB".to_owned()], None, JSON);
        let mut page = Self { session, html: BTreeMap::new() };
        if !searched {
            page.tell("helper", "", "ready");
        }
        page.tell("start", "", "");
        page.tell("file", "job", job);
        page.tell("act", "reading", reading);
        for region in &REGIONS {
            page.tell("toggle", &format!("open-{}", region.id), "open");
        }
        page.tell("rest", "", "");
        page
    }

    fn tell(&mut self, kind: &str, id: &str, value: &str) {
        for patch in self.session.handle(&Event::new(kind, id, value)) {
            if let Patch::Html { id, html } = patch {
                self.html.insert(id, html);
            }
        }
    }

    /// The answer, what the first book tells, and the body of every region this reader sees.
    fn places(&self) -> Vec<(String, String)> {
        let mut places: Vec<String> = vec!["answer".to_owned(), "first-off".to_owned()];
        places.extend(REGIONS.iter().map(|region| format!("body-{}", region.id)));
        let html = |id: String| Some((id.clone(), self.html.get(&id)?.clone()));
        places.into_iter().filter_map(html).collect()
    }
}

/// HTML without its tags.
fn text(html: &str) -> String {
    let mut out = String::new();
    let mut inside = false;
    for letter in html.replace("&nbsp;", "\u{a0}").chars() {
        match letter {
            '<' => inside = true,
            '>' => inside = false,
            _ if !inside => out.push(letter),
            _ => {}
        }
    }
    out
}

/// Id and printed text of each figure in a piece of HTML, with the band behind it.
fn figures(html: &str) -> Vec<(String, String)> {
    html.split("<button type=\"button\" class=\"figure\" id=\"")
        .skip(1)
        .map(|after| {
            let (id, rest) = after.split_once('"').unwrap();
            let (inner, behind) = rest.split_once('>').unwrap().1.split_once("</button>").unwrap();
            let band = behind.strip_prefix(" <span class=\"band\">");
            let band = band.map(|rest| rest.split("</span>").next().unwrap());
            let printed = text(inner).trim_end_matches('.').to_owned();
            (
                id.to_owned(),
                band.map_or(printed.clone(), |band| format!("{printed} {}", text(band))),
            )
        })
        .collect()
}

/// Jobs that bring out what the examples do not.
fn jobs() -> Vec<String> {
    let mut jobs: Vec<String> = files("examples/jobs");
    jobs.extend(files("examples/rules").into_iter().filter(|path| path.contains(".fires")));
    jobs.iter().map(|path| text_of(path)).collect()
}

#[test]
fn every_figure_has_an_explanation_that_ends_in_it() {
    let mut asked = BTreeSet::new();
    let mut all = BTreeSet::new();
    let mut wrong = BTreeSet::new();
    for (index, job) in jobs().iter().enumerate() {
        for (reading, _) in READINGS {
            let mut page = Page::open(job, reading, index < 3);
            let mut ids = BTreeSet::new();
            for (place, html) in page.places() {
                for (id, printed) in figures(&html) {
                    assert!(ids.insert(id.clone()), "{id} stands twice");
                    assert!(id.ends_with(&place) || id.contains(&format!("-{place}-")), "{id}");
                    // Every figure of the examples; of the rest each figure once in each reading.
                    let figure = id["ask-".len()..].split('-').next().unwrap().to_owned();
                    all.insert(figure.clone());
                    let fresh = asked.insert((reading, figure, index < 3));
                    if index >= 3 && !fresh {
                        continue;
                    }
                    page.tell("act", "explain", &id);
                    let told = page.html["explanation"].clone();
                    assert!(told.contains("Where it comes from"), "{id}: {told}");
                    let lines: Vec<&str> = told.split("<li>").skip(1).collect();
                    let last = text(lines.last().unwrap().split("</li>").next().unwrap());
                    let end = last.trim_end_matches('.');
                    // A sentence may leave the band out.
                    let nominal = end.rsplit_once(" (").map_or(end, |(nominal, _)| nominal);
                    let ends = end.ends_with(&printed) || nominal.ends_with(&printed);
                    let within =
                        ["free_from", "free_to", "stitch_"].iter().any(|one| id.contains(one));
                    let client = reading == "client";
                    if !ends && !((within || client) && last.contains(&printed)) {
                        wrong.insert(format!(
                            "{id} is “{printed}”, its explanation ends in “{last}”"
                        ));
                    }
                    page.tell("act", "explain", "");
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(all.len() >= 90, "only {} figures were seen: {all:?}", all.len());
}

/// What may stand in a table or a list without being asked: it names or repeats, it is not worked out.
/// Element or column, and why.
const ECHOES: [(&str, &str); 8] = [
    ("sheet of the book, pass, head, copy: a number that names", "body-inside body-stitches"),
    ("folios name pages", "body-inside"),
    ("sets that have come in, as typed", "body-run"),
    ("rates and postage, as the shop says", "body-cost body-pack"),
    ("units of a quantity", "body-cost"),
    ("names of press sheets and postal steps", "body-sheet body-pack"),
    ("route and answer in words", "body-sheet body-decides"),
    ("an offer's own words are what would be typed", "body-fixes"),
];

/// No cell and no value of a list holds a computed number that is not a figure.
#[test]
fn no_number_in_a_list_or_a_table_stands_unasked() {
    let known: BTreeSet<&str> = ECHOES.iter().flat_map(|(_, places)| places.split(' ')).collect();
    for job in &jobs() {
        let page = Page::open(job, "design", false);
        for (place, html) in page.places() {
            for tag in ["<dd", "<td"] {
                for cell in html.split(tag).skip(1) {
                    let cell = cell.split_once('>').unwrap().1;
                    let cell =
                        cell.split(if tag == "<dd" { "</dd>" } else { "</td>" }).next().unwrap();
                    let digits = text(cell).contains(|letter: char| letter.is_ascii_digit());
                    if !digits || cell.contains("class=\"figure\"") {
                        continue;
                    }
                    assert!(tag == "<td" && known.contains(&*place), "{place}: {}", text(cell));
                    assert!(echo(&place, &text(cell), &html), "{place}: {}", text(cell));
                }
            }
        }
    }
}

/// Whether a cell may hold what it holds.
fn echo(place: &str, cell: &str, html: &str) -> bool {
    let whole = cell.chars().all(|letter| letter.is_ascii_digit());
    match place {
        "body-inside" => cell.contains(" · "),
        // Copy, pass, head.
        "body-stitches" => whole && cell.len() <= 2,
        "body-run" => html.contains("Sets that have come in"),
        // A plain amount, which the shop typed, before the total of its line.
        "body-cost" => {
            let behind = format!("<td>{cell}</td><td><button");
            cell.parse::<f64>().is_ok() && html.contains(&behind)
        }
        "body-pack" => cell.rsplit('.').next().is_some_and(|cents| cents.len() == 2),
        _ => false,
    }
}

/// A line that stays when its region is closed says nothing that is not asked about inside.
#[test]
fn what_a_closed_region_says_is_asked_about_inside() {
    for path in files("examples/jobs") {
        let page = Page::open(&text_of(&path), "design", false);
        for region in &REGIONS {
            let Some(summary) = page.html.get(&format!("summary-{}", region.id)) else { continue };
            assert!(!summary.contains("<button"), "{}: a button in a button", region.id);
            let body = page.html.get(&format!("body-{}", region.id)).map_or("", String::as_str);
            let inside = text(body);
            let length = |word: &str| word.parse::<f64>().is_ok();
            for word in text(summary)
                .split(|letter: char| letter.is_whitespace() || "×;,()".contains(letter))
            {
                let word = word.trim_end_matches('.');
                assert!(
                    !length(word) || inside.contains(word) || region.id == "fixes",
                    "{path} {}: {word} of “{}”",
                    region.id,
                    text(summary)
                );
            }
        }
    }
}

/// The leg of a stitch and the wire drawn for it are one figure each, beside the line's limit, among the
/// stitches and on the operator's list.
#[test]
fn a_stitch_has_one_leg_and_one_length_of_wire() {
    let mut limits = 0;
    for path in files("examples/jobs") {
        let page = Page::open(&text_of(path), "floor", false);
        let places = page.places();
        for (id, limit) in [("leg", "Leg of a stitch"), ("draw", "Wire drawn for a stitch")] {
            let rows = places.iter().filter(|(place, _)| place == "body-decides");
            let rows = rows.flat_map(|(_, html)| html.split("<tr").skip(1));
            let beside = rows.filter(|row| row.contains(limit)).map(|row| figures(row).remove(0).1);
            let elsewhere = places.iter().flat_map(|(_, html)| figures(html));
            let elsewhere =
                elsewhere.filter(|(asked, _)| asked.starts_with(&format!("ask-{id}-0-")));
            let elsewhere: BTreeSet<String> = elsewhere.map(|(_, printed)| printed).collect();
            assert_eq!(elsewhere.len(), 1, "{id}: {elsewhere:?}");
            let beside: BTreeSet<String> = beside.collect();
            limits += beside.len();
            assert!(beside.is_subset(&elsewhere), "{id}: {beside:?}, {elsewhere:?}");
        }
    }
    assert!(limits >= 10, "only {limits} limits of a stitch");
}
