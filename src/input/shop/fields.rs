//! One row an input of the shop file.

use super::figure::Figure;
use crate::data::{Line, Range};
use crate::draft::{Field, Group, Kind, Schema};
use crate::units::Unit;

/// The shop file.
pub static SCHEMA: Schema = Schema {
    format: "quirefit-shop",
    version: 1,
    fields: SHOP_FIELDS,
    groups: &[
        ("lines", LINE_FIELDS),
        ("stocks", STOCK_FIELDS),
        ("press_sheets", SHEET_FIELDS),
        ("postal_steps", POST_FIELDS),
    ],
};

const fn row(id: &'static str, kind: Kind, default: &'static str) -> Field {
    Field { id, kind, group: Group::More("shop"), default }
}

/// Longest name or remark.
const NAME: Kind = Kind::Text(200);
/// A small length: trims, margins.
const SMALL: Kind = Kind::Length(0.0, 50.0);
/// A fold factor; outside 0.5 … 2.2 no paper folds so.
const FACTOR: Kind = Kind::Number(0.5, 2.2, Unit::Number);
/// Doubt of a fold factor.
const FACTOR_ERROR: Kind = Kind::Number(0.0, 1.0, Unit::Number);

/// An amount of money.
const MONEY: Kind = Kind::Number(0.0, 1_000_000.0, Unit::Money);
/// A carton's edge.
const EDGE: Kind = Kind::Length(50.0, 2000.0);
/// What a carton may weigh: nobody lifts more by hand.
const LIFT: Kind = Kind::Mass(100.0, 50_000.0);

/// Per cent spoilt. Four stages of more would outgrow what sets are counted in.
const PERCENT: Kind = Kind::Number(0.0, 50.0, Unit::Number);
/// Whole numbers of sets, sheets or books.
const WHOLE: Kind = Kind::Number(0.0, 1_000_000.0, Unit::Count);

static SHOP_FIELDS: &[Field] = &[
    row("name", NAME, ""),
    row("note", NAME, ""),
    row("units", Kind::Choice(&["mm", "in"]), "mm"),
    row("bleed", SMALL, ""),
    row("safe", SMALL, ""),
    row("tolerance", SMALL, ""),
    row("head_trim", SMALL, ""),
    row("foot_trim", SMALL, ""),
    row("gutter", SMALL, ""),
    row("round_factor", FACTOR, ""),
    row("round_factor_error", FACTOR_ERROR, "0.2"),
    row("round_factor_note", NAME, ""),
    row("square_factor", FACTOR, ""),
    row("square_factor_error", FACTOR_ERROR, "0.2"),
    row("square_factor_note", NAME, ""),
    row("carton_mass_most", LIFT, ""),
    row("carton_tare", Kind::Mass(0.0, 5000.0), ""),
    row("carton_width", EDGE, ""),
    row("carton_length", EDGE, ""),
    row("carton_height", EDGE, ""),
    row("currency", Kind::Text(8), ""),
    row("rate_line_hour", MONEY, ""),
    row("rate_paper_kilo", MONEY, ""),
    row("rate_click", MONEY, ""),
    row("rate_wire_kilo", MONEY, ""),
    row("rate_carton", MONEY, ""),
    row("rate_job", MONEY, ""),
    row("price_markup", Kind::Number(0.0, 1000.0, Unit::Number), ""),
    row("price_least", MONEY, ""),
    row("price_round", MONEY, ""),
    row("price_valid", Kind::Text(60), ""),
    row("print_overs_percent", PERCENT, ""),
    row("print_overs_sheets", WHOLE, ""),
    row("crease_overs_percent", PERCENT, ""),
    row("crease_overs_sheets", WHOLE, ""),
    row("cut_overs_percent", PERCENT, ""),
    row("cut_overs_sets", WHOLE, ""),
];

static STOCK_FIELDS: &[Field] = &[row("name", NAME, ""), row("paper", Kind::Paper, "")];

static SHEET_FIELDS: &[Field] = &[
    row("name", NAME, ""),
    row("width", Kind::Length(100.0, 2000.0), ""),
    row("height", Kind::Length(100.0, 2000.0), ""),
    row("gripper", SMALL, ""),
    row("margin", SMALL, ""),
    row("leads", Kind::Choice(&["unsaid", "short", "long"]), "unsaid"),
    row("grain", Kind::Choice(&["unknown", "long", "short"]), "unknown"),
    row("thousand", MONEY, ""),
    row("click", MONEY, ""),
    row("thousands_on_hand", Kind::Number(0.0, 100_000.0, Unit::Number), ""),
];

static POST_FIELDS: &[Field] = &[
    row("name", NAME, ""),
    row("mass_most", Kind::Mass(1.0, 50_000.0), ""),
    row("thickness_most", Kind::Length(0.5, 500.0), ""),
    row("length_most", Kind::Length(10.0, 2000.0), ""),
    row("width_most", Kind::Length(10.0, 2000.0), ""),
    row("price", MONEY, ""),
];

/// Yes or no.
const YES_NO: Kind = Kind::Choice(&["yes", "no"]);
/// Seconds of one station.
const SECONDS: Kind = Kind::Number(0.0, 600.0, Unit::Number);
/// Minutes somebody is busy with a supply.
const MINUTES: Kind = Kind::Number(0.0, 240.0, Unit::Number);
/// Sheets an hour.
const PACE: Kind = Kind::Number(1.0, 500_000.0, Unit::Count);
/// Crowns, clinches, clearances.
const STITCH: Kind = Kind::Length(0.0, 50.0);
/// Diameter of a wire.
const WIRE: Kind = Kind::Length(0.2, 1.5);
/// Chips and spools.
const HEAVY: Kind = Kind::Mass(1.0, 2_000_000.0);

