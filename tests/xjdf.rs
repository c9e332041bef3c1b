//! The XJDF document: names, order and types by a list of our own, figures against independent ones,
//! and, where the standard's schema is at hand, against that.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod support;

use quirefit::draft::Draft;
use quirefit::job::{self, Job};
use quirefit::plan::{Plan, plan};
use quirefit::shop;
use quirefit::view::xjdf::xjdf;
use quirefit::view::{Numbers, Printer};
use quirefit::words::{EN, EN_GB, Words};
use roxmltree::{Document, Node};
use std::collections::BTreeSet;
use support::{files, planned_file};

const NAMESPACE: &str = "http://www.CIP4.org/JDFSchema_2_0";

/// What an attribute holds.
#[derive(Debug, Clone, Copy)]
enum Type {
    /// Any text.
    Text,
    /// A name without spaces.
    Name,
    /// Names between spaces.
    Names,
    /// A name that no other element has.
    Id,
    /// The name of another element.
    Ref,
    /// Such names between spaces.
    Refs,
    /// A number.
    Float,
    /// So many numbers between spaces.
    Floats(usize),
    /// Any number of numbers.
    FloatList,
    /// A whole number.
    Int,
    /// One of these.
    One(&'static [&'static str]),
}
use Type::{Float, FloatList, Floats, Id, Int, Name, Names, One, Ref, Refs, Text};

/// An element: its attributes, those that must be there first (how many), and its children in order.
struct Element {
    name: &'static str,
    must: usize,
    attributes: &'static [(&'static str, Type)],
    children: &'static [&'static str],
}

const fn element(
    name: &'static str,
    must: usize,
    attributes: &'static [(&'static str, Type)],
    children: &'static [&'static str],
) -> Element {
    Element { name, must, attributes, children }
}

const PAPER: Type = One(&["Paper"]);
const KINDS: Type = One(&["Booklet", "Cover", "Body", "Insert", "FlatSheet"]);

/// Written by hand from the XJDF 2.x schema of CIP4: what this planner writes of it.
const ELEMENTS: &[Element] = &[
    element(
        "XJDF",
        3,
        &[
            ("JobID", Name),
            ("Types", Names),
            ("Version", One(&["2.0", "2.1", "2.2", "2.3"])),
            ("JobPartID", Name),
            ("DescriptiveName", Text),
        ],
        &["Comment", "ProductList", "ResourceSet"],
    ),
    element("Comment", 0, &[], &[]),
    element("ProductList", 0, &[], &["Product"]),
    element(
        "Product",
        3,
        &[
            ("ID", Id),
            ("IsRoot", One(&["true", "false"])),
            ("ProductType", KINDS),
            ("Amount", Int),
            ("DescriptiveName", Text),
        ],
        &["Intent"],
    ),
    element(
        "Intent",
        1,
        &[("Name", One(&["BindingIntent", "LayoutIntent", "MediaIntent"]))],
        &["BindingIntent", "LayoutIntent", "MediaIntent"],
    ),
    element(
        "BindingIntent",
        3,
        &[
            ("BindingType", One(&["SaddleStitch"])),
            ("BindingOrder", One(&["None", "Collecting", "Gathering"])),
            ("BindingSide", One(&["Bottom", "Left", "Right", "Top"])),
            ("ChildRefs", Refs),
        ],
        &["SaddleStitching"],
    ),
    element(
        "SaddleStitching",
        2,
        &[
            ("StapleShape", One(&["Butted", "ClinchOut", "Crown", "Eyelet", "Overlap"])),
            ("StitchNumber", Int),
        ],
        &[],
    ),
    element(
        "LayoutIntent",
        3,
        &[
            ("FinishedDimensions", Floats(3)),
            ("Pages", Int),
            ("Sides", One(&["TwoSidedHeadToHead"])),
            ("Bleed", Float),
        ],
        &[],
    ),
    element(
        "MediaIntent",
        1,
        &[("MediaType", PAPER), ("MediaQuality", Text), ("Thickness", Float), ("Weight", Float)],
        &[],
    ),
    element(
        "ResourceSet",
        1,
        &[("Name", Name), ("Usage", One(&["Input", "Output"]))],
        &["Resource"],
    ),
    element(
        "Resource",
        0,
        &[("ID", Id), ("DescriptiveName", Text), ("ResourceWeight", Float)],
        &[
            "AmountPool",
            "Part",
            "Assembly",
            "BinderySignature",
            "Component",
            "Contact",
            "FoldingParams",
            "Layout",
            "Media",
            "StitchingParams",
            "TrimmingParams",
        ],
    ),
    element("AmountPool", 0, &[], &["PartAmount"]),
    element("PartAmount", 2, &[("Amount", Float), ("Waste", Float)], &[]),
    element(
        "Part",
        0,
        &[("BinderySignatureID", Name), ("SheetName", Name), ("ContactType", One(&["Customer"]))],
        &[],
    ),
    element("Assembly", 2, &[("Order", One(&["Collecting"])), ("BinderySignatureIDs", Names)], &[]),
    element(
        "BinderySignature",
        3,
        &[
            ("BinderySignatureType", One(&["Fold", "Grid", "Die"])),
            ("FoldCatalog", One(&["F4-1"])),
            ("BinderySignatureSize", Floats(2)),
        ],
        &[],
    ),
    element(
        "Component",
        1,
        &[("Dimensions", Floats(3)), ("ProductType", KINDS), ("MediaRef", Ref)],
        &[],
    ),
    element("Contact", 0, &[], &["Company"]),
    element("Company", 1, &[("OrganizationName", Text)], &[]),
    element("FoldingParams", 1, &[("FoldCatalog", One(&["F4-1"]))], &[]),
    element(
        "Layout",
        3,
        &[("InnermostShingling", Float), ("OutermostShingling", Float), ("PaperRef", Ref)],
        &["Position"],
    ),
    element("Position", 1, &[("BinderySignatureID", Name)], &[]),
    element(
        "Media",
        4,
        &[
            ("MediaType", PAPER),
            ("Dimension", Floats(2)),
            ("MediaUnit", One(&["Continuous", "Roll", "Sheet"])),
            ("Thickness", Float),
            ("Weight", Float),
            ("GrainDirection", One(&["Any", "SameDirection", "XDirection", "YDirection"])),
        ],
        &[],
    ),
    element(
        "StitchingParams",
        8,
        &[
            ("NumberOfStitches", Int),
            ("StapleShape", One(&["Butted", "ClinchOut", "Crown", "Eyelet", "Overlap"])),
            ("StitchOrigin", One(&["TrimBoxCenter", "TrimBoxJogSide", "UntrimmedJogSide"])),
            ("StitchPositions", FloatList),
            ("StitchType", One(&["Corner", "Saddle", "Side"])),
            ("StitchWidth", Float),
            ("TightBacking", One(&["Round", "RoundBacked", "Flat", "FlatBacked"])),
            ("WireGauge", Float),
        ],
        &[],
    ),
    element("TrimmingParams", 2, &[("Width", Float), ("Height", Float)], &[]),
];

