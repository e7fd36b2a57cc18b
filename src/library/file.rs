//! The library as one file: a header, one entry a line, a trailer with a checksum over all lines before it.
//!
//! ```text
//! {"format":"whitehold-library","version":2,"by":"…","at":…,"entries":2}     header
//! {"v":2,"id":"…","at":…,"by":"…","stamp":1,"change":{…}}                    entries, in the order all agree on
//! {"v":2,"id":"…","at":…,"by":"…","stamp":2,"change":{…}}
//! {"sha256":"…"}                                                            trailer
//! ```
//!
//! Lines are JSON (RFC 8259) in UTF-8; the checksum is SHA-256 (FIPS 180-4) over every line before the
//! trailer, each followed by one line feed, so that a mail program that changes line ends does no damage.
//! The schema of a line is `data/schema/library.schema.json`.
//!
//! [`read`] checks the whole file before it returns any of it: a file is accepted whole or not at all.

use super::log::{LineProblem, Log, LogEntry, VERSION, read_line};
use crate::numerics::sorting::sorted;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use sha2::{Digest, Sha256};
use std::collections::HashMap;
use std::fmt::{self, Write};

/// The `format` of a library file.
pub const FORMAT: &str = "whitehold-library";

/// The first line of a file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Header {
    /// Always [`FORMAT`].
    pub format: String,
    /// Version of the entries, that of the newest.
    pub version: u32,
    /// The tablet that saved the file.
    pub by: String,
    /// When, ms since 1970 by the clock of that tablet.
    pub at: i64,
    /// How many entries follow.
    pub entries: usize,
    /// The draft of the order form, as `desk::draft_file` writes it, if everything on the page was saved at once.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub draft: Option<Value>,
}

/// The last line of a file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Trailer {
    /// SHA-256 of the lines before, in hexadecimal.
    pub sha256: String,
}

/// Any line of a file.
#[cfg(not(target_arch = "wasm32"))]
#[derive(schemars::JsonSchema, Serialize)]
#[serde(untagged)]
pub enum FileLine {
    /// The first.
    Header(Header),
    /// Those between.
    Entry(LogEntry),
    /// The last.
    Trailer(Trailer),
}

/// A file that was read and passed every check.
#[derive(Clone, Debug)]
pub struct OpenedFile {
    /// Its header.
    pub header: Header,
    /// Its entries.
    pub entries: Vec<LogEntry>,
}

impl OpenedFile {
    /// The version of a newer Whitehold that wrote it, if one did: such a file can be read but not
    /// merged.
    #[must_use]
    pub fn newer(&self) -> Option<u32> {
        (self.header.version > VERSION).then_some(self.header.version)
    }
}

/// Why a file is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileError {
    /// Not a library file.
    NotOurs,
    /// The trailer is missing: the file was cut off.
    Cut {
        /// Number of lines in the file.
        lines: usize,
    },
    /// The checksum does not match: something was changed or damaged.
    Damaged {
        /// The first line that cannot be read, from 1, if there is one.
        line: Option<usize>,
    },
    /// The header states another number of entries than the file has.
    Count {
        /// Entries that the header states.
        said: usize,
        /// Entries in the file.
        found: usize,
    },
    /// A line that is not an entry although the checksum matches.
    Line {
        /// Its number, from 1.
        line: usize,
        /// What is wrong with it.
        problem: LineProblem,
    },
    /// An entry that occurs twice.
    Twice {
        /// Its id.
        id: String,
    },
    /// An entry whose id is known here with other contents: one of the two was tampered with.
    Differs {
        /// Its id.
        id: String,
    },
}

impl fmt::Display for FileError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotOurs => write!(out, "this is no library file"),
            Self::Cut { lines } => write!(out, "the file ends after line {lines}, before its trailer"),
            Self::Damaged { line: None } => write!(out, "the checksum does not fit"),
            Self::Damaged { line: Some(line) } => {
                write!(out, "the checksum does not fit; line {line} cannot be read")
            }
            Self::Count { said, found } => write!(out, "the header says {said} entries, there are {found}"),
            Self::Line { line, problem } => write!(out, "line {line}: {problem}"),
            Self::Twice { id } => write!(out, "entry {id:?} stands twice"),
            Self::Differs { id } => write!(out, "entry {id:?} differs from the one of that id here"),
        }
    }
}

