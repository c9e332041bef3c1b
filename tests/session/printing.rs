//! What of the page goes onto paper.

use crate::Page;
use quirefit::page::Patch;

/// Paper unfolds everything for whoever makes the book, and leaves a client what was looked at.
#[test]
fn paper_unfolds_what_a_maker_reads() {
    let mut page = Page::open(None);
    let turned = |page: &Page, opened: bool| {
        let turned = page.last.iter().filter_map(|patch| match patch {
            Patch::Attr { id, name: "open", value } => (value.is_some() == opened).then_some(id),
            _ => None,
        });
        turned.cloned().collect::<Vec<_>>()
    };
    page.tell("toggle", "open-cover", "open");
    page.tell("print", "", "");
    let unfolded = turned(&page, true);
    assert!(["open-inside", "limits-rest"].iter().all(|id| unfolded.iter().any(|on| on == id)));
    assert!(!unfolded.contains(&"open-cover".to_owned()), "it stands open already");
    assert!(page.words("body-inside").contains("Leaf, fold to cut"));
    page.tell("printed", "", "");
    assert_eq!(turned(&page, false), unfolded);
    page.act("reading", "client");
    page.tell("print", "", "");
    assert!(turned(&page, true).is_empty(), "a client has looked at the cover alone");
    assert!(page.words("body-cover").contains("Open width, trimmed"));
}
