//! Where file and plan differ.

use crate::reading::facts;
use crate::support::made::{Made, bare, whole};
use quirefit::draft::Draft;
use quirefit::intake::{Assumed, Binding, Delivery, Edge, Found, Part, Sort, compare};
use quirefit::units::{Mm, Pages, Size};
use quirefit::{job, plan, shop};

/// Findings for a job of A5, 16 pages of 100 g/m² with 3 mm of bleed, and what else is said.
fn found(fields: &[(&str, &str)], inside: &[Made], cover: Option<&[Made]>) -> Vec<Found> {
    let usual = [("pages", "16"), ("size", "A5"), ("paper", "100 gsm offset"), ("copies", "500")];
    let mut draft = Draft::of(&usual);
    for (path, text) in fields {
        draft.set(path, text);
    }
    let shop = shop::demo();
    let reading = job::read(&draft, &shop);
    let job = reading.job.as_ref().unwrap_or_else(|| panic!("{:?}", reading.errors(&draft)));
    let (inside, cover) = (facts(inside), cover.map(facts));
    let delivery = Delivery { inside: &inside, cover: cover.as_ref() };
    let binding = if draft.get("bound_edge") == "top" { Binding::Top } else { Binding::Left };
    compare(&delivery, job, &plan::plan(job, &shop), binding)
}

fn a5() -> Made {
    whole(148.0, 210.0, 3.0)
}

#[test]
fn a_file_as_it_should_be_has_no_findings() {
    assert_eq!(found(&[], &[a5(); 16], None), []);
    let turned = Made { rotate: 90, ..whole(210.0, 148.0, 3.0) };
    assert_eq!(found(&[], &[turned; 16], None), [], "turned by the file, seen upright");
    let within = whole(148.8, 209.3, 3.0);
    assert_eq!(found(&[], &[within; 16], None), [], "within a millimetre");
}

#[test]
fn pages_are_counted_and_the_cover_is_looked_for() {
    let count = |part, came, wanted| Found::Count(part, Pages(came), Pages(wanted));
    let short = [count(Part::Inside, 14, 16), Found::Blanks(15, 16)];
    assert_eq!(found(&[], &[a5(); 14], None), short);
    assert_eq!(found(&[], &[a5(); 20], None), [count(Part::Inside, 20, 16)]);
    let cover = [("cover", "250 gsm silk"), ("pages", "16 + 4")];
    assert_eq!(found(&cover, &[a5(); 20], None), [Found::CoverWithin]);
    assert_eq!(found(&cover, &[a5(); 16], None), [Found::CoverMissing]);
    assert_eq!(found(&cover, &[a5(); 16], Some(&[a5(); 4])), []);
    assert_eq!(found(&cover, &[a5(); 16], Some(&[a5(); 2])), [], "only its outside");
    assert_eq!(found(&cover, &[a5(); 16], Some(&[a5(); 3])), [count(Part::Cover, 3, 4)]);
    assert_eq!(found(&[], &[a5(); 12], Some(&[a5(); 4])), [Found::CoverUnasked]);
}

/// Findings as expected, sizes to a hundredth of a millimetre.
#[track_caller]
fn near(found: Vec<Found>, wanted: &[Found]) {
    assert_eq!(found.len(), wanted.len(), "{found:?}");
    for (found, wanted) in found.iter().zip(wanted) {
        match (found, wanted) {
            (Found::Sized(p, s, a, r), Found::Sized(q, t, b, u)) => {
                assert_eq!((p, s, r), (q, t, u));
                assert!((a.width - b.width).get().abs() < 0.01, "{a:?} {b:?}");
                assert!((a.height - b.height).get().abs() < 0.01, "{a:?} {b:?}");
            }
            (found, wanted) => assert_eq!(found, wanted),
        }
    }
}

