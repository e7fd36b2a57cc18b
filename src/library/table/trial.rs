//! The table of trials: a row for each reading, and one for a trial that nobody has looked at yet.

use super::super::log::{Key, Kind, Log, Record, overlay};
use super::Said;
use super::cell::{Cells, cell, guard};
use super::rows;
use crate::library::{Reading, Trial};
use crate::plan::bounds;
use crate::quantity::{Bound, FieldError, Problem};
use serde_json::{Map, Value};

pub(super) const COLUMNS: [&str; 15] = [
    "id",
    "fabric",
    "lot",
    "white",
    "printed",
    "dryer",
    "set_c",
    "belt_m_per_min",
    "note",
    "reading",
    "days",
    "pieces",
    "turned",
    "delta_e",
    "reading_note",
];

/// Set temperature of a dryer; wider than any dryer of the library.
const SET: Bound = Bound { field: "set_c", min: 30.0, max: 300.0, unit: "°C" };
/// Belt speed; wider than any dryer of the library.
const BELT: Bound = Bound { field: "belt_m_per_min", min: 0.05, max: 30.0, unit: "m/min" };
/// Pieces that turned.
const TURNED: Bound = Bound { field: "turned", min: 0.0, max: 100_000.0, unit: "" };
/// Colour difference; black to white is 100.
const DELTA_E: Bound = Bound { field: "delta_e", min: 0.0, max: 150.0, unit: "ΔE00" };

pub(super) fn rows(log: &Log) -> Vec<Vec<String>> {
    let mut table = Vec::new();
    for record in log.records(Kind::Trial) {
        let Ok(trial) = record.read::<Trial>() else { continue };
        let number = |value: Option<f64>| value.map(cell).unwrap_or_default();
        let about = [
            guard(&record.key.id),
            guard(&trial.fabric),
            guard(&trial.lot),
            guard(&trial.white),
            guard(&trial.printed),
            guard(&trial.dryer),
            number(trial.set_c),
            number(trial.belt_m_per_min),
            guard(&trial.note),
        ];
        let owner = format!("{}/", record.key.id);
        let mut read = false;
        for row in log.records_of(Kind::Reading, &record.key.id) {
            let Ok(reading) = row.read::<Reading>() else { continue };
            read = true;
            let mut cells = about.to_vec();
            cells.extend([
                guard(row.key.id.strip_prefix(&owner).unwrap_or_default()),
                cell(reading.days),
                reading.pieces.to_string(),
                reading.turned.to_string(),
                number(reading.delta_e),
                guard(&reading.note),
            ]);
            table.push(cells);
        }
        if !read {
            let mut cells = about.to_vec();
            cells.resize(COLUMNS.len(), String::new());
            table.push(cells);
        }
    }
    table
}

pub(super) fn read(cells: &Cells<'_>) -> Result<Said, Vec<FieldError>> {
    let (mut trial, mut reading) = (Map::new(), Map::new());
    let mut errors = Vec::new();
    let mut note = |result: Result<(), FieldError>| errors.extend(result.err());
    let id = rows::id(cells);
    note(id.as_ref().map(drop).map_err(Clone::clone));
    for column in ["fabric", "lot", "white", "dryer", "note"] {
        note(cells.put_text(&mut trial, column));
    }
    note(cells.put_day(&mut trial, "printed"));
    note(cells.put_number(&mut trial, "set_c", SET));
    note(cells.put_number(&mut trial, "belt_m_per_min", BELT));

    note(cells.put_number(&mut reading, "days", bounds::LOOKED_AT));
    note(count(cells, &mut reading, "pieces", bounds::PIECES));
    note(count(cells, &mut reading, "turned", TURNED));
    note(cells.put_number(&mut reading, "delta_e", DELTA_E));
    note(cells.put_text(&mut reading, "reading_note"));
    if let Some(text) = reading.remove("reading_note") {
        reading.insert("note".into(), text);
    }
    let name = cells.word("reading");
    if name.contains('/') {
        note(Err(FieldError::new("reading", name, Problem::NotUnderstood)));
    }
    let said = reading.values().any(|value| !value.is_null());
    if name.is_empty() && said {
        note(Err(FieldError::new("reading", "", Problem::Empty)));
    }
    match id {
        Ok(id) if errors.is_empty() => {
            let mut row = vec![(Key::new(Kind::Trial, id.clone()), trial)];
            if !name.is_empty() {
                row.push((Key::new(Kind::Reading, format!("{id}/{name}")), reading));
            }
            Ok(row)
        }
        _ => Err(errors),
    }
}

fn count(
    cells: &Cells<'_>,
    fields: &mut Map<String, Value>,
    column: &str,
    bound: Bound,
) -> Result<(), FieldError> {
    let Some(number) = cells.number(column, bound)? else {
        if cells.text(column).is_some() {
            fields.insert(column.into(), Value::Null);
        }
        return Ok(());
    };
    if number.fract() != 0.0 {
        return Err(FieldError::new(column, cells.word(column), Problem::NotANumber));
    }
    // Within its bound and whole.
    fields.insert(column.into(), Value::from(number as u64));
    Ok(())
}

/// The record after the row, checked as a whole.
pub(super) fn complete(
    key: &Key,
    before: &Map<String, Value>,
    said: Map<String, Value>,
) -> Result<Map<String, Value>, FieldError> {
    let mut fields = before.clone();
    overlay(&mut fields, said);
    let record = Record { key: key.clone(), fields, removed: false, conflicts: Vec::new() };
    if key.kind == Kind::Trial {
        let trial: Trial = record.read()?;
        if trial.white.trim().is_empty() {
            return Err(FieldError::new("white", "", Problem::Empty));
        }
        return Ok(record.fields);
    }
    for field in ["days", "pieces"] {
        if !record.fields.contains_key(field) {
            return Err(FieldError::new(field, "", Problem::Empty));
        }
    }
    let reading: Reading = record.read()?;
    if reading.turned > reading.pieces {
        let problem = Problem::Contradiction { with: "pieces".into() };
        return Err(FieldError::new("turned", reading.turned.to_string(), problem));
    }
    Ok(record.fields)
}
