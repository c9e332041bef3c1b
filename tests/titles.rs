//! Lists of titles: each row is planned like a single book, keeps its place, and says why when it
//! cannot be read.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use proptest::prelude::*;
use proptest::test_runner::FileFailurePersistence;
use quirefit::advise;
use quirefit::draft::{Draft, FieldError};
use quirefit::job;
use quirefit::plan::plan;
use quirefit::shop;
use quirefit::titles::{List, plan_list};
use quirefit::view::title_rows::answered;
use quirefit::view::{Numbers, Printer};
use quirefit::words::{EN, EN_GB, Words};
use support::{files, root};

/// A row as the tests look at it: its line, its texts, and the keys of what is wrong.
type Row = (u64, Draft, Vec<String>);

fn keys(errors: &[FieldError]) -> Vec<String> {
    errors.iter().map(|error| format!("{}:{}", error.path, error.wrong.key)).collect()
}

/// Every row of a list, or the key of what is wrong with the list.
fn rows(bytes: &[u8]) -> Result<Vec<Row>, String> {
    let list = List::read(bytes).map_err(|faults| keys(&faults).concat())?;
    let shop = shop::demo();
    let mut found = Vec::new();
    plan_list(&list, &shop, "mm", |title| {
        let wrong = title.answer.as_ref().err().map(|errors| keys(errors)).unwrap_or_default();
        // A row's book is what the same texts give alone.
        if let Ok(planned) = &title.answer {
            let job = job::read(title.draft, &shop).job.unwrap();
            support::same(planned.job, &job, "the job");
            let alone = plan(&job, &shop);
            support::same(planned.plan, &alone, "the plan");
            assert_eq!(planned.room, advise::Advice::at_once(&job, &shop, &alone).room);
        }
        found.push((title.place.line, title.draft.clone(), wrong));
        true
    });
    Ok(found)
}

fn texts(draft: &Draft) -> Vec<(&str, &str)> {
    draft.all().filter(|(path, _)| *path != "units").collect()
}

#[test]
fn the_examples_are_read_as_they_stand() {
    let of = |name: &str| rows(&std::fs::read(root().join(name)).unwrap()).unwrap();
    let season = of("examples/titles/quay-season.csv");
    assert_eq!(season.iter().map(|row| row.0).collect::<Vec<_>>(), [2, 3, 4, 5, 6, 7]);
    assert!(season.iter().all(|(.., wrong)| wrong.is_empty()), "{season:?}");
    assert_eq!(season[0].1.get("title"), "Low Tide, High Tide");
    let german = of("examples/titles/harbour-german.csv");
    assert_eq!(
        texts(&german[0].1),
        [
            ("copies", "1.200"),
            ("pages", "64"),
            ("paper", "90 gsm offset"),
            ("size", "148 mm x 210 mm"),
            ("title", "Der Nebel;\r\nein Almanach"),
        ]
    );
    assert_eq!((german[1].0, german[1].1.get("size")), (4, "148,5 mm x 210 mm"));
    let faults = of("examples/titles/with-faults.csv");
    let told: Vec<String> = faults.iter().map(|(.., wrong)| wrong.join(" ")).collect();
    assert_eq!(
        told,
        [
            "",
            "pages:file.missing",
            "pages:entry.pages.wrong",
            "paper:entry.paper.ask-grade",
            ":titles.cells",
            "",
            "",
        ]
    );
    assert_eq!(files("examples/titles").len(), 3, "an example that nobody tests");
}

/// Head and two rows that are read the same, however the file is made.
const PLAIN: &str = "title,pages,size,paper\nOne,16,A5,130 silk\nTwo,24,A4,90 gsm offset\n";

fn wide(text: &str, order: fn(u16) -> [u8; 2], mark: [u8; 2]) -> Vec<u8> {
    mark.into_iter().chain(text.encode_utf16().flat_map(order)).collect()
}

