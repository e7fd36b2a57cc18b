//! Converts the text of cells into values and back.

use super::column::{CellKind, TableColumn};
use crate::quantity::{Bound, Day, FieldError, Problem};
use crate::textile::{label, spelling};
use serde_json::{Map, Value, json};

/// Most characters of a cell; more are a sign of a wrong file.
const LONGEST: usize = 2000;

/// The cells of one row, by column.
pub(super) struct RowCells<'a> {
    columns: &'a [String],
    cells: Vec<String>,
    /// Whether a comma is the decimal point.
    decimal_comma: bool,
}

impl<'a> RowCells<'a> {
    pub(super) fn new(columns: &'a [String], cells: Vec<String>, decimal_comma: bool) -> Self {
        Self { columns, cells, decimal_comma }
    }

    /// The text of a column, unchanged; `None` if there is no such column.
    pub(super) fn text(&self, column: &str) -> Option<&str> {
        let at = self.columns.iter().position(|name| name == column)?;
        self.cells.get(at).map(String::as_str)
    }

    /// The text of a column without surrounding space; empty if there is no such column.
    pub(super) fn word(&self, column: &str) -> &str {
        self.text(column).unwrap_or("").trim()
    }

    /// The value of a column, `null` if its cell is empty; `None` if there is no such column.
    pub(super) fn value(
        &self,
        column: &TableColumn,
        all: &[TableColumn],
    ) -> Result<Option<Value>, Vec<FieldError>> {
        let name = column.name;
        let Some(text) = self.text(name) else { return Ok(None) };
        let word = text.trim();
        let bad = |problem| Err(vec![FieldError::new(name, text, problem)]);
        let value = match &column.what {
            CellKind::Id | CellKind::Low | CellKind::High | CellKind::Unit => return Ok(None),
            CellKind::Text | CellKind::Of(_) => {
                if text.chars().count() > LONGEST {
                    return bad(Problem::TooLong { max: LONGEST });
                }
                if text.is_empty() { Value::Null } else { text.into() }
            }
            _ if word.is_empty() => Value::Null,
            CellKind::Day if is_day(word) => word.into(),
            CellKind::Day => return bad(Problem::NotUnderstood),
            CellKind::Flag => match spelling::fold(word).as_str() {
                "yes" | "y" | "true" | "1" | "si" | "s" | "verdadero" => true.into(),
                "no" | "n" | "false" | "0" | "falso" => false.into(),
                _ => return bad(unknown(word, &["yes", "no"])),
            },
            CellKind::Word(accepted) => {
                let folded = spelling::fold(word);
                match accepted.iter().find(|name| spelling::fold(name) == folded) {
                    Some(&name) => name.into(),
                    None => return bad(unknown(word, accepted)),
                }
            }
            CellKind::Number(bound) => self.number(name, *bound).map_err(|error| vec![error])?.into(),
            CellKind::Count(bound) => match self.number(name, *bound).map_err(|error| vec![error])? {
                // The bound has been checked.
                Some(count) if count.fract() == 0.0 => (count as u64).into(),
                _ => return bad(Problem::NotANumber),
            },
            CellKind::Sourced(bound) => {
                let of = |what: fn(&CellKind) -> bool| {
                    let mut same = all.iter().filter(|it| it.path == column.path && what(&it.what));
                    same.next().map_or("", |it| it.name)
                };
                let ends = [of(|it| matches!(it, CellKind::Low)), of(|it| matches!(it, CellKind::High))];
                let unit = match self.word(of(|it| matches!(it, CellKind::Unit))) {
                    "" if bound.unit.is_empty() => "1/kg",
                    "" => bound.unit,
                    unit => unit,
                };
                self.sourced([name, ends[0], ends[1]], unit, *bound).map_err(|error| vec![error])?
            }
            CellKind::Shares => shares(name, word)?,
            CellKind::Colour => json!({ "name": word }),
            CellKind::Readings => match readings(word, self.decimal_comma) {
                Some(readings) => readings,
                None => return bad(Problem::NotUnderstood),
            },
        };
        Ok(Some(value))
    }

    /// A number of a column, checked against its bound; `None` if the cell is empty or there is no such
    /// column.
    fn number(&self, column: &str, bound: Bound) -> Result<Option<f64>, FieldError> {
        let text = self.word(column);
        if text.is_empty() {
            return Ok(None);
        }
        let value = number(text, self.decimal_comma)
            .ok_or_else(|| FieldError::new(column, text, Problem::NotANumber))?;
        let checked = Bound { field: "", ..bound }.check(value);
        checked.map(Some).map_err(|error| FieldError::new(column, text, error.problem))
    }

    /// A number with its range and source, as records have them; without a stated range both ends are the
    /// number.
    ///
    /// `null` if the cell is empty.
    fn sourced(&self, columns: [&str; 3], unit: &str, bound: Bound) -> Result<Value, FieldError> {
        let [value, low, high] = columns;
        let Some(number) = self.number(value, bound)? else { return Ok(Value::Null) };
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
        Ok(json!({ "value": number, "unit": unit, "range": [least, most], "source": source }))
    }
}

