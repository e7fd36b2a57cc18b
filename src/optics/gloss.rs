//! The gloss of a surface as a gloss meter at 60° reads it.
//!
//! A meter sends light onto a surface at 60° and measures what returns in a small window around the
//! mirrored direction. The light that a polished black glass of n = 1.567 returns is 100 gloss units, GU
//! (ISO 2813:1997, extract read; ASTM D523). A smooth film reads by the ratio of two mirrors, a rough one
//! by the share of its facets that mirror into the window. Print and cloth are rough on a scale far above
//! the wavelength of light, so each facet is a small mirror:
//!
//! ```text
//! R(n)    = ½ (rs² + rp²)                            Fresnel, unpolarised, at 60°
//! rs      = (cos θ − n cos τ) / (cos θ + n cos τ)     sin θ = n sin τ
//! rp      = (n cos θ − cos τ) / (n cos θ + cos τ)
//! share   = erf(a / √2 s) · erf(b / √2 s)            facets within a and b, slopes normal with rms s each way
//! scatter = ρ Ω cos θ / π                            what a white that scatters ρ sends into the window
//! gloss   = 100 (R(n) share + scatter) / R(1.567)
//! ```
//!
//! A facet tilted by d turns the mirrored ray by 2 d in the plane of incidence and by 2 d cos 60° = d
//! across it. The window is 4.4° in that plane and 11.7° across (ISO 2813 and ASTM D523, from memory),
//! hence a = tan 1.1° and b = tan 5.85°, and Ω is the product of the two angles. Facets of normal slope:
//! after van Ginneken et al., Applied Optics 37 (1998) 130 (abstract read). Left out: shadows, light that
//! is mirrored twice, the width of the source's image.

use crate::numerics::normal::complementary_error;
use std::f64::consts::{PI, SQRT_2};

/// Refractive index of the glass that reads 100. ISO 2813:1997, extract read.
pub const REFERENCE_INDEX: f64 = 1.567;
/// Refractive index of plasticised PVC (1.52 to 1.55). From memory.
pub const PVC_INDEX: f64 = 1.53;
/// Light that a white print scatters, 0 to 1 (0.75 to 0.92). Assumed.
pub const WHITE_SCATTERS: f64 = 0.85;

/// Angle of incidence, degrees.
const INCIDENCE: f64 = 60.0;
/// The window in the plane of incidence and across it, degrees. ISO 2813 and ASTM D523, from memory.
const WINDOW: [f64; 2] = [4.4, 11.7];

/// Share of unpolarised light that a smooth surface of this refractive index (1 and up) mirrors at 60°.
#[must_use]
pub fn mirrored(index: f64) -> f64 {
    let (sine, cosine) = INCIDENCE.to_radians().sin_cos();
    let inside = (1.0 - (sine / index).powi(2)).max(0.0).sqrt();
    let across = (cosine - index * inside) / (cosine + index * inside);
    let along = (index * cosine - inside) / (index * cosine + inside);
    0.5 * (across * across + along * along)
}

/// Share of the facets that mirror into the window, for slopes of this rms (0 and up) in each direction.
#[must_use]
pub fn facets_in_window(slope: f64) -> f64 {
    // In its plane the ray turns by twice the tilt of the facet, across it by the tilt itself; the window
    // extends half to either side.
    let [along, across] = [WINDOW[0] / 4.0, WINDOW[1] / 2.0].map(|tilt| tilt.to_radians().tan());
    let within = |most: f64| 1.0 - complementary_error(most / (SQRT_2 * slope));
    within(along) * within(across)
}

/// Gloss at 60°, GU, of a film of this refractive index (1 and up) and rms slope (0 and up) that scatters
/// this share of light (0 to 1).
#[must_use]
pub fn gloss_units(index: f64, slope: f64, scatters: f64) -> f64 {
    let window = WINDOW[0].to_radians() * WINDOW[1].to_radians();
    let scattered = scatters * window * INCIDENCE.to_radians().cos() / PI;
    100.0 * (mirrored(index) * facets_in_window(slope) + scattered) / mirrored(REFERENCE_INDEX)
}
