//! A buyer's own PDF: what is read of it is what poppler reads, in every form that qpdf writes; whatever
//! is broken is told and never stops; and where file and plan differ, each difference is named once.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use pdf_writer::{Finish, Pdf, Rect, Ref};
use quirefit::draft::Draft;
use quirefit::intake::{
    Assumed, Binding, Damage, Delivery, Edge, Facts, Found, Frame, PageFacts, Part, Sort,
    Unreadable, compare, read,
};
use quirefit::units::{Mm, Pages, Size};
use quirefit::{job, plan, shop};
use std::fs;
use std::path::PathBuf;
use support::ran;

const POINT: f64 = 72.0 / 25.4;

/// A page to be made: media, crop, trim and bleed box in millimetres, turned by degrees.
#[derive(Clone, Copy, Default)]
struct Made {
    boxes: [Option<[f64; 4]>; 4],
    rotate: i32,
    unit: Option<f32>,
    empty: bool,
}

/// A page of this finished size with so much bleed all round, and every box.
fn whole(width: f64, height: f64, bleed: f64) -> Made {
    let slug = bleed + 10.0;
    let around = |more: f64| {
        let low = slug - more;
        Some([low, low, slug + width + more, slug + height + more])
    };
    let media = Some([0.0, 0.0, width + 2.0 * slug, height + 2.0 * slug]);
    Made { boxes: [media, None, around(0.0), around(bleed)], ..Made::default() }
}

/// A page of this size that says nothing else.
fn bare(width: f64, height: f64) -> Made {
    Made { boxes: [Some([0.0, 0.0, width, height]), None, None, None], ..Made::default() }
}

fn written(pages: &[Made]) -> Vec<u8> {
    let mut pdf = Pdf::new();
    let (catalog, tree) = (Ref::new(1), Ref::new(2));
    pdf.catalog(catalog).pages(tree);
    let id = |at: usize| Ref::new(3 + 2 * i32::try_from(at).unwrap());
    pdf.pages(tree).kids((0..pages.len()).map(id)).count(i32::try_from(pages.len()).unwrap());
    for (at, made) in pages.iter().enumerate() {
        let content = Ref::new(id(at).get() + 1);
        let mut page = pdf.page(id(at));
        let rect = |sides: [f64; 4]| {
            let [left, bottom, right, top] = sides.map(|side| (side * POINT) as f32);
            Rect::new(left, bottom, right, top)
        };
        let [media, crop, trim, bleed] = made.boxes.map(|sides| sides.map(rect));
        if let Some(media) = media {
            page.media_box(media);
        }
        if let Some(crop) = crop {
            page.crop_box(crop);
        }
        if let Some(trim) = trim {
            page.trim_box(trim);
        }
        if let Some(bleed) = bleed {
            page.bleed_box(bleed);
        }
        if made.rotate != 0 {
            page.rotate(made.rotate);
        }
        if let Some(unit) = made.unit {
            page.user_unit(unit);
        }
        page.parent(tree).contents(content).resources();
        page.finish();
        pdf.stream(content, if made.empty { b" \n " } else { b"0 0 m 9 9 l S" });
    }
    pdf.finish()
}

fn scratch(name: &str) -> PathBuf {
    let folder = support::root().join("target/intake");
    fs::create_dir_all(&folder).unwrap();
    folder.join(name)
}

/// A file as qpdf writes it anew with these arguments.
fn rewritten(name: &str, bytes: &[u8], arguments: &[&str]) -> Vec<u8> {
    let (from, to) = (scratch(&format!("{name}.from.pdf")), scratch(&format!("{name}.pdf")));
    fs::write(&from, bytes).unwrap();
    let (from, to) = (from.to_str().unwrap(), to.to_str().unwrap());
    ran("qpdf", &[&[from], arguments, &[to]].concat());
    fs::read(to).unwrap()
}

