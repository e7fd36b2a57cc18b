//! The equations of the stack: heat through film, cloths and belt, water through and out of the cloths.
//!
//! Nodes lie on the faces of the layers, with half cells at both ends, so that the film's bottom is a node
//! and needs no interpolation. For each node
//!
//! ```text
//! C_i dT_i/dt = G_(i-1) (T_(i-1) - T_i) - G_i (T_i - T_(i+1)) - J_i (h_fg + Q_l)
//! top:    h_top (T_air - T) + S - R T^4        S = F s T_panel^4 + (e - F)/2 s T_air^4, R = F s + (e - F)/2 s
//! lamp:   a_film F in place of F, and t_film a_cloth F s (T_lamp^4 - T_air^4) into the cloth's face
//! belt:   C_b dT_b/dt = h_bottom (T_air - T_b) + s/2 (T_air^4 - T_b^4) - G (T_b - T_last)
//! water:  m_i dW_i/dt = -J_i - wicking away,    J_i = sum over neighbours and air of K (u_i - u_j)
//! ```
//!
//! with heat capacity `C`, conductance `G`, exchange factor `F`, emissivity `e`, the Stefan-Boltzmann
//! constant `s` and the vapour `J_i` that leaves the node ([`water`](super::water)); the water counts in `C`
//! and in `G`.
//!
//! The tests below check the wet-bulb temperature and the constant rate of drying; `tests/heat/history.rs`
//! compares the whole chain with another solver on another grid.

use super::surroundings::{Surroundings, fourth};
use super::water::{NodeVapour, WetCloths, air_layer, air_potential};
use crate::numerics::Lanes;
use crate::numerics::rosenbrock::{Block, Jacobian, NODES, StateVector, System, zeros};
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
    /// Conductance to the next node without water, W/(m² K).
    pub conductance: Vec<Lanes<L>>,
    /// Share of its layer's mass at each node.
    pub share: Vec<f64>,
    /// The cloths with their water.
    pub cloths: WetCloths,
    pub surroundings: Surroundings<L>,
}

impl<const L: usize> Chain<L> {
    /// Heat capacity of a node, J/(m² K), with its water.
    #[inline(always)]
    pub(super) fn capacity_at(&self, node: usize, state: &StateVector<L>) -> Lanes<L> {
        let warm = (state[node] - 298.0).clamp(0.0, 180.0);
        let dry = warm * self.capacity_slope[node] + self.capacity[node];
        match self.cloths.range().contains(&node) {
            true => {
                let mass = self.cloths.nodes[node - self.cloths.first].mass;
                dry + state[NODES + node].max(Lanes::ZERO) * (mass * moisture::HEAT_CAPACITY)
            }
            false => dry,
        }
    }

    /// Conductance from a node to the next one, W/(m² K), with its water.
    #[inline(always)]
    pub(super) fn conductance_at(&self, node: usize, state: &StateVector<L>) -> Lanes<L> {
        let dry = self.conductance[node];
        let wet = self.cloths.range();
        match wet.contains(&node) && node + 1 < wet.end {
            true => dry + self.cloths.wet_conductance(node - wet.start, state),
            false => dry,
        }
    }

    /// Heat into each node by conduction, convection and radiation, W/m², in place of its rate; calls `visit`
    /// with each conductance.
    #[inline(always)]
    fn conduction(
        &self,
        state: &StateVector<L>,
        rates: &mut StateVector<L>,
        mut visit: impl FnMut(usize, Lanes<L>),
    ) {
        let at = &self.surroundings;
        let last = self.count - 1;
        let mut into = at.h_top * (at.air - state[0]) + at.source - at.emission * fourth(state[0]);
        for i in 0..last {
            let conductance = self.conductance_at(i, state);
            let through = conductance * (state[i] - state[i + 1]);
            rates[i] = into - through;
            into = through;
            visit(i, conductance);
        }
        rates[last] = into
            + at.h_bottom * (at.air - state[last])
            + (fourth(at.air) - fourth(state[last])) * at.belt_emission;
        rates[self.film] += at.through;
    }

    /// Vapour conductance to the air above the first node of cloth and below the last, kg/(m² s).
    #[inline(always)]
    fn outside(&self) -> [Lanes<L>; 2] {
        let at = &self.surroundings;
        let above = if self.cloths.open_above { air_layer(at.h_top, 0.0) } else { Lanes::ZERO };
        [above, air_layer(at.h_bottom, self.cloths.board)]
    }

