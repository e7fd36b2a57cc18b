//! Sorting on cold paths, compiled once. A sort of its own for every type, and a map collected from pairs is one too,
//! costs the page some kilobytes each.

use std::cmp::Ordering;
use std::collections::BTreeMap;

/// The places `0..len` in the order of a comparison.
#[must_use]
pub fn order(len: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..len).collect();
    places.sort_unstable_by(|&a, &b| compare(a, b));
    places
}

/// Items put in order by a comparison; equal ones stay as they came.
#[must_use]
pub fn sorted<T>(items: Vec<T>, compare: &dyn Fn(&T, &T) -> Ordering) -> Vec<T> {
    let places = order(items.len(), &|a, b| compare(&items[a], &items[b]).then(a.cmp(&b)));
    let mut items: Vec<Option<T>> = items.into_iter().map(Some).collect();
    places.into_iter().filter_map(|place| items.get_mut(place)?.take()).collect()
}

/// A map of pairs, put in one by one; of equal keys the last one stays.
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
