//! One row an input of the job, in the order of a conversation.

use crate::draft::{Field, Group, Kind, Schema};
use crate::units::Unit;

/// The job file.
pub static SCHEMA: Schema = Schema {
    format: "quirefit-job",
    version: 1,
    fields: JOB_FIELDS,
    groups: &[("sections", INSERT_FIELDS)],
};

const fn main(id: &'static str, kind: Kind, default: &'static str) -> Field {
    Field { id, kind, group: Group::Main, default }
}
const fn more(id: &'static str, group: &'static str, kind: Kind, default: &'static str) -> Field {
    Field { id, kind, group: Group::More(group), default }
}

/// Yes or no.
const YES_NO: Kind = Kind::Choice(&["yes", "no"]);
/// A short text.
const SHORT: Kind = Kind::Text(120);
/// Trims, bleeds and margins.
const SMALL: Kind = Kind::Length(0.0, 50.0);
/// Thickness of a book.
const THICK: Kind = Kind::Length(0.05, 50.0);
/// Sets of a section that have come in.
const SUPPLIED: Kind = Kind::Number(0.0, 10_000_000.0, Unit::Count);
/// How the fibres lie.
const GRAIN: Kind = Kind::Choice(&["unknown", "along", "across"]);

/// Where a further section lies: around the main section or at the centre of the book.
pub const INSERT_PLACES: &[&str] = &["centre", "around"];

static JOB_FIELDS: &[Field] = &[
    main("pages", Kind::Pages, ""),
    main("size", Kind::Size, ""),
    main("paper", Kind::Paper, ""),
    main("cover", Kind::Paper, ""),
    main("copies", Kind::Copies, ""),
    main("spine", Kind::Choice(&["round", "square"]), "round"),
    main("bleeds", YES_NO, "yes"),
    main("line", Kind::Text(200), ""),
    more("images", "pictures", Kind::Choice(&["shop", "designer", "nobody"]), "shop"),
    more("art_face", "pictures", Kind::Length(0.0, 300.0), ""),
    more("folio_face", "pictures", Kind::Length(0.0, 300.0), ""),
    more("bleed", "pictures", SMALL, ""),
    more("safe", "pictures", SMALL, ""),
    more("spine_text", "pictures", YES_NO, "no"),
    more("grain", "paper", GRAIN, "unknown"),
    more("cover_grain", "paper", GRAIN, "unknown"),
    more("bound_edge", "trim", Kind::Choice(&["left", "top"]), "left"),
    more("face_cut", "trim", Kind::Length(0.5, 100.0), ""),
    more("head_trim", "trim", SMALL, ""),
    more("foot_trim", "trim", SMALL, ""),
    more("tolerance", "trim", Kind::Length(0.0, 5.0), ""),
    more("head_foot", "trim", Kind::Choice(&["auto", "before", "after"]), "auto"),
    more("copies_up", "trim", Kind::Number(1.0, 3.0, Unit::Copies), "1"),
    more("gutter", "trim", SMALL, ""),
    more("press_sheet", "sheet", Kind::Text(200), ""),
    more("route", "sheet", Kind::Choice(&["auto", "cut", "straight"]), "auto"),
    more("pairs", "sheet", Kind::Choice(&["head-to-foot", "head-to-head"]), "head-to-foot"),
    more("wrapper", "dispatch", Kind::Mass(0.0, 5000.0), ""),
    more("dummy_thickness", "dummy", THICK, ""),
    more("dummy_push_out", "dummy", Kind::Length(0.0, 50.0), ""),
    more("first_thickness", "first-off", THICK, ""),
    more("first_push_out", "first-off", Kind::Length(0.0, 50.0), ""),
    more("first_width", "first-off", Kind::Length(20.0, 1000.0), ""),
    more("stitches", "run", Kind::Number(1.0, 12.0, Unit::Count), ""),
    more("loops", "run", YES_NO, "no"),
    more("start", "run", Kind::Clock, ""),
    more("supplied_inside", "run", SUPPLIED, ""),
    more("supplied_cover", "run", SUPPLIED, ""),
    more("title", "identity", SHORT, ""),
    more("customer", "identity", SHORT, ""),
    more("date", "identity", SHORT, ""),
    more("by", "identity", SHORT, ""),
    Field { id: "units", kind: Kind::Choice(&["mm", "in"]), group: Group::Setting, default: "mm" },
];

static INSERT_FIELDS: &[Field] = &[
    more("pages", "sections", Kind::Number(4.0, 400.0, Unit::Pages), ""),
    more("paper", "sections", Kind::Paper, ""),
    more("supplied", "sections", SUPPLIED, ""),
    more("place", "sections", Kind::Choice(INSERT_PLACES), "centre"),
];
