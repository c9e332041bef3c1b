//! What is offered must hold: every offer, typed and read again, passes; room is never promised
//! beyond a limit.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::advise::{Advice, MOST_TRIED, Offer, Room, room};
use quirefit::draft::Draft;
use quirefit::job::{self, Job};
use quirefit::page::{Event, Patch, Session, search};
use quirefit::plan::{Plan, Verdict, plan};
use quirefit::shop::{self, Shop};
use quirefit::words::Files;
use std::sync::OnceLock;

/// Books of all shapes, most of which do not fit somewhere.
const BOOKS: &[&[(&str, &str)]] = &[
    &[
        ("pages", "144 + 4"),
        ("size", "A4"),
        ("paper", "90 gsm uncoated 0.115 mm"),
        ("cover", "250 gsm silk cover 0.290 mm"),
        ("line", "Line H"),
    ],
    &[
        ("pages", "28 + 4"),
        ("size", "A4 landscape"),
        ("paper", "150 gsm silk 0.125 mm"),
        ("cover", "300 gsm silk cover 0.300 mm"),
        ("line", "Line H"),
    ],
    &[
        ("pages", "64"),
        ("size", "80 x 80 mm"),
        ("paper", "120 gsm uncoated 0.135 mm"),
        ("line", "Line H"),
    ],
    &[
        ("pages", "40 + 4"),
        ("size", "A5"),
        ("paper", "Pond Silk 130"),
        ("cover", "Pond Silk Cover 250"),
    ],
    &[
        ("pages", "146"),
        ("size", "A5"),
        ("paper", "120 gsm uncoated"),
        ("line", "Light desk-side line"),
    ],
    &[
        ("pages", "96 + 4"),
        ("size", "Letter"),
        ("paper", "100 lb gloss text"),
        ("cover", "80 lb gloss cover"),
        ("units", "in"),
    ],
    &[
        ("pages", "60"),
        ("size", "A5"),
        ("paper", "115 gsm silk"),
        ("sections.0.pages", "16"),
        ("sections.0.paper", "170 gsm silk"),
        ("line", "Light desk-side line"),
    ],
    &[("pages", "4"), ("size", "A5"), ("paper", "130 gsm silk")],
    &[
        ("pages", "400"),
        ("size", "A3"),
        ("paper", "250 gsm silk"),
        ("spine", "square"),
        ("line", "Light desk-side line"),
    ],
    &[
        ("pages", "120"),
        ("size", "A5"),
        ("paper", "90 gsm uncoated"),
        ("dummy_thickness", "7.4 mm"),
        ("dummy_push_out", "5.1 mm"),
    ],
    &[
        ("pages", "72 + 4"),
        ("size", "A4 landscape"),
        ("bound_edge", "top"),
        ("paper", "100 gsm"),
        ("grain", "along"),
        ("face_cut", "1 mm"),
    ],
    &[("pages", "120 + 4"), ("size", "A5"), ("paper", "115 gsm silk")],
];

fn read(shop: &Shop, book: &[(&str, &str)]) -> (Draft, Job, Plan) {
    let draft = Draft::of(book);
    let job = job::read(&draft, shop).job.unwrap_or_else(|| panic!("{book:?} is not complete"));
    let planned = plan(&job, shop);
    (draft, job, planned)
}

/// Every book with its advice, searched once for all tests.
type Advised = (Draft, Job, Plan, Advice);

fn advised() -> &'static [Advised] {
    static ALL: OnceLock<Vec<Advised>> = OnceLock::new();
    ALL.get_or_init(|| {
        let shop = shop::demo();
        let advised = |book: &&[(&str, &str)]| {
            let (draft, job, planned) = read(&shop, book);
            let advice = Advice::searched(&draft, &job, &shop, &planned, MOST_TRIED);
            (draft, job, planned, advice)
        };
        BOOKS.iter().map(advised).collect()
    })
}

fn each(check: impl Fn(&Shop, &Draft, &Job, &Plan, &Advice)) {
    let shop = shop::demo();
    for (draft, job, planned, advice) in advised() {
        check(&shop, draft, job, planned, advice);
    }
}

/// What an offer makes, typed into the draft and read like anything that was typed.
fn typed(shop: &Shop, draft: &Draft, offer: &Offer) -> (Job, Plan) {
    let mut typed = draft.clone();
    for (path, text) in &offer.edits {
        typed.set(path, text);
    }
    let reading = job::read(&typed, shop);
    assert!(reading.errors(&typed).is_empty(), "{:?} cannot be read", offer.edits);
    let job = reading.job.expect("an offer is a complete job");
    let planned = plan(&job, shop);
    (job, planned)
}

