//! Fabrics, whites and trials as tables for a spreadsheet, and a preview of what reading one would
//! change.
//!
//! A table is comma-separated values (RFC 4180). The reader also accepts semicolons and tabs, a byte
//! order mark, lone line feeds, ISO 8859-1, and a decimal comma if the comma is not the separator. The
//! writer produces what every spreadsheet opens: UTF-8 with a byte order mark, commas, CRLF.
//!
//! Text that a spreadsheet would take for a formula is written with an apostrophe in front, which the
//! reader removes. A missing column leaves its field alone; an empty cell removes the field.
//!
//! [`Preview::of`] changes nothing: it lists what is wrong row by row, and what would change field by
//! field. Only a table without errors has a [`Preview::change`], which is one entry of the log, so that
//! one undo takes it back.

mod cell;
mod column;
mod form;
mod record;
mod rows;

use super::Library;
use super::log::{Change, Edit, FieldDifference, Key, Kind, Log, differences};
use crate::quantity::{FieldError, Problem};
use cell::{RowCells, guard};
use rows::TableRows;
use serde::Serialize;
use serde_json::{Map, Value};
use std::collections::BTreeMap;

pub use column::{CellKind, TableColumn, columns};
pub use form::Form;
pub use rows::{RowError, decode};

/// A table that can be written and read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum RecordTable {
    /// The cloths.
    Fabrics,
    /// The whites.
    Whites,
    /// The trials, one row per reading.
    Trials,
}

/// What reading a table would change.
#[derive(Clone, Debug, PartialEq)]
pub struct Preview {
    /// The table that it was read as.
    pub table: RecordTable,
    /// Records that would be added.
    pub added: Vec<Key>,
    /// Records that would change, with each value that differs.
    pub changed: Vec<(Key, Vec<FieldDifference>)>,
    /// Number of records that would not change.
    pub unchanged: usize,
    /// Errors, row by row. While there is any, nothing can be applied.
    pub errors: Vec<RowError>,
    wanted: Vec<(Key, Map<String, Value>)>,
}

/// The records of a row with the fields that it sets, `null` for an empty cell.
type RowFields = Vec<(Key, Map<String, Value>)>;

impl RecordTable {
    /// Every table.
    pub const ALL: [Self; 3] = [Self::Fabrics, Self::Whites, Self::Trials];

