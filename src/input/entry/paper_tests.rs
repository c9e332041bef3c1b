//! Papers as typed.

use super::LengthUnit::{Inch, Millimetre};
use super::{Reading, kind_choices, paper};
use crate::data::DEMO_STOCKS;
use crate::paper::{Grain, Stock, Thickness, Weight, caliper, grammage};
use crate::units::{Bulk, Gsm, Mm};

fn read(text: &str) -> Stock {
    match paper(text, Millimetre) {
        Reading::Understood(stock, _) => stock,
        other => panic!("{text}: {other:?}"),
    }
}

#[track_caller]
fn close(given: f64, wanted: f64) {
    assert!((given - wanted).abs() < 1e-9 * wanted.abs().max(1.0), "{given} for {wanted}");
}

#[test]
fn pounds_with_a_grade() {
    for (text, weight, grade, kind) in [
        ("100# text", 100.0, "text", "unsaid"),
        ("100#text", 100.0, "text", "unsaid"),
        ("100 pound text", 100.0, "text", "unsaid"),
        ("100 text", 100.0, "text", "unsaid"),
        ("100 lb cover", 100.0, "cover", "unsaid"),
        ("100lb gloss text", 100.0, "text", "gloss"),
        ("80 LB Gloss Book", 80.0, "text", "gloss"),
        ("80 lb gloss cover", 80.0, "cover", "gloss-cover"),
        ("80 lb matte cover", 80.0, "cover", "silk-cover"),
        ("20 lb bond", 20.0, "bond", "copier"),
        ("20# copier", 20.0, "bond", "copier"),
        ("60 lb offset", 60.0, "text", "uncoated"),
        ("60 lb opaque offset cover", 60.0, "cover", "uncoated"),
        ("110 lb index", 110.0, "index", "card"),
        ("110 index", 110.0, "index", "card"),
        ("30 lb newsprint", 30.0, "newsprint", "newsprint"),
    ] {
        let stock = read(text);
        let Some(Weight::Pounds(pounds, basis)) = stock.weight else { panic!("{text}") };
        assert_eq!((pounds, basis.id, stock.kind.id), (weight, grade, kind), "{text}");
        assert_eq!(stock.thickness, Thickness::FromKind, "{text}");
    }
}

#[test]
fn grams() {
    for (text, weight, kind) in [
        ("90 gsm", 90.0, "unsaid"),
        ("90gsm", 90.0, "unsaid"),
        ("90 g/m2", 90.0, "unsaid"),
        ("90 g/m²", 90.0, "unsaid"),
        ("90g", 90.0, "unsaid"),
        ("90 gr", 90.0, "unsaid"),
        ("130 silk", 130.0, "silk"),
        ("silk 130", 130.0, "silk"),
        ("115 matt", 115.0, "silk"),
        ("250 silk cover", 250.0, "silk-cover"),
        ("300 gsm silk card", 300.0, "silk-cover"),
        ("250 gloss cover", 250.0, "gloss-cover"),
        ("80 gsm recycled offset", 80.0, "recycled"),
        ("100 gsm Marmalade White wove", 100.0, "bulky"),
        ("100 lb text (148 gsm)", 148.0, "unsaid"),
    ] {
        let stock = read(text);
        assert_eq!(stock.weight, Some(Weight::Grammage(Gsm(weight))), "{text}");
        assert_eq!(stock.kind.id, kind, "{text}");
        assert_eq!((stock.name.as_str(), stock.typed.as_str()), (text, text));
    }
}

/// Words of the trade in German.
#[test]
fn german_grams_and_kinds() {
    for (text, weight, kind) in [
        ("135 g Bilderdruck glänzend", 135.0, "gloss"),
        ("135 g/m² Bilderdruck matt", 135.0, "silk"),
        ("Bilderdruck 135 g", 135.0, "silk"),
        ("115 g glänzend", 115.0, "gloss"),
        ("115g seidenmatt", 115.0, "silk"),
        ("90 g Offset", 90.0, "uncoated"),
        ("90 g Offsetpapier weiß", 90.0, "uncoated"),
        ("100 g ungestrichen", 100.0, "uncoated"),
        ("80 g Kopierpapier", 80.0, "copier"),
        ("80 g Recycling", 80.0, "recycled"),
        ("80 g Recyclingpapier", 80.0, "recycled"),
        ("80 g Volumenpapier", 80.0, "bulky"),
        ("45 g Zeitungsdruck", 45.0, "newsprint"),
        ("300 g Karton", 300.0, "card"),
        ("300 g Karton glänzend", 300.0, "gloss-cover"),
        ("Umschlag 250 g matt", 250.0, "silk-cover"),
        ("250 g/qm Umschlagkarton matt", 250.0, "silk-cover"),
    ] {
        let stock = read(text);
        assert_eq!(stock.weight, Some(Weight::Grammage(Gsm(weight))), "{text}");
        assert_eq!(stock.kind.id, kind, "{text}");
    }
}

