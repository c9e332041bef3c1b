//! Finishing lines: generic classes with invented figures. A shop replaces them with its own.

use super::line_parts::{
    GOOD_COPIES, HEAVY_PACE, HEAVY_SUPPLIES, LIGHT_PACE, LIGHT_STITCHING, LIGHT_SUPPLIES,
    MIDDLE_PACE, MIDDLE_SUPPLIES,
};
use super::{Pace, Stitching, Supplies};
use std::borrow::Cow;

/// What a line takes of one measure: at least, at most, or any.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Range {
    /// The least it takes; nothing if there is no lower end.
    pub least: Option<f64>,
    /// The most it takes; nothing if there is no upper end.
    pub most: Option<f64>,
}

impl Range {
    /// Anything goes.
    pub const ANY: Self = Self { least: None, most: None };
    /// Both ends.
    #[must_use]
    pub const fn between(least: f64, most: f64) -> Self {
        Self { least: Some(least), most: Some(most) }
    }
    /// Only an upper end.
    #[must_use]
    pub const fn up_to(most: f64) -> Self {
        Self { least: None, most: Some(most) }
    }
}

/// One finishing line and its limits. Lengths in millimetres, grammage in g/m², times in seconds.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// What people call it.
    pub name: Cow<'static, str>,
    /// A remark, such as that its figures are invented.
    pub note: Cow<'static, str>,
    /// The open sheet across the spine.
    pub open_width: Range,
    /// The sheet along the spine as it travels, with what is still to be cut off.
    pub travel_height: Range,
    /// The finished book, spine to face.
    pub finished_width: Range,
    /// The spine as it travels.
    pub spine_length: Range,
    /// Sheets in one set.
    pub sheets: Range,
    /// H, the stack the stitching heads pierce.
    pub flat_stack: Range,
    /// S at the part that presses the spine square.
    pub former: Range,
    /// S under the knife.
    pub knife: Range,
    /// Grammage of the inside.
    pub text_weight: Range,
    /// Grammage of the cover.
    pub cover_weight: Range,
    /// Chip at the face, on any sheet.
    pub face_cut: Range,
    /// Distance between neighbouring stitching heads.
    pub pitch: Range,
    /// Leg of a stitch that the heads form.
    pub leg: Range,
    /// Wire that the heads draw for one stitch.
    pub draw: Range,
    /// Passes of a set under the heads.
    pub passes: Range,
    /// Creases the cover itself.
    pub creases: bool,
    /// Cuts head and foot as well as the face.
    pub cuts_head_foot: bool,
    /// Stitching heads that strike together.
    pub heads: u32,
    /// Sets an hour when nothing stands in the way.
    pub sets_per_hour: f64,
    /// Minutes to make ready.
    pub makeready_minutes: f64,
    /// How it stitches.
    pub stitching: Stitching,
    /// Its stations and what they spoil.
    pub pace: Pace,
    /// What runs full or empty.
    pub supplies: Supplies,
}

impl Line {
    /// A line without a name and without limits.
    pub const UNLIMITED: Self = Self {
        name: Cow::Borrowed(""),
        note: Cow::Borrowed(""),
        open_width: Range::ANY,
        travel_height: Range::ANY,
        finished_width: Range::ANY,
        spine_length: Range::ANY,
        sheets: Range::ANY,
        flat_stack: Range::ANY,
        former: Range::ANY,
        knife: Range::ANY,
        text_weight: Range::ANY,
        cover_weight: Range::ANY,
        face_cut: Range::ANY,
        pitch: Range::ANY,
        leg: Range::ANY,
        draw: Range::ANY,
        passes: Range::ANY,
        creases: false,
        cuts_head_foot: false,
        heads: 1,
        sets_per_hour: 1.0,
        makeready_minutes: 0.0,
        stitching: Stitching::USUAL,
        pace: Pace::PLAIN,
        supplies: Supplies::ENDLESS,
    };
}

const INVENTED: Cow<'static, str> =
    Cow::Borrowed("A generic class with invented figures. Put your own line's figures in.");

