//! Whole orders in one line.

use super::LengthUnit::Millimetre;
use super::phrase;

/// "pages=64pp|size=A5|…" and what was left.
fn cut(text: &str) -> (String, String) {
    let phrase = phrase(text, Millimetre);
    let fields: Vec<_> =
        phrase.fields.iter().map(|(field, text)| format!("{field}={text}")).collect();
    (fields.join("|"), phrase.rest.join("|"))
}

#[test]
fn orders() {
    for (text, fields) in [
        ("64pp A5, 100# text, 750", "pages=64pp|size=A5|paper=100# text|copies=750"),
        (
            "64 pages A5 100 pound text 750 copies",
            "pages=64 pages|size=A5|paper=100 pound text|copies=750 copies",
        ),
        (
            "64 pages, A5, 100 pound text, 750 copies",
            "pages=64 pages|size=A5|paper=100 pound text|copies=750 copies",
        ),
        (
            "60 + 4, A5 landscape, 130 silk, cover 250 silk, 2.500 copies",
            "pages=60 + 4|size=A5 landscape|paper=130 silk|cover=250 silk|copies=2.500 copies",
        ),
        (
            "60+4 A5 landscape 130 silk cover 250 silk 2.500 copies",
            "pages=60+4|size=A5 landscape|paper=130 silk|cover=250 silk|copies=2.500 copies",
        ),
        (
            "60+4 A5 250 silk cover 130 silk 750",
            "pages=60+4|size=A5|paper=130 silk|cover=250 silk cover|copies=750",
        ),
        (
            "20pp + 4pp cover; 8.5 x 11 in; 80 lb gloss text; 100 lb gloss cover; 2,500",
            "pages=20pp + 4pp cover|size=8.5 x 11 in|paper=80 lb gloss text\
             |cover=100 lb gloss cover|copies=2,500",
        ),
        ("64, A5, 90 gsm, 12 000", "pages=64|size=A5|paper=90 gsm|copies=12 000"),
        ("A5, 64, 90 gsm, 750", "pages=64|size=A5|paper=90 gsm|copies=750"),
        ("64 A5 90gsm 750", "pages=64|size=A5|paper=90gsm|copies=750"),
        ("64pp,A5,750", "pages=64pp|size=A5|copies=750"),
        (
            "A5, 64pp self cover, 170 (0,135), 20,000",
            "pages=64pp self cover|size=A5|paper=170 (0,135)|copies=20,000",
        ),
        (
            "A6 32 pp self cover 115 silk 5000",
            "pages=32 pp self cover|size=A6|paper=115 silk|copies=5000",
        ),
        ("64pp, self cover, A5, landscape", "pages=64pp self cover|size=A5 landscape"),
        ("64pp, A5, 90 gsm, 112 µm, 750", "pages=64pp|size=A5|paper=90 gsm 112 µm|copies=750"),
        (
            "64pp, A5, 100 lb, gloss text, 750",
            "pages=64pp|size=A5|paper=100 lb gloss text|copies=750",
        ),
        ("64pp, A5, 130 gsm, silk, 750", "pages=64pp|size=A5|paper=130 gsm silk|copies=750"),
        ("64pp A5\n100# text\n750", "pages=64pp|size=A5|paper=100# text|copies=750"),
        ("32pp, Pond Silk 130, A6", "pages=32pp|size=A6|paper=Pond Silk 130"),
        ("16 leaves, 80 lb cover", "pages=16 leaves|paper=80 lb cover"),
        (
            "24pp plus cover 250 silk, A5, 130 silk",
            "pages=24pp plus cover|size=A5|paper=130 silk|cover=250 silk",
        ),
        (
            "64pp, A5, 100# text, 10 pt cover",
            "pages=64pp|size=A5|paper=100# text|cover=10 pt cover",
        ),
        ("500 x 24pp A5 90gsm", "pages=24pp|size=A5|paper=90gsm|copies=500"),
        ("2,500 x A5 24pp", "pages=24pp|size=A5|copies=2,500"),
        ("16pp A5 130gsm gloss 5k", "pages=16pp|size=A5|paper=130gsm gloss|copies=5k"),
        (
            "24pp A4 portrait, 115gsm silk text with 250gsm silk cover, 1000 off",
            "pages=24pp|size=A4 portrait|paper=115gsm silk text|cover=250gsm silk cover|copies=1000 off",
        ),
        (
            "48pp + 4pp cover 210x210mm text 150gsm matt cover 300gsm matt 2000",
            "pages=48pp + 4pp cover|size=210x210mm|paper=text 150gsm matt|cover=300gsm matt|copies=2000",
        ),
        (
            "24 page A5 booklet on 100gsm uncoated, 300",
            "pages=24 page|size=A5|paper=100gsm uncoated|copies=300",
        ),
        ("size: A5, paper: 90 gsm, cover: 250 silk", "size=A5|paper=90 gsm|cover=250 silk"),
        (
            "15 pages 8.5 x 11 in 80 lb gloss text (0.0038 in) self cover 420",
            "pages=15 pages self cover|size=8.5 x 11 in|paper=80 lb gloss text (0.0038 in)|copies=420",
        ),
        ("64pp A5 90 gsm plus cover 750", "pages=64pp plus cover|size=A5|paper=90 gsm|copies=750"),
        (
            "64 Seiten, A5, 135 g Bilderdruck glänzend, 750 Stück",
            "pages=64 Seiten|size=A5|paper=135 g Bilderdruck glänzend|copies=750 Stück",
        ),
        (
            "60 + 4 Seiten, A5 quer, Inhalt 135 g Bilderdruck matt, Umschlag 250 g matt, 2.500 Exemplare",
            "pages=60 + 4 Seiten|size=A5 quer|paper=135 g Bilderdruck matt|cover=250 g matt|copies=2.500 Exemplare",
        ),
        (
            "750 Hefte A5 hoch 32 Seiten auf 90 g Offset mit Umschlag 300 g Karton",
            "pages=32 Seiten|size=A5 hoch|paper=90 g Offset|cover=300 g Karton|copies=750 Hefte",
        ),
        (
            "16 Blatt, 210 x 210 mm, 90 g 0,112 mm, Auflage 1200",
            "pages=16 Blatt|size=210 x 210 mm|paper=90 g 0,112 mm|copies=Auflage 1200",
        ),
        (
            "24pp A4, 115gsm silk with cover 250gsm silk",
            "pages=24pp|size=A4|paper=115gsm silk|cover=250gsm silk",
        ),
        ("64", "pages=64"),
        ("60 + 4", "pages=60 + 4"),
        ("A5", "size=A5"),
        ("750 copies of 64 pages on 90 gsm", "pages=64 pages|paper=90 gsm|copies=750 copies"),
        ("", ""),
    ] {
        assert_eq!(cut(text).0, fields, "{text}");
    }
}

