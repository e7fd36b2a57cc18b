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
//! common practice. The forms are checked in `tests/kinetics.rs` against the Arrhenius integral, Kissinger's peak
//! and isothermal solutions. Hands out [`fuse`], [`trace`], [`scorch`] and [`Limits`]; judges nothing.

mod limits;

pub use limits::{Limits, scorch};

use crate::dryer::{History, Sample};
use crate::ink::CureKinetics;
use crate::numerics::Lanes;
use crate::quantity::GAS_CONSTANT;

/// How far a film has come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cure<const L: usize> {
    /// Gelled share, 0 to 1.
    pub gelled: Lanes<L>,
    /// Fused share, 0 to 1.
    pub fused: Lanes<L>,
}

/// Parts of a solver step in which the kinetics are followed.
const PARTS: u32 = 3;

/// An Arrhenius rate, 1/s: `1/time` at `reference` (K), activation energy `energy` (J/mol).
#[inline]
#[must_use]
pub fn arrhenius<const L: usize>(temperature: Lanes<L>, time: f64, reference: f64, energy: f64) -> Lanes<L> {
    ((-temperature.recip() + 1.0 / reference) * (energy / GAS_CONSTANT)).exp() * (1.0 / time)
}

/// Fusion in balance with `temperature` (K), 0 to 1.
#[inline]
#[must_use]
pub fn balance_fusion<const L: usize>(temperature: Lanes<L>, kinetics: &CureKinetics) -> Lanes<L> {
    (((-temperature + kinetics.half_fused) * (1.0 / kinetics.width)).exp() + 1.0).recip()
}

/// Temperature and its rate at one place of the stack.
pub type Place<const L: usize> = fn(&Sample<L>) -> [Lanes<L>; 2];

/// Follows gelation and fusion at `place` to the end of the history.
#[must_use]
pub fn fuse<const L: usize>(history: &History<L>, place: Place<L>, kinetics: &CureKinetics) -> Cure<L> {
    let mut cure = Cure { gelled: Lanes::ZERO, fused: Lanes::ZERO };
    walk(history, place, |seconds, temperature| advance(&mut cure, seconds, temperature, kinetics));
    cure
}

/// Fused share at `place` at each sample of the history.
#[must_use]
pub fn trace<const L: usize>(history: &History<L>, place: Place<L>, kinetics: &CureKinetics) -> Vec<Cure<L>> {
    let mut cure = Cure { gelled: Lanes::ZERO, fused: Lanes::ZERO };
    let mut trace = Vec::with_capacity(history.samples.len());
    trace.push(cure);
    for pair in history.samples.windows(2) {
        if let [from, to] = pair {
            between(from, to, place, |seconds, temperature| {
                advance(&mut cure, seconds, temperature, kinetics);
            });
            trace.push(cure);
        }
    }
    trace
}

/// The exponential midpoint rule: exact where the temperature stands still.
fn advance<const L: usize>(
    cure: &mut Cure<L>,
    seconds: Lanes<L>,
    temperature: Lanes<L>,
    kinetics: &CureKinetics,
) {
    let gel = arrhenius(temperature, kinetics.gel_time, kinetics.gel_reference, kinetics.gel_energy);
    let halfway = (-gel * seconds * 0.5).exp();
    let gelled = -(-cure.gelled + 1.0) * halfway + 1.0;
    cure.gelled = -(-cure.gelled + 1.0) * halfway * halfway + 1.0;
    let rate =
        arrhenius(temperature, kinetics.fusion_time, kinetics.fusion_reference, kinetics.fusion_energy);
    let gap = (balance_fusion(temperature, kinetics) - cure.fused).max(Lanes::ZERO);
    cure.fused += gap * (-(-rate * gelled * seconds).exp() + 1.0);
}

/// Calls `visit` with the length and the middle temperature of each part of each step.
pub(crate) fn walk<const L: usize>(
    history: &History<L>,
    place: Place<L>,
    mut visit: impl FnMut(Lanes<L>, Lanes<L>),
) {
    for pair in history.samples.windows(2) {
        if let [from, to] = pair {
            between(from, to, place, &mut visit);
        }
    }
}

fn between<const L: usize>(
    from: &Sample<L>,
    to: &Sample<L>,
    place: Place<L>,
    mut visit: impl FnMut(Lanes<L>, Lanes<L>),
) {
    let length = to.time - from.time;
    if length.largest() <= 0.0 {
        return;
    }
    let ([start, start_rate], [end, end_rate]) = (place(from), place(to));
    let parts = f64::from(PARTS);
    for part in 0..PARTS {
        let at = (f64::from(part) + 0.5) / parts;
        let rest = 1.0 - at;
        // Cubic Hermite.
        let temperature = start * ((1.0 + 2.0 * at) * rest * rest)
            + end * (at * at * (3.0 - 2.0 * at))
            + (start_rate * (at * rest * rest) - end_rate * (at * at * rest)) * length;
        visit(length * (1.0 / parts), temperature);
    }
}
