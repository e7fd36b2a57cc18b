//! What the Library screen shows, worked out of the log as plain values.

use super::{RecordGroup, Records, saved_id};
use crate::library::log::{Conflict, FieldDifference, Key, Kind, differences};
use crate::library::{FabricDye, shipped};
use crate::optics::Lab;
use crate::wording::Language;
use serde_json::{Map, Value};

/// Days after which a library that was changed since its last file should be saved: browsers may delete a site's
/// storage after seven days without a visit (WebKit, "Full third-party cookie blocking and more", 2020).
const SAVE_AFTER_DAYS: i64 = 7;
/// Changes after which it should be saved whatever the day: assumed.
const SAVE_AFTER_CHANGES: usize = 50;
const DAY_MS: i64 = 86_400_000;

/// One record that was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Hit {
    /// Its kind and id.
    pub key: Key,
    /// Its name.
    pub name: String,
    /// Whether the shop wrote it, or it ships.
    pub own: bool,
    /// Weight of a cloth, g/m².
    pub gsm: Option<f64>,
    /// Dye lots of a cloth, or batches of a white.
    pub lots: usize,
    /// Colour of a cloth, where known.
    pub colour: Option<Lab>,
    /// Whether tablets differ on a value, so that one has to be chosen.
    pub differs: bool,
}

/// A value of a record.
#[derive(Clone, Debug, PartialEq)]
pub struct Fact {
    /// Its path in the record, `zones[0].length`.
    pub path: String,
    /// The value.
    pub value: Value,
}

/// What happened to a record at one moment.
#[derive(Clone, Debug, PartialEq)]
pub struct Moment {
    /// Id of the entry.
    pub entry: Box<str>,
    /// When, ms since 1970.
    pub at: i64,
    /// Whether another tablet did it.
    pub elsewhere: bool,
    /// File it came from, if any.
    pub from: Option<String>,
    /// Whether it counts, that is, was not undone.
    pub counts: bool,
    /// Whether the record is now as it was then.
    pub now: bool,
    /// What happened.
    pub what: RecordEvent,
}

/// What an entry did to a record.
#[derive(Clone, Debug, PartialEq)]
pub enum RecordEvent {
    /// It was written for the first time.
    Made,
    /// It was written over one that ships, with these changes.
    Copied(Vec<FieldDifference>),
    /// It was changed.
    Changed(Vec<FieldDifference>),
    /// It was removed.
    Removed,
}

/// The record that is open.
#[derive(Clone, Debug, PartialEq)]
pub struct OpenRecord {
    /// Its kind and id.
    pub key: Key,
    /// Its name.
    pub name: String,
    /// Whether the shop wrote it, or it ships.
    pub own: bool,
    /// Whether it was removed.
    pub removed: bool,
    /// What it holds.
    pub facts: Vec<Fact>,
    /// Values on which tablets differ.
    pub conflicts: Vec<Conflict>,
    /// What happened to it, the newest first.
    pub past: Vec<Moment>,
    /// Records that belong to it, with what they hold.
    pub parts: Vec<(Key, Vec<Fact>)>,
}

/// When the records were last saved as a file.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Reminder {
    /// Whole days since; `None` if never.
    pub days: Option<i64>,
    /// Changes since.
    pub changes: usize,
    /// Whether it is time to save.
    pub due: bool,
}

/// The values of some fields, one by one.
fn facts_of(fields: &Map<String, Value>) -> Vec<Fact> {
    let values = differences(&Map::new(), fields);
    values.into_iter().filter_map(|it| Some(Fact { path: it.path, value: it.after? })).collect()
}

impl Records {
    /// How many records a group has.
    #[must_use]
    pub fn count(&self, group: RecordGroup) -> usize {
        group.kinds().iter().map(|&kind| self.index().count(kind)).sum()
    }

    /// How many records there are.
    #[must_use]
    pub fn total(&self) -> usize {
        self.index().len()
    }

    /// How many were found.
    #[must_use]
    pub fn found(&self) -> usize {
        self.answers().count
    }

    /// Where no record has all the words searched for: words that some records have, and how many.
    #[must_use]
    pub fn instead(&self) -> &[(String, usize)] {
        &self.answers().instead
    }

    /// The hits that are shown, the best match first.
    #[must_use]
    pub fn hits(&self, language: Language) -> Vec<Hit> {
        let shown = self.answers().items.iter().take(self.shown.max(super::HITS));
        shown.filter_map(|&place| self.hit(place, language)).collect()
    }

    fn hit(&self, place: u32, language: Language) -> Option<Hit> {
        let item = self.index().item(place)?;
        let name = if language == Language::Es { &item.nombre } else { &item.name };
        let key = &item.key;
        let record = if item.own { self.log.record(key.kind, &key.id) } else { None };
        let dye = record.as_ref().filter(|_| key.kind == Kind::Fabric);
        let dye = dye.and_then(|record| record.read::<FabricDye>().ok());
        let colour = dye.and_then(|dye| {
            let named = || self.library.colour(&dye.colour.name).ok().map(|colour| colour.lab.into());
            dye.colour.lab.map(Into::into).or_else(named)
        });
        let fabric = (key.kind == Kind::Fabric).then(|| self.library.fabric_record(&key.id).ok()).flatten();
        let part = match key.kind {
            Kind::Fabric => Kind::Lot,
            Kind::Trial => Kind::Reading,
            _ => Kind::Batch,
        };
        Some(Hit {
            key: key.clone(),
            name: name.clone(),
            own: item.own,
            gsm: fabric.map(|fabric| fabric.areal_weight.value),
            lots: self.log.records_of(part, &key.id).count(),
            colour,
            differs: record.is_some_and(|record| !record.conflicts.is_empty()),
        })
    }

