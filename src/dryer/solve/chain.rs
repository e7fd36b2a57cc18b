//! The equations of the stack: heat through film, cloths and belt, water out of the cloths.
//!
//! Nodes lie on the faces of the layers, with half cells at both ends, so that the film's bottom is a node
//! and needs no interpolation. For each node
//!
//! ```text
//! C_i dT_i/dt = G_(i-1) (T_(i-1) - T_i) - G_i (T_i - T_(i+1)) - w_i J (h_fg + Q_l)
//! top:    h_top (T_air - T) + S - R T^4        S = F s T_panel^4 + (e - F)/2 s T_air^4, R = F s + (e - F)/2 s
//! lamp:   a_film F in place of F, and t_film a_cloth F s (T_lamp^4 - T_air^4) into the cloth's face
//! belt:   C_b dT_b/dt = h_bottom (T_air - T_b) + s/2 (T_air^4 - T_b^4) - G (T_b - T_last)
//! water:  m dW/dt = -J,    J = M P / (R T) ln[(P - p_air) / (P - p)] / resistance     (Stefan flow)
//! ```
//!
//! with heat capacity `C`, conductance `G`, exchange factor `F`, emissivity `e`, the Stefan-Boltzmann
//! constant `s`, the share `w` of its cloth's mass at the node, and the evaporation `J` of that cloth
//! (`evaporation`). The film lets no vapour through, so under it the cloth dries downwards, through the back;
//! beside the print it dries upwards as well.
//!
//! The test below checks the wet-bulb temperature; `tests/heat/history.rs` compares the whole chain with
//! another solver on another grid.

use super::evaporation::WetCloth;
use super::surroundings::{Surroundings, fourth};
use crate::numerics::Lanes;
use crate::numerics::rosenbrock::{BORDERS, Jacobian, NODES, StateVector, System, zeros};
use crate::textile::moisture;
use std::ops::Range;

/// The whole stack as a chain of nodes, from the top of the film to the belt.
#[derive(Clone, Debug)]
pub(super) struct Chain<const L: usize> {
    /// Number of nodes.
    pub count: usize,
    /// Number of nodes of the films; the next one is the face of the printed cloth.
    pub film: usize,
    /// Heat capacity of each node at 25 °C, J/(m² K).
    pub capacity: Vec<Lanes<L>>,
    /// Its rise with temperature, J/(m² K²).
    pub capacity_slope: Vec<f64>,
    /// Conductance to the next node, W/(m² K).
    pub conductance: Vec<Lanes<L>>,
    /// Share of its layer's mass at each node.
    pub share: Vec<f64>,
    /// The cloths, from the top.
    pub wet: Vec<WetCloth>,
    pub surroundings: Surroundings<L>,
}

impl<const L: usize> Chain<L> {
    /// Mean temperature of a cloth, K.
    pub(super) fn mean(&self, wet: &WetCloth, state: &StateVector<L>) -> Lanes<L> {
        let nodes = wet.nodes.clone();
        let pairs = state[nodes.clone()].iter().zip(&self.share[nodes]);
        pairs.fold(Lanes::ZERO, |mean, (temperature, share)| mean + *temperature * *share)
    }

    /// Heat capacity of a node, J/(m² K), with its share of a cloth's water, kg/m².
    #[inline(always)]
    pub(super) fn capacity_at(&self, node: usize, temperature: Lanes<L>, water: Lanes<L>) -> Lanes<L> {
        (temperature - 298.0).clamp(0.0, 180.0) * self.capacity_slope[node]
            + self.capacity[node]
            + water * (self.share[node] * moisture::HEAT_CAPACITY)
    }

    /// The nodes without water above cloth `k`; for `k` past the last cloth, those from there to the belt.
    fn bare(&self, k: usize) -> Range<usize> {
        let above = k.checked_sub(1).and_then(|above| self.wet.get(above));
        above.map_or(0, |wet| wet.nodes.end)..self.wet.get(k).map_or(self.count, |wet| wet.nodes.start)
    }

