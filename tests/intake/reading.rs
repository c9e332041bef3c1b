//! What is read of a file.

use crate::support::made::{Made, POINT, bare, whole, written};
use crate::support::{self, ran};
use quirefit::intake::{Damage, Facts, Frame, PageFacts, Unreadable, pass, read, taken};
use std::fs;
use std::path::PathBuf;

pub fn scratch(name: &str) -> PathBuf {
    let folder = support::root().join("target/intake");
    fs::create_dir_all(&folder).unwrap();
    folder.join(name)
}

/// A file as qpdf writes it anew with these arguments.
pub fn rewritten(name: &str, bytes: &[u8], arguments: &[&str]) -> Vec<u8> {
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
pub fn mixed() -> Vec<u8> {
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
    let page = |at: usize| Made { empty: at.is_multiple_of(3), ..whole(148.0, 210.0, 3.0) };
    let pages: Vec<Made> = (0..600).map(page).collect();
    for form in ["--object-streams=disable", "--object-streams=generate"] {
        let bytes = rewritten(&format!("many{form}"), &written(&pages), &[form]);
        let facts = as_poppler_reads("many", &bytes, "");
        assert_eq!(facts.pages.len(), 600);
        for (at, page) in facts.pages.iter().enumerate() {
            assert_eq!(page.empty, at.is_multiple_of(3), "page {}", at + 1);
        }
    }
}

pub fn facts(pages: &[Made]) -> Facts {
    read(written(pages), "").unwrap()
}

/// Facts go from the reader's module to the page as text and come back the same.
#[test]
fn facts_pass_as_text() {
    let facts = read(mixed(), "").unwrap();
    assert_eq!(taken::<Facts>(&pass(&facts)), Some(facts));
    assert_eq!(taken::<Facts>("no facts"), None);
}
