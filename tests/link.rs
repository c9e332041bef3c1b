//! Links and codes: what goes in comes out, and what was hurt on the way is refused in words.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use proptest::prelude::*;
use quirefit::draft::Draft;
use quirefit::job::{self, CODE_MARK, LINK_MARK, read_link, to_code, to_link};
use quirefit::page::EXAMPLE;
use quirefit::shop;
use support::files;

/// The key of what is wrong; "none" for a text that is neither link nor code, "open" for one that opens.
fn told(text: &str) -> String {
    match read_link(text) {
        None => "none".to_owned(),
        Some(Ok(_)) => "open".to_owned(),
        Some(Err(errors)) => errors[0].wrong.key.clone(),
    }
}

fn drafts() -> Vec<Draft> {
    let jobs = files("examples/jobs");
    jobs.iter().map(|path| support::draft(path, &job::SCHEMA).unwrap()).collect()
}

#[test]
fn every_example_comes_back_byte_for_byte() {
    for draft in drafts() {
        for text in [to_link(&draft).unwrap(), to_code(&draft).unwrap()] {
            assert_eq!(read_link(&text).unwrap().unwrap(), draft, "{text}");
        }
    }
}

/// What the first links held; the example of today may be another.
const TEAPOTS: &[(&str, &str)] = &[
    ("title", "A Field Guide to Teapots"),
    ("pages", "40 + 4"),
    ("size", "A5"),
    ("paper", "Pond Silk 130"),
    ("cover", "Pond Silk Cover 250"),
    ("copies", "1,200"),
];

/// Links of the first form that are out in the world. They may never stop opening: mend the code, not
/// this list. Made with another program (Python's zlib.crc32, struct, base64), not with this one.
const FROZEN: &[(&str, &[(&str, &str)])] = &[
    (
        "#book=AVMAEb9zNAYABjQwICsgNAECQTUCDVBvbmQgU2lsayAxMzADE1BvbmQgU2lsayBDb3ZlciAyNTAEBTEsMjAwJhhBIEZpZWxkIEd1aWRlIHRvIFRlYXBvdHMA",
        TEAPOTS,
    ),
    (
        "QFAFJQAEN70M2AMAAGGQ8CAK9AGQAQEQJVA1GVA330MQQFG2LMNMQDCM9QAMJVA330MQQFG2LMNMQEG33WMV9CAMRVGACAKMJMG18DAJQ81EQEM2LFNRSCAR3VNFSGK1DUN4QF19LB0BXX148A",
        TEAPOTS,
    ),
    (
        "QFAEQQBG3KXMWACAABHABAEAABGQAQ20JQEBTXG3JA09SW83DVNUAQGBTB0JXXK3TE",
        &[
            ("pages", "8"),
            ("sections.0.pages", "4"),
            ("sections.0.paper", "90 gsm vellum"),
            ("sections.1.place", "around"),
        ],
    ),
];

#[test]
fn links_of_the_first_form_open() {
    for (text, fields) in FROZEN {
        assert_eq!(read_link(text), Some(Ok(Draft::of(fields))), "{text}");
        let draft = Draft::of(fields);
        let again = if text.starts_with('#') { to_link(&draft) } else { to_code(&draft) };
        assert_eq!(again.as_deref(), Ok(*text));
    }
}

#[test]
fn a_link_is_found_in_whatever_surrounds_it() {
    let draft = Draft::of(EXAMPLE);
    let link = to_link(&draft).unwrap();
    let (head, tail) = link.split_at(40);
    for text in [
        format!("https://quay.example/planner.html{link}"),
        format!("file:///home/somebody/quirefit.html{link}"),
        format!("Look at this:\nhttps://quay.example/{link}\nWhat do you think?"),
        format!("<https://quay.example/{link}>"),
        // Mail programs break long lines.
        format!("https://quay.example/{head}\r\n {tail}\r\n"),
    ] {
        assert_eq!(read_link(&text), Some(Ok(draft.clone())), "{text}");
    }
}

#[test]
fn a_code_may_be_typed_as_people_type() {
    let draft = Draft::of(EXAMPLE);
    let code = to_code(&draft).unwrap();
    let grouped = |between: &str| {
        let letters: Vec<char> = code.chars().collect();
        let groups: Vec<String> = letters.chunks(4).map(|group| group.iter().collect()).collect();
        groups.join(between)
    };
    for text in [
        code.to_lowercase(),
        grouped(" "),
        grouped("-").to_lowercase(),
        grouped("\n"),
        code.replace('0', "o").replace('1', "I"),
        format!("  {code}\r\n"),
    ] {
        assert_eq!(read_link(&text), Some(Ok(draft.clone())), "{text}");
    }
}