#[test]
fn awkward_files_are_read_all_the_same() {
    let expected = rows(PLAIN.as_bytes()).unwrap();
    assert!(expected.iter().all(|(.., wrong)| wrong.is_empty()));
    let same: Vec<(&str, Vec<u8>)> = vec![
        ("semicolons", PLAIN.replace(',', ";").into()),
        ("tabs", PLAIN.replace(',', "\t").into()),
        ("CR LF", PLAIN.replace('\n', "\r\n").into()),
        ("CR alone, as old machines wrote", PLAIN.replace('\n', "\r").into()),
        ("no line end at the end", PLAIN.trim_end().into()),
        ("the mark of UTF-8", format!("\u{feff}{PLAIN}").into()),
        ("UTF-16, low byte first", wide(PLAIN, u16::to_le_bytes, [0xff, 0xfe])),
        ("UTF-16, high byte first", wide(PLAIN, u16::to_be_bytes, [0xfe, 0xff])),
        ("everything quoted", {
            let line = |line: &str| format!("\"{}\"\n", line.replace(',', "\",\""));
            PLAIN.lines().map(line).collect::<String>().into()
        }),
        ("spaces round everything", PLAIN.replace(',', " , ").into()),
        ("capitals in the heads", PLAIN.replacen("title,pages,size", "TITLE,Pages,SIZE", 1).into()),
        ("other names", PLAIN.replacen("pages,size,paper", "PP,Trim size,Text stock", 1).into()),
        ("German names", PLAIN.replacen("title,pages,size", "Titel,Seiten,Format", 1).into()),
        ("a column nobody knows", {
            let line = |line: &str| format!("{line},whatever\n");
            PLAIN.lines().map(line).collect::<String>().into()
        }),
        ("empty columns behind", {
            let line = |line: &str| format!("{line},,,\n");
            PLAIN.lines().map(line).collect::<String>().into()
        }),
        ("columns in another order", {
            let turned = |line: &str| {
                let mut cells: Vec<&str> = line.split(',').collect();
                cells.reverse();
                format!("{}\n", cells.join(","))
            };
            PLAIN.lines().map(turned).collect::<String>().into()
        }),
        (
            "width and height apart",
            PLAIN
                .replace("size", "width,height (mm)")
                .replace("A5", "148,210")
                .replace("A4", "210 mm,297")
                .into(),
        ),
    ];
    for (what, bytes) in same {
        let found = rows(&bytes).unwrap_or_else(|wrong| panic!("{what}: {wrong}"));
        assert_eq!(found.len(), expected.len(), "{what}");
        for (found, expected) in found.iter().zip(&expected) {
            if what != "width and height apart" {
                assert_eq!(found, expected, "{what}");
            }
            assert!(found.2.is_empty(), "{what}: {found:?}");
        }
    }
    let apart = PLAIN.replace("size", "width,height (mm)").replace("A5", "148,210");
    let sizes = rows(apart.replace("A4", "210 mm,297").as_bytes()).unwrap();
    assert_eq!(sizes[0].1.get("size"), "148 x 210 mm");
    assert_eq!(sizes[1].1.get("size"), "210 mm x 297 mm");
}

