use crate::dryer::History;
use crate::numerics::Lanes;
use crate::numerics::normal::complementary_error;
use crate::quantity::GAS_CONSTANT;

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

    /// `integral of D dt` over a history, m², taken at the film's bottom.
    #[must_use]
    pub fn over<const L: usize>(&self, history: &History<L>) -> Lanes<L> {
        let mut path = Lanes::ZERO;
        history
            .walk(|sample| sample.film_bottom, |seconds, temperature| path += self.at(temperature) * seconds);
        path
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

/// Concentration in the top [`VISIBLE_DEPTH`] against the mean, for dye that entered a film of thickness `film` (m)
/// from below and has spread for `path = integral of D dt` (m²).
///
/// An instantaneous plane source in a closed sheet (Crank, The Mathematics of Diffusion, 2.3): by images while the
/// dye is on its way, by the cosine series after, each where it needs few terms; they agree to 1e-9 where they meet.
/// Between 0 (nothing has arrived) and 1 (even).
#[must_use]
pub fn top_share(path: f64, film: f64) -> f64 {
    let fourier = path / (film * film);
    if !fourier.is_finite() {
        return 1.0;
    }
    let depth = (VISIBLE_DEPTH / film).min(1.0);
    let share = if fourier < 0.05 { by_images(fourier, depth) } else { by_cosines(fourier, depth) };
    share.clamp(0.0, 1.0)
}

/// The source and its images in both faces: two error functions, the next pair is under 1e-9.
fn by_images(fourier: f64, depth: f64) -> f64 {
    let spread = 2.0 * fourier.max(0.0).sqrt();
    let reached = |distance: f64| if spread > 0.0 { complementary_error(distance / spread) } else { 0.0 };
    // All of a film that is no thicker than the eye looks is the top, wherever its dye lies.
    if depth >= 1.0 { 1.0 } else { (reached(1.0 - depth) - reached(1.0 + depth)) / depth }
}

fn by_cosines(fourier: f64, depth: f64) -> f64 {
    let mut sum = 1.0;
    for n in 1..20 {
        let n_pi = f64::from(n) * std::f64::consts::PI;
        let sign = if n % 2 == 0 { 2.0 } else { -2.0 };
        sum += sign * (-n_pi * n_pi * fourier).exp() * (n_pi * depth).sin() / (n_pi * depth);
    }
    sum
}
