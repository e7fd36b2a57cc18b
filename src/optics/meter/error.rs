//! Errors in a meter's file.

use crate::quantity::Problem;
use serde::{Deserialize, Serialize};

/// An error in a meter's file, with its place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MeterError {
    /// Line, from 1.
    pub line: usize,
    /// Column of the first letter, from 1.
    pub column: usize,
    /// The text at that place, cut to 80 characters.
    pub value: String,
    /// What is wrong with it.
    pub problem: MeterProblem,
}

/// What is wrong in a meter's file. `wording` turns it into a sentence with a way out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "what", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum MeterProblem {
    /// No heading of a colour was found: neither L*, a*, b* nor wavelengths.
    NoColours,
    /// Headings, but no sample under them.
    NoSamples,
    /// A row with fewer or more fields than its headings.
    Ragged {
        /// Number of headings.
        expected: usize,
        /// Number of fields.
        found: usize,
    },
    /// A field that is empty or marked as not measured.
    Missing {
        /// Heading of the field.
        heading: String,
    },
    /// A value that cannot be used.
    Value {
        /// Heading of the field.
        heading: String,
        /// What is wrong with it.
        problem: Problem,
    },
    /// A stated count that the file does not match: it may have been cut off.
    Count {
        /// The keyword of the count.
        keyword: String,
        /// What it states.
        stated: usize,
        /// What the file holds.
        found: usize,
    },
    /// A block without its end keyword.
    Unfinished {
        /// The keyword that is missing.
        keyword: String,
    },
    /// A quoted text without its closing quote.
    OpenQuote,
    /// Two columns for one thing.
    Twice {
        /// Heading of the second.
        heading: String,
    },
    /// Wavelengths that do not rise by one step of at most 20 nm.
    UnevenWavelengths,
    /// Wavelengths that do not reach from 400 to 700 nm.
    ShortSpectrum {
        /// First wavelength, nm.
        from: f64,
        /// Last wavelength, nm.
        to: f64,
    },
    /// More text than is read.
    TooLong {
        /// Most bytes.
        max: usize,
    },
}

impl MeterError {
    /// An error at a place; keeps the first 80 characters of the text there.
    #[must_use]
    pub fn at(line: usize, column: usize, value: &str, problem: MeterProblem) -> Self {
        Self { line, column, value: value.chars().take(80).collect(), problem }
    }
}

impl std::fmt::Display for MeterError {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(out, "line {}, column {}: {:?}: {:?}", self.line, self.column, self.value, self.problem)
    }
}

impl std::error::Error for MeterError {}