    /// Turns heat into each node, W/m², into less what its vapour draws; adds the rates of the water, 1/s. Calls
    /// `visit` with the vapour of each node of cloth and its vapour conductance to the next, kg/(m² s).
    #[inline(always)]
    fn drying(
        &self,
        state: &StateVector<L>,
        rates: &mut StateVector<L>,
        mut visit: impl FnMut(&NodeVapour<L>, Lanes<L>),
    ) {
        let at = &self.surroundings;
        let cloths = &self.cloths;
        let count = cloths.nodes.len().min(NODES);
        if count == 0 {
            return;
        }
        let outside = self.outside();
        let air = air_potential(at.vapour);
        let mut here = cloths.vapour(0, state);
        let mut arrives = outside[0] * (-here.potential + air);
        let mut wicks_in = Lanes::ZERO;
        for k in 0..count {
            let last = k + 1 == count;
            let next = if last { here } else { cloths.vapour(k + 1, state) };
            let (conductance, leaves, wicks) = if last {
                (Lanes::ZERO, outside[1] * (here.potential - air), Lanes::ZERO)
            } else {
                let conductance = cloths.conductance(k, at, state);
                let wicks = (here.free - next.free) * cloths.nodes[k].wicking;
                (conductance, conductance * (here.potential - next.potential), wicks)
            };
            visit(&here, conductance);
            let lost = leaves - arrives;
            let i = cloths.first + k;
            rates[i] -= lost * here.heat;
            rates[NODES + i] = (lost + wicks - wicks_in) * (-1.0 / cloths.nodes[k].mass);
            (here, arrives, wicks_in) = (next, leaves, wicks);
        }
    }

    /// Blocks of the Jacobian of the water: vapour and wicking between nodes, and into the air.
    #[inline(always)]
    fn couple_water(
        &self,
        nodes: &[(NodeVapour<L>, Lanes<L>)],
        per_capacity: &[Lanes<L>],
        jacobian: &mut Jacobian<L>,
    ) {
        let cloths = &self.cloths;
        let count = nodes.len();
        let outside = self.outside();
        for k in 0..count {
            let i = cloths.first + k;
            let here = nodes[k].0;
            let draws = here.heat * per_capacity[i];
            let per_mass = 1.0 / cloths.nodes[k].mass;
            let mut own = Block::ZERO;
            let mut side = |conductance: Lanes<L>, wicking: f64, other: Option<NodeVapour<L>>| {
                let (t, w) = (here.per_kelvin * conductance, here.per_water * conductance);
                let wicks = here.free_per_water * wicking;
                own.tt -= draws * t;
                own.tw -= draws * w;
                own.wt -= t * per_mass;
                own.ww -= (w + wicks) * per_mass;
                let other = other.unwrap_or(NodeVapour::NONE);
                let (t, w) = (other.per_kelvin * conductance, other.per_water * conductance);
                Block {
                    tt: draws * t,
                    tw: draws * w,
                    wt: t * per_mass,
                    ww: (w + other.free_per_water * wicking) * per_mass,
                }
            };
            let above = match k.checked_sub(1) {
                Some(up) => side(nodes[up].1, cloths.nodes[up].wicking, Some(nodes[up].0)),
                None => side(outside[0], 0.0, None),
            };
            let below = if k + 1 < count {
                side(nodes[k].1, cloths.nodes[k].wicking, Some(nodes[k + 1].0))
            } else {
                side(outside[1], 0.0, None)
            };
            add(&mut jacobian.below[i], above);
            add(&mut jacobian.above[i], below);
            add(&mut jacobian.diagonal[i], own);
        }
    }
}

/// Adds one block to another.
#[inline(always)]
fn add<const L: usize>(to: &mut Block<L>, block: Block<L>) {
    to.tt += block.tt;
    to.tw += block.tw;
    to.wt += block.wt;
    to.ww += block.ww;
}

impl<const L: usize> System<L> for Chain<L> {
    fn nodes(&self) -> usize {
        self.count
    }

    fn wet(&self) -> Range<usize> {
        self.cloths.range()
    }

