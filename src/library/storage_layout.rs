//! How lines lie on the browser's shelf, and what can go wrong there.
//!
//! What is kept is lines: one JSON text each, known by its id. A new line is one row of the **journal**, so that
//! saving it costs one small write. A journal that grew long is **sealed**: its lines move, in one transaction, into
//! **segments** of [`SEGMENT`] lines, each one text of JSON lines, because a browser reads two hundred texts in a
//! tenth of the time that it takes for two hundred thousand rows. A row may belong to a **slot**: then only the
//! slot's newest row counts, as with the draft of a tab, and sealing drops the others.
//!
//! Nothing here knows a browser. [`seal`] decides what moves where, [`upgrade`] what a database of an earlier
//! version still needs, [`Trouble`] names what a browser may answer; `web::store` does as it is told.

use serde::{Deserialize, Serialize};
use std::collections::{BTreeSet, HashMap};

/// Version of the layout below. A database of a later one is read and never written.
pub const SCHEMA: u32 = 1;

/// Lines in a segment: assumed; 200 texts of this length were read in 0.1 s where 200,000 rows took 1.5 s.
pub const SEGMENT: usize = 1_000;

/// Drafts that sealing leaves, the newest ones: assumed. Each is one tab's; a tab that opens goes on with its own, or
/// with the newest.
pub const DRAFTS: usize = 50;

/// A line to be kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Line {
    /// What it is known by; two lines of one id are the same line.
    pub id: String,
    /// Its JSON text, without a line break.
    pub text: String,
}

impl Line {
    /// A line of a JSON text. A line break in JSON is never part of a value, so it becomes a space.
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
    /// The key that the browser counted up to: a later row has a higher one.
    pub key: f64,
    /// The line.
    pub line: Line,
    /// The slot it belongs to, if only the newest of its slot counts.
    pub slot: Option<String>,
}

/// A part of the database.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ObjectStore {
    /// One row a line, in the order of saving.
    Journal,
    /// One text of JSON lines a row.
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

/// What a database of an earlier version still needs, in order; 0 is a database that was just made.
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

/// Lines that come in one go: those of each segment for a whole library, and what is left over for the journal.
/// The second of two lines with one id is dropped.
#[must_use]
pub fn sort(lines: &[Line]) -> (Vec<Vec<&Line>>, Vec<&Line>) {
    let mut seen = HashMap::with_capacity(lines.len());
    let lines: Vec<&Line> =
        lines.iter().filter(|line| seen.insert(line.id.as_str(), 0_u32).is_none()).collect();
    let (whole, rest) = lines.split_at(lines.len() - lines.len() % SEGMENT);
    (whole.chunks(SEGMENT).map(<[&Line]>::to_vec).collect(), rest.to_vec())
}

/// What sealing does, all of it in one transaction or none.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sealing {
    /// Texts to add to the segments.
    pub segments: Vec<String>,
    /// Keys of the journal's rows that go.
    pub gone: Vec<f64>,
}

/// True for a journal of this many rows that is worth sealing. After a sealing less than two thirds of that is left,
/// so that it does not come at every save.
#[must_use]
pub fn is_long(rows: usize) -> bool {
    rows >= 2 * SEGMENT
}

/// What to seal of a journal, its rows in the order of their keys.
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

/// Everything a database gave back.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Contents {
    /// The sealed segments.
    pub segments: Vec<String>,
    /// The journal, in the order of its keys.
    pub journal: Vec<JournalRow>,
}

impl Contents {
    /// Every line, in no order that means anything; a line may come twice.
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

    /// The rows of all slots whose names begin so, the newest first.
    pub fn slots(&self, start: &str) -> impl Iterator<Item = &JournalRow> {
        let begins = move |row: &&JournalRow| row.slot.as_ref().is_some_and(|slot| slot.starts_with(start));
        self.journal.iter().rev().filter(begins)
    }

    /// True if nothing was ever kept.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.segments.is_empty() && self.journal.is_empty()
    }
}

/// Why something is not kept, or not brought back. What is in memory is whole in every case and can be taken away as a file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Trouble {
    /// The disk, or what the browser grants this page of it, is full.
    Full,
    /// This browser stores nothing for this page: a private window, a sandboxed frame, a rule of the shop.
    Refused,
    /// Something was kept here before, and the browser has deleted it.
    Wiped,
    /// Another tab with an earlier version of the page holds the database; it opens when that tab is closed.
    Blocked,
    /// A later version of the page wrote the database: it is read, never written.
    Newer,
    /// The database was closed under this tab, by a later version of the page or by the browser.
    Closed,
    /// A file that holds nothing of ours.
    NotOurs,
    /// Anything else, in the browser's words.
    Failed(String),
}

impl Trouble {
    /// What an exception of a database means, by its name in the Web IDL and IndexedDB standards.
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
