//! The log itself: every entry that a tablet knows, which of them count, and what Undo and Redo act on.

use super::index::{Write, WriteIndex};
use super::line::MOST_STAMP;
use super::{Change, Edit, Key, Kind, LogEntry, VERSION};
use crate::numerics::sorting::sorted;
use std::collections::HashMap;

/// From this many new entries on, rebuilding the index is faster than inserting one by one: an insertion
/// moves half of the index and costs up to a millisecond, a rebuild for 220,000 entries a fifth of a
/// second.
const MANY: usize = 300;

/// Every entry that a tablet knows, and an index from records to the entries about them.
#[derive(Clone, Debug, Default)]
pub struct Log {
    tablet: Box<str>,
    session: Box<str>,
    written: u32,
    stamp: u64,
    entries: Vec<LogEntry>,
    place: HashMap<Box<str>, u32>,
    writes: WriteIndex,
    /// Undos and redos of an entry, in order.
    verdicts: HashMap<Box<str>, Vec<u32>>,
    /// Entries of this tablet that Undo can take back, in order.
    own: Vec<u32>,
    /// Ids of entries that came in with a merge that this tablet undid.
    hidden: HashMap<Box<str>, u32>,
    newer: bool,
}

impl Log {
    /// An empty log for a tablet. `session` identifies one opening of the page, so that two tabs never
    /// write the same id. The caller draws both at random and stores `tablet`.
    #[must_use]
    pub fn new(tablet: impl Into<Box<str>>, session: impl Into<Box<str>>) -> Self {
        Self { tablet: tablet.into(), session: session.into(), ..Self::default() }
    }

    /// The tablet that this log belongs to.
    #[must_use]
    pub fn tablet(&self) -> &str {
        &self.tablet
    }

    /// All entries, in no particular order.
    #[must_use]
    pub fn entries(&self) -> &[LogEntry] {
        &self.entries
    }

    /// How many entries there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Whether there is no entry.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// The entry of this id.
    #[must_use]
    pub fn get(&self, id: &str) -> Option<&LogEntry> {
        self.at(*self.place.get(id)?)
    }

    /// Whether a newer Whitehold wrote any entry: the log is then read-only.
    #[must_use]
    pub fn read_only(&self) -> bool {
        self.newer
    }

    pub(super) fn at(&self, place: u32) -> Option<&LogEntry> {
        self.entries.get(place as usize)
    }

    pub(super) fn place_of(&self, id: &str) -> Option<u32> {
        self.place.get(id).copied()
    }

    pub(super) fn edit(&self, write: Write) -> Option<&Edit> {
        self.at(write.entry)?.change.edits().get(write.edit as usize)
    }

    pub(super) fn writes(&self, key: &Key) -> &[Write] {
        self.writes.get(key)
    }

    pub(super) fn hides(&self, place: u32) -> bool {
        !self.hidden.is_empty() && self.at(place).is_some_and(|entry| self.hidden.contains_key(&entry.id))
    }

    /// Whether an entry came in with a merge that this tablet undid.
    #[must_use]
    pub fn hides_entry(&self, entry: &LogEntry) -> bool {
        self.hidden.contains_key(&entry.id)
    }

    /// Whether an entry is in force: it is not hidden, and the last undo or redo of it, if any, is a
    /// redo.
    pub(super) fn counts(&self, place: u32) -> bool {
        let Some(entry) = self.at(place) else { return false };
        if !self.hidden.is_empty() && self.hidden.contains_key(&entry.id) {
            return false;
        }
        let latest = self.verdicts(&entry.id).iter().rev().find(|&&verdict| !self.hides(verdict));
        latest.is_none_or(|&verdict| self.redoes(verdict))
    }

    /// The undos and redos of an entry, in order.
    fn verdicts(&self, id: &str) -> &[u32] {
        self.verdicts.get(id).map_or(&[], Vec::as_slice)
    }

    /// Whether the entry at a place is a redo.
    fn redoes(&self, place: u32) -> bool {
        self.at(place).is_some_and(|entry| matches!(entry.change, Change::Redo { .. }))
    }

    /// Inserts an entry; false if it is known already.
    pub fn insert(&mut self, entry: LogEntry) -> bool {
        let Ok(place) = u32::try_from(self.entries.len()) else { return false };
        if self.place.contains_key(&entry.id) {
            return false;
        }
        self.stamp = self.stamp.max(entry.stamp);
        self.place.insert(entry.id.clone(), place);
        self.entries.push(entry);
        let Self { entries, writes, verdicts, own, newer, tablet, place: places, .. } = self;
        let Some(entry) = entries.get(place as usize) else { return false };
        let order = |place: u32| entries.get(place as usize).map(LogEntry::order);
        let here = Some(entry.order());
        for (edit, what) in entry.change.edits().iter().enumerate() {
            let Ok(edit) = u32::try_from(edit) else { break };
            writes.put(what.key(), Write { entry: place, edit }, &|write| order(write.entry) < here);
        }
        match &entry.change {
            Change::Undo { of } | Change::Redo { of } => {
                let list = verdicts.entry(of.clone()).or_default();
                let at = list.partition_point(|&verdict| order(verdict) < here);
                list.insert(at, place);
            }
            Change::Newer(_) => *newer = true,
            _ => {}
        }
        if entry.change.undoable() && entry.by == *tablet {
            let at = own.partition_point(|&place| order(place) < here);
            own.insert(at, place);
        }
        let merges = |entry: &LogEntry| matches!(entry.change, Change::Merge { .. });
        let of_merge = match &entry.change {
            Change::Undo { of } | Change::Redo { of } => {
                places.get(of).and_then(|&place| entries.get(place as usize)).is_some_and(merges)
            }
            _ => merges(entry),
        };
        if of_merge {
            self.hide();
        }
        true
    }

