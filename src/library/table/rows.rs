//! Splits the text of a table into rows and writes rows as text.

use super::super::log::{Key, same};
use super::cell::{RowCells, unguard};
use crate::quantity::{FieldError, Problem};
use crate::textile::spelling;
use csv::{ReaderBuilder, Terminator, WriterBuilder};
use serde_json::{Map, Value};

/// One row as read.
pub(super) struct TableRow {
    /// Line it begins on, from 1.
    pub(super) line: u64,
    cells: Result<Vec<String>, FieldError>,
    decimal_comma: bool,
}

pub(super) struct TableRows;

impl TableRows {
    /// The names of the columns and the rows below them. Empty rows are skipped.
    pub(super) fn read(text: &str) -> (Vec<String>, Vec<TableRow>) {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let delimiter = delimiter(text);
        let mut reader = ReaderBuilder::new()
            .delimiter(delimiter)
            .has_headers(false)
            .flexible(true)
            .from_reader(text.as_bytes());
        let mut columns: Vec<String> = Vec::new();
        let mut rows = Vec::new();
        for record in reader.records() {
            let (line, cells) = match record {
                // The text is UTF-8 already, so that a row hardly ever fails.
                Err(error) => {
                    let line = error.position().map_or(0, csv::Position::line);
                    (line, Err(FieldError::new("row", error.to_string(), Problem::NotUnderstood)))
                }
                Ok(record) => {
                    let line = record.position().map_or(0, csv::Position::line);
                    (line, Ok(record.iter().map(str::to_owned).collect::<Vec<_>>()))
                }
            };
            let empty = cells.as_ref().is_ok_and(|cells| cells.iter().all(|cell| cell.trim().is_empty()));
            if empty {
                continue;
            }
            match (&cells, columns.is_empty()) {
                (Ok(names), true) => columns = names.iter().map(|name| column(name)).collect(),
                _ => rows.push(TableRow { line, cells, decimal_comma: delimiter != b',' }),
            }
        }
        (columns, rows)
    }
}

impl TableRow {
    /// The cells by column.
    pub(super) fn cells(self, columns: &[String]) -> Result<RowCells<'_>, Vec<FieldError>> {
        let mut cells = self.cells.map_err(|error| vec![error])?;
        while cells.len() > columns.len() && cells.last().is_some_and(|cell| cell.trim().is_empty()) {
            cells.pop();
        }
        if cells.len() != columns.len() {
            let problem = Problem::OutOfRange {
                min: columns.len() as f64,
                max: columns.len() as f64,
                unit: "cells".into(),
            };
            return Err(vec![FieldError::new("row", cells.len().to_string(), problem)]);
        }
        let cells = cells.iter().map(|cell| unguard(cell).to_owned()).collect();
        Ok(RowCells::new(columns, cells, self.decimal_comma))
    }
}

/// The name of a column in the table's spelling: `Areal weight` becomes `areal_weight`.
fn column(name: &str) -> String {
    spelling::fold(name).replace(' ', "_")
}

/// The separator: the one of comma, semicolon and tab that is most frequent in the first line outside
/// quotes.
fn delimiter(text: &str) -> u8 {
    let mut counts = [(b',', 0), (b';', 0), (b'\t', 0)];
    let mut quoted = false;
    for letter in text.trim_start().bytes() {
        match letter {
            b'"' => quoted = !quoted,
            b'\n' | b'\r' if !quoted => break,
            _ if quoted => {}
            _ => {
                counts.iter_mut().filter(|(mark, _)| *mark == letter).for_each(|(_, count)| *count += 1);
            }
        }
    }
    // `max_by_key` takes the last of equals; reversed, the comma wins a draw.
    counts.iter().rev().max_by_key(|(_, count)| *count).map_or(b',', |(mark, _)| *mark)
}

