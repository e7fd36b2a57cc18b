//! Which colours a cloth or a print can have.
//!
//! A surface reflects a share of 0 to 1 of the light at each wavelength. Its tristimulus values are then
//! sums of the weights w of the sixteen wavelengths, each times its share: the points of a convex body
//! (the object colour solid of Schrödinger and Rösch) whose faces are spanned by pairs of weights:
//!
//! ```text
//! inside where, for every normal n = wi × wj:   Σ min(0, n·wk) ≤ n·XYZ ≤ Σ max(0, n·wk)
//! ```
//!
//! Fluorescent cloth emits light at other wavelengths than it absorbs, so the body is widened by a factor
//! before a colour is called impossible.
use super::observer::D65_10_DEGREES;
use super::{Lab, Xyz};
use crate::quantity::{Bound, FieldError, Problem};

/// Largest apparent reflectance of a fluorescent cloth at a wavelength (1.1 to 1.5). Chosen so that
/// safety colours pass.
const FLUORESCENCE: f64 = 1.3;

type Vector = [f64; 3];

impl Lab {
    /// Accepted L*.
    pub const LIGHTNESS: Bound = Bound { field: "lab", min: 0.0, max: 100.0, unit: "L*" };
    /// Accepted a* and b*.
    pub const CHROMATICITY: Bound = Bound { field: "lab", min: -150.0, max: 150.0, unit: "a*, b*" };

    /// Checks that a cloth or a print can have this colour.
    ///
    /// # Errors
    /// A [`FieldError`] on `lab` if L* lies outside [`Self::LIGHTNESS`], a* or b* outside
    /// [`Self::CHROMATICITY`], or the chroma beyond that of any surface of this lightness and hue,
    /// fluorescent ones included; the error states the greatest chroma.
    pub fn check(self) -> Result<Self, FieldError> {
        Self::LIGHTNESS.check(self.lightness)?;
        Self::CHROMATICITY.check(self.a)?;
        Self::CHROMATICITY.check(self.b)?;
        if self.chroma() < 1.0 || can_be_seen(self) {
            return Ok(self);
        }
        let (mut dull, mut strong) = (0.0, 1.0);
        for _ in 0..30 {
            let middle = 0.5 * (dull + strong);
            let paler = Self { a: middle * self.a, b: middle * self.b, ..self };
            *(if can_be_seen(paler) { &mut dull } else { &mut strong }) = middle;
        }
        let given = format!("{}, {}, {}", self.lightness, self.a, self.b);
        let max = (dull * self.chroma() * 10.0).floor() / 10.0;
        Err(FieldError::new("lab", given, Problem::OutOfRange { min: 0.0, max, unit: "C*".into() }))
    }
}

/// Whether a reflectance of 0 to [`FLUORESCENCE`] gives this colour.
fn can_be_seen(colour: Lab) -> bool {
    let Xyz { x, y, z } = colour.into();
    let slack = 1e-6;
    D65_10_DEGREES.iter().enumerate().all(|(i, first)| {
        D65_10_DEGREES.iter().skip(i + 1).all(|second| {
            let normal = cross(first, second);
            let (mut least, mut greatest) = (-slack, slack);
            for weight in &D65_10_DEGREES {
                let reach = FLUORESCENCE * dot(&normal, weight);
                *(if reach < 0.0 { &mut least } else { &mut greatest }) += reach;
            }
            (least..=greatest).contains(&dot(&normal, &[x, y, z]))
        })
    })
}

fn dot(u: &Vector, v: &Vector) -> f64 {
    u.iter().zip(v).map(|(a, b)| a * b).sum()
}

fn cross([a, b, c]: &Vector, [d, e, f]: &Vector) -> Vector {
    [b * f - c * e, c * d - a * f, a * e - b * d]
}
