//! How rough the surface of a print is.
//!
//! A film on cloth repeats the rows of yarn under it, the more faintly the more ink lies between. A cloth whose nap or loops
//! stand h high over rows of pitch L is taken as a wave; each stroke that falls on a flashed film fills its hollows instead
//! of sinking with them; and even on glass a cured film has a grain of its own. Causes that know nothing of each other add
//! as squares:
//!
//! ```text
//! bare  = π h / (√2 L)                   rms slope of a wave of height h and pitch L
//! left  = bare · e^(−t/T) · F^n          film t, of which n prints fell on a flashed film
//! slope = √(own² + left²)
//! ```
//!
//! There is no standard and no published measurement of it: every number here is assumed, and what it decides is seen
//! on the first piece. Left out: a film that is not fused through is duller, one that was overheated shinier.

use std::f64::consts::{PI, SQRT_2};

/// Pitch L of the rows of yarn, m (0.3e-3 to 1e-3). Assumed.
const PITCH: f64 = 0.5e-3;
/// Film T that takes the relief down to e⁻¹, m (50e-6 to 200e-6). Assumed.
const EVENS: f64 = 100e-6;
/// What a print on a flashed film leaves of the relief, F (0.5 to 0.9). Assumed.
const FILLED: f64 = 0.7;
/// Slope of a cured film's own grain and of the mesh's marks, rms (0.01 to 0.1). Assumed.
const OWN: f64 = 0.03;

/// The rms slope of a print: `nap` as the white meets it (m, 0 and up), all of the film (m, 0 and up), and how many
/// prints of it fell on a flashed film.
#[must_use]
pub fn surface_slope(nap: f64, film: f64, on_flashed: u32) -> f64 {
    let bare = PI * nap / (SQRT_2 * PITCH);
    let left = bare * (-film / EVENS).exp() * FILLED.powf(f64::from(on_flashed));
    OWN.hypot(left)
}
