//! A spectrum of sixteen wavelengths, and the colour a reflectance spectrum has.
//!
//! ```text
//! X = Σ R(λ) wX(λ),  likewise Y and Z;  w = illuminant × observer, folded to 20 nm
//! ```
//!
//! 20 nm is the coarsest usual grid that keeps the ΔE00 of a dye in a white film within 0.05 of a 5 nm sum
//! (worst case of nine red, blue and yellow tints: 0.036; a 10 nm grid: 0.002).
use super::observer::D65_10_DEGREES;
use super::{Lab, Xyz};

/// The wavelengths of every [`Spectrum`], nm.
pub const WAVELENGTHS: [f64; 16] = [
    400.0, 420.0, 440.0, 460.0, 480.0, 500.0, 520.0, 540.0, 560.0, 580.0, 600.0, 620.0, 640.0, 660.0, 680.0,
    700.0,
];

/// One value at each of [`WAVELENGTHS`]: a reflectance (0 to 1) or a coefficient (1/m), as the holder says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spectrum(pub [f64; 16]);

impl Spectrum {
    /// The spectrum of a formula; `value` takes a wavelength in nm.
    #[must_use]
    pub fn of(value: impl Fn(f64) -> f64) -> Self {
        Self(WAVELENGTHS.map(value))
    }

    /// The same value everywhere.
    #[must_use]
    pub const fn flat(value: f64) -> Self {
        Self([value; 16])
    }

    /// A spectrum from this one and another, wavelength by wavelength.
    #[must_use]
    pub fn with(&self, other: &Self, join: impl Fn(f64, f64) -> f64) -> Self {
        let mut joined = *self;
        for (value, &second) in joined.0.iter_mut().zip(&other.0) {
            *value = join(*value, second);
        }
        joined
    }

    /// Tristimulus values of this reflectance under D65 for the 10° observer.
    #[must_use]
    pub fn xyz(&self) -> Xyz {
        let mut sum = [0.0; 3];
        for (reflectance, weights) in self.0.iter().zip(&D65_10_DEGREES) {
            for (total, weight) in sum.iter_mut().zip(weights) {
                *total += reflectance * weight;
            }
        }
        let [x, y, z] = sum;
        Xyz { x, y, z }
    }

    /// CIELAB of this reflectance, D65/10°.
    #[must_use]
    pub fn lab(&self) -> Lab {
        self.xyz().into()
    }
}
