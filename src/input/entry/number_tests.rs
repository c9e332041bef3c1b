//! Numbers as typed.

use super::{Reading, count, number};

fn measured(text: &str) -> Option<f64> {
    number(text).value()
}
fn counted(text: &str) -> Option<f64> {
    count(text).value()
}

#[test]
fn decimals_are_exact() {
    for (text, value) in [
        ("64", 64.0),
        ("0,125", 0.125),
        ("0.1", 0.1),
        (".0048", 0.0048),
        ("2.500", 2.5),
        ("1.571", 1.571),
        ("1,250.5", 1250.5),
        ("1.250,5", 1250.5),
        ("1,250,000", 1_250_000.0),
        ("12'500", 12_500.0),
        ("+3", 3.0),
        ("000000000000000000001", 1.0),
        ("123456789.123456", 123_456_789.123_456),
    ] {
        assert_eq!(measured(text), Some(value), "{text}");
    }
}

#[test]
fn fractions() {
    for (text, value) in [
        ("½", 0.5),
        ("⅛", 0.125),
        ("1/8", 0.125),
        ("8½", 8.5),
        ("8 ½", 8.5),
        ("5-1/2", 5.5),
        ("5 1/2", 5.5),
        ("11 15/16", 11.9375),
        ("5 1⁄2", 5.5),
    ] {
        assert_eq!(measured(text), Some(value), "{text}");
    }
}

#[test]
fn thousands_of_counted_things() {
    for (text, value) in [
        ("1,250", 1250.0),
        ("2.500", 2500.0),
        ("12 500", 12_500.0),
        ("12\u{a0}500", 12_500.0),
        ("12\u{202f}500\u{2009}000", 12_500_000.0),
        ("12’500", 12_500.0),
        ("12.5", 12.5),
        ("0.125", 0.125),
        ("1250.500", 1250.5),
    ] {
        assert_eq!(counted(text), Some(value), "{text}");
    }
}

#[test]
fn no_numbers() {
    let digits = "9".repeat(16);
    let long = "1".repeat(5000);
    for text in [
        "1e308",
        "-1",
        "NaN",
        "inf",
        "1.2.3",
        "1,2,3",
        "1.250,500,5",
        "5/0",
        "1/0",
        "--",
        "🦆",
        "½½",
        "8/5",
        "3 mm",
        "1 2",
        &digits,
        &long,
    ] {
        assert!(matches!(number(text), Reading::Wrong(_)), "{text}");
    }
    for text in ["", " ", "\u{a0}", "2.", "0,"] {
        assert!(matches!(number(text), Reading::Incomplete), "{text}");
    }
}