#[test]
fn every_offer_typed_and_read_again_really_passes() {
    each(|shop, draft, _, planned, advice| {
        let fits = advice.offers.iter().filter(|offer| offer.verdict == Verdict::Fits).count();
        assert!(fits == advice.offers.len() || fits == 0, "sure and doubtful ways side by side");
        for offer in &advice.offers {
            let (_, again) = typed(shop, draft, offer);
            assert_eq!(again.verdict, offer.verdict, "{:?}", offer.edits);
            assert!(again.verdict < Verdict::DoesNotFit);
            assert_eq!(again.results.stack.closed, offer.spine);
            assert!(!offer.edits.is_empty(), "an offer changes something");
            assert!(again.verdict <= planned.verdict);
        }
    });
}

#[test]
fn the_thinner_of_two_volumes_passes_as_well() {
    let shop = shop::demo();
    let mut seen = 0;
    each(|_, draft, _, _, advice| {
        for offer in &advice.offers {
            if let Some(told) = offer.told.iter().find(|told| told.kind.id == "volumes") {
                let mut second = offer.applied(draft);
                second.set("pages", &told.then);
                let job = job::read(&second, &shop).job.expect("complete");
                assert!(plan(&job, &shop).verdict <= offer.verdict);
            }
        }
    });
    for offer in &advised()[CONVEYOR].3.offers {
        seen += offer.told.iter().filter(|told| told.kind.id == "volumes").count();
    }
    assert_eq!(seen, 1, "144 + 4 pages on line H fit as two volumes of 72 + 4");
}

#[test]
fn two_changes_are_offered_only_where_neither_is_enough() {
    each(|shop, draft, _, _, advice| {
        let pairs = advice.offers.iter().filter(|offer| offer.told.len() == 2);
        for offer in pairs.filter(|offer| offer.verdict == Verdict::Fits) {
            for (path, text) in offer.edits.iter().filter(|(path, _)| !path.starts_with("dummy")) {
                let mut one = draft.clone();
                one.set(path, text);
                let passes = job::read(&one, shop)
                    .job
                    .is_some_and(|job| plan(&job, shop).verdict == Verdict::Fits);
                assert!(!passes, "{path} = {text} is enough without {:?}", offer.edits);
            }
        }
    });
}

#[test]
fn room_is_never_promised_beyond_a_limit_and_the_book_with_it_fits() {
    each(|shop, draft, job, planned, advice| {
        let Room::Pages(more) = room(job, shop, planned) else { return };
        assert_eq!(advice.room, Room::Pages(more));
        if planned.verdict != Verdict::Fits {
            assert_eq!(more.get(), 0);
            return;
        }
        for limit in &planned.results.limits {
            if let Some(pages) = limit.room.pages() {
                assert!(i64::from(more.get()) <= pages, "{:?}: {more:?} > {pages}", limit.id);
            }
        }
        // A dummy speaks of this book only, so its pages cannot be changed by typing.
        if job.dummy.closed.is_some() {
            return;
        }
        let at = |more: u32| {
            let mut larger = draft.clone();
            let main = job.main_section().expect("an inside").sheets.pages().get() + more;
            let plus = if job.cover().is_some() { " + 4" } else { "" };
            larger.set("pages", &format!("{main}{plus}"));
            let job = job::read(&larger, shop).job.expect("complete");
            plan(&job, shop).verdict
        };
        assert_eq!(at(more.get()), Verdict::Fits);
        let closed = planned.room_pages().expect("a limit that grows");
        assert!(i64::from(more.get()) + 4 > closed || at(more.get() + 4) != Verdict::Fits);
    });
}

#[test]
fn the_questions_turned_round_agree_with_planning() {
    each(|shop, draft, job, planned, advice| {
        let inverse = advice.inverse.as_ref().expect("searched");
        let plus = if job.cover().is_some() { " + 4" } else { "" };
        let with = |path: &str, text: &str| {
            let mut other = draft.clone();
            other.set(path, text);
            other.set("dummy_thickness", "");
            other.set("dummy_push_out", "");
            job::read(&other, shop).job.map(|job| plan(&job, shop).verdict)
        };
        if let Some(pages) = inverse.most_pages.filter(|_| planned.verdict != Verdict::Fits) {
            assert_eq!(with("pages", &format!("{}{plus}", pages.get())), Some(Verdict::Fits));
            let more = with("pages", &format!("{}{plus}", pages.get() + 4));
            assert_ne!(more, Some(Verdict::Fits), "{pages:?} are not the most");
        }
        if let Some((paper, _)) = inverse.heaviest.as_ref().filter(|_| job.dummy.closed.is_none()) {
            assert_eq!(with("paper", paper), Some(Verdict::Fits), "{paper}");
        }
    });
}

/// The issue's scenarios: what a person would be told.
#[test]
fn scenarios_are_answered() {
    let ways = |book: usize| -> Vec<Vec<(String, String)>> {
        let (_, _, planned, advice) = &advised()[book];
        assert_eq!(planned.verdict, Verdict::DoesNotFit);
        advice.offers.iter().map(|offer| offer.edits.clone()).collect()
    };
    let has = |ways: &[Vec<(String, String)>], path: &str, text: &str| {
        ways.iter().any(|way| way.iter().any(|(p, t)| p == path && t == text))
    };
    // The conveyor manual: two volumes of 72 + 4.
    assert!(has(&ways(CONVEYOR), "pages", "72 + 4"));
    // The landscape catalogue: A5 landscape.
    assert!(has(&ways(1), "size", "A5 landscape"));
    // The sticker book: two along one fold, or a line that takes it.
    let sticker = ways(2);
    assert!(!sticker.is_empty());
}