    /// Turns the heat into each node of a range, W/m², into its temperature rate, K/s. `drawn` is the heat
    /// that evaporation takes from the cloth, W/m², `water` the water in it, kg/m². `visit` gets each node
    /// with the inverse of its heat capacity.
    #[inline(always)]
    fn warm(
        &self,
        nodes: Range<usize>,
        state: &StateVector<L>,
        rates: &mut StateVector<L>,
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
    pub(super) fn water(&self, cloth: Option<usize>, state: &StateVector<L>) -> Lanes<L> {
        cloth.map_or(Lanes::ZERO, |k| state[NODES + k].max(Lanes::ZERO) * self.wet[k].mass)
    }

    /// Heat into each node by conduction, convection and radiation, W/m².
    #[inline(always)]
    fn conduction(&self, state: &StateVector<L>, rates: &mut StateVector<L>) {
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

    fn rates(&self, state: &StateVector<L>, rates: &mut StateVector<L>) {
        let mut drawn = [Lanes::ZERO; BORDERS];
        for (k, wet) in self.wet.iter().enumerate().take(BORDERS) {
            let evaporation = wet.evaporation(&self.surroundings, state[NODES + k], self.mean(wet, state));
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

    fn jacobian(&self, state: &StateVector<L>, jacobian: &mut Jacobian<L>) {
        self.rates_and_jacobian(state, &mut zeros(), jacobian);
    }

    fn rates_and_jacobian(
        &self,
        state: &StateVector<L>,
        rates: &mut StateVector<L>,
        jacobian: &mut Jacobian<L>,
    ) {
        let at = &self.surroundings;
        let last = self.count - 1;
        let mut drawn = [Lanes::ZERO; BORDERS];
        let mut heat = [Lanes::ZERO; BORDERS];
        for (k, wet) in self.wet.iter().enumerate().take(BORDERS) {
            let evaporation = wet.evaporation(&self.surroundings, state[NODES + k], self.mean(wet, state));
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
        // The top node belongs to a wet cloth if there is no film.
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
    use crate::dryer::solve::evaporation::VapourPaths;
    use crate::dryer::solve::surroundings::vapour_pressure;
    use crate::numerics::rosenbrock::{Tolerance, integrate};
    use crate::quantity::units::{celsius, kelvin};

    /// A wet cloth that convection heats and dries settles at the wet bulb.
    ///
    /// Source: psychrometric wet bulb of air with 10 g/kg, CoolProp 8.0.0 (psychrolib 2.5.0: 43.50 at 160
    /// °C), and the same balance solved by SciPy 1.17.1 `brentq`. Wet bulb and balance of heat and mass part
    /// as the air gets hotter (the Lewis relation with constant properties): 1 K at 60 °C, 4 K at 160 °C. Air
    /// °C, wet bulb °C, balance °C.
    #[test]
    fn a_wet_cloth_settles_at_the_wet_bulb() {
        let rows = [(60.0, 27.60, 26.896, 1.0), (100.0, 35.34, 33.883, 2.0), (160.0, 43.51, 40.906, 4.0)];
        for (air, wet_bulb, balance, apart) in rows {
            let chain = wet_cloth_alone(kelvin(air));
            let mut state = zeros();
            state[..2].fill(Lanes::splat(298.15));
            state[NODES] = Lanes::splat(2.0);
            let tolerance = Tolerance { temperature: 1e-3, border: 1e-5 };
            integrate(&chain, &mut state, Lanes::splat(120.0), tolerance, |_| {}).unwrap();
            let found = celsius(state[0][0]);
            assert!(state[NODES][0] > 0.5, "still wet: {}", state[NODES][0]);
            assert!((found - wet_bulb).abs() < apart, "{air} °C: {found} for the wet bulb {wet_bulb}");
            assert!((found - balance).abs() < 0.01, "{air} °C: {found} for the balance {balance}");
        }
    }

    /// One wet node in air: no radiation, no film, no vapour path through the cloth, no contact with the
    /// belt.
    fn wet_cloth_alone(air: f64) -> Chain<1> {
        let zero = Lanes::ZERO;
        Chain {
            count: 2,
            film: 0,
            capacity: vec![Lanes::splat(150.0), Lanes::splat(600.0)],
            capacity_slope: vec![0.0; 2],
            conductance: vec![zero],
            share: vec![1.0, 0.0],
            wet: vec![WetCloth {
                nodes: 0..1,
                mass: 0.15,
                regain_65: 0.075,
                paths: VapourPaths { path: 0.0, layers: 1.0, above: None },
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
