//! Evaporation from a cloth, with its derivatives by water and temperature.
//!
//! Vapour diffuses through the cloth and an air layer against the counterflow of air (Stefan flow):
//!
//! ```text
//! J = M P / (R T) ln[(P - p_air) / (P - p)] / (sum of resistances),     p the vapour pressure over the cloth
//! air layer   rho c_p Le^(2/3) / h          cloth   thickness / (opening D),  D = D_298 (T / 298 K)^1.75
//! ```
//!
//! The density `rho` is that at the mean of air and cloth temperature: with the density of the hot air the
//! wet-bulb temperature comes out 3 K too low.

use super::surroundings::Surroundings;
use crate::dryer::machine::air;
use crate::numerics::Lanes;
use crate::quantity::{ATMOSPHERE, GAS_CONSTANT};
use crate::textile::moisture;
use std::ops::Range;

/// Lewis number of water vapour in air to the power 2/3: `0.90^(2/3)`. Le 0.85 to 1.0, from memory.
const LEWIS: f64 = 0.932_169_751_786_0;
/// Diffusivity of water vapour in air at 298 K, m²/s, rising with T^1.75. 2.2e-5 to 2.6e-5, from memory.
const VAPOUR_DIFFUSIVITY: f64 = 2.2e-5;
/// Share of the cloth's thickness that is open to vapour, tortuosity included. 0.3 to 0.6, assumed.
pub(super) const VAPOUR_OPENING: f64 = 0.4;
/// Largest vapour pressure over a cloth, as a share of the atmosphere: the logarithm of the Stefan flow has a
/// pole at 1.
const BOILING: f64 = 0.97;

/// Resistance of an air layer to vapour, times `h (T + T_air)`.
const AIR_LAYER: f64 = 2.0 * ATMOSPHERE / air::GAS_CONSTANT * air::HEAT_CAPACITY * LEWIS;
/// Resistance of a metre of cloth to vapour at 298 K, s/m².
const CLOTH: f64 = 1.0 / (VAPOUR_OPENING * VAPOUR_DIFFUSIVITY);

/// The paths of a cloth's vapour into the air.
#[derive(Clone, Copy, Debug)]
pub(super) struct VapourPaths {
    /// Thickness of cloth on the path downwards, m.
    pub path: f64,
    /// Air layers on the path downwards, in units of the resistance of one.
    pub layers: f64,
    /// Thickness of cloth on the path upwards, m; `None` under a film.
    pub above: Option<f64>,
}

/// A cloth of the chain with its water.
#[derive(Clone, Debug)]
pub(super) struct WetCloth {
    /// Its nodes.
    pub nodes: Range<usize>,
    /// Dry mass, kg/m².
    pub mass: f64,
    /// Regain at 65 % RH.
    pub regain_65: f64,
    /// The paths of its vapour.
    pub paths: VapourPaths,
}

/// Evaporation of one cloth.
pub(super) struct Evaporation<const L: usize> {
    /// Vapour flux, kg/(m² s).
    pub flux: Lanes<L>,
    /// Heat of evaporation and desorption, J/kg.
    pub heat: Lanes<L>,
    /// Change of the flux with the cloth's temperature, kg/(m² s K).
    pub per_kelvin: Lanes<L>,
    /// Change of the flux with the cloth's water, kg/(m² s) per kg/kg.
    pub per_water: Lanes<L>,
}

impl WetCloth {
    /// Evaporation at a mean cloth temperature, K, with `water` in kg/kg.
    ///
    /// Divisions dominate the cost, so fractions are brought to common denominators where that saves one.
    /// Inlined, so that the compiler drops the derivatives where only the flux is used.
    #[inline(always)]
    pub(super) fn evaporation<const L: usize>(
        &self,
        at: &Surroundings<L>,
        water: Lanes<L>,
        temperature: Lanes<L>,
    ) -> Evaporation<L> {
        let water = water.max(Lanes::ZERO);
        let temperature = temperature.clamp(230.0, 900.0);
        let regain_65 = Lanes::splat(self.regain_65);
        let (free, sorption) = moisture::vapour_over_cloth(water, regain_65, temperature);
        let phi = moisture::balance_humidity(water, regain_65);
        let most = Lanes::splat(BOILING * ATMOSPHERE);
        let pressure = free.min(most);

        // Air layer: 1 / h_m = rho c_p Le^(2/3) / h with rho = 2 P / (R (T + T_air)). Cloth: path / (opening
        // D), D = D_298 (T / 298)^1.75. `open` is the inverse of their sum.
        let reduced = temperature * (1.0 / 298.0);
        let square = reduced * reduced;
        let quartic = reduced.sqrt().sqrt();
        let way = |h: Lanes<L>, path: f64, layers: f64| {
            let exposed = (temperature + at.air) * h;
            exposed * reduced / (square * (layers * AIR_LAYER) + quartic * exposed * (path * CLOTH))
        };
        let mut open = way(at.h_bottom, self.paths.path, self.paths.layers);
        if let Some(above) = self.paths.above {
            open += way(at.h_top, above, 1.0);
        }
        let mobility = open * (moisture::MOLAR_MASS * ATMOSPHERE / GAS_CONSTANT / 298.0);
        let room = -pressure + ATMOSPHERE;
        let flux = -mobility * (room * (1.0 / (ATMOSPHERE - at.vapour))).ln();
        let heat = moisture::evaporation_heat(temperature) + sorption;

        let boiling = std::array::from_fn(|lane| free[lane] >= most[lane]);
        let per_pressure = Lanes::select(boiling, Lanes::ZERO, mobility / room);
        let pressure_per_kelvin =
            pressure * heat * (moisture::MOLAR_MASS / GAS_CONSTANT) / (temperature * temperature);
        let span = (phi + 0.25) * (-phi + 1.25);
        // The floor lies far below any humidity that matters: a higher one removes the steep slope of a dry
        // hot cloth, and the time steps then oscillate.
        let humidity_per_water =
            span * span / ((phi * phi + 0.3125) * phi.max(Lanes::splat(1e-15)) * (0.825 * self.regain_65));
        let wetted = std::array::from_fn(|lane| phi[lane] >= 1.0);
        let pressure_per_water = Lanes::select(wetted, Lanes::ZERO, pressure * humidity_per_water);
        Evaporation {
            flux,
            heat,
            per_kelvin: per_pressure * pressure_per_kelvin,
            per_water: per_pressure * pressure_per_water,
        }
    }
}