/// A page on which this book was typed, and what the last event did to it.
fn page(book: &[(&str, &str)]) -> Session {
    let mut session = Session::new(Files::new(), &["en-GB".to_owned()], None, support::JSON);
    session.handle(&Event::new("start", "", ""));
    session.handle(&Event::new("act", "new", ""));
    for (field, text) in book {
        session.handle(&Event::new("input", field, text));
    }
    session
}

fn html<'a>(patches: &'a [Patch], element: &str) -> Option<&'a str> {
    patches.iter().rev().find_map(|patch| match patch {
        Patch::Html { id, html } if id == element => Some(html.as_str()),
        _ => None,
    })
}

/// Without the groups: their fields come into being with a tap.
const CONVEYOR: usize = 0;

#[test]
fn one_tap_takes_an_offer_and_undo_takes_it_back() {
    let mut session = page(BOOKS[CONVEYOR]);
    let rested = session.handle(&Event::new("rest", "", ""));
    let body = html(&rested, "body-fixes").expect("open, since the book does not fit");
    assert!(body.contains(r#"data-act="apply" data-value="0""#), "{body}");
    let before = session.draft().clone();
    let taken = session.handle(&Event::new("act", "apply", "0"));
    assert!(html(&taken, "answer").expect("a new answer").contains("Yes."));
    assert_ne!(*session.draft(), before);
    session.handle(&Event::new("act", "undo", ""));
    assert_eq!(*session.draft(), before);
    // A place that no offer has does nothing.
    assert!(session.handle(&Event::new("act", "apply", "99")).is_empty());
    assert_eq!(*session.draft(), before);
}

#[test]
fn a_helper_finds_what_the_page_finds_and_answers_to_older_drafts_are_dropped() {
    let asked = |patches: &[Patch]| {
        patches.iter().find_map(|patch| match patch {
            Patch::Search { number, job, shop } => {
                Some((number.clone(), job.clone(), shop.clone()))
            }
            _ => None,
        })
    };
    let mut alone = page(BOOKS[CONVEYOR]);
    let here = alone.handle(&Event::new("rest", "", ""));

    let mut session = page(BOOKS[CONVEYOR]);
    session.handle(&Event::new("helper", "", "ready"));
    let rested = session.handle(&Event::new("rest", "", ""));
    let (number, job, shop) = asked(&rested).expect("the helper is asked");
    assert_eq!(shop.as_deref(), Some(""), "the demo shop");
    assert!(asked(&session.handle(&Event::new("rest", "", ""))).is_none(), "once a draft");
    let found = search(&job, "", support::JSON);
    let answered = session.handle(&Event::new("found", &number, &found));
    let first = |body: &str| body.split("</li>").next().map(str::to_owned);
    assert_eq!(
        html(&answered, "body-fixes").and_then(first),
        html(&here, "body-fixes").and_then(first),
        "the least change is the same"
    );

    // Typed on: the older answer comes too late, the newer one counts.
    session.handle(&Event::new("input", "pages", "140 + 4"));
    let rested = session.handle(&Event::new("rest", "", ""));
    let (newer, job, shop) = asked(&rested).expect("asked again");
    assert_eq!(shop, None, "the helper knows the shop");
    assert!(session.handle(&Event::new("found", &number, &found)).is_empty());
    let found = search(&job, "", support::JSON);
    assert!(!session.handle(&Event::new("found", &newer, &found)).is_empty());

    // Lost: the page searches itself.
    session.handle(&Event::new("input", "pages", "136 + 4"));
    session.handle(&Event::new("rest", "", ""));
    let lost = session.handle(&Event::new("helper", "", "none"));
    assert!(html(&lost, "body-fixes").expect("found here").contains("data-act"));
    // Nonsense from a helper is not believed either.
    assert_eq!(search("{}", "", support::JSON), "");
    assert_eq!(search(&job, "no shop", support::JSON), "");
}

#[test]
fn a_client_hears_of_pages_papers_and_size_only() {
    let shop = shop::demo();
    for book in BOOKS {
        let singles: Vec<(&str, &str)> =
            book.iter().filter(|(path, _)| !path.contains('.')).copied().collect();
        let mut session = page(&singles);
        let mut patches = session.handle(&Event::new("act", "reading", "client"));
        patches.extend(session.handle(&Event::new("toggle", "open-fixes", "open")));
        let body = html(&patches, "body-fixes").expect("painted");
        for line in &shop.lines {
            assert!(!body.contains(line.name.as_ref()), "{body}");
        }
        for hidden in ["room for", "no room", "at most", "heaviest", "cut", "along one fold"] {
            assert!(!body.contains(hidden), "{hidden}: {body}");
        }
    }
}
