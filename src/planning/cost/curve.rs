//! The cost of a copy at other numbers of copies.

use super::Cost;
use crate::data::{ORDER_SPAN, ORDERED};
use crate::units::{Copies, Money, put_once};

/// Numbers are written with ten digits.
const TEN: u32 = 10;

/// What a run of so many copies costs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AtCopies {
    /// Good copies.
    pub copies: Copies,
    /// The run.
    pub total: Money,
    /// One of them.
    pub each: Money,
    /// The job's own number, or one that people order.
    pub ordered: bool,
}

impl AtCopies {
    /// A point of the curve from the cost of its run.
    #[must_use]
    pub const fn of(copies: Copies, cost: &Cost, ordered: bool) -> Self {
        Self { copies, total: cost.total, each: cost.each, ordered }
    }
}

/// Numbers that people order from a fifth of the job's own to five times as many, the job's own
/// among them, fewest first.
#[must_use]
pub fn orders(own: Copies) -> Vec<Copies> {
    let (least, most) = span(own);
    let mut found = vec![own];
    let mut ten = 1_u32;
    let wanted = least.as_f64()..=most.as_f64();
    loop {
        let round = ORDERED.value.iter().map(|digits| digits * f64::from(ten));
        let whole = round.filter(|copies| copies.fract() == 0.0 && wanted.contains(copies));
        whole.for_each(|copies| put_once(&mut found, Copies(copies as u32)));
        match ten.checked_mul(TEN) {
            Some(more) if more <= most.get() => ten = more,
            _ => return found,
        }
    }
}

/// The fewest and the most copies that are looked at.
#[must_use]
pub fn span(own: Copies) -> (Copies, Copies) {
    let times = ORDER_SPAN.value;
    let least = (own.as_f64() / times).ceil().max(1.0);
    // A number too large for the type is its largest.
    (Copies(least as u32), Copies((own.as_f64() * times) as u32))
}

#[cfg(test)]
mod tests {
    use super::orders;
    use crate::units::Copies;

    #[test]
    fn numbers_people_order() {
        let of = |own| orders(Copies(own)).iter().map(|copies| copies.get()).collect::<Vec<_>>();
        let expected =
            [250, 300, 400, 500, 600, 750, 1000, 1200, 1500, 2000, 2500, 3000, 4000, 5000, 6000];
        assert_eq!(of(1200), expected);
        // No half copies, and one is the fewest.
        assert_eq!(of(1), [1, 2, 3, 4, 5]);
        assert_eq!(of(7), [2, 3, 4, 5, 6, 7, 10, 15, 20, 25, 30]);
        // Numbers beyond the type are left out.
        assert_eq!(of(4_000_000_000).last(), Some(&4_000_000_000));
    }
}
