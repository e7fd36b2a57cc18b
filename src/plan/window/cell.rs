//! What a window keeps of a temperature history, in the form that interpolates best between the cells.

use super::outcome::Outcome;

/// Values of a cell from the printed stack: two fused shares, peaks of film top, film bottom and cloth,
/// scorch, dye.
pub const PRINTED: usize = 7;
/// Values of a cell from the bare cloth beside the print: peak and scorch. Which of the two is hotter is
/// decided after the interpolation, because the larger of both has a kink.
pub const BESIDE: usize = 2;
const FIELDS: usize = PRINTED + BESIDE;

/// One cell: logits of fused shares, kelvins, logarithms of scorch and dye.
#[derive(Clone, Copy, Debug)]
pub struct Cell([f64; FIELDS]);

impl Cell {
    /// The empty sum.
    pub const ZERO: Self = Self([0.0; FIELDS]);

    /// A cell from the values of the printed stack and of the bare cloth.
    pub fn of(print: &[f64; PRINTED], beside: &[f64; BESIDE]) -> Self {
        let [fused, low, top, bottom, face, scorch, dye] = *print;
        let [bare, bare_scorch] = *beside;
        Self([fused, low, top, bottom, face, scorch, dye, bare, bare_scorch])
    }

    /// Adds `weight` times another.
    pub fn add(&mut self, weight: f64, other: &Self) {
        for (sum, value) in self.0.iter_mut().zip(other.0) {
            *sum += weight * value;
        }
    }

    /// Logits of the fused shares.
    pub fn fused(&self) -> [f64; 2] {
        [self.0[0], self.0[1]]
    }

    /// Highest temperature of the film, K.
    pub fn film_peak(&self) -> f64 {
        self.0[2]
    }

    /// Highest temperature of the film's bottom, K.
    pub fn bottom_peak(&self) -> f64 {
        self.0[3]
    }

    /// Highest temperature of the cloth under the print or beside it, whichever is hotter, K.
    pub fn cloth_peak(&self) -> f64 {
        larger(self.0[4], self.0[7])
    }

    /// Logarithm of the scorch index of the hotter of the two.
    pub fn scorch(&self) -> f64 {
        larger(self.0[5], self.0[8])
    }

    /// Logarithm of the dye plus [`NO_DYE`], kg/m².
    pub fn dye(&self) -> f64 {
        larger(self.0[6], LN_NO_DYE)
    }

    /// The same as plain values.
    pub fn outcome(&self) -> Outcome {
        Outcome {
            fused: self.fused().map(unlogit),
            film_peak: self.film_peak(),
            bottom_peak: self.0[3],
            cloth_peak: self.cloth_peak(),
            scorch: self.scorch().exp(),
            dye: self.0[6].exp() - NO_DYE,
        }
    }
}

/// Added to the dye so that a cloth without any has a logarithm, kg/m²: a thousandth of what can be seen.
pub const NO_DYE: f64 = 1e-9;
/// Logarithm of [`NO_DYE`].
const LN_NO_DYE: f64 = -20.723_265_836_946_41;

/// The larger of two numbers. In wasm [`f64::max`] is a function call, because of its rule for NaN.
pub fn larger(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

/// Logit of a share, clamped far out where it no longer matters: a kink nearer in would make the
/// interpolation ring between the cells.
pub fn logit(share: f64) -> f64 {
    let share = share.clamp(1e-9, 1.0 - 1e-9);
    (share / (1.0 - share)).ln()
}

fn unlogit(value: f64) -> f64 {
    1.0 / (1.0 + (-value).exp())
}
