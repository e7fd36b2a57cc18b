//! Quantities: SI inside, shop units only at the edge.
//!
//! Hands out [`Band`] (a value that knows how sure it is), [`Bound`] (one named place for a field's accepted
//! range), [`FieldError`] (a bad value, by field, with the way out), [`Sourced`] (a number from `data/` with
//! its unit, range and source) and the unit conversions of the shop. Knows nothing of cloth, ink or dryers.

mod band;
mod bound;
mod day;
mod shop_units;
mod sourced;
pub mod units;

pub use band::Band;
pub use bound::{Bound, FieldError, Problem};
pub use day::Day;
pub use shop_units::{Celsius, DeltaE, MetresPerMinute, Percent, Share, TemperatureDifference};
pub use sourced::Sourced;

/// Molar gas constant, J/(mol K). Source: CODATA 2018 (exact).
pub const GAS_CONSTANT: f64 = 8.314_462_618;
/// Stefan-Boltzmann constant, W/(m² K⁴). Source: CODATA 2018.
pub const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;
/// Standard atmosphere, Pa. Source: ISO 2533 (exact by definition).
pub const ATMOSPHERE: f64 = 101_325.0;
/// 0 °C in kelvin. Source: SI brochure (exact).
pub const ZERO_CELSIUS: f64 = 273.15;
