//! How much faster an oven ages a stored print than a shelf does.
//!
//! Two processes go on in a stored print, and heat speeds them up by different factors:
//!
//! ```text
//! in the film          D(oven) / D(shelf)                          80 kJ/mol: about 30 times from 25 to 60 °C
//! from facing cloth    [D_air P M / (R T)](oven) / (shelf)         140 kJ/mol of vapour: about 400 times
//! ```
//!
//! So a print that stays clean in the oven has passed for the film, and for more than its time against facing cloth.
//! One that stains may show what never happens at room temperature. Above [`OVEN_CEILING`] the test no longer stands
//! for a shelf: above its glass transition, 70 to 90 °C ([`GLASS_TRANSITION`]), dry polyester releases dye that it
//! holds at room temperature.

use super::{Dye, FilmDiffusion};
use crate::numerics::Lanes;

/// Hottest oven that still stands for a shelf, K: 60 °C, 15 K below the glass transition of polyester. Chosen.
pub const OVEN_CEILING: f64 = 333.15;
/// Glass transition of dry polyester, K: 70 to 90 °C, commonly 75 to 82 (temperature-modulated calorimetry; 15 K
/// lower if wet and amorphous, Illers and Breuer 1963 as cited in the Handbook of Fiber Chemistry).
pub const GLASS_TRANSITION: f64 = 348.15;

/// How many times faster an oven works than a shelf.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Acceleration {
    /// For dye that spreads in the film.
    pub film: f64,
    /// For dye that comes over from facing cloth.
    pub cloth: f64,
}

/// How many times faster both processes are at `oven` than at `shelf`, K.
#[must_use]
pub fn acceleration(diffusion: &FilmDiffusion, dye: &Dye, oven: f64, shelf: f64) -> Acceleration {
    let at = Lanes([oven, shelf]);
    let ratio = |Lanes([hot, cool]): Lanes<2>| hot / cool.max(f64::MIN_POSITIVE);
    Acceleration { film: ratio(diffusion.at(at)), cloth: ratio(dye.vapour_flux(at)) }
}