    /// The name of a record; its id where it has none.
    #[must_use]
    pub fn name_of(&self, key: &Key, language: Language) -> String {
        let own = self.log.record(key.kind, &key.id).map(|record| record.fields);
        let fields = own.or_else(|| shipped(key.kind, &key.id)).unwrap_or_default();
        let names =
            if language == Language::Es { ["nombre", "name", "title"] } else { ["name", "title", "name"] };
        let name = names.iter().find_map(|name| fields.get(*name)?.as_str());
        name.unwrap_or(&key.id).to_owned()
    }

    /// The record that is open, with its past.
    #[must_use]
    pub fn record(&self) -> Option<OpenRecord> {
        let key = self.open.clone()?;
        let own = self.log.record(key.kind, &key.id);
        let ships = shipped(key.kind, &key.id);
        let removed = own.as_ref().is_some_and(|record| record.removed);
        let live = own.as_ref().filter(|record| !record.removed);
        let fields = match (live, &ships, &own) {
            (Some(record), ..) => record.fields.clone(),
            (None, Some(fields), _) => fields.clone(),
            (None, None, Some(record)) => record.fields.clone(),
            (None, None, None) => return None,
        };
        let mut past = self.past(&key, ships.as_ref());
        past.reverse();
        let name = ["name", "title"].iter().find_map(|name| fields.get(*name)?.as_str());
        let parts =
            [Kind::Lot, Kind::Batch, Kind::Reading, Kind::FollowUp, Kind::Calibration, Kind::DailyCheck];
        let mut belongs = Vec::new();
        for kind in parts {
            belongs.extend(
                self.log.records_of(kind, &key.id).map(|record| (record.key, facts_of(&record.fields))),
            );
        }
        // Trials are records of their own that name their cloth or white.
        for trial in self.log.records(Kind::Trial) {
            let about = |name: &str| trial.fields.get(name).and_then(Value::as_str) == Some(&*key.id);
            if key.kind == Kind::Fabric && about("fabric") || key.kind == Kind::White && about("white") {
                belongs.push((trial.key, facts_of(&trial.fields)));
            }
        }
        Some(OpenRecord {
            name: name.unwrap_or(&key.id).to_owned(),
            own: live.is_some(),
            removed: removed && ships.is_none(),
            facts: facts_of(&fields),
            conflicts: live.map(|record| record.conflicts.clone()).unwrap_or_default(),
            past,
            parts: belongs,
            key,
        })
    }

    fn past(&self, key: &Key, ships: Option<&Map<String, Value>>) -> Vec<Moment> {
        let versions = self.log.past(key.kind, &key.id);
        let first = versions.iter().position(|version| version.counts);
        let last = versions.iter().rposition(|version| version.counts);
        let moment = |(at, version): (usize, crate::library::log::Version)| {
            let made = Some(at) == first || !version.counts && first.is_none_or(|first| at < first);
            let what = match (version.removes, made, ships) {
                (true, ..) => RecordEvent::Removed,
                (false, true, Some(ships)) => RecordEvent::Copied(differences(ships, &version.fields)),
                (false, true, None) => RecordEvent::Made,
                (false, false, _) => RecordEvent::Changed(version.changed),
            };
            Moment {
                entry: version.entry,
                at: version.at,
                elsewhere: &*version.by != self.log.tablet(),
                from: version.from,
                counts: version.counts,
                now: Some(at) == last,
                what,
            }
        };
        versions.into_iter().enumerate().map(moment).collect()
    }

    /// Whether it is time to save the records as a file.
    #[must_use]
    pub fn reminder(&self) -> Reminder {
        let tablet = self.log.tablet();
        let saved = self.log.past(Kind::Setting, &saved_id(tablet)).pop();
        let since = saved.as_ref().and_then(|saved| self.log.get(&saved.entry)).map(|entry| entry.stamp);
        let changes = self
            .log
            .entries()
            .iter()
            .rev()
            .filter(|entry| entry.change.undoable() && since.is_none_or(|since| entry.stamp > since))
            .count();
        let days = saved.map(|saved| (self.clock.now - saved.at).max(0) / DAY_MS);
        let first = self.log.entries().iter().find(|entry| entry.change.undoable()).map(|entry| entry.at);
        let old = days.or(first.map(|at| (self.clock.now - at).max(0) / DAY_MS)).unwrap_or_default();
        let due = changes > 0 && (old >= SAVE_AFTER_DAYS || changes >= SAVE_AFTER_CHANGES);
        Reminder { days, changes, due }
    }

    /// Name of a file with the day in it, so that files sort by day.
    #[must_use]
    pub fn file_name(&self, what: &str, ending: &str) -> String {
        let (year, month, day) = crate::wording::civil(self.clock.now, self.clock.ahead);
        format!("whitehold-{what}-{year:04}-{month:02}-{day:02}.{ending}")
    }
}
