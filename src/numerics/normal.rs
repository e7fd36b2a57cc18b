//! The normal distribution.
//!
//! `erfc` is written here, in 25 lines, rather than taken from the crate `libm`: replacing it moves the
//! chances in answers by up to 5e-12 of themselves (measured 2026-11-30 over the 52 reference orders),
//! nothing that anyone reads, but then no answer equals its earlier self byte for byte. Reconsider when the
//! reference answers are renewed for another reason.

use super::Lanes;

/// Quantile of 0.9 of the standard normal distribution: eight cases in ten lie within ± this many standard
/// deviations.
pub const NINTH_DECILE: f64 = 1.281_551_6;

/// Probability that a standard normal variable lies below `z`.
///
/// `Phi(z) = erfc(-z / sqrt 2) / 2`, with the complementary error function as the continued fraction of
/// Abramowitz & Stegun 7.1.14 for large arguments and the series 7.1.5 for small ones. Within 1e-13 for any
/// `z`.
#[must_use]
pub fn cumulative(z: f64) -> f64 {
    if z.is_nan() {
        return f64::NAN;
    }
    let x = z.abs() / std::f64::consts::SQRT_2;
    let tail = 0.5 * complementary_error(x);
    if z > 0.0 { 1.0 - tail } else { tail }
}

/// The same in every lane, within 8e-8: Abramowitz & Stegun 26.2.17.
#[must_use]
pub fn cumulative_lanes<const L: usize>(z: Lanes<L>) -> Lanes<L> {
    const B: [f64; 5] = [0.319_381_530, -0.356_563_782, 1.781_477_937, -1.821_255_978, 1.330_274_429];
    const ROOT_TWO_PI: f64 = 2.506_628_274_631_000_5;
    let t = (z.abs() * 0.231_641_9 + 1.0).recip();
    let sum = B.iter().rev().fold(Lanes::ZERO, |sum, b| (sum + *b) * t);
    let tail = (z * z * -0.5).max(Lanes::splat(-700.0)).exp() * sum * ROOT_TWO_PI.recip();
    Lanes::select(z.0.map(|z| z > 0.0), -tail + 1.0, tail)
}

/// `erfc(x)` for `x >= 0`. Largest error against the C library: 6e-15, and 1.3e-11 of the value (near `x` =
/// 2.5).
#[must_use]
pub fn complementary_error(x: f64) -> f64 {
    let root_pi = std::f64::consts::PI.sqrt();
    if x > 27.0 {
        return 0.0;
    }
    if x < 2.5 {
        let mut term = x;
        let mut sum = x;
        for n in 1..120 {
            term *= -x * x / f64::from(n);
            sum += term / f64::from(2 * n + 1);
            // From here on the terms shrink and alternate in sign: the remainder is smaller than the next
            // term.
            if f64::from(n) > x * x && term.abs() < 1e-17 {
                break;
            }
        }
        1.0 - 2.0 / root_pi * sum
    } else {
        let mut fraction = x;
        for n in (1..=80).rev() {
            fraction = x + f64::from(n) * 0.5 / fraction;
        }
        (-x * x).exp() / (root_pi * fraction)
    }
}

/// The `z` below which a standard normal variable lies with probability `p`, held to ±8.
///
/// A first guess by Abramowitz & Stegun 26.2.23 (error 4.5e-4), then three steps of Halley's method on
/// [`cumulative`], each of which triples the number of correct digits. Error 1e-9.
///
/// ```
/// use whitehold::numerics::normal::{cumulative, quantile};
///
/// assert!((quantile(0.9) - 1.281_551_566).abs() < 1e-9);
/// assert!((cumulative(quantile(0.025)) - 0.025).abs() < 1e-9);
/// ```
#[must_use]
pub fn quantile(p: f64) -> f64 {
    const MOST: f64 = 8.0;
    if p.is_nan() {
        return f64::NAN;
    }
    let tail = p.min(1.0 - p);
    if tail <= cumulative(-MOST) {
        return if p < 0.5 { -MOST } else { MOST };
    }
    let t = (-2.0 * tail.ln()).sqrt();
    let guess = t
        - (2.515_517 + t * (0.802_853 + t * 0.010_328))
            / (1.0 + t * (1.432_788 + t * (0.189_269 + t * 0.001_308)));
    // In the lower tail, where small probabilities keep all their digits.
    let mut z = -guess;
    for _ in 0..3 {
        let density = (-0.5 * z * z).exp() / (2.0 * std::f64::consts::PI).sqrt();
        let step = (cumulative(z) - tail) / density;
        z -= step / (1.0 + 0.5 * z * step);
    }
    if p < 0.5 { z } else { -z }
}
