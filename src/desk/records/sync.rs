//! Entries that this tab did not write: read from the store, or stored by another tab.

use super::Records;
use crate::library::log::{Change, Edit, Key, LogEntry, read_line};
use crate::library::storage_layout::{self, Contents, SEGMENT};

/// Most records for which library and index are updated one by one; beyond, both are worked out anew. One record
/// takes up to a millisecond, all of a big shop's a quarter of a second. Assumed.
const FEW: usize = 50;

impl Records {
    /// Takes in what another tab stored.
    pub(super) fn sync(&mut self, contents: Contents) {
        let mut read = self.read(contents);
        read.retain(|entry| self.log.get(&entry.id).is_none());
        // The entry that each is about: for an undo, the one that it takes back.
        let about = |entry: &LogEntry| match &entry.change {
            Change::Undo { of } | Change::Redo { of } => of.clone(),
            _ => entry.id.clone(),
        };
        let about: Vec<_> = read.iter().map(about).collect();
        self.log.extend(read);
        if about.len() > FEW {
            self.refold();
        } else if !about.is_empty() {
            about.iter().for_each(|entry| self.after(entry));
            self.search();
        }
    }

    /// The entries in stored lines. Lines that cannot be read are counted.
    pub(super) fn read(&mut self, contents: Contents) -> Vec<LogEntry> {
        // With room for some more entries: growing a vector moves the whole log.
        let there = contents.segments.len() * SEGMENT + contents.journal.len();
        let mut read = Vec::with_capacity(there + 4 * SEGMENT);
        let mut put = |line: &str| match read_line(line) {
            Ok(entry) => read.push(entry),
            // Kept as a set, because a line is read again when another tab moves it into a segment.
            Err(_) => {
                self.unreadable.insert(line.into());
            }
        };
        // Each text is dropped once it is read, so that a long library is never twice in memory.
        for text in contents.segments {
            storage_layout::lines(&text).for_each(&mut put);
        }
        for row in contents.journal.into_iter().filter(|row| row.slot.is_none()) {
            put(&row.line.text);
        }
        read
    }

    /// Updates library and index after an entry was undone or redone.
    pub(super) fn after(&mut self, entry: &str) {
        let Some(entry) = self.log.get(entry) else { return };
        if matches!(entry.change, Change::Merge { .. }) || entry.change.edits().len() > FEW {
            self.refold();
            return;
        }
        let keys: Vec<Key> = entry.change.edits().iter().map(Edit::key).collect();
        for key in keys {
            self.follow(&key);
        }
    }
}