    fn rates(&self, state: &StateVector<L>, rates: &mut StateVector<L>) {
        self.conduction(state, rates, |_, _| {});
        self.drying(state, rates, |_, _| {});
        for i in 0..self.count {
            rates[i] = rates[i] / self.capacity_at(i, state);
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
        let mut between = [Lanes::ZERO; NODES];
        self.conduction(state, rates, |i, conductance| between[i] = conductance);
        let mut nodes = Vec::with_capacity(self.cloths.nodes.len());
        self.drying(state, rates, |vapour, conductance| nodes.push((*vapour, conductance)));
        let mut per_capacity = [Lanes::ZERO; NODES];
        let mut from_above = Lanes::ZERO;
        for i in 0..self.count {
            let per = self.capacity_at(i, state).recip();
            per_capacity[i] = per;
            rates[i] = rates[i] * per;
            jacobian.below[i] = Block::temperature(from_above * per);
            jacobian.above[i] = Block::temperature(between[i] * per);
            jacobian.diagonal[i] = Block::temperature(-(from_above + between[i]) * per);
            from_above = between[i];
        }
        let cube = |i: usize| state[i] * state[i] * state[i] * 4.0;
        jacobian.diagonal[0].tt -= (at.h_top + at.emission * cube(0)) * per_capacity[0];
        jacobian.diagonal[last].tt -= (at.h_bottom + cube(last) * at.belt_emission) * per_capacity[last];
        self.couple_water(&nodes, &per_capacity, jacobian);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::dryer::solve::surroundings::vapour_pressure;
    use crate::numerics::rosenbrock::{Tolerance, integrate};
    use crate::quantity::units::{celsius, kelvin};

    /// A wet cloth that convection heats and dries settles at the wet bulb.
    ///
    /// Source: psychrometric wet bulb of air with 10 g/kg, CoolProp 8.0.0 (psychrolib 2.5.0: 43.50 at 160
    /// °C), and the same balance with Wagner and Pruss's saturation pressure, solved by SciPy 1.17.1
    /// `brentq`. Air °C, wet bulb °C, balance °C.
    #[test]
    fn a_wet_cloth_settles_at_the_wet_bulb() {
        let rows = [(60.0, 27.60, 27.288), (100.0, 35.34, 34.965), (160.0, 43.51, 43.220)];
        for (air, wet_bulb, balance) in rows {
            let state = settled(&wet_cloth_alone(kelvin(air), 25.0), 120.0);
            let found = celsius(state[0][0]);
            assert!(state[NODES][0] > 0.5, "still wet: {}", state[NODES][0]);
            assert!((found - wet_bulb).abs() < 0.5, "{air} °C: {found} for the wet bulb {wet_bulb}");
            assert!((found - balance).abs() < 0.005, "{air} °C: {found} for the balance {balance}");
        }
    }

    /// While its face is wet, it dries at a constant rate.
    ///
    /// Source: Geankoplis, Transport Processes and Unit Operations, example "prediction of constant-rate drying"
    /// (9.6-3), from memory: air of 65.6 °C and 10 g/kg at 6.1 m/s, heat transfer 62.45 W/(m² K), surface at 28.9 °C,
    /// 3.39 kg/(m² h). Read from a chart; 3 %.
    #[test]
    fn a_wet_cloth_dries_at_the_constant_rate() {
        let chain = wet_cloth_alone(kelvin(65.6), 62.45);
        let state = settled(&chain, 60.0);
        let mut rates = zeros();
        chain.rates(&state, &mut rates);
        let (surface, rate) = (celsius(state[0][0]), -rates[NODES][0] * 0.15 * 3600.0);
        assert!(state[NODES][0] > 0.5, "still wet: {}", state[NODES][0]);
        assert!((surface - 28.9).abs() < 0.5, "{surface} °C");
        assert!((rate / 3.39 - 1.0).abs() < 0.03, "{rate} kg/(m² h)");
    }

    /// Its state after so many seconds from 25 °C, soaked.
    fn settled(chain: &Chain<1>, seconds: f64) -> StateVector<1> {
        let mut state = zeros();
        state[..2].fill(Lanes::splat(298.15));
        state[NODES] = Lanes::splat(2.0);
        let tolerance = Tolerance { temperature: 1e-3, water: 1e-5 };
        integrate(chain, &mut state, Lanes::splat(seconds), tolerance, |_| {}).unwrap();
        state
    }

    /// One wet node in air: no radiation, no film, no vapour path through the cloth, no contact with the
    /// belt.
    fn wet_cloth_alone(air: f64, h: f64) -> Chain<1> {
        let zero = Lanes::ZERO;
        Chain {
            count: 2,
            film: 0,
            capacity: vec![Lanes::splat(150.0), Lanes::splat(600.0)],
            capacity_slope: vec![0.0; 2],
            conductance: vec![zero],
            share: vec![1.0, 0.0],
            cloths: WetCloths::alone(0.15, 0.075),
            surroundings: Surroundings {
                air: Lanes::splat(air),
                h_top: Lanes::splat(h),
                h_bottom: Lanes::splat(h),
                vapour: vapour_pressure(0.010),
                ..Surroundings::NONE
            },
        }
    }
}