#[test]
fn german_thicknesses_volumes_and_packs() {
    for (text, leaf) in [
        ("90 g 0,112 mm", 0.112),
        ("90 g, Dicke 0,112 mm", 0.112),
        ("90 g 112 µm", 0.112),
        ("90 g 112 Mikrometer", 0.112),
        ("80 g 1,5-fach", 0.12),
        ("80 g 1,5-faches Volumen", 0.12),
        ("80 g 1,5faches Volumen", 0.12),
        ("80 g Volumen 1,5", 0.12),
        ("90 g, 20 Blatt 2,1 mm", 0.105),
        ("90 g, Packen von 20 Blatt 2,1 mm", 0.105),
        ("20 Blatt 2,1 mm", 0.105),
    ] {
        let stock = read(text);
        close(caliper(&stock).unwrap().value.nominal.get(), leaf);
    }
    assert_eq!(read("90 g, Laufrichtung parallel zum Rücken").grain, Grain::AlongSpine);
    assert_eq!(read("90 g, Laufrichtung quer zum Rücken").grain, Grain::AcrossSpine);
    assert_eq!(read("90 g Schmalbahn").grain, Grain::Unknown);
}

#[test]
fn thicknesses() {
    for (text, weight, leaf) in [
        ("90 gsm 112 µm", Some(90.0), 0.112),
        ("90 gsm 112 um", Some(90.0), 0.112),
        ("130 silk 0.106 mm", Some(130.0), 0.106),
        ("130 silk (0.106)", Some(130.0), 0.106),
        ("150 (0,125)", Some(150.0), 0.125),
        ("70 coated (0.058)", Some(70.0), 0.058),
        ("90 offset (0.115)", Some(90.0), 0.115),
        ("10 pt", None, 0.254),
        ("10 pt board", None, 0.254),
        ("12pt C1S", None, 0.3048),
        ("4.1 mil", None, 0.10414),
        ("500 ppi", None, 0.1016),
        (".0048 in", None, 0.12192),
        ("0.0048", None, 0.12192),
        ("300 gsm board 0.4 mm", Some(300.0), 0.4),
    ] {
        let stock = read(text);
        assert_eq!(grammage(&stock).map(|band| band.nominal.get()), weight, "{text}");
        close(caliper(&stock).expect(text).value.nominal.get(), leaf);
    }
    assert_eq!(read("10 pt board").kind.id, "board");
    let pounds = read("80 lb gloss text (0.0038 in)");
    assert!(matches!(pounds.weight, Some(Weight::Pounds(..))));
    close(caliper(&pounds).unwrap().value.nominal.inches(), 0.0038);
}

#[test]
fn bulk_and_packs() {
    for (text, bulk) in [
        ("80 gsm vol 15", 1.5),
        ("80 gsm volume 1.5", 1.5),
        ("90 gsm 1.3 cm3/g", 1.3),
        ("90 gsm 1,3 cm³/g", 1.3),
        ("90 gsm bulk 1.3", 1.3),
        ("90 gsm bulk = 1.3", 1.3),
        ("70 gsm 2.2 bulk", 2.2),
        ("2.2 bulk 70 gsm", 2.2),
    ] {
        assert_eq!(read(text).thickness, Thickness::Bulk(Bulk(bulk)), "{text}");
    }
    let pack = Thickness::Pack { leaves: 20, thickness: Mm(2.1) };
    for text in [
        "pack of 20 leaves 2.1 mm",
        "pack of 20: 2.1 mm",
        "20 leaves = 2.1 mm",
        "2.1 mm for 20 leaves",
        "90 gsm, 20 sheets = 2.1 mm",
        "90 gsm 0.11 mm 20 leaves 2.1 mm",
    ] {
        assert_eq!(read(text).thickness, pack, "{text}");
    }
}

