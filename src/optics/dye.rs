//! Dye dissolved in a white film: it adds absorption and no scattering.
//!
//! ```text
//! K(λ) = K_white(λ) + c k(λ),  k(λ) = 2 · ln 10 · ε/M · exp(−½ ((λ − peak)/width)²)
//! ```
//!
//! ε/M turns a molar absorptivity into that of a kilogram; ln 10 turns decades into e-folds; 2 because
//! diffuse light crosses a film on a path twice as long as a collimated beam (Kubelka-Munk: K = 2k). K
//! adds up over dyes while S stays: single-constant mixing, Duncan 1940 (from memory).
use super::Spectrum;

/// Molar decadic absorptivity of a disperse dye at its peak, m²/mol (1000 to 4000).
/// Source: chosen for the model, a common order for anthraquinone dyes, from memory.
const MOLAR_ABSORPTIVITY: f64 = 1300.0;
/// Molar mass, kg/mol, of C.I. Disperse Red 60 (C20H13NO4), computed from the formula.
const MOLAR_MASS: f64 = 0.331;

/// A single dye by the hue angle of the cloth it dyes, degrees; its absorption peak and width, nm.
struct Primary {
    hue: f64,
    peak: f64,
    width: f64,
}

// Peaks and widths of a red, a blue and a yellow dye; hues of plain cloths in those colours. Chosen for
// the model.
const BLUE: Primary = Primary { hue: 275.0, peak: 620.0, width: 40.0 };
const RED: Primary = Primary { hue: 30.0, peak: 520.0, width: 35.0 };
const YELLOW: Primary = Primary { hue: 90.0, peak: 435.0, width: 30.0 };

/// Kubelka-Munk absorption of one kilogram of dye in a cubic metre of film, m²/kg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DyeAbsorption(Spectrum);

impl DyeAbsorption {
    /// One dye with a Gaussian absorption band: peak (380 to 720 nm) and standard deviation (15 to 80 nm).
    #[must_use]
    pub fn band(peak: f64, width: f64) -> Self {
        let strongest = 2.0 * std::f64::consts::LN_10 * MOLAR_ABSORPTIVITY / MOLAR_MASS;
        Self(Spectrum::of(|wavelength| strongest * (-0.5 * ((wavelength - peak) / width).powi(2)).exp()))
    }

    /// The dye, or the pair of dyes, that gives a colour of this CIELAB hue angle, in degrees (any turn).
    ///
    /// From yellow through red and violet to blue it is one dye, its band moved in proportion to the hue;
    /// greens are a mixture of the yellow and the blue dye. Chosen for the model. A dark or dull cloth is
    /// dyed with several dyes, and the one that migrates first need not have the hue of the cloth.
    #[must_use]
    pub fn of_hue(hue: f64) -> Self {
        let between = |low: f64, high: f64, hue: f64| (hue - low) / (high - low);
        let blend = |from: &Primary, to: &Primary, share: f64| {
            Self::band(
                from.peak + share * (to.peak - from.peak),
                from.width + share * (to.width - from.width),
            )
        };
        let hue = hue.rem_euclid(360.0);
        if hue < RED.hue {
            blend(&BLUE, &RED, between(BLUE.hue - 360.0, RED.hue, hue))
        } else if hue < YELLOW.hue {
            blend(&RED, &YELLOW, between(RED.hue, YELLOW.hue, hue))
        } else if hue < BLUE.hue {
            let blue = between(YELLOW.hue, BLUE.hue, hue);
            Self::mixture(&[
                (Self::band(YELLOW.peak, YELLOW.width), 1.0 - blue),
                (Self::band(BLUE.peak, BLUE.width), blue),
            ])
        } else {
            blend(&BLUE, &RED, between(BLUE.hue, RED.hue + 360.0, hue))
        }
    }

    /// Several dyes, each with its share of the mass (0 to 1).
    #[must_use]
    pub fn mixture(parts: &[(Self, f64)]) -> Self {
        parts.iter().fold(Self(Spectrum::flat(0.0)), |sum, (dye, share)| {
            Self(sum.0.with(&dye.0, |total, part| total + share * part))
        })
    }

    /// Absorption per kilogram and cubic metre at each wavelength, m²/kg.
    #[must_use]
    pub fn spectrum(&self) -> &Spectrum {
        &self.0
    }
}

/// Dye in a film, spread evenly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DyeInFilm {
    /// Which dye.
    pub absorption: DyeAbsorption,
    /// Concentration, kg per m³ of film (0 and up; a red begins to show at about 0.03).
    pub concentration: f64,
}
