//! Suggestions while somebody types, walked by keys.

use crate::{LANGUAGE, Page};
use quirefit::draft::Kind;
use quirefit::job::{self, Note, SCHEMA};
use quirefit::page::{Event, Patch};
use quirefit::shop::{self, Shop};
use std::collections::BTreeSet;

impl Page {
    /// Texts that a field's list offers.
    fn offered(&self, id: &str) -> Vec<String> {
        let list = self.shown(&format!("offers-{id}"));
        let after = list.split("data-value=\"").skip(1);
        after.map(|rest| rest.split('"').next().unwrap().replace("&quot;", "\"")).collect()
    }
}

#[test]
fn the_shops_own_papers_come_first_with_weight_and_thickness() {
    let mut page = Page::open(None);
    page.tell("tap", "paper", "");
    assert!(page.offered("paper").is_empty(), "a filled field covers nothing at the first tap");
    page.tell("tap", "paper", "");
    let offered = page.offered("paper");
    let own: BTreeSet<String> =
        shop::demo().stocks.iter().map(|stock| stock.name.clone()).collect();
    assert!(!offered.is_empty() && offered.iter().all(|name| own.contains(name)), "{offered:?}");
    assert!(!offered.contains(&"Pond Silk 130".to_owned()), "what stands there is no suggestion");
    assert!(page.words("offers-paper").contains("170 g/m², one leaf 0.142 mm"));
    // For the cover, card comes first.
    page.tell("leave", "paper", "");
    page.input("cover", "");
    page.tell("leave", "cover", "");
    page.tell("tap", "cover", "");
    assert_eq!(page.offered("cover")[0], "Pond Silk Cover 250");
    // Typing narrows: own papers, then usual ones of that weight and kind.
    page.tell("leave", "cover", "");
    page.type_into("paper", "");
    page.input("paper", "130 s");
    let offered = page.offered("paper");
    assert_eq!(offered[..2], ["Pond Silk 130", "130 gsm silk"], "{offered:?}");
    page.input("paper", "100 lb te");
    let offered = page.offered("paper");
    assert_eq!(offered[..2], ["Lantern Gloss 100 lb text", "100 lb text silk"], "{offered:?}");
}

#[test]
fn sizes_come_with_their_sides_in_the_persons_units() {
    let mut page = Page::open(None);
    page.input("size", "half");
    assert_eq!(page.offered("size"), ["Half Letter", "Half Letter landscape"]);
    assert!(page.words("offers-size").contains("139.7 mm × 215.9 mm"));
    page.input("size", "a5");
    assert_eq!(page.offered("size"), ["A5", "A5 landscape"]);
    page.act("choose:size", "A5 landscape");
    assert_eq!(page.draft().get("size"), "A5 landscape");
    let mut page = Page::open_in(None, "en-US");
    page.input("size", "");
    assert_eq!(page.offered("size")[..2], ["Half Letter", "Letter"]);
    page.input("size", "8.5");
    assert!(page.words("offers-size").contains("8.5 in × 11 in"), "{}", page.words("offers-size"));
}

/// The answer is painted first; what is offered comes with the rest, and puts nothing off.
#[test]
fn the_answer_comes_before_the_suggestions() {
    let mut page = Page::open(None);
    let touches = |patches: &[Patch]| {
        patches
            .iter()
            .any(|patch| matches!(patch, Patch::Html { id, .. } if id.starts_with("offer")))
    };
    for typed in ["9", "90", "90 ", "90 o"] {
        let patches = page.session.handle(&Event::new("input", "paper", typed));
        assert!(!touches(&patches), "{typed}: suggestions in the way of the answer");
        patches.iter().for_each(|patch| page.apply(patch));
        page.values.insert("paper".to_owned(), typed.to_owned());
    }
    let rest = page.session.handle(&Event::new("rest", "", ""));
    assert!(touches(&rest));
    // A key that comes before the rest finds the list of what stands there, not the one before.
    page.session.handle(&Event::new("input", "paper", "130 gl"));
    page.values.insert("paper".to_owned(), "130 gl".to_owned());
    assert!(page.key("paper", "ArrowDown"));
    assert_eq!(page.offered("paper")[0], "130 gsm gloss");
}

