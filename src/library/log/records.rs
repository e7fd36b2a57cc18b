//! Records read from the log: one, all of a kind, all of an owner, and every version there was.

use super::fold::{Fold, Record, Version};
use super::{Change, Edit, Key, Kind, Log, Recorded, differences, overlay};
use crate::quantity::FieldError;
use serde_json::Map;

impl Log {
    /// The current state of a record, also if it is removed; `None` if no entry in force writes it.
    #[must_use]
    pub fn record(&self, kind: Kind, id: &str) -> Option<Record> {
        self.fold(&Key::new(kind, id))
    }

    /// The fields of a record that exactly one entry writes, as text. Nearly every record was written
    /// once and needs no folding.
    pub(super) fn written_once(&self, key: &Key) -> Option<&str> {
        let [write] = self.writes(key) else { return None };
        match self.edit(*write)? {
            Edit::Put(put) if self.counts(write.entry) => Some(put.fields.text()),
            _ => None,
        }
    }

    pub(super) fn fold(&self, key: &Key) -> Option<Record> {
        let mut fold = Fold::default();
        for &write in self.writes(key) {
            fold.take(self, write);
        }
        fold.record(self, key)
    }

    /// All records of a kind that are not removed, by id.
    pub fn records(&self, kind: Kind) -> impl Iterator<Item = Record> {
        self.keys(kind).filter_map(|key| self.fold(key)).filter(|record| !record.removed)
    }

    /// The records of a kind that belong to an owner: those whose id begins with its id and a slash.
    pub fn records_of(&self, kind: Kind, owner: &str) -> impl Iterator<Item = Record> {
        self.keys_of(kind, owner).filter_map(|key| self.fold(key)).filter(|record| !record.removed)
    }

    /// A record as its type, as [`Record::read`](super::Record::read) gives it; `None` if there is no
    /// such record.
    ///
    /// # Errors
    /// [`Problem::NotUnderstood`](crate::quantity::Problem) on the record's id if its fields do not make
    /// the type.
    pub fn read<T: Recorded>(&self, key: &Key) -> Option<Result<T, FieldError>> {
        // The fast path parses the text of the single entry; where it fails, the slow path below drops
        // unknown fields.
        let once = self.written_once(key).and_then(|text| {
            let id = serde_json::to_string(&*key.id).ok()?;
            let rest = text.trim_start().strip_prefix('{')?;
            let comma = if rest.trim_start().starts_with('}') { "" } else { "," };
            serde_json::from_str(&format!("{{\"id\":{id}{comma}{rest}")).ok()
        });
        if let Some(read) = once {
            return Some(Ok(read));
        }
        self.record(key.kind, &key.id).filter(|record| !record.removed).map(|record| record.read::<T>())
    }

    /// How many records of a kind there are, not counting removed ones.
    #[must_use]
    pub fn count(&self, kind: Kind) -> usize {
        self.keys(kind).filter(|key| self.stands(key)).count()
    }

    /// Whether there is such a record and it is not removed.
    #[must_use]
    pub fn stands(&self, key: &Key) -> bool {
        if let [write] = self.writes(key) {
            return self.counts(write.entry) && matches!(self.edit(*write), Some(Edit::Put(_)));
        }
        self.fold(key).is_some_and(|record| !record.removed)
    }

    /// Every version of a record, oldest first.
    #[must_use]
    pub fn past(&self, kind: Kind, id: &str) -> Vec<Version> {
        let key = Key::new(kind, id);
        let mut fold = Fold::default();
        let mut before = Map::new();
        let mut past = Vec::new();
        for &write in self.writes(&key) {
            let (Some(entry), Some(edit)) = (self.at(write.entry), self.edit(write)) else { continue };
            if self.hides(write.entry) {
                continue;
            }
            fold.take(self, write);
            let counts = self.counts(write.entry);
            let fields = if counts {
                fold.record(self, &key).map(|record| record.fields).unwrap_or_default()
            } else {
                let mut fields = before.clone();
                if let Edit::Put(put) = edit {
                    overlay(&mut fields, put.fields.values());
                }
                fields
            };
            past.push(Version {
                entry: entry.id.clone(),
                at: entry.at,
                by: entry.by.clone(),
                from: match &entry.change {
                    Change::Edit { from, .. } => from.clone(),
                    _ => None,
                },
                counts,
                removes: matches!(edit, Edit::Remove(_)),
                changed: differences(&before, &fields),
                fields: fields.clone(),
            });
            if counts {
                before = fields;
            }
        }
        past
    }
}
