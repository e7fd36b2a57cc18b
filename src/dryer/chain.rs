//! The equations of the stack: heat through film, cloths and belt; water out of the cloths.
//!
//! Nodes lie on the layers' faces (half cells at the ends), so the film's bottom is a node and not a guess
//! between two. For each node
//!
//! ```text
//! C_i dT_i/dt = G_(i-1) (T_(i-1) - T_i) - G_i (T_i - T_(i+1)) - w_i J (h_fg + Q_l)
//! top:    h_top (T_air - T) + S - R T^4        S = F s T_panel^4 + (e - F)/2 s T_air^4, R = F s + (e - F)/2 s
//! lamp:   the same with a_film F for F, and t_film a_cloth F s (T_lamp^4 - T_air^4) into the cloth's face
//! belt:   C_b dT_b/dt = h_bottom (T_air - T_b) + s/2 (T_air^4 - T_b^4) - G (T_b - T_last)
//! water:  m dW/dt = -J,    J = M P / (R T) ln[(P - p_air) / (P - p)] / resistance     (Stefan flow)
//! ```
//!
//! The film lets no vapour through, so the front cloth dries downwards, through the back; beside the print it dries
//! upwards as well. The mass transfer
//! coefficient is `h / (rho c_p Le^(2/3))` with the density of the air at film temperature: with that of the hot
//! air the wet bulb comes out 3 K low. The tests below hold it to the psychrometer's wet bulb; `tests/history.rs`
//! holds the whole chain to another solver on another grid.

use super::{Emitter, Film, NearInfrared, air};
use crate::numerics::Lanes;
use crate::numerics::march::{Jacobian, State, System};
use crate::quantity::{ATMOSPHERE, GAS_CONSTANT, STEFAN_BOLTZMANN};
use crate::textile::moisture;
use std::ops::Range;

/// Lewis number of water vapour in air to the power 2/3: `0.90^(2/3)`. Le 0.85 to 1.0, from memory.
const LEWIS: f64 = 0.932_169_751_786_0;
/// Diffusivity of water vapour in air at 298 K, m²/s, rising with T^1.75. 2.2e-5 to 2.6e-5, from memory.
const VAPOUR_DIFFUSIVITY: f64 = 2.2e-5;
/// Share of the cloth's thickness that is open to vapour, tortuosity included. 0.3 to 0.6, assumed.
const VAPOUR_OPENING: f64 = 0.4;
/// Vapour pressure is held under this share of the atmosphere: beyond it the vapour blows itself out.
const BOILING: f64 = 0.97;

/// Surroundings during one stage of the journey, lane by lane.
#[derive(Clone, Copy, Debug)]
pub(super) struct Surroundings<const L: usize> {
    pub air: Lanes<L>,
    pub h_top: Lanes<L>,
    pub h_bottom: Lanes<L>,
    /// Radiation that the top keeps, W/m².
    pub source: Lanes<L>,
    /// Radiation that passes the film and that the cloth's face keeps, W/m².
    pub through: Lanes<L>,
    /// What the top sends out, W/(m² K⁴).
    pub emission: Lanes<L>,
    /// Half the air's own radiation on the belt, W/m²; zero for a pallet.
    pub belt_emission: f64,
    /// Vapour pressure of the air, Pa.
    pub vapour: f64,
}

impl<const L: usize> Surroundings<L> {
    /// Nothing around.
    pub const NONE: Self = Self {
        air: Lanes::ZERO,
        h_top: Lanes::ZERO,
        h_bottom: Lanes::ZERO,
        source: Lanes::ZERO,
        through: Lanes::ZERO,
        emission: Lanes::ZERO,
        belt_emission: 0.0,
        vapour: 0.0,
    };

    /// Adds an emitter of this kind at `panel` (K) and exchange factor, in walls as hot as the air.
    pub fn lit(
        mut self,
        emitter: Emitter,
        exchange: Lanes<L>,
        panel: Lanes<L>,
        keeps: NearInfrared,
        bare: bool,
    ) -> Self {
        let exchange = if emitter == Emitter::None { Lanes::ZERO } else { exchange };
        let [kept, passed] = match emitter {
            Emitter::NearInfrared if bare => [keeps.cloth, 0.0],
            Emitter::NearInfrared => [keeps.film, keeps.through * keeps.cloth],
            Emitter::None | Emitter::MidInfrared => [1.0, 0.0],
        };
        // What is not kept is not sent back either: nothing gets hotter than what heats it.
        let seen = exchange * kept;
        let walls = (-seen + Film::EMISSIVITY).max(Lanes::ZERO) * 0.5;
        self.source = (seen * fourth(panel) + walls * fourth(self.air)) * STEFAN_BOLTZMANN;
        let over_air = (fourth(panel) - fourth(self.air)).max(Lanes::ZERO);
        self.through = exchange * over_air * (passed * STEFAN_BOLTZMANN);
        self.emission = (seen + walls) * STEFAN_BOLTZMANN;
        self
    }

