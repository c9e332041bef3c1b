//! The search: one change, then two, each planned like any other book; only what passes is kept.

use super::asked::Asked;
use super::candidates::singles;
use super::change::{Change, Weighed};
use super::scratch::Scratch;
use crate::check::Verdict;
use crate::draft::Draft;
use crate::job::Job;
use crate::shop::Shop;

/// Most ways of one change that are offered, and of two.
const MOST_SINGLE: usize = 7;
/// Most ways of two changes.
const MOST_DOUBLE: usize = 4;

/// One change or two, with the verdict on the book they make.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Tried {
    pub(super) first: Weighed,
    pub(super) second: Option<Weighed>,
    pub(super) verdict: Verdict,
}

impl Tried {
    /// How much it is minded.
    pub(super) fn weight(&self) -> f64 {
        self.first.weight + self.second.map_or(0.0, |second| second.weight)
    }
    /// Its changes, in the order in which they are put into the book.
    pub(super) fn changes(&self) -> impl Iterator<Item = Weighed> {
        core::iter::once(self.first).chain(self.second)
    }
    /// The kinds of its changes.
    fn kinds(&self) -> (&'static str, &'static str) {
        (self.first.kind.id, self.second.map_or("", |second| second.kind.id))
    }
}

/// Two changes by their places among the singles, and what they weigh; one change has 0 behind it.
type Ranked = (u16, u16, f32);

fn least_minded_first(list: &mut [Ranked]) {
    list.sort_unstable_by(|a, b| a.2.total_cmp(&b.2).then((a.0, a.1).cmp(&(b.0, b.1))));
}

/// A search over one book.
#[derive(Debug)]
pub struct Search<'a> {
    pub(super) asked: Asked<'a>,
    pub(super) scratch: Scratch,
    singles: Vec<Tried>,
    pairs: Vec<Ranked>,
    doubles: Vec<Tried>,
    /// The book as it stands.
    pub(super) base: Verdict,
}

impl<'a> Search<'a> {
    /// Lists everything worth trying for a book, the job that its draft reads as in a shop.
    #[must_use]
    pub fn new(draft: &'a Draft, job: &'a Job, shop: &'a Shop) -> Self {
        let asked = Asked::new(draft, job, shop);
        let untried = |first| Tried { first, second: None, verdict: Verdict::DoesNotFit };
        let singles: Vec<Tried> = singles(&asked).into_iter().map(untried).collect();
        let two = singles.len() * singles.len().saturating_sub(1) / 2;
        let mut search = Self {
            asked,
            scratch: Scratch::new(job),
            pairs: Vec::with_capacity(two),
            doubles: Vec::with_capacity(two),
            singles,
            base: Verdict::DoesNotFit,
        };
        search.base = search.scratch.judge(&search.asked, &[]);
        search
    }

    /// Every single change.
    #[cfg(test)]
    pub(super) fn singles(&self) -> &[Tried] {
        &self.singles
    }

    /// How many books have been planned.
    #[must_use]
    pub const fn tried(&self) -> usize {
        self.scratch.tried
    }

    /// Plans up to `most` books: every single change, then two at a time, the least minded first,
    /// until enough ways are found. Where the book fits as it stands, single changes only.
    ///
    /// Allocates nothing.
    pub fn run(&mut self, most: usize) {
        let fits = self.base == Verdict::Fits;
        for tried in &mut self.singles {
            if self.scratch.tried >= most {
                return;
            }
            if !fits || tried.first.kind.also_when_fits {
                tried.verdict = self.scratch.judge(&self.asked, &[tried.first.change]);
            }
        }
        if fits {
            return;
        }
        self.pair_up();
        for (one, other, _) in &self.pairs {
            let found = self.doubles.iter().filter(|tried| tried.verdict == Verdict::Fits);
            if self.scratch.tried >= most || found.count() >= MOST_DOUBLE {
                return;
            }
            let (Some(one), Some(other)) =
                (self.singles.get(usize::from(*one)), self.singles.get(usize::from(*other)))
            else {
                continue;
            };
            let changes: [Change; 2] = [one.first.change, other.first.change];
            let verdict = self.scratch.judge(&self.asked, &changes);
            let tried = Tried { first: one.first, second: Some(other.first), verdict };
            // The first of its kinds is the least change of its kinds.
            let known = |known: &Tried| known.verdict == verdict && known.kinds() == tried.kinds();
            if verdict <= Verdict::Marginal && !self.doubles.iter().any(known) {
                self.doubles.push(tried);
            }
        }
    }

    /// Pairs of changes on two axes, neither of which is enough by itself, the least minded first.
    fn pair_up(&mut self) {
        self.pairs.clear();
        self.doubles.clear();
        for (place, one) in self.singles.iter().enumerate() {
            for (behind, other) in self.singles.iter().enumerate().skip(place + 1) {
                let enough = [one, other].iter().any(|tried| tried.verdict == Verdict::Fits);
                if !enough && one.first.kind.axis != other.first.kind.axis {
                    let weight = (one.weight() + other.weight()) as f32;
                    self.pairs.push((place as u16, behind as u16, weight));
                }
            }
        }
        least_minded_first(&mut self.pairs);
    }

    /// What has this verdict, least change first, no kind of change more often than its row allows.
    pub(super) fn passing(&self, verdict: Verdict) -> Vec<Tried> {
        let mut ranked: Vec<Ranked> = Vec::new();
        for (place, tried) in self.singles.iter().enumerate() {
            if tried.verdict == verdict {
                ranked.push((place as u16, 0, tried.weight() as f32));
            }
        }
        least_minded_first(&mut ranked);
        let mut chosen: Vec<Tried> = Vec::new();
        for tried in ranked.iter().filter_map(|(place, ..)| self.singles.get(usize::from(*place))) {
            let kind = tried.first.kind;
            let same = chosen.iter().filter(|known| known.first.kind.id == kind.id).count();
            if chosen.len() < MOST_SINGLE && same < kind.most {
                chosen.push(*tried);
            }
        }
        let doubles = self.doubles.iter().filter(|tried| tried.verdict == verdict);
        chosen.extend(doubles.take(MOST_DOUBLE));
        chosen
    }
}
