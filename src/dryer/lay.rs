//! The stack laid out as a chain of nodes.

use super::chain::{Chain, Surroundings, Ways, Wet};
use super::{Film, Stack, World};
use crate::numerics::Lanes;
use crate::numerics::march::NODES;
use crate::textile::Fabric;

/// Nodes of each layer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Grid {
    /// The film on top, at least 2.
    pub film: usize,
    /// The blocker film under it, at least 2.
    pub blocker: usize,
    /// The printed cloth, at least 2.
    pub front: usize,
    /// The cloth under it, at least 2.
    pub back: usize,
}

impl Grid {
    /// The grid that ships. Against a reference on 24, 16 and 10 cells the film is within 0.3 K at every moment and
    /// dwells to fuse are within 1 % (`tests/history.rs`).
    pub const SHIPPED: Self = Self { film: 4, blocker: 3, front: 6, back: 4 };
}

/// Regain of a cloth, never quite nothing: even polypropylene wets a little, and a cloth without water at all would
/// leave the border of the march without an equation.
pub(super) fn held_regain(cloth: &Fabric) -> f64 {
    cloth.regain_65.max(2e-4)
}

/// Lays the stack out as a chain of nodes over a belt or pallet.
pub(super) fn chain<const L: usize>(
    stack: &Stack,
    worlds: &[World; L],
    under: f64,
    contact: f64,
    grid: Grid,
) -> Chain<L> {
    let mut chain = Chain {
        count: 0,
        film: 0,
        capacity: Vec::with_capacity(NODES),
        capacity_slope: Vec::with_capacity(NODES),
        conductance: Vec::with_capacity(NODES),
        share: Vec::with_capacity(NODES),
        wet: Vec::with_capacity(2),
        surroundings: Surroundings::NONE,
    };
    let films = [(Some(stack.film), grid.film), (stack.blocker, grid.blocker)];
    for (film, nodes) in films {
        let Some(film) = film.filter(|film| film.thickness >= Stack::NO_FILM) else { continue };
        let thickness = Lanes(worlds.map(|world| film.thickness * world.film));
        if let Some(joint) = chain.conductance.last_mut() {
            *joint = Lanes::splat(Film::BETWEEN);
        }
        let mass = thickness * film.density;
        let nominal = film.density * film.thickness;
        lay(&mut chain, nodes, mass, Film::HEAT_CAPACITY, Film::HEAT_CAPACITY_SLOPE, nominal);
        let inside = (thickness * (1.0 / (nodes - 1) as f64)).recip() * Film::CONDUCTIVITY;
        join(&mut chain, nodes, inside, Film::CONTACT);
        chain.film += nodes;
    }
    let bare = chain.film == 0;

    let cloth = |chain: &mut Chain<L>, cloth: &Fabric, nodes: usize, below: f64, ways: Ways| {
        let first = chain.capacity.len();
        let mass = Lanes::splat(cloth.areal_mass);
        lay(chain, nodes, mass, cloth.heat_capacity, cloth.heat_capacity_slope, cloth.areal_mass);
        let conductance = cloth.conductivity * (nodes - 1) as f64 / cloth.thickness;
        join(chain, nodes, Lanes::splat(conductance), below);
        chain.wet.push(Wet {
            nodes: first..first + nodes,
            mass: cloth.areal_mass,
            regain_65: held_regain(cloth),
            ways,
        });
    };
    // The film lets no vapour through; beside it the face is open.
    let above = bare.then_some(0.5 * stack.front.thickness);
    match &stack.back {
        Some(under) => {
            let path = stack.front.thickness + under.thickness;
            let front = Ways { path, layers: 1.5, above };
            cloth(&mut chain, &stack.front, grid.front, stack.gap, front);
            let back = Ways { path: 0.5 * under.thickness, layers: 1.0, above: None };
            cloth(&mut chain, under, grid.back, contact, back);
        }
        None => {
            let ways = Ways { path: stack.front.thickness, layers: 1.0, above };
            cloth(&mut chain, &stack.front, grid.front, contact, ways);
        }
    }
    chain.capacity.push(Lanes::splat(under));
    chain.capacity_slope.push(0.0);
    chain.share.push(0.0);
    chain.count = chain.capacity.len();
    chain
}

/// Adds the nodes of one layer: half cells at its two faces.
fn lay<const L: usize>(
    chain: &mut Chain<L>,
    nodes: usize,
    mass: Lanes<L>,
    heat: f64,
    slope: f64,
    nominal_mass: f64,
) {
    let cells = (nodes - 1) as f64;
    for i in 0..nodes {
        let share = if i == 0 || i + 1 == nodes { 0.5 / cells } else { 1.0 / cells };
        chain.capacity.push(mass * (heat * share));
        chain.capacity_slope.push(nominal_mass * slope * share);
        chain.share.push(share);
    }
}

/// Adds the conductances inside a layer and the one to the layer below it.
fn join<const L: usize>(chain: &mut Chain<L>, nodes: usize, inside: Lanes<L>, below: f64) {
    for _ in 1..nodes {
        chain.conductance.push(inside);
    }
    chain.conductance.push(Lanes::splat(below));
}

#[cfg(test)]
mod tests {
    use super::super::{Emitter, NearInfrared};
    use super::*;
    use crate::numerics::march::zeros;
    use crate::textile::Construction;

    fn cotton() -> Fabric {
        Fabric {
            composition: [(crate::textile::Fibre::Cotton, 1.0)].into(),
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

    /// What crosses the boundary is what the stack takes up, to rounding.
    #[test]
    fn the_equations_keep_heat() {
        let stack = Stack::garment(Film { thickness: 100e-6, density: 1300.0 }, &cotton(), 0.65);
        let mut chain = chain::<2>(&stack, &[World::NOMINAL; 2], 600.0, 40.0, Grid::SHIPPED);
        let air = Lanes([448.0, 420.0]);
        let around = Surroundings {
            air,
            h_top: Lanes::splat(30.0),
            h_bottom: Lanes::splat(15.0),
            belt_emission: 0.5 * crate::quantity::STEFAN_BOLTZMANN,
            vapour: 1900.0,
            ..Surroundings::NONE
        };
        let (exchange, lamp) = (Lanes::splat(0.05), Lanes::splat(2400.0));
        chain.surroundings =
            around.lit(Emitter::NearInfrared, exchange, lamp, NearInfrared::UNKNOWN, stack.is_bare());
        let mut state = zeros();
        for i in 0..chain.count {
            state[i] = Lanes([300.0 + 7.0 * i as f64, 410.0 - 3.0 * i as f64]);
        }
        state[NODES] = Lanes([0.07, 0.01]);
        state[NODES + 1] = Lanes([0.06, 0.0]);
        let (stored, crossing) = chain.balance(&state);
        for lane in 0..2 {
            assert!((stored[lane] / crossing[lane] - 1.0).abs() < 1e-12, "{stored:?} {crossing:?}");
        }
    }
}
