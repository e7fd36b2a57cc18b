//! General numerical methods.
//!
//! [`Lanes`] computes several cases side by side; [`rosenbrock`] integrates a stiff initial-value problem
//! whose Jacobian is a band of small blocks; [`interpolation`] reads smooth values between the
//! points of a table; [`fit`] solves least squares; [`root`] finds a zero; [`normal`] is the normal distribution; [`sorting`] sorts
//! on cold paths at little cost in code. Must not know: what a number means.

mod block_band;
pub mod fit;
pub mod interpolation;
mod lanes;
pub mod normal;
pub mod root;
pub mod rosenbrock;
pub mod sorting;

pub use lanes::Lanes;

/// An Arrhenius rate, 1/s: `1/time` at `reference` (K), activation energy `energy` (J/mol), at `temperature`
/// (K).
#[inline]
#[must_use]
pub fn arrhenius<const L: usize>(temperature: Lanes<L>, time: f64, reference: f64, energy: f64) -> Lanes<L> {
    ((-temperature.recip() + 1.0 / reference) * (energy / crate::quantity::GAS_CONSTANT)).exp() * (1.0 / time)
}