    /// Adds the walls of a room as warm as its air.
    pub fn in_room(mut self) -> Self {
        self.emission = Lanes::splat(Film::EMISSIVITY * STEFAN_BOLTZMANN);
        self.source = self.emission * fourth(self.air);
        self.belt_emission = 0.5 * STEFAN_BOLTZMANN;
        self
    }
}

/// Vapour pressure of air with `ratio` kg water per kg dry air, Pa. 0.622 = ratio of molar masses.
pub(super) fn vapour_pressure(ratio: f64) -> f64 {
    ratio / (ratio + 0.622) * ATMOSPHERE
}

#[inline]
fn fourth<const L: usize>(x: Lanes<L>) -> Lanes<L> {
    let square = x * x;
    square * square
}

/// The ways of a cloth's vapour into the air.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ways {
    /// Thickness that it crosses downwards, m, and the air layers beyond it in units of `1 / h_m`.
    pub path: f64,
    pub layers: f64,
    /// Thickness that it crosses upwards, m; nothing where a film lies on the cloth.
    pub above: Option<f64>,
}

/// A cloth's water in the chain.
#[derive(Clone, Debug)]
pub(super) struct Wet {
    /// Its nodes.
    pub nodes: Range<usize>,
    /// Dry mass, kg/m².
    pub mass: f64,
    /// Regain at 65 % RH.
    pub regain_65: f64,
    /// How its vapour leaves.
    pub ways: Ways,
}

/// The whole stack as a chain of nodes.
#[derive(Clone, Debug)]
pub(super) struct Chain<const L: usize> {
    pub count: usize,
    /// Nodes of the film.
    pub film: usize,
    /// Heat capacity per area at 25 °C, J/(m² K), and its rise with temperature.
    pub capacity: Vec<Lanes<L>>,
    pub capacity_slope: Vec<f64>,
    /// Conductance to the next node, W/(m² K).
    pub conductance: Vec<Lanes<L>>,
    /// Share of its cloth's mass at each node.
    pub share: Vec<f64>,
    pub wet: Vec<Wet>,
    pub surroundings: Surroundings<L>,
}

/// What one cloth's evaporation comes to.
struct Evaporation<const L: usize> {
    flux: Lanes<L>,
    heat: Lanes<L>,
    per_kelvin: Lanes<L>,
    per_water: Lanes<L>,
}

impl<const L: usize> Chain<L> {
    fn mean(&self, wet: &Wet, state: &State<L>) -> Lanes<L> {
        let mut mean = Lanes::ZERO;
        for i in wet.nodes.clone() {
            mean += state[i] * self.share[i];
        }
        mean
    }

    fn evaporation(&self, wet: &Wet, water: Lanes<L>, temperature: Lanes<L>) -> Evaporation<L> {
        let at = &self.surroundings;
        let water = water.max(Lanes::ZERO);
        let temperature = temperature.clamp(230.0, 900.0);
        let regain_65 = Lanes::splat(wet.regain_65);
        let (free, sorption) = moisture::vapour_over_cloth(water, regain_65, temperature);
        let most = Lanes::splat(BOILING * ATMOSPHERE);
        let pressure = free.min(most);

        let film_density = (temperature + at.air).recip() * (2.0 * ATMOSPHERE / air::GAS_CONSTANT);
        let per_transfer = film_density * (air::HEAT_CAPACITY * LEWIS);
        let reduced = temperature * (1.0 / 298.0);
        let diffusivity = reduced * reduced / reduced.sqrt().sqrt() * VAPOUR_DIFFUSIVITY;
        let per_path = diffusivity.recip() * (1.0 / VAPOUR_OPENING);
        let mut opening = (per_transfer / at.h_bottom * wet.ways.layers + per_path * wet.ways.path).recip();
        if let Some(above) = wet.ways.above {
            opening += (per_transfer / at.h_top + per_path * above).recip();
        }
        let mobility = opening / temperature * (moisture::MOLAR_MASS * ATMOSPHERE / GAS_CONSTANT);
        let room = -pressure + ATMOSPHERE;
        let flux = mobility * (room.recip() * (ATMOSPHERE - at.vapour)).ln();
        let heat = moisture::evaporation_heat(temperature) + sorption;

        let boiling = std::array::from_fn(|lane| free[lane] >= most[lane]);
        let per_pressure = Lanes::select(boiling, Lanes::ZERO, mobility / room);
        let pressure_per_kelvin =
            pressure * heat * (moisture::MOLAR_MASS / GAS_CONSTANT) / (temperature * temperature);
        let phi = moisture::balance_humidity(water, regain_65);
        let span = (phi + 0.25) * (-phi + 1.25);
        let humidity_per_water = span * span / ((phi * phi + 0.3125) * 0.825 * wet.regain_65);
        let wetted = std::array::from_fn(|lane| phi[lane] >= 1.0);
        // Floored far below any humidity that counts: a floor that bites leaves a dry hot cloth without its steep slope,
        // and the march rattles about it.
        let pressure_per_water =
            Lanes::select(wetted, Lanes::ZERO, pressure / phi.max(Lanes::splat(1e-15)) * humidity_per_water);
        Evaporation {
            flux,
            heat,
            per_kelvin: per_pressure * pressure_per_kelvin,
            per_water: per_pressure * pressure_per_water,
        }
    }

