//! How rough the surface of a print is.
//!
//! A film on cloth follows the rows of yarn below it, the less the thicker it is. Cloth with nap or loops
//! of height h over rows of pitch L is taken as a wave. A stroke on a flashed film fills the hollows
//! instead of following them. Even on glass a cured film has a grain of its own. Independent causes add
//! as squares:
//!
//! ```text
//! bare  = π h / (√2 L)                   rms slope of a wave of height h and pitch L
//! left  = bare · e^(−t/T) · F^n          film t, of which n prints fell on a flashed film
//! slope = √(own² + left²)
//! ```
//!
//! There is no standard and no published measurement: every number here is assumed, and the result is
//! visible on the first piece. Left out: an underfused film is duller, an overheated one shinier.

use std::f64::consts::{PI, SQRT_2};

/// Pitch L of the rows of yarn, m (0.3e-3 to 1e-3). Assumed.
const PITCH: f64 = 0.5e-3;
/// Film T that reduces the relief to e⁻¹, m (50e-6 to 200e-6). Assumed.
const EVENING_FILM: f64 = 100e-6;
/// Share F of the relief that remains after a print on a flashed film (0.5 to 0.9). Assumed.
const LEFT_BY_PRINT: f64 = 0.7;
/// Slope of a cured film's own grain and of the mesh's marks, rms (0.01 to 0.1). Assumed.
const OWN_SLOPE: f64 = 0.03;

/// The rms slope of a print on a nap (m, 0 and up), with its whole film (m, 0 and up), of which
/// `on_flashed` prints were made on a flashed film.
#[must_use]
pub fn surface_slope(nap: f64, film: f64, on_flashed: u32) -> f64 {
    let bare = PI * nap / (SQRT_2 * PITCH);
    let left = bare * (-film / EVENING_FILM).exp() * LEFT_BY_PRINT.powf(f64::from(on_flashed));
    OWN_SLOPE.hypot(left)
}
