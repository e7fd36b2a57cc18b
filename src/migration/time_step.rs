//! Into how many parts a step of dye in the film is cut, and how implicit each part is.
//!
//! The two-stage method has two implicit stages of a share `g` of the step; the second starts from `1 - g` of the rate of
//! the first. Over a step it multiplies a profile that decays as `exp(-z)` by
//!
//! ```text
//! R(z) = (1 - (1 - 2 g) z) / (1 + g z)²
//! ```
//!
//! With `g = 1 - sqrt(1/2)` the method is of second order, but R is negative for `z` over 2.4: a film that empties into
//! the air ends below zero, and further below the more dye it held. With `g = 1/2` it is two steps of the implicit Euler
//! method: R is never negative, but the method is of first order. So `g` is fitted to the step: `R(z) = exp(-z)` for the
//! profile that empties most slowly (exponential fitting, Liniger and Willoughby, SIAM J. Numer. Anal. 7, 1970, 47; from
//! memory). Short steps keep the second order; in long ones more dye never ends as less.

use crate::numerics::Lanes;

/// Longest part of a step, as the decay exponent of the emptying film. Chosen: the dye in the top layer at forty dragged
/// settings is then within 2 % of a method of lines (`src/plan/bleed/ageing/tests/peer.rs`).
const LONGEST: f64 = 1.0;
/// Most parts of a step. Chosen: after that many decay exponents the film is empty.
const MOST: f64 = 40.0;

/// Parts that a step is cut into which empties the film `emptied` times.
pub(super) fn time_parts<const L: usize>(emptied: Lanes<L>) -> u32 {
    (emptied.largest() / LONGEST).ceil().clamp(1.0, MOST) as u32
}

/// The implicit share of each stage that is exact for `exp(-z)`: from `1 - sqrt(1/2)` at 0 to 1/2 at infinity.
pub(super) fn implicit_share<const L: usize>(z: Lanes<L>) -> Lanes<L> {
    // Below it the quotient loses digits, and the limit at 0 is as good.
    const SHORT: f64 = 1e-3;
    let z = z.max(Lanes::splat(SHORT));
    let left = (-z).exp();
    let gone = -left + 1.0;
    // The smaller root of left z² g² - 2 z gone g + (z - gone) = 0, in the form that does not cancel.
    let root = (gone * gone - left * (z - gone)).max(Lanes::ZERO).sqrt();
    (z - gone) / (z * (gone + root))
}
