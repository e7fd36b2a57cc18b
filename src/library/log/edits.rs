//! Edits that bring a record to a wanted state. An edit has no effect until it is appended to the log.

use super::fold::Fold;
use super::{Edit, Fields, Key, Kind, Log, Put, Recorded, Remove, fields, fields_of, same};
use serde_json::{Map, Value};

impl Log {
    /// The edit that stores a record under an id; `None` if the log holds it already.
    #[must_use]
    pub fn keep<T: Recorded>(&self, id: &str, record: &T) -> Option<Edit> {
        self.put(T::KIND, id, &fields(record), fields_of::<T>())
    }

    /// The edit after which a record holds exactly these fields; `None` if it does already. Fields that
    /// `known` does not list are left alone: a newer Whitehold wrote them.
    #[must_use]
    pub fn put(
        &self,
        kind: Kind,
        id: &str,
        fields: &Map<String, Value>,
        known: Option<&[&str]>,
    ) -> Option<Edit> {
        let key = Key::new(kind, id);
        let now = self.fold(&key);
        let empty = Map::new();
        let held = now.as_ref().map_or(&empty, |record| &record.fields);
        let mut change = Map::new();
        for (name, value) in fields.iter().filter(|(name, _)| *name != "id") {
            if !same(held.get(name).unwrap_or(&Value::Null), value) {
                change.insert(name.clone(), value.clone());
            }
        }
        for name in held.keys().filter(|name| !fields.contains_key(*name)) {
            if known.is_none_or(|known| known.contains(&name.as_str())) {
                change.insert(name.clone(), Value::Null);
            }
        }
        let stands = now.as_ref().is_some_and(|record| !record.removed);
        (!stands || !change.is_empty()).then(|| self.write(kind, id, &change))
    }

    /// The edit that writes these fields of a record and leaves its other fields alone.
    #[must_use]
    pub fn write(&self, kind: Kind, id: &str, fields: &Map<String, Value>) -> Edit {
        let over = self.heads(&Key::new(kind, id));
        Edit::Put(Put { kind, id: id.into(), over, fields: Fields::of(fields) })
    }

    /// The edit that removes a record; `None` if there is no such record.
    #[must_use]
    pub fn remove(&self, kind: Kind, id: &str) -> Option<Edit> {
        let key = Key::new(kind, id);
        self.stands(&key).then(|| Edit::Remove(Remove { kind, id: id.into(), over: self.heads(&key) }))
    }

    /// The edit that restores a record to its state after an entry; `None` if it is in that state
    /// already.
    #[must_use]
    pub fn bring_back(&self, kind: Kind, id: &str, entry: &str) -> Option<Edit> {
        let version = self.past(kind, id).into_iter().find(|version| &*version.entry == entry)?;
        if version.removes {
            return self.remove(kind, id);
        }
        self.put(kind, id, &version.fields, None)
    }

    fn heads(&self, key: &Key) -> Vec<Box<str>> {
        let mut fold = Fold::default();
        for &write in self.writes(key) {
            fold.follow(self, write);
        }
        fold.heads.iter().filter_map(|&place| Some(self.at(place)?.id.clone())).collect()
    }
}
