//! The index from a record to the entries that write it.

use super::{Key, Kind};
use crate::numerics::sorting::sorted;

/// Where a write stands: its entry, and which of that entry's edits it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Write {
    pub(super) entry: u32,
    pub(super) edit: u32,
}

/// Which entries are about which record: a list in the order of the keys, so that all records of a kind and all parts
/// of a record lie side by side. Nearly every record has one write, and then nothing more is kept of it.
#[derive(Clone, Debug, Default)]
pub(super) struct WriteIndex {
    list: Vec<(Key, Writes)>,
}

/// The writes of one record, in the order they count.
#[derive(Clone, Debug)]
enum Writes {
    One(Write),
    More(Vec<Write>),
}

impl Writes {
    fn all(&self) -> &[Write] {
        match self {
            Self::One(write) => std::slice::from_ref(write),
            Self::More(writes) => writes,
        }
    }

    fn insert(&mut self, at: usize, write: Write) {
        let mut writes = self.all().to_vec();
        writes.insert(at.min(writes.len()), write);
        *self = Self::More(writes);
    }
}

impl WriteIndex {
    /// The index of writes that are in the order they count.
    pub(super) fn of(writes: Vec<(Key, Write)>) -> Self {
        let mut list: Vec<(Key, Writes)> = Vec::with_capacity(writes.len());
        for (key, write) in sorted(writes, &|a, b| a.0.cmp(&b.0)) {
            match list.last_mut() {
                Some((last, Writes::More(writes))) if *last == key => writes.push(write),
                Some((last, writes)) if *last == key => writes.insert(1, write),
                _ => list.push((key, Writes::One(write))),
            }
        }
        Self { list }
    }

    /// The writes of a record.
    pub(super) fn get(&self, key: &Key) -> &[Write] {
        match self.list.binary_search_by(|(it, _)| it.cmp(key)) {
            Ok(at) => self.list.get(at).map_or(&[], |(_, writes)| writes.all()),
            Err(_) => &[],
        }
    }

    /// Puts a write in, behind those of its record that count `before` it.
    pub(super) fn put(&mut self, key: Key, write: Write, before: &dyn Fn(&Write) -> bool) {
        match self.list.binary_search_by(|(it, _)| it.cmp(&key)) {
            Ok(at) => {
                if let Some((_, writes)) = self.list.get_mut(at) {
                    writes.insert(writes.all().partition_point(before), write);
                }
            }
            Err(at) => self.list.insert(at, (key, Writes::One(write))),
        }
    }

    /// Every key, in order.
    pub(super) fn keys(&self) -> impl Iterator<Item = &Key> {
        self.list.iter().map(|(key, _)| key)
    }

    /// The keys of a kind whose ids begin so, in order.
    pub(super) fn begin(&self, kind: Kind, start: Box<str>) -> impl Iterator<Item = &Key> {
        let from = self.list.partition_point(|(key, _)| (key.kind, &*key.id) < (kind, &*start));
        let rest = self.list.get(from..).unwrap_or_default().iter().map(|(key, _)| key);
        rest.take_while(move |key| key.kind == kind && key.id.starts_with(&*start))
    }
}
