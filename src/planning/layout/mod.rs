//! The sheet: the untrimmed flat sheet on every press sheet on hand, ranked, and what stands where.
//!
//! Seen with the fold upright: across is across the fold, along is along it. A press sheet is tried
//! both ways round and on two routes: cut to size before the line, several flats from it; or straight
//! through, where all it is too large becomes trim and the face cut falls out of its width.

mod order;
mod place;
mod rank;
mod steps;

pub use order::{CopyPlace, CopyShape, Panel, Side, copies, panels};
pub use steps::{Step, steps};

use crate::book::{Leaf, Trim};
use crate::data::Line;
use crate::job::{HeadFoot, Job, RouteWish};
use crate::paper::Grain;
use crate::shop::Shop;
use crate::units::{Band, Mm, Money, Size, places};
use place::Needs;
use rank::{Prices, Rank, SIDES};

/// The routes, in the order in which they are tried.
const ROUTES: [Route; 2] = [Route::CutFirst, Route::Straight];

/// How a press sheet comes onto the line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Route {
    /// Cut to the planned flat sheets before.
    #[default]
    CutFirst,
    /// As one piece; all that is too large becomes trim.
    Straight,
}

impl Route {
    /// Its key in the language files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::CutFirst => "sheet.route.cut",
            Self::Straight => "sheet.route.straight",
        }
    }
}

/// Why a way of using a press sheet is refused, with the length that is missing or too much.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Refusal {
    /// The flat sheet is larger than the press sheet by so much across or along the fold.
    Small(Mm),
    /// What is printed reaches so far into edges that the press cannot print.
    Edges(Mm),
    /// The line does not take a sheet so wide across the fold.
    OpenWidth(Mm),
    /// The line does not take a sheet so long along the fold.
    TravelHeight(Mm),
    /// The chip on the outermost leaf may be so thin: less than the line cuts clean.
    ChipThin(Mm),
    /// The chip on the innermost leaf may be so deep: more than the line cuts.
    ChipDeep(Mm),
}

impl Refusal {
    /// The press sheet holds the book, but the line does not take it so.
    #[must_use]
    pub const fn by_line(self) -> bool {
        !matches!(self, Self::Small(_) | Self::Edges(_))
    }
}

/// Edges that the press leaves blank.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Edges {
    /// Left of the fold. The gripper's, if it lies beside the fold.
    pub left: Mm,
    /// Right of the fold.
    pub right: Mm,
    /// At the head. The gripper's, if it lies across the fold.
    pub top: Mm,
    /// At the foot.
    pub bottom: Mm,
}

/// One way of using one press sheet.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Way {
    /// Index of the press sheet in the shop.
    pub sheet: usize,
    /// Cut before or straight through.
    pub route: Route,
    /// The fold runs along the long side of the press sheet.
    pub fold_along_long: bool,
    /// The gripper lies beside the fold, else across its head.
    pub gripper_beside: bool,
    /// The press sheet across and along the fold.
    pub press: Size,
    /// What it leaves blank.
    pub edges: Edges,
    /// Flats across the fold and along it.
    pub grid: (u32, u32),
    /// Corner of the first flat, from the left and from the top of the press sheet.
    pub origin: Size,
    /// From one flat to the next, across and along.
    pub pitch: Size,
    /// A flat as it comes onto the line; straight through, the whole press sheet.
    pub flat: Size,
    /// Chip on the outermost leaf: planned, or what falls out.
    pub face_cut: Mm,
    /// The same with the tolerance.
    pub outermost_chip: Band<Mm>,
    /// Chip on the innermost leaf.
    pub innermost_chip: Band<Mm>,
    /// From the head edge of a flat to its first copy.
    pub head_trim: Mm,
    /// How the fibres would run, as far as the press sheet's label says.
    pub grain: Grain,
    /// Area of the flats that are needed over the area of the press sheet, 0 … 1.
    pub used: f64,
    /// Press sheet that no flat covers, mm².
    pub waste: f64,
    /// The largest piece left over.
    pub offcut: Size,
    /// Guillotine cuts of a pile before the line.
    pub cuts: u32,
    /// Paper and printed sides of one set of sheets, where the prices are known.
    pub cost: Option<Money>,
    /// Why not; nothing when it can be used.
    pub refusal: Option<Refusal>,
}

impl Way {
    /// Flats from one press sheet.
    #[must_use]
    pub const fn flats(&self) -> u32 {
        self.grid.0.saturating_mul(self.grid.1)
    }
    /// Its place among all of them: see [`Layout::way`].
    #[must_use]
    pub const fn place(&self) -> usize {
        self.sheet * ROUTES.len() + self.route as usize
    }
}

/// Press sheets for the run. Whole numbers; those of the largest run outgrow 32 bits.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Needed {
    /// Press sheets, every folded sheet of every section counted, with the overs.
    pub sheets: f64,
    /// Their printed sides.
    pub sides: f64,
}

/// Every press sheet on hand beside the flat sheet.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Layout {
    /// One for each press sheet and route, in the shop's order.
    ways: Vec<Way>,
    /// Place of the best way, or of the nearest miss.
    best: Option<usize>,
    /// Place of the way that is taken.
    chosen: Option<usize>,
    /// Ranked by cost; otherwise by waste.
    pub by_cost: bool,
    /// What the order of pages needs to know of the job.
    pub copy: CopyShape,
    /// What the run takes of the chosen press sheet.
    pub needed: Option<Needed>,
}