/// Checks that the columns are known and unique, and that an id or a name identifies the records.
pub(super) fn check_columns(columns: &[String], known: &[&str]) -> Result<(), Vec<FieldError>> {
    let mut errors = Vec::new();
    for (at, name) in columns.iter().enumerate() {
        if !known.contains(&name.as_str()) {
            let nearest =
                spelling::nearest(name, known.iter().copied()).into_iter().map(str::to_owned).collect();
            let accepted = known.iter().map(|&name| name.to_owned()).collect();
            errors.push(FieldError::new("column", name, Problem::Unknown { nearest, accepted }));
        } else if columns.iter().take(at).any(|other| other == name) {
            errors.push(FieldError::new("column", name, Problem::Contradiction { with: name.clone() }));
        }
    }
    if !columns.iter().any(|name| name == "id" || (name == "name" && known.contains(&"name"))) {
        errors.push(FieldError::new("id", "", Problem::Empty));
    }
    if errors.is_empty() { Ok(()) } else { Err(errors) }
}

/// Most characters of an id.
const MOST_ID: usize = 80;

/// The id of a row: its own, or one made from its name (`Red interlock` becomes `red-interlock`).
pub(super) fn id(cells: &RowCells<'_>) -> Result<String, FieldError> {
    let own = cells.word("id");
    let id =
        if own.is_empty() { spelling::fold(cells.word("name")).replace(' ', "-") } else { own.to_owned() };
    if id.is_empty() {
        return Err(FieldError::new("id", "", Problem::Empty));
    }
    if id.chars().count() > MOST_ID {
        return Err(FieldError::new("id", id, Problem::TooLong { max: MOST_ID }));
    }
    // A slash separates a record from its owner.
    if id.contains('/') || id.chars().any(char::is_control) {
        return Err(FieldError::new("id", id, Problem::NotUnderstood));
    }
    Ok(id)
}

/// A number that a row repeats keeps its unit, range and source, unless the row states others.
pub(super) fn keep_number(stated: &mut Map<String, Value>, before: &Map<String, Value>, field: &str) {
    let (Some(now), Some(had)) = (stated.get(field), before.get(field)) else { return };
    let alike = |part: &str| same(&now[part], &had[part]);
    // Without a stated range both ends are the number.
    let alone = same(&now["range"][0], &now["value"]) && same(&now["range"][1], &now["value"]);
    let unit = alike("unit") || now["unit"] == "1/kg";
    if alike("value") && unit && (alike("range") || alone) {
        stated.remove(field);
    }
}

/// The error of a record that two rows set.
pub(super) fn twice(key: &Key) -> FieldError {
    FieldError::new("id", &key.id, Problem::Contradiction { with: "id".into() })
}

/// A table as text. Cells of text have been guarded already.
pub(super) fn write(columns: &[&str], rows: Vec<Vec<String>>) -> String {
    let mut writer = WriterBuilder::new().terminator(Terminator::CRLF).from_writer(vec![0xef, 0xbb, 0xbf]);
    // Writing to memory rows as long as the header cannot fail.
    let _ = writer.write_record(columns);
    for row in rows {
        let _ = writer.write_record(&row);
    }
    writer.into_inner().ok().and_then(|bytes| String::from_utf8(bytes).ok()).unwrap_or_default()
}

/// The text of a file: UTF-8, or else ISO 8859-1, which older spreadsheets write.
#[must_use]
pub fn decode(bytes: Vec<u8>) -> String {
    String::from_utf8(bytes)
        .unwrap_or_else(|other| other.as_bytes().iter().map(|&byte| char::from(byte)).collect())
}

/// An error in one row.
#[derive(Clone, Debug, PartialEq)]
pub struct RowError {
    /// Line of the file on which the row begins, from 1; the header is line 1.
    pub line: u64,
    /// The error; its field is the column.
    pub error: FieldError,
}

impl RowError {
    /// Whether the error concerns the whole table and not one of its rows.
    #[must_use]
    pub fn of_head(&self) -> bool {
        self.line <= 1
    }
}
