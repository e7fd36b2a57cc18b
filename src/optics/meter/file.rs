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
    /// Its line in the file, from 1.
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
    /// Whether the file states that its Lab values are for D65 and 10°.
    #[must_use]
    pub fn is_ours(&self) -> bool {
        self.illuminant.as_deref() == Some("D65") && self.observer == Some(10)
    }

    /// Whether the file states that its Lab values are for another light or observer.
    #[must_use]
    pub fn is_other(&self) -> bool {
        self.illuminant.as_deref().is_some_and(|name| name != "D65")
            || self.observer.is_some_and(|ten| ten != 10)
    }
}

/// A decision of the reader.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MeterNote {
    /// The Lab values are for another light or observer and were taken unchanged: compare them only with
    /// each other.
    OtherViewing,
    /// No light or observer is stated; the Lab values were taken as D65/10°.
    ViewingNotStated,
    /// The Lab values were computed from the spectra.
    FromSpectra,
    /// Reflectances were taken as percent.
    TakenAsPercent,
    /// Reflectances were taken as fractions.
    TakenAsFraction,
}

/// The colours of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct MeterFile {
    /// The samples, in the order of the file; at least one.
    pub samples: Vec<MeterSample>,
    /// What the file states about light and observer.
    pub seen: StatedViewing,
    /// Decisions of the reader.
    pub notes: Vec<MeterNote>,
}