#[test]
fn the_list_is_walked_by_keys_and_never_takes_a_text_away() {
    let mut page = Page::open(None);
    assert_eq!(page.attr("input-paper", "aria-expanded"), None, "as the page was drawn");
    page.input("paper", "130 s");
    assert_eq!(page.attr("input-paper", "aria-expanded"), Some("true"));
    assert_eq!(page.attr("offers-paper", "hidden"), None);
    assert!(page.words("offered").starts_with(&page.offered("paper").len().to_string()));
    // Enter takes nothing that nobody walked to.
    assert!(!page.key("paper", "Enter"));
    assert_eq!(page.draft().get("paper"), "130 s");
    assert!(page.offered("paper").is_empty(), "and it closes the list");
    // Down, down, up: the first; up once more: the last; down: the first again.
    page.input("paper", "130 si");
    let offered = page.offered("paper");
    for key in ["ArrowDown", "ArrowDown", "ArrowUp"] {
        assert!(page.key("paper", key));
    }
    assert_eq!(page.attr("input-paper", "aria-activedescendant"), Some("offer-paper-0"));
    assert_eq!(page.attr("offer-paper-0", "aria-selected"), Some("true"));
    assert_eq!(page.attr("offer-paper-1", "aria-selected"), Some("false"));
    page.key("paper", "ArrowUp");
    let last = format!("offer-paper-{}", offered.len() - 1);
    assert_eq!(page.attr("input-paper", "aria-activedescendant"), Some(&*last));
    page.key("paper", "ArrowDown");
    assert_eq!(page.draft().get("paper"), "130 si", "walking changes no text");
    // Home and End belong to the caret.
    assert!(!page.key("paper", "Home"));
    assert_eq!(page.attr("input-paper", "aria-activedescendant"), None);
    // Escape closes and keeps what was typed; a second one is the browser's.
    assert!(page.key("paper", "Escape"));
    assert_eq!((page.draft().get("paper"), page.offered("paper").len()), ("130 si", 0));
    assert!(!page.key("paper", "Escape"));
    // An arrow opens it again, with everything; Enter takes what is pointed at.
    assert!(page.key("paper", "ArrowDown"));
    let first = page.offered("paper")[0].clone();
    assert!(page.key("paper", "Enter"));
    assert_eq!(page.draft().get("paper"), first);
    assert_eq!(page.focus, "input-paper");
    assert_eq!(page.attr("input-paper", "aria-expanded"), Some("false"));
    assert_eq!(page.words("offered"), "");
    // One step takes the choice back, to what was typed.
    page.act("undo", "");
    assert_eq!(page.draft().get("paper"), "130 si");
    // Leaving the field closes the list; other fields have none.
    page.input("paper", "130 sil");
    page.tell("leave", "paper", "130 sil");
    assert!(page.offered("paper").is_empty());
    assert!(!page.key("pages", "ArrowDown"));
}

/// Whatever is typed and wherever: at most eight, none of them what stands there, each understood.
#[test]
fn every_suggestion_is_understood() {
    let typed = [
        "", "1", "13", "130", "130 s", "s", "gloss", "80 lb", "100 p", "100# te", "cover", "cov 8",
        "24", "bond", "index", "tag 1", "newsp", "vol", "recy 9", "128 g", "25", "9999", "a", "a5",
        "let", "8.5", "210 x", "land", "dl", "b", "sra", "ra2", "13 ×", "🦆", "Pond", "lantern",
    ];
    let shops: Vec<Shop> = std::iter::once(shop::demo())
        .chain(
            crate::support::files("examples/shops")
                .iter()
                .map(|path| crate::support::shop_of(path)),
        )
        .collect();
    for language in [LANGUAGE, "en-US", "de"] {
        let several = if language == LANGUAGE { shops.len() } else { 1 };
        for (place, shop) in shops.iter().enumerate().take(several) {
            let mut page = Page::open_in(None, language);
            page.tell("helper", "", "ready");
            if let Some(index) = place.checked_sub(1) {
                let path = &crate::support::files("examples/shops")[index];
                page.tell("file", path, &crate::support::text_of(path));
            }
            let mut some = 0;
            for field in ["size", "paper", "cover", "press_sheet"] {
                for text in typed {
                    page.input(field, text);
                    let offered = page.offered(field);
                    assert!(offered.len() <= 8, "{field} {text}: {offered:?}");
                    some += offered.len();
                    for offer in offered {
                        assert_ne!(offer, text);
                        let mut draft = page.draft();
                        draft.set(field, &offer);
                        let reading = job::read(&draft, shop);
                        let note = reading.notes.get(field);
                        assert!(
                            matches!(note, Some(Note::Echo(_))),
                            "{field} {text}: {offer}: {note:?}"
                        );
                    }
                }
            }
            assert!(some > 200, "only {some} suggestions seen");
        }
    }
}

#[test]
fn every_control_that_is_offered_something_is_a_combobox() {
    let page = Page::open(None);
    for field in SCHEMA.fields {
        let tag = page.drawn.split(&format!("id=\"input-{}\"", field.id)).nth(1);
        let tag = tag.map_or("", |after| after.split('>').next().unwrap());
        let offered = matches!(field.kind, Kind::Size | Kind::Paper) || field.id == "press_sheet";
        assert_eq!(tag.contains("role=\"combobox\""), offered, "{}", field.id);
        if offered {
            let list = format!("aria-controls=\"offers-{}\"", field.id);
            assert!(tag.contains(&list), "{}", field.id);
        }
    }
    assert!(!page.drawn.contains("<datalist"));
}
