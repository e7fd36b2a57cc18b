//! Two versions of a record compared, and fields laid over others.

use serde_json::{Map, Value};

/// One value that differs between two versions of a record.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldDifference {
    /// Its path in the record: `zones[0].length`.
    pub path: String,
    /// The value before, if there was one.
    pub before: Option<Value>,
    /// The value after, if there is one.
    pub after: Option<Value>,
}

/// Whether two values mean the same: 1 and 1.0 do, and so do `null` and a missing field.
#[must_use]
pub fn same(a: &Value, b: &Value) -> bool {
    match (a, b) {
        // An integer and a float of the same value are different `Number`s.
        (Value::Number(a), Value::Number(b)) => {
            a == b || a.as_f64().zip(b.as_f64()).is_some_and(|(a, b)| a.total_cmp(&b).is_eq())
        }
        (Value::Array(a), Value::Array(b)) => a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same(a, b)),
        (Value::Object(a), Value::Object(b)) => {
            let within = |a: &Map<String, Value>, b: &Map<String, Value>| {
                a.iter().all(|(name, value)| same(value, b.get(name).unwrap_or(&Value::Null)))
            };
            within(a, b) && within(b, a)
        }
        _ => a == b,
    }
}

/// The differences between two versions, value by value. A number with its unit and source is one value.
#[must_use]
pub fn differences(before: &Map<String, Value>, after: &Map<String, Value>) -> Vec<FieldDifference> {
    let mut found = Vec::new();
    objects("", before, after, &mut found);
    found
}

fn objects(
    path: &str,
    before: &Map<String, Value>,
    after: &Map<String, Value>,
    found: &mut Vec<FieldDifference>,
) {
    let gone = before.keys().filter(|name| !after.contains_key(*name));
    for name in after.keys().chain(gone) {
        let path = if path.is_empty() { name.clone() } else { format!("{path}.{name}") };
        values(&path, before.get(name), after.get(name), found);
    }
}

fn values(path: &str, before: Option<&Value>, after: Option<&Value>, found: &mut Vec<FieldDifference>) {
    let some = |value: Option<&Value>| value.filter(|value| !value.is_null()).cloned();
    match (before, after) {
        (Some(Value::Object(before)), Some(Value::Object(after))) if !after.contains_key("unit") => {
            objects(path, before, after, found);
        }
        (Some(Value::Array(before)), Some(Value::Array(after))) if before.len() == after.len() => {
            for (index, (before, after)) in before.iter().zip(after).enumerate() {
                values(&format!("{path}[{index}]"), Some(before), Some(after), found);
            }
        }
        (before, after) => {
            let (before, after) = (some(before), some(after));
            let (a, b) = (before.as_ref().unwrap_or(&Value::Null), after.as_ref().unwrap_or(&Value::Null));
            if !same(a, b) {
                found.push(FieldDifference { path: path.into(), before, after });
            }
        }
    }
}

/// Writes fields over others; `null` removes a field.
pub(in crate::library) fn overlay(fields: &mut Map<String, Value>, over: Map<String, Value>) {
    for (name, value) in over {
        if value.is_null() {
            fields.remove(&name);
        } else {
            fields.insert(name, value);
        }
    }
}
