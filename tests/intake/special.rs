//! What a page is made of: nothing of it is lost but notes, and nothing comes along that was hidden or
//! belongs to other pages.

use crate::drawn::draw;
use crate::reading::rewritten;
use crate::support::made::POINT;
use crate::support::ran;
use crate::written::sound;
use pdf_writer::{Chunk, Filter, Finish, Name, Pdf, Rect, Ref, Str, TextStr};
use quirefit::intake::{Desk, Frame, Matrix, Order, OrderPage, Part, Placed};

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

/// How a file says which of its layers are shown (ISO 32000-1, table 101).
#[derive(Clone, Copy, PartialEq)]
enum Says {
    Nothing,
    Off,
    /// All are hidden at first.
    BaseOff,
    /// The same, but this one.
    BaseOffThenOn,
}

fn layered(says: Says) -> Vec<u8> {
    let layer = Ref::new(20);
    let streams: [&[u8]; 1] = [b"1 0 0 rg /OC /L BDC 0 0 437 613 re f EMC"];
    special(
        &streams,
        |pdf| {
            let mut dict = pdf.indirect(layer).dict();
            dict.pair(Name(b"Type"), Name(b"OCG")).pair(Name(b"Name"), TextStr("Notes"));
        },
        |resources| {
            resources.insert(Name(b"Properties")).dict().pair(Name(b"L"), layer);
        },
        |catalog| {
            let mut all = catalog.insert(Name(b"OCProperties")).dict();
            all.insert(Name(b"OCGs")).array().item(layer);
            let mut shown = all.insert(Name(b"D")).dict();
            if matches!(says, Says::BaseOff | Says::BaseOffThenOn) {
                shown.pair(Name(b"BaseState"), Name(b"OFF"));
            }
            match says {
                Says::Off => shown.insert(Name(b"OFF")).array().item(layer).finish(),
                Says::BaseOffThenOn => shown.insert(Name(b"ON")).array().item(layer).finish(),
                Says::Nothing | Says::BaseOff => {}
            }
            let mut rules = shown.insert(Name(b"AS")).array();
            let mut rule = rules.push().dict();
            rule.pair(Name(b"Event"), Name(b"Print"));
            rule.insert(Name(b"Category")).array().item(Name(b"Print"));
            rule.insert(Name(b"OCGs")).array().item(layer);
        },
        |_| {},
    )
}

/// A layer that the file hides stays hidden, one that it shows is shown, and what it says of printing is
/// said again.
#[test]
fn layers_stay_hidden_or_shown() {
    let cases = [
        (Says::Nothing, RED),
        (Says::Off, WHITE),
        (Says::BaseOff, WHITE),
        (Says::BaseOffThenOn, RED),
    ];
    for (at, (says, wanted)) in cases.into_iter().enumerate() {
        for form in ["--stream-data=preserve", "--object-streams=generate"] {
            let bytes = rewritten("layer", &layered(says), &[form]);
            let seen = draw("layer-before", &bytes, 1, 72).at(50.0, 50.0);
            let made = first(&bytes);
            let path = sound("layer-after", &made);
            assert_eq!(draw("layer-after", &made, 1, 72).at(50.0, 50.0), wanted, "case {at}");
            assert_eq!(seen, wanted, "case {at}: as the file itself is drawn");
            // The name that the file gives the layer, and its rule, in plain text.
            let plain = ran("qpdf", &["--qdf", "--object-streams=disable", &path, "-"]);
            let plain = String::from_utf8_lossy(&plain).into_owned();
            assert!(plain.contains("(Notes)") && plain.contains("/Event /Print"), "{plain}");
        }
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
    page.parent(Ref::new(2)).media_box(Rect::new(0.0, 0.0, 437.0, 613.0));
    // A list of one stream, as many programs write it.
    page.contents_array([Ref::new(10)]);
    page.insert(Name(b"Group"))
        .dict()
        .pair(Name(b"S"), Name(b"Transparency"))
        .pair(Name(b"I"), false);
    page.finish();
    pdf.stream(Ref::new(10), &packed).filter(Filter::FlateDecode);
    let bytes = pdf.finish();
    let forms: [(&str, &[&str]); 3] = [
        ("meaning", &["--stream-data=preserve"]),
        ("meaning-streams", &["--stream-data=preserve", "--object-streams=generate"]),
        ("meaning-aes", &["--stream-data=preserve", "--encrypt", "", "owner", "256", "--"]),
    ];
    for (name, arguments) in forms {
        let made = first(&rewritten(name, &bytes, arguments));
        sound(name, &made);
        let text = String::from_utf8_lossy(&made);
        assert!(text.contains("coated, of a test") && text.contains("/Transparency"), "{name}");
        assert!(text.contains("/I true"), "{name}: a page's group stands apart");
        assert!(made.windows(packed.len()).any(|window| window == packed), "{name}: packed anew");
        assert_eq!(draw(name, &made, 1, 72).at(50.0, 50.0), RED, "{name}");
    }
}
