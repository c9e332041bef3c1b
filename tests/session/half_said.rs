//! Texts that are half said: no fault while they are typed, told by the field's label once it is left.

use super::Page;
use quirefit::draft::Kind;
use quirefit::job::SCHEMA;

/// Fields, what is half typed there, and what stands above them in British and American English.
const HALF: &[(&str, &str, [&str; 2])] = &[
    ("pages", "64 pag", ["Pages", "Pages"]),
    ("pages", "60 +", ["Pages", "Pages"]),
    ("size", "5x5 m", ["Finished size", "Trim size"]),
    ("size", "lett", ["Finished size", "Trim size"]),
    ("paper", "90 gsm 1", ["Paper inside", "Paper inside"]),
    ("copies", "7 cop", ["Copies", "Copies"]),
    ("bleed", "3 m", ["Bleed", "Bleed"]),
    ("start", "8:", ["The run starts at", "The run starts at"]),
    ("stitches", "2.", ["Stitches in a copy", "Stitches in a copy"]),
    ("sections.0.pages", "8.", ["Section 1, Pages", "Section 1, Pages"]),
];

/// A page with one further section.
fn page_in(language: &str) -> Page {
    let mut page = Page::open_in(None, language);
    page.tell("helper", "", "ready");
    page.act("section-add", "");
    page.type_into("sections.0.paper", "90 gsm offset");
    page
}

impl Page {
    fn slot(&self, field: &str) -> String {
        self.words(&format!("echo-{}", field.replace('.', "-")))
    }

    fn is_faulty(&self, field: &str) -> bool {
        let id = format!("input-{}", field.replace('.', "-"));
        self.attrs.get(&(id, "aria-invalid")).is_some_and(Option::is_some)
    }
}

#[test]
fn a_field_that_is_left_half_said_says_so_by_its_label() {
    for (field, half, labels) in HALF {
        for (language, label) in ["en-GB", "en-US"].into_iter().zip(labels) {
            let mut page = page_in(language);
            page.input(field, half);
            assert_eq!((page.slot(field), page.is_faulty(field)), (String::new(), false), "{half}");
            page.announced.clear();
            page.tell("leave", field, half);
            let told = page.slot(field);
            let begins = format!("{label}: “{half}” cannot be read as a whole. ");
            assert!(told.starts_with(&begins) && told.len() > begins.len(), "{field}: {told}");
            assert!(page.is_faulty(field));
            assert_eq!(page.announced, [begins.trim_end()]);
            assert_eq!(page.draft().get(field), *half, "what was typed stays");
            // It stays whatever is done elsewhere, and goes with the next key.
            page.type_into("title", "Low Tide");
            assert_eq!(page.slot(field), told);
            page.input(field, &format!("{half} "));
            assert_eq!((page.slot(field), page.is_faulty(field)), (String::new(), false), "{half}");
        }
    }
}

/// Enter ends a field as leaving it does.
#[test]
fn enter_in_a_field_tells_what_is_half_said() {
    for field in ["size", "pages"] {
        let mut page = Page::open(None);
        page.input(field, "60 +");
        page.input(field, if field == "size" { "5x5 m" } else { "64 pag" });
        page.tell("key", field, "Enter");
        assert!(page.slot(field).contains("cannot be read as a whole"), "{}", page.slot(field));
    }
}

/// Of every text, wherever somebody breaks off, a field that was left says something.
#[test]
fn no_field_is_left_without_a_word() {
    let typed = |field: &str| match SCHEMA.field(field).unwrap().kind {
        Kind::Pages => "60 pages plus 4 cover",
        Kind::Size => "148.5 x 210 millimetres landscape",
        Kind::Paper => "pack of 20 leaves 2.1 mm 130 gsm silk vol 1.1 grain along the spine",
        Kind::Copies => "2,500 copies",
        Kind::Length(..) => "1/8 inch",
        Kind::Mass(..) => "7.5 grams",
        Kind::Clock => "8:30 pm",
        Kind::Number(..) => "2.0",
        Kind::Text(_) | Kind::Choice(_) => "",
    };
    let single = SCHEMA.fields.iter().map(|field| field.id.to_owned());
    let inner = SCHEMA.groups[0].1.iter().map(|field| format!("sections.0.{}", field.id));
    let mut page = page_in("en-GB");
    let mut half = 0;
    for field in single.chain(inner) {
        let text = typed(&field);
        for end in 1..=text.len() {
            page.input(&field, &text[..end]);
            half += usize::from(page.slot(&field).is_empty());
            page.tell("leave", &field, &text[..end]);
            assert_ne!(page.slot(&field), "", "{field}: {}", &text[..end]);
        }
    }
    assert!(half > 100, "only {half} texts were half said");
}

/// A file may hold what nobody is typing just now.
#[test]
fn what_a_file_holds_half_said_is_told_when_it_is_opened() {
    let mut page = Page::open(None);
    let text = r#"{ "format": "quirefit-job", "version": 1, "pages": "60 +", "spine": "squ" }"#;
    page.tell("file", "x", text);
    assert!(page.slot("pages").contains("Pages: “60 +” cannot"), "{}", page.slot("pages"));
    assert!(page.slot("spine").contains("“squ” cannot"), "{}", page.slot("spine"));
}

/// The line fills other fields while it is typed: no fault before it is left.
#[test]
fn a_line_on_its_way_finds_no_fault_in_other_fields() {
    let mut page = Page::open(None);
    let line = "64 pages, 210 x 2";
    for end in 1..=line.len() {
        page.input("phrase", &line[..end]);
        assert!(!page.slot("size").contains("cannot be read"), "{}", &line[..end]);
    }
    assert_eq!(page.draft().get("size"), "210 x 2");
    page.tell("leave", "phrase", line);
    assert!(page.slot("size").contains("“210 x 2” cannot be read"), "{}", page.slot("size"));
}

#[test]
fn what_keeps_a_book_from_going_out_is_named_by_its_label() {
    for (field, half, labels) in HALF {
        for (language, label) in ["en-GB", "en-US"].into_iter().zip(labels) {
            let mut page = page_in(language);
            page.type_into("sections.0.pages", "8");
            page.type_into(field, half);
            page.act("save-xjdf", "");
            let note = page.words("file-note");
            assert!(note.contains("Not handed over"), "{note}");
            assert!(note.contains(&format!("{label}: {half} ")), "{field}: {note}");
            assert!(!page.shown("file-note").contains("<code>"), "{}", page.shown("file-note"));
            assert!(page.saved_files.is_empty());
        }
    }
    // A client reads that too, whatever the shop's own fields are called.
    let mut page = Page::open(None);
    page.act("reading", "client");
    page.type_into("bleed", "3 m");
    page.act("copy-text", "");
    assert!(page.words("file-note").contains("Bleed: 3 m "), "{}", page.words("file-note"));
}
