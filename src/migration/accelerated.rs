//! A day in the oven for weeks on a shelf.
//!
//! Two things go on in stored prints, and heat quickens them differently:
//!
//! ```text
//! in the film          D(oven) / D(shelf)                          80 kJ/mol: about 30 times from 25 to 60 °C
//! from facing cloth    [D_air P M / (R T)](oven) / (shelf)         140 kJ/mol of vapour: about 400 times
//! ```
//!
//! So an oven that stays clean has proved the film and more than proved the cloth that lies on it; one that stains may
//! have shown what a room never would. Above [`OVEN_CEILING`] the test proves another thing altogether: dry polyester opens
//! at 70 to 90 °C ([`GLASS_TRANSITION`]) and lets go of dye that no shelf would free.

use super::{Dye, FilmDiffusion};
use crate::numerics::Lanes;

/// Hottest oven that still stands for a shelf, K: 60 °C, 15 K under where polyester opens.
pub const OVEN_CEILING: f64 = 333.15;
/// Glass transition of dry polyester, K: 70 to 90 °C, commonly 75 to 82 (temperature-modulated calorimetry; wet and
/// amorphous it lies 15 K lower, Illers and Breuer 1963 as cited in the Handbook of Fiber Chemistry).
pub const GLASS_TRANSITION: f64 = 348.15;

/// How many times faster an oven works than a shelf.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Acceleration {
    /// Dye that spreads in the film.
    pub film: f64,
    /// Dye that comes over from cloth.
    pub cloth: f64,
}

/// How many times faster both go at `oven` than at `shelf`, K.
#[must_use]
pub fn acceleration(diffusion: &FilmDiffusion, dye: &Dye, oven: f64, shelf: f64) -> Acceleration {
    let at = Lanes([oven, shelf]);
    let ratio = |Lanes([hot, cool]): Lanes<2>| hot / cool.max(f64::MIN_POSITIVE);
    Acceleration { film: ratio(diffusion.at(at)), cloth: ratio(dye.vapour_flux(at)) }
}
