//! What a colour meter wrote into a file: CGATS.17 text, or a table with commas, semicolons or tabs.
//!
//! Every row is a sample: a name, and either its L*, a*, b* or its reflectance at wavelengths that reach from 400 nm or
//! below to 700 nm or above. Which column is which is told by its heading (`LAB_L`, `L*`, `SPECTRAL_NM380`, `SPEC_380`,
//! `nm380`, `380 nm`, …); all other columns are passed over.
//!
//! A spectrum becomes a Lab for D65 and the 10° observer. Where a file states Lab for that pair, or has no spectrum,
//! its own Lab is taken; a Lab for another light or observer is handed on with a note, because it cannot be turned
//! into ours without the spectrum. Nothing is guessed silently: see [`MeterNote`] and [`MeterError`].
//!
//! Source of the format: ANSI CGATS.17 / ISO 28178 as public implementations read and write it; the standards
//! themselves were not read.
mod cgats;
mod column;
mod delimited;
mod error;
mod reflectance;
mod table;
mod tokens;
mod weights;

pub use error::{MeterError, MeterProblem};

use super::{Lab, Spectrum};
use serde::{Deserialize, Serialize};

/// Most text that is read, in bytes.
pub const LONGEST: usize = 8_000_000;

/// One measured sample.
#[derive(Clone, Debug, PartialEq)]
pub struct MeterSample {
    /// Its name, or its number where it has none.
    pub name: String,
    /// Its colour.
    pub lab: Lab,
    /// Its reflectance, where the file holds it.
    pub spectrum: Option<Spectrum>,
    /// Line of the file it stands on, from 1.
    pub line: usize,
}

/// What a file states about light and observer.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct StatedViewing {
    /// The illuminant, `D65`; absent where none is stated.
    pub illuminant: Option<String>,
    /// The observer, 2 or 10 degrees; absent where none is stated.
    pub observer: Option<u8>,
}

impl StatedViewing {
    /// True if the file says that its Lab are for D65 and 10°.
    #[must_use]
    pub fn is_ours(&self) -> bool {
        self.illuminant.as_deref() == Some("D65") && self.observer == Some(10)
    }

    /// True if the file says that its Lab are for another light or another observer.
    #[must_use]
    pub fn is_other(&self) -> bool {
        self.illuminant.as_deref().is_some_and(|name| name != "D65")
            || self.observer.is_some_and(|ten| ten != 10)
    }
}

/// What the reader had to decide.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MeterNote {
    /// Lab are for another light or observer and were taken as they stand: compare them only with each other.
    OtherViewing,
    /// No light or observer is stated; Lab were taken as D65/10°.
    ViewingNotStated,
    /// Lab were computed from the spectra.
    FromSpectra,
    /// Reflectances were taken as percent.
    TakenAsPercent,
    /// Reflectances were taken as fractions.
    TakenAsFraction,
}

/// Everything a file holds that bears on colour.
#[derive(Clone, Debug, PartialEq)]
pub struct MeterFile {
    /// The samples, in the order of the file; at least one.
    pub samples: Vec<MeterSample>,
    /// What the file states about light and observer.
    pub seen: StatedViewing,
    /// What had to be decided.
    pub notes: Vec<MeterNote>,
}

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
