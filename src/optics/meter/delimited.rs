//! Tables with one sample per line, separated by tabs, semicolons, commas or blanks.

use super::column::MeterColumn;
use super::table::{Heading, MeterRow, MeterRows};
use super::tokens::{MeterField, Separator, split};
use super::{MeterError, MeterProblem};

/// Separators, in the order in which they are tried.
const WAYS: [Separator; 4] = [Separator::By('\t'), Separator::By(';'), Separator::By(','), Separator::Blanks];

/// The table of a text with one sample per line, below the first line that has headings of colours.
pub(super) fn rows(text: &str) -> Result<MeterRows, MeterError> {
    let mut found = MeterRows::default();
    let mut lines = (1..).zip(text.lines());
    let table = lines.by_ref().find_map(|(number, line)| {
        found.seen_in(line);
        WAYS.into_iter().find_map(|way| {
            let tokens = split(line, number, way).ok()?;
            has_colours(&tokens).then(|| (way, headings(&tokens, number)))
        })
    });
    let Some((way, headings)) = table else {
        return Err(MeterError::at(1, 1, text.lines().next().unwrap_or_default(), MeterProblem::NoColours));
    };
    for (number, line) in lines {
        let fields = split(line, number, way)?;
        if fields.iter().all(|field| field.text.is_empty()) {
            continue;
        }
        // Programs end rows with empty fields, or omit the last ones if they are not colours.
        let extra = fields.iter().skip(headings.len()).any(|field| !field.text.is_empty());
        if extra {
            let problem = MeterProblem::Ragged { expected: headings.len(), found: fields.len() };
            return Err(MeterError::at(number, 1, line, problem));
        }
        found.push(&headings, MeterRow { line: number, fields });
    }
    Ok(found.with_headings(headings))
}

fn headings(tokens: &[MeterField], line: usize) -> Vec<Heading> {
    tokens.iter().map(|token| Heading::new(token, line)).collect()
}

/// Whether the headings include L*, a* and b*, or a spectrum.
fn has_colours(tokens: &[MeterField]) -> bool {
    let columns: Vec<MeterColumn> = tokens.iter().map(|token| MeterColumn::of(&token.text)).collect();
    let lab = (0..3).all(|which| columns.contains(&MeterColumn::Lab(which)));
    lab || columns.iter().filter(|column| matches!(column, MeterColumn::Reflectance { .. })).count() >= 3
}
