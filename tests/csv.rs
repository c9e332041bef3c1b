//! Tables as CSV: the plan's numbers, the same in every language, safe to open, and only for those who
//! may see them.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::advise::Advice;
use quirefit::entry::LengthUnit;
use quirefit::plan::plan;
use quirefit::units::{Band, Measure, Unit};
use quirefit::view::csv::{Cell, Column, Table, safe, tables, write};
use quirefit::view::html::Scene;
use quirefit::view::{Numbers, Printer, Reading, Screen};
use quirefit::words::{EN, EN_GB, Mark, Words};
use support::{files, planned_file};

const READINGS: [Reading; 3] = [Reading::Client, Reading::Design, Reading::Floor];

/// The tables of a job, and what they look like written.
fn tables_of(path: &str, reading: Reading, numbers: Numbers) -> (Vec<Table>, String) {
    let (_, job, shop) = planned_file(path);
    let planned = plan(&job, &shop);
    let words = Words::load(&[EN, EN_GB]);
    let printer = Printer { words: &words, numbers };
    let advice = Advice::at_once(&job, &shop, &planned);
    let scene = Scene {
        job: &job,
        shop: &shop,
        plan: &planned,
        advice: &advice,
        versions: &[],
        ticks: &quirefit::view::Ticks::default(),
        printer,
        reading,
        screen: Screen::default(),
    };
    let tables = tables(&scene);
    let text = write(&tables, &printer);
    (tables, text)
}

/// Lines of a CSV text, read by the library.
fn lines(text: &str) -> Vec<Vec<String>> {
    let text = text.strip_prefix('\u{feff}').expect("the mark of UTF-8 comes first");
    let mut builder = csv::ReaderBuilder::new();
    let mut reader = builder.flexible(true).has_headers(false).from_reader(text.as_bytes());
    let line = |record: csv::StringRecord| record.iter().map(str::to_owned).collect();
    reader.records().map(|record| line(record.unwrap())).collect()
}

/// One table read back: its heads, and its rows by name.
fn read_back(table: &Table, printer: &Printer) -> (Vec<String>, Vec<Vec<String>>) {
    let text = write(core::slice::from_ref(table), printer);
    let mut lines = lines(&text);
    let head = lines.remove(0);
    (head, lines)
}

