//! From the rows of a file to its samples.

use super::column::{MeterColumn, ReflectanceScale};
use super::reflectance::BandGrid;
use super::tokens::MeterField;
use super::{MeterError, MeterFile, MeterNote, MeterProblem, MeterSample, StatedViewing};
use crate::numerics::sorting::sorted;
use crate::optics::Lab;
use crate::quantity::{Bound, Problem};

/// A heading with its meaning and its place.
#[derive(Clone, Debug)]
pub(super) struct Heading {
    text: String,
    column: MeterColumn,
    line: usize,
    at: usize,
}

impl Heading {
    pub(super) fn new(token: &MeterField, line: usize) -> Self {
        Self { text: token.text.clone(), column: MeterColumn::of(&token.text), line, at: token.column }
    }
}

/// The fields of one sample.
#[derive(Clone, Debug)]
pub(super) struct MeterRow {
    pub line: usize,
    pub fields: Vec<MeterField>,
}

/// Rows under their headings, and what the file states about light and observer.
#[derive(Default)]
pub(super) struct MeterRows {
    tables: Vec<(Vec<Heading>, Vec<MeterRow>)>,
    seen: StatedViewing,
}

impl MeterRows {
    pub(super) fn push(&mut self, headings: &[Heading], row: MeterRow) {
        let same = |last: &[Heading]| last.first().map(|h| h.line) == headings.first().map(|h| h.line);
        match self.tables.last_mut() {
            Some((last, rows)) if same(last) => rows.push(row),
            _ => self.tables.push((headings.to_vec(), vec![row])),
        }
    }

    /// Keeps the headings even if no row follows them.
    pub(super) fn with_headings(mut self, headings: Vec<Heading>) -> Self {
        if self.tables.is_empty() {
            self.tables.push((headings, Vec::new()));
        }
        self
    }

    /// Records the light and the observer if a line states them.
    pub(super) fn seen_in(&mut self, line: &str) {
        let upper = line.to_uppercase();
        if !["ILLUMIN", "OBSERVER", "WEIGHTING_FUNCTION", "D65", "D50"]
            .iter()
            .any(|word| upper.contains(word))
        {
            return;
        }
        for word in upper.split(|letter: char| !letter.is_alphanumeric()) {
            match word {
                "D50" | "D55" | "D65" | "D75" | "F2" | "F7" | "F11" | "F12" => {
                    self.seen.illuminant.get_or_insert_with(|| word.into());
                }
                // A single A or C is a light only if the line mentions light.
                "A" | "C" if upper.contains("ILLUMIN") => {
                    self.seen.illuminant.get_or_insert_with(|| word.into());
                }
                // A single figure is an observer only if the line mentions one.
                "2" | "2DEG" | "10" | "10DEG" if upper.contains("OBSERVER") || upper.contains('°') => {
                    let degrees = if word.starts_with("10") { 10 } else { 2 };
                    self.seen.observer.get_or_insert(degrees);
                }
                _ => {}
            }
        }
    }
}

/// Accepted reflectance as a fraction: slightly below zero by the noise of a meter, above 1 with
/// brightener.
const REFLECTANCE: Bound = Bound { field: "reflectance", min: -0.05, max: 1.6, unit: "" };
/// Largest reflectance of a file that is still taken for a fraction.
const MOST_OF_A_FRACTION: f64 = 2.0;

/// The samples of all rows.
pub(super) fn samples(rows: &MeterRows) -> Result<MeterFile, MeterError> {
    let mut file = MeterFile { samples: Vec::new(), seen: rows.seen.clone(), notes: Vec::new() };
    let mut colourless = None;
    for (headings, rows) in &rows.tables {
        let Some(layout) = Layout::of(headings)? else {
            // A file may hold other tables besides its colours.
            colourless = colourless.or(headings.first());
            continue;
        };
        let scale = layout.scale(rows)?;
        for row in rows {
            let sample = layout.sample(row, scale, &mut file)?;
            file.samples.push(sample);
        }
    }
    if let (Some(heading), true) = (colourless, file.samples.is_empty()) {
        return Err(MeterError::at(heading.line, heading.at, &heading.text, MeterProblem::NoColours));
    }
    if file.samples.is_empty() {
        let first = rows.tables.first().and_then(|(headings, _)| headings.first());
        let (line, column) = first.map_or((1, 1), |heading| (heading.line, heading.at));
        return Err(MeterError::at(line, column, "", MeterProblem::NoSamples));
    }
    Ok(file)
}

/// The meaning of each field of a row.
struct Layout<'a> {
    headings: &'a [Heading],
    lab: Option<[usize; 3]>,
    spectrum: Option<(BandGrid, Vec<usize>)>,
    name: Option<usize>,
}

