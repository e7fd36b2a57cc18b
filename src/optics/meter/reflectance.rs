//! From the bands of a meter to a colour: interpolate to 5 nm, then sum.
//!
//! ```text
//! X = Σ R(λ) wX(λ) over 380 … 780 nm by 5 nm, likewise Y and Z
//! R between bands: the cubic through the two bands on either side (Lagrange), at the ends the parabola of three
//! R outside the bands: that of the last band
//! ```
//!
//! Source: the interpolation and the treatment of the ends of ASTM E2022 and E308, from memory.
use super::MeterProblem;
use super::weights::{FIRST, STEP, WEIGHTS};
use crate::optics::{Lab, Spectrum, Xyz};

/// Widest step between bands, nm.
const WIDEST_STEP: f64 = 20.0;
/// Range that the bands must cover, nm.
const NEEDED: [f64; 2] = [400.0, 700.0];

/// Evenly spaced bands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct BandGrid {
    first: f64,
    step: f64,
    count: usize,
}

impl BandGrid {
    /// The grid of wavelengths in nm, sorted.
    pub(super) fn of(wavelengths: &[f64]) -> Result<Self, MeterProblem> {
        let (Some(&first), Some(&last)) = (wavelengths.first(), wavelengths.last()) else {
            return Err(MeterProblem::NoColours);
        };
        if first > NEEDED[0] || last < NEEDED[1] {
            return Err(MeterProblem::ShortSpectrum { from: first, to: last });
        }
        let count = wavelengths.len();
        let step = (last - first) / (count - 1) as f64;
        let even = (0..).zip(wavelengths).all(|(i, at)| (first + step * f64::from(i) - at).abs() < 0.01);
        if !even || step > WIDEST_STEP {
            return Err(MeterProblem::UnevenWavelengths);
        }
        Ok(Self { first, step, count })
    }

    /// Lab of reflectances at the bands, D65/10°.
    pub(super) fn lab(&self, values: &[f64]) -> Lab {
        let mut sum = [0.0; 3];
        for (i, weights) in (0..).zip(&WEIGHTS) {
            let reflectance = self.at(values, FIRST + STEP * f64::from(i));
            for (total, weight) in sum.iter_mut().zip(weights) {
                *total += reflectance * weight;
            }
        }
        let [x, y, z] = sum;
        Xyz { x, y, z }.into()
    }

    /// The spectrum of sixteen wavelengths of reflectances at the bands, cut to 0 to 1.
    pub(super) fn spectrum(&self, values: &[f64]) -> Spectrum {
        Spectrum::of(|wavelength| self.at(values, wavelength).clamp(0.0, 1.0))
    }

    /// Reflectance at a wavelength.
    fn at(&self, values: &[f64], wavelength: f64) -> f64 {
        let last = (self.count - 1) as f64;
        let place = ((wavelength - self.first) / self.step).clamp(0.0, last);
        let before = place.floor().min(last - 1.0).max(0.0);
        // Two bands on either side; at the ends one on the outer side is missing.
        let from = (before - 1.0).max(0.0) as usize;
        let to = ((before + 2.0).min(last)) as usize;
        let nodes = values.iter().enumerate().take(to + 1).skip(from);
        nodes
            .clone()
            .map(|(i, value)| {
                let others = nodes.clone().map(|(j, _)| j).filter(|j| *j != i);
                value * others.map(|j| (place - j as f64) / (i as f64 - j as f64)).product::<f64>()
            })
            .sum()
    }
}
