//! The job: one book, complete and valid, and how it is read from what was typed.

mod assemble;
mod envelope;
mod fields;
mod link;
mod link_v1;
mod read;

pub use fields::{INSERT_PLACES, SCHEMA};
pub use link::{CODE_MARK, CODE_MOST, LINK_MARK, LINK_MOST, read_link, to_code, to_link};
pub use read::{JobReading, Note, read};

use crate::paper::Stock;
use crate::source::Sourced;
use crate::units::{Band, Copies, Gram, Gsm, Mm, Pages, Second, Sheets, Size};

/// A book to be made. Once it exists it is valid: no later stage fails.
#[derive(Debug, Clone, PartialEq)]
pub struct Job {
    /// Who and what it is for: title, customer, date, by whom. As typed.
    pub identity: Identity,
    /// Sections from the outside to the centre; the first is the outermost. At least one sheet.
    pub sections: Vec<Section>,
    /// How pages are counted.
    pub numbering: Numbering,
    /// Finished size: width from spine to face, height along the spine.
    pub size: Size,
    /// Good copies wanted; nothing where nobody has said how many: the run is not known then.
    pub copies: Option<Copies>,
    /// The form of the spine.
    pub spine: Spine,
    /// Words are wanted on the spine.
    pub spine_text: bool,
    /// Picture beyond the cut; nothing where nothing runs off the page.
    pub bleed: Option<Mm>,
    /// Width inside the cut kept free.
    pub safe: Mm,
    /// How far a cut or fold may stand off.
    pub tolerance: Mm,
    /// Who moves the pictures to make up for push-out.
    pub images: ImagesMovedBy,
    /// Distance of the nearest thing that matters from the face.
    pub art_face: Option<Mm>,
    /// Distance of the page numbers from the face.
    pub folio_face: Option<Mm>,
    /// Chip on the outermost leaf, where somebody has decided it.
    pub face_cut: Option<Mm>,
    /// Cut off at the head.
    pub head_trim: Mm,
    /// Cut off at the foot.
    pub foot_trim: Mm,
    /// Between two copies along one fold.
    pub gutter: Mm,
    /// Where head and foot are cut.
    pub head_foot: HeadFoot,
    /// Copies along one fold.
    pub copies_up: u32,
    /// Index of the press sheet that was asked for; nothing when the best is taken.
    pub press_sheet: Option<usize>,
    /// How the press sheet comes onto the line.
    pub route: RouteWish,
    /// How neighbours along the spine stand to each other on the press sheet.
    pub pairs: Pairs,
    /// What the wrapper of one posted copy weighs.
    pub wrapper: Gram,
    /// Stitches a copy, where somebody has decided it.
    pub stitches: Option<u32>,
    /// Stitches are loops, to hang in a binder.
    pub loops: bool,
    /// Time of day the run starts, since midnight.
    pub start: Option<Second>,
    /// Index of the finishing line in the shop.
    pub line: usize,
    /// What was measured on a dummy of this book.
    pub dummy: Dummy,
    /// What was measured on the first book off the machine.
    pub first_off: Dummy,
}

/// What the job is called and for whom.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Identity {
    /// Title.
    pub title: String,
    /// Customer.
    pub customer: String,
    /// Date, as typed.
    pub date: String,
    /// By whom.
    pub by: String,
}

/// Sheets of one stock that lie together in the nest.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// Its part in the book.
    pub role: Role,
    /// Its paper.
    pub stock: Stock,
    /// Thickness of one leaf, with doubt and origin.
    pub caliper: Sourced<Band<Mm>>,
    /// Grammage with tolerance; nothing for board sold by thickness alone.
    pub grammage: Option<Band<Gsm>>,
    /// Pages asked for in this section; the rest of its last sheet is blank.
    pub pages: Pages,
    /// Folded sheets of this section, four pages each.
    pub sheets: Sheets,
    /// Sets of it that have come in, where they are counted.
    pub supplied: Option<u32>,
    /// Index of the first section of the same paper: one lot errs together.
    pub lot: usize,
}

/// A section's part in the book.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// The separate cover, one sheet.
    Cover,
    /// The main section.
    Inside,
    /// A further section.
    Insert,
}

/// How pages are counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Numbering {
    /// The cover is page 1.
    SelfCover,
    /// The cover is numbered apart; page 1 is the first page after it.
    SeparateCover,
}

/// The form of the spine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spine {
    /// As it folds.
    Round,
    /// Pressed square.
    Square,
}

/// Who moves the pictures of inner pages toward the spine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ImagesMovedBy {
    /// The print shop, when laying the pages on the sheet.
    Shop,
    /// The designer, before sending.
    Designer,
    /// Nobody.
    Nobody,
}

/// Where head and foot are cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeadFoot {
    /// On the finishing line, with the face.
    OnLine,
    /// The sheets are cut flat to height before.
    Before,
    /// The copies go to a guillotine after.
    After,
}

/// How the press sheet is to come onto the line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum RouteWish {
    /// As is best.
    #[default]
    Auto,
    /// Cut to the planned size before.
    CutFirst,
    /// Uncut: whatever it is too large becomes trim.
    Straight,
}

/// How neighbours along the spine stand to each other on the press sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Pairs {
    /// All the same way up: the head of one meets the foot of the next.
    #[default]
    HeadToFoot,
    /// Every second one turned round (come and go): heads meet, and feet.
    HeadToHead,
}

/// Measurements on a real book of this job.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Dummy {
    /// Closed thickness at the spine.
    pub closed: Option<Mm>,
    /// Push-out of the innermost leaf beyond the outermost, untrimmed.
    pub push_out: Option<Mm>,
    /// Finished width, spine to face.
    pub width: Option<Mm>,
}

impl Job {
    /// Folded sheets of the whole book.
    #[must_use]
    pub fn sheets(&self) -> Sheets {
        Sheets(self.sections.iter().map(|section| section.sheets.get()).sum())
    }
    /// The section at the centre of the book.
    #[must_use]
    pub fn main_section(&self) -> Option<&Section> {
        self.sections.iter().find(|section| section.role == Role::Inside)
    }
    /// The separate cover, if there is one.
    #[must_use]
    pub fn cover(&self) -> Option<&Section> {
        self.sections.iter().find(|section| section.role == Role::Cover)
    }
}