fn unknown(word: &str, accepted: &[&str]) -> Problem {
    let nearest = spelling::nearest(word, accepted.iter().copied());
    Problem::Unknown {
        nearest: nearest.into_iter().map(str::to_owned).collect(),
        accepted: accepted.iter().map(|&name| name.to_owned()).collect(),
    }
}

/// The shares of a composition, read as a garment label is.
fn shares(column: &str, text: &str) -> Result<Value, Vec<FieldError>> {
    let named = |error: FieldError| FieldError { field: column.into(), ..error };
    let reading = label::read(text).map_err(|errors| errors.into_iter().map(named).collect::<Vec<_>>())?;
    if reading.body.other_percent > 0.0 || reading.body.shares.is_empty() {
        return Err(vec![FieldError::new(column, text, Problem::NotUnderstood)]);
    }
    let shares = reading.body.shares.iter().map(|(fibre, share)| (fibre.name().into(), json!(share)));
    let mut object = Map::new();
    object.extend(shares);
    Ok(object.into())
}

/// Readings of a probe, each a time in s and a temperature in °C with a space between. Readings are
/// separated by semicolons, line ends, or commas followed by a space.
fn readings(text: &str, decimal_comma: bool) -> Option<Value> {
    let text = text.replace([';', '\n'], ", ");
    let readings = text.split(", ").map(str::trim).filter(|reading| !reading.is_empty());
    let reading = |reading: &str| {
        let mut words = reading.split_whitespace().map(|word| number(word, decimal_comma));
        match (words.next()?, words.next()?, words.next()) {
            (Some(seconds), Some(temp), None) => Some(json!({ "seconds": seconds, "temp_c": temp })),
            _ => None,
        }
    };
    readings.map(reading).collect::<Option<Vec<_>>>().map(Value::Array)
}

/// A value as the text of its column.
pub(super) fn text_of(column: &TableColumn, fields: &Map<String, Value>) -> String {
    let Some(value) = at_path(fields, column.path) else { return String::new() };
    let end = |index: usize| value["range"][index].as_f64().map(cell);
    let text = match &column.what {
        CellKind::Id => None,
        CellKind::Word(_) => value.as_str().filter(|word| *word != "unknown").map(str::to_owned),
        CellKind::Text | CellKind::Of(_) | CellKind::Day => value.as_str().map(guard),
        CellKind::Flag => value.as_bool().map(|yes| if yes { "yes" } else { "no" }.to_owned()),
        CellKind::Number(_) | CellKind::Count(_) => value.as_f64().map(cell),
        CellKind::Sourced(_) => value["value"].as_f64().map(cell),
        CellKind::Low => end(0),
        CellKind::High => end(1),
        CellKind::Unit => value["unit"].as_str().map(guard),
        CellKind::Colour => value["name"].as_str().map(guard),
        CellKind::Readings => value.as_array().map(|readings| {
            let part = |reading: &Value, name: &str| cell(reading[name].as_f64().unwrap_or_default());
            let reading = |it: &Value| format!("{} {}", part(it, "seconds"), part(it, "temp_c"));
            readings.iter().map(reading).collect::<Vec<_>>().join("; ")
        }),
        CellKind::Shares => value.as_object().map(|shares| {
            let share = |(fibre, share): (&String, &Value)| {
                format!("{}% {fibre}", cell(share.as_f64().unwrap_or_default()))
            };
            shares.iter().map(share).collect::<Vec<_>>().join(" ")
        }),
    };
    text.unwrap_or_default()
}

/// The value at a path, `zones/0/length`.
pub(super) fn at_path<'a>(fields: &'a Map<String, Value>, path: &str) -> Option<&'a Value> {
    let (field, rest) = path.split_once('/').map_or((path, None), |(field, rest)| (field, Some(rest)));
    let value = fields.get(field)?;
    rest.map_or(Some(value), |rest| value.pointer(&format!("/{rest}")))
}

/// Source of a number that a shop typed in without stating one.
pub(super) const OWN: &str = "the shop's own record";

/// A number as people type it. A comma that may be a decimal point or a thousands separator is refused.
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
fn cell(number: f64) -> String {
    number.to_string()
}

/// Whether a text is a day of the calendar in full, `2028-02-29`.
fn is_day(text: &str) -> bool {
    let dashed =
        |(at, byte): (usize, u8)| if at == 4 || at == 7 { byte == b'-' } else { byte.is_ascii_digit() };
    text.len() == 10 && text.bytes().enumerate().all(dashed) && Day::read(text).is_some()
}

/// Prefixes an apostrophe to text that a spreadsheet would take for a formula. Source: OWASP, "CSV
/// injection": cells that begin with `= + - @`, tab or carriage return.
pub(super) fn guard(text: &str) -> String {
    if formula(text) { format!("'{text}") } else { text.to_owned() }
}

/// The text of a cell without the apostrophe of [`guard`].
pub(super) fn unguard(text: &str) -> &str {
    text.strip_prefix('\'').filter(|text| formula(text)).unwrap_or(text)
}

/// Whether a text begins like a formula behind any apostrophes.
fn formula(text: &str) -> bool {
    text.trim_start_matches('\'').starts_with(['=', '+', '-', '@', '\t', '\r'])
}