#[test]
fn rows_that_cannot_be_read_say_why_and_stay_where_they_are() {
    // Below these heads: what stands in the rows, then line and faults of each.
    type Case<'a> = (&'a str, &'a str, &'a [(u64, &'a str)]);
    let cases: &[Case] = &[
        (
            "empty cells",
            "One,,,\n",
            &[(2, "pages:file.missing size:file.missing paper:file.missing")],
        ),
        ("too few cells", "One,16\n", &[(2, "size:file.missing paper:file.missing")]),
        ("too many cells", "One,16,A5,130 silk,x\n", &[(2, ":titles.cells")]),
        ("dashes", "One,16,A5,-\n", &[(2, "paper:file.missing")]),
        ("half typed", "One,60 +,A5,130 silk\n", &[(2, "pages:file.unclear")]),
        ("a formula", "One,=1+1,A5,130 silk\n", &[(2, "pages:entry.pages.wrong")]),
        (
            "blank lines between",
            "\n\nOne,16,A5,130 silk\n\nTwo,x,A5,130 silk\n",
            &[(4, ""), (6, "pages:entry.pages.wrong")],
        ),
        (
            "a line within quotes",
            "\"One\nmore\",16,A5,130 silk\nTwo,16,A5,\n",
            &[(2, ""), (4, "paper:file.missing")],
        ),
        (
            "a quote that nobody closes",
            "One,16,A5,130 silk\n\"Two,16,A5\nThree,16\n",
            &[(2, ""), (3, "pages:file.missing size:file.missing paper:file.missing")],
        ),
        (
            "a title too long",
            &format!("{},16,A5,130 silk\n", "x".repeat(200)),
            &[(2, "title:entry.text.long")],
        ),
    ];
    for (what, below, expected) in cases {
        let found = rows(format!("title,pages,size,paper\n{below}").as_bytes()).unwrap();
        let lines: Vec<u64> = found.iter().map(|(line, ..)| *line).collect();
        assert_eq!(lines, expected.iter().map(|(line, _)| *line).collect::<Vec<_>>(), "{what}");
        for ((.., wrong), (_, expected)) in found.iter().zip(*expected) {
            assert_eq!(wrong.join(" "), **expected, "{what}");
        }
    }
}

#[test]
fn lists_that_are_none_are_refused_in_words() {
    for (what, bytes, expected) in [
        ("nothing", &b""[..], ":titles.empty"),
        ("spaces", b"  \n \n", ":titles.empty"),
        ("a picture", b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", ":titles.no-text"),
        ("no pages", b"title,size,paper\n", "pages:titles.no-head"),
        ("no size", b"title,pages,paper\n", "size:titles.no-head"),
        ("no height", b"title,pages,width,paper\n", "size:titles.no-head"),
        ("no paper", b"title,pages,size\n", "paper:titles.no-head"),
        ("no heads", b"One,16,A5,130 silk\n", "pages:titles.no-head"),
        ("two for one", b"pages,size,paper,stock\n", "paper:titles.twice"),
    ] {
        assert_eq!(rows(bytes).unwrap_err(), expected, "{what}");
    }
    assert_eq!(rows(b"pages,size,paper\n").unwrap(), [], "heads alone are an empty list");
}

#[test]
fn the_answer_has_a_row_for_each_and_no_formula() {
    let words = Words::load(&[EN, EN_GB]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let text = "title,pages,size,paper\n=cmd(),16,A5,130 silk\n@x,x,A5,130 silk\n";
    let list = List::read(text.as_bytes()).unwrap();
    let (out, tally) = answered(&list, &shop::demo(), "mm", &printer);
    assert_eq!((tally.rows, tally.unread), (2, 1));
    let mut reader = csv::Reader::from_reader(out.trim_start_matches('\u{feff}').as_bytes());
    let heads = reader.headers().unwrap().clone();
    let found: Vec<csv::StringRecord> = reader.records().map(|row| row.unwrap()).collect();
    let column = |name: &str| heads.iter().position(|head| head == name).expect(name);
    assert_eq!(&found[0][column("Title")], "'=cmd()");
    assert_eq!(&found[0][column("Answer")], "fits");
    assert_eq!(&found[1][column("Title")], "'@x");
    assert_eq!(&found[1][column("Answer")], "cannot be read");
    assert!(found[1][column("Why")].starts_with("Pages: “x” is not a page count."));
    // 16 pages are 4 sheets; A5 is 148 mm wide, so open it is twice that and the spine.
    assert_eq!(&found[0][column("Folded sheets in a copy")], "4");
    let open: f64 = found[0][column("Open, across the spine (mm)")].parse().unwrap();
    assert!((296.0..299.0).contains(&open), "{open}");
}

/// Cells of all sorts: good, bad, empty, full of separators, quotes and lines.
fn cell() -> impl Strategy<Value = String> {
    prop_oneof![
        3 => proptest::sample::select(vec!["16", "60 + 4", "A5", "210 x 210", "130 silk", "80 lb", ""])
            .prop_map(str::to_owned),
        1 => "[ -~\n\r;,\t\"äß]{0,12}",
    ]
}

proptest! {
    #![proptest_config(ProptestConfig {
        failure_persistence: Some(Box::new(FileFailurePersistence::Direct("tests/titles.regressions"))),
        ..ProptestConfig::with_cases(200)
    })]

    #[test]
    fn every_row_comes_out_once_and_in_order(
        cells in proptest::collection::vec(proptest::collection::vec(cell(), 3), 0..12),
        separator in proptest::sample::select(b",;\t".to_vec()),
        lines in proptest::sample::select(vec![csv::Terminator::CRLF, csv::Terminator::Any(b'\n')]),
    ) {
        let mut writer = csv::WriterBuilder::new()
            .delimiter(separator)
            .terminator(lines)
            .quote_style(csv::QuoteStyle::Always)
            .from_writer(Vec::new());
        writer.write_record(["title", "pages", "size", "paper"]).unwrap();
        for (index, row) in cells.iter().enumerate() {
            let title = format!("T{index}");
            writer.write_record([&title, &row[0], &row[1], &row[2]]).unwrap();
        }
        let bytes = writer.into_inner().unwrap();
        let found = rows(&bytes).unwrap();
        prop_assert_eq!(found.len(), cells.len());
        let mut before = 1;
        for (index, (line, draft, _)) in found.iter().enumerate() {
            prop_assert_eq!(draft.get("title"), format!("T{index}"));
            prop_assert!(*line > before);
            before = *line;
        }
    }

    #[test]
    fn any_bytes_are_taken_in_peace(bytes in proptest::collection::vec(any::<u8>(), 0..200)) {
        let _ = rows(&bytes);
        let headed = [b"pages,size,paper\n".as_slice(), &bytes].concat();
        let _ = rows(&headed);
    }
}
