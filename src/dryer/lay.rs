//! The stack laid out as a chain of nodes.

use super::chain::{Chain, Surroundings, Ways, Wet};
use super::{Film, Stack, World};
use crate::numerics::Lanes;
use crate::numerics::march::NODES;
use crate::textile::Fabric;
use crate::textile::moisture::regain;

/// Nodes of each layer.
///
/// A layer follows what heats it with the lag `tau = R C`: its resistance from face to face times the heat that it takes
/// up per kelvin, that of its water's evaporation included. With `n` cells the error of the film's bottom is some
/// `0.1 K tau / n²` (tau in s), so `n` goes with the root of `tau`.
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

/// Most cells of one layer: four layers and the belt stay within [`NODES`].
const MOST_CELLS: f64 = 16.0;

impl Grid {
    /// The grid that ships. With it and the tolerance that ships, peaks of the film's bottom are within 0.1 K and fused
    /// shares within 0.005 of the converged equations on fifty random stacks and dryers
    /// (`src/tool/bench/tests/converged.rs`). That is no bound on every stack: the factors were chosen on a thousand such
    /// trips, and of two thousand others 6 were further off, the worst 0.13 K, another 0.0054.
    #[must_use]
    pub fn of(stack: &Stack) -> Self {
        Self::scaled(stack, 1.0)
    }

    /// Two thirds of the cells: for a first look, with some 0.3 K of error.
    #[must_use]
    pub fn rough(stack: &Stack) -> Self {
        Self::scaled(stack, 0.6)
    }

    fn scaled(stack: &Stack, scale: f64) -> Self {
        let nodes = |least: f64, factor: f64, resistance: f64, heat: f64| {
            (least + scale * factor * (resistance * heat).sqrt()).ceil().clamp(1.0, MOST_CELLS) as usize + 1
        };
        let film = |film: Film| {
            let heat = film.thickness * film.density * Film::HEAT_CAPACITY;
            nodes(0.0, 2.5, film.thickness / Film::CONDUCTIVITY, heat)
        };
        let cloth = |least: f64, factor: f64, cloth: &Fabric| {
            let water = regain(stack.humidity, held_regain(cloth)) + stack.added_water;
            let heat = cloth.areal_mass * (cloth.heat_capacity + water * DRYING);
            nodes(least, factor, cloth.thickness / cloth.conductivity, heat)
        };
        Self {
            film: film(stack.film),
            blocker: stack.blocker.map_or(2, film),
            front: cloth(1.0, 2.0, &stack.front),
            back: stack.back.as_ref().map_or(2, |back| cloth(0.0, 1.3, back)),
        }
    }
}

/// Heat of evaporation spread over the hundred kelvin in which a print heats up, J/(kg K).
const DRYING: f64 = 24e3;

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
