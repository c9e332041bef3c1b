//! A page that is shown and told everything.

use crate::printed::Printed;
use crate::support::designs;
use quirefit::intake::{Unreadable, taken};
use quirefit::page::{Event, Patch, Session};
use quirefit::view::html::{READINGS, titles};
use quirefit::view::title_desk::{Desk, Order};
use quirefit::view::title_rows::Tally;
use quirefit::view::{Printer, REGIONS};
use std::collections::BTreeSet;

/// Shows a page everything: every region, every reading, every explanation, paper.
pub fn show_everything(session: &mut Session, printed: &mut Printed) {
    let mut asked = BTreeSet::new();
    let mut tell = |session: &mut Session, kind: &str, id: &str, value: &str| {
        for patch in session.handle(&Event::new(kind, id, value)) {
            match patch {
                Patch::Html { html, .. } => {
                    printed.take(&html);
                    let ids = html.split(" id=\"ask-").skip(1);
                    asked.extend(ids.map(|id| format!("ask-{}", id.split('"').next().unwrap())));
                }
                Patch::Announce { text } => printed.take(&text),
                _ => {}
            }
        }
        core::mem::take(&mut asked)
    };
    let mut figures = tell(session, "start", "", "");
    // The next book of this session stands beside it.
    figures.extend(tell(session, "act", "version-keep", ""));
    for region in &REGIONS {
        figures.extend(tell(session, "toggle", &format!("open-{}", region.id), "open"));
    }
    for (reading, _) in READINGS {
        figures.extend(tell(session, "act", "reading", reading));
        figures.extend(tell(session, "rest", "", ""));
        // Every figure of a table's first rows; those of the whole book are printed below, but not to
        // a client.
        let mut seen = BTreeSet::new();
        for id in &figures {
            let (name, row) = id["ask-".len()..].split_once('-').unwrap();
            let at: usize = row.split('-').next().unwrap().parse().unwrap();
            let rows = at > 0 || reading == "client";
            if rows && at <= 16 && seen.insert((name.to_owned(), at)) {
                tell(session, "act", "explain", id);
            }
        }
        tell(session, "act", "explain", "");
    }
    tell(session, "act", "print-card", "");
    tell(session, "act", "print-figures", "");
    tell(session, "print", "", "");
}

/// Texts for a book that stays whole, one after the other.
pub const WHOLE: &[(&str, &str)] = &[
    ("start", "8:30"),
    ("first_thickness", "3.1 mm"),
    ("first_push_out", "1.9 mm"),
    ("first_width", "147.5 mm"),
    ("first_width", "148.5 mm"),
    ("first_thickness", "9 mm"),
    ("head_foot", "after"),
    ("copies", "1"),
    ("pages", "1"),
    ("pages", "2 leaves"),
    ("pages", "4"),
    ("pages", "1 leaf"),
    ("press_sheet", "no such sheet"),
];

/// Texts that bring out every sort of echo, question and fault.
pub const TYPED: &[(&str, &str)] = &[
    ("phrase", "64 pages, A5, 100 pound text, 750 copies, tied with ribbon"),
    ("pages", "15"),
    ("pages", "60 + 4"),
    ("pages", "64 self cover"),
    ("pages", "60 +"),
    ("pages", "3000"),
    ("pages", "12.5"),
    ("pages", "x"),
    ("pages", "60 + 6"),
    ("pages", "60 + 2"),
    ("pages", "16 leaves"),
    ("size", "A5"),
    ("size", "A5 landscape"),
    ("size", "210 x 210"),
    ("size", "8.5 x 11"),
    ("size", "3 x 4 mm"),
    ("size", "large"),
    ("size", "170 x 240"),
    ("paper", "100# text"),
    ("paper", "80 lb"),
    ("paper", "100"),
    ("paper", "130 silk"),
    ("paper", "90 gsm 112 µm"),
    ("paper", "130"),
    ("paper", "130 gsm"),
    ("paper", "300 gsm board"),
    ("paper", "12 pt board"),
    ("paper", "pack of 20 leaves 2.1 mm"),
    ("paper", "pack of 0 leaves 2.1 mm"),
    ("paper", "80 gsm 0.4 mm"),
    ("paper", "90 gsm 100 gsm"),
    ("paper", "90 gsm 9 mm"),
    ("paper", "3 gsm silk"),
    ("paper", "77 lb text 300 gsm"),
    ("paper", "100 gsm vol 9"),
    ("paper", "80 gsm vol 15"),
    ("paper", "blue"),
    ("paper", "Pond Silk 130"),
    ("paper", "0.1 mm"),
    ("paper", "2000 lb text"),
    ("paper", "0 gsm silk"),
    ("paper", "20 lb bond"),
    ("cover", "250 silk"),
    ("copies", "0"),
    ("copies", "1"),
    ("copies", "12.5"),
    ("copies", "many"),
    ("copies", "1,200"),
    ("bleed", "3"),
    ("bleed", "60"),
    ("bleed", "wide"),
    ("safe", "0.2"),
    ("wrapper", "7 g"),
    ("wrapper", "9 kg"),
    ("wrapper", "heavy"),
    ("start", "8:30"),
    ("start", "25:00"),
    ("stitches", "2"),
    ("stitches", "13"),
    ("stitches", "two"),
    ("stitches", "2.5"),
    ("spine", "oval"),
    ("line", "nowhere"),
    ("line", ""),
    ("supplied_cover", "20"),
    ("supplied_inside", "10"),
    ("pages", "9999999999999999999999"),
];

