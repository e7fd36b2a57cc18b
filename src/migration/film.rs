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

    /// How many times faster dye spreads in a film that has not fused at all: assumed, 3 to 30. Until the grains of
    /// resin have melted together, plasticiser lies between them.
    pub const UNFUSED: f64 = 10.0;
    /// Reducer that doubles the diffusivity, %: assumed, 5 to 20.
    pub const REDUCER_DOUBLES: f64 = 10.0;

    /// How much faster than in a fused film dye spreads at this fused share.
    #[must_use]
    pub fn unfused_factor(fused: Share) -> f64 {
        1.0 + (Self::UNFUSED - 1.0) * (1.0 - fused.clamped().0)
    }

    /// The same white with this much reducer in it.
    #[must_use]
    pub fn with_reducer(self, reducer: Percent) -> Self {
        Self { at_25c: self.at_25c * (reducer.0.max(0.0) / Self::REDUCER_DOUBLES).exp2(), ..self }
    }

    /// The film as it came out of the heat, fused to this share.
    #[must_use]
    pub fn at_fused_share(self, fused: Share) -> Self {
        Self { at_25c: self.at_25c * Self::unfused_factor(fused), ..self }
    }
}

/// What holds dye fast between the cloth and the eye.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Binding {
    /// Dye that the printed ink of one square metre can hold at most, white and blocker together, kg/m².
    pub capacity: f64,
    /// Film that the rest spreads through, m.
    pub film: f64,
}

impl Binding {
    /// Dye that fills the film evenly to `free` kg/m³, kg/m²: what [`Self::free`] undoes.
    #[must_use]
    pub fn balance(&self, free: f64) -> f64 {
        free * (self.film + self.capacity / (free + Self::HALF_BOUND))
    }

    /// Free dye at which half of the binding sites are taken, kg/m³. Assumed, 0.005 to 0.05: a white that blocks holds
    /// traces under what can be seen (0.03) and lets go of more as its sites fill.
    pub const HALF_BOUND: f64 = 0.02;

    /// Dye left free, as a mean over the film, kg/m³, of `arrived` kg/m².
    ///
    /// Langmuir's balance, `arrived = film c + capacity c / (c + K)`: the positive root of its quadratic. Rises with
    /// what arrived, falls with the capacity; without capacity all of it is free.
    #[must_use]
    pub fn free(&self, arrived: f64) -> f64 {
        let (film, half) = (self.film, Self::HALF_BOUND);
        let b = film * half + self.capacity - arrived;
        let root = (b * b + 4.0 * film * arrived.max(0.0) * half).sqrt();
        // The form that does not cancel, whichever sign b has.
        if b > 0.0 { 2.0 * arrived.max(0.0) * half / (b + root) } else { (root - b) / (2.0 * film) }
    }
}

/// Depth that the eye judges a white by, m. 34 to 52 µm computed for a white of S 0.15/µm; 30 is on the safe side.
pub const VISIBLE_DEPTH: f64 = 30e-6;
