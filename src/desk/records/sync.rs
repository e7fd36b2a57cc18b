//! Entries that this tab did not write: read from the store, or stored by another tab.

use super::Records;
use crate::library::log::{Change, Edit, Key, LogEntry, read_line};
use crate::library::storage_layout::{self, Contents, SEGMENT};

/// Records up to which library and index follow one by one: assumed; one takes up to a millisecond, all of a big shop's
/// a quarter of a second.
const FEW: usize = 50;

impl Records {
    /// Puts in what another tab stored.
    pub(super) fn sync(&mut self, contents: Contents) {
        let mut read = self.read(contents);
        read.retain(|entry| self.log.get(&entry.id).is_none());
        // What each is about: an undo, about the entry that it takes back.
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
        // Room for what is written today: growing moves the whole log.
        let there = contents.segments.len() * SEGMENT + contents.journal.len();
        let mut read = Vec::with_capacity(there + 4 * SEGMENT);
        let mut put = |line: &str| match read_line(line) {
            Ok(entry) => read.push(entry),
            // A set: a line comes again when another tab seals it.
            Err(_) => {
                self.unreadable.insert(line.into());
            }
        };
        // Each text goes when it is read: a long library is not twice in memory.
        for text in contents.segments {
            storage_layout::lines(&text).for_each(&mut put);
        }
        for row in contents.journal.into_iter().filter(|row| row.slot.is_none()) {
            put(&row.line.text);
        }
        read
    }

    /// Brings library and index up to date after an entry was undone or counts again.
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
