use crate::dryer::{History, Place};
use crate::numerics::{Lanes, arrhenius};
use crate::quantity::GAS_CONSTANT;
use crate::quantity::units::kelvin;

/// Temperature at which white cotton just yellows visibly within [`SCORCH_TIME`], °C (190 to 210). Assumed,
/// no source.
const SCORCH_TEMPERATURE: f64 = 200.0;
/// Time in which it does, s (30 to 120). Assumed, no source.
const SCORCH_TIME: f64 = 60.0;
/// Activation energy of the yellowing, J/mol (100e3 to 160e3). Assumed, no source.
const SCORCH_ENERGY: f64 = 130e3;

/// Scorch index: 1 when cotton has just yellowed visibly.
///
/// The integral over time of `1/60 s exp[-E/R (1/T - 1/473.15 K)]` with `E` = 130 kJ/mol. The strength of
/// the cloth sets no limit: cotton keeps it for two minutes at 220 °C (J. Appl. Polym. Sci. 23, 1979,
/// abstract).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scorch<const L: usize> {
    /// The index so far.
    pub index: Lanes<L>,
}

impl<const L: usize> Scorch<L> {
    /// Before any heat.
    pub const NONE: Self = Self { index: Lanes::ZERO };

    /// Adds `seconds` at `temperature` (K).
    #[inline]
    pub fn advance(&mut self, seconds: Lanes<L>, temperature: Lanes<L>) {
        self.index +=
            seconds * arrhenius(temperature, SCORCH_TIME, kelvin(SCORCH_TEMPERATURE), SCORCH_ENERGY);
    }

    /// Logarithm of one lane's index, at least `ln 1e-12`.
    #[must_use]
    pub fn ln(&self, lane: usize) -> f64 {
        self.index[lane].max(1e-12).ln()
    }
}

/// Scorch index of `seconds` at `temperature` (K).
#[must_use]
pub fn scorch_index(temperature: f64, seconds: f64) -> f64 {
    let mut scorch = Scorch::<1>::NONE;
    scorch.advance(Lanes::splat(seconds), Lanes::splat(temperature));
    scorch.index[0]
}

/// Temperature (K) at which `seconds` bring a scorch index; infinite where no temperature does so soon. From
/// the rate: `1/T = 1/T_s - R/E ln(index t_s / seconds)`.
#[must_use]
pub fn scorch_temperature(index: f64, seconds: f64) -> f64 {
    let faster = (index * SCORCH_TIME / seconds).ln();
    let inverse = 1.0 / kelvin(SCORCH_TEMPERATURE) - GAS_CONSTANT / SCORCH_ENERGY * faster;
    if inverse > 0.0 { 1.0 / inverse } else { f64::INFINITY }
}

/// Scorch index at `place` at the end of a history.
#[must_use]
pub fn scorch<const L: usize>(history: &History<L>, place: Place<L>) -> Lanes<L> {
    let mut scorch = Scorch::NONE;
    history.for_each_substep(place, |seconds, temperature| scorch.advance(seconds, temperature));
    scorch.index
}
