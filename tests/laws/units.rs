//! A change of unit changes no meaning.

use crate::FAILURES;
use crate::jobs::{length, paper, size, word};
use crate::support::{self, JSON};
use proptest::prelude::*;
use quirefit::draft::{Draft, Field, Kind, read_text};
use quirefit::entry::LengthUnit;
use quirefit::job;
use quirefit::page::{Event, Session};
use quirefit::words::Files;

/// Every text field that holds a length, a size or a paper, with a text typed in one of the units.
fn lengths() -> impl Strategy<Value = (&'static str, String)> {
    let measured: Vec<&'static Field> = job::SCHEMA
        .fields
        .iter()
        .filter(|field| matches!(field.kind, Kind::Length(..) | Kind::Size | Kind::Paper))
        .collect();
    proptest::sample::select(measured).prop_flat_map(|field| {
        let typed = match field.kind {
            Kind::Length(..) => prop_oneof![
                length(0.6..30.0),
                word(&["1/8", "3", "0,5", "2.50", " 4 ", "⅛\"", "1 1/4 in", "7.", "-", "6 m"]),
            ]
            .boxed(),
            Kind::Size => prop_oneof![
                size(),
                word(&["8.5 x 11", "170 x 240", "5 1/2 x 8 1/2", "148x210", "letter"]),
            ]
            .boxed(),
            _ => prop_oneof![
                paper(),
                word(&[
                    "130 gsm silk 0.108",
                    "0.0048 100# gloss text",
                    "100 lb text 0.0048",
                    "90 gsm 112 µm",
                    "0.11 mm",
                    "silk 130 gsm 0.108 smooth",
                    "115 silk",
                ]),
            ]
            .boxed(),
        };
        typed.prop_map(move |text| (field.id, text))
    })
}

proptest! {
    #![proptest_config(support::tried(128, FAILURES))]

    /// Millimetres, inches and back: each field means the same length, and keeps its digits.
    #[test]
    fn a_change_of_unit_changes_no_meaning(
        typed in proptest::collection::vec(lengths(), 1..6),
        start_in_inches in any::<bool>(),
    ) {
        let languages = ["en-GB".to_owned()];
        let mut session = Session::new(Files::new(), &languages, None, JSON);
        session.handle(&Event::new("act", "new", ""));
        let (one, other) = if start_in_inches { ("in", "mm") } else { ("mm", "in") };
        session.handle(&Event::new("change", "units", one));
        for (field, text) in &typed {
            session.handle(&Event::new("input", field, text));
        }
        let before = session.draft().clone();
        session.handle(&Event::new("change", "units", other));
        let between = session.draft().clone();
        session.handle(&Event::new("change", "units", one));
        let after = session.draft().clone();
        for (field, _) in &typed {
            let kind = job::SCHEMA.field(field).unwrap().kind;
            let meant = |draft: &Draft, unit| read_text(kind, draft.get(field), LengthUnit::of(unit)).value();
            let meaning = |draft: &Draft, unit| format!("{:?}", without_text(meant(draft, unit)));
            if meant(&before, one).is_some() {
                prop_assert_eq!(meaning(&before, one), meaning(&between, other), "{}", between.get(field));
                prop_assert_eq!(meaning(&before, one), meaning(&after, one), "{}", after.get(field));
            }
            prop_assert!(between.get(field).starts_with(before.get(field)));
            prop_assert!(after.get(field).starts_with(before.get(field)));
        }
    }
}

/// A value without the text it was read from, which may have got its unit meanwhile.
fn without_text(value: Option<quirefit::draft::Value>) -> Option<quirefit::draft::Value> {
    use quirefit::draft::Value;
    value.map(|value| match value {
        Value::Paper(stock) => Value::Paper(quirefit::paper::Stock {
            name: String::new(),
            typed: String::new(),
            ..stock
        }),
        other => other,
    })
}
