//! The stack laid out as a chain of nodes.

use super::chain::{Chain, Surroundings, Wet};
use super::{Film, Stack, World};
use crate::numerics::Lanes;
use crate::numerics::march::NODES;
use crate::textile::Fabric;

/// Nodes of film, front cloth and back cloth. Against a reference on 24, 16 and 10 cells the film is within 0.3 K at
/// every moment and dwells to fuse are within 1 % (`tests/history.rs`).
pub(super) const GRID: [usize; 3] = [4, 6, 4];

/// Regain of a cloth, never quite nothing: even polypropylene wets a little, and a cloth without water at all would
/// leave the border of the march without an equation.
pub(super) fn held_regain(cloth: &Fabric) -> f64 {
    cloth.regain_65.max(2e-4)
}

/// Lays the stack out as a chain of nodes, so many to film, front and back cloth, over a belt or pallet.
pub(super) fn chain<const L: usize>(
    grid: [usize; 3],
    stack: &Stack,
    worlds: &[World; L],
    under: f64,
    contact: f64,
) -> Chain<L> {
    let [film, front, back] = grid;
    let mut chain = Chain {
        count: 0,
        film,
        capacity: Vec::with_capacity(NODES),
        capacity_slope: Vec::with_capacity(NODES),
        conductance: Vec::with_capacity(NODES),
        share: Vec::with_capacity(NODES),
        wet: Vec::with_capacity(2),
        surroundings: Surroundings {
            air: Lanes::ZERO,
            h_top: Lanes::ZERO,
            h_bottom: Lanes::ZERO,
            source: Lanes::ZERO,
            emission: Lanes::ZERO,
            belt_emission: 0.0,
            vapour: 0.0,
        },
    };
    let thickness = Lanes(worlds.map(|world| stack.film.thickness * world.film));
    let mass = thickness * stack.film.density;
    lay(
        &mut chain,
        film,
        mass,
        Film::HEAT_CAPACITY,
        Film::HEAT_CAPACITY_SLOPE,
        stack.film.density * stack.film.thickness,
    );
    let step = thickness * (1.0 / (film - 1) as f64);
    join(&mut chain, film, step.recip() * Film::CONDUCTIVITY, Film::CONTACT);

    let cloth = |chain: &mut Chain<L>, cloth: &Fabric, nodes: usize, below: f64, layers: f64, path: f64| {
        let first = chain.capacity.len();
        let mass = Lanes::splat(cloth.areal_mass);
        lay(chain, nodes, mass, cloth.heat_capacity, cloth.heat_capacity_slope, cloth.areal_mass);
        let conductance = cloth.conductivity * (nodes - 1) as f64 / cloth.thickness;
        join(chain, nodes, Lanes::splat(conductance), below);
        chain.wet.push(Wet {
            nodes: first..first + nodes,
            mass: cloth.areal_mass,
            regain_65: held_regain(cloth),
            path,
            layers,
        });
    };
    match &stack.back {
        Some(under_cloth) => {
            let path = stack.front.thickness + under_cloth.thickness;
            cloth(&mut chain, &stack.front, front, stack.gap, 1.5, path);
            cloth(&mut chain, under_cloth, back, contact, 1.0, 0.5 * under_cloth.thickness);
        }
        None => cloth(&mut chain, &stack.front, front, contact, 1.0, stack.front.thickness),
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
        let mut chain = chain::<2>(GRID, &stack, &[World::NOMINAL; 2], 600.0, 40.0);
        let air = Lanes([448.0, 420.0]);
        let (source, emission) = Surroundings::radiation(Lanes::splat(0.15), Lanes::splat(673.0), air);
        chain.surroundings = Surroundings {
            air,
            h_top: Lanes::splat(30.0),
            h_bottom: Lanes::splat(15.0),
            source,
            emission,
            belt_emission: 0.5 * crate::quantity::STEFAN_BOLTZMANN,
            vapour: 1900.0,
        };
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
