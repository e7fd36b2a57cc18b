//! One entry of the log, as it is written and stored.

use super::{Key, Kind};
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;
use serde_json::{Map, Value};

/// Version of the entries that this program writes. Version 1 was a stored draft without a log
/// (`desk::draft_file`).
pub const VERSION: u32 = 2;

/// One change to the shop's records, written once and never altered.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LogEntry {
    /// Version of the schema, [`VERSION`] or older.
    pub v: u32,
    /// Globally unique: tablet, opening of its page and counter.
    pub id: Box<str>,
    /// Time in ms since 1970 by the tablet's clock. For people to read; it decides no order.
    pub at: i64,
    /// The tablet that wrote it.
    pub by: Box<str>,
    /// Lamport counter: greater than that of every entry that the writer had seen.
    pub stamp: u64,
    /// The change.
    pub change: Change,
}

/// What an entry changes.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Change {
    /// Records written or removed, all at once.
    Edit {
        /// The edits, each of another record.
        edits: Vec<Edit>,
        /// Name of the file that they came from, if any.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        from: Option<String>,
    },
    /// Conflicting values chosen from.
    Choose {
        /// The chosen values, written over all that were in conflict.
        edits: Vec<Edit>,
    },
    /// Another tablet's entries came in. Undoing it hides them on the tablet that merged, and on no
    /// other.
    Merge {
        /// Name of the file.
        from: String,
        /// Ids of the entries that came in.
        brought: Vec<Box<str>>,
        /// Values chosen during the merge.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        edits: Vec<Edit>,
    },
    /// An entry is no longer in force.
    Undo {
        /// Its id.
        of: Box<str>,
    },
    /// An entry is in force again.
    Redo {
        /// Its id.
        of: Box<str>,
    },
    /// A line that a newer Whitehold wrote, kept unchanged; the log is then read-only.
    #[serde(skip)]
    Newer(#[cfg_attr(not(target_arch = "wasm32"), schemars(skip))] Box<str>),
}

/// What happens to one record.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Edit {
    /// Fields are written.
    Put(Put),
    /// The record is removed.
    Remove(Remove),
}

/// Writes fields of a record.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Put {
    /// Kind of the record.
    pub kind: Kind,
    /// Its id.
    pub id: Box<str>,
    /// The latest entries about this record that the writer had seen.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub over: Vec<Box<str>>,
    /// The fields that change; `null` removes a field.
    pub fields: Fields,
}

/// Removes a record.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Remove {
    /// Kind of the record.
    pub kind: Kind,
    /// Its id.
    pub id: Box<str>,
    /// The latest entries about this record that the writer had seen.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub over: Vec<Box<str>>,
}

/// Fields of a record as JSON text, parsed only on demand: a log holds hundreds of thousands of them.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Fields(Box<RawValue>);

impl Fields {
    /// Fields with these values.
    #[must_use]
    pub fn of(fields: &Map<String, Value>) -> Self {
        // Serialising a map of JSON values cannot fail.
        let text = serde_json::to_string(fields).unwrap_or_else(|_| "{}".into());
        Self(RawValue::from_string(text).unwrap_or_default())
    }

    /// The parsed values; empty for text that is not an object, which [`read_line`](super::read_line)
    /// refuses.
    #[must_use]
    pub fn values(&self) -> Map<String, Value> {
        serde_json::from_str(self.0.get()).unwrap_or_default()
    }

    /// The text as the entry holds it.
    #[must_use]
    pub fn text(&self) -> &str {
        self.0.get()
    }
}

#[cfg(not(target_arch = "wasm32"))]
impl schemars::JsonSchema for Fields {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Fields".into()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        Map::<String, Value>::json_schema(generator)
    }
}

impl LogEntry {
    /// The entry as one line of JSON, without a line feed.
    #[must_use]
    pub fn line(&self) -> String {
        match &self.change {
            Change::Newer(line) => line.to_string(),
            // Plain data with text keys: writing it cannot fail.
            _ => serde_json::to_string(self).unwrap_or_default(),
        }
    }

    /// Sort key of the order that all tablets agree on: stamp first, then id.
    #[must_use]
    pub fn order(&self) -> (u64, &str) {
        (self.stamp, &self.id)
    }
}

impl Change {
    /// The edits in it.
    #[must_use]
    pub fn edits(&self) -> &[Edit] {
        match self {
            Self::Edit { edits, .. } | Self::Choose { edits } | Self::Merge { edits, .. } => edits,
            Self::Undo { .. } | Self::Redo { .. } | Self::Newer(_) => &[],
        }
    }

    /// Whether Undo can take it back: it is no undo or redo, and it changes more than settings of one
    /// tablet (`what/tablet`). Settings of the shop can be undone.
    #[must_use]
    pub fn undoable(&self) -> bool {
        let own = |(kind, id): (Kind, &str)| kind == Kind::Setting && id.contains('/');
        let settings = |edits: &[Edit]| edits.iter().all(|edit| own(edit.about()));
        match self {
            Self::Edit { edits, .. } | Self::Choose { edits } => !settings(edits),
            Self::Merge { .. } => true,
            Self::Undo { .. } | Self::Redo { .. } | Self::Newer(_) => false,
        }
    }
}

impl Edit {
    /// Kind and id of the record.
    #[must_use]
    pub fn about(&self) -> (Kind, &str) {
        match self {
            Self::Put(put) => (put.kind, &put.id),
            Self::Remove(remove) => (remove.kind, &remove.id),
        }
    }

    /// Key of the record.
    #[must_use]
    pub fn key(&self) -> Key {
        let (kind, id) = self.about();
        Key::new(kind, id)
    }

    /// The latest entries about this record that the writer had seen.
    #[must_use]
    pub fn over(&self) -> &[Box<str>] {
        match self {
            Self::Put(put) => &put.over,
            Self::Remove(remove) => &remove.over,
        }
    }
}
