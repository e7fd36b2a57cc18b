//! Fabrics, whites and trials as tables for a spreadsheet: written, and read with a preview of what would change.
//!
//! A table is comma-separated values as RFC 4180 has them. Read are also semicolons and tabs, a byte order mark, lone
//! line feeds, the older Western encoding that spreadsheets still write, and a comma for the decimal point where the
//! comma is not the separator. Written is what every spreadsheet opens: UTF-8 with its mark, commas, CRLF.
//!
//! A cell of text that a spreadsheet would take for a formula is written with an apostrophe before it, and read
//! without. A column that is missing leaves its field alone; an empty cell takes the field away.
//!
//! [`Preview::of`] changes nothing: it says row by row what is wrong, and field by field what would change. Only a
//! table without an error has a [`Preview::change`], and that is one entry: one undo takes it back.

mod cell;
mod fabric;
mod rows;
mod trial;
mod white;

use super::log::{Change, Difference, Edit, Key, Kind, Log, differences};
use super::{Library, shipped};
use crate::quantity::FieldError;
use rows::Rows;
use serde_json::{Map, Value};
use std::collections::BTreeMap;

pub use rows::decode;

/// A table that can be written and read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Table {
    /// The cloths.
    Fabrics,
    /// The whites.
    Whites,
    /// The trials, a row for each reading.
    Trials,
}

/// What is wrong with one row.
#[derive(Clone, Debug, PartialEq)]
pub struct RowError {
    /// Line of the file that the row begins on, from 1; the head is a row too.
    pub line: u64,
    /// What is wrong; its field is the column.
    pub error: FieldError,
}

/// What reading a table would do.
#[derive(Clone, Debug, PartialEq)]
pub struct Preview {
    /// Which table it was read as.
    pub table: Table,
    /// Records that would come in new.
    pub added: Vec<Key>,
    /// Records that would change, with every value that would.
    pub changed: Vec<(Key, Vec<Difference>)>,
    /// How many records would stay as they are.
    pub unchanged: usize,
    /// What is wrong, row by row. While there is anything, nothing can be applied.
    pub errors: Vec<RowError>,
    wanted: Vec<(Key, Map<String, Value>)>,
}

/// What a row says of records: the fields that it sets, `null` where a cell is empty.
type Said = Vec<(Key, Map<String, Value>)>;

impl Table {
    /// Every table.
    pub const ALL: [Self; 3] = [Self::Fabrics, Self::Whites, Self::Trials];

    /// Names of its columns, in the order they are written.
    #[must_use]
    pub fn columns(self) -> &'static [&'static str] {
        match self {
            Self::Fabrics => &fabric::COLUMNS,
            Self::Whites => &white::COLUMNS,
            Self::Trials => &trial::COLUMNS,
        }
    }

    /// The table that these columns are of: the one that most of them belong to.
    fn of_columns(columns: &[String]) -> Self {
        let hits = |table: &Self| columns.iter().filter(|it| table.columns().contains(&it.as_str())).count();
        // The first of equals, so that `id,name` is a table of cloths.
        Self::ALL.into_iter().rev().max_by_key(hits).unwrap_or(Self::Fabrics)
    }

    /// The table as text. `library` is what ships with the shop's records laid over it.
    #[must_use]
    pub fn write(self, library: &Library, log: &Log) -> String {
        let rows = match self {
            Self::Fabrics => fabric::rows(library, log),
            Self::Whites => white::rows(library),
            Self::Trials => trial::rows(log),
        };
        rows::write(self.columns(), rows)
    }
}

impl Preview {
    /// What reading this text would do to the shop's records. `library` as in [`Table::write`].
    #[must_use]
    pub fn of(text: &str, library: &Library, log: &Log) -> Self {
        let (columns, rows) = Rows::read(text);
        let table = Table::of_columns(&columns);
        let mut preview = Self {
            table,
            added: Vec::new(),
            changed: Vec::new(),
            unchanged: 0,
            errors: Vec::new(),
            wanted: Vec::new(),
        };
        if let Err(errors) = rows::check_columns(&columns, table.columns()) {
            preview.errors = errors.into_iter().map(|error| RowError { line: 1, error }).collect();
            return preview;
        }
        let mut said: BTreeMap<Key, Map<String, Value>> = BTreeMap::new();
        let mut order: Vec<(Key, u64)> = Vec::new();
        for row in rows {
            let line = row.line;
            let read = row.cells(&columns).and_then(|cells| match table {
                Table::Fabrics => fabric::read(&cells),
                Table::Whites => white::read(&cells),
                Table::Trials => trial::read(&cells),
            });
            let fail = |error| RowError { line, error };
            match read {
                Err(errors) => preview.errors.extend(errors.into_iter().map(fail)),
                Ok(row) => {
                    for (key, fields) in row {
                        match said.get(&key) {
                            None => {
                                order.push((key.clone(), line));
                                said.insert(key, fields);
                            }
                            // The rows of one trial repeat what is said of it.
                            Some(before) if key.kind == Kind::Trial && *before == fields => {}
                            Some(_) => preview.errors.push(fail(rows::twice(&key))),
                        }
                    }
                }
            }
        }
        for (key, line) in order {
            let Some(said) = said.remove(&key) else { continue };
            preview.take(key, said, line, library, log);
        }
        preview
    }

    fn take(&mut self, key: Key, said: Map<String, Value>, line: u64, library: &Library, log: &Log) {
        let mine = log.record(key.kind, &key.id).filter(|record| !record.removed);
        let known = mine.map(|record| record.fields).or_else(|| shipped(key.kind, &key.id));
        let before = known.clone().unwrap_or_default();
        let after = match self.table {
            Table::Fabrics => fabric::complete(&key, &before, said, library),
            Table::Whites => white::complete(&key, &before, said, library),
            Table::Trials => trial::complete(&key, &before, said),
        };
        let after = match after {
            Ok(after) => after,
            Err(error) => return self.errors.push(RowError { line, error }),
        };
        let changed = differences(&before, &after);
        if known.is_none() {
            self.added.push(key.clone());
        } else if changed.is_empty() {
            self.unchanged += 1;
            return;
        } else {
            self.changed.push((key.clone(), changed));
        }
        self.wanted.push((key, after));
    }

    /// The change that does what was previewed, as one entry; nothing if a row has an error or nothing would change.
    #[must_use]
    pub fn change(&self, log: &Log, file: &str) -> Option<Change> {
        if !self.errors.is_empty() {
            return None;
        }
        let edits: Vec<Edit> =
            self.wanted.iter().filter_map(|(key, fields)| log.put(key.kind, &key.id, fields, None)).collect();
        (!edits.is_empty()).then(|| Change::Edit { edits, from: Some(file.into()) })
    }
}
