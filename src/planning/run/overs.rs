//! Overs: what must be fed so that enough comes out, stage after stage, each component apart.

use crate::book::CoverPlan;
use crate::data::{Line, Overs, StageOvers};
use crate::job::{HeadFoot, Job, Role};
use crate::units::{Copies, Mm, larger};

/// Rounding of quotients that must not cost or save a whole set.
const NOISE: f64 = 1e-9;

/// What to feed for so many good ones: ceil(net / (1 − r)) + m, with r a share of what is fed.
///
/// ```
/// use quirefit_input::data::Overs;
/// use quirefit_planning::run::{good, gross};
/// let overs = Overs::new(0.02, 25.0);
/// assert_eq!(gross(2_500, overs), 2_577);
/// assert_eq!(good(12_100, overs), 11_833);
/// ```
#[must_use]
pub fn gross(net: u32, overs: Overs) -> u32 {
    if net == 0 {
        return 0;
    }
    let fed = (f64::from(net) / (1.0 - overs.share) - NOISE).ceil();
    (fed + overs.fixed) as u32
}

/// What comes out of so many fed: floor((fed − m) · (1 − r)).
#[must_use]
pub fn good(fed: u32, overs: Overs) -> u32 {
    (larger(f64::from(fed) - overs.fixed, 0.0) * (1.0 - overs.share) + NOISE).floor() as u32
}

/// One section on its way through the stages.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Component {
    /// Index of the section.
    pub section: usize,
    /// Its folded sheets in one set.
    pub sheets: u32,
    /// One leaf, and two fed at once: where a double check stands between.
    pub leaf: (Mm, Mm),
    /// Sets of it that the line is fed.
    pub fed: u32,
    /// Sets that go through creasing before; the same as fed where nothing is creased before.
    pub creased: u32,
    /// Sets to print: flat sheets of each of its sheets.
    pub printed: u32,
    /// Sets that have come in, where somebody has counted them.
    pub supplied: Option<u32>,
    /// Good copies that those make.
    pub makes: Option<Copies>,
}

/// The run's quantities.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Quantities {
    /// Good sets wanted: copies / copies along the fold, rounded up.
    pub net: u32,
    /// Good sets that must leave the line; more than net where cutting follows.
    pub off_line: u32,
    /// What the line spoils.
    pub overs: Overs,
    /// Sets the line must be fed.
    pub needed: u32,
    /// Sets it will be fed: fewer where a component is short.
    pub fed: u32,
    /// Good copies to expect.
    pub good: Copies,
    /// Index of the component that limits the run, where one does.
    pub short: Option<usize>,
    /// Every section, outermost first.
    pub components: Vec<Component>,
}

/// Whether stitched books go to a guillotine: to be squared, or cut apart.
fn cut_after(job: &Job) -> bool {
    match job.head_foot {
        HeadFoot::After => true,
        HeadFoot::Before => job.copies_up > 1,
        HeadFoot::OnLine => false,
    }
}

/// Goes from the last stage to the first: cutting, line, creasing of a cover, printing. No sets at all
/// where nobody has said how many copies. What stood in `out` is replaced; its list is used again.
pub fn quantities(
    job: &Job,
    line: &Line,
    stages: &StageOvers,
    cover: &CoverPlan,
    out: &mut Quantities,
) {
    let up = job.copies_up.max(1);
    let cut = if cut_after(job) { stages.cut } else { Overs::default() };
    let copies = job.copies.unwrap_or_default();
    out.net = copies.get().div_ceil(up);
    out.overs = line.pace.overs();
    out.off_line = gross(out.net, cut);
    out.needed = gross(out.off_line, line.pace.overs());
    out.fed = out.needed;
    out.short = None;
    out.components.clear();
    out.components.reserve(job.sections.len());
    for (index, section) in job.sections.iter().enumerate() {
        let creased_before = section.role == Role::Cover && cover.wants_crease && !line.creases;
        let creased = if creased_before { gross(out.needed, stages.crease) } else { out.needed };
        let leaf = section.caliper.value.nominal;
        let makes = |sets: u32| Copies(good(good(sets, line.pace.overs()), cut).saturating_mul(up));
        if let Some(supplied) = section.supplied
            && supplied < out.fed
        {
            out.fed = supplied;
            out.short = Some(index);
        }
        out.components.push(Component {
            section: index,
            sheets: section.sheets.get(),
            leaf: (leaf, leaf * 2.0),
            fed: out.needed,
            creased,
            printed: gross(creased, stages.print),
            supplied: section.supplied,
            makes: section.supplied.map(makes),
        });
    }
    let expected = good(good(out.fed, line.pace.overs()), cut).saturating_mul(up);
    out.good = if out.short.is_some() { Copies(expected) } else { copies };
}

#[cfg(test)]
mod tests {
    use super::{good, gross};
    use crate::data::Overs;

    /// A share of what is fed: counted out set by set rather than by the formula.
    #[test]
    fn a_share_of_what_is_fed() {
        for (net, share, fixed, fed) in [
            (2_500, 0.02, 25.0, 2_577),
            (5_000, 0.05, 0.0, 5_264),
            (12_000, 0.02, 25.0, 12_270),
            (420, 0.0, 0.0, 420),
            // 98 of 100 fed stay: exactly, with no set lost to rounding.
            (98, 0.02, 0.0, 100),
            (0, 0.02, 25.0, 0),
        ] {
            let overs = Overs::new(share, fixed);
            assert_eq!(gross(net, overs), fed, "{net}");
            let spoilt = |fed: u32| (f64::from(fed) - fixed) * share;
            if net > 0 {
                assert!(f64::from(fed) - fixed - spoilt(fed) >= f64::from(net) - 1e-6);
                assert!(f64::from(fed - 1) - fixed - spoilt(fed - 1) < f64::from(net));
            }
        }
    }

    #[test]
    fn what_comes_in_short_makes_fewer() {
        assert_eq!(good(12_100, Overs::new(0.02, 25.0)), 11_833);
        assert_eq!(good(10, Overs::new(0.02, 25.0)), 0);
    }

    /// Three stages of 3 %: 12 sets more than adding 3 % three times gives.
    #[test]
    fn stages_follow_each_other() {
        let stage = Overs::new(0.03, 0.0);
        let fed = gross(gross(gross(5_000, stage), stage), stage);
        assert!(good(good(good(fed, stage), stage), stage) >= 5_000);
        assert_eq!(fed, 5_480);
    }
}
