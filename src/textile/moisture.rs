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
/// With `w = R / R65` the curve is the quadratic `w phi² + (0.825 - w) phi - 0.3125 w = 0`.
#[inline(always)]
#[must_use]
pub fn balance_humidity<const L: usize>(water: Lanes<L>, regain_65: Lanes<L>) -> Lanes<L> {
    let (phi, _) = open_humidity((water / regain_65).max(Lanes::ZERO));
    phi.min(Lanes::splat(1.0))
}

/// The root of the quadratic of [`balance_humidity`] that is zero for dry cloth, and the root of its
/// discriminant. Smooth through zero; past 1 where the cloth is wet.
#[inline(always)]
fn open_humidity<const L: usize>(w: Lanes<L>) -> (Lanes<L>, Lanes<L>) {
    let b = -w + 0.825;
    let root = (b * b + w * w * 1.25).sqrt();
    // The form without cancellation on either side of w = 0.825.
    let positive = std::array::from_fn(|lane| b[lane] > 0.0);
    let above = Lanes::select(positive, w * 0.625, root - b);
    let below = Lanes::select(positive, b + root, w * 2.0);
    (above / below, root)
}

/// Factor of the sorption heat with its two fractions over their common denominator, J/kg.
const SORPTION: f64 = 195e3 * 1.25;

/// Heat that holds water in the fibre beyond evaporation, J/kg, at balance humidity `phi` (0 to 1).
#[inline(always)]
#[must_use]
pub fn sorption_heat<const L: usize>(phi: Lanes<L>) -> Lanes<L> {
    (-phi + 1.0) * SORPTION / ((phi + 0.2) * (-phi + 1.05))
}

/// Heat of evaporation of free water, J/kg, at `temperature` in K, 270 to 460.
///
/// Source: the quadratic of `adamcwatts/clothing_model`; within 0.2 % of CoolProp from 25 to 180 °C.
#[inline(always)]
#[must_use]
pub fn evaporation_heat<const L: usize>(temperature: Lanes<L>) -> Lanes<L> {
    -temperature * temperature * 3.43 - temperature * 160.0 + 2.792e6
}

/// Polynomial of ln(p / Pa) in `373.15 K / T - 1`, rising powers, fitted to IAPWS-IF97 region 4 from 265 to 520 K.
const LN_SATURATION: [f64; 6] =
    [11.527_033_368, -13.315_708_257, -1.946_252_266, 0.163_428_780, 1.596_391_246, -1.901_965_699];

/// Temperature beyond which the pressure over cloth is held, K. Cloth so hot holds less than a thousandth of
/// water in a dryer's air, and beyond it the equations of its water get stiffer with each kelvin.
const HOTTEST: f64 = 453.15;

/// Vapour pressure of free water, Pa, at `temperature` in K: within 0.02 % of the standard from 265 to 520 K;
/// beyond 250 to 600 K it is held.
///
/// Source: fitted to IAPWS-IF97, region 4; `tests/heat/moisture.rs` holds it to that standard's verification
/// values and to CoolProp.
#[inline(always)]
#[must_use]
pub fn saturation_pressure<const L: usize>(temperature: Lanes<L>) -> Lanes<L> {
    let x = temperature.clamp(250.0, 600.0).recip() * 373.15 - 1.0;
    polynomial(&LN_SATURATION, x).exp()
}

#[inline(always)]
fn polynomial<const L: usize>(coefficients: &[f64; 6], x: Lanes<L>) -> Lanes<L> {
    let [a, b, c, d, e, f] = *coefficients;
    ((((x * f + e) * x + d) * x + c) * x + b) * x + a
}

/// Vapour over a cloth, with its change by temperature and by water.
#[derive(Clone, Copy, Debug)]
pub struct VapourOverCloth<const L: usize> {
    /// Vapour pressure, Pa; negative for water below zero, so that rates stay smooth there.
    pub pressure: Lanes<L>,
    /// Heat that leaving water takes, evaporation and sorption together, J/kg.
    pub heat: Lanes<L>,
    /// Change of the pressure with temperature, Pa/K.
    pub per_kelvin: Lanes<L>,
    /// Change of the pressure with water, Pa per kg/kg.
    pub per_water: Lanes<L>,
}

/// Vapour over cloth of regain `water` (kg/kg, any sign) at `temperature` (K, held to 250 to 453), of a fibre
/// that holds `regain_65` at 65 % RH.
///
/// Water below zero is no state of a cloth, but a time step may pass through it: there the pressure goes on
/// along its slope at zero.
#[inline(always)]
#[must_use]
pub fn vapour_over_cloth<const L: usize>(
    water: Lanes<L>,
    regain_65: f64,
    temperature: Lanes<L>,
) -> VapourOverCloth<L> {
    const PER_KELVIN: f64 = MOLAR_MASS / GAS_CONSTANT;
    let one = Lanes::splat(1.0);
    let (open, root) = open_humidity(water * (1.0 / regain_65));
    let wet: [bool; L] = std::array::from_fn(|lane| open[lane] >= 1.0);
    let phi = open.min(one);
    let humidity_per_water = (phi - phi * phi + 0.3125) / root * (1.0 / regain_65);

    // Sorption heat, for water below zero held at that of dry fibre, and its fall with humidity.
    let held = phi.max(Lanes::ZERO);
    let product = ((held + 0.2) * (-held + 1.05)).recip();
    let sorption = (-held + 1.0) * product * SORPTION;
    let falls = product * SORPTION * ((-held + 1.0) * product * (-held * 2.0 + 0.85) + 1.0);
    let damp: [bool; L] = std::array::from_fn(|lane| phi[lane] > 0.0);
    let fall = Lanes::select(damp, falls, Lanes::ZERO);

    let beyond: [bool; L] = std::array::from_fn(|lane| !(250.0..HOTTEST).contains(&temperature[lane]));
    let inverse = temperature.clamp(250.0, HOTTEST).recip();
    let x = inverse * 373.15 - 1.0;
    let free = polynomial(&LN_SATURATION, x).exp();
    let shift = (inverse - 1.0 / 298.15) * PER_KELVIN;
    let loosened = (-sorption * shift).exp();
    let activity = phi * loosened;
    // Where the curves would have sorbed water press harder than free water, it presses as hard.
    let as_free = std::array::from_fn(|lane| wet[lane] || activity[lane] >= 1.0);
    let pressure = free * activity.min(one);
    let [_, b, c, d, e, f] = LN_SATURATION;
    let saturation_slope = (((x * (5.0 * f) + 4.0 * e) * x + 3.0 * d) * x + 2.0 * c) * x + b;
    let sorbed = Lanes::select(as_free, Lanes::ZERO, sorption) * PER_KELVIN;
    let per_water = free * loosened * humidity_per_water * (phi * shift * fall + 1.0);
    VapourOverCloth {
        pressure,
        heat: evaporation_heat(inverse.recip()) + sorption,
        per_kelvin: Lanes::select(
            beyond,
            Lanes::ZERO,
            pressure * inverse * inverse * (sorbed - saturation_slope * 373.15),
        ),
        per_water: Lanes::select(as_free, Lanes::ZERO, per_water),
    }
}