/// Boxes and turn of every page as poppler reads them: media, crop, bleed, trim in points, as they stand
/// in the file before any turn, with the standard's defaults where there is none.
fn by_poppler(name: &str, bytes: &[u8], password: &str) -> Vec<([[f64; 4]; 4], i32)> {
    let path = scratch(&format!("{name}.poppler.pdf"));
    fs::write(&path, bytes).unwrap();
    let arguments = ["-box", "-f", "1", "-l", "9999", "-upw", password, path.to_str().unwrap()];
    let text = String::from_utf8(ran("pdfinfo", &arguments)).unwrap();
    let mut pages: Vec<([[f64; 4]; 4], i32)> = Vec::new();
    for line in text.lines().filter(|line| line.starts_with("Page ")) {
        let words: Vec<&str> = line.split_whitespace().collect();
        let at: usize = words[1].parse().unwrap();
        pages.resize(pages.len().max(at), Default::default());
        let page = &mut pages[at - 1];
        let which = ["MediaBox:", "CropBox:", "BleedBox:", "TrimBox:"];
        if words[2] == "rot:" {
            page.1 = words[3].parse().unwrap();
        } else if let Some(which) = which.iter().position(|name| *name == words[2]) {
            page.0[which] = core::array::from_fn(|side| words[3 + side].parse().unwrap());
        }
    }
    pages
}

/// What was read, in poppler's terms.
fn in_its_terms(page: &PageFacts) -> ([[f64; 4]; 4], i32) {
    let media = page.media.unwrap();
    let crop = page.crop.unwrap_or(media);
    let boxes = [media, crop, page.bleed.unwrap_or(crop), page.trim.unwrap_or(crop)];
    let back = |frame: Frame| {
        let frame = frame.turned(4 - page.turned);
        [frame.left, frame.bottom, frame.right, frame.top].map(|side| side * POINT)
    };
    (boxes.map(back), i32::from(page.turned) * 90)
}

#[track_caller]
fn as_poppler_reads(name: &str, bytes: &[u8], password: &str) -> Facts {
    let facts = read(bytes.to_vec(), password).unwrap();
    let told = by_poppler(name, bytes, password);
    assert_eq!(facts.pages.len(), told.len(), "{name}");
    for (at, (page, told)) in facts.pages.iter().zip(told).enumerate() {
        let ours = in_its_terms(page);
        assert_eq!(ours.1, told.1, "{name}, page {}: turned", at + 1);
        for (our, its) in ours.0.as_flattened().iter().zip(told.0.as_flattened()) {
            // It prints hundredths of a point; ten-thousandths of a millimetre are read.
            assert!((our - its).abs() <= 0.0053, "{name}, page {}: {ours:?}, {told:?}", at + 1);
        }
    }
    facts
}

/// A mixed file: every box, some, turned, moved away from the origin.
fn mixed() -> Vec<u8> {
    let moved = |rotate| Made {
        boxes: [
            Some([-20.0, 5.0, 160.0, 240.0]),
            Some([-15.0, 10.0, 155.0, 235.0]),
            Some([-8.0, 18.0, 140.0, 228.0]),
            Some([-11.0, 15.0, 143.0, 231.0]),
        ],
        rotate,
        ..Made::default()
    };
    let upright = [whole(148.0, 210.0, 3.0), bare(210.0, 297.0)];
    written(&[&upright[..], &[0, 90, 180, 270].map(moved)].concat())
}

#[test]
fn boxes_and_turns_are_what_poppler_reads_in_every_form_of_file() {
    let plain = mixed();
    let expected = as_poppler_reads("plain", &plain, "");
    assert_eq!((expected.encrypted, &*expected.damage), (false, &[][..]));
    let turns = |facts: &Facts| facts.pages.iter().map(|page| page.turned).collect::<Vec<_>>();
    assert_eq!(turns(&expected), [0, 0, 0, 1, 2, 3]);
    let forms: [(&str, &[&str], &str, bool); 8] = [
        ("streams", &["--object-streams=generate"], "", false),
        ("linear", &["--linearize"], "", false),
        ("linear-streams", &["--linearize", "--object-streams=generate"], "", false),
        ("old", &["--object-streams=disable", "--stream-data=uncompress"], "", false),
        ("aes-open", &["--encrypt", "", "owner", "256", "--"], "", true),
        ("aes", &["--encrypt", "secret", "owner", "256", "--"], "secret", true),
        ("aes-128", &["--encrypt", "", "owner", "128", "--use-aes=y", "--"], "", true),
        (
            "rc4",
            &["--allow-weak-crypto", "--encrypt", "secret", "owner", "40", "--"],
            "secret",
            true,
        ),
    ];
    for (name, arguments, password, encrypted) in forms {
        let bytes = rewritten(name, &plain, arguments);
        let facts = as_poppler_reads(name, &bytes, password);
        assert_eq!(facts.pages, expected.pages, "{name}");
        assert_eq!((facts.encrypted, &*facts.damage), (encrypted, &[][..]), "{name}");
        assert_eq!(facts.bytes, bytes.len() as u64, "{name}");
        if !password.is_empty() {
            assert_eq!(read(bytes.clone(), ""), Err(Unreadable::Password), "{name}");
            assert_eq!(read(bytes, "wrong"), Err(Unreadable::Password), "{name}");
        }
    }
    let turned = rewritten("rotated", &plain, &["--rotate=+90"]);
    assert_eq!(turns(&as_poppler_reads("rotated", &turned, "")), [1, 1, 1, 2, 3, 0]);
}

