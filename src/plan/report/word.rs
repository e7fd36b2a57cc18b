//! Codes as they are written in JSON.

/// The word by which a code travels in JSON; empty for a code that is not a word there.
pub fn word<T: serde::Serialize>(code: T) -> String {
    match serde_json::to_value(code) {
        Ok(serde_json::Value::String(word)) => word,
        _ => String::new(),
    }
}
