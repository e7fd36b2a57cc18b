//! Gelation, fusion, scorch and shrinkage read off a history.
//!
//! A plastisol gels when its resin drinks up the plasticiser, and fuses when the crystallites of the resin melt in
//! it. Gelation is a matter of time at temperature; fusion is limited by temperature as well, so that no dwell
//! rescues a dryer that is too cool:
//!
//! ```text
//! dg/dt   = k_g(T) (1 - g)                        k_g = 1/t_g exp[-E_g/R (1/T - 1/T_g)]
//! dphi/dt = g k_f(T) max(phi_eq(T) - phi, 0)      phi_eq = 1 / (1 + exp(-(T - T_50) / s))
//! ```
//!
//! No published pair of constants for garment plastisol was found; those of `data/kinetics.json` are calibrated to
//! common practice. The forms are checked in `tests/heat/kinetics.rs` against the Arrhenius integral, Kissinger's peak
//! and isothermal solutions. Hands out [`fuse`], [`trace`], [`scorch()`] and [`estimate_kinetics`]
//! (an ink's own constants from two tested prints); judges nothing.

mod calibrate;
mod scorch;

pub use calibrate::{KineticsEstimate, PrintTestOutcome, estimate_kinetics};
pub use scorch::{Scorch, scorch};

use crate::dryer::{History, Place, for_each_substep};
use crate::ink::CureKinetics;
use crate::numerics::{Lanes, arrhenius};

/// How far a film has come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cure<const L: usize> {
    /// Gelled share, 0 to 1.
    pub gelled: Lanes<L>,
    /// Fused share, 0 to 1.
    pub fused: Lanes<L>,
}

impl<const L: usize> Cure<L> {
    /// Wet ink.
    pub const NONE: Self = Self { gelled: Lanes::ZERO, fused: Lanes::ZERO };

    /// Adds `seconds` at `temperature` (K): the exponential midpoint rule, exact where the temperature stands still.
    pub fn advance(&mut self, seconds: Lanes<L>, temperature: Lanes<L>, kinetics: &CureKinetics) {
        let gel = arrhenius(temperature, kinetics.gel_time, kinetics.gel_reference, kinetics.gel_energy);
        let halfway = (-gel * seconds * 0.5).exp();
        let gelled = -(-self.gelled + 1.0) * halfway + 1.0;
        self.gelled = -(-self.gelled + 1.0) * halfway * halfway + 1.0;
        let rate =
            arrhenius(temperature, kinetics.fusion_time, kinetics.fusion_reference, kinetics.fusion_energy);
        let gap = (equilibrium_fusion(temperature, kinetics) - self.fused).max(Lanes::ZERO);
        self.fused += gap * (-(-rate * gelled * seconds).exp() + 1.0);
    }
}

/// Fusion in balance with `temperature` (K), 0 to 1.
#[inline]
#[must_use]
pub fn equilibrium_fusion<const L: usize>(temperature: Lanes<L>, kinetics: &CureKinetics) -> Lanes<L> {
    (((-temperature + kinetics.half_fused) * (1.0 / kinetics.width)).exp() + 1.0).recip()
}

/// Follows gelation and fusion at `place` to the end of the history.
#[must_use]
pub fn fuse<const L: usize>(history: &History<L>, place: Place<L>, kinetics: &CureKinetics) -> Cure<L> {
    let mut cure = Cure::NONE;
    history.for_each_substep(place, |seconds, temperature| cure.advance(seconds, temperature, kinetics));
    cure
}

/// Fused share at `place` at each sample of the history.
#[must_use]
pub fn trace<const L: usize>(history: &History<L>, place: Place<L>, kinetics: &CureKinetics) -> Vec<Cure<L>> {
    let mut cure = Cure::NONE;
    let mut trace = Vec::with_capacity(history.samples.len());
    trace.push(cure);
    for pair in history.samples.windows(2) {
        if let [from, to] = pair {
            for_each_substep(from, to, place, |seconds, temperature| {
                cure.advance(seconds, temperature, kinetics);
            });
            trace.push(cure);
        }
    }
    trace
}
