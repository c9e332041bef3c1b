//! Page numbers on sheets, blanks, the smallest book: B1–B5, B11.

use crate::{job, planned};
use quirefit::book::{Folio, folios, spreads};
use quirefit::plan::{Verdict, Weight};
use quirefit::units::{Pages, Sheets};

/// The four numbers of every sheet, outermost first: outer side left, right; inner side left, right.
fn sheets(pages: &str) -> Vec<[u32; 4]> {
    let job = job(&[("pages", pages), ("size", "A5"), ("paper", "80 gsm copier")]);
    (1..=job.sheets().get())
        .map(|place| {
            folios(&job, place, job.sheets()).all().map(|folio| match folio {
                Folio::Page(page) => page,
                Folio::Cover(side) => panic!("a self cover has no side {side} of its own"),
            })
        })
        .collect()
}

/// The page printed beside another on the same side of its sheet.
fn partner(pages: &str, page: u32) -> u32 {
    sheets(pages)
        .iter()
        .flat_map(|[a, b, c, d]| [(*a, *b), (*b, *a), (*c, *d), (*d, *c)])
        .find(|(one, _)| *one == page)
        .unwrap()
        .1
}

/// B1: Vaughn, "Printing and Bookbinding for Schools" (1912): 4 pages, 4·1 outside, 2·3 inside. Exact.
#[test]
fn b1_four_pages() {
    assert_eq!(sheets("4 self cover"), [[4, 1, 2, 3]]);
}

/// B2: Cowie's Printer's Pocket-book, p. 31: 8 pages, 8·1 / 2·7 and 6·3 / 4·5. Exact.
#[test]
fn b2_eight_pages() {
    assert_eq!(sheets("8 self cover"), [[8, 1, 2, 7], [6, 3, 4, 5]]);
}

/// B3: Cowie's Printer's Pocket-book, p. 31: in 32 pages the partners of 1, 19, 12 are 32, 14, 21.
#[test]
fn b3_thirty_two_pages() {
    for (page, beside) in [(1, 32), (19, 14), (12, 21)] {
        assert_eq!(partner("32 self cover", page), beside);
        assert_eq!(partner("32 self cover", beside), page);
    }
}

/// B4: LinguaLinks 4.0 (SIL, 1999): 10 pages need 12, 2 of them blank, on 3 sheets. Exact.
#[test]
fn b4_ten_pages() {
    let plan = planned(&[("pages", "10"), ("size", "A5"), ("paper", "80 gsm copier")]);
    let blanks = plan.results.blanks;
    assert_eq!(blanks.made, Pages(12));
    assert_eq!(blanks.count(), Pages(2));
    assert_eq!(blanks.numbers().collect::<Vec<u32>>(), [11, 12]);
    assert_eq!(plan.results.leaves.len(), 3);
    assert_eq!(Pages(10).sheets(), Sheets(3));
}

/// B5: a university's style guide, appendix J (New Paltz): 20 pages self cover are 16 and a cover of
/// 4, 5 sheets. Exact.
#[test]
fn b5_twenty_pages_two_ways() {
    let sheets =
        |pages| job(&[("pages", pages), ("size", "A5"), ("paper", "80 gsm copier")]).sheets();
    assert_eq!(sheets("20 self cover"), Sheets(5));
    assert_eq!(sheets("16 + 4"), Sheets(5));
}

/// B11: the smallest stitched book has 8 pages, 2 folded sheets. Common practice, no source.
#[test]
fn b11_the_smallest_book() {
    let refused = |pages| {
        let plan = planned(&[("pages", pages), ("size", "A5"), ("paper", "80 gsm copier")]);
        let found = plan
            .findings
            .iter()
            .any(|it| it.rule == "too_few_sheets" && it.weight == Weight::DoesNotFit);
        (found, plan.verdict)
    };
    assert_eq!(refused("4"), (true, Verdict::DoesNotFit));
    assert!(!refused("8").0);
}

/// Which sheets the two pages of a spread come from, read off the schemes of B1–B3: the sheet that
/// carries each number. Only the pair at the centre lies on one sheet. Derived, exact.
#[test]
fn spreads_come_from_the_sheets_that_carry_them() {
    for (pages, total, cover) in
        [("8 self cover", 8, 0), ("32 self cover", 32, 0), ("28 + 4", 28, 1)]
    {
        let job = job(&[("pages", pages), ("size", "A5"), ("paper", "80 gsm copier")]);
        let place = |page: u32| {
            (1..=job.sheets().get())
                .find(|place| folios(&job, *place, job.sheets()).all().contains(&Folio::Page(page)))
                .unwrap()
        };
        let mut seen = 0;
        for (pair, spread) in (1..).zip(spreads(&job)) {
            assert_eq!((spread.left, spread.right), (2 * pair, 2 * pair + 1), "{pages}");
            assert_eq!(spread.left_sheet, place(spread.left), "{pages}, {}", spread.left);
            assert_eq!(spread.right_sheet, place(spread.right), "{pages}, {}", spread.right);
            let centre = spread.left == total / 2;
            assert_eq!(spread.left_sheet == spread.right_sheet, centre, "{pages}, {}", spread.left);
            seen += 1;
        }
        assert_eq!(seen, total / 2 - 1, "{pages}");
        assert_eq!(place(1), 1 + cover, "{pages}");
    }
}
