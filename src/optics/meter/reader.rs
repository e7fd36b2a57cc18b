//! Reads the text of a file in either of the two layouts.

use super::{MeterError, MeterFile, MeterProblem, cgats, delimited, table};

/// Largest text that is read, in bytes.
pub const LONGEST: usize = 8_000_000;

impl MeterFile {
    /// Reads the text of a file.
    ///
    /// # Errors
    /// [`MeterError`] with the line and column of the first thing that cannot be read.
    pub fn read(text: &str) -> Result<Self, MeterError> {
        if text.len() > LONGEST {
            return Err(MeterError::at(1, 1, "", MeterProblem::TooLong { max: LONGEST }));
        }
        let text = text.trim_start_matches('\u{feff}');
        let rows = if cgats::is_cgats(text) { cgats::rows(text)? } else { delimited::rows(text)? };
        table::samples(&rows)
    }
}
