//! Files that are opened and saved.

use crate::Page;
use crate::support::{self, JSON, files, text_of};
use quirefit::draft::from_tree;
use quirefit::job::SCHEMA;
use quirefit::shop;

/// Letters that are not UTF-8 come as the mark that stands for them: such a file would not be saved again
/// as it was, so it is refused.
#[test]
fn a_file_that_is_not_utf8_is_refused() {
    let mut page = Page::open(None);
    let before = page.session.draft().clone();
    let text = text_of("examples/jobs/teapot-guide.json").replacen("Guide", "Gu\u{fffd}de", 1);
    page.tell("file", "latin.json", &text);
    assert!(page.shown("file-note").contains("UTF-8"), "{}", page.shown("file-note"));
    assert_eq!(*page.session.draft(), before);
}

/// Every fault in a file leaves the form as it was.
#[test]
fn a_file_that_cannot_be_opened_changes_nothing_that_was_typed() {
    for path in files("examples/failing") {
        let mut page = Page::open(None);
        page.input("title", "The Patient Snail");
        page.input("pages", "60 +");
        let before = page.draft();
        page.tell("file", &path, &text_of(&path));
        let note = page.words("file-note");
        if page.draft() != before {
            // A job whose texts have faults opens all the same: each fault stands beside its field.
            assert!(note.contains("The job is open"), "{path}: {note}");
            page.act("undo", "");
        } else {
            assert!(note.contains("was not opened"), "{path}: {note}");
            assert!(!page.shown("file-note").contains("<li></li>"), "{path}");
        }
        assert_eq!(page.draft(), before, "{path}");
        // And none of it is lost on the way to the next visit.
        let next = page.again();
        assert!(next.shown("restore").contains("restore-yes"), "{path}");
    }
}

/// Byte for byte, whatever it looks like; once something is changed, as this page writes it.
#[test]
fn a_file_is_saved_as_it_was_opened() {
    let job = "\u{feff}{ \"version\":1,\r\n\t\"pages\":\"32\", \"size\" : \"A5\", \"copies\": \"90\",\
        \"paper\":\"90 gsm\", \"format\":\"quirefit-job\"}\n\n";
    let mut page = Page::open(None);
    let last = |page: &Page| page.saved_files.last().unwrap().1.clone();
    page.tell("file", "mine.txt", job);
    assert!(page.words("file-note").contains("The job is open"), "{}", page.words("file-note"));
    page.act("save-job", "");
    assert_eq!(last(&page), job);
    page.input("copies", "91");
    page.act("save-job", "");
    assert!(last(&page) != job && last(&page).contains("91"));
    page.act("undo", "");
    page.act("save-job", "");
    assert_eq!(last(&page), job);
    for path in files("examples/shops") {
        let shop = text_of(&path).replace('\n', "\r\n");
        page.tell("file", &path, &shop);
        page.act("save-shop", "");
        assert_eq!(last(&page), shop, "{path}");
    }
}

#[test]
fn every_job_and_every_shop_opens() {
    for path in files("examples/jobs").iter().chain(&files("examples/rules")) {
        let mut page = Page::open(None);
        page.tell("file", path, &text_of(path));
        assert!(page.words("file-note").contains("The job is open"), "{path}");
        let opened = support::draft(path, &SCHEMA).unwrap();
        assert_eq!(page.draft(), opened, "{path}");
        page.act("save-job", "");
        let (name, saved) = page.saved_files.last().unwrap();
        assert!(name.ends_with(".quirefit-job.json"), "{name}");
        let back = from_tree(&(JSON.parse)(saved).unwrap(), &SCHEMA).unwrap();
        assert_eq!(back, opened, "{path}: saved as it was opened");
    }
    for path in files("examples/shops") {
        let mut page = Page::open(None);
        page.input("line", "Light desk-side line");
        let before = page.draft();
        page.tell("file", &path, &text_of(&path));
        assert!(page.words("file-note").contains("The shop is open"), "{path}");
        let shop = support::shop_of(&path);
        assert!(page.words("shop").contains(&shop.name), "{path}");
        assert!(page.shown("input-line").contains(&*shop.lines[0].name), "{path}");
        // The line that was chosen is not in this shop; nothing chosen is lost for good.
        assert_eq!(page.draft().get("line"), "");
        page.act("undo", "");
        assert_eq!(page.draft(), before, "{path}");
        page.act("save-shop", "");
        let (_, saved) = page.saved_files.last().unwrap();
        let back = from_tree(&(JSON.parse)(saved).unwrap(), &shop::SCHEMA).unwrap();
        assert_eq!(back, support::draft(&path, &shop::SCHEMA).unwrap(), "{path}: as it was opened");
        // The shop is there again next time.
        let next = page.again();
        assert!(next.words("shop").contains(&shop.name), "{path}");
    }
}
