//! What is written is sound, in whatever form the file came, and its pages are where they were.

use crate::drawn::{draw, mark_near};
use crate::laid::{FINE, NEAR, a5, kept};
use crate::reading::rewritten;
use crate::support::made::{MARK, Made, colour, whole, written};
use crate::support::ran;
use pdf_writer::{Finish, Name, Pdf, Rect, Ref};
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
pub fn sound(name: &str, bytes: &[u8]) -> String {
    let path = kept(name, bytes);
    let said = String::from_utf8(ran("qpdf", &["--check", &path])).unwrap();
    assert!(!said.contains("WARNING"), "{name}: {said}");
    path
}

#[test]
fn every_form_of_file_is_written_soundly() {
    // Turned every way, in a unit of its own, and shown as far as the cut.
    let lying = whole(210.0, 148.0, 3.0);
    let plain = a5(1)[0];
    let turned = |rotate, made: Made| Made { rotate, ..made };
    let half = plain.boxes.map(|frame| frame.map(|frame| frame.map(|side| side / 2.0)));
    let [media, _, trim, bleed] = plain.boxes;
    let pages = [
        plain,
        turned(90, lying),
        turned(180, plain),
        turned(270, lying),
        Made { unit: Some(2.0), boxes: half, ..plain },
        Made { boxes: [media, trim, trim, bleed], ..plain },
    ];
    let plain = written(&pages);
    let forms: [(&str, &[&str], &str); 10] = [
        ("plain", &["--stream-data=preserve"], ""),
        ("streams", &["--object-streams=generate"], ""),
        ("linear", &["--linearize"], ""),
        ("old", &["--object-streams=disable", "--stream-data=uncompress", "--qdf"], ""),
        ("packed", &["--stream-data=compress", "--recompress-flate"], ""),
        ("aes-open", &["--encrypt", "", "owner", "256", "--"], ""),
        ("aes", &["--encrypt", "secret", "owner", "256", "--"], "secret"),
        ("aes-128", &["--encrypt", "", "owner", "128", "--use-aes=y", "--"], ""),
        (
            "rc4-128",
            &["--allow-weak-crypto", "--encrypt", "", "owner", "128", "--use-aes=n", "--"],
            "",
        ),
        ("rc4", &["--allow-weak-crypto", "--encrypt", "secret", "owner", "40", "--"], "secret"),
    ];
    for (name, arguments, password) in forms {
        let name = &format!("written-{name}");
        let bytes = rewritten(name, &plain, arguments);
        let made = anew(&bytes, password);
        sound(name, &made);
        for at in 0..pages.len() {
            let drawn = draw(name, &made, at + 1, FINE);
            let said = format!("{name}: page {}", at + 1);
            assert_eq!(drawn.at(151.0, 3.0), colour(at, false), "{said}");
            // The bleed is at the corner of what is made, the finished page 3 mm from there.
            let wanted = (3.0 + MARK[0], 213.0 - MARK[1]);
            let (x, y) = mark_near(name, at + 1, at, wanted).expect(&said);
            assert!((x - wanted.0).abs() < NEAR && (y - wanted.1).abs() < NEAR, "{said}: {x} {y}");
        }
    }
}

/// A page that has boxes, turn and resources from the tree of pages alone (ISO 32000-1, 7.7.3.4).
#[test]
fn what_a_page_inherits_is_written_with_it() {
    let [tree, branch, page, content, form] = [2, 3, 4, 5, 6].map(Ref::new);
    let mut pdf = Pdf::new();
    pdf.catalog(Ref::new(1)).pages(tree);
    let mut top = pdf.pages(tree);
    top.kids([branch]).count(1).media_box(Rect::new(0.0, 0.0, 612.0, 437.0));
    top.resources().x_objects().pair(Name(b"X"), form);
    top.pair(Name(b"Rotate"), 90);
    top.finish();
    pdf.pages(branch).parent(tree).kids([page]).count(1);
    pdf.page(page).parent(branch).contents(content);
    pdf.stream(content, b"/X Do");
    let drawn = b"1 0 0 rg 0 0 306 437 re f 0 0 1 rg 306 0 306 437 re f";
    pdf.form_xobject(form, drawn).bbox(Rect::new(0.0, 0.0, 612.0, 437.0));
    let made = anew(&pdf.finish(), "");
    sound("inherited", &made);
    let drawn = draw("inherited", &made, 1, FINE);
    // Turned clockwise, what was left is above.
    assert_eq!(drawn.at(70.0, 30.0), [255, 0, 0]);
    assert_eq!(drawn.at(70.0, 190.0), [0, 0, 255]);
}
