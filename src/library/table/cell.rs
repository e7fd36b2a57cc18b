//! Cells: from text to values and back.

use crate::quantity::{Bound, FieldError, Problem};
use crate::textile::spelling;
use serde_json::{Map, Value, json};

/// Most letters of a cell; longer ones are a wrong file.
const LONGEST: usize = 2000;

/// One row's cells by column, and what is wrong with them.
pub(super) struct Cells<'a> {
    columns: &'a [String],
    cells: Vec<String>,
    /// Whether a comma stands for the decimal point.
    decimal_comma: bool,
}

impl<'a> Cells<'a> {
    pub(super) fn new(columns: &'a [String], cells: Vec<String>, decimal_comma: bool) -> Self {
        Self { columns, cells, decimal_comma }
    }

    /// The text of a column as it stands; nothing if there is no such column.
    pub(super) fn text(&self, column: &str) -> Option<&str> {
        let at = self.columns.iter().position(|name| name == column)?;
        self.cells.get(at).map(String::as_str)
    }

    /// The text of a column without space around it; empty if there is none.
    pub(super) fn word(&self, column: &str) -> &str {
        self.text(column).unwrap_or("").trim()
    }

    /// Sets a field of text from a column of the same name.
    pub(super) fn put_text(&self, fields: &mut Map<String, Value>, column: &str) -> Result<(), FieldError> {
        let Some(text) = self.text(column) else { return Ok(()) };
        if text.chars().count() > LONGEST {
            return Err(FieldError::new(column, text, Problem::TooLong { max: LONGEST }));
        }
        fields.insert(column.into(), if text.is_empty() { Value::Null } else { json!(text) });
        Ok(())
    }

    /// A number of a column within its bound; nothing if the cell is empty or there is no such column.
    pub(super) fn number(&self, column: &str, bound: Bound) -> Result<Option<f64>, FieldError> {
        let text = self.word(column);
        if text.is_empty() {
            return Ok(None);
        }
        let value = number(text, self.decimal_comma)
            .ok_or_else(|| FieldError::new(column, text, Problem::NotANumber))?;
        let checked = Bound { field: "", ..bound }.check(value);
        checked.map(Some).map_err(|error| FieldError::new(column, text, error.problem))
    }

    /// Sets a field of a number from a column of the same name.
    pub(super) fn put_number(
        &self,
        fields: &mut Map<String, Value>,
        column: &str,
        bound: Bound,
    ) -> Result<(), FieldError> {
        if self.text(column).is_some() {
            fields.insert(column.into(), json!(self.number(column, bound)?));
        }
        Ok(())
    }

    /// Sets a field of one of these words.
    pub(super) fn put_word(
        &self,
        fields: &mut Map<String, Value>,
        column: &str,
        accepted: &[&str],
    ) -> Result<(), FieldError> {
        if self.text(column).is_none() {
            return Ok(());
        }
        let word = self.word(column);
        let folded = spelling::fold(word);
        let known = accepted.iter().find(|name| spelling::fold(name) == folded);
        let value = match known {
            _ if word.is_empty() => Value::Null,
            Some(name) => json!(name),
            None => {
                let nearest = spelling::nearest(word, accepted.iter().copied());
                let nearest = nearest.into_iter().map(str::to_owned).collect();
                let accepted = accepted.iter().map(|&name| name.to_owned()).collect();
                return Err(FieldError::new(column, word, Problem::Unknown { nearest, accepted }));
            }
        };
        fields.insert(column.into(), value);
        Ok(())
    }

    /// Sets a field of yes or no.
    pub(super) fn put_flag(&self, fields: &mut Map<String, Value>, column: &str) -> Result<(), FieldError> {
        if self.text(column).is_none() {
            return Ok(());
        }
        let value = match spelling::fold(self.word(column)).as_str() {
            "" => Value::Null,
            "yes" | "y" | "true" | "1" | "si" | "s" | "verdadero" => true.into(),
            "no" | "n" | "false" | "0" | "falso" => false.into(),
            _ => {
                let accepted = vec!["yes".into(), "no".into()];
                let problem = Problem::Unknown { nearest: Vec::new(), accepted };
                return Err(FieldError::new(column, self.word(column), problem));
            }
        };
        fields.insert(column.into(), value);
        Ok(())
    }