#[test]
fn what_is_no_pdf_or_is_broken_is_told() {
    assert_eq!(read(Vec::new(), ""), Err(Unreadable::Empty));
    assert_eq!(read(b"title,pages\nAtlas,32\n".to_vec(), ""), Err(Unreadable::NoPdf));
    assert_eq!(read(vec![0x89; 5000], ""), Err(Unreadable::NoPdf));
    assert_eq!(read(b"%PDF-1.7\n%%EOF\n".to_vec(), ""), Err(Unreadable::Broken));

    let plain = mixed();
    let expected = read(plain.clone(), "").unwrap();
    let text = String::from_utf8_lossy(&plain).into_owned();

    let junk = [b"From: a mail program\r\n\r\n", &plain[..]].concat();
    let facts = read(junk, "").unwrap();
    assert_eq!(facts.pages, expected.pages);
    assert!(facts.damage.contains(&Damage::Before(24)), "{:?}", facts.damage);

    let place =
        |wanted: &[u8]| plain.windows(wanted.len()).rposition(|there| there == wanted).unwrap();
    let wrong = [&plain[..place(b"startxref")], b"startxref\n77\n%%EOF\n"].concat();
    let facts = read(wrong, "").unwrap();
    assert_eq!((facts.pages, facts.damage), (expected.pages.clone(), vec![Damage::Index]));

    assert!(text.contains("xref\n0"));
    let facts = read(plain[..place(b"xref\n0")].to_vec(), "").unwrap();
    assert_eq!((facts.pages, facts.damage), (expected.pages, vec![Damage::NoEnd]));

    let mut wrong = plain.clone();
    wrong[place(b"/Count 6") + 7] = b'9';
    let facts = read(wrong, "").unwrap();
    assert_eq!(facts.damage, [Damage::Pages { said: 9, found: 6 }]);
}

/// Cut off anywhere, or with any one byte changed, a file is read or refused: it never stops the reader.
#[test]
fn no_damage_stops_the_reader() {
    const STEP: usize = 7;
    for plain in [mixed(), rewritten("harmed", &mixed(), &["--object-streams=generate"])] {
        for end in (0..plain.len()).step_by(STEP) {
            let _ = read(plain[..end].to_vec(), "");
        }
        for at in (0..plain.len()).step_by(STEP) {
            for byte in [0, b'9', b'<', 0xff] {
                let mut harmed = plain.clone();
                harmed[at] = byte;
                let _ = read(harmed, "");
            }
        }
    }
}

#[test]
fn a_unit_of_its_own_makes_the_page_larger() {
    let page = Made { unit: Some(2.0), ..bare(100.0, 150.0) };
    let media = facts(&[page]).pages[0].media.unwrap();
    assert!((media.width() - 200.0).abs() < 1e-3 && (media.height() - 300.0).abs() < 1e-3);
}

#[test]
fn a_page_without_anything_on_it_is_known_and_600_pages_are_read() {
    let page = |at: usize| Made { empty: at % 3 == 0, ..whole(148.0, 210.0, 3.0) };
    let pages: Vec<Made> = (0..600).map(page).collect();
    for form in ["--object-streams=disable", "--object-streams=generate"] {
        let bytes = rewritten(&format!("many{form}"), &written(&pages), &[form]);
        let facts = as_poppler_reads("many", &bytes, "");
        assert_eq!(facts.pages.len(), 600);
        for (at, page) in facts.pages.iter().enumerate() {
            assert_eq!(page.empty, at % 3 == 0, "page {}", at + 1);
        }
    }
}

fn facts(pages: &[Made]) -> Facts {
    read(written(pages), "").unwrap()
}

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

/// Facts go from the reader's module to the page as text and come back the same.
#[test]
fn facts_pass_as_json() {
    let facts = read(mixed(), "").unwrap();
    let text = serde_json::to_string(&facts).unwrap();
    assert_eq!(serde_json::from_str::<Facts>(&text).unwrap(), facts);
}
