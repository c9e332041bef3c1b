//! What the pieces of a paper's description say, each by itself.

use super::LengthUnit;
use super::number::Number;
use super::paper_words::{self as words, PaperUnit};
use super::text::{Line, Token};
use crate::data::{BasisSize, StockKind};
use crate::paper::Grain;
use crate::units::{MM_PER_INCH, Mm, PAGES_PER_LEAF};

/// Specific volume that papers have, cm³/g.
pub(super) const BULK_RANGE: (f64, f64) = (0.5, 3.0);
/// What people call volume is ten times the specific volume.
const VOLUME_FACTOR: f64 = 10.0;
/// A number without a unit below this is a thickness.
const BARE_THICKNESS_BELOW: f64 = 1.0;
/// And below this it is one in inches, whatever the page counts in.
const BARE_INCHES_BELOW: f64 = 0.02;
/// Up to here it is in inches where the page counts in inches.
const BARE_EITHER_BELOW: f64 = 0.06;

/// What stands before the number of leaves of a pack.
const PACK: [&str; 4] = ["pack", "of", "packen", "paket"];

/// A description, taken apart.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Described {
    /// Grams in a square metre.
    pub(super) grammages: Vec<f64>,
    /// Pounds, each with the index of its unit.
    pub(super) pounds: Vec<(f64, usize)>,
    /// Numbers without a unit and their index.
    pub(super) bare: Vec<(f64, usize)>,
    /// The grade.
    pub(super) grade: Option<&'static BasisSize>,
    /// The kind.
    pub(super) kind: Option<&'static StockKind>,
    /// The words of the grade are used where paper is weighed in grams as well.
    pub(super) shared: bool,
    /// Thicknesses and the index of each.
    pub(super) thick: Vec<(Mm, usize)>,
    /// A thickness or volume was given in metric units.
    pub(super) metric: bool,
    /// Specific volume, cm³/g.
    pub(super) bulk: Option<f64>,
    /// Leaves of a measured pack, and where they stand.
    pub(super) pack: Option<(f64, usize)>,
    /// Fibre direction.
    pub(super) grain: Grain,
    /// Words without a meaning here: names of mills, colours.
    pub(super) unknown: Vec<String>,
    /// Some word has a meaning.
    pub(super) known: bool,
    /// The last piece is the beginning of a word that would have a meaning.
    pub(super) begun: bool,
    /// The last piece is a number without a unit.
    pub(super) ends_bare: bool,
    /// A minus before a number, or digits that make no number.
    pub(super) broken: bool,
}

/// Takes a description apart.
pub(super) fn describe(line: &Line, default: LengthUnit) -> Described {
    let tokens = line.tokens();
    let said: Vec<String> = tokens.iter().filter_map(Token::word).map(str::to_owned).collect();
    let unknown: Vec<String> = said.iter().filter(|word| !words::known(word)).cloned().collect();
    let mut described = Described {
        grade: words::grade(&said),
        kind: words::kind(&said),
        grain: words::grain(&said),
        shared: words::shared(&said),
        // A unit is either a word or a sign.
        known: unknown.len() < said.len()
            || tokens.iter().any(|token| words::unit(token).is_some()),
        begun: match (tokens.last().and_then(Token::word), unknown.last()) {
            (Some(word), Some(other)) => word == other && words::begins(word),
            _ => false,
        },
        unknown,
        ..Described::default()
    };
    let mut index = 0;
    while let Some(rest) = tokens.get(index..).filter(|rest| !rest.is_empty()) {
        let pack = index
            .checked_sub(1)
            .and_then(|before| tokens.get(before))
            .is_some_and(|token| PACK.iter().any(|word| token.is(word)));
        index += described.take(rest, index, pack, default);
    }
    described.ends_bare = described.bare.iter().any(|(_, at)| at + 1 == tokens.len());
    described
}

impl Described {
    /// Takes the first pieces of the rest; says how many. `pack`: "pack of" stands before.
    fn take(&mut self, rest: &[Token], index: usize, pack: bool, default: LengthUnit) -> usize {
        match rest {
            [Token::Number(number), unit, ..] if self.with_unit(number.value, unit, index) => 2,
            [Token::Number(number), ..] if pack && number.value.fract() == 0.0 => {
                self.pack = Some((number.value, index));
                1
            }
            [Token::Number(number), ..] => {
                self.without_unit(number, index, default);
                1
            }
            [word, Token::Number(number), ..] if self.volume_before(word, number.value) => 2,
            [word, Token::Sign('=' | ':'), Token::Number(number), ..]
                if self.volume_before(word, number.value) =>
            {
                1 + 2
            }
            [Token::Sign('-'), Token::Number(_), ..] | [Token::Bad, ..] => {
                self.broken = true;
                1
            }
            _ => 1,
        }
    }

    fn with_unit(&mut self, number: f64, token: &Token, index: usize) -> bool {
        match words::unit(token) {
            Some(PaperUnit::Grammage) => self.grammages.push(number),
            Some(PaperUnit::Pounds) => self.pounds.push((number, index + 1)),
            Some(PaperUnit::Thick(unit, metric)) => {
                self.thick.push((Mm(number * unit).tidy(), index));
                self.metric |= metric;
            }
            Some(PaperUnit::Ppi) if number == 0.0 => self.broken = true,
            Some(PaperUnit::Ppi) => {
                self.thick.push((Mm(f64::from(PAGES_PER_LEAF) * MM_PER_INCH / number), index));
            }
            Some(PaperUnit::Volume) => {
                self.bulk = Some(number);
                self.metric = true;
            }
            Some(PaperUnit::Bulk) => return self.volume(number, false),
            Some(PaperUnit::TenfoldBulk) => return self.volume(number, true),
            Some(PaperUnit::Leaves) => self.pack = Some((number, index)),
            None => return false,
        }
        true
    }

    /// A number beside "bulk" or "vol", if it can be that.
    fn volume(&mut self, number: f64, tenfold: bool) -> bool {
        let (least, most) = BULK_RANGE;
        let bulk = if tenfold && number > most { number / VOLUME_FACTOR } else { number };
        let volume = bulk >= least && bulk <= most;
        if volume {
            self.bulk = Some(bulk);
            self.metric = true;
        }
        volume
    }

    fn volume_before(&mut self, token: &Token, number: f64) -> bool {
        let tenfold = match words::unit(token) {
            Some(PaperUnit::Bulk) => false,
            Some(PaperUnit::TenfoldBulk) => true,
            _ => return false,
        };
        if !self.volume(number, tenfold) {
            self.bulk = Some(number);
        }
        true
    }

    fn without_unit(&mut self, number: &Number, index: usize, default: LengthUnit) {
        let value = number.value;
        if value >= BARE_THICKNESS_BELOW || value == 0.0 {
            self.bare.push((value, index));
            return;
        }
        let inches =
            value < BARE_INCHES_BELOW || (value < BARE_EITHER_BELOW && default == LengthUnit::Inch);
        let length = if inches { Mm::from_inches(value) } else { Mm(value) };
        self.thick.push((length, index));
        self.metric |= !inches;
    }

    /// The thickness of the pack: the first length behind the number of leaves, else any.
    pub(super) fn pack_thickness(&self, leaves_at: usize) -> Option<Mm> {
        let behind = self.thick.iter().find(|(_, index)| *index > leaves_at);
        behind.or(self.thick.first()).map(|(length, _)| *length)
    }
}
