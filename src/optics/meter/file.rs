//! What a meter's file holds.

use crate::optics::{Lab, Spectrum};
use serde::{Deserialize, Serialize};

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
