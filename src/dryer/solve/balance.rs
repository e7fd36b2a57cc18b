//! Conservation of heat: exact in the equations, within the tolerance in the time integration.
//!
//! ```text
//! stored = crossed the boundary - evaporated - carried away by the water at its own heat
//! ```
//!
//! The stored heat follows from the first and last state; the other three are integrated over time.

use super::TOLERANCE;
use super::assembly::chain;
use super::chain::Chain;
use super::surroundings::{Surroundings, fourth};
use super::water::{air_layer, air_potential};
use crate::dryer::machine::{DriftCase, Emitter};
use crate::dryer::stack::{Film, NearInfrared, Stack, StackGrid};
use crate::numerics::Lanes;
use crate::numerics::rosenbrock::{NODES, StateVector, System, Tolerance, integrate, zeros};
use crate::quantity::{STEFAN_BOLTZMANN, Share};
use crate::textile::{Construction, Fabric, Fibre, moisture};

impl<const L: usize> Chain<L> {
    /// Heat that crosses the boundary of the whole chain, W/m².
    fn crossing(&self, state: &StateVector<L>) -> Lanes<L> {
        let at = &self.surroundings;
        let (top, belt) = (state[0], state[self.count - 1]);
        let above = at.h_top * (at.air - top) + at.source - at.emission * fourth(top) + at.through;
        above + at.h_bottom * (at.air - belt) + (fourth(at.air) - fourth(belt)) * at.belt_emission
    }

    /// Heat of evaporation less that of condensation, and heat that the moving water carries away, counted
    /// from 0 K, W/m².
    fn drawn(&self, state: &StateVector<L>) -> [Lanes<L>; 2] {
        let mut rates = zeros();
        self.rates(state, &mut rates);
        let mut carried = Lanes::ZERO;
        for (k, i) in self.cloths.range().enumerate() {
            let heat = self.cloths.nodes[k].mass * moisture::HEAT_CAPACITY;
            carried -= rates[NODES + i] * state[i] * heat;
        }
        [self.crossing(state) - self.taken(state), carried]
    }

    /// Heat stored by the whole chain per second, W/m².
    fn taken(&self, state: &StateVector<L>) -> Lanes<L> {
        let mut rates = zeros();
        self.rates(state, &mut rates);
        (0..self.count).fold(Lanes::ZERO, |taken, i| taken + self.capacity_at(i, state) * rates[i])
    }

    /// Heat that the vapour draws where it leaves each node and gives back where it arrives, from the vapour
    /// alone, W/m².
    fn evaporates(&self, state: &StateVector<L>) -> Lanes<L> {
        let at = &self.surroundings;
        let air = air_potential(at.vapour);
        let count = self.cloths.nodes.len();
        let nodes: Vec<_> = (0..count).map(|k| self.cloths.vapour(k, state)).collect();
        let mut heat = Lanes::ZERO;
        for k in 0..count {
            let mut leaves = Lanes::ZERO;
            for other in [k.checked_sub(1), Some(k + 1).filter(|next| *next < count)].into_iter().flatten() {
                let conductance = self.cloths.conductance(k.min(other), at, state);
                leaves += conductance * (nodes[k].potential - nodes[other].potential);
            }
            if k == 0 && self.cloths.open_above {
                leaves += air_layer(at.h_top, 0.0) * (nodes[k].potential - air);
            }
            if k + 1 == count {
                leaves += air_layer(at.h_bottom, self.cloths.board) * (nodes[k].potential - air);
            }
            heat += leaves * nodes[k].heat;
        }
        heat
    }

    /// Heat in the chain, counted from 298 K, and in its water, counted from 0 K, J/m².
    fn stored(&self, state: &StateVector<L>) -> Lanes<L> {
        let mut stored = Lanes::ZERO;
        for i in 0..self.count {
            let above = state[i] - 298.0;
            let sloped = above.clamp(0.0, 180.0);
            let beyond = (above - 180.0).max(Lanes::ZERO) * 180.0;
            stored += self.capacity[i] * above + (sloped * sloped * 0.5 + beyond) * self.capacity_slope[i];
        }
        for (k, i) in self.cloths.range().enumerate() {
            stored += state[NODES + i] * state[i] * (self.cloths.nodes[k].mass * moisture::HEAT_CAPACITY);
        }
        stored
    }
}

