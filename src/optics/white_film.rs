//! How a white print looks: a scattering film over a coloured cloth, clean or with dye in it.
//!
//! ```text
//! S(λ)  = S550 (λ/550)^−0.9
//! R∞(λ) = R550 (½ + ½/(1 + e^(−(λ − 410)/9)))      titanium white swallows violet below about 410 nm
//! K(λ)  = S (1 − R∞)²/(2 R∞) + dye
//! ```
//!
//! followed by the Kubelka-Munk film over the cloth at each wavelength, and CIELAB of the spectrum. Two
//! numbers describe a white: its scattering and its endless reflectance at 550 nm, both from one
//! draw-down over a black and a white card. The dependence on wavelength is chosen for the model: S as
//! λ^−0.5 to λ^−1.2 and an edge near 410 nm are what rutile shows; no published table for a plastisol was
//! found.
use super::kubelka_munk::{OpticalLayer, absorption_ratio};
use super::{DyeAbsorption, DyeInFilm, Lab, Spectrum, ciede2000};
use crate::quantity::{Bound, FieldError};

/// Wavelength for which scattering and reflectance of a white are stated, nm.
const STATED_AT: f64 = 550.0;
/// Exponent of the wavelength in the scattering (−0.5 to −1.2). Chosen for the model.
const SCATTERING_EXPONENT: f64 = -0.9;
/// Middle and width of the violet edge of titanium white, nm. Chosen for the model.
const VIOLET_EDGE: (f64, f64) = (410.0, 9.0);

/// The optical properties of a white.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WhiteFilm {
    /// Effective Kubelka-Munk scattering, 1/m.
    scattering: Spectrum,
    /// Effective Kubelka-Munk absorption, 1/m.
    absorption: Spectrum,
}

impl WhiteFilm {
    /// Accepted effective scattering at 550 nm; 0.10 to 0.25 is usual for a garment white.
    pub const SCATTERING: Bound = Bound { field: "scattering", min: 0.01, max: 2.0, unit: "1/µm" };
    /// Accepted reflectance of an endless film at 550 nm; 0.86 to 0.93 is usual.
    pub const REFLECTANCE: Bound = Bound { field: "reflectance", min: 0.3, max: 0.99, unit: "" };

    /// A white from its effective scattering (1/m) and endless reflectance (0 to 1) at 550 nm.
    ///
    /// # Errors
    /// A [`FieldError`] outside [`Self::SCATTERING`] or [`Self::REFLECTANCE`].
    pub fn new(scattering: f64, reflectance: f64) -> Result<Self, FieldError> {
        Self::SCATTERING.check(scattering * 1e-6)?;
        Self::REFLECTANCE.check(reflectance)?;
        let scattering =
            Spectrum::of(|wavelength| scattering * (wavelength / STATED_AT).powf(SCATTERING_EXPONENT));
        let (middle, width) = VIOLET_EDGE;
        let endless = Spectrum::of(|wavelength| {
            reflectance * (0.5 + 0.5 / (1.0 + (-(wavelength - middle) / width).exp()))
        });
        Ok(Self { scattering, absorption: scattering.with(&endless, |s, r| s * absorption_ratio(r)) })
    }

    /// Reflectance of `film` metres (0 and up) of this white over a backing.
    #[must_use]
    pub fn over(&self, film: f64, backing: &Spectrum) -> Spectrum {
        reflectance(film, &self.scattering, &self.absorption, backing)
    }

    /// Colour of a film too thick to see through.
    #[must_use]
    pub fn endless(&self) -> Lab {
        self.scattering.with(&self.absorption, |s, k| super::endless_reflectance(k / s)).lab()
    }
}

fn reflectance(film: f64, scattering: &Spectrum, absorption: &Spectrum, backing: &Spectrum) -> Spectrum {
    let mut seen = *backing;
    for ((value, &s), &k) in seen.0.iter_mut().zip(&scattering.0).zip(&absorption.0) {
        *value = OpticalLayer::new(s, k, film).over(*value);
    }
    seen
}

/// Colour of `film` metres (0 and up) of a white over a cloth, with dye spread through it or without.
#[must_use]
pub fn appearance(film: f64, white: &WhiteFilm, backing: &Spectrum, dye: Option<&DyeInFilm>) -> Lab {
    match dye {
        None => white.over(film, backing).lab(),
        Some(dye) => {
            let stained = white
                .absorption
                .with(dye.absorption.spectrum(), |k, added| k + added * dye.concentration.max(0.0));
            reflectance(film, &white.scattering, &stained, backing).lab()
        }
    }
}

/// A print as it left the press, with its colour: the reference for every later comparison.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreshPrint {
    film: f64,
    white: WhiteFilm,
    backing: Spectrum,
    fresh: Lab,
}

impl FreshPrint {
    /// A clean film of `film` metres (0 and up) over the cloth.
    #[must_use]
    pub fn new(film: f64, white: &WhiteFilm, backing: &Spectrum) -> Self {
        Self { film, white: *white, backing: *backing, fresh: appearance(film, white, backing, None) }
    }

    /// Colour of the clean print.
    #[must_use]
    pub fn lab(&self) -> Lab {
        self.fresh
    }

    /// Colour with this much dye (kg/m³, 0 and up) in the film.
    #[must_use]
    pub fn stained(&self, dye: &DyeAbsorption, concentration: f64) -> Lab {
        let dye = DyeInFilm { absorption: *dye, concentration };
        appearance(self.film, &self.white, &self.backing, Some(&dye))
    }

    /// ΔE00 between the print with dye in it and the fresh print, for a concentration in its top layer
    /// (kg/m³, 0 to 3).
    ///
    /// Rises with the concentration up to a ΔE00 of 6 and stays above 6 after that. Beyond about 7 it may
    /// step back: CIEDE2000 jumps where the tint lies opposite the fresh white's own tint. It is made for
    /// differences up to about 5; beyond that see [`cie76`](super::cie76).
    ///
    /// The concentration of the top layer is used for the whole film. The dye comes from below, so the
    /// rest of the film holds more at first and the same after months: correct for a late inspection, too
    /// low for a fresh gradient. Light penetrates some 30 to 50 µm: with dye in the top 30 µm alone a
    /// film of 60 µm would show a tenth less, one of 100 µm a fifth less.
    #[must_use]
    pub fn bleed_difference(&self, dye: &DyeAbsorption, concentration: f64) -> f64 {
        ciede2000(self.fresh, self.stained(dye, concentration))
    }
}
