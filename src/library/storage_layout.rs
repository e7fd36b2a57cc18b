//! How lines are stored in the browser's database, and what can go wrong there.
//!
//! The database stores lines: one JSON text each, identified by an id. A new line is one row of the
//! **journal**, so that saving it costs one small write. A long journal is **sealed**: its lines move, in
//! one transaction, into **segments** of [`SEGMENT`] lines, each one text of JSON lines, because a
//! browser reads two hundred texts ten times as fast as two hundred thousand rows. A row may belong to a
//! **slot**, such as the draft of a tab: then only the slot's newest row counts, and sealing drops the
//! others.
//!
//! This module does not touch a browser. [`seal`] decides what moves where, [`upgrade`] what a database
//! of an earlier version needs, and [`Trouble`] lists the failures of a browser; `web::store` carries it
//! out.

use serde::{Deserialize, Serialize};
use std::collections::{BTreeSet, HashMap};

/// Version of this layout. A database of a later version is read and never written.
pub const SCHEMA: u32 = 1;

/// Lines in a segment. Chosen: 200 texts of this length were read in 0.1 s, 200,000 rows in 1.5 s.
pub const SEGMENT: usize = 1_000;

/// Drafts that sealing keeps, the newest ones. Assumed. Each belongs to one tab; a tab that opens
/// continues its own draft, or else the newest.
pub const DRAFTS: usize = 50;

/// A line to be stored.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Line {
    /// Its id; two lines of one id are the same line.
    pub id: String,
    /// Its JSON text, without a line break.
    pub text: String,
}

impl Line {
    /// A line of a JSON text. A line break in JSON is never part of a value, so it is replaced by a
    /// space.
    #[must_use]
    pub fn new(id: impl Into<String>, text: impl Into<String>) -> Self {
        let mut text = text.into();
        if text.contains(['\n', '\r']) {
            text = text.replace(['\n', '\r'], " ");
        }
        text.shrink_to_fit();
        Self { id: id.into(), text }
    }
}

/// A row of the journal.
#[derive(Clone, Debug, PartialEq)]
pub struct JournalRow {
    /// The key that the browser assigned; a later row has a higher one.
    pub key: f64,
    /// The line.
    pub line: Line,
    /// The slot that it belongs to, if any.
    pub slot: Option<String>,
}

/// A part of the database.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ObjectStore {
    /// One line per row, in the order of saving.
    Journal,
    /// One text of JSON lines per row.
    Segments,
}

impl ObjectStore {
    /// Its name in the database.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Journal => "journal",
            Self::Segments => "segments",
        }
    }
}

/// The stores that a database of an earlier version lacks, in order; version 0 is a new database.
pub fn upgrade(from: u32) -> impl Iterator<Item = ObjectStore> {
    let steps = [(1, ObjectStore::Journal), (1, ObjectStore::Segments)];
    steps.into_iter().filter(move |(since, _)| *since > from).map(|(_, part)| part)
}

/// Lines as the text of one segment.
#[must_use]
pub fn segment<'a>(lines: impl IntoIterator<Item = &'a Line>) -> String {
    let mut text = String::new();
    for line in lines {
        text.push_str(&line.text);
        text.push('\n');
    }
    text
}

/// The lines of a segment or of any text of JSON lines.
pub fn lines(text: &str) -> impl Iterator<Item = &str> {
    text.lines().filter(|line| !line.trim().is_empty())
}

/// Lines that are stored at once, divided into whole segments and the remainder for the journal. Of two
/// lines with one id the second is dropped.
#[must_use]
pub fn sort(lines: &[Line]) -> (Vec<Vec<&Line>>, Vec<&Line>) {
    let mut seen = HashMap::with_capacity(lines.len());
    let lines: Vec<&Line> =
        lines.iter().filter(|line| seen.insert(line.id.as_str(), 0_u32).is_none()).collect();
    let (whole, rest) = lines.split_at(lines.len() - lines.len() % SEGMENT);
    (whole.chunks(SEGMENT).map(<[&Line]>::to_vec).collect(), rest.to_vec())
}

