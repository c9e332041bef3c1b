//! What is offered must hold: every offer, typed and read again, passes; room is never promised
//! beyond a limit.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

use quirefit::advise::{Advice, MOST_TRIED, Offer, Room, room};
use quirefit::draft::Draft;
use quirefit::job::{self, Job};
use quirefit::plan::{Plan, Verdict, plan};
use quirefit::shop::{self, Shop};

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

fn each(check: impl Fn(&Shop, &Draft, &Job, &Plan, &Advice)) {
    let shop = shop::demo();
    for book in BOOKS {
        let (draft, job, planned) = read(&shop, book);
        let advice = Advice::searched(&draft, &job, &shop, &planned, MOST_TRIED);
        check(&shop, &draft, &job, &planned, &advice);
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
    let (draft, job, planned) = read(&shop, BOOKS[0]);
    let advice = Advice::searched(&draft, &job, &shop, &planned, MOST_TRIED);
    for offer in &advice.offers {
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

/// The scenarios: what a person would be told.
#[test]
fn scenarios_are_answered() {
    let shop = shop::demo();
    let ways = |book: &[(&str, &str)]| -> Vec<Vec<(String, String)>> {
        let (draft, job, planned) = read(&shop, book);
        assert_eq!(planned.verdict, Verdict::DoesNotFit);
        let advice = Advice::searched(&draft, &job, &shop, &planned, MOST_TRIED);
        advice.offers.into_iter().map(|offer| offer.edits).collect()
    };
    let has = |ways: &[Vec<(String, String)>], path: &str, text: &str| {
        ways.iter().any(|way| way.iter().any(|(p, t)| p == path && t == text))
    };
    // The conveyor manual: two volumes of 72 + 4.
    assert!(has(&ways(BOOKS[0]), "pages", "72 + 4"));
    // The landscape catalogue: A5 landscape.
    assert!(has(&ways(BOOKS[1]), "size", "A5 landscape"));
    // The sticker book: two along one fold, or a line that takes it.
    let sticker = ways(BOOKS[2]);
    assert!(!sticker.is_empty());
}