fn written(job: &Job, planned: &Plan) -> String {
    let words = Words::load(&[EN, EN_GB]);
    xjdf(job, planned, &Printer { words: &words, numbers: Numbers::METRIC })
}

/// Every example job, planned and written.
fn documents() -> Vec<(String, Job, Plan, String)> {
    let found: Vec<_> = files("examples/jobs")
        .into_iter()
        .map(|path| {
            let (_, job, shop) = planned_file(&path);
            let planned = plan(&job, &shop);
            let text = written(&job, &planned);
            (path, job, planned, text)
        })
        .collect();
    assert!(found.len() >= 8);
    found
}

fn numbers(text: &str) -> Vec<f64> {
    text.split(' ').map(|number| number.parse().unwrap_or_else(|_| panic!("{text}"))).collect()
}

fn is_name(text: &str) -> bool {
    !text.is_empty() && text.chars().all(|c| c.is_ascii_alphanumeric() || c == '-')
}

/// Checks an attribute; references are left for later.
fn check(kind: Type, text: &str, ids: &BTreeSet<String>) -> bool {
    match kind {
        Text => !text.is_empty(),
        Name | Id => is_name(text),
        Names => text.split(' ').all(is_name),
        Ref => ids.contains(text),
        // A list of one is none, says the schema.
        Refs => text.contains(' ') && text.split(' ').all(|name| ids.contains(name)),
        Float => numbers(text).len() == 1,
        Floats(count) => numbers(text).len() == count,
        FloatList => !numbers(text).is_empty(),
        Int => text.parse::<u32>().is_ok(),
        One(options) => options.contains(&text),
    }
}

