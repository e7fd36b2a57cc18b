//! Insertion into a sorted list.

use std::cmp::Ordering;

/// Puts `item` into a list that is in order, behind what it equals. The plan's lists are short and grow one
/// by one; the standard library's sort, compiled anew for each type of entry, would be a thirtieth of the
/// page's size.
pub fn sorted_insert<T>(list: &mut Vec<T>, item: T, order: impl Fn(&T, &T) -> Ordering) {
    let at = list.partition_point(|other| order(other, &item).is_le());
    list.insert(at, item);
}