impl<'a> Layout<'a> {
    /// The layout of these headings; `None` if none of them is a colour.
    fn of(headings: &'a [Heading]) -> Result<Option<Self>, MeterError> {
        let mut lab = [None; 3];
        let mut bands: Vec<(f64, usize)> = Vec::new();
        for (index, heading) in headings.iter().enumerate() {
            let twice = match heading.column {
                MeterColumn::Lab(which) => lab.get_mut(which).is_some_and(|had| had.replace(index).is_some()),
                MeterColumn::Reflectance { wavelength, .. } => {
                    let had = bands.iter().any(|(other, _)| (other - wavelength).abs() < 0.5);
                    bands.push((wavelength, index));
                    had
                }
                _ => false,
            };
            if twice {
                let problem = MeterProblem::Twice { heading: heading.text.clone() };
                return Err(MeterError::at(heading.line, heading.at, &heading.text, problem));
            }
        }
        let bands = sorted(bands, &|a, b| a.0.total_cmp(&b.0));
        let place = bands.first().and_then(|(_, index)| headings.get(*index));
        let spectrum = match place {
            None => None,
            Some(heading) => {
                let wavelengths: Vec<f64> = bands.iter().map(|(wavelength, _)| *wavelength).collect();
                let grid = BandGrid::of(&wavelengths)
                    .map_err(|problem| MeterError::at(heading.line, heading.at, &heading.text, problem))?;
                Some((grid, bands.iter().map(|(_, index)| *index).collect()))
            }
        };
        let lab = match lab {
            [Some(l), Some(a), Some(b)] => Some([l, a, b]),
            _ => None,
        };
        if lab.is_none() && spectrum.is_none() {
            return Ok(None);
        }
        let position = |wanted: MeterColumn| headings.iter().position(|heading| heading.column == wanted);
        let name = position(MeterColumn::Name).or_else(|| position(MeterColumn::Id));
        Ok(Some(Self { headings, lab, spectrum, name }))
    }

    /// Whether the reflectances of these rows are percent or fractions, according to their headings or
    /// else their largest value.
    fn scale(&self, rows: &[MeterRow]) -> Result<Option<MeterNote>, MeterError> {
        let Some((_, bands)) = &self.spectrum else { return Ok(None) };
        let percent = |index: &usize| {
            let column = self.headings.get(*index).map(|heading| heading.column);
            matches!(column, Some(MeterColumn::Reflectance { scale: ReflectanceScale::Percent, .. }))
        };
        if bands.iter().any(percent) {
            return Ok(Some(MeterNote::TakenAsPercent));
        }
        let mut largest = 0.0_f64;
        for row in rows {
            for &index in bands {
                largest = largest.max(self.number(row, index)?);
            }
        }
        Ok(Some(if largest > MOST_OF_A_FRACTION {
            MeterNote::TakenAsPercent
        } else {
            MeterNote::TakenAsFraction
        }))
    }

    /// The number of a field.
    fn number(&self, row: &MeterRow, index: usize) -> Result<f64, MeterError> {
        let heading = self.headings.get(index).map(|heading| heading.text.clone()).unwrap_or_default();
        let end = || row.fields.last().map_or(1, |last| last.column + last.text.chars().count());
        let Some(field) = row.fields.get(index) else {
            return Err(MeterError::at(row.line, end(), "", MeterProblem::Missing { heading }));
        };
        let problem = match field.text.to_lowercase().as_str() {
            "" | "-" | "--" | "n/a" | "na" | "nan" => MeterProblem::Missing { heading },
            _ => match field.text.replace(',', ".").replace('−', "-").parse::<f64>() {
                Ok(value) if value.is_finite() => return Ok(value),
                _ => MeterProblem::Value { heading, problem: Problem::NotANumber },
            },
        };
        Err(MeterError::at(row.line, field.column, &field.text, problem))
    }

    /// An error about the value of a field.
    fn refused(&self, row: &MeterRow, index: usize, problem: Problem) -> MeterError {
        let heading = self.headings.get(index).map(|heading| heading.text.clone()).unwrap_or_default();
        let field = row.fields.get(index);
        let (column, text) = field.map_or((1, ""), |field| (field.column, field.text.as_str()));
        MeterError::at(row.line, column, text, MeterProblem::Value { heading, problem })
    }

    fn sample(
        &self,
        row: &MeterRow,
        scale: Option<MeterNote>,
        file: &mut MeterFile,
    ) -> Result<MeterSample, MeterError> {
        let mut note = |note: MeterNote| {
            if !file.notes.contains(&note) {
                file.notes.push(note);
            }
        };
        let measured = match &self.spectrum {
            None => None,
            Some((grid, bands)) => {
                scale.into_iter().for_each(&mut note);
                let unit = if scale == Some(MeterNote::TakenAsPercent) { 0.01 } else { 1.0 };
                let mut values = Vec::with_capacity(bands.len());
                for &index in bands {
                    let value = REFLECTANCE
                        .check(unit * self.number(row, index)?)
                        .map_err(|error| self.refused(row, index, error.problem))?;
                    values.push(value);
                }
                Some((grid.lab(&values), grid.spectrum(&values)))
            }
        };
        let stated = match (self.lab, &measured) {
            (Some(_), Some(_)) if !file.seen.is_ours() => None,
            (Some([l, a, b]), _) => {
                let lab = Lab::new(self.number(row, l)?, self.number(row, a)?, self.number(row, b)?);
                Some(lab.check().map_err(|error| self.refused(row, l, error.problem))?)
            }
            (None, _) => None,
        };
        let lab = match (stated, &measured) {
            (Some(lab), _) => {
                if file.seen.is_other() {
                    note(MeterNote::OtherViewing);
                } else if !file.seen.is_ours() {
                    note(MeterNote::ViewingNotStated);
                }
                lab
            }
            (None, Some((lab, _))) => {
                note(MeterNote::FromSpectra);
                *lab
            }
            (None, None) => return Err(MeterError::at(row.line, 1, "", MeterProblem::NoColours)),
        };
        let named = self.name.and_then(|index| row.fields.get(index)).map(|field| field.text.clone());
        let name =
            named.filter(|name| !name.is_empty()).unwrap_or_else(|| (file.samples.len() + 1).to_string());
        Ok(MeterSample { name, lab, spectrum: measured.map(|(_, spectrum)| spectrum), line: row.line })
    }
}
