//! What is written is sound, whatever the file it came from is made of: nothing of a page is lost but notes,
//! and nothing comes along that was hidden or belongs to other pages.

use crate::drawn::draw;
use crate::laid::{a5, kept};
use crate::reading::rewritten;
use crate::support::made::{Made, POINT, colour, written};
use crate::support::ran;
use pdf_writer::{Chunk, Filter, Finish, Name, Pdf, Rect, Ref, Str, TextStr};
use quirefit::intake::{Desk, Frame, Matrix, Order, OrderPage, Part, Placed};

/// Every page of a file by itself, 154 mm by 216 mm of it from its corner.
fn anew(bytes: &[u8], password: &str) -> Vec<u8> {
    let mut desk = Desk::default();
    let facts = desk.arrive(bytes.to_vec(), password).unwrap();
    desk.place(Part::Inside);
    let (width, height) = (154.0, 216.0);
    let page = |(page, facts): (u32, &quirefit::intake::PageFacts)| {
        let frame = facts.bleed.or(facts.media).unwrap();
        let matrix = Matrix::shift(-frame.left, -frame.bottom);
        let clip = Frame { left: 0.0, bottom: 0.0, right: width, top: height };
        let placed = vec![Placed { part: Part::Inside, page, matrix, clip }];
        OrderPage { size: (width, height), turned: 0, placed, marks: b"0 0 1 1 re f".to_vec() }
    };
    desk.begin(Order {
        title: "Ünder (the) \\ moon".to_owned(),
        language: "en".to_owned(),
        layer: "Marks".to_owned(),
        pages: (0..).zip(&facts.pages).map(page).collect(),
    });
    while let (made, all) = desk.go_on()
        && made < all
    {}
    desk.written()
}

/// A file that qpdf has nothing to say against.
fn sound(name: &str, bytes: &[u8]) -> String {
    let path = kept(name, bytes);
    let said = String::from_utf8(ran("qpdf", &["--check", &path])).unwrap();
    assert!(!said.contains("WARNING"), "{name}: {said}");
    path
}

#[test]
fn every_form_of_file_is_written_soundly() {
    let plain = written(&[a5(6), vec![Made { rotate: 90, ..a5(1)[0] }]].concat());
    let forms: [(&str, &[&str], &str); 8] = [
        ("plain", &["--stream-data=preserve"], ""),
        ("streams", &["--object-streams=generate"], ""),
        ("linear", &["--linearize"], ""),
        ("packed", &["--stream-data=compress", "--recompress-flate"], ""),
        ("aes-open", &["--encrypt", "", "owner", "256", "--"], ""),
        ("aes", &["--encrypt", "secret", "owner", "256", "--"], "secret"),
        ("aes-128", &["--encrypt", "", "owner", "128", "--use-aes=y", "--"], ""),
        ("rc4", &["--allow-weak-crypto", "--encrypt", "secret", "owner", "40", "--"], "secret"),
    ];
    for (name, arguments, password) in forms {
        let bytes = rewritten(&format!("written-{name}"), &plain, arguments);
        let made = anew(&bytes, password);
        sound(&format!("written-{name}"), &made);
        for page in [1, 4] {
            let there = draw(name, &made, page, 72).at(140.0, 10.0);
            assert_eq!(there, colour(page - 1, false), "{name}: page {page}");
        }
    }
}