    /// Names of its columns, in the order in which they are written.
    #[must_use]
    pub fn columns(self) -> Vec<&'static str> {
        let (record, part) = self.parts();
        let mut names: Vec<&str> = record.iter().map(|column| column.name).collect();
        if !part.is_empty() {
            names.push(READING);
            names.extend(part.iter().map(|column| column.name));
        }
        names
    }

    /// The columns of the record of a row, and those of the reading in it.
    fn parts(self) -> (&'static [TableColumn], &'static [TableColumn]) {
        match self {
            Self::Fabrics => (column::FABRIC, &[]),
            Self::Whites => (column::WHITE, &[]),
            Self::Trials => (column::TRIAL, column::READING),
        }
    }

    fn kind(self) -> Kind {
        match self {
            Self::Fabrics => Kind::Fabric,
            Self::Whites => Kind::White,
            Self::Trials => Kind::Trial,
        }
    }

    /// The table to which most of these columns belong.
    fn of_columns(columns: &[String]) -> Self {
        let hits = |table: &Self| columns.iter().filter(|it| table.columns().contains(&it.as_str())).count();
        // `max_by_key` takes the last of equals; reversed, `id,name` becomes a table of fabrics.
        Self::ALL.into_iter().rev().max_by_key(hits).unwrap_or(Self::Fabrics)
    }

    /// The table as text. `library` is the shipped one with the shop's records laid over it.
    #[must_use]
    pub fn write(self, library: &Library, log: &Log) -> String {
        let ids: Vec<&str> = match self {
            Self::Fabrics => library.fabrics.iter().map(|it| &*it.id).collect(),
            Self::Whites => library.whites.iter().map(|it| &*it.id).collect(),
            Self::Trials => log.keys(Kind::Trial).filter(|key| log.stands(key)).map(|key| &*key.id).collect(),
        };
        let (columns, part) = self.parts();
        let mut rows = Vec::new();
        for id in ids {
            let fields = record::known(log, &Key::new(self.kind(), id)).unwrap_or_default();
            let about = record::cells(columns, id, &fields);
            let alone = rows.len();
            if self == Self::Trials {
                for reading in log.records_of(Kind::Reading, id) {
                    let mut row = about.clone();
                    row.push(guard(reading.key.id.get(id.len() + 1..).unwrap_or_default()));
                    row.extend(record::cells(part, "", &reading.fields));
                    rows.push(row);
                }
            }
            if rows.len() == alone {
                let mut row = about;
                row.resize(self.columns().len(), String::new());
                rows.push(row);
            }
        }
        rows::write(&self.columns(), rows)
    }

    /// The fields that a row sets, record by record.
    fn read(self, cells: &RowCells<'_>) -> Result<RowFields, Vec<FieldError>> {
        let (columns, part) = self.parts();
        let mut errors = Vec::new();
        let none = Map::new();
        let id = rows::id(cells).map_err(|error| errors.push(error)).unwrap_or_default();
        let fields = record::stated(columns, cells, &none).map_err(|found| errors.extend(found));
        let mut records = vec![(Key::new(self.kind(), &*id), fields.unwrap_or_default())];
        let reading = record::stated(part, cells, &none).map_err(|found| errors.extend(found));
        let reading = reading.unwrap_or_default();
        let name = cells.word(READING);
        if name.contains('/') {
            errors.push(FieldError::new(READING, name, Problem::NotUnderstood));
        } else if !name.is_empty() {
            records.push((Key::new(Kind::Reading, format!("{id}/{name}")), reading));
        } else if reading.values().any(|value| !value.is_null()) {
            errors.push(FieldError::new(READING, "", Problem::Empty));
        }
        if errors.is_empty() { Ok(records) } else { Err(errors) }
    }
}

/// Name of the column that identifies the readings of a trial.
const READING: &str = "reading";

impl Preview {
    /// What reading this text would change in the shop's records. `library` is as in
    /// [`RecordTable::write`].
    #[must_use]
    pub fn of(text: &str, library: &Library, log: &Log) -> Self {
        let (columns, rows) = TableRows::read(text);
        let table = RecordTable::of_columns(&columns);
        let mut preview = Self {
            table,
            added: Vec::new(),
            changed: Vec::new(),
            unchanged: 0,
            errors: Vec::new(),
            wanted: Vec::new(),
        };
        if let Err(errors) = rows::check_columns(&columns, &table.columns()) {
            preview.errors = errors.into_iter().map(|error| RowError { line: 1, error }).collect();
            return preview;
        }
        let mut stated: BTreeMap<Key, Map<String, Value>> = BTreeMap::new();
        let mut order: Vec<(Key, u64)> = Vec::new();
        for row in rows {
            let line = row.line;
            let read = row.cells(&columns).and_then(|cells| table.read(&cells));
            let fail = |error| RowError { line, error };
            match read {
                Err(errors) => preview.errors.extend(errors.into_iter().map(fail)),
                Ok(row) => {
                    for (key, fields) in row {
                        match stated.get(&key) {
                            None => {
                                order.push((key.clone(), line));
                                stated.insert(key, fields);
                            }
                            // The rows of one trial repeat its own fields.
                            Some(before) if key.kind == Kind::Trial && *before == fields => {}
                            Some(_) => preview.errors.push(fail(rows::twice(&key))),
                        }
                    }
                }
            }
        }
        for (key, line) in order {
            let Some(stated) = stated.remove(&key) else { continue };
            preview.take(key, stated, line, library, log);
        }
        preview
    }

    fn take(&mut self, key: Key, stated: Map<String, Value>, line: u64, library: &Library, log: &Log) {
        let known = record::known(log, &key);
        let before = known.clone().unwrap_or_default();
        let (record, part) = self.table.parts();
        let columns = if key.kind == Kind::Reading { part } else { record };
        let after = record::complete(&key, &before, stated, columns, library);
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

    /// The change that was previewed, as one entry; `None` if a row has an error or nothing would change.
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
