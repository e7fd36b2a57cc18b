//! Reads the text of a file, whichever of the two layouts it has.

use super::{MeterError, MeterFile, MeterProblem, cgats, delimited, table};

/// Most text that is read, in bytes.
pub const LONGEST: usize = 8_000_000;

impl MeterFile {
    /// Reads the text of a file.
    ///
    /// # Errors
    /// The first thing that cannot be read, with its line and column.
    pub fn read(text: &str) -> Result<Self, MeterError> {
        if text.len() > LONGEST {
            return Err(MeterError::at(1, 1, "", MeterProblem::TooLong { max: LONGEST }));
        }
        let text = text.trim_start_matches('\u{feff}');
        let rows = if cgats::is_cgats(text) { cgats::rows(text)? } else { delimited::rows(text)? };
        table::samples(&rows)
    }
}
