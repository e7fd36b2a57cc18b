//! Assembles the node chain of a stack: capacities, conductances and the water of each cloth.

use super::chain::Chain;
use super::surroundings::Surroundings;
use super::water::WetCloths;
use crate::dryer::machine::DriftCase;
use crate::dryer::stack::{Board, Film, Stack, StackGrid};
use crate::numerics::Lanes;
use crate::numerics::rosenbrock::NODES;
use crate::textile::Fabric;

/// The node chain of a stack on a belt or pallet with heat capacity `under`, J/(m² K), and thermal `contact`,
/// W/(m² K).
pub(super) fn chain<const L: usize>(
    stack: &Stack,
    drifts: &[DriftCase; L],
    under: f64,
    contact: f64,
    grid: StackGrid,
) -> Chain<L> {
    let mut chain = Chain {
        count: 0,
        film: 0,
        capacity: Vec::with_capacity(NODES),
        capacity_slope: Vec::with_capacity(NODES),
        conductance: Vec::with_capacity(NODES),
        share: Vec::with_capacity(NODES),
        cloths: WetCloths::default(),
        surroundings: Surroundings::NONE,
    };
    let films = [(Some(stack.film), grid.film), (stack.blocker, grid.blocker)];
    for (film, nodes) in films {
        let Some(film) = film.filter(|film| film.thickness >= Stack::NO_FILM) else { continue };
        let thickness = Lanes(drifts.map(|drift| film.thickness * drift.film));
        if let Some(joint) = chain.conductance.last_mut() {
            *joint = Lanes::splat(Film::FILM_CONTACT);
        }
        let mass = thickness * film.density;
        let nominal = film.density * film.thickness;
        lay(&mut chain, nodes, mass, Film::HEAT_CAPACITY, Film::HEAT_CAPACITY_SLOPE, nominal);
        let inside = (thickness * (1.0 / (nodes - 1) as f64)).recip() * Film::CONDUCTIVITY;
        join(&mut chain, nodes, inside, Film::CLOTH_CONTACT);
        chain.film += nodes;
    }
    // The film lets no vapour through; without it the face is open.
    chain.cloths.open_above = chain.film == 0;
    chain.cloths.board = stack.board.map_or(0.0, |board| board.thickness * Board::VAPOUR_RESISTANCE);
    chain.cloths.first = chain.film;
    let cloth = |chain: &mut Chain<L>, cloth: &Fabric, nodes: usize, below: f64| {
        let mass = Lanes::splat(cloth.areal_mass);
        lay(chain, nodes, mass, cloth.heat_capacity, cloth.heat_capacity_slope, cloth.areal_mass);
        let conductance = cloth.conductivity * (nodes - 1) as f64 / cloth.thickness;
        join(chain, nodes, Lanes::splat(conductance), below);
        chain.cloths.lay(cloth, nodes);
    };
    match (&stack.board, &stack.back) {
        (Some(board), _) => {
            cloth(&mut chain, &stack.front, grid.front, stack.gap_conductance);
            let mass = Lanes::splat(board.thickness * Board::DENSITY);
            lay(&mut chain, grid.back, mass, Board::HEAT_CAPACITY, 0.0, 0.0);
            let inside = Board::CONDUCTIVITY * (grid.back - 1) as f64 / board.thickness;
            join(&mut chain, grid.back, Lanes::splat(inside), contact);
        }
        (None, Some(back)) => {
            cloth(&mut chain, &stack.front, grid.front, stack.gap_conductance);
            cloth(&mut chain, back, grid.back, contact);
        }
        (None, None) => cloth(&mut chain, &stack.front, grid.front, contact),
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
