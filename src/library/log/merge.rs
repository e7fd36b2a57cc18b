//! The merge of two logs, previewed and done.

use super::{Change, Conflict, Edit, Key, Kind, Log, LogEntry};
use crate::numerics::sorting::sorted;
use serde_json::{Map, Value};
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// What a merge would change.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MergePreview {
    /// Number of records that both logs hold alike.
    pub same: usize,
    /// Records that are new here.
    pub new: Vec<Key>,
    /// Records that the other tablet changed or removed after it had seen their state here.
    pub changed: Vec<Key>,
    /// Number of records that only this tablet changed.
    pub ahead: usize,
    /// Conflicts in records that both changed.
    pub conflicts: Vec<(Key, Conflict)>,
    /// Number of entries that come in.
    pub entries: usize,
    /// Number of trials, readings and inspections of which either log holds more entries than the merged
    /// log would. It is counted, although a union cannot lose any.
    pub lost: usize,
}

impl MergePreview {
    /// Whether no entry is new.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.entries == 0
    }

    /// The conflicts alone; the rest, which is large for a big file, is dropped.
    #[must_use]
    pub fn into_conflicts(self) -> Vec<(Key, Conflict)> {
        self.conflicts
    }
}

/// Kinds that are evidence and must never get lost.
fn evidence(kind: Kind) -> bool {
    matches!(kind, Kind::Trial | Kind::Reading | Kind::FollowUp)
}

impl Log {
    /// What a merge with another tablet's entries would do.
    #[must_use]
    pub fn preview(&self, theirs: &[LogEntry]) -> MergePreview {
        let news: Vec<&LogEntry> = theirs.iter().filter(|entry| self.get(&entry.id).is_none()).collect();
        let place: HashMap<&str, u32> = theirs.iter().map(|entry| &*entry.id).zip(0..).collect();
        // Most records of a big file are new here and written once: they need no joining.
        let alone = |(key, times): &(Key, u32)| *times == 1 && self.writes(key).is_empty();
        let (alone, touched): (Vec<_>, Vec<_>) =
            self.touched(theirs, &place, &news).into_iter().partition(alone);
        let keys = |counted: Vec<(Key, u32)>| counted.into_iter().map(|(key, _)| key).collect::<Vec<_>>();
        let (new, touched) = (keys(alone), keys(touched));
        let touches = |key: &Key| touched.binary_search(key).is_ok();
        // Only records that a new entry touches can change.
        let relevant = |entry: &&LogEntry| {
            let edits = entry.change.edits();
            edits.is_empty() || edits.iter().any(|edit| touches(&edit.key()))
        };
        let mut joined = Self::new(self.tablet(), "preview");
        let mine = self.entries().iter().filter(relevant);
        joined.extend(mine.chain(news.iter().copied().filter(relevant)).cloned().collect());
        let said = theirs.iter().flat_map(|entry| entry.change.edits());
        let said = said.filter(|edit| evidence(edit.about().0)).map(Edit::key).filter(touches).collect();
        let said = sorted(said, &Key::cmp);
        let mut preview = MergePreview { entries: news.len(), new, ..MergePreview::default() };
        let mut mine_alone = BTreeSet::new();
        for entry in self.entries().iter().filter(|entry| !place.contains_key(&*entry.id)) {
            mine_alone.extend(entry.change.edits().iter().map(Edit::key));
        }
        for key in self.all_keys().filter(|key| !touches(key)) {
            if mine_alone.contains(key) {
                preview.ahead += 1;
            } else {
                preview.same += 1;
            }
        }
        for key in touched.iter().cloned() {
            if self.writes(&key).is_empty() && joined.writes(&key).len() == 1 {
                preview.new.push(key);
                continue;
            }
            let after = joined.record(key.kind, &key.id);
            let before = self.record(key.kind, &key.id);
            let conflicts = after.as_ref().map_or(&[] as &[Conflict], |record| &record.conflicts);
            let had = before.as_ref().map_or(&[] as &[Conflict], |record| &record.conflicts);
            let fresh = conflicts.iter().filter(|conflict| !had.contains(conflict));
            preview.conflicts.extend(fresh.map(|conflict| (key.clone(), conflict.clone())));
            let says = said.partition_point(|it| *it <= key) - said.partition_point(|it| *it < key);
            let held = self.writes(&key).len().max(says);
            if evidence(key.kind) && joined.writes(&key).len() < held {
                preview.lost += 1;
            }
            match (before, after) {
                (None, Some(_)) => preview.new.push(key),
                (Some(before), Some(after)) if before == after => preview.same += 1,
                (None, None) => {}
                _ => preview.changed.push(key),
            }
        }
        preview
    }

