//! Quantities: SI inside, shop units only at the edge.
//!
//! A bare `f64` is in the SI unit that its comment names. Where a mix-up would go unnoticed, a type names the
//! unit: [`Share`] and [`Percent`], [`Celsius`] and [`TemperatureDifference`], [`MetresPerMinute`],
//! [`DeltaE`]. [`Band`] is a value with its spread, [`Bound`] the accepted range of one field, [`FieldError`]
//! a rejected value with its field and the accepted range, [`Sourced`] a number of `data/` with unit, range
//! and source, [`Day`] a calendar day. Must not know: cloth, ink, dryers.

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