fn check_node(node: Node, ids: &BTreeSet<String>) {
    let name = node.tag_name().name();
    assert_eq!(node.tag_name().namespace(), Some(NAMESPACE), "{name}");
    let known = ELEMENTS.iter().find(|element| element.name == name);
    let known = known.unwrap_or_else(|| panic!("{name} is no element of the list"));
    for (attribute, _) in &known.attributes[..known.must] {
        assert!(node.has_attribute(*attribute), "{name} lacks {attribute}");
    }
    assert!(
        known.attributes.is_empty() || node.attributes().len() > 0 || name == "Resource",
        "{name}"
    );
    for attribute in node.attributes() {
        let row = known.attributes.iter().find(|(known, _)| *known == attribute.name());
        let (_, kind) = row.unwrap_or_else(|| panic!("{name} has no {}", attribute.name()));
        let text = attribute.value();
        assert!(check(*kind, text, ids), "{name}/@{}: {text}: {kind:?}", attribute.name());
    }
    let children: Vec<Node> = node.children().filter(Node::is_element).collect();
    if children.is_empty() && name != "Comment" {
        assert!(node.text().is_none(), "{name} holds text, if only a line end");
    }
    let place = |child: &Node| {
        let child = child.tag_name().name();
        let place = known.children.iter().position(|known| *known == child);
        place.unwrap_or_else(|| panic!("{child} does not belong into {name}"))
    };
    assert!(children.is_sorted_by_key(place), "{name}: children out of order");
    children.into_iter().for_each(|child| check_node(child, ids));
}

#[test]
fn names_order_and_types_are_the_standards() {
    for (path, .., text) in documents() {
        let document = Document::parse(&text).unwrap_or_else(|error| panic!("{path}: {error}"));
        let all = document.descendants().filter_map(|node| node.attribute("ID"));
        let all: Vec<String> = all.map(str::to_owned).collect();
        let ids: BTreeSet<String> = all.iter().cloned().collect();
        assert_eq!(ids.len(), all.len(), "{path}: an ID stands twice");
        check_node(document.root_element(), &ids);
        // Every resource is in the set of its name; every folded sheet is assembled and laid out once.
        for set in
            document.descendants().filter(|node| node.has_tag_name((NAMESPACE, "ResourceSet")))
        {
            for resource in set.children().filter(Node::is_element) {
                let last = resource.children().rfind(Node::is_element).unwrap();
                assert_eq!(set.attribute("Name"), Some(last.tag_name().name()), "{path}");
            }
        }
        let of = |name: &str| -> Vec<&str> {
            let nodes = document.descendants().filter(|node| node.has_tag_name((NAMESPACE, name)));
            nodes.filter_map(|node| node.attribute("BinderySignatureID")).collect()
        };
        let assembly = document.descendants().find(|node| node.tag_name().name() == "Assembly");
        let assembled = assembly.unwrap().attribute("BinderySignatureIDs").unwrap();
        let assembled: Vec<&str> = assembled.split(' ').collect();
        assert_eq!(of("Part"), assembled, "{path}");
        assert_eq!(of("Position"), assembled, "{path}");
    }
}

/// One element of a name, by attribute.
fn attribute<'a>(document: &'a Document, element: &str, name: &str) -> Vec<&'a str> {
    let nodes = document.descendants().filter(|node| node.tag_name().name() == element);
    nodes.filter_map(|node| node.attribute(name)).collect()
}

fn drafted(fields: &[(&str, &str)]) -> (Job, Plan) {
    let shop = shop::demo();
    let job = job::read(&Draft::of(fields), &shop).job.unwrap();
    let planned = plan(&job, &shop);
    (job, planned)
}

const BOOK: &[(&str, &str)] = &[
    ("title", "Songs of <the> \"Quay\" & more"),
    ("customer", "Ropewalk\u{7}Guild"),
    ("pages", "20 + 4"),
    ("size", "A5"),
    ("paper", "100 gsm offset 0.105 mm"),
    ("cover", "170 gsm silk"),
    ("copies", "1000"),
];

#[test]
fn lengths_are_points_media_micrometres() {
    let (job, planned) = drafted(BOOK);
    let text = written(&job, &planned);
    let document = Document::parse(&text).unwrap();
    // A5 is 148 by 210 mm; at 72 points to 25.4 mm that is 419.528 by 595.276 (ISO 216, ISO 32000-1).
    let finished = attribute(&document, "LayoutIntent", "FinishedDimensions");
    assert_eq!(finished, ["419.528 595.276 0"; 2]);
    assert_eq!(attribute(&document, "LayoutIntent", "Bleed"), ["8.504"; 2], "3 mm");
    assert_eq!(attribute(&document, "LayoutIntent", "Pages"), ["4", "20"]);
    assert_eq!(attribute(&document, "TrimmingParams", "Width"), ["419.528"]);
    assert_eq!(attribute(&document, "Media", "Thickness")[1], "105");
    assert_eq!(attribute(&document, "Media", "Weight"), ["170", "100"]);
    assert_eq!(attribute(&document, "Product", "Amount"), ["1000"]);
    // Two stitches, as far above the middle as below it.
    let stitches = numbers(attribute(&document, "StitchingParams", "StitchPositions")[0]);
    assert!(stitches.len() == 2 && (stitches[0] + stitches[1]).abs() < 0.002, "{stitches:?}");
    assert!(stitches[0] < stitches[1]);
    // The closed book's thickness stands third, in points as well.
    let closed = planned.results.stack.closed.nominal.0.get();
    let solid = attribute(&document, "Component", "Dimensions");
    let thick = numbers(solid.last().unwrap())[2];
    assert!((thick - closed * 72.0 / 25.4).abs() < 0.001);
    // What comes from outside is text, and only what XML can hold.
    let names = attribute(&document, "XJDF", "DescriptiveName");
    assert_eq!(names, ["Songs of <the> \"Quay\" & more"]);
    assert_eq!(attribute(&document, "XJDF", "JobID"), ["Songs-of-the-Quay-more"]);
    assert_eq!(attribute(&document, "Company", "OrganizationName"), ["RopewalkGuild"]);
}

