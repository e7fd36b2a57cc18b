//! The index from a record to the entries that write it.

use super::{Key, Kind};
use crate::numerics::sorting::sorted;

/// The place of a write: its entry, and the number of the edit in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Write {
    pub(super) entry: u32,
    pub(super) edit: u32,
}

/// The writes of every record: a list sorted by key, so that all records of a kind and all parts of a
/// record lie side by side. Nearly every record has a single write, which is stored without a list of its
/// own.
#[derive(Clone, Debug, Default)]
pub(super) struct WriteIndex {
    list: Vec<(Key, Writes)>,
}

/// The writes of one record, in the order of their entries.
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
    /// The index of writes that come in the order of their entries.
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

    /// Inserts a write behind those of its record for which `before` holds.
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

    /// The keys of a kind whose ids begin with `start`, in order.
    pub(super) fn begin(&self, kind: Kind, start: Box<str>) -> impl Iterator<Item = &Key> {
        let from = self.list.partition_point(|(key, _)| (key.kind, &*key.id) < (kind, &*start));
        let rest = self.list.get(from..).unwrap_or_default().iter().map(|(key, _)| key);
        rest.take_while(move |key| key.kind == kind && key.id.starts_with(&*start))
    }
}
