//! The table of whites.

use super::super::log::{Key, Kind, Record, overlay};
use super::super::overlay::check_white;
use super::Said;
use super::cell::{Cells, OWN, cell, guard};
use super::rows;
use crate::ink::{WhiteClass, WhiteRecord};
use crate::library::Library;
use crate::quantity::{Bound, FieldError, Problem};
use serde_json::{Map, Value, json};

pub(super) const COLUMNS: [&str; 9] =
    ["id", "name", "class", "low_cure", "price_per_kg", "price_low", "price_high", "price_unit", "source"];

/// Price of a kilogram, in the shop's money.
const PRICE: Bound = Bound { field: "price_per_kg", min: 0.0, max: 100_000.0, unit: "" };

const CLASSES: [WhiteClass; 7] = [
    WhiteClass::Polyester,
    WhiteClass::LowBleed,
    WhiteClass::NonGhosting,
    WhiteClass::Cotton,
    WhiteClass::Soft,
    WhiteClass::Stretch,
    WhiteClass::Nylon,
];

fn class(class: WhiteClass) -> String {
    serde_json::to_value(class).ok().and_then(|it| it.as_str().map(str::to_owned)).unwrap_or_default()
}

pub(super) fn rows(library: &Library) -> Vec<Vec<String>> {
    let row = |record: &WhiteRecord| {
        let price = record.price_per_kg.as_ref();
        let number = |value: Option<f64>| value.map(cell).unwrap_or_default();
        vec![
            guard(&record.id),
            guard(&record.name),
            class(record.class),
            if record.low_cure { "yes" } else { "no" }.into(),
            number(price.map(|price| price.value)),
            number(price.map(|price| price.range[0])),
            number(price.map(|price| price.range[1])),
            guard(price.map_or("", |price| &price.unit)),
            guard(&record.source),
        ]
    };
    library.whites.iter().map(row).collect()
}

pub(super) fn read(cells: &Cells<'_>) -> Result<Said, Vec<FieldError>> {
    let mut fields = Map::new();
    let mut errors = Vec::new();
    let mut note = |result: Result<(), FieldError>| errors.extend(result.err());
    let id = rows::id(cells);
    note(id.as_ref().map(drop).map_err(Clone::clone));
    note(cells.put_text(&mut fields, "name"));
    note(cells.put_text(&mut fields, "source"));
    let classes = CLASSES.map(class);
    note(cells.put_word(&mut fields, "class", &classes.each_ref().map(String::as_str)));
    note(cells.put_flag(&mut fields, "low_cure"));
    let unit = match cells.word("price_unit") {
        "" => "1/kg",
        unit => unit,
    };
    match cells.sourced(["price_per_kg", "price_low", "price_high"], unit, PRICE) {
        Ok(price) => fields.extend(price.map(|price| ("price_per_kg".into(), price))),
        Err(error) => note(Err(error)),
    }
    match id {
        Ok(id) if errors.is_empty() => Ok(vec![(Key::new(Kind::White, id), fields)]),
        _ => Err(errors),
    }
}

/// The record after the row, checked as a whole.
pub(super) fn complete(
    key: &Key,
    before: &Map<String, Value>,
    mut said: Map<String, Value>,
    library: &Library,
) -> Result<Map<String, Value>, FieldError> {
    rows::keep_number(&mut said, before, "price_per_kg");
    let mut fields = before.clone();
    overlay(&mut fields, said);
    fields.entry("source").or_insert_with(|| json!(OWN));
    fields.entry("low_cure").or_insert_with(|| json!(false));
    for field in ["name", "class"] {
        if !fields.contains_key(field) {
            return Err(FieldError::new(field, "", Problem::Empty));
        }
    }
    let record = Record { key: key.clone(), fields, removed: false, conflicts: Vec::new() };
    check_white(library, &record.read::<WhiteRecord>()?)?;
    Ok(record.fields)
}