#[test]
fn grain_only_from_the_spine() {
    for (text, grain) in [
        ("90 gsm grain along spine", Grain::AlongSpine),
        ("90 gsm, grain parallel to the spine", Grain::AlongSpine),
        ("90 gsm grain across", Grain::AcrossSpine),
        ("90 gsm long grain", Grain::Unknown),
        ("90 gsm short grain", Grain::Unknown),
    ] {
        assert_eq!(read(text).grain, grain, "{text}");
    }
}

#[test]
fn questions_answer_themselves() {
    for (text, first) in [
        ("80 lb", "80 lb text"),
        ("80#", "80# text"),
        ("100 lb gloss", "100 lb gloss text"),
        ("90", "90 gsm"),
        ("90 offset", "90 gsm offset"),
        ("90 marmalade", "90 gsm marmalade"),
    ] {
        let Reading::Ask(question) = paper(text, Millimetre) else { panic!("{text}") };
        let typed: Vec<_> = question.choices.iter().map(|choice| choice.typed.as_str()).collect();
        assert_eq!(typed.first(), Some(&first), "{text}");
        assert!(typed.len() > 1, "{text}");
        typed.iter().for_each(|text| drop(read(text)));
    }
    let Reading::Ask(question) = paper("80 lb", Millimetre) else { panic!("80 lb") };
    let typed: Vec<_> = question.choices.iter().map(|choice| choice.typed.as_str()).collect();
    assert_eq!(typed, ["80 lb text", "80 lb cover", "80 lb bond", "80 lb index"]);
    let Reading::Ask(question) = paper("90", Millimetre) else { panic!("90") };
    let typed: Vec<_> = question.choices.iter().map(|choice| choice.typed.as_str()).collect();
    assert_eq!(typed, ["90 gsm", "90 lb text", "90 lb cover"]);
}

#[test]
fn beginnings() {
    for text in [
        "",
        "9",
        "1",
        "90 gs",
        "100 l",
        "100 lb te",
        "130 sil",
        "silk",
        "text",
        "vol 15",
        "20 leaves",
        "90 gsm 1",
        "90 gsm 112",
        "#",
        "sil",
    ] {
        let read = paper(text, Millimetre);
        let begun = matches!(read, Reading::Incomplete);
        assert!(begun, "{text}: {read:?}");
    }
}

#[test]
fn faults() {
    for (text, key) in [
        ("marmalade", "entry.paper.wrong"),
        ("🦆", "entry.paper.wrong"),
        ("NaN", "entry.paper.wrong"),
        ("-90 gsm", "entry.paper.wrong"),
        ("5000", "entry.paper.odd"),
        ("5000 lb", "entry.paper.odd"),
        ("700 gsm", "entry.paper.weight"),
        ("10 gsm", "entry.paper.weight"),
        ("300 lb cover", "entry.paper.weight"),
        ("90 gsm 130 gsm", "entry.paper.twice"),
        ("90 gsm 2 mm", "entry.paper.leaf"),
        ("90 gsm 0.9 mm", "entry.paper.disagree"),
        ("90 gsm bulk 15", "entry.paper.bulk"),
        ("0 leaves 2 mm", "entry.paper.pack"),
        ("board", "entry.paper.board"),
        ("300 gsm board", "entry.paper.board"),
        ("0 ppi", "entry.paper.wrong"),
    ] {
        match paper(text, Millimetre) {
            Reading::Wrong(fault) => assert_eq!(fault.wrong.key, key, "{text}"),
            other => panic!("{text}: {other:?}"),
        }
    }
}

#[test]
fn very_small_bare_thicknesses_follow_the_page() {
    let leaf = |text, unit| caliper(&paper(text, unit).value().unwrap()).unwrap().value.nominal;
    close(leaf("30 gsm (0.035)", Millimetre).get(), 0.035);
    close(leaf("10 pt (0.010)", Inch).inches(), 0.010);
}

#[test]
fn the_demo_shop_can_be_read() {
    for row in DEMO_STOCKS {
        let stock = read(row.paper);
        assert!(matches!(stock.thickness, Thickness::Caliper(_)), "{}", row.paper);
        assert!(grammage(&stock).is_some() && stock.kind.id != "unsaid", "{}", row.paper);
    }
}

#[test]
fn kinds_are_offered_only_where_they_help() {
    assert_eq!(kind_choices(&read("90 gsm")).len(), 3);
    for choice in kind_choices(&read("80 lb cover")) {
        assert_ne!(read(&choice.typed).kind.id, "unsaid");
    }
    for text in ["130 silk", "90 gsm 0.1 mm"] {
        assert!(kind_choices(&read(text)).is_empty(), "{text}");
    }
}