/// Makes, from one row a limit, the file's two fields (least and most) and the way to them; from
/// one row a figure, its field and the way to its place.
macro_rules! line_fields {
    (
        limits { $($limit:ident: $kind:expr;)* }
        figures of $line:ident { $($id:literal: $figure:expr => $place:expr;)* }
    ) => {
        static LINE_FIELDS: &[Field] = &[
            row("name", NAME, ""),
            row("note", NAME, ""),
            row("creases", YES_NO, "no"),
            row("cuts_head_foot", YES_NO, "no"),
            row("heads", Kind::Number(1.0, 12.0, Unit::Count), "2"),
            row("sets_per_hour", Kind::Number(1.0, 40_000.0, Unit::Count), ""),
            row("makeready_minutes", Kind::Number(0.0, 600.0, Unit::Number), "15"),
            $(
                row(concat!(stringify!($limit), "_least"), $kind, ""),
                row(concat!(stringify!($limit), "_most"), $kind, ""),
            )*
            row("wire_1", WIRE, ""),
            row("wire_2", WIRE, ""),
            row("wire_3", WIRE, ""),
            row("overs_percent", PERCENT, ""),
            $(row($id, $figure, ""),)*
        ];

        /// The limits of a line by name, to be filled or read.
        pub(super) fn limits(line: &mut Line) -> impl Iterator<Item = (&'static str, &mut Range)> {
            [$((stringify!($limit), &mut line.$limit),)*].into_iter()
        }

        /// Every figure of a line by name, to be filled or read.
        pub(super) fn each_figure(
            $line: &mut Line,
            mut visit: impl FnMut(&'static str, &mut dyn Figure),
        ) {
            $(visit($id, &mut $place);)*
        }
    };
}

line_fields! {
    limits {
        open_width: Kind::Length(0.0, 2000.0);
        travel_height: Kind::Length(0.0, 2000.0);
        finished_width: Kind::Length(0.0, 1000.0);
        spine_length: Kind::Length(0.0, 2000.0);
        sheets: Kind::Number(1.0, 500.0, Unit::Sheets);
        flat_stack: Kind::Length(0.0, 50.0);
        former: Kind::Length(0.0, 100.0);
        knife: Kind::Length(0.0, 100.0);
        text_weight: Kind::Number(0.0, 1000.0, Unit::Grammage);
        cover_weight: Kind::Number(0.0, 1000.0, Unit::Grammage);
        face_cut: Kind::Length(0.0, 200.0);
        pitch: Kind::Length(0.0, 1000.0);
        leg: STITCH;
        draw: Kind::Length(0.0, 200.0);
        passes: Kind::Number(1.0, 12.0, Unit::Count);
    }
    figures of line {
        "lay_at_foot": YES_NO => line.stitching.lay_at_foot;
        "stitches_least": Kind::Number(1.0, 12.0, Unit::Count) => line.stitching.stitches_least;
        "crown": STITCH => line.stitching.crown;
        "clinch": STITCH => line.stitching.clinch;
        "stitch_edge": STITCH => line.stitching.edge;
        "loop_wire": STITCH => line.stitching.loop_wire;
        "overlap": YES_NO => line.pace.overlap;
        "rate_counts_good": YES_NO => line.pace.counts_good;
        "feeder_sheets_hour": PACE => line.pace.feeder_sheets_hour;
        "bins": Kind::Number(1.0, 500.0, Unit::Count) => line.pace.bins;
        "gather_seconds": SECONDS => line.pace.gather;
        "stroke_seconds": SECONDS => line.pace.stroke;
        "index_seconds": SECONDS => line.pace.index;
        "fold_seconds": SECONDS => line.pace.fold;
        "form_seconds": SECONDS => line.pace.form;
        "form_seconds_mm": SECONDS => line.pace.form_mm;
        "cut_seconds": SECONDS => line.pace.cut;
        "stack_seconds": SECONDS => line.pace.stack;
        "press_sheets_hour": PACE => line.pace.press_sheets_hour;
        "overs_sets": WHOLE => line.pace.overs_sets;
        "stacker_books": Kind::Number(1.0, 1_000_000.0, Unit::Count) => line.supplies.stacker_books;
        "stacker_height": Kind::Length(10.0, 3000.0) => line.supplies.stacker_height;
        "stacker_minutes": MINUTES => line.supplies.stacker_minutes;
        "stacker_running": YES_NO => line.supplies.stacker_running;
        "chip_mass": HEAVY => line.supplies.chip_mass;
        "chip_litres": Kind::Number(1.0, 20_000.0, Unit::Count) => line.supplies.chip_litres;
        "chip_density": Kind::Number(10.0, 1200.0, Unit::Number) => line.supplies.chip_density;
        "chip_minutes": MINUTES => line.supplies.chip_minutes;
        "chip_running": YES_NO => line.supplies.chip_running;
        "spool_mass": HEAVY => line.supplies.spool_mass;
        "spool_minutes": MINUTES => line.supplies.spool_minutes;
        "load_height": Kind::Length(1.0, 3000.0) => line.supplies.load_height;
        "load_minutes": MINUTES => line.supplies.load_minutes;
        "load_running": YES_NO => line.supplies.load_running;
    }
}
