//! A file that was chosen: recognised, read as a whole, and held until its import is confirmed.

use crate::desk::form::{Draft, draft_file};
use crate::library::Library;
use crate::library::file::{self, FileError, Header};
use crate::library::log::{Conflict, Key, Log, LogEntry, MergePreview};
use crate::library::table::{Preview, decode};

/// What a file would do, before it does anything.
#[derive(Clone, Debug)]
pub enum Incoming {
    /// Another tablet's library, or an earlier copy of this one.
    Merge {
        /// Name of the file.
        name: String,
        /// Its header.
        header: Box<Header>,
        /// Its entries.
        entries: Vec<LogEntry>,
        /// What would happen.
        preview: Box<MergePreview>,
        /// Of each conflict, the number of the claim that is chosen.
        chosen: Vec<usize>,
    },
    /// A table.
    Table {
        /// Name of the file.
        name: String,
        /// Its text.
        text: String,
        /// What would happen.
        preview: Box<Preview>,
    },
    /// A file that a newer version of this page wrote: it can be previewed, not imported.
    Newer {
        /// Name of the file.
        name: String,
        /// Version of its schema.
        version: u32,
        /// Records in it that this version can read.
        records: usize,
    },
    /// A draft that an earlier version saved, before there was a log.
    Draft {
        /// Name of the file.
        name: String,
        /// The draft.
        draft: Box<Draft>,
    },
}

/// Why a file cannot be imported.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused {
    /// Name of the file.
    pub name: String,
    /// What is wrong with it.
    pub why: FileError,
}

/// The claim of a conflict that this tablet already computes with: the choice until another is made.
fn mine(log: &Log, conflict: &Conflict) -> usize {
    conflict.claims.iter().rposition(|claim| log.get(&claim.entry).is_some()).unwrap_or(0)
}

impl Incoming {
    /// The same file compared with records that have changed meanwhile, so that what is confirmed is what was
    /// shown. A choice stays where its conflict is still the same.
    pub(super) fn again(self, library: &Library, log: &Log) -> Self {
        match self {
            Self::Merge { name, header, entries, preview: before, chosen: was } => {
                let preview = Box::new(log.preview(&entries));
                let chosen = |conflict: &(Key, Conflict)| {
                    let place = before.conflicts.iter().position(|had| had == conflict);
                    place.and_then(|place| was.get(place).copied()).unwrap_or_else(|| mine(log, &conflict.1))
                };
                let chosen = preview.conflicts.iter().map(chosen).collect();
                Self::Merge { name, header, entries, preview, chosen }
            }
            Self::Table { name, text, .. } => {
                let preview = Box::new(Preview::of(&text, library, log));
                Self::Table { name, text, preview }
            }
            other => other,
        }
    }
}

/// Recognises a file and works out what its import would do.
///
/// # Errors
/// [`Refused`] where it is no file that can be imported.
pub(super) fn look(name: &str, bytes: Vec<u8>, library: &Library, log: &Log) -> Result<Incoming, Refused> {
    let text = decode(bytes);
    let name = name.to_owned();
    let refuse = |why| Refused { name: name.clone(), why };
    if let Some(draft) = draft_file::read(&text) {
        return Ok(Incoming::Draft { name, draft: Box::new(draft) });
    }
    match file::read(&text) {
        Ok(opened) => {
            if let Some(version) = opened.newer() {
                let mut shown = Log::new(log.tablet(), "shown");
                shown.extend(opened.entries);
                return Ok(Incoming::Newer { name, version, records: shown.all_keys().count() });
            }
            file::agrees(log, &opened).map_err(refuse)?;
            let preview = Box::new(log.preview(&opened.entries));
            let chosen = preview.conflicts.iter().map(|(_, conflict)| mine(log, conflict)).collect();
            Ok(Incoming::Merge {
                name,
                header: Box::new(opened.header),
                entries: opened.entries,
                preview,
                chosen,
            })
        }
        // A text that begins like JSON or HTML is no table.
        Err(FileError::NotOurs)
            if !text.trim_start_matches('\u{feff}').trim_start().starts_with(['{', '[', '<']) =>
        {
            let preview = Preview::of(&text, library, log);
            if preview.errors.iter().any(|error| error.error.field == "id" && error.of_head()) {
                return Err(refuse(FileError::NotOurs));
            }
            Ok(Incoming::Table { name, text, preview: Box::new(preview) })
        }
        Err(why) => Err(refuse(why)),
    }
}
