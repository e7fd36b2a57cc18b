//! Tables in the layout of CGATS.17.

use super::table::{Heading, MeterRow, MeterRows};
use super::tokens::{MeterField, Separator, split};
use super::{MeterError, MeterProblem};

/// Whether a text has the layout of CGATS.17: keywords, a data format, data.
pub(super) fn is_cgats(text: &str) -> bool {
    text.lines().map(str::trim_start).any(|line| line.starts_with("BEGIN_DATA_FORMAT"))
        || text.lines().next().is_some_and(|line| line.trim_start().starts_with("CGATS"))
}

/// A count that the file states, and its place.
struct Stated {
    count: usize,
    line: usize,
    column: usize,
    text: String,
}

#[derive(PartialEq)]
enum CgatsPart {
    Header,
    Format,
    Data,
}

/// The tables of a CGATS.17 text, one below the other.
///
/// Fields are separated by blanks; a row may extend over several lines. A line with tabs is split at the
/// tabs if only this gives the right number of fields.
pub(super) fn rows(text: &str) -> Result<MeterRows, MeterError> {
    let mut found = MeterRows::default();
    let mut headings: Vec<Heading> = Vec::new();
    let (mut fields, mut sets): (Option<Stated>, Option<Stated>) = (None, None);
    let mut part = CgatsPart::Header;
    let mut pending: Vec<MeterField> = Vec::new();
    let (mut began, mut sets_found, mut last) = (0, 0, 1);
    for (number, line) in (1..).zip(text.lines()) {
        last = number;
        let tokens = split(line, number, Separator::Blanks)?;
        let Some(first) = tokens.first() else { continue };
        match (first.text.as_str(), &part) {
            ("BEGIN_DATA_FORMAT", _) => {
                headings.clear();
                part = CgatsPart::Format;
            }
            ("END_DATA_FORMAT", _) => {
                part = CgatsPart::Header;
                keep(fields.take(), "NUMBER_OF_FIELDS", headings.len())?;
            }
            ("BEGIN_DATA", _) => {
                part = CgatsPart::Data;
                sets_found = 0;
            }
            ("END_DATA", _) => {
                ragged(&pending, began, headings.len())?;
                keep(sets.take(), "NUMBER_OF_SETS", sets_found)?;
                part = CgatsPart::Header;
            }
            (_, CgatsPart::Format) => headings.extend(tokens.iter().map(|token| Heading::new(token, number))),
            (_, CgatsPart::Data) => {
                if pending.is_empty() {
                    began = number;
                }
                pending.extend(by_tabs(line, number, headings.len(), &tokens)?);
                if pending.len() > headings.len() {
                    return ragged(&pending, began, headings.len()).map(|()| found);
                }
                if pending.len() == headings.len() {
                    sets_found += 1;
                    found.push(&headings, MeterRow { line: began, fields: std::mem::take(&mut pending) });
                }
            }
            ("NUMBER_OF_FIELDS", CgatsPart::Header) => fields = stated(&tokens, number),
            ("NUMBER_OF_SETS", CgatsPart::Header) => sets = stated(&tokens, number),
            (_, CgatsPart::Header) => found.seen_in(line),
        }
    }
    match part {
        CgatsPart::Header => Ok(found.with_headings(headings)),
        CgatsPart::Format => Err(unfinished("END_DATA_FORMAT", last)),
        CgatsPart::Data => Err(unfinished("END_DATA", last)),
    }
}

fn unfinished(keyword: &str, line: usize) -> MeterError {
    MeterError::at(line, 1, "", MeterProblem::Unfinished { keyword: keyword.into() })
}

/// The fields of a data line, split at blanks, or at tabs if only these give as many fields as headings.
fn by_tabs(
    line: &str,
    number: usize,
    wanted: usize,
    blanks: &[MeterField],
) -> Result<Vec<MeterField>, MeterError> {
    if blanks.len() != wanted && line.contains('\t') {
        let tabs = split(line, number, Separator::By('\t'))?;
        if tabs.len() == wanted {
            return Ok(tabs);
        }
    }
    Ok(blanks.to_vec())
}

fn stated(tokens: &[MeterField], line: usize) -> Option<Stated> {
    let [_, count, ..] = tokens else { return None };
    let text = count.text.clone();
    Some(Stated { count: text.parse().ok()?, line, column: count.column, text })
}

/// Checks a stated count.
fn keep(stated: Option<Stated>, keyword: &str, found: usize) -> Result<(), MeterError> {
    match stated {
        Some(Stated { count, line, column, text }) if count != found => {
            let problem = MeterProblem::Count { keyword: keyword.into(), stated: count, found };
            Err(MeterError::at(line, column, &text, problem))
        }
        _ => Ok(()),
    }
}

/// Checks that no fields of an incomplete row are left.
fn ragged(pending: &[MeterField], line: usize, expected: usize) -> Result<(), MeterError> {
    let Some(first) = pending.first() else { return Ok(()) };
    let problem = MeterProblem::Ragged { expected, found: pending.len() };
    Err(MeterError::at(line, first.column, &first.text, problem))
}
