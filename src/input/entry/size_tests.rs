//! Sizes as typed.

use super::LengthUnit::{Inch, Millimetre};
use super::{LengthUnit, Reading, size};
use crate::units::{Mm, Size};

fn mm(width: f64, height: f64) -> Option<Size> {
    Some(Size::new(Mm(width), Mm(height)))
}

fn inches(width: f64, height: f64) -> Option<Size> {
    Some(Size::new(Mm::from_inches(width), Mm::from_inches(height)))
}

fn read(text: &str, unit: LengthUnit) -> Option<Size> {
    size(text, unit).value()
}

#[test]
fn names() {
    for (text, sides) in [
        ("A5", mm(148.0, 210.0)),
        ("a 5", mm(148.0, 210.0)),
        ("DIN A5", mm(148.0, 210.0)),
        ("a5 landscape", mm(210.0, 148.0)),
        ("A5 quer", mm(210.0, 148.0)),
        ("landscape A5", mm(210.0, 148.0)),
        ("A5 portrait", mm(148.0, 210.0)),
        ("A5 Upright", mm(148.0, 210.0)),
        ("A5 hoch", mm(148.0, 210.0)),
        ("A5 Querformat", mm(210.0, 148.0)),
        ("Endformat A5", mm(148.0, 210.0)),
        ("letter", inches(8.5, 11.0)),
        ("US Letter", inches(8.5, 11.0)),
        ("half letter", inches(5.5, 8.5)),
        ("Half-Letter", inches(5.5, 8.5)),
        ("digest", inches(5.5, 8.5)),
        ("dl", mm(99.0, 210.0)),
        ("A5 (148 x 210 mm)", mm(148.0, 210.0)),
    ] {
        assert_eq!(read(text, Millimetre), sides, "{text}");
        assert_eq!(read(text, Inch), sides, "{text}");
    }
}

#[test]
fn pairs_with_units() {
    for (text, sides) in [
        ("8.5 x 11 in", inches(8.5, 11.0)),
        ("8.5\" x 11\"", inches(8.5, 11.0)),
        ("8.5″ × 11″", inches(8.5, 11.0)),
        ("8½ × 11", inches(8.5, 11.0)),
        ("8-1/2 x 11", inches(8.5, 11.0)),
        ("8 1/2x11in", inches(8.5, 11.0)),
        ("6 by 9 inches", inches(6.0, 9.0)),
        ("170 × 240", mm(170.0, 240.0)),
        ("240 × 170", mm(240.0, 170.0)),
        ("170*240 mm", mm(170.0, 240.0)),
        ("170mm x 240mm", mm(170.0, 240.0)),
        ("170mmx240mm", mm(170.0, 240.0)),
        ("14.8 x 21 cm", mm(148.0, 210.0)),
        ("14,8 x 21,0 cm", mm(148.0, 210.0)),
        ("14,8 x 21 Zentimeter", mm(148.0, 210.0)),
        ("6 x 9 Zoll", inches(6.0, 9.0)),
        ("80x80", mm(80.0, 80.0)),
        ("square 80 mm", mm(80.0, 80.0)),
        ("80 mm square", mm(80.0, 80.0)),
        ("170 x 240 landscape", mm(240.0, 170.0)),
        ("170\u{a0}×\u{2009}240", mm(170.0, 240.0)),
    ] {
        assert_eq!(read(text, Millimetre), sides, "{text}");
        assert_eq!(read(text, Inch), sides, "{text}");
    }
}

#[test]
fn small_bare_numbers_are_inches_or_asked_about() {
    assert_eq!(read("8.5 x 11", Inch), inches(8.5, 11.0));
    let Reading::Ask(question) = size("8.5 x 11", Millimetre) else { panic!("must ask") };
    let typed: Vec<_> = question.choices.iter().map(|choice| choice.typed.as_str()).collect();
    assert_eq!(typed, ["8.5 x 11 in", "8.5 x 11 cm"]);
    let sides: Vec<_> = typed.iter().map(|text| read(text, Millimetre)).collect();
    assert_eq!(sides, [inches(8.5, 11.0), mm(85.0, 110.0)]);
    assert_eq!(read("21 x 29.7", Millimetre), mm(210.0, 297.0));
}

#[test]
fn beginnings() {
    for text in [
        "",
        "A",
        "a5 lan",
        "8.5 x",
        "170",
        "170 mm",
        "170 x 2",
        "8.5 x 11 i",
        "half",
        "half l",
        "landscape",
        "square",
        "8.5 x 1",
        "170 x 240 m",
        "8.",
    ] {
        assert_eq!(size(text, Millimetre), Reading::Incomplete, "{text}");
    }
}

#[test]
fn faults() {
    for text in [
        "A9",
        "B1",
        "banana",
        "170 x 900",
        "20 x 80 mm",
        "-1 x 5",
        "1e308 x 1e308",
        "NaN",
        "🦆",
        "170 x 240 x 3",
        "x 240",
        "8.5 × 11 lb",
        "A5 A4",
        "1/2 x 1/2",
    ] {
        let read = size(text, Millimetre);
        assert!(matches!(read, Reading::Wrong(_)), "{text}: {read:?}");
    }
}