    /// Heat capacity of each node, J/(m² K); the water in the cloths counts.
    fn capacity_at(&self, node: usize, temperature: Lanes<L>) -> Lanes<L> {
        (temperature - 298.0).clamp(0.0, 180.0) * self.capacity_slope[node] + self.capacity[node]
    }

    fn capacities(&self, state: &State<L>) -> State<L> {
        let mut capacities = crate::numerics::march::zeros();
        for (i, capacity) in capacities.iter_mut().enumerate().take(self.count) {
            *capacity = self.capacity_at(i, state[i]);
        }
        for (k, wet) in self.wet.iter().enumerate() {
            let water = state[crate::numerics::march::NODES + k].max(Lanes::ZERO) * moisture::HEAT_CAPACITY;
            for i in wet.nodes.clone() {
                capacities[i] += water * (self.share[i] * wet.mass);
            }
        }
        capacities
    }

    /// Heat that the whole chain takes up, W/m², and what crosses its boundary, for the balance test.
    #[cfg(test)]
    pub(super) fn balance(&self, state: &State<L>) -> (Lanes<L>, Lanes<L>) {
        let mut rates = crate::numerics::march::zeros();
        self.rates(state, &mut rates);
        let capacities = self.capacities(state);
        let mut stored = Lanes::ZERO;
        for i in 0..self.count {
            stored += capacities[i] * rates[i];
        }
        let at = &self.surroundings;
        let (top, belt) = (state[0], state[self.count - 1]);
        let mut crossing = at.h_top * (at.air - top) + at.source - at.emission * fourth(top);
        crossing += at.through;
        crossing += at.h_bottom * (at.air - belt) + (fourth(at.air) - fourth(belt)) * at.belt_emission;
        for (k, wet) in self.wet.iter().enumerate() {
            let evaporation =
                self.evaporation(wet, state[crate::numerics::march::NODES + k], self.mean(wet, state));
            crossing -= evaporation.flux * evaporation.heat;
        }
        (stored, crossing)
    }
}

impl<const L: usize> System<L> for Chain<L> {
    fn nodes(&self) -> usize {
        self.count
    }

    fn borders(&self) -> usize {
        self.wet.len()
    }

    fn rates(&self, state: &State<L>, rates: &mut State<L>) {
        let at = &self.surroundings;
        let last = self.count - 1;
        let mut into = at.h_top * (at.air - state[0]) + at.source - at.emission * fourth(state[0]);
        for i in 0..last {
            let through = self.conductance[i] * (state[i] - state[i + 1]);
            rates[i] = into - through;
            into = through;
        }
        rates[last] = into
            + at.h_bottom * (at.air - state[last])
            + (fourth(at.air) - fourth(state[last])) * at.belt_emission;
        rates[self.film] += at.through;
        for (k, wet) in self.wet.iter().enumerate() {
            let k = crate::numerics::march::NODES + k;
            let evaporation = self.evaporation(wet, state[k], self.mean(wet, state));
            let drawn = evaporation.flux * evaporation.heat;
            for i in wet.nodes.clone() {
                rates[i] -= drawn * self.share[i];
            }
            rates[k] = evaporation.flux * (-1.0 / wet.mass);
        }
        let capacities = self.capacities(state);
        for i in 0..self.count {
            rates[i] = rates[i] / capacities[i];
        }
    }