    /// Inserts many entries and returns how many were new. Much faster than one by one.
    pub fn extend(&mut self, mut entries: Vec<LogEntry>) -> usize {
        let before = self.entries.len();
        if entries.len() < MANY {
            for entry in entries {
                self.insert(entry);
            }
            return self.entries.len() - before;
        }
        entries.retain(|entry| !self.place.contains_key(&entry.id));
        let mut all = std::mem::take(&mut self.entries);
        if all.is_empty() {
            all = entries;
        } else {
            all.append(&mut entries);
        }
        if !all.is_sorted_by(|a, b| a.order() <= b.order()) {
            all = sorted(all, &|a, b| a.order().cmp(&b.order()));
        }
        self.index(all);
        self.entries.len() - before
    }

    /// Replaces all entries by these, which are in order, and rebuilds every index over them.
    fn index(&mut self, mut entries: Vec<LogEntry>) {
        let mut place = HashMap::with_capacity(entries.len());
        let mut next = 0..u32::MAX;
        entries.retain(|entry| {
            let new = !place.contains_key(&entry.id);
            let at = if new { next.next() } else { None };
            at.is_some_and(|at| place.insert(entry.id.clone(), at).is_none())
        });
        self.place = place;
        self.verdicts.clear();
        self.own.clear();
        let mut writes = Vec::with_capacity(entries.len());
        for (at, entry) in (0..).zip(&entries) {
            self.stamp = self.stamp.max(entry.stamp);
            writes.extend(
                (0..).zip(entry.change.edits()).map(|(edit, what)| (what.key(), Write { entry: at, edit })),
            );
            match &entry.change {
                Change::Undo { of } | Change::Redo { of } => {
                    self.verdicts.entry(of.clone()).or_default().push(at);
                }
                Change::Newer(_) => self.newer = true,
                _ => {}
            }
            if entry.change.undoable() && entry.by == self.tablet {
                self.own.push(at);
            }
        }
        self.writes = WriteIndex::of(writes);
        self.entries = entries;
        self.hide();
    }

    /// Finds the entries that came in with merges that this tablet undid. Undos by other tablets do not
    /// count here.
    fn hide(&mut self) {
        self.hidden.clear();
        let mut hidden = HashMap::new();
        for entry in self.own.iter().filter_map(|&place| self.at(place)) {
            let Change::Merge { brought, .. } = &entry.change else { continue };
            let mine = |verdict: &&u32| self.at(**verdict).is_some_and(|it| it.by == self.tablet);
            let latest = self.verdicts(&entry.id).iter().rev().find(mine);
            if latest.is_some_and(|&verdict| !self.redoes(verdict)) {
                hidden.extend(brought.iter().map(|id| (id.clone(), 0)));
            } else {
                // An entry that two merges brought is hidden only while both are undone.
                for id in brought {
                    hidden.remove(id);
                }
            }
        }
        self.hidden = hidden;
    }

    /// Appends a change as the next entry; the caller stores its [`LogEntry::line`].
    pub fn append(&mut self, at: i64, change: Change) -> LogEntry {
        self.written += 1;
        let entry = LogEntry {
            v: VERSION,
            id: format!("{}.{}.{:05}", self.tablet, self.session, self.written).into(),
            at,
            by: self.tablet.clone(),
            stamp: (self.stamp + 1).min(MOST_STAMP),
            change,
        };
        self.insert(entry.clone());
        entry
    }

    /// Keys of all records of a kind that were ever written, by id.
    pub fn keys(&self, kind: Kind) -> impl Iterator<Item = &Key> {
        self.writes.begin(kind, "".into())
    }

    /// Keys of all records of a kind that belong to an owner and were ever written, by id.
    pub(super) fn keys_of(&self, kind: Kind, owner: &str) -> impl Iterator<Item = &Key> {
        self.writes.begin(kind, format!("{owner}/").into())
    }

    /// Keys of all records that were ever written.
    pub fn all_keys(&self) -> impl Iterator<Item = &Key> {
        self.writes.keys()
    }

    /// The entry that Undo takes back: the last one of this tablet that is in force.
    #[must_use]
    pub fn to_undo(&self) -> Option<&LogEntry> {
        self.own.iter().rev().find(|&&place| self.counts(place)).and_then(|&place| self.at(place))
    }

    /// The entry that Redo restores: the one undone last, unless this tablet has written since.
    #[must_use]
    pub fn to_redo(&self) -> Option<&LogEntry> {
        let latest = self.own.last().and_then(|&place| self.at(place))?;
        let undone = self.verdicts.iter().filter_map(|(id, list)| {
            let undo = list.last().filter(|&&verdict| !self.redoes(verdict)).and_then(|&it| self.at(it))?;
            let entry = self.get(id).filter(|entry| entry.by == self.tablet)?;
            (undo.by == self.tablet && undo.stamp > latest.stamp).then_some((undo.order(), entry))
        });
        undone.max_by_key(|&(order, _)| order).map(|(_, entry)| entry)
    }
}