#[test]
fn a_code_has_only_letters_that_scanners_and_eyes_tell_apart() {
    for draft in drafts() {
        let code = to_code(&draft).unwrap();
        // What QR codes hold in their alphanumeric mode, by ISO/IEC 18004, is more than these.
        let plain = |letter: char| letter.is_ascii_uppercase() || letter.is_ascii_digit();
        assert!(code.chars().all(|letter| plain(letter) && !"OIYZ".contains(letter)), "{code}");
    }
}

/// Texts that must not open, and what is said of each.
fn broken() -> Vec<(&'static str, String, &'static str)> {
    let draft = Draft::of(EXAMPLE);
    let (link, code) = (to_link(&draft).unwrap(), to_code(&draft).unwrap());
    let changed = |text: &str, at: usize, letter: &str| {
        let mut text = text.to_owned();
        text.replace_range(at..=at, letter);
        text
    };
    let other = |text: &str, at: usize| if &text[at..=at] == "A" { "B" } else { "A" };
    vec![
        ("the mark alone", LINK_MARK.to_owned(), "link.cut"),
        ("cut off in the head", link[..9].to_owned(), "link.cut"),
        ("cut off in the middle", link[..link.len() / 2].to_owned(), "link.cut"),
        ("the last letter missing", link[..link.len() - 1].to_owned(), "link.cut"),
        ("a letter more", format!("{link}A"), "link.altered"),
        ("a letter changed", changed(&link, 60, other(&link, 60)), "link.altered"),
        ("a foreign letter", changed(&link, 60, "%"), "link.altered"),
        (
            "two letters swapped",
            {
                let (a, b) = (link[60..61].to_owned(), link[61..62].to_owned());
                assert_ne!(a, b);
                format!("{}{b}{a}{}", &link[..60], &link[62..])
            },
            "link.altered",
        ),
        ("all in capitals", format!("#book={}", link[6..].to_uppercase()), "link.altered"),
        ("another page", "https://quay.example/weather".to_owned(), "link.foreign"),
        ("another page's mark", "https://quay.example/#book".to_owned(), "link.foreign"),
        ("a code cut off", code[..code.len() - 2].to_owned(), "link.cut"),
        ("a code's mark alone", CODE_MARK.to_owned(), "link.cut"),
        ("a code with Y", changed(&code, 30, "Y"), "link.altered"),
        ("a code with a letter changed", changed(&code, 30, other(&code, 30)), "link.altered"),
        ("a code twice", format!("{code}{code}"), "link.altered"),
        ("a newer form", NEWER.to_owned(), "link.newer"),
        ("a newer field", NEWER_FIELD.to_owned(), "link.newer"),
        ("a newer layout", NEWER_LAYOUT.to_owned(), "link.newer"),
        ("words", "64pp A5, 100# text, 750".to_owned(), "none"),
        ("nothing", String::new(), "none"),
    ]
}

// Made by hand with another program (Python's zlib.crc32, base64 and struct).
/// Form 2, content empty.
const NEWER: &str = "#book=AgAAfA3F_A";
/// Form 1 with field 200.
const NEWER_FIELD: &str = "#book=AQUAwIYNkwHIAXgA";
/// Form 1 with a byte behind what this page reads.
const NEWER_LAYOUT: &str = "#book=AVQAwh9vvAYABjQwICsgNAECQTUCDVBvbmQgU2lsayAxMzADE1BvbmQgU2lsayBDb3ZlciAyNTAEBTEsMjAwJhhBIEZpZWxkIEd1aWRlIHRvIFRlYXBvdHMAAQ";

#[test]
fn what_is_broken_is_refused_in_words() {
    for (what, text, expected) in broken() {
        assert_eq!(told(&text), expected, "{what}: {text}");
    }
}

#[test]
fn a_bit_turned_over_anywhere_is_refused() {
    let draft = Draft::of(EXAMPLE);
    for text in [to_link(&draft).unwrap(), to_code(&draft).unwrap()] {
        for at in 0..text.len() {
            for bit in 0..7 {
                let mut bytes = text.clone().into_bytes();
                bytes[at] ^= 1 << bit;
                let hurt = String::from_utf8(bytes).unwrap();
                // Small letters of a code are the same code.
                let same = text.starts_with(CODE_MARK) && hurt.to_uppercase() == text;
                let opened = matches!(read_link(&hurt), Some(Ok(_)));
                assert_eq!(opened, same, "bit {bit} of letter {at}: {hurt}");
            }
        }
    }
}

