//! Disperse dyes and their energy classes.

use crate::quantity::Sourced;
use serde::{Deserialize, Serialize};

/// The phase over which the vapour pressure of a dye was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DyePhase {
    /// Over the solid dye.
    Sublimation,
    /// Over the molten dye; nearer to dye dissolved in fibre or film.
    Liquid,
}

/// How easily heat drives a disperse dye out of polyester.
///
/// By vapour pressure at 160 °C: low energy above 1 Pa, high below 0.1 Pa, medium between (bins assumed).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DyeEnergy {
    /// Small molecules, which leave first.
    Low,
    /// In between.
    Medium,
    /// Large molecules, which leave last.
    High,
    /// Not known: what lies between medium and high, as in most deep garments.
    Unknown,
}

/// One row of `data/dyes.json`: the vapour pressure of a disperse dye, `ln(P / Pa) = a - b / (T + c)`, T
/// in K.
///
/// `a`, `b` and `c` come from one fit and have no meaning alone, so the spread is that of the pressure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DyeRecord {
    /// Stable id, kebab-case.
    pub id: String,
    /// Name in the Colour Index.
    pub name: String,
    /// CAS registry number, which identifies the dye.
    pub cas: String,
    /// What was measured.
    pub phase: DyePhase,
    /// Constant term.
    pub a: f64,
    /// Slope, K.
    pub b: f64,
    /// Shift of the temperature, K.
    pub c: f64,
    /// Range of the fit, K; beyond it the equation extrapolates.
    pub valid_k: [f64; 2],
    /// Factor by which the pressure may differ between 130 and 200 °C, above 1.
    pub pressure_spread: Sourced,
    /// Molar mass, kg/mol.
    pub molar_mass: Sourced,
    /// Its energy class.
    pub energy: DyeEnergy,
    /// A note for people; may be empty.
    pub note: String,
    /// Where the fit comes from.
    pub source: String,
}

impl DyeRecord {
    /// Vapour pressure, Pa, at `kelvin` (above `-c`); extrapolated outside `valid_k`.
    #[must_use]
    pub fn vapour_pressure(&self, kelvin: f64) -> f64 {
        (self.a - self.b / (kelvin + self.c)).exp()
    }
}

/// One row of `data/dye_classes.json`: how dyes of one energy class move inside polyester.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DyeClassRecord {
    /// Which class.
    pub energy: DyeEnergy,
    /// Id of the dye that is assumed if only the class is known.
    pub typical_dye: String,
    /// Diffusivity in dry polyester at 130 °C, m²/s.
    pub fibre_diffusivity_130c: Sourced,
    /// Its activation energy, kJ/mol.
    pub fibre_diffusion_energy: Sourced,
}
