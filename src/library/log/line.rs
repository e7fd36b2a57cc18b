//! Reads a line of JSON as an entry and checks it, so that later steps need no checks.

use super::entry::VERSION;
use super::{Change, Edit, LogEntry};
use serde::Deserialize;
use serde::de::{Deserializer, Error, MapAccess, SeqAccess, Visitor};
use std::collections::BTreeSet;
use std::fmt;

/// Maximum length of an id in bytes; longer ones are damage or forgery.
const MOST_ID: usize = 200;
/// Largest stamp: integers up to 2⁵³ survive every JSON reader (RFC 8259, section 6).
pub(super) const MOST_STAMP: u64 = 1 << 53;
/// Largest time, ms either side of 1970 (ECMA-262, time values).
const MOST_TIME: i64 = 8_640_000_000_000_000;

/// Why a line is not an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LineProblem {
    /// Not the JSON of an entry.
    Unreadable {
        /// Column, from 1.
        column: usize,
        /// Message of the JSON reader.
        what: String,
    },
    /// A version from before there was a log; no such line was ever saved.
    TooOld {
        /// Its version.
        version: u32,
    },
    /// An id that is empty or longer than 200 bytes.
    Id,
    /// A stamp past 2⁵³.
    Stamp,
    /// A time outside the range of a calendar.
    Time,
    /// Two edits of one record in one entry.
    EditedTwice {
        /// Id of the record.
        id: String,
    },
}

impl fmt::Display for LineProblem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unreadable { column, what } => write!(out, "column {column}: {what}"),
            Self::TooOld { version } => write!(out, "version {version} had no log"),
            Self::Id => write!(out, "an id is empty or longer than {MOST_ID} characters"),
            Self::Stamp => write!(out, "the stamp is above {MOST_STAMP}"),
            Self::Time => write!(out, "the time is outside every calendar"),
            Self::EditedTwice { id } => write!(out, "record {id:?} is edited twice in one entry"),
        }
    }
}

impl std::error::Error for LineProblem {}

/// Reads one line as an entry. A line of a newer version becomes [`Change::Newer`].
///
/// # Errors
/// [`LineProblem`] if the line is not the JSON of an entry, or an id, stamp, time or edit in it is
/// invalid.
pub fn read_line(line: &str) -> Result<LogEntry, LineProblem> {
    let entry = match serde_json::from_str::<LogEntry>(line) {
        Ok(entry) if entry.v <= VERSION => entry,
        read => newer(line).ok_or_else(|| match read {
            Err(error) => unreadable(&error),
            Ok(entry) => LineProblem::TooOld { version: entry.v },
        })?,
    };
    if entry.v < VERSION {
        return Err(LineProblem::TooOld { version: entry.v });
    }
    check(&entry)?;
    Ok(entry)
}

fn unreadable(error: &serde_json::Error) -> LineProblem {
    LineProblem::Unreadable { column: error.column(), what: error.to_string() }
}

/// The fields that an entry of any version has.
#[derive(Deserialize)]
struct Head {
    v: u32,
    id: Box<str>,
    at: i64,
    by: Box<str>,
    stamp: u64,
}

fn newer(line: &str) -> Option<LogEntry> {
    let head: Head = serde_json::from_str(line).ok().filter(|head: &Head| head.v > VERSION)?;
    let Head { v, id, at, by, stamp } = head;
    Some(LogEntry { v, id, at, by, stamp, change: Change::Newer(line.into()) })
}

fn check(entry: &LogEntry) -> Result<(), LineProblem> {
    let id = |id: &str| if id.is_empty() || id.len() > MOST_ID { Err(LineProblem::Id) } else { Ok(()) };
    id(&entry.id)?;
    id(&entry.by)?;
    if entry.stamp > MOST_STAMP {
        return Err(LineProblem::Stamp);
    }
    if entry.at.checked_abs().is_none_or(|at| at > MOST_TIME) {
        return Err(LineProblem::Time);
    }
    let edits = entry.change.edits();
    for edit in edits {
        id(edit.about().1)?;
        if let Edit::Put(put) = edit {
            serde_json::from_str::<Sound>(put.fields.text()).map_err(|error| unreadable(&error))?;
        }
    }
    if edits.len() > 1 {
        let mut seen = BTreeSet::new();
        if let Some(twice) = edits.iter().find(|edit| !seen.insert(edit.key())) {
            return Err(LineProblem::EditedTwice { id: twice.about().1.into() });
        }
    }
    Ok(())
}

/// Checks that an object can be parsed later: its depth and numbers lie within the reader's limits. Keeps
/// nothing.
struct Sound;

impl<'de> Deserialize<'de> for Sound {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        reader.deserialize_map(Object)
    }
}

struct Object;

impl<'de> Visitor<'de> for Object {
    type Value = Sound;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("the fields of a record")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Sound, A::Error> {
        while map.next_entry::<AnyJson, AnyJson>()?.is_some() {}
        Ok(Sound)
    }
}

/// Parses any JSON value and drops it.
struct AnyJson;

impl<'de> Deserialize<'de> for AnyJson {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        reader.deserialize_any(Self)
    }
}

impl<'de> Visitor<'de> for AnyJson {
    type Value = Self;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("a JSON value")
    }

    fn visit_bool<E: Error>(self, _: bool) -> Result<Self, E> {
        Ok(self)
    }

    fn visit_i64<E: Error>(self, _: i64) -> Result<Self, E> {
        Ok(self)
    }

    fn visit_u64<E: Error>(self, _: u64) -> Result<Self, E> {
        Ok(self)
    }

    fn visit_f64<E: Error>(self, _: f64) -> Result<Self, E> {
        Ok(self)
    }

    fn visit_str<E: Error>(self, _: &str) -> Result<Self, E> {
        Ok(self)
    }

    fn visit_unit<E: Error>(self) -> Result<Self, E> {
        Ok(self)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Self, A::Error> {
        while items.next_element::<Self>()?.is_some() {}
        Ok(self)
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self, A::Error> {
        while map.next_entry::<Self, Self>()?.is_some() {}
        Ok(self)
    }
}