impl std::error::Error for FileError {}

/// The whole log as one file. Entries that came in with a merge that was undone are left out.
#[must_use]
pub fn write(log: &Log, at: i64) -> String {
    write_with(log, at, None)
}

/// The whole log and the draft of the order form as one file.
#[must_use]
pub fn write_with(log: &Log, at: i64, draft: Option<Value>) -> String {
    let entries: Vec<&LogEntry> = log.entries().iter().filter(|entry| !log.hides_entry(entry)).collect();
    let entries = sorted(entries, &|a, b| a.order().cmp(&b.order()));
    let version = entries.iter().map(|entry| entry.v).max().unwrap_or(VERSION);
    let count = entries.len();
    let header =
        Header { format: FORMAT.into(), version, by: log.tablet().into(), at, entries: count, draft };
    let mut text = String::with_capacity(200 + 300 * entries.len());
    let mut sum = Sha256::new();
    let mut put = |line: &str| {
        text.push_str(line);
        text.push('\n');
        sum.update(line);
        sum.update("\n");
    };
    // Plain data with text keys: writing it cannot fail.
    put(&serde_json::to_string(&header).unwrap_or_default());
    for entry in entries {
        put(&entry.line());
    }
    let trailer = Trailer { sha256: hexadecimal(&sum.finalize()) };
    text.push_str(&serde_json::to_string(&trailer).unwrap_or_default());
    text.push('\n');
    text
}

/// SHA-256 of a text, in hexadecimal.
#[must_use]
pub fn sha256(text: &str) -> String {
    hexadecimal(&Sha256::digest(text))
}

fn hexadecimal(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut text, byte| {
        // Writing to a String cannot fail.
        let _ = write!(text, "{byte:02x}");
        text
    })
}

/// The header of a library file, from its first line; `None` for any other text.
#[must_use]
pub fn header(text: &str) -> Option<Header> {
    let first = text.trim_start_matches('\u{feff}').lines().next()?;
    serde_json::from_str(first).ok().filter(|header: &Header| header.format == FORMAT)
}

/// Reads a whole file and checks it.
///
/// # Errors
/// [`FileError`] if any part of the file is missing, damaged or not an entry.
pub fn read(text: &str) -> Result<OpenedFile, FileError> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut lines: Vec<&str> = text.lines().collect();
    while lines.last().is_some_and(|line| line.trim().is_empty()) {
        lines.pop();
    }
    let header = lines.first().and_then(|line| header(line)).ok_or(FileError::NotOurs)?;
    let Some(trailer) = lines.last().and_then(|line| serde_json::from_str::<Trailer>(line).ok()) else {
        return Err(FileError::Cut { lines: lines.len() });
    };
    lines.pop();
    let mut sum = Sha256::new();
    for line in &lines {
        sum.update(line);
        sum.update("\n");
    }
    let sound = hexadecimal(&sum.finalize()) == trailer.sha256.to_lowercase();
    let mut entries = Vec::with_capacity(lines.len());
    for (index, line) in lines.iter().enumerate().skip(1) {
        match read_line(line) {
            Ok(entry) => entries.push(entry),
            Err(problem) if sound => return Err(FileError::Line { line: index + 1, problem }),
            Err(_) => return Err(FileError::Damaged { line: Some(index + 1) }),
        }
    }
    if !sound {
        return Err(FileError::Damaged { line: None });
    }
    if entries.len() != header.entries {
        return Err(FileError::Count { said: header.entries, found: entries.len() });
    }
    let mut seen: HashMap<&str, u32> = HashMap::with_capacity(entries.len());
    if let Some(twice) = entries.iter().find(|entry| seen.insert(&entry.id, 0).is_some()) {
        return Err(FileError::Twice { id: twice.id.to_string() });
    }
    Ok(OpenedFile { header, entries })
}

/// Checks that no entry of a file differs from the entry of the same id in the log.
///
/// # Errors
/// [`FileError::Differs`] with the first entry that differs.
pub fn agrees(log: &Log, opened: &OpenedFile) -> Result<(), FileError> {
    let differs = |entry: &&LogEntry| log.get(&entry.id).is_some_and(|known| known.line() != entry.line());
    match opened.entries.iter().find(differs) {
        None => Ok(()),
        Some(entry) => Err(FileError::Differs { id: entry.id.to_string() }),
    }
}