fn cotton() -> Fabric {
    Fabric {
        composition: [(Fibre::Cotton, 1.0)].into(),
        construction: Construction::Jersey,
        areal_mass: 0.150,
        thickness: 0.6e-3,
        conductivity: 0.0511,
        heat_capacity: 1250.0,
        heat_capacity_slope: 3.0,
        regain_65: 0.075,
        open_area: 0.0,
        nap: 0.0,
        stretch: 0.2,
    }
}

/// A printed garment under a lamp whose radiation also reaches the cloth; the second lane in cooler air.
fn with_emitter() -> Chain<2> {
    let stack = Stack::garment(Film { thickness: 100e-6, density: 1300.0 }, &cotton(), Share(0.65));
    let mut chain = chain(&stack, &[DriftCase::NOMINAL; 2], 600.0, 40.0, StackGrid::of(&stack));
    let around = Surroundings {
        air: Lanes([448.0, 420.0]),
        h_top: Lanes::splat(30.0),
        h_bottom: Lanes::splat(15.0),
        belt_emission: 0.5 * STEFAN_BOLTZMANN,
        vapour: 1900.0,
        ..Surroundings::NONE
    };
    let (exchange, lamp) = (Lanes::splat(0.005), Lanes::splat(2400.0));
    chain.surroundings =
        around.with_emitter(Emitter::NearInfrared, exchange, lamp, NearInfrared::UNKNOWN, stack.is_bare());
    chain
}

/// Heat across the boundary less heat of evaporation is the heat stored, to rounding.
#[test]
fn the_equations_conserve_heat() {
    let chain = with_emitter();
    let mut state = zeros();
    for i in 0..chain.count {
        state[i] = Lanes([300.0 + 7.0 * i as f64, 410.0 - 3.0 * i as f64]);
    }
    for (k, i) in chain.cloths.range().enumerate() {
        state[NODES + i] = Lanes([0.07 - 0.004 * k as f64, 0.3 - 0.03 * k as f64]);
    }
    let (taken, kept) = (chain.taken(&state), chain.crossing(&state) - chain.evaporates(&state));
    for lane in 0..2 {
        assert!((taken[lane] / kept[lane] - 1.0).abs() < 1e-12, "{taken:?} {kept:?}");
    }
}

/// Error of the heat balance over 40 s, as a share of the heat that crosses the boundary: the worse lane.
fn unaccounted(tolerance: Tolerance) -> f64 {
    let chain = with_emitter();
    let seconds = 40.0;
    let mut state = zeros();
    state[..chain.count].fill(Lanes::splat(298.15));
    for i in chain.cloths.range() {
        state[NODES + i] = Lanes::splat(0.075);
    }
    let before = chain.stored(&state);
    let [mut crossed, mut left] = [Lanes::ZERO; 2];
    let mut last: Option<(f64, StateVector<2>, StateVector<2>)> = None;
    integrate(&chain, &mut state, Lanes::splat(seconds), tolerance, |step| {
        if let Some((passed, from, from_rates)) = &last {
            let length = (step.passed - passed) * seconds;
            // Three-point Gauss rule on the cubic between the two states.
            for (at, weight) in [(0.112_701_665_379_258_3, 5.0), (0.5, 8.0), (0.887_298_334_620_741_7, 5.0)] {
                let rest = 1.0 - at;
                let between: StateVector<2> = std::array::from_fn(|i| {
                    from[i] * ((1.0 + 2.0 * at) * rest * rest)
                        + step.state[i] * (at * at * (3.0 - 2.0 * at))
                        + (from_rates[i] * (at * rest * rest) - step.rates[i] * (at * at * rest)) * length
                });
                let [evaporates, carried] = chain.drawn(&between);
                crossed += chain.crossing(&between) * (weight / 18.0 * length);
                left += (evaporates + carried) * (weight / 18.0 * length);
            }
        }
        last = Some((step.passed, *step.state, *step.rates));
    })
    .unwrap();
    ((chain.stored(&state) - before - crossed + left) / crossed).abs().largest()
}

/// Each tenfold tighter tolerance at least halves the error; at the shipped one most of it is this test's own
/// reading between two states, which a node that falls dry bends.
#[test]
fn the_integration_conserves_heat() {
    let off = [1.0, 0.1, 0.01, 0.001].map(|part| {
        unaccounted(Tolerance { temperature: TOLERANCE.temperature * part, water: TOLERANCE.water * part })
    });
    assert!(off[0] < 0.03 && off[1] < 1e-3, "{off:?}");
    assert!(off.windows(2).all(|pair| pair[1] < 0.5 * pair[0]), "{off:?}");
}