    fn jacobian(&self, state: &State<L>, jacobian: &mut Jacobian<L>) {
        let at = &self.surroundings;
        let last = self.count - 1;
        let capacities = self.capacities(state);
        for i in 0..=last {
            let per = capacities[i].recip();
            let below = if i > 0 { self.conductance[i - 1] * per } else { Lanes::ZERO };
            let above = if i < last { self.conductance[i] * per } else { Lanes::ZERO };
            jacobian.below[i] = below;
            jacobian.above[i] = above;
            jacobian.diagonal[i] = -below - above;
        }
        let cube = |x: Lanes<L>| x * x * x * 4.0;
        jacobian.diagonal[0] -= (at.h_top + at.emission * cube(state[0])) / capacities[0];
        jacobian.diagonal[last] -= (at.h_bottom + cube(state[last]) * at.belt_emission) / capacities[last];
        for (k, wet) in self.wet.iter().enumerate() {
            let water = state[crate::numerics::march::NODES + k];
            let evaporation = self.evaporation(wet, water, self.mean(wet, state));
            let border = &mut jacobian.border[k];
            for i in wet.nodes.clone() {
                border.draw[i] = evaporation.heat * -self.share[i] / capacities[i];
                border.pull[i] = evaporation.per_kelvin * self.share[i];
            }
            border.slope = evaporation.per_water;
            border.gain = Lanes::splat(-1.0 / wet.mass);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::march::{NODES, Tolerance, march, zeros};
    use crate::quantity::units::{celsius, kelvin};

    /// Source: humidity ratios of psychrolib 2.5.0 and CoolProp 8.0.0 at 25 °C and 50 % RH, where half the saturation
    /// pressure is 1584.9 Pa; CoolProp counts the gases' pull on each other (0.4 %), which the ratio of masses leaves out.
    #[test]
    fn humidity_ratio_and_vapour_pressure() {
        for (ratio, expected) in [(0.009_881_04, 1584.6), (0.009_925_74, 1591.6)] {
            let found = vapour_pressure(ratio);
            assert!((found / expected - 1.0).abs() < 5e-4, "{ratio}: {found} Pa for {expected}");
            assert!((found / 1584.9 - 1.0).abs() < 5e-3, "{ratio}: {found} Pa for half of saturation");
        }
    }

    /// A wet cloth that convection heats and dries settles at the wet bulb.
    ///
    /// Source: psychrometric wet bulb of air with 10 g/kg, CoolProp 8.0.0 (psychrolib 2.5.0: 43.50 at 160 °C), and the
    /// same balance solved by SciPy 1.17.1 `brentq`. Wet bulb and balance of heat and mass part as the air gets hotter
    /// (the Lewis relation with constant properties): 1 K at 60 °C, 4 K at 160 °C. Air °C, wet bulb °C, balance °C.
    #[test]
    fn a_wet_cloth_settles_at_the_wet_bulb() {
        let rows = [(60.0, 27.60, 26.896, 1.0), (100.0, 35.34, 33.883, 2.0), (160.0, 43.51, 40.906, 4.0)];
        for (air, wet_bulb, balance, apart) in rows {
            let chain = wet_cloth_alone(kelvin(air));
            let mut state = zeros();
            state[..2].fill(Lanes::splat(298.15));
            state[NODES] = Lanes::splat(2.0);
            let tolerance = Tolerance { temperature: 1e-3, border: 1e-5 };
            march(&chain, &mut state, Lanes::splat(120.0), tolerance, |_| {}).unwrap();
            let found = celsius(state[0][0]);
            assert!(state[NODES][0] > 0.5, "still wet: {}", state[NODES][0]);
            assert!((found - wet_bulb).abs() < apart, "{air} °C: {found} for the wet bulb {wet_bulb}");
            assert!((found - balance).abs() < 0.01, "{air} °C: {found} for the balance {balance}");
        }
    }

    /// One wet node that sees air only: no radiation, no film, no path through the cloth, a belt out of touch.
    fn wet_cloth_alone(air: f64) -> Chain<1> {
        let zero = Lanes::ZERO;
        Chain {
            count: 2,
            film: 0,
            capacity: vec![Lanes::splat(150.0), Lanes::splat(600.0)],
            capacity_slope: vec![0.0; 2],
            conductance: vec![zero],
            share: vec![1.0, 0.0],
            wet: vec![Wet {
                nodes: 0..1,
                mass: 0.15,
                regain_65: 0.075,
                ways: Ways { path: 0.0, layers: 1.0, above: None },
            }],
            surroundings: Surroundings {
                air: Lanes::splat(air),
                h_top: Lanes::splat(25.0),
                h_bottom: Lanes::splat(25.0),
                vapour: vapour_pressure(0.010),
                ..Surroundings::NONE
            },
        }
    }
}
