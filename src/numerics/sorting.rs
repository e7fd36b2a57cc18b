//! Sorting on cold paths with little compiled code.
//!
//! The standard sort, and a map collected from an iterator, which sorts too, are compiled anew for every
//! type: some kilobytes of the page each. Here the sort itself is compiled once, for indices.

use std::cmp::Ordering;
use std::collections::BTreeMap;

/// The indices `0..len`, sorted by a comparison.
#[must_use]
pub fn order(len: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..len).collect();
    places.sort_unstable_by(|&a, &b| compare(a, b));
    places
}

/// Items sorted by a comparison; equal ones keep their order.
#[must_use]
pub fn sorted<T>(items: Vec<T>, compare: &dyn Fn(&T, &T) -> Ordering) -> Vec<T> {
    let places = order(items.len(), &|a, b| compare(&items[a], &items[b]).then(a.cmp(&b)));
    let mut items: Vec<Option<T>> = items.into_iter().map(Some).collect();
    places.into_iter().filter_map(|place| items.get_mut(place)?.take()).collect()
}

/// A map of pairs, inserted one by one; of equal keys the last one wins.
pub fn map<K: Ord, V>(pairs: impl IntoIterator<Item = (K, V)>) -> BTreeMap<K, V> {
    let mut map = BTreeMap::new();
    for (key, value) in pairs {
        map.insert(key, value);
    }
    map
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_items_stay_as_they_came() {
        let items = vec![(2, 'a'), (1, 'b'), (2, 'c'), (1, 'd')];
        assert_eq!(sorted(items, &|a, b| a.0.cmp(&b.0)), [(1, 'b'), (1, 'd'), (2, 'a'), (2, 'c')]);
    }
}
