//! Lists put in order. Every kind of list that is sorted by itself weighs some four kilobytes in the
//! page, so one sort serves them all.

use core::cmp::Ordering;

/// The places of so many things in their order; what is alike stays as it stood.
#[must_use]
pub fn places(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).collect();
    places.sort_by(|one, other| compare(*one, *other));
    places
}

/// A list in its order; what is alike stays as it stood.
#[must_use]
pub fn in_order<T: Clone>(list: &[T], compare: impl Fn(&T, &T) -> Ordering) -> Vec<T> {
    let compare = |one: usize, other: usize| match (list.get(one), list.get(other)) {
        (Some(one), Some(other)) => compare(one, other),
        _ => Ordering::Equal,
    };
    let places = places(list.len(), &compare);
    places.into_iter().filter_map(|place| list.get(place).cloned()).collect()
}

/// Puts something in its place in a short list that is in order, once.
pub fn put_once<T: Ord>(list: &mut Vec<T>, thing: T) {
    let place = list.partition_point(|known| *known < thing);
    if list.get(place) != Some(&thing) {
        list.insert(place, thing);
    }
}

#[cfg(test)]
mod tests {
    use super::{in_order, put_once};
    use std::collections::BTreeSet;

    /// Numbers without any order, the same in every run: multiples of 37 in a circle of 101.
    fn shuffled() -> impl Iterator<Item = u32> {
        (0..150).map(|step| step * 37 % 101)
    }

    #[test]
    fn what_is_alike_stays_as_it_stood() {
        let list: Vec<(u32, usize)> = shuffled().map(|number| number % 7).zip(0..).collect();
        let sorted = in_order(&list, |one, other| one.0.cmp(&other.0));
        assert_eq!(sorted.len(), list.len());
        // Told apart by where they stood, no two are alike: then there is one order only.
        assert!(sorted.is_sorted() && !list.is_sorted());
    }

    #[test]
    fn everything_stands_there_once() {
        let mut list = Vec::new();
        shuffled().for_each(|number| put_once(&mut list, number));
        assert_eq!(list, shuffled().collect::<BTreeSet<u32>>().into_iter().collect::<Vec<_>>());
    }
}
