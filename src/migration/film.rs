//! Dye in the film: how fast it spreads, and what binds it.

use crate::numerics::Lanes;
use crate::quantity::{GAS_CONSTANT, Percent, Share};

/// How dye spreads through a fused film.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FilmDiffusion {
    /// Diffusivity at 25 °C, m²/s. 1e-15 to 1e-13, assumed: the weakest number of the model.
    pub at_25c: f64,
    /// Activation energy, J/mol. 70 to 89 kJ/mol (WLF average 76; DEHP in PVC 89, Ekelund et al., abstract).
    pub energy: f64,
}

impl FilmDiffusion {
    /// Diffusivity at `temperature` (K), m²/s.
    #[must_use]
    pub fn at<const L: usize>(&self, temperature: Lanes<L>) -> Lanes<L> {
        ((-temperature.recip() + 1.0 / 298.15) * (self.energy / GAS_CONSTANT)).exp() * self.at_25c
    }

    /// How many times faster dye spreads in a film that has not fused at all: 3 to 30, assumed, no source. Until the
    /// grains of resin have melted together, plasticiser fills the space between them.
    pub const UNFUSED: f64 = 10.0;
    /// Reducer that doubles the diffusivity, %: 5 to 20, assumed, no source.
    pub const REDUCER_DOUBLES: f64 = 10.0;

    /// How many times faster than in a fused film dye spreads at this fused share.
    #[must_use]
    pub fn unfused_factor(fused: Share) -> f64 {
        1.0 + (Self::UNFUSED - 1.0) * (1.0 - fused.clamped().0)
    }

    /// The same white with this much reducer in it.
    #[must_use]
    pub fn with_reducer(self, reducer: Percent) -> Self {
        Self { at_25c: self.at_25c * (reducer.0.max(0.0) / Self::REDUCER_DOUBLES).exp2(), ..self }
    }

    /// The diffusion in a film that left the dryer fused to this share.
    #[must_use]
    pub fn at_fused_share(self, fused: Share) -> Self {
        Self { at_25c: self.at_25c * Self::unfused_factor(fused), ..self }
    }
}

/// Binding of dye in the film, by the white and its blocker.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Binding {
    /// Largest amount of dye that the film can bind, white and blocker together, kg per m² of print.
    pub capacity: f64,
    /// Thickness of film through which the free dye spreads, m.
    pub film: f64,
}

impl Binding {
    /// Dye in a film in which `free` kg/m³ are free everywhere, kg/m²; the inverse of [`Self::free`].
    #[must_use]
    pub fn balance(&self, free: f64) -> f64 {
        free * (self.film + self.capacity / (free + Self::HALF_BOUND))
    }

    /// Free dye at which half of the binding sites are taken, kg/m³: 0.005 to 0.05, assumed, no source. A white that
    /// blocks keeps traces below what is visible (0.03) and leaves more dye free as its sites fill.
    pub const HALF_BOUND: f64 = 0.02;

    /// Free dye, as a mean over the film, kg/m³, after `arrived` kg/m² of dye have entered it.
    ///
    /// The positive root of Langmuir's balance, `arrived = film c + capacity c / (c + K)`. It rises with the dye that
    /// arrived and falls with the capacity; without capacity all dye is free.
    #[must_use]
    pub fn free(&self, arrived: f64) -> f64 {
        let (film, half) = (self.film, Self::HALF_BOUND);
        let b = film * half + self.capacity - arrived;
        let root = (b * b + 4.0 * film * arrived.max(0.0) * half).sqrt();
        // For each sign of b the form of the root that does not subtract nearly equal numbers.
        if b > 0.0 { 2.0 * arrived.max(0.0) * half / (b + root) } else { (root - b) / (2.0 * film) }
    }
}

/// Depth of film that an eye sees into a white, m. 34 to 52 µm computed for a white that scatters 0.15/µm; 30 is on
/// the safe side.
pub const VISIBLE_DEPTH: f64 = 30e-6;
