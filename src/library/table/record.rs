//! From a row to a record: the fields that the row sets, and the resulting record, checked as a whole.

use super::super::log::{Key, Kind, Log, Record, overlay};
use super::super::shop::check;
use super::cell::{OWN, RowCells, at_path, text_of};
use super::column::{CellKind, TableColumn};
use super::rows;
use crate::library::{CalibrationRecord, Library, shipped};
use crate::quantity::{FieldError, Problem};
use serde_json::{Map, Value, json};

/// The fields of a record as the shop wrote it, or else as it ships.
pub(super) fn known(log: &Log, key: &Key) -> Option<Map<String, Value>> {
    let own = log.record(key.kind, &key.id).filter(|record| !record.removed);
    own.map(|record| record.fields).or_else(|| shipped(key.kind, &key.id))
}

/// The top-level fields that cells set in a record with the fields `before`; `null` for an empty cell.
pub(super) fn stated(
    columns: &[TableColumn],
    cells: &RowCells<'_>,
    before: &Map<String, Value>,
) -> Result<Map<String, Value>, Vec<FieldError>> {
    let mut stated = Map::new();
    let mut errors = Vec::new();
    for column in columns {
        match cells.value(column, columns) {
            Err(found) => errors.extend(found),
            Ok(None) => {}
            Ok(Some(value)) => put(&mut stated, before, column.path, value),
        }
    }
    if errors.is_empty() { Ok(stated) } else { Err(errors) }
}

/// Puts a value at a path; the object around it is copied from the record.
fn put(stated: &mut Map<String, Value>, before: &Map<String, Value>, path: &str, value: Value) {
    let Some((field, rest)) = path.split_once('/') else {
        stated.insert(path.into(), value);
        return;
    };
    let within = stated.entry(field).or_insert_with(|| before.get(field).cloned().unwrap_or_default());
    if let Some(place) = within.pointer_mut(&format!("/{rest}")) {
        // A number that is typed unchanged keeps its range and source.
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

/// The record with the fields of a row set, checked as a whole.
pub(super) fn complete(
    key: &Key,
    before: &Map<String, Value>,
    mut stated: Map<String, Value>,
    columns: &[TableColumn],
    library: &Library,
) -> Result<Map<String, Value>, FieldError> {
    // A colour keeps its measurement unless another colour is named.
    if let (Some(now), Some(had)) = (stated.get("colour"), before.get("colour"))
        && now.get("name") == had.get("name")
    {
        stated.remove("colour");
    }
    for column in columns.iter().filter(|column| matches!(column.what, CellKind::Sourced(_))) {
        rows::keep_number(&mut stated, before, column.path);
    }
    let mut fields = before.clone();
    overlay(&mut fields, stated);
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
            at_path(&fields, path).is_none_or(|value| value.as_str().is_some_and(|it| it.trim().is_empty()));
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
        // The result is stored with the record, because the dryer's record may change later.
        let run = record.read::<CalibrationRecord>()?.probe_run(&key.id, library)?;
        let learnt = run.learn(library).map_err(|mut errors| errors.swap_remove(0))?;
        let mut learnt_fields = super::super::log::fields(&learnt);
        // These are multiples of the values in the dryer's record, unlike fields of the same name
        // elsewhere.
        for (name, times) in [("h", "h_times"), ("exchange", "exchange_times")] {
            if let Some(band) = learnt_fields.remove(name) {
                learnt_fields.insert(times.into(), band);
            }
        }
        record.fields.insert("learnt".into(), Value::Object(learnt_fields));
    }
    Ok(record.fields)
}

/// Paths that a record of a kind needs.
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