#[test]
fn sizes_turns_spreads_and_halves_are_told_apart() {
    let spread = whole(296.0, 210.0, 3.0);
    let sized = |sort, width, height, ranges: &[_]| {
        let size = Size::new(Mm(width), Mm(height));
        Found::Sized(Part::Inside, sort, size, ranges.to_vec())
    };
    near(found(&[], &[spread; 8], None), &[sized(Sort::Spread, 296.0, 210.0, &[(1, 8)])]);
    // First and last page alone, spreads between them: what a reader sees.
    let as_read = [&[a5()][..], &[spread; 7], &[a5()]].concat();
    near(
        found(&[], &as_read, None),
        &[Found::Mixed(Part::Inside, 2), sized(Sort::Spread, 296.0, 210.0, &[(2, 8)])],
    );
    near(
        found(&[("size", "A4 landscape")], &[bare(148.5, 210.0); 16], None),
        &[
            sized(Sort::Half, 148.5, 210.0, &[(1, 16)]),
            Found::Taken(Part::Inside, Assumed::Page, vec![(1, 16)]),
        ],
    );
    let lying = whole(210.0, 148.0, 3.0);
    near(found(&[], &[lying; 16], None), &[sized(Sort::Turned, 210.0, 148.0, &[(1, 16)])]);
    let mut other = [a5(); 16];
    for page in [2, 3, 9] {
        other[page] = whole(140.0, 216.0, 3.0);
    }
    near(
        found(&[], &other, None),
        &[Found::Mixed(Part::Inside, 2), sized(Sort::Other, 140.0, 216.0, &[(3, 4), (10, 10)])],
    );
    // A cover laid flat is two pages.
    let cover = [("cover", "250 gsm silk"), ("pages", "16 + 4")];
    let flat = found(&cover, &[a5(); 16], Some(&[spread; 2]));
    assert!(matches!(&flat[..], [Found::Sized(Part::Cover, Sort::Spread, ..)]), "{flat:?}");
}

#[test]
fn bleed_is_asked_for_where_the_book_is_cut() {
    let taken = |assumed| Found::Taken(Part::Inside, assumed, vec![(1, 16)]);
    let open = vec![Edge::Head, Edge::Foot, Edge::Face];
    assert_eq!(
        found(&[], &[bare(148.0, 210.0); 16], None),
        [taken(Assumed::Page), Found::NoBleed(Part::Inside, open.clone(), vec![(1, 16)])]
    );
    let unbled = found(&[("bleeds", "no")], &[bare(148.0, 210.0); 16], None);
    assert_eq!(unbled, [taken(Assumed::Page)]);
    assert_eq!(found(&[], &[bare(154.0, 216.0); 16], None), [taken(Assumed::Bled)]);

    // Nothing beyond the left edge: there the odd pages are bound and the even ones are cut.
    let around = Some([0.0, 0.0, 151.0, 216.0]);
    let trim = Some([0.0, 3.0, 148.0, 213.0]);
    let left = Made { boxes: [around, None, trim, around], ..Made::default() };
    let even: Vec<_> = (1..=8).map(|pair| (2 * pair, 2 * pair)).collect();
    let face = Found::NoBleed(Part::Inside, vec![Edge::Face], even);
    assert_eq!(found(&[], &[left; 16], None), [face]);

    match &found(&[], &[whole(148.0, 210.0, 2.0); 16], None)[..] {
        [Found::ShortBleed(Part::Inside, edges, least, wanted, ranges)] => {
            assert_eq!((edges, &ranges[..]), (&open, &[(1, 16)][..]));
            assert!((least.get() - 2.0).abs() < 0.01 && wanted.get() == 3.0);
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_file_without_boxes_gives_no_size() {
    let nothing = [Made::default(); 16];
    assert!(facts(&nothing).pages.iter().all(|page| page.media.is_none()));
    let taken = Found::Taken(Part::Inside, Assumed::Nothing, vec![(1, 16)]);
    assert_eq!(found(&[], &nothing, None), [taken]);
}

#[test]
fn a_book_bound_at_the_top_is_cut_at_its_sides() {
    let top = [("bound_edge", "top"), ("size", "A5 landscape")];
    assert_eq!(found(&top, &[whole(210.0, 148.0, 3.0); 16], None), []);
    // Nothing beyond the upper edge: there the odd pages are bound and the even ones are cut.
    let around = Some([0.0, 0.0, 216.0, 151.0]);
    let trim = Some([3.0, 3.0, 213.0, 151.0]);
    let upper = Made { boxes: [around, None, trim, around], ..Made::default() };
    let even: Vec<_> = (1..=8).map(|pair| (2 * pair, 2 * pair)).collect();
    let face = Found::NoBleed(Part::Inside, vec![Edge::Face], even);
    assert_eq!(found(&top, &[upper; 16], None), [face]);
}
