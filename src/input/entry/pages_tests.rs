//! Page counts as typed.

use super::Cover::{Counted, Plus, Unsaid};
use super::{PageCount, Reading, pages};
use crate::units::Pages;

#[test]
fn counts() {
    for (text, inside, cover) in [
        ("64", 64, Unsaid),
        ("64pp", 64, Unsaid),
        ("64 pp.", 64, Unsaid),
        ("64 Pages", 64, Unsaid),
        ("64-page", 64, Unsaid),
        ("64 sides", 64, Unsaid),
        ("64 Seiten", 64, Unsaid),
        ("15", 15, Unsaid),
        ("1", 1, Unsaid),
        ("1,250", 1250, Unsaid),
        ("16 leaves", 32, Unsaid),
        ("16 sheets", 64, Unsaid),
        ("16 folded sheets", 64, Unsaid),
        ("60 + 4", 60, Plus),
        ("60+4pp", 60, Plus),
        ("60pp +4pp cover", 60, Plus),
        ("60 plus cover", 60, Plus),
        ("60pp + cover", 60, Plus),
        ("60 plus a 4-page cover", 60, Plus),
        ("60 with separate cover", 60, Plus),
        ("64 self cover", 64, Counted),
        ("64 Self-Cover", 64, Counted),
        ("64pp selfcover", 64, Counted),
        ("64 with self cover", 64, Counted),
        ("64 pages including cover", 64, Counted),
        ("64 pages, self cover", 64, Counted),
        ("64 pages (self cover)", 64, Counted),
        ("64-seitig", 64, Unsaid),
        ("16 Blatt", 32, Unsaid),
        ("16 Doppelblätter", 64, Unsaid),
        ("60 Seiten Inhalt + 4 Seiten Umschlag", 60, Plus),
        ("60 Seiten plus 4 Umschlagseiten", 60, Plus),
        ("60 Seiten zzgl. Umschlag", 60, Plus),
        ("60 Seiten mit eigenem Umschlag", 60, Plus),
        ("64 Seiten inklusive Umschlag", 64, Counted),
    ] {
        let count = PageCount { inside: Pages(inside), cover };
        assert_eq!(pages(text).value(), Some(count), "{text}");
    }
}

#[test]
fn beginnings() {
    for text in ["", "60 +", "60 plus", "64 pag", "64 self", "64 s", "60 + 4 cove", "16 fol"] {
        assert_eq!(pages(text), Reading::Incomplete, "{text}");
    }
}

#[test]
fn faults() {
    for text in [
        "0",
        "-1",
        "1e308",
        "NaN",
        "1000000000 pages",
        "2001",
        "501 sheets",
        "60 + 6",
        "60 + 2",
        "60 + 4 + 4",
        "8½",
        "A5",
        "64 pages A5",
        "🦆",
        "64 64",
        "+",
        "60 + pp",
    ] {
        assert!(matches!(pages(text), Reading::Wrong(_)), "{text}: {:?}", pages(text));
    }
    let Reading::Wrong(fault) = pages("60 + 8") else { panic!("a cover of 8 pages") };
    assert_eq!(fault.wrong.key, "entry.pages.cover-large");
}

#[test]
fn echoes_say_blanks() {
    let echo = |text: &str| match pages(text) {
        Reading::Understood(_, echo) => echo,
        other => panic!("{other:?}"),
    };
    assert_eq!(echo("64").key, "entry.pages.full");
    assert_eq!(echo("15").key, "entry.pages.blanks");
    assert_eq!(echo("60 + 4").key, "entry.pages.plus");
}
