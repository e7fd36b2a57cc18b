//! Water in cloth: how much it holds, how strongly, and the vapour pressure over it.
//!
//! A fibre takes up water from humid air until the two are in balance. Relative to its regain at 65 % RH that
//! balance is nearly the same curve for every textile fibre,
//!
//! ```text
//! R / R65 = 0.55 phi [ 1 / (0.25 + phi) + 1 / (1.25 - phi) ]            phi = relative humidity, 0 to 1
//! ```
//!
//! Evaporating it takes the heat of evaporation plus the sorption heat
//!
//! ```text
//! Ql = 195 J/g (1 - phi) [ 1 / (0.2 + phi) + 1 / (1.05 - phi) ]
//! ```
//!
//! so that the vapour pressure over cloth of regain `R` at temperature `T` is, by Clausius and Clapeyron,
//! `p = phi(R) exp(-Ql M / Rg (1/T - 1/298.15 K)) psat(T)`.
//!
//! Sources: both curves as in the open code `adamcwatts/clothing_model`, which cites Neves et al. 2015;
//! checked in `tests/heat/moisture.rs` against heats of wetting of Morton & Hearle, table 8.1. Saturation
//! pressure: IAPWS-IF97, region 4.

use crate::numerics::Lanes;
use crate::quantity::GAS_CONSTANT;

/// Molar mass of water, kg/mol. Source: IAPWS.
pub const MOLAR_MASS: f64 = 0.018_015_268;

/// Specific heat of liquid water, J/(kg K), 0 to 100 °C within 0.5 %. Source: IAPWS-IF97 at 25 °C is 4182.
pub const HEAT_CAPACITY: f64 = 4186.0;

/// Regain in balance with air of humidity `phi` (0 to 1), kg/kg, of a fibre that holds `regain_65` at 65
/// % RH.
#[must_use]
pub fn regain(phi: f64, regain_65: f64) -> f64 {
    regain_65 * 0.55 * phi * (1.0 / (0.25 + phi) + 1.0 / (1.25 - phi))
}

/// Humidity in balance with cloth of regain `water`: the inverse of [`regain`], held at 1 for wet cloth.
///
/// With `w = R / R65` the curve is the quadratic `w phi² - (w - 0.825) phi - 0.3125 w = 0`.
#[inline(always)]
#[must_use]
pub fn balance_humidity<const L: usize>(water: Lanes<L>, regain_65: Lanes<L>) -> Lanes<L> {
    let w = (water / regain_65).max(Lanes::splat(1e-12));
    let b = -w + 0.825;
    let root = (b * b + w * w * 1.25).sqrt();
    // The root that is zero for dry cloth, in the form without cancellation on either side of w = 0.825.
    let positive = std::array::from_fn(|lane| b[lane] > 0.0);
    let above = Lanes::select(positive, w * 0.625, root - b);
    let below = Lanes::select(positive, b + root, w * 2.0);
    (above / below).min(Lanes::splat(1.0))
}

/// Heat that holds water in the fibre beyond evaporation, J/kg, at balance humidity `phi` (0 to 1).
#[inline(always)]
#[must_use]
pub fn sorption_heat<const L: usize>(phi: Lanes<L>) -> Lanes<L> {
    // 1 / (0.2 + phi) + 1 / (1.05 - phi) over their common denominator.
    (-phi + 1.0) * (195e3 * 1.25) / ((phi + 0.2) * (-phi + 1.05))
}

/// Heat of evaporation of free water, J/kg, at `temperature` in K, 270 to 460.
///
/// Source: the quadratic of `adamcwatts/clothing_model`; within 0.2 % of CoolProp from 25 to 180 °C.
#[inline(always)]
#[must_use]
pub fn evaporation_heat<const L: usize>(temperature: Lanes<L>) -> Lanes<L> {
    -temperature * temperature * 3.43 - temperature * 160.0 + 2.792e6
}

/// Vapour pressure of free water, Pa, at `temperature` in K, 273.15 to 647 (held at those ends beyond).
///
/// Source: IAPWS-IF97 region 4, equation 30; its verification values are in `tests/heat/moisture.rs`.
#[inline(always)]
#[must_use]
pub fn saturation_pressure<const L: usize>(temperature: Lanes<L>) -> Lanes<L> {
    let t = temperature.clamp(273.15, 647.0);
    let theta = t - (t - 0.650_175_348_447_98e3).recip() * 0.238_555_575_678_49;
    let a = theta * theta + theta * 0.116_705_214_527_67e4 - 0.724_213_167_032_06e6;
    let b = -theta * theta * 0.170_738_469_400_92e2 + theta * 0.120_208_247_024_70e5 - 0.323_255_503_223_33e7;
    let c = theta * theta * 0.149_151_086_135_30e2 - theta * 0.482_326_573_615_91e4 + 0.405_113_405_420_57e6;
    let root = c * 2.0 / ((b * b - a * c * 4.0).sqrt() - b);
    let square = root * root;
    square * square * 1e6
}

/// Vapour pressure over cloth of regain `water` at `temperature` (K), Pa, and the sorption heat, J/kg.
#[inline(always)]
#[must_use]
pub fn vapour_over_cloth<const L: usize>(
    water: Lanes<L>,
    regain_65: Lanes<L>,
    temperature: Lanes<L>,
) -> (Lanes<L>, Lanes<L>) {
    let phi = balance_humidity(water, regain_65);
    let heat = sorption_heat(phi);
    let shift =
        (heat * (MOLAR_MASS / GAS_CONSTANT) * (temperature.recip() - 1.0 / 298.15)).clamp(-60.0, 60.0);
    let activity = (phi * (-shift).exp()).min(Lanes::splat(1.0));
    (activity * saturation_pressure(temperature), heat)
}