/// One page, with what `resources` and `catalog` add to it, drawn by these streams.
fn special(
    streams: &[&[u8]],
    add: impl Fn(&mut Chunk),
    resources: impl Fn(&mut pdf_writer::writers::Resources<'_>),
    catalog: impl Fn(&mut pdf_writer::Dict<'_>),
    page: impl Fn(&mut pdf_writer::Dict<'_>),
) -> Vec<u8> {
    let mut pdf = Pdf::new();
    let mut whole = pdf.catalog(Ref::new(1));
    whole.pages(Ref::new(2));
    catalog(&mut whole);
    whole.finish();
    pdf.pages(Ref::new(2)).kids([Ref::new(3), Ref::new(4)]).count(2);
    let (wide, high) = ((154.0 * POINT) as f32, (216.0 * POINT) as f32);
    let mut first = pdf.page(Ref::new(3));
    first.parent(Ref::new(2)).media_box(Rect::new(0.0, 0.0, wide, high));
    first.contents_array((0..streams.len()).map(|at| Ref::new(10 + at as i32)));
    resources(&mut first.resources());
    page(&mut first);
    first.finish();
    // Another page, with a text that must not come along.
    let mut other = pdf.page(Ref::new(4));
    other.parent(Ref::new(2)).media_box(Rect::new(0.0, 0.0, wide, high)).contents(Ref::new(5));
    other.pair(Name(b"Secret"), Str(b"of another page"));
    other.finish();
    pdf.stream(Ref::new(5), b"% of another page");
    for (at, stream) in streams.iter().enumerate() {
        pdf.stream(Ref::new(10 + at as i32), stream);
    }
    add(&mut pdf);
    pdf.finish()
}

/// The first page of a file alone.
fn first(bytes: &[u8]) -> Vec<u8> {
    let mut desk = Desk::default();
    desk.arrive(bytes.to_vec(), "").unwrap();
    desk.place(Part::Inside);
    let clip = Frame { left: 0.0, bottom: 0.0, right: 154.0, top: 216.0 };
    let placed = Placed { part: Part::Inside, page: 0, matrix: Matrix::shift(0.0, 0.0), clip };
    let page =
        OrderPage { size: (154.0, 216.0), turned: 0, placed: vec![placed], marks: Vec::new() };
    let words = [String::new(), String::new(), String::new()];
    let [title, language, layer] = words;
    desk.begin(Order { title, language, layer, pages: vec![page] });
    desk.go_on();
    desk.written()
}

const ALL: &[u8] = b"0 0 437 613 re f ";
const RED: [u8; 3] = [255, 0, 0];
const WHITE: [u8; 3] = [255; 3];

#[test]
fn content_in_pieces_and_forms_within_forms_are_drawn() {
    let streams: [&[u8]; 3] = [b"q 1 0 0", b"rg", b"/X Do Q"];
    let bytes = special(
        &streams,
        |pdf| {
            let mut form = pdf.form_xobject(Ref::new(20), ALL);
            form.bbox(Rect::new(0.0, 0.0, 437.0, 613.0));
        },
        |resources| {
            resources.x_objects().pair(Name(b"X"), Ref::new(20));
        },
        |_| {},
        |_| {},
    );
    let made = first(&bytes);
    sound("pieces", &made);
    assert_eq!(draw("pieces", &made, 1, 72).at(50.0, 50.0), RED);
}

/// A layer that the file hides stays hidden; one that it shows is shown.
#[test]
fn layers_stay_hidden_or_shown() {
    let layered = |hidden: bool| {
        let streams: [&[u8]; 1] = [b"1 0 0 rg /OC /L BDC 0 0 437 613 re f EMC"];
        special(
            &streams,
            |pdf| {
                let mut layer = pdf.indirect(Ref::new(20)).dict();
                layer.pair(Name(b"Type"), Name(b"OCG")).pair(Name(b"Name"), TextStr("Notes"));
            },
            |resources| {
                resources.insert(Name(b"Properties")).dict().pair(Name(b"L"), Ref::new(20));
            },
            |catalog| {
                let mut all = catalog.insert(Name(b"OCProperties")).dict();
                all.insert(Name(b"OCGs")).array().item(Ref::new(20));
                let mut shown = all.insert(Name(b"D")).dict();
                if hidden {
                    shown.insert(Name(b"OFF")).array().item(Ref::new(20));
                }
            },
            |_| {},
        )
    };
    for (hidden, wanted) in [(true, WHITE), (false, RED)] {
        let bytes = layered(hidden);
        assert_eq!(draw("layer-before", &bytes, 1, 72).at(50.0, 50.0), wanted);
        let made = first(&bytes);
        sound("layer", &made);
        assert_eq!(draw("layer", &made, 1, 72).at(50.0, 50.0), wanted, "hidden: {hidden}");
    }
}

/// What refers to pages does not bring them along; what refers to nothing, or is too deep, breaks nothing.
#[test]
fn nothing_of_other_pages_comes_along() {
    let bytes = special(
        &[b"1 0 0 rg 0 0 437 613 re f"],
        |pdf| {
            let mut dict = pdf.indirect(Ref::new(20)).dict();
            dict.pair(Name(b"Type"), Name(b"ExtGState")).pair(Name(b"Odd"), Ref::new(4));
            dict.pair(Name(b"Tree"), Ref::new(2)).pair(Name(b"Gone"), Ref::new(99));
            dict.pair(Name(b"Self"), Ref::new(20));
        },
        |resources| {
            resources.ext_g_states().pair(Name(b"G"), Ref::new(20));
            let mut list = resources.insert(Name(b"Font")).dict();
            nest(list.insert(Name(b"Deep")), 150);
        },
        |_| {},
        |_| {},
    );
    let made = first(&bytes);
    sound("apart", &made);
    let text = String::from_utf8_lossy(&made);
    assert!(!text.contains("of another page"), "another page came along");
    assert_eq!(draw("apart", &made, 1, 72).at(50.0, 50.0), RED);
}

/// Lists in lists, so many.
fn nest(into: pdf_writer::Obj<'_>, deep: u32) {
    let mut list = into.array();
    if deep > 0 {
        nest(list.push(), deep - 1);
    }
}

/// What the colours are meant for is said again, transparency stays a group, packed streams stay packed.
#[test]
fn meaning_and_packing_stay() {
    // 1 0 0 rg, all of it: raw deflate in one stored block, with its check sum (RFC 1950, 1951).
    let drawn = [b"1 0 0 rg ", ALL].concat();
    let packed = {
        let length = (drawn.len() as u16).to_le_bytes();
        let not = (!(drawn.len() as u16)).to_le_bytes();
        let (mut a, mut b) = (1_u32, 0_u32);
        for byte in &drawn {
            a = (a + u32::from(*byte)) % 65521;
            b = (b + a) % 65521;
        }
        [&[0x78, 0x01, 0x01][..], &length, &not, &drawn, &((b << 16) | a).to_be_bytes()].concat()
    };
    let mut pdf = Pdf::new();
    let mut whole = pdf.catalog(Ref::new(1));
    whole.pages(Ref::new(2));
    let mut intents = whole.insert(Name(b"OutputIntents")).array();
    let mut intent = intents.push().dict();
    intent.pair(Name(b"Type"), Name(b"OutputIntent")).pair(Name(b"S"), Name(b"GTS_PDFX"));
    intent.pair(Name(b"OutputConditionIdentifier"), Str(b"coated, of a test"));
    intent.finish();
    intents.finish();
    whole.finish();
    pdf.pages(Ref::new(2)).kids([Ref::new(3)]).count(1);
    let mut page = pdf.page(Ref::new(3));
    page.parent(Ref::new(2)).media_box(Rect::new(0.0, 0.0, 437.0, 613.0)).contents(Ref::new(10));
    page.insert(Name(b"Group"))
        .dict()
        .pair(Name(b"S"), Name(b"Transparency"))
        .pair(Name(b"I"), true);
    page.finish();
    pdf.stream(Ref::new(10), &packed).filter(Filter::FlateDecode);
    let made = first(&pdf.finish());
    sound("meaning", &made);
    let text = String::from_utf8_lossy(&made);
    assert!(text.contains("coated, of a test") && text.contains("/Transparency"));
    assert!(made.windows(packed.len()).any(|window| window == packed), "packed anew");
    assert_eq!(draw("meaning", &made, 1, 72).at(50.0, 50.0), RED);
}
