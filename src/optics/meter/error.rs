use crate::quantity::Problem;
use serde::{Deserialize, Serialize};

/// Something in a meter's file that cannot be read: where it stands, what stands there, what is wrong.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MeterError {
    /// Line, from 1.
    pub line: usize,
    /// Column of the first letter, from 1.
    pub column: usize,
    /// What stands there, cut to 80 characters.
    pub value: String,
    /// What is wrong with it.
    pub problem: MeterProblem,
}

/// What is wrong in a meter's file. `wording` says it and what to do.
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
        /// Fields that the headings ask for.
        expected: usize,
        /// Fields that stand there.
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
    /// A count that the file states and does not keep: it may have been cut short.
    Count {
        /// The keyword of the count.
        keyword: String,
        /// What it states.
        stated: usize,
        /// What the file holds.
        found: usize,
    },
    /// A block without its end.
    Unfinished {
        /// The keyword that is missing.
        keyword: String,
    },
    /// A text in quotes without its end.
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
    /// An error at a place; keeps the first 80 characters of what stands there.
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