#[test]
fn what_has_no_place_is_said() {
    assert_eq!(cut("64pp, banana, A5"), ("pages=64pp|size=A5".into(), "banana".into()));
    assert_eq!(cut("64pp, A5, A4").1, "A4");
    assert_eq!(cut("A4 manual, 64 page booklet, 90 gsm").1, "");
    assert_eq!(cut("1, 2, 3").1, "3");
    assert_eq!(cut("5000 pages, A5").0, "pages=5000 pages|size=A5");
}

/// No part of these is a count or a size: all of it is left, as it stands.
#[test]
fn what_is_understood_in_part_is_not_taken() {
    for text in [
        "1e308",
        "1e+308",
        "-1",
        "64 pag",
        "3 dozen",
        "1e308 copies",
        "2 million copies",
        "~64 pages",
        "10-12 pages",
        "500/750",
        "8:30",
        "64%",
        "64 + 4 + 4",
        "60 +",
        "64/",
        "90gsmx",
        "-90 gsm",
        "5x5 m",
        "5 × 5 m",
        "5x5m",
        "148 x 210 feet",
        "148 x 210 x 3 mm",
        "5 x 5 x 5",
        "5x",
        "x 5",
        "5 x banana",
    ] {
        assert_eq!(cut(text), (String::new(), text.to_owned()), "{text}");
        // Nor beside what is understood, with commas or without.
        let (fields, rest) = cut(&format!("A4, {text}, 130 silk"));
        assert_eq!((&*fields, &*rest), ("size=A4|paper=130 silk", text), "{text}");
    }
    for (text, fields, rest) in [
        ("64 pages A5 1e308", "pages=64 pages|size=A5", "1e308"),
        ("64 pages 5x5 m 750 copies", "pages=64 pages|copies=750 copies", "5x5 m"),
        ("64pp A5 -750", "pages=64pp|size=A5", "-750"),
        ("A5 + 4", "size=A5", "+ 4"),
        ("4/4 64pp A5", "pages=64pp|size=A5", "4/4"),
        ("64pp 130 silk 0.112 m A5", "pages=64pp|size=A5", "130 silk 0.112 m"),
    ] {
        assert_eq!(cut(text), (fields.to_owned(), rest.to_owned()), "{text}");
    }
}

/// Signs and words between parts that are understood take nothing away.
#[test]
fn what_stands_between_parts_parts_them() {
    for (text, fields) in [
        ("64pp/A5/750", "pages=64pp|size=A5|copies=750"),
        ("64pp - A5 - 750", "pages=64pp|size=A5|copies=750"),
        ("A5-750 24pp", "pages=24pp|size=A5|copies=750"),
        ("24pp x 500 A5", "pages=24pp|size=A5|copies=500"),
        ("64pp A5 + 4", "pages=64pp + 4|size=A5"),
        ("A5 750 landscape", "size=A5 landscape|copies=750"),
        ("(64 pages) A5", "pages=(64 pages)|size=A5"),
        ("64pp A5 self cover 750", "pages=64pp self cover|size=A5|copies=750"),
    ] {
        assert_eq!(cut(text), (fields.to_owned(), String::new()), "{text}");
    }
}

#[test]
fn absurd_lines_end() {
    for text in
        ["🦆".repeat(100), "9".repeat(5000), "a ".repeat(200), "1 ".repeat(200), ",".repeat(400)]
    {
        drop(phrase(&text, Millimetre));
    }
}