    /// Records that the new entries write, directly or through what they undo, and how often.
    fn touched(
        &self,
        theirs: &[LogEntry],
        place: &HashMap<&str, u32>,
        news: &[&LogEntry],
    ) -> Vec<(Key, u32)> {
        let mut touched = Vec::with_capacity(news.len());
        for entry in news {
            touched.extend(entry.change.edits().iter().map(Edit::key));
            if let Change::Undo { of } | Change::Redo { of } = &entry.change {
                let there = place.get(&**of).and_then(|&place| theirs.get(place as usize));
                let of = there.or_else(|| self.get(of));
                touched.extend(of.iter().flat_map(|entry| entry.change.edits().iter().map(Edit::key)));
            }
        }
        let mut counted: Vec<(Key, u32)> = Vec::with_capacity(touched.len());
        for key in sorted(touched, &Key::cmp) {
            match counted.last_mut() {
                Some((last, times)) if *last == key => *times += 1,
                _ => counted.push((key, 1)),
            }
        }
        counted
    }

    /// Brings in another tablet's entries: the union by id. Returns the entries that this tablet has to
    /// store, the entry of the merge last; empty if all were known. `choices` names the claim to take for
    /// each conflict.
    pub fn merge(
        &mut self,
        at: i64,
        from: &str,
        mut theirs: Vec<LogEntry>,
        choices: &[(Key, Conflict, usize)],
    ) -> Vec<&LogEntry> {
        theirs.retain(|entry| self.get(&entry.id).is_none());
        if theirs.is_empty() {
            return Vec::new();
        }
        let brought = theirs.iter().map(|entry| entry.id.clone()).collect();
        self.extend(theirs);
        let edits = self.settle(choices);
        let merge = self.append(at, Change::Merge { from: from.into(), brought, edits });
        let ids = if let Change::Merge { brought, .. } = &merge.change { brought.as_slice() } else { &[] };
        ids.iter().chain([&merge.id]).filter_map(|id| self.get(id)).collect()
    }

    /// The edits that settle conflicts: for each, the number of the claim to take.
    #[must_use]
    pub fn settle(&self, choices: &[(Key, Conflict, usize)]) -> Vec<Edit> {
        let mut chosen: BTreeMap<Key, Map<String, Value>> = BTreeMap::new();
        let mut removed = BTreeSet::new();
        for (key, conflict, which) in choices {
            let Some(claim) = conflict.claims.get(*which) else { continue };
            match &conflict.field {
                Some(field) => {
                    chosen.entry(key.clone()).or_default().insert(field.clone(), claim.value.clone());
                }
                None if claim.value == Value::Bool(false) => {
                    removed.insert(key.clone());
                }
                None => {
                    chosen.entry(key.clone()).or_default();
                }
            }
        }
        let taken = removed.iter().filter_map(|key| self.remove(key.kind, &key.id));
        let kept = chosen.iter().filter(|(key, _)| !removed.contains(key));
        // An edit refers to every head of its record, so that no conflict remains.
        taken.chain(kept.map(|(key, fields)| self.write(key.kind, &key.id, fields))).collect()
    }
}