#[test]
fn pages_are_moved_once_by_whoever_is_to_move_them() {
    let inner = |images: &str| -> Vec<f64> {
        let fields: Vec<(&str, &str)> = BOOK.iter().copied().chain([("images", images)]).collect();
        let (job, planned) = drafted(&fields);
        let text = written(&job, &planned);
        let document = Document::parse(&text).unwrap();
        let found = attribute(&document, "Layout", "InnermostShingling");
        let innermost = planned.results.leaves.last().unwrap().push_out.nominal.get();
        let last: f64 = found.last().unwrap().parse().unwrap();
        let expected = if images == "shop" { innermost * 72.0 / 25.4 } else { 0.0 };
        assert!((last - expected).abs() < 0.001, "{images}: {last} {expected}");
        found.iter().map(|text| text.parse().unwrap()).collect()
    };
    assert!(inner("shop")[1] > 0.0);
    assert_eq!(inner("designer"), [0.0, 0.0]);
    assert_eq!(inner("nobody"), [0.0, 0.0]);
}

#[test]
fn amounts_and_waste_add_up_to_what_is_fed() {
    for (path, job, planned, text) in documents() {
        let document = Document::parse(&text).unwrap();
        let amounts = attribute(&document, "PartAmount", "Amount");
        let wastes = attribute(&document, "PartAmount", "Waste");
        let sums: Vec<f64> = amounts
            .iter()
            .zip(&wastes)
            .map(|(amount, waste)| amount.parse::<f64>().unwrap() + waste.parse::<f64>().unwrap())
            .collect();
        let quantities = &planned.results.run.quantities;
        let (books, sheets) = sums.split_last().unwrap();
        let expected: Vec<f64> =
            quantities.components.iter().map(|part| f64::from(part.fed * part.sheets)).collect();
        assert_eq!(sheets, expected, "{path}");
        assert_eq!(*books, f64::from(quantities.fed * job.copies_up), "{path}");
    }
}

/// Run by `pkg-scripts/test` where xmllint is there and QUIREFIT_XJDF_SCHEMA names the standard's
/// schema, which is not ours to give away; else it is counted as ignored.
#[test]
#[ignore = "needs xmllint, and the schema's path in QUIREFIT_XJDF_SCHEMA"]
fn the_schema_takes_every_document() {
    let schema = std::env::var("QUIREFIT_XJDF_SCHEMA").expect("QUIREFIT_XJDF_SCHEMA is not set");
    let folder = std::env::temp_dir().join(format!("quirefit-xjdf-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let (job, planned) = drafted(BOOK);
    let mut texts: Vec<String> = documents().into_iter().map(|(.., text)| text).collect();
    texts.push(written(&job, &planned));
    let check = |index: usize, text: &str| {
        let file = folder.join(format!("{index}.xjdf"));
        std::fs::write(&file, text).unwrap();
        let mut xmllint = std::process::Command::new("xmllint");
        let output = xmllint.args(["--noout", "--schema", &schema]).arg(&file).output().unwrap();
        (output.status.success(), String::from_utf8_lossy(&output.stderr).into_owned())
    };
    for (index, text) in texts.iter().enumerate() {
        let (valid, told) = check(index, text);
        assert!(valid, "{told}");
    }
    // A check that finds nothing would pass as well: the schema must refuse this.
    let (valid, _) =
        check(texts.len(), &texts[0].replace("FoldCatalog=\"F4-1\"", "Folded=\"once\""));
    assert!(!valid, "the schema refuses nothing");
    std::fs::remove_dir_all(folder).unwrap();
}
