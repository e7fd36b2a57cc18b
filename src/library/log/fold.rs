//! Folds the writes of one record, in order, into its current state.

use super::index::Write;
use super::{Edit, FieldDifference, Key, Log, Recorded, fields_of, same};
use crate::quantity::{FieldError, Problem};
use serde_json::{Map, Value};
use std::collections::BTreeMap;

/// The current state of a record.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    /// Its key.
    pub key: Key,
    /// Its fields, unknown ones of a newer version included. Of a conflict, the value that is used.
    pub fields: Map<String, Value>,
    /// Whether it was removed.
    pub removed: bool,
    /// Values that tablets wrote without seeing each other.
    pub conflicts: Vec<Conflict>,
}

/// Values of one field from which a person has to choose.
#[derive(Clone, Debug, PartialEq)]
pub struct Conflict {
    /// The field; `None` if the question is whether the record is removed.
    pub field: Option<String>,
    /// The claims, in the order that all tablets agree on; the last one is used.
    pub claims: Vec<Claim>,
}

/// The value of a field according to one entry.
#[derive(Clone, Debug, PartialEq)]
pub struct Claim {
    /// Id of the entry.
    pub entry: Box<str>,
    /// The value, `null` for a removed field; for a record, whether it stays.
    pub value: Value,
}

/// The state of a record after an entry.
#[derive(Clone, Debug, PartialEq)]
pub struct Version {
    /// Id of the entry.
    pub entry: Box<str>,
    /// When, ms since 1970 by the clock of the tablet that wrote it.
    pub at: i64,
    /// That tablet.
    pub by: Box<str>,
    /// File it came from, if any.
    pub from: Option<String>,
    /// Whether the entry is in force, that is, was not undone.
    pub counts: bool,
    /// Whether it removed the record.
    pub removes: bool,
    /// The values that it changed.
    pub changed: Vec<FieldDifference>,
    /// The fields after it.
    pub fields: Map<String, Value>,
}

/// The state after the writes taken so far.
#[derive(Debug, Default)]
pub(super) struct Fold {
    /// Entries that no later one had seen.
    pub(super) heads: Vec<u32>,
    life: Vec<(u32, bool)>,
    fields: BTreeMap<String, Vec<(u32, Value)>>,
}

/// The entries that a write had seen.
pub(super) enum SeenEntries {
    All,
    Some(Vec<u32>),
}

impl SeenEntries {
    fn has(&self, place: u32) -> bool {
        match self {
            Self::All => true,
            Self::Some(places) => places.binary_search(&place).is_ok(),
        }
    }
}

impl Fold {
    /// Takes the next write. It replaces every write that it had seen and stays beside the others.
    pub(super) fn take(&mut self, log: &Log, write: Write) {
        let Some(seen) = self.follow(log, write) else { return };
        let place = write.entry;
        if !log.counts(place) {
            return;
        }
        let Some(edit) = log.edit(write) else { return };
        self.life.retain(|&(earlier, _)| !seen.has(earlier));
        self.life.push((place, matches!(edit, Edit::Put(_))));
        if let Edit::Put(put) = edit {
            for (name, value) in put.fields.values() {
                let claims = self.fields.entry(name).or_default();
                claims.retain(|&(earlier, _)| !seen.has(earlier));
                claims.push((place, value));
            }
        }
    }

    /// Updates only the heads; `None` for a write that is hidden on this tablet.
    pub(super) fn follow(&mut self, log: &Log, write: Write) -> Option<SeenEntries> {
        if log.hides(write.entry) {
            return None;
        }
        let over = log.edit(write)?.over();
        let saw = |place: &u32| log.at(*place).is_some_and(|entry| over.contains(&entry.id));
        let seen =
            if self.heads.iter().all(saw) { SeenEntries::All } else { SeenEntries::Some(before(log, write)) };
        self.heads.retain(|&head| !seen.has(head));
        self.heads.push(write.entry);
        Some(seen)
    }

    /// The record after the writes taken so far; `None` if none of them is in force.
    pub(super) fn record(&self, log: &Log, key: &Key) -> Option<Record> {
        if self.life.is_empty() {
            return None;
        }
        let removed = self.life.iter().all(|&(_, stays)| !stays);
        let claim = |place: u32, value: Value| Some(Claim { entry: log.at(place)?.id.clone(), value });
        let mut fields = Map::new();
        let mut conflicts = Vec::new();
        if !removed && self.life.iter().any(|&(_, stays)| !stays) {
            let claims = self.life.iter().filter_map(|&(place, stays)| claim(place, stays.into()));
            conflicts.push(Conflict { field: None, claims: claims.collect() });
        }
        for (name, claims) in &self.fields {
            let Some((_, value)) = claims.last() else { continue };
            if !value.is_null() {
                fields.insert(name.clone(), value.clone());
            }
            if !removed && claims.iter().any(|(_, other)| !same(other, value)) {
                let claims = claims.iter().filter_map(|(place, value)| claim(*place, value.clone()));
                conflicts.push(Conflict { field: Some(name.clone()), claims: claims.collect() });
            }
        }
        Some(Record { key: key.clone(), fields, removed, conflicts })
    }
}

/// The sorted places of all entries about its record that a write had seen, found by following `over`
/// back.
fn before(log: &Log, write: Write) -> Vec<u32> {
    let mut seen = Vec::new();
    let Some(edit) = log.edit(write) else { return seen };
    let (kind, record) = edit.about();
    let mut open: Vec<&str> = edit.over().iter().map(|id| &**id).collect();
    while let Some(id) = open.pop() {
        let Some(place) = log.place_of(id).filter(|&place| place != write.entry) else { continue };
        let Err(at) = seen.binary_search(&place) else { continue };
        seen.insert(at, place);
        let edits = log.at(place).map_or(&[] as &[Edit], |entry| entry.change.edits());
        if let Some(edit) = edits.iter().find(|edit| edit.about() == (kind, record)) {
            open.extend(edit.over().iter().map(|id| &**id));
        }
    }
    seen
}

impl Record {
    /// The record as its type. Fields that the type does not know are dropped, so that a newer tablet's
    /// record can be used.
    ///
    /// # Errors
    /// [`Problem::NotUnderstood`] on the record's id, with the reader's message, if the fields do not
    /// make the type.
    pub fn read<T: Recorded>(&self) -> Result<T, FieldError> {
        // Through text, which is how every record is read: a deserialiser from values would add a second
        // copy of every deserialiser to the page.
        serde_json::from_str(&self.text(fields_of::<T>())).map_err(|error| self.not_understood(&error))
    }

    /// The known fields as text, the id among them.
    fn text(&self, known: Option<&[&str]>) -> String {
        let mut fields = self.fields.clone();
        fields.insert("id".into(), Value::String(self.key.id.to_string()));
        if let Some(known) = known {
            fields.retain(|name, _| known.contains(&name.as_str()));
        }
        serde_json::to_string(&fields).unwrap_or_default()
    }

    fn not_understood(&self, error: &serde_json::Error) -> FieldError {
        FieldError::new(&*self.key.id, error.to_string(), Problem::NotUnderstood)
    }
}