/// The built-in classes.
pub static LINES: [Line; 4] = [
    Line {
        name: Cow::Borrowed("Middle line, three knives"),
        note: INVENTED,
        open_width: Range::between(180.0, 500.0),
        travel_height: Range::between(120.0, 360.0),
        finished_width: Range::between(85.0, 240.0),
        spine_length: Range::between(120.0, 360.0),
        sheets: Range::between(2.0, 40.0),
        flat_stack: Range::up_to(3.5),
        former: Range::between(1.5, 7.0),
        knife: Range::up_to(7.0),
        text_weight: Range::between(60.0, 250.0),
        cover_weight: Range::between(60.0, 350.0),
        face_cut: Range::between(2.0, 20.0),
        pitch: Range::between(50.0, 180.0),
        leg: Range::up_to(8.0),
        draw: Range::up_to(30.0),
        passes: Range::up_to(2.0),
        creases: true,
        cuts_head_foot: true,
        heads: 2,
        sets_per_hour: 2400.0,
        makeready_minutes: 15.0,
        stitching: Stitching::USUAL,
        pace: MIDDLE_PACE,
        supplies: MIDDLE_SUPPLIES,
    },
    Line {
        name: Cow::Borrowed("Light desk-side line"),
        note: INVENTED,
        open_width: Range::between(210.0, 458.0),
        travel_height: Range::between(120.0, 320.0),
        finished_width: Range::between(105.0, 216.0),
        spine_length: Range::between(120.0, 320.0),
        sheets: Range::between(2.0, 20.0),
        flat_stack: Range::up_to(2.2),
        former: Range::between(1.5, 4.0),
        knife: Range::up_to(4.4),
        text_weight: Range::between(64.0, 160.0),
        cover_weight: Range::between(64.0, 250.0),
        face_cut: Range::between(2.0, 15.0),
        pitch: Range::between(75.0, 165.0),
        leg: Range::up_to(6.0),
        draw: Range::up_to(25.0),
        passes: Range::up_to(1.0),
        creases: false,
        cuts_head_foot: false,
        heads: 2,
        sets_per_hour: 800.0,
        makeready_minutes: 6.0,
        stitching: LIGHT_STITCHING,
        pace: LIGHT_PACE,
        supplies: LIGHT_SUPPLIES,
    },
    Line {
        name: Cow::Borrowed("Heavy-duty line, three knives"),
        note: INVENTED,
        open_width: Range::between(180.0, 640.0),
        travel_height: Range::between(120.0, 480.0),
        finished_width: Range::between(85.0, 305.0),
        spine_length: Range::between(120.0, 480.0),
        sheets: Range::between(2.0, 60.0),
        flat_stack: Range::up_to(5.0),
        former: Range::between(1.5, 10.0),
        knife: Range::up_to(10.0),
        text_weight: Range::between(50.0, 300.0),
        cover_weight: Range::between(50.0, 400.0),
        face_cut: Range::between(2.0, 30.0),
        pitch: Range::between(45.0, 240.0),
        leg: Range::up_to(10.0),
        draw: Range::up_to(34.0),
        passes: Range::up_to(2.0),
        creases: true,
        cuts_head_foot: true,
        heads: 4,
        sets_per_hour: 5000.0,
        makeready_minutes: 30.0,
        stitching: Stitching::USUAL,
        pace: HEAVY_PACE,
        supplies: HEAVY_SUPPLIES,
    },
    Line {
        name: Cow::Borrowed("Line H"),
        note: INVENTED,
        open_width: Range::up_to(470.0),
        travel_height: Range::up_to(330.0),
        finished_width: Range::between(75.0, 230.0),
        spine_length: Range::between(120.0, 320.0),
        sheets: Range::ANY,
        flat_stack: Range::up_to(2.6),
        former: Range::up_to(5.2),
        knife: Range::up_to(5.2),
        text_weight: Range::between(64.0, 300.0),
        cover_weight: Range::up_to(350.0),
        face_cut: Range::between(2.0, 12.0),
        pitch: Range::between(54.0, 130.0),
        leg: Range::ANY,
        draw: Range::ANY,
        passes: Range::up_to(2.0),
        creases: true,
        cuts_head_foot: false,
        heads: 2,
        sets_per_hour: 2000.0,
        makeready_minutes: 12.0,
        stitching: Stitching::USUAL,
        pace: GOOD_COPIES,
        supplies: Supplies::ENDLESS,
    },
];
