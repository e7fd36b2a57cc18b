//! What a fastness test of the cloth alone shows about how much dye it will release.
//!
//! Every such test presses the cloth, hot and dry, against something clean and grades the stain. The dye that crosses
//! follows from the same equations as the dye into a film, at the temperature and time of the test. The colour
//! difference of a stain doubles from grade to grade (nominal chips of ISO 105-A03: 4.3 at 4, 8.5 at 3, 16.9 at 2), so
//! one grade means a factor of two in dye:
//!
//! ```text
//! grade to be expected = grade of the usual cloth - log2(dye of this cloth at T, t / dye of the usual cloth in the test)
//! ln(dye of the lot / dye to be expected) = (grade expected - grade found) ln 2, ± the spread of the test
//! ```
//!
//! The prior belief and a reading are combined as normal distributions, so a reading always narrows the spread.

use super::{DyedCloth, Release};
use crate::numerics::Lanes;
use serde::{Deserialize, Serialize};

/// A test of the dyed cloth alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ClothTest {
    /// ISO 105-P01, dry heat: 30 s at 150, 180 or 210 °C between adjacent fabrics (times from memory).
    #[serde(rename = "iso-105-p01")]
    IsoP01,
    /// ISO 105-X10, migration into a white plasticised PVC foil at 80 °C: the nearest to a print. 16 h from memory.
    #[serde(rename = "iso-105-x10")]
    IsoX10,
    /// AATCC 117, dry heat: 30 s at 149 to 204 °C (temperatures from memory).
    #[serde(rename = "aatcc-117")]
    Aatcc117,
    /// The shop's own: a white cloth pressed on the garment for two minutes, the stain read by the grey scale.
    #[serde(rename = "cloth-press")]
    ClothPress,
}

impl ClothTest {
    /// Temperature (K), seconds, and the staining grade of polyester in an ordinary deep shade. Common practice, no
    /// source (a usual limit is 4, 3-4 in deep shades).
    #[must_use]
    pub fn usual(self) -> (f64, f64, f64) {
        match self {
            Self::IsoP01 | Self::Aatcc117 => (453.15, 30.0, 3.75),
            Self::IsoX10 => (353.15, 57_600.0, 3.5),
            Self::ClothPress => (433.15, 120.0, 3.5),
        }
    }

    /// Standard deviation of ln(dye) that a reading leaves for a print on that cloth: half a grade between observers
    /// (0.35), and how much the test differs from a print. Assumed, no source; smallest for the test against
    /// plasticised PVC, as the ink is, and for the one on the shop's own lot.
    #[must_use]
    pub fn spread(self) -> f64 {
        match self {
            Self::IsoP01 | Self::Aatcc117 => 0.7,
            Self::IsoX10 => 0.5,
            Self::ClothPress => 0.55,
        }
    }
}

/// A reading of a test.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FastnessGrade {
    /// Which test.
    pub test: ClothTest,
    /// Staining grade, 1 to 5 in halves.
    pub grade: f64,
    /// Temperature, °C; `None` = the test's usual one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temp_c: Option<f64>,
    /// Seconds; `None` = the test's usual time.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seconds: Option<f64>,
}

/// How much dye a lot has of one source, against what its record says: ln(lot / record), as a normal distribution.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SourceBelief {
    /// Mean; 0 if the record is right.
    pub shift: f64,
    /// Standard deviation.
    pub spread: f64,
}

/// A print of this very lot that was looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeenPrint {
    /// Dye that heat freed for it in the middle lot, over the dye that turns it.
    pub heat: f64,
    /// Loose dye in the middle lot, over the dye that turns it.
    pub loose: f64,
    /// How likely what was seen is of a lot that turns it, and of one that does not.
    pub likely: [f64; 2],
}

/// Prints of a lot that are remembered, the most telling ones. Chosen: a shop tries one white on a lot, rarely three.
pub const MOST_SEEN: usize = 4;

/// Belief about a lot: the dye that heat frees, the dye that lies loose, and what prints of it showed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Belief {
    /// Dye that heat frees.
    pub heat: SourceBelief,
    /// Loose dye.
    pub loose: SourceBelief,
    /// Prints of this very lot that were looked at.
    pub seen: [Option<SeenPrint>; MOST_SEEN],
}

impl Belief {
    /// The belief about a cloth whose record is known to be off by `shift`, in both sources.
    #[must_use]
    pub fn shifted(self, shift: f64) -> Self {
        let by = |source: SourceBelief| SourceBelief { shift: source.shift + shift, ..source };
        Self { heat: by(self.heat), loose: by(self.loose), ..self }
    }

    /// The belief after a reading of `found` ± `spread` for the sum of both sources, of which `freed` is the share that heat
    /// frees (0 to 1): the linear rule of least variance (Kalman 1960), which takes a small change of the sum as the sum
    /// of small changes. That the reading ties both sources to one another is left out.
    #[must_use]
    pub fn after(self, found: f64, spread: f64, freed: f64) -> Self {
        let weighs = [freed, 1.0 - freed];
        let sources = [self.heat, self.loose];
        let expected: f64 = (0..2).map(|i| weighs[i] * sources[i].shift).sum();
        let variance: f64 =
            spread * spread + (0..2).map(|i| (weighs[i] * sources[i].spread).powi(2)).sum::<f64>();
        let [heat, loose] = [0, 1].map(|i| {
            let SourceBelief { shift, spread } = sources[i];
            let gain = weighs[i] * spread * spread / variance;
            SourceBelief {
                shift: shift + gain * (found - expected),
                spread: spread * (1.0 - gain * weighs[i]).max(0.0).sqrt(),
            }
        });
        Self { heat, loose, ..self }
    }

    /// The belief after a test of a cloth whose record says `cloth`. `usual` is the cloth to which the usual grades of
    /// [`ClothTest::usual`] belong.
    #[must_use]
    pub fn after_test(self, seen: &FastnessGrade, cloth: &DyedCloth, usual: &DyedCloth) -> Self {
        let (temperature, seconds, grade) = seen.test.usual();
        let [freed, loose] = crosses(usual, temperature, seconds);
        let reference = freed + loose;
        let [freed, loose] = crosses(
            cloth,
            seen.temp_c.map_or(temperature, crate::quantity::units::kelvin),
            seen.seconds.unwrap_or(seconds),
        );
        let here = freed + loose;
        let expected = grade - (here / reference).log2();
        // At the ends of the scale a grade is only a bound: 5 means that no stain is visible.
        let found = (expected - seen.grade) * std::f64::consts::LN_2;
        let at_its_end = (seen.grade >= 5.0 && expected > 5.0) || (seen.grade <= 1.0 && expected < 1.0);
        if at_its_end { self } else { self.after(found, seen.test.spread(), freed / here) }
    }
}

/// Dye that a cloth releases in `seconds` at `temperature` (K), freed by the heat and loose, kg/m².
#[must_use]
pub fn crosses(cloth: &DyedCloth, temperature: f64, seconds: f64) -> [f64; 2] {
    let mut release = Release::<1>::NONE;
    release.heat(cloth, Lanes::splat(seconds), Lanes::splat(temperature));
    cloth.sources(&release).map(|source| source[0].max(1e-15))
}
