//! The table of cloths.

use super::super::log::{Key, Kind, Log, Record, overlay};
use super::super::overlay::check_fabric;
use super::Said;
use super::cell::{Cells, OWN, cell, guard};
use super::rows;
use crate::library::{FabricDye, Library};
use crate::quantity::{FieldError, Problem};
use crate::textile::{AREAL_WEIGHT, Construction, FabricRecord, label};
use serde_json::{Map, Value, json};

pub(super) const COLUMNS: [&str; 11] = [
    "id",
    "name",
    "nombre",
    "composition",
    "construction",
    "weight_gsm",
    "weight_low_gsm",
    "weight_high_gsm",
    "colour",
    "dye_class",
    "source",
];

const DYE_CLASSES: [&str; 6] =
    ["unknown", "low-energy", "medium-energy", "high-energy", "sublimation-printed", "mass-dyed"];

/// A word of the contract as it is written in JSON.
fn word<T: serde::Serialize>(value: &T) -> String {
    serde_json::to_value(value).ok().and_then(|it| it.as_str().map(str::to_owned)).unwrap_or_default()
}

pub(super) fn rows(library: &Library, log: &Log) -> Vec<Vec<String>> {
    let dye = |id: &str| {
        let record = log.record(Kind::Fabric, id).filter(|record| !record.removed)?;
        record.read::<FabricDye>().ok()
    };
    let row = |record: &FabricRecord| {
        let shares = record.composition_percent.iter();
        let shares: Vec<String> =
            shares.map(|(fibre, share)| format!("{}% {}", cell(*share), fibre.name())).collect();
        let dye = dye(&record.id);
        vec![
            guard(&record.id),
            guard(&record.name),
            guard(&record.nombre),
            shares.join(" "),
            word(&record.construction),
            cell(record.areal_weight.value),
            cell(record.areal_weight.range[0]),
            cell(record.areal_weight.range[1]),
            guard(&dye.as_ref().map(|dye| dye.colour.name.clone()).unwrap_or_default()),
            dye.map(|dye| word(&dye.dye_class)).filter(|class| class != "unknown").unwrap_or_default(),
            guard(&record.source),
        ]
    };
    library.fabrics.iter().map(row).collect()
}

pub(super) fn read(cells: &Cells<'_>) -> Result<Said, Vec<FieldError>> {
    let mut fields = Map::new();
    let mut errors = Vec::new();
    let mut note = |result: Result<(), FieldError>| errors.extend(result.err());
    let id = rows::id(cells);
    note(id.as_ref().map(drop).map_err(Clone::clone));
    for column in ["name", "nombre", "source"] {
        note(cells.put_text(&mut fields, column));
    }
    let constructions: Vec<String> = Construction::ALL.iter().map(word).collect();
    let constructions: Vec<&str> = constructions.iter().map(String::as_str).collect();
    note(cells.put_word(&mut fields, "construction", &constructions));
    note(cells.put_word(&mut fields, "dye_class", &DYE_CLASSES));
    match cells.sourced(["weight_gsm", "weight_low_gsm", "weight_high_gsm"], "g/m²", AREAL_WEIGHT) {
        Ok(weight) => fields.extend(weight.map(|weight| ("areal_weight".into(), weight))),
        Err(error) => note(Err(error)),
    }
    if cells.text("colour").is_some() {
        let name = cells.word("colour");
        let colour = if name.is_empty() { Value::Null } else { json!({ "name": name }) };
        fields.insert("colour".into(), colour);
    }
    if cells.text("composition").is_some() {
        match shares(cells.word("composition")) {
            Ok(shares) => {
                fields.insert("composition_percent".into(), shares);
            }
            Err(found) => errors.extend(found),
        }
    }
    match id {
        Ok(id) if errors.is_empty() => Ok(vec![(Key::new(Kind::Fabric, id), fields)]),
        _ => Err(errors),
    }
}

/// The shares of a composition, read as any label is.
fn shares(text: &str) -> Result<Value, Vec<FieldError>> {
    if text.is_empty() {
        return Ok(Value::Null);
    }
    let named = |error: FieldError| FieldError { field: "composition".into(), ..error };
    let reading = label::read(text).map_err(|errors| errors.into_iter().map(named).collect::<Vec<_>>())?;
    if reading.body.other_percent > 0.0 || reading.body.shares.is_empty() {
        return Err(vec![FieldError::new("composition", text, Problem::NotUnderstood)]);
    }
    serde_json::to_value(&reading.body.shares)
        .map_err(|_| vec![FieldError::new("composition", text, Problem::NotUnderstood)])
}

/// The record after the row, checked as a whole.
pub(super) fn complete(
    key: &Key,
    before: &Map<String, Value>,
    mut said: Map<String, Value>,
    library: &Library,
) -> Result<Map<String, Value>, FieldError> {
    // A colour keeps what was measured of it, unless another is named.
    if let (Some(now), Some(had)) = (said.get("colour"), before.get("colour"))
        && now.get("name") == had.get("name")
    {
        said.remove("colour");
    }
    rows::keep_number(&mut said, before, "areal_weight");
    let mut fields = before.clone();
    overlay(&mut fields, said);
    if !fields.contains_key("nombre")
        && let Some(name) = fields.get("name").cloned()
    {
        fields.insert("nombre".into(), name);
    }
    fields.entry("source").or_insert_with(|| json!(OWN));
    for (field, column) in [
        ("name", "name"),
        ("composition_percent", "composition"),
        ("construction", "construction"),
        ("areal_weight", "weight_gsm"),
    ] {
        if !fields.contains_key(field) {
            return Err(FieldError::new(column, "", Problem::Empty));
        }
    }
    let record = Record { key: key.clone(), fields, removed: false, conflicts: Vec::new() };
    check_fabric(library, &record.read::<FabricRecord>()?)?;
    record.read::<FabricDye>()?;
    Ok(record.fields)
}
