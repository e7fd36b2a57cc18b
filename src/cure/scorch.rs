use crate::dryer::{History, Place};
use crate::numerics::{Lanes, arrhenius};
use crate::quantity::units::kelvin;

/// Scorch index: 1 when cotton has just yellowed visibly.
///
/// `integral of 1/60 s exp[-E/R (1/T - 1/473.15 K)] dt` with E 130 kJ/mol: one minute at 200 °C is visible.
/// Assumed, no source. Strength is not the limit (cotton keeps it for two minutes at 220 °C: J. Appl. Polym.
/// Sci. 23, 1979, abstract).
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
        self.index += seconds * arrhenius(temperature, 60.0, kelvin(200.0), 130e3);
    }

    /// Logarithm of one lane's index, at least `ln 1e-12`.
    #[must_use]
    pub fn ln(&self, lane: usize) -> f64 {
        self.index[lane].max(1e-12).ln()
    }
}

/// Scorch index at `place` at the end of a history.
#[must_use]
pub fn scorch<const L: usize>(history: &History<L>, place: Place<L>) -> Lanes<L> {
    let mut scorch = Scorch::NONE;
    history.for_each_substep(place, |seconds, temperature| scorch.advance(seconds, temperature));
    scorch.index
}
