//! One row an input of the shop file.

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
    row("rate_cut_hour", MONEY, ""),
    row("rate_wire_kilo", MONEY, ""),
    row("rate_carton", MONEY, ""),
    row("rate_job", MONEY, ""),
    row("price_markup", Kind::Number(0.0, 1000.0, Unit::Number), ""),
    row("price_least", MONEY, ""),
    row("price_round", MONEY, ""),
    row("price_valid", Kind::Text(60), ""),
];

static STOCK_FIELDS: &[Field] = &[row("name", NAME, ""), row("paper", Kind::Paper, "")];

static SHEET_FIELDS: &[Field] = &[
    row("name", NAME, ""),
    row("width", Kind::Length(100.0, 2000.0), ""),
    row("height", Kind::Length(100.0, 2000.0), ""),
];

static POST_FIELDS: &[Field] = &[
    row("name", NAME, ""),
    row("mass_most", Kind::Mass(1.0, 50_000.0), ""),
    row("thickness_most", Kind::Length(0.5, 500.0), ""),
    row("length_most", Kind::Length(10.0, 2000.0), ""),
    row("width_most", Kind::Length(10.0, 2000.0), ""),
    row("price", MONEY, ""),
];

/// Makes, from one row a limit, the file's two fields (least and most) and the way to them.
macro_rules! line_limits {
    ($($limit:ident: $kind:expr;)*) => {
        static LINE_FIELDS: &[Field] = &[
            row("name", NAME, ""),
            row("note", NAME, ""),
            row("creases", Kind::Choice(&["yes", "no"]), "no"),
            row("cuts_head_foot", Kind::Choice(&["yes", "no"]), "no"),
            row("heads", Kind::Number(1.0, 12.0, Unit::Count), "2"),
            row("sets_per_hour", Kind::Number(1.0, 40_000.0, Unit::Count), "1000"),
            row("makeready_minutes", Kind::Number(0.0, 600.0, Unit::Count), "15"),
            $(
                row(concat!(stringify!($limit), "_least"), $kind, ""),
                row(concat!(stringify!($limit), "_most"), $kind, ""),
            )*
        ];

        /// The limits of a line by name, to be filled or read.
        pub(super) fn limits(line: &mut Line) -> impl Iterator<Item = (&'static str, &mut Range)> {
            [$((stringify!($limit), &mut line.$limit),)*].into_iter()
        }
    };
}

line_limits! {
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
}
