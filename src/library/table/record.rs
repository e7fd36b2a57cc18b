//! Rows and records: what a row says of a record, and the record after it, checked as a whole.

use super::super::log::{Key, Kind, Log, Record, overlay};
use super::super::shop::check;
use super::cell::{OWN, RowCells, look, text_of};
use super::column::{CellKind, TableColumn};
use super::rows;
use crate::library::{CalibrationRecord, Library, shipped};
use crate::quantity::{FieldError, Problem};
use serde_json::{Map, Value, json};

/// The fields of a record as the shop has it, or else as it ships.
pub(super) fn known(log: &Log, key: &Key) -> Option<Map<String, Value>> {
    let own = log.record(key.kind, &key.id).filter(|record| !record.removed);
    own.map(|record| record.fields).or_else(|| shipped(key.kind, &key.id))
}

/// What cells say of a record that holds these fields: the top fields that they write, `null` where a cell is empty.
pub(super) fn said(
    columns: &[TableColumn],
    cells: &RowCells<'_>,
    before: &Map<String, Value>,
) -> Result<Map<String, Value>, Vec<FieldError>> {
    let mut said = Map::new();
    let mut errors = Vec::new();
    for column in columns {
        match cells.value(column, columns) {
            Err(found) => errors.extend(found),
            Ok(None) => {}
            Ok(Some(value)) => put(&mut said, before, column.path, value),
        }
    }
    if errors.is_empty() { Ok(said) } else { Err(errors) }
}

/// Puts a value at a path; what it stands in is taken from the record.
fn put(said: &mut Map<String, Value>, before: &Map<String, Value>, path: &str, value: Value) {
    let Some((field, rest)) = path.split_once('/') else {
        said.insert(path.into(), value);
        return;
    };
    let within = said.entry(field).or_insert_with(|| before.get(field).cloned().unwrap_or_default());
    if let Some(place) = within.pointer_mut(&format!("/{rest}")) {
        // A number that is typed as it stood keeps its range and source.
        let same = place.get("value").is_some_and(|had| super::super::log::same(had, &value["value"]));
        if !same {
            *place = value;
        }
    }
}

/// The cells of a record.
pub(super) fn cells(columns: &[TableColumn], id: &str, fields: &Map<String, Value>) -> Vec<String> {
    let cell = |column: &TableColumn| match column.what {
        CellKind::Id => super::cell::guard(id),
        _ => text_of(column, fields),
    };
    columns.iter().map(cell).collect()
}

/// The record after what is said of it, checked as a whole.
pub(super) fn complete(
    key: &Key,
    before: &Map<String, Value>,
    mut said: Map<String, Value>,
    columns: &[TableColumn],
    library: &Library,
) -> Result<Map<String, Value>, FieldError> {
    // A colour keeps what was measured of it, unless another is named.
    if let (Some(now), Some(had)) = (said.get("colour"), before.get("colour"))
        && now.get("name") == had.get("name")
    {
        said.remove("colour");
    }
    for column in columns.iter().filter(|column| matches!(column.what, CellKind::Sourced(_))) {
        rows::keep_number(&mut said, before, column.path);
    }
    let mut fields = before.clone();
    overlay(&mut fields, said);
    if key.kind == Kind::Fabric
        && !fields.contains_key("nombre")
        && let Some(name) = fields.get("name").cloned()
    {
        fields.insert("nombre".into(), name);
    }
    if matches!(key.kind, Kind::Fabric | Kind::White) {
        fields.entry("source").or_insert_with(|| json!(OWN));
    }
    if key.kind == Kind::White {
        fields.entry("low_cure").or_insert_with(|| json!(false));
    }
    for path in needed(key.kind) {
        let empty =
            look(&fields, path).is_none_or(|value| value.as_str().is_some_and(|it| it.trim().is_empty()));
        if empty {
            let column =
                columns.iter().find(|column| column.path == *path).map_or(*path, |column| column.name);
            return Err(FieldError::new(column, "", Problem::Empty));
        }
    }
    let count = |name: &str| fields.get(name).and_then(Value::as_f64).unwrap_or_default();
    if key.kind == Kind::Reading && count("turned") > count("pieces") {
        let problem = Problem::Contradiction { with: "pieces".into() };
        return Err(FieldError::new("turned", count("turned").to_string(), problem));
    }
    let mut record = Record { key: key.clone(), fields, removed: false, conflicts: Vec::new() };
    check(&record, library)?;
    if key.kind == Kind::Calibration {
        // What it told when it was written stands in the record: the dryer may be another later.
        let ride = record.read::<CalibrationRecord>()?.ride(&key.id, library)?;
        let learnt = ride.learn(library).map_err(|mut errors| errors.swap_remove(0))?;
        let mut told = super::super::log::fields(&learnt);
        // Multiples of what the dryer's record says, and not what fields of these names are elsewhere.
        for (name, times) in [("h", "h_times"), ("exchange", "exchange_times")] {
            if let Some(band) = told.remove(name) {
                told.insert(times.into(), band);
            }
        }
        record.fields.insert("learnt".into(), Value::Object(told));
    }
    Ok(record.fields)
}

/// What no record of a kind can do without.
fn needed(kind: Kind) -> &'static [&'static str] {
    match kind {
        Kind::Fabric => &["name", "composition_percent", "construction", "areal_weight"],
        Kind::White => &["name", "class"],
        Kind::Trial => &["white"],
        Kind::Reading => &["days", "pieces"],
        Kind::Dryer | Kind::Lot | Kind::Batch => &["name"],
        Kind::Mesh => &["threads_per_cm", "thread", "thickness", "over_mesh"],
        Kind::FollowUp => &["due"],
        Kind::DailyCheck => &["day"],
        Kind::Calibration => &["day", "fabric", "film_um", "set_c", "belt_m_per_min", "readings"],
        _ => &[],
    }
}