#[test]
fn too_long_a_job_is_sent_as_a_file() {
    let mut draft = Draft::of(EXAMPLE);
    for index in 0..12 {
        draft.set(&format!("sections.{index}.paper"), &"x".repeat(400));
    }
    for written in [to_link(&draft), to_code(&draft)] {
        assert_eq!(written.unwrap_err()[0].wrong.key, "link.long");
    }
    // Too long for one field: the file would not open either, and the field is named.
    let errors = to_link(&Draft::of(&[("title", &"x".repeat(501))])).unwrap_err();
    assert_eq!((errors[0].path.as_str(), errors[0].wrong.key.as_str()), ("title", "file.long"));
}

/// A link holds the job alone: the same in whichever shop the page stands, and none of a shop's texts.
#[test]
fn nothing_of_the_shop_goes_along() {
    use base64ct::Encoding;
    use postcard::take_from_bytes;
    let draft = Draft::of(EXAMPLE);
    let link = to_link(&draft).unwrap();
    let bytes = base64ct::Base64UrlUnpadded::decode_vec(&link[LINK_MARK.len()..]).unwrap();
    // Seven bytes of the envelope, then number and text by turns.
    type Content = (Vec<(u8, String)>, Vec<Vec<(u8, String)>>);
    let ((fields, sections), rest): (Content, _) = take_from_bytes(&bytes[7..]).unwrap();
    assert!(sections.is_empty() && rest.is_empty());
    let mut held: Vec<String> = fields.into_iter().map(|(_, text)| text).collect();
    let mut typed: Vec<String> = EXAMPLE.iter().map(|(_, text)| (*text).to_owned()).collect();
    held.sort();
    typed.sort();
    assert_eq!(held, typed);
    // Every shop is opened in the page before the link is made: the form's texts stay the only ones.
    for path in files("examples/shops") {
        let texts = support::draft(&path, &shop::SCHEMA).unwrap();
        let own = texts.all().filter(|(field, text)| !field.ends_with("name") && text.len() > 4);
        for (field, text) in own {
            assert!(!held.iter().any(|held| held == text), "{path}: {field}: {text}");
        }
    }
}

fn any_draft() -> impl Strategy<Value = Draft> {
    let paths: Vec<String> = job::SCHEMA
        .fields
        .iter()
        .map(|field| field.id.to_owned())
        .chain((0..5).flat_map(|index| {
            ["pages", "paper", "supplied", "place"].map(|field| format!("sections.{index}.{field}"))
        }))
        .collect();
    let text = proptest::collection::vec(any::<char>(), 0..24);
    let pair = (proptest::sample::select(paths), text);
    proptest::collection::vec(pair, 0..20).prop_map(|pairs| {
        let mut draft = Draft::default();
        for (path, letters) in pairs {
            draft.set(&path, &letters.into_iter().collect::<String>());
        }
        draft
    })
}

proptest! {
    #![proptest_config(support::tried(256, Some("tests/link.regressions")))]

    #[test]
    fn any_draft_comes_back(draft in any_draft()) {
        let link = to_link(&draft).unwrap();
        prop_assert_eq!(read_link(&link).unwrap().unwrap(), draft.clone());
        if let Ok(code) = to_code(&draft) {
            prop_assert_eq!(read_link(&code).unwrap().unwrap(), draft);
        }
    }

    #[test]
    fn any_text_is_taken_in_peace(text in ".{0,200}", mark in 0..3usize) {
        let _ = read_link(&format!("{}{text}", ["", LINK_MARK, CODE_MARK][mark]));
    }

    /// Any envelope that is whole but holds anything: no trap, and what opens is a draft.
    #[test]
    fn any_content_is_taken_in_peace(content in proptest::collection::vec(any::<u8>(), 0..80)) {
        use base64ct::Encoding;
        let mut bytes = vec![1];
        bytes.extend((content.len() as u16).to_le_bytes());
        let mut digest = SUM.digest();
        digest.update(&bytes);
        digest.update(&content);
        let sum = digest.finalize();
        bytes.extend(sum.to_le_bytes());
        bytes.extend(content);
        let letters = base64ct::Base64UrlUnpadded::encode_string(&bytes);
        let opened = read_link(&format!("{LINK_MARK}{letters}")).unwrap();
        if let Err(errors) = opened {
            prop_assert_ne!(errors[0].wrong.key.as_str(), "link.altered");
        }
    }
}

const SUM: crc::Crc<u32> = crc::Crc::<u32>::new(&crc::CRC_32_ISO_HDLC);
