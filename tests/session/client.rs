//! A client's reading holds no limit, no rate and no cost.

use crate::support::JSON;
use crate::{Page, text};
use quirefit::draft::to_tree;
use quirefit::shop::{self, Shop, draft_of};

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

/// A client does not read of a way that was never offered to one.
#[test]
fn a_client_does_not_read_what_only_makers_take() {
    let mut page = Page::open(None);
    page.input("line", "Light desk-side line");
    page.input("pages", "96 + 4");
    let ways = page.shown("body-fixes").split("<li>").skip(1);
    let line = ways.map(text).position(|way| way.starts_with("the line")).expect("a heavier line");
    page.act("apply", &line.to_string());
    assert!(page.words("taken").starts_with("Taken: the line"), "{}", page.words("taken"));
    page.act("reading", "client");
    assert_eq!(page.shown("taken"), "");
    page.act("reading", "floor");
    assert!(page.words("taken").starts_with("Taken: the line"), "{}", page.words("taken"));
}