#[test]
fn every_row_has_as_many_cells_as_there_are_heads() {
    let words = Words::load(&[EN, EN_GB]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    for path in files("examples/jobs") {
        for reading in READINGS {
            for table in tables_of(&path, reading, Numbers::METRIC).0 {
                let (head, rows) = read_back(&table, &printer);
                assert!(head.iter().all(|name| !name.is_empty()), "{path}: {head:?}");
                assert_eq!(rows.len(), table.rows.len());
                for row in rows {
                    assert_eq!(row.len(), head.len(), "{path}: {}: {row:?}", table.title);
                }
            }
        }
    }
}

#[test]
fn the_sheets_of_the_book_are_the_plans() {
    for path in files("examples/jobs") {
        let (_, job, shop) = planned_file(&path);
        let planned = plan(&job, &shop);
        let words = Words::load(&[EN, EN_GB]);
        let printer = Printer { words: &words, numbers: Numbers::METRIC };
        let (found, _) = tables_of(&path, Reading::Design, Numbers::METRIC);
        let table = found.iter().find(|table| table.title == "Sheets of the book").unwrap();
        let (head, rows) = read_back(table, &printer);
        let column = |name: &str| head.iter().position(|head| head == name).expect(name);
        let most = column("Push-out beyond the outermost leaf, most (mm)");
        let length = column("Leaf, fold to cut (mm)");
        for (row, leaf) in rows.iter().zip(&planned.results.leaves) {
            // A thousandth of a millimetre is written.
            let near =
                |text: &str, value: f64| (text.parse::<f64>().unwrap() - value).abs() <= 5.1e-4;
            assert_eq!(row[0], leaf.place.to_string());
            assert!(near(&row[most], leaf.push_out.high.get()), "{path}: {row:?}");
            assert!(near(&row[length], leaf.length.get()), "{path}: {row:?}");
        }
    }
}

#[test]
fn numbers_are_the_same_in_every_language_and_follow_the_unit() {
    let comma = Numbers { unit: LengthUnit::Millimetre, mark: Mark::Comma };
    let inch = Numbers { unit: LengthUnit::Inch, mark: Mark::Point };
    let path = "examples/jobs/island-atlas.json";
    let (_, point) = tables_of(path, Reading::Floor, Numbers::METRIC);
    support::same(&tables_of(path, Reading::Floor, comma).1, &point, "with a decimal comma");
    let (_, inches) = tables_of(path, Reading::Floor, inch);
    assert!(inches.contains("Leaf, fold to cut (in)") && !inches.contains("(mm)"));
    // An inch is 25.4 mm: the first number of the column, both ways.
    let first = |text: &str, name: &str| -> f64 {
        let lines = lines(text);
        let at = lines.iter().position(|line| line.iter().any(|head| head == name)).unwrap();
        let column = lines[at].iter().position(|head| head == name).unwrap();
        lines[at + 1][column].parse().unwrap()
    };
    let millimetres = first(&point, "Leaf, fold to cut (mm)");
    assert!((first(&inches, "Leaf, fold to cut (in)") * 25.4 - millimetres).abs() < 0.002);
}

#[test]
fn a_client_gets_no_limit_no_run_and_no_cost() {
    let titles = |reading| -> Vec<String> {
        let found = tables_of("examples/jobs/teapot-guide.json", reading, Numbers::METRIC).0;
        found.into_iter().map(|table| table.title).collect()
    };
    assert_eq!(titles(Reading::Client), ["Sheets of the book"]);
    let makers = titles(Reading::Floor);
    assert_eq!(makers.len(), 8, "{makers:?}");
    assert_eq!(makers, titles(Reading::Design));
}

#[test]
fn what_a_spreadsheet_would_run_it_shows() {
    for text in ["=1+1", "+1", "-1", "@x", "\t=1", "\r=1", " =1", "\u{a0}=1", "＝1", "\n=1"] {
        assert_eq!(safe(text), format!("'{text}"));
    }
    for text in ["", "A5", "1=1", "Pond Silk", "'=1"] {
        assert_eq!(safe(text), text);
    }
    // In every place that outside text can reach: titles, heads, cells. Numbers stay numbers.
    let words = Words::load(&[EN, EN_GB]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let table = Table {
        title: "=cmd".to_owned(),
        columns: vec![Column::text("=A1"), Column::value("x", Unit::Length)],
        rows: vec![vec![
            Cell::Text("@sum".to_owned()),
            Cell::Value(Measure::new(-1.5, Unit::Length)),
        ]],
    };
    let text = write(&[table.clone(), table], &printer);
    let part = "'=cmd\r\n'=A1,x (mm)\r\n'@sum,-1.5\r\n";
    assert_eq!(text, format!("\u{feff}{part}\r\n{part}"));
}

#[test]
fn quotes_commas_and_lines_come_back() {
    let words = Words::load(&[EN, EN_GB]);
    let printer = Printer { words: &words, numbers: Numbers::METRIC };
    let awkward = ["a \"b\" c", "one, two", "one\ntwo", "one\r\ntwo", " x ", "ä ½ 纸", ""];
    let table = Table {
        title: String::new(),
        columns: vec![Column::text("one"), Column::band("two", Unit::Count)],
        rows: awkward
            .iter()
            .map(|text| vec![Cell::Text((*text).to_owned()), Cell::Empty])
            .collect(),
    };
    let (head, rows) = read_back(&table, &printer);
    assert_eq!(head, ["one", "two, least", "two, expected", "two, most"]);
    for (row, text) in rows.iter().zip(awkward) {
        assert_eq!(*row, [text, "", "", ""]);
    }
    let band = Band { low: 1.0, nominal: 2.0, high: 3.0 };
    let table = Table { rows: vec![vec![Cell::Empty, Cell::Band(band)]], ..table };
    assert_eq!(read_back(&table, &printer).1, [["", "1", "2", "3"]]);
}
