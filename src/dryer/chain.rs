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
//! air the wet bulb comes out 3 K low. The tests below hold it to the psychrometer's wet bulb; `tests/heat/history.rs`
//! holds the whole chain to another solver on another grid.

use super::{Emitter, Film, NearInfrared, air};
use crate::numerics::Lanes;
use crate::numerics::march::{BORDERS, Jacobian, NODES, State, System, zeros};
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

/// What an air layer holds vapour back with, times `h (T + T_air)`.
const AIR_LAYER: f64 = 2.0 * ATMOSPHERE / air::GAS_CONSTANT * air::HEAT_CAPACITY * LEWIS;
/// What a metre of cloth holds vapour back with at 298 K, s/m².
const CLOTH: f64 = 1.0 / (VAPOUR_OPENING * VAPOUR_DIFFUSIVITY);

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
pub(super) fn fourth<const L: usize>(x: Lanes<L>) -> Lanes<L> {
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
pub(super) struct Evaporation<const L: usize> {
    pub flux: Lanes<L>,
    pub heat: Lanes<L>,
    per_kelvin: Lanes<L>,
    per_water: Lanes<L>,
}

impl<const L: usize> Chain<L> {
    pub(super) fn mean(&self, wet: &Wet, state: &State<L>) -> Lanes<L> {
        let nodes = wet.nodes.clone();
        let pairs = state[nodes.clone()].iter().zip(&self.share[nodes]);
        pairs.fold(Lanes::ZERO, |mean, (temperature, share)| mean + *temperature * *share)
    }

    /// Divisions are what costs here: fractions are brought over common denominators where that saves one. Inlined, so
    /// that what only the Jacobian needs is left out where only the rates are asked for.
    #[inline(always)]
    pub(super) fn evaporation(&self, wet: &Wet, water: Lanes<L>, temperature: Lanes<L>) -> Evaporation<L> {
        let at = &self.surroundings;
        let water = water.max(Lanes::ZERO);
        let temperature = temperature.clamp(230.0, 900.0);
        let regain_65 = Lanes::splat(wet.regain_65);
        let (free, sorption) = moisture::vapour_over_cloth(water, regain_65, temperature);
        let phi = moisture::balance_humidity(water, regain_65);
        let most = Lanes::splat(BOILING * ATMOSPHERE);
        let pressure = free.min(most);

        // Air layer: 1 / h_m = rho c_p Le^(2/3) / h with rho = 2 P / (R (T + T_air)). Cloth: path / (opening D),
        // D = D_298 (T / 298)^1.75. Their sum stands under M P / (R T).
        let reduced = temperature * (1.0 / 298.0);
        let square = reduced * reduced;
        let quartic = reduced.sqrt().sqrt();
        let way = |h: Lanes<L>, path: f64, layers: f64| {
            let exposed = (temperature + at.air) * h;
            exposed * reduced / (square * (layers * AIR_LAYER) + quartic * exposed * (path * CLOTH))
        };
        let mut open = way(at.h_bottom, wet.ways.path, wet.ways.layers);
        if let Some(above) = wet.ways.above {
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
        // Floored far below any humidity that counts: a floor that bites leaves a dry hot cloth without its steep slope,
        // and the march rattles about it.
        let humidity_per_water =
            span * span / ((phi * phi + 0.3125) * phi.max(Lanes::splat(1e-15)) * (0.825 * wet.regain_65));
        let wetted = std::array::from_fn(|lane| phi[lane] >= 1.0);
        let pressure_per_water = Lanes::select(wetted, Lanes::ZERO, pressure * humidity_per_water);
        Evaporation {
            flux,
            heat,
            per_kelvin: per_pressure * pressure_per_kelvin,
            per_water: per_pressure * pressure_per_water,
        }
    }

    /// Heat capacity of a node, J/(m² K), with its share of a cloth's water, kg/m².
    #[inline(always)]
    pub(super) fn capacity_at(&self, node: usize, temperature: Lanes<L>, water: Lanes<L>) -> Lanes<L> {
        (temperature - 298.0).clamp(0.0, 180.0) * self.capacity_slope[node]
            + self.capacity[node]
            + water * (self.share[node] * moisture::HEAT_CAPACITY)
    }

    /// The nodes without water above cloth `k`; below the last cloth those down to the belt.
    fn bare(&self, k: usize) -> Range<usize> {
        let above = k.checked_sub(1).and_then(|above| self.wet.get(above));
        above.map_or(0, |wet| wet.nodes.end)..self.wet.get(k).map_or(self.count, |wet| wet.nodes.start)
    }

    /// Turns the heat that flows into each node of a stretch into its rate, less what is `drawn` by its cloth's water.
    #[inline(always)]
    fn warm(
        &self,
        nodes: Range<usize>,
        state: &State<L>,
        rates: &mut State<L>,
        [drawn, water]: [Lanes<L>; 2],
        mut visit: impl FnMut(usize, Lanes<L>),
    ) {
        let capacity = self.capacity[nodes.clone()].iter().zip(&self.capacity_slope[nodes.clone()]);
        let node = state[nodes.clone()].iter().zip(capacity).zip(&self.share[nodes.clone()]);
        for (i, (rate, ((temperature, (capacity, slope)), share))) in
            rates[nodes.clone()].iter_mut().zip(node).enumerate()
        {
            let dry = (*temperature - 298.0).clamp(0.0, 180.0) * *slope + *capacity;
            let per = (dry + water * (*share * moisture::HEAT_CAPACITY)).recip();
            *rate = (*rate - drawn * *share) * per;
            visit(nodes.start + i, per);
        }
    }

    /// Water of a cloth, kg/m².
    pub(super) fn water(&self, cloth: Option<usize>, state: &State<L>) -> Lanes<L> {
        cloth.map_or(Lanes::ZERO, |k| state[NODES + k].max(Lanes::ZERO) * self.wet[k].mass)
    }

    /// Heat that flows into each node by conduction, convection and radiation, W/m².
    #[inline(always)]
    fn conduction(&self, state: &State<L>, rates: &mut State<L>) {
        let at = &self.surroundings;
        let last = self.count - 1;
        let mut into = at.h_top * (at.air - state[0]) + at.source - at.emission * fourth(state[0]);
        let nodes = state[..self.count].windows(2).zip(&self.conductance);
        for (rate, (pair, conductance)) in rates.iter_mut().zip(nodes) {
            let through = *conductance * (pair[0] - pair[1]);
            *rate = into - through;
            into = through;
        }
        rates[last] = into
            + at.h_bottom * (at.air - state[last])
            + (fourth(at.air) - fourth(state[last])) * at.belt_emission;
        rates[self.film] += at.through;
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
        let mut drawn = [Lanes::ZERO; BORDERS];
        for (k, wet) in self.wet.iter().enumerate().take(BORDERS) {
            let evaporation = self.evaporation(wet, state[NODES + k], self.mean(wet, state));
            drawn[k] = evaporation.flux * evaporation.heat;
            rates[NODES + k] = evaporation.flux * (-1.0 / wet.mass);
        }
        self.conduction(state, rates);
        for k in 0..=self.wet.len() {
            self.warm(self.bare(k), state, rates, [Lanes::ZERO; 2], |_, _| {});
            if let Some(wet) = self.wet.get(k) {
                let water = state[NODES + k].max(Lanes::ZERO) * wet.mass;
                self.warm(wet.nodes.clone(), state, rates, [drawn[k], water], |_, _| {});
            }
        }
    }

    fn jacobian(&self, state: &State<L>, jacobian: &mut Jacobian<L>) {
        self.rates_and_jacobian(state, &mut zeros(), jacobian);
    }

    fn rates_and_jacobian(&self, state: &State<L>, rates: &mut State<L>, jacobian: &mut Jacobian<L>) {
        let at = &self.surroundings;
        let last = self.count - 1;
        let mut drawn = [Lanes::ZERO; BORDERS];
        let mut heat = [Lanes::ZERO; BORDERS];
        for (k, wet) in self.wet.iter().enumerate().take(BORDERS) {
            let evaporation = self.evaporation(wet, state[NODES + k], self.mean(wet, state));
            heat[k] = evaporation.heat;
            drawn[k] = evaporation.flux * evaporation.heat;
            rates[NODES + k] = evaporation.flux * (-1.0 / wet.mass);
            let border = &mut jacobian.border[k];
            for i in wet.nodes.clone() {
                border.pull[i] = evaporation.per_kelvin * self.share[i];
            }
            border.slope = evaporation.per_water;
            border.gain = Lanes::splat(-1.0 / wet.mass);
        }
        self.conduction(state, rates);
        let mut above = Lanes::ZERO;
        let Jacobian { below: from_above, above: from_below, diagonal, border } = jacobian;
        let mut couple = |i: usize, per: Lanes<L>| {
            let below = self.conductance.get(i).copied().unwrap_or(Lanes::ZERO);
            from_above[i] = above * per;
            from_below[i] = below * per;
            diagonal[i] = -(above + below) * per;
            above = below;
        };
        for k in 0..=self.wet.len() {
            self.warm(self.bare(k), state, rates, [Lanes::ZERO; 2], &mut couple);
            if let Some(wet) = self.wet.get(k) {
                let water = state[NODES + k].max(Lanes::ZERO) * wet.mass;
                let draw = &mut border[k].draw;
                self.warm(wet.nodes.clone(), state, rates, [drawn[k], water], |i, per| {
                    couple(i, per);
                    draw[i] = heat[k] * per * -self.share[i];
                });
            }
        }
        // A stack without a film has wet cloth on top.
        let cube = |i: usize| state[i] * state[i] * state[i] * 4.0;
        let water = |i: usize| self.water(self.wet.iter().position(|wet| wet.nodes.contains(&i)), state);
        diagonal[0] -= (at.h_top + at.emission * cube(0)) / self.capacity_at(0, state[0], water(0));
        diagonal[last] -=
            (at.h_bottom + cube(last) * at.belt_emission) / self.capacity_at(last, state[last], water(last));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::march::{Tolerance, march};
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