impl Layout {
    /// Every way, best first, refused ones last. They are put in order here, as often as asked.
    pub fn ranked(&self) -> impl Iterator<Item = &Way> {
        let ranks: Vec<Rank> = self.ways.iter().map(|way| Rank::of(way, self.by_cost)).collect();
        let order = places(ranks.len(), &|one, other| ranks.get(one).cmp(&ranks.get(other)));
        order.into_iter().filter_map(|place| self.way(place))
    }
    /// One way by its place: two for each press sheet, in the shop's order.
    #[must_use]
    pub fn way(&self, place: usize) -> Option<&Way> {
        self.ways.get(place)
    }
    /// The best way; the nearest miss where every way is refused.
    #[must_use]
    pub fn best(&self) -> Option<&Way> {
        self.way(self.best?)
    }
    /// The way that is taken: the best, or the best of what was asked for. It may be refused when one
    /// press sheet was asked for.
    #[must_use]
    pub fn chosen(&self) -> Option<&Way> {
        self.way(self.chosen?)
    }
    /// Counts press sheets for a run of components: flats of each folded sheet that are printed, and
    /// folded sheets. All flats of one press sheet are the same folded sheet.
    pub fn count(&mut self, components: impl Iterator<Item = (u32, u32)>) {
        let flats = self.chosen().filter(|way| way.refusal.is_none()).map_or(0, Way::flats);
        self.needed = (flats > 0).then(|| {
            let each = components.map(|(printed, folded)| {
                f64::from(printed.div_ceil(flats.max(1))) * f64::from(folded)
            });
            let sheets = each.sum();
            Needed { sheets, sides: sheets * SIDES }
        });
    }
}

/// Places the flat sheet on every press sheet on hand; what stood in `out` is replaced.
pub fn layout(job: &Job, shop: &Shop, line: &Line, book: (&Trim, &[Leaf]), out: &mut Layout) {
    let (trim, leaves) = book;
    let needs = Needs::of(job, line, trim, leaves);
    let prices = Prices::of(job, shop);
    out.by_cost = prices.known();
    out.needed = None;
    out.copy = CopyShape::of(job);
    // Ways are large: they are worked out where they stay.
    out.ways.resize(ROUTES.len() * shop.press_sheets.len(), Way::default());
    let (mut best, mut chosen): (Option<Rank>, Option<Rank>) = (None, None);
    let mut turned = Way::default();
    let tries =
        shop.press_sheets.iter().enumerate().flat_map(|sheet| ROUTES.map(|route| (sheet, route)));
    for (way, (sheet, route)) in out.ways.iter_mut().zip(tries) {
        let rank = |fold_along_long, way: &mut Way| {
            needs.place(sheet, route, fold_along_long, way);
            way.cost = prices.set(sheet.1, way.flats());
            Rank::of(way, out.by_cost)
        };
        let (mut rank_here, other) = (rank(true, way), rank(false, &mut turned));
        if other < rank_here {
            (rank_here, *way) = (other, turned);
        }
        let better = |known: Option<Rank>| known.is_none_or(|known| rank_here < known);
        if better(best) {
            best = Some(rank_here);
        }
        if takes(job, way) && better(chosen) {
            chosen = Some(rank_here);
        }
    }
    out.best = best.map(|rank| rank.place);
    out.chosen = chosen.map(|rank| rank.place);
}

/// Whether a way is one that the job asks for. What the line would refuse is taken all the same when
/// somebody asked for that route or that press sheet: the limits then say why it cannot be.
fn takes(job: &Job, way: &Way) -> bool {
    let asked_route = match job.route {
        // A cut that somebody has decided holds: straight through, it would fall out of the sheet.
        RouteWish::Auto => way.route == Route::CutFirst || job.face_cut.is_none(),
        RouteWish::CutFirst => way.route == Route::CutFirst,
        RouteWish::Straight => way.route == Route::Straight,
    };
    let asked_sheet = job.press_sheet.is_none_or(|sheet| sheet == way.sheet);
    let usable = match way.refusal {
        None => true,
        Some(refusal) => {
            job.press_sheet.is_some() || (job.route == RouteWish::Straight && refusal.by_line())
        }
    };
    asked_route && asked_sheet && usable
}

/// The trim as it falls out when the press sheet runs straight through: the planned one otherwise.
pub fn straight_trim(job: &Job, layout: &Layout, trim: &mut Trim) {
    let Some(way) = layout.chosen() else { return };
    let held = way.refusal.is_none_or(Refusal::by_line);
    if way.route != Route::Straight || !held {
        return;
    }
    let push_out = trim.knife_from_face - trim.face_cut;
    trim.straight = true;
    trim.face_cut = way.face_cut;
    trim.outermost_chip = way.outermost_chip;
    trim.innermost_chip = way.innermost_chip;
    trim.knife_from_face = way.face_cut + push_out;
    trim.flat = way.press;
    if job.head_foot != HeadFoot::Before {
        trim.travel_height = way.press.height;
        trim.head_trim = way.head_trim;
    }
}