/// The changes of a sealing, to be made in one transaction.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sealing {
    /// Texts to add to the segments.
    pub segments: Vec<String>,
    /// Keys of the journal's rows to delete.
    pub gone: Vec<f64>,
}

/// Whether a journal of this many rows should be sealed. Less than two thirds of the rows remain after a
/// sealing, so that it does not happen at every save.
#[must_use]
pub fn is_long(rows: usize) -> bool {
    rows >= 2 * SEGMENT
}

/// The sealing of a journal, its rows in the order of their keys.
#[must_use]
pub fn seal(rows: &[JournalRow]) -> Sealing {
    let mut sealing = Sealing::default();
    let mut slots = BTreeSet::new();
    for row in rows.iter().rev() {
        if let Some(slot) = &row.slot
            && (slots.len() == DRAFTS || !slots.insert(slot.as_str()))
        {
            sealing.gone.push(row.key);
        }
    }
    let mut seen = BTreeSet::new();
    let mut chunk = Vec::new();
    let mut keys = Vec::new();
    for row in rows.iter().filter(|row| row.slot.is_none()) {
        if !seen.insert(row.line.id.as_str()) {
            sealing.gone.push(row.key);
            continue;
        }
        keys.push(row.key);
        chunk.push(&row.line);
        if chunk.len() == SEGMENT {
            sealing.segments.push(segment(chunk.drain(..)));
            sealing.gone.append(&mut keys);
        }
    }
    sealing
}

/// Everything that a database holds.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Contents {
    /// The sealed segments.
    pub segments: Vec<String>,
    /// The journal, in the order of its keys.
    pub journal: Vec<JournalRow>,
}

impl Contents {
    /// Every line, in no particular order; a line may occur twice.
    pub fn lines(&self) -> impl Iterator<Item = &str> {
        let sealed = self.segments.iter().flat_map(|text| lines(text));
        let fresh = self.journal.iter().filter(|row| row.slot.is_none());
        sealed.chain(fresh.map(|row| row.line.text.as_str()))
    }

    /// The newest row of a slot.
    #[must_use]
    pub fn slot(&self, slot: &str) -> Option<&JournalRow> {
        self.journal.iter().rev().find(|row| row.slot.as_deref() == Some(slot))
    }

    /// The rows of all slots whose names begin with `start`, the newest first.
    pub fn slots(&self, start: &str) -> impl Iterator<Item = &JournalRow> {
        let begins = move |row: &&JournalRow| row.slot.as_ref().is_some_and(|slot| slot.starts_with(start));
        self.journal.iter().rev().filter(begins)
    }

    /// Whether nothing was ever stored.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.segments.is_empty() && self.journal.is_empty()
    }
}

/// Why something could not be stored or read. What is in memory stays complete in every case and can be
/// saved as a file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Trouble {
    /// The disk, or this page's quota of it, is full.
    Full,
    /// This browser stores nothing for this page: a private window, a sandboxed frame, or a policy.
    Refused,
    /// Something was stored before, and the browser has deleted it.
    Wiped,
    /// Another tab with an earlier version of the page holds the database until it is closed.
    Blocked,
    /// A later version of the page wrote the database: it is read and never written.
    Newer,
    /// The database was closed under this tab, by a later version of the page or by the browser.
    Closed,
    /// A file that is not one of this program.
    NotOurs,
    /// Anything else, in the browser's words.
    Failed(String),
}

impl Trouble {
    /// The meaning of an exception of the database, by its name in the Web IDL and IndexedDB standards.
    #[must_use]
    pub fn of_exception(name: &str, said: &str) -> Self {
        match name {
            "QuotaExceededError" => Self::Full,
            "SecurityError" | "NotSupportedError" => Self::Refused,
            "VersionError" => Self::Newer,
            "InvalidStateError" => Self::Closed,
            _ => Self::Failed(format!("{name}: {said}")),
        }
    }
}