/// What a person does beside typing: suggestions, sections, steps back and forward.
pub const DONE: &[(&str, &str, &str)] = &[
    ("tap", "size", ""),
    ("tap", "size", ""),
    ("tap", "paper", ""),
    ("tap", "paper", ""),
    ("input", "paper", "130 s"),
    ("rest", "", ""),
    ("act", "apply", "0"),
    ("act", "take-back", ""),
    ("input", "paper", "28 newsp"),
    ("rest", "", ""),
    ("act", "save-creep", ""),
    ("leave", "paper", ""),
    ("act", "save-xjdf", ""),
    ("act", "undo", ""),
    ("act", "redo", ""),
    ("act", "section-add", ""),
    ("input", "sections.0.paper", "90 gsm offset"),
    ("act", "section-add", ""),
    ("input", "sections.1.paper", "115 gloss"),
    ("act", "section-add", ""),
    ("input", "sections.2.paper", "115 silk"),
    ("input", "sections.2.pages", "6"),
    ("act", "section-out", "2"),
    ("act", "section-out", "1"),
    ("act", "section-out", "0"),
    ("act", "section-remove", "1"),
    ("drop", "section-0", "section-main"),
];

/// A long list with a column that nobody reads, and how far it is.
pub fn list_on_the_page(printer: &Printer, mut take: impl FnMut(&str)) {
    let row = |number: usize| format!("Title {number},{},A5,90 gsm,blue\n", 16 + number % 8 * 4);
    let text: String = (0..120).map(row).collect();
    let text = format!("title,pages,size,paper,colour\n{text}");
    let shop = quirefit::shop::demo();
    let mut desk = Desk::begin(text.as_bytes(), shop, "mm", printer).unwrap();
    desk.go_on(200, printer);
    take(&titles::table(&desk, Order::default(), 0, printer).into_string());
    for (rows, unread) in [(1, 1), (120, 30)] {
        let tally = Tally { rows, unread };
        let progress = titles::Progress { tally, stopped: true, ..titles::Progress::default() };
        take(&titles::told(&progress, printer).into_string());
    }
}

/// Designs of every sort, held against books with and without a cover apart.
pub fn designs_on_the_page(session: &mut Session, mut take: impl FnMut(&str)) {
    let mut told = Vec::new();
    let mut tell = |kind: &str, id: &str, value: &str| {
        for patch in session.handle(&Event::new(kind, id, value)) {
            match patch {
                Patch::Html { html, .. } => take(&html),
                Patch::Design { ask: "write", text, .. } => told.push(text),
                _ => {}
            }
        }
    };
    let opened = ("file", "a.pdf", "%PDF-1.7");
    for pages in ["40 + 4", "40"] {
        tell("input", "pages", pages);
        for facts in designs::telling() {
            tell(opened.0, opened.1, opened.2);
            tell("design", "facts", &designs::told(&facts));
            tell("act", "design-more", "");
        }
        tell("act", "design-pairs", "");
        tell("act", "design-proof", "");
        tell("design", "progress", "50");
        tell("design", "written", "a.pdf");
        tell("act", "design-close", "");
    }
    for why in [
        Unreadable::Empty,
        Unreadable::NoPdf,
        Unreadable::Password,
        Unreadable::Cipher,
        Unreadable::Broken,
    ] {
        tell(opened.0, opened.1, opened.2);
        tell("design", "facts", &designs::refused(why));
    }
    tell(opened.0, opened.1, opened.2);
    tell("design", "facts", &designs::refused(Unreadable::Password));
    tell("input", "design-password", "secret");
    tell("act", "design-unlock", "");
    tell("design", "facts", &designs::refused(Unreadable::Password));
    for text in told {
        let order: quirefit::intake::Order = taken(&text).unwrap();
        take(&order.title);
        take(&order.layer);
    }
}