    /// Sets a field of a day.
    pub(super) fn put_day(&self, fields: &mut Map<String, Value>, column: &str) -> Result<(), FieldError> {
        let Some(text) = self.text(column) else { return Ok(()) };
        let text = text.trim();
        if !text.is_empty() && !is_day(text) {
            return Err(FieldError::new(column, text, Problem::NotUnderstood));
        }
        fields.insert(column.into(), if text.is_empty() { Value::Null } else { json!(text) });
        Ok(())
    }

    /// A number with its range and source, as records have them: a range that is not said is the number alone.
    ///
    /// Nothing if the file has no such column; `null` if the cell is empty.
    pub(super) fn sourced(
        &self,
        columns: [&str; 3],
        unit: &str,
        bound: Bound,
    ) -> Result<Option<Value>, FieldError> {
        let [value, low, high] = columns;
        if self.text(value).is_none() {
            return Ok(None);
        }
        let Some(number) = self.number(value, bound)? else { return Ok(Some(Value::Null)) };
        let least = self.number(low, bound)?.unwrap_or(number);
        let most = self.number(high, bound)?.unwrap_or(number);
        for (column, end, fits) in [(low, least, least <= number), (high, most, number <= most)] {
            if !fits {
                let problem = Problem::Contradiction { with: value.into() };
                return Err(FieldError::new(column, end.to_string(), problem));
            }
        }
        let source = match self.word("source") {
            "" => OWN,
            source => source,
        };
        Ok(Some(json!({ "value": number, "unit": unit, "range": [least, most], "source": source })))
    }
}

/// Source of a number that the shop typed in without naming one.
pub(super) const OWN: &str = "the shop's own record";

/// A number as people type it. A comma that may be a decimal point or group thousands is not guessed at.
fn number(text: &str, decimal_comma: bool) -> Option<f64> {
    let plain = |text: &str| text.chars().all(|letter| letter.is_ascii_digit() || "+-.eE".contains(letter));
    let text = match text.split_once(',') {
        None => text.to_owned(),
        Some((_, behind)) if !decimal_comma && behind.len() == 3 => return None,
        Some((before, behind)) => format!("{before}.{behind}"),
    };
    (plain(&text) && text.matches('.').count() < 2).then(|| text.parse().ok()).flatten()
}

/// A number as a cell: the shortest text that reads back to it.
pub(super) fn cell(number: f64) -> String {
    number.to_string()
}

/// Whether a text is a day of the calendar, `2028-02-29`.
fn is_day(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let [year, month, day] = parts.as_slice() else { return false };
    let digits = |part: &str, count| part.len() == count && part.bytes().all(|byte| byte.is_ascii_digit());
    if !digits(year, 4) || !digits(month, 2) || !digits(day, 2) {
        return false;
    }
    let [Ok(year), Ok(month), Ok(day)] = [year, month, day].map(|part| part.parse::<u32>()) else {
        return false;
    };
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    let last = match month {
        2 if leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => return false,
    };
    (1..=last).contains(&day)
}

/// Text that a spreadsheet would take for a formula gets an apostrophe before it.
/// Source: OWASP, "CSV injection": cells that begin with `= + - @`, tab or carriage return.
pub(super) fn guard(text: &str) -> String {
    if formula(text) { format!("'{text}") } else { text.to_owned() }
}

/// The text of a cell without the apostrophe of [`guard`].
pub(super) fn unguard(text: &str) -> &str {
    text.strip_prefix('\'').filter(|text| formula(text)).unwrap_or(text)
}

/// Whether a text, less any apostrophes before it, begins like a formula.
fn formula(text: &str) -> bool {
    text.trim_start_matches('\'').starts_with(['=', '+', '-', '@', '\t', '\r'])
}
